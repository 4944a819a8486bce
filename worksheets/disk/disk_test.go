package disk_test

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"capscye/worksheets/disk"
	"capscye/worksheets/disk/disktest"
)

// Files that are laid, and looked at.
var write, onDisk, names = disktest.Write, disktest.OnDisk, disktest.Names

// replace puts a new version in the place of a file, which must work.
func replace(t testing.TB, path, content string) {
	t.Helper()
	if err := disk.Replace(path, []byte(content), 0o666); err != nil {
		t.Errorf("%q: %v", path, err)
	}
}

// journalOf is where the journal of a file lies while it is written in place.
func journalOf(t testing.TB, path string) string {
	t.Helper()
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	number, ok := disk.Number(info)
	if !ok {
		t.Skip("files have no numbers here")
	}
	return filepath.Join(filepath.Dir(path), fmt.Sprintf(".%d.capscye-save", number))
}

func TestANewVersionTakesThePlaceOfTheOld(t *testing.T) {
	path := filepath.Join(t.TempDir(), "blouse.toml")
	for _, content := range []string{"made", "longer than before", "short", ""} {
		replace(t, path, content)
		onDisk(t, path, content)
	}
	if got := names(t, filepath.Dir(path)); !slices.Equal(got, []string{"blouse.toml"}) {
		t.Errorf("the folder holds %q", got)
	}
}

// Who has the old version open goes on reading that, to its end.
func TestTheOldVersionIsNotWrittenInto(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), "old")
	before, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	replace(t, path, "new")
	if after, err := os.Stat(path); err != nil || os.SameFile(before, after) {
		t.Errorf("it is the same file, %v", err)
	}
}

func TestAFileIsMadeOnlyUnderAFreeName(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "copy.toml")
	if err := disk.Create(path, []byte("mine")); err != nil {
		t.Fatal(err)
	}
	onDisk(t, path, "mine")
	err := disk.Create(path, []byte("again"))
	if want := "write " + path + ": file exists"; !errors.Is(err, fs.ErrExist) || runtime.GOOS != "windows" && err.Error() != want {
		t.Errorf("error %v, want %s", err, want)
	}
	onDisk(t, path, "mine")
	if err := disk.Create(filepath.Join(folder, "gone", "copy.toml"), nil); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("in a folder that is not there: %v", err)
	}
}

func TestPermissionsAreKept(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no permissions of this kind")
	}
	for _, mode := range []fs.FileMode{0o640, 0o600, 0o664, 0o755, 0o666, fs.ModeSetuid | 0o755, fs.ModeSetgid | 0o750, fs.ModeSetuid | fs.ModeSetgid | 0o711, fs.ModeSticky | 0o644} {
		path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), "old")
		if err := os.Chmod(path, mode); err != nil {
			t.Fatal(err)
		}
		for _, how := range []string{"renamed over", "written in place"} {
			replace(t, path, how)
			if info, err := os.Stat(path); err != nil || info.Mode() != mode {
				t.Errorf("%s, mode %v became %v, %v", how, mode, info.Mode(), err)
			}
			onDisk(t, path, how)
			_ = os.Link(path, path+".twin")
		}
	}
}

// A new file has the permissions that were asked for, a file put aside none for others.
func TestPermissionsOfWhatIsNew(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no permissions of this kind")
	}
	path := filepath.Join(t.TempDir(), "blouse.toml")
	if err := disk.Replace(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	made, usual := filepath.Join(filepath.Dir(path), "made.toml"), filepath.Join(filepath.Dir(path), "usual")
	if err := errors.Join(disk.Create(made, nil), os.WriteFile(usual, nil, 0o666)); err != nil {
		t.Fatal(err)
	}
	want, err := os.Stat(usual)
	if err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(made); err != nil || info.Mode() != want.Mode() {
		t.Errorf("what is made has mode %v and not %v, %v", info.Mode(), want.Mode(), err)
	}
	aside, err := disk.PutAside(path, "before", nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []string{path, aside} {
		if info, err := os.Stat(p); err != nil || info.Mode() != 0o600 {
			t.Errorf("%s has mode %v, %v", filepath.Base(p), info.Mode(), err)
		}
	}
}

func TestASymbolicLinkStaysOneAndItsTargetIsWritten(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("links need a right of their own")
	}
	folder := t.TempDir()
	if err := os.Mkdir(filepath.Join(folder, "real"), 0o755); err != nil {
		t.Fatal(err)
	}
	target := write(t, filepath.Join(folder, "real", "blouse.toml"), "old")
	link, second := filepath.Join(folder, "link.toml"), filepath.Join(folder, "second.toml")
	if err := errors.Join(os.Symlink(filepath.Join("real", "blouse.toml"), link), os.Symlink(link, second)); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{link, second} {
		replace(t, path, "new by "+path)
		onDisk(t, target, "new by "+path)
		if got := disk.BehindLinks(path); got != target {
			t.Errorf("%s stands for %s", path, got)
		}
	}
	for _, path := range []string{link, second} {
		if info, err := os.Lstat(path); err != nil || info.Mode().Type() != fs.ModeSymlink {
			t.Errorf("%s is now %v, %v", filepath.Base(path), info.Mode(), err)
		}
	}
}

func TestALinkWhoseTargetIsGoneStaysALink(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("links need a right of their own")
	}
	folder := t.TempDir()
	link := filepath.Join(folder, "link.toml")
	if err := os.Symlink(filepath.Join(folder, "away.toml"), link); err != nil {
		t.Fatal(err)
	}
	replace(t, link, "new")
	if info, err := os.Lstat(link); err != nil || info.Mode().Type() != fs.ModeSymlink {
		t.Errorf("the link is now %v, %v", info.Mode(), err)
	}
	onDisk(t, filepath.Join(folder, "away.toml"), "new")
}

func TestALinkIntoAFolderThatIsGoneStaysALink(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("links need a right of their own")
	}
	link := filepath.Join(t.TempDir(), "link.toml")
	if err := os.Symlink(filepath.Join("unplugged", "blouse.toml"), link); err != nil {
		t.Fatal(err)
	}
	err := disk.Replace(link, nil, 0o666)
	if want := "write " + filepath.Join(filepath.Dir(link), "unplugged", "blouse.toml") + ": "; !errors.Is(err, fs.ErrNotExist) || !strings.HasPrefix(err.Error(), want) {
		t.Errorf("error %v, want one that begins with %s", err, want)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode().Type() != fs.ModeSymlink {
		t.Errorf("the link is now %v, %v", info.Mode(), err)
	}
}

// Links that stand for each other have an end here.
func TestLinksInARing(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("links need a right of their own")
	}
	t.Chdir(t.TempDir())
	if err := errors.Join(os.Symlink("one", "two"), os.Symlink("two", "one")); err != nil {
		t.Fatal(err)
	}
	if got := disk.BehindLinks("one"); got != "one" && got != "two" {
		t.Errorf("they stand for %q", got)
	}
}

func TestAHardLinkStaysTheSameFile(t *testing.T) {
	folder := t.TempDir()
	path, twin := write(t, filepath.Join(folder, "blouse.toml"), "old and long"), filepath.Join(folder, "twin.toml")
	if err := os.Link(path, twin); err != nil {
		t.Fatal(err)
	}
	replace(t, path, "new")
	onDisk(t, twin, "new")
	if got := names(t, folder); !slices.Equal(got, []string{"blouse.toml", "twin.toml"}) {
		t.Errorf("the folder holds %q", got)
	}
}

// A file with other names is never written without both versions beside it: where they
// cannot be there, it stays as it is.
func TestAHardLinkIsNotWrittenWithoutAJournal(t *testing.T) {
	folder := t.TempDir()
	path := write(t, filepath.Join(folder, "blouse.toml"), "old")
	if err := os.Link(path, filepath.Join(folder, "twin.toml")); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Join(journalOf(t, path), "in the way"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := disk.Replace(path, []byte("new"), 0o666); err == nil {
		t.Error("it was")
	}
	onDisk(t, path, "old")
}

func TestAFolderIsNotReplaced(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "blouse.toml")
	if err := os.Mkdir(path, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := disk.Replace(path, nil, 0o666); err == nil {
		t.Error("it was")
	}
	var kind *disk.KindError
	if _, _, err := disk.Read(path, 10); !errors.As(err, &kind) || err.Error() != path+": it is a folder" {
		t.Errorf("read: %v", err)
	}
	if got := names(t, folder); !slices.Equal(got, []string{"blouse.toml"}) {
		t.Errorf("the folder holds %q", got)
	}
}

func TestNoMoreIsReadThanAskedFor(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), "twelve bytes")
	for most, want := range map[int64]string{0: "", 6: "twelve", 12: "twelve bytes", 1 << 40: "twelve bytes"} {
		got, info, err := disk.Read(path, most)
		if string(got) != want || err != nil || info.Size() != 12 {
			t.Errorf("of %d bytes: %q, %v", most, got, err)
		}
	}
	if _, _, err := disk.Read(path+"x", 6); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a file that is not there: %v", err)
	}
}
