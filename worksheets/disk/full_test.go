//go:build linux

package disk_test

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"

	"capscye/worksheets/disk"
	"capscye/worksheets/disk/disktest"
)

// Root writes a file of somebody else: it stays theirs, with its group and mode.
func TestTheOwnerIsKept(t *testing.T) {
	if os.Getuid() != 0 {
		t.Skip("only root can give a file away")
	}
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), "old")
	for _, owner := range [][2]int{{4242, 4343}, {4242, 0}, {0, 4343}, {0, 0}} {
		if err := errors.Join(os.Chown(path, owner[0], owner[1]), os.Chmod(path, 0o640)); err != nil {
			t.Fatal(err)
		}
		replace(t, path, "new")
		info, err := os.Stat(path)
		if err != nil {
			t.Fatal(err)
		}
		if is := info.Sys().(*syscall.Stat_t); int(is.Uid) != owner[0] || int(is.Gid) != owner[1] || info.Mode() != 0o640 {
			t.Errorf("of %v, it belongs to %d and %d now, mode %v", owner, is.Uid, is.Gid, info.Mode())
		}
		onDisk(t, path, "new")
	}
}

// as runs something as another person, who is not root.
func as(t *testing.T, person int, run func()) {
	t.Helper()
	if os.Getuid() != 0 {
		t.Skip("only root can be two people")
	}
	done := make(chan struct{})
	go func() {
		defer close(done)
		runtime.LockOSThread() // for good: the thread ends with it
		p := uintptr(person)
		for _, call := range []uintptr{syscall.SYS_SETRESGID, syscall.SYS_SETRESUID} { // of this thread alone
			if _, _, fault := syscall.RawSyscall(call, p, p, p); fault != 0 {
				t.Errorf("still root: %v", fault)
				return
			}
		}
		run()
	}()
	<-done
}

// Who may write a file and not give it away leaves it with its owner.
func TestAFileOfSomebodyElseStaysTheirs(t *testing.T) {
	folder := t.TempDir()
	path := write(t, filepath.Join(folder, "blouse.toml"), "old and long")
	if err := errors.Join(os.Chmod(filepath.Dir(folder), 0o755), os.Chmod(folder, 0o777), os.Chmod(path, 0o666)); err != nil {
		t.Fatal(err)
	}
	as(t, 4343, func() { replace(t, path, "new") })
	onDisk(t, path, "new")
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	if is := info.Sys().(*syscall.Stat_t); is.Uid != 0 || info.Mode() != 0o666 {
		t.Errorf("it belongs to %d now, mode %v", is.Uid, info.Mode())
	}
	if got := names(t, folder); !slices.Equal(got, []string{"blouse.toml"}) {
		t.Errorf("the folder holds %q", got)
	}
}

// A file with two names that may not be written is said, and nothing stays beside it;
// nor is one that its owner has locked, whoever may write it all the same.
func TestAFileThatMayNotBeWritten(t *testing.T) {
	folder := t.TempDir()
	path := write(t, filepath.Join(folder, "blouse.toml"), "old")
	if err := errors.Join(os.Chmod(filepath.Dir(folder), 0o755), os.Chmod(folder, 0o777), os.Chmod(path, 0o644), os.Link(path, filepath.Join(folder, "twin.toml"))); err != nil {
		t.Fatal(err)
	}
	as(t, 4343, func() {
		if err := disk.Replace(path, []byte("new"), 0o666); !errors.Is(err, fs.ErrPermission) {
			t.Errorf("error %v", err)
		}
	})
	if err := os.Chmod(path, 0o444); err != nil {
		t.Fatal(err)
	}
	if err := disk.Replace(path, []byte("new"), 0o666); !errors.Is(err, disk.ErrProtected) {
		t.Errorf("locked: error %v", err)
	}
	onDisk(t, path, "old")
	if got := names(t, folder); !slices.Equal(got, []string{"blouse.toml", "twin.toml"}) {
		t.Errorf("the folder holds %q", got)
	}
}

// Who is not root loses what is special in a mode by writing: its owner gives it back;
// somebody else leaves the file alone, and is told.
func TestASpecialModeIsKeptByWhoIsNotRoot(t *testing.T) {
	for _, person := range []int{4343, 4242} {
		for _, links := range []int{1, 2} {
			folder := t.TempDir()
			path := write(t, filepath.Join(folder, "blouse.toml"), "old")
			mode := fs.ModeSetuid | 0o777
			if err := errors.Join(os.Chmod(filepath.Dir(folder), 0o755), os.Chmod(folder, 0o777), os.Chown(path, 4242, 4242), os.Chmod(path, mode)); err != nil {
				t.Skip(err)
			}
			if links == 2 {
				if err := os.Link(path, filepath.Join(folder, "twin.toml")); err != nil {
					t.Fatal(err)
				}
			}
			want := map[int]string{4242: "new", 4343: "old"}[person]
			as(t, person, func() {
				if err := disk.Replace(path, []byte("new"), 0o666); (err == nil) != (want == "new") || err != nil && !strings.Contains(err.Error(), "only its owner can keep its mode") {
					t.Errorf("%d, %d names: error %v", person, links, err)
				}
			})
			onDisk(t, path, want)
			if info, err := os.Stat(path); err != nil || info.Mode() != mode {
				t.Errorf("%d, %d names: the mode is %v, %v", person, links, info.Mode(), err)
			}
		}
	}
}

// A program of somebody else is there too, though nothing may be sent to it.
func TestADraftOfSomebodyElseStays(t *testing.T) {
	folder := t.TempDir()
	path := write(t, filepath.Join(folder, "blouse.toml"), "old")
	draft := write(t, filepath.Join(folder, fmt.Sprintf(".blouse.toml.%d-1.capscye-tmp", os.Getppid())), "half writ")
	if err := errors.Join(os.Chmod(filepath.Dir(folder), 0o755), os.Chmod(folder, 0o777), os.Chmod(path, 0o666)); err != nil {
		t.Fatal(err)
	}
	as(t, 4343, func() {
		if err := disk.Replace(path, []byte("new"), 0o666); err != nil {
			t.Error(err)
		}
	})
	if _, err := os.Stat(draft); err != nil {
		t.Error(err)
	}
}

// A full disk leaves the file as it was, whole, and nothing beside it; with room again
// the same works. A file with two names is written in place: where the new version does
// not fit, the old one goes back.
func TestAFullDiskLeavesTheFileWhole(t *testing.T) {
	for _, links := range []int{1, 2} {
		folder := disktest.Mounted(t, "64k")
		before, after := strings.Repeat("x", 5000), strings.Repeat("a long note ", 1200)
		path := write(t, filepath.Join(folder, "blouse.toml"), before)
		if links == 2 {
			if err := os.Link(path, filepath.Join(folder, "twin.toml")); err != nil {
				t.Fatal(err)
			}
		}
		filler := filepath.Join(folder, "filler")
		for room := 13 * 4096; room >= 0; room -= 4096 { // from nothing left to room enough
			_ = os.WriteFile(filler, make([]byte, room), 0o600) // as much of it as there is room for
			err := disk.Replace(path, []byte(after), 0o666)
			switch {
			case err == nil && room == 13*4096:
				t.Fatal("it is not full")
			case err == nil:
				onDisk(t, path, after)
				room = -1
			case room == 0:
				t.Errorf("with all the room there is: %v", err)
			default:
				if !errors.Is(err, syscall.ENOSPC) || !strings.Contains(err.Error(), path) {
					t.Errorf("error %v", err)
				}
				onDisk(t, path, before)
				if left := len(names(t, folder)); left > 1+links {
					t.Errorf("%d files are there", left)
				}
			}
		}
	}
}

// A torn file is made what it was to be; where that does not fit, what it was.
func TestATornFileOnAFullDiskIsWhatItWas(t *testing.T) {
	folder := disktest.Mounted(t, "128k")
	older, newer := bytes.Repeat([]byte("x"), 5000), bytes.Repeat([]byte("a long note "), 3000)
	now := slices.Concat(newer[:page], older[page:])
	path, journal := cutShort(t, folder, now, older, newer)
	filler := filepath.Join(folder, "filler")
	if err := os.WriteFile(filler, make([]byte, 1<<20), 0o600); err == nil {
		t.Fatal("it is not full")
	}
	if got, _, err := disk.Read(path, 1<<20); !bytes.Equal(got, older) || err != nil {
		t.Errorf("%.20q of %d bytes is read, %v", got, len(got), err)
	}
	onDisk(t, path, string(older))
	if _, err := os.Stat(journal); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the journal is still there: %v", err)
	}
}

// What lies beside a file and says what it was to hold counts only from who could have
// written the file itself: its owner, root, ourselves, or anybody where anybody may.
func TestAJournalOfWhoMayNotWriteIsNone(t *testing.T) {
	if os.Getuid() != 0 {
		t.Skip("only root can give a file away")
	}
	const theirs, torn, whole = 4343, "old", "new and whole"
	for _, c := range []struct {
		owner, by int
		mode      fs.FileMode
		want      string
	}{
		{0, theirs, 0o644, torn}, {4242, theirs, 0o644, torn}, {4242, 0, 0o644, whole}, {theirs, theirs, 0o644, whole}, {4242, theirs, 0o646, whole},
	} {
		path, journal := cutShort(t, t.TempDir(), []byte(torn), []byte("old and whole"), []byte(whole))
		if err := errors.Join(os.Chown(path, c.owner, 0), os.Chmod(path, c.mode), os.Chown(journal, c.by, 0)); err != nil {
			t.Fatal(err)
		}
		if got, _, err := disk.Read(path, 100); string(got) != c.want || err != nil {
			t.Errorf("a journal of %d beside a file of %d, mode %v: %q is read, %v", c.by, c.owner, c.mode, got, err)
		}
		onDisk(t, path, c.want)
	}
}

// A card with two names may be of any size: where its new version does not fit, all of
// the old one goes back.
func TestALargeFileWithTwoNamesIsPutBackWhole(t *testing.T) {
	folder := disktest.Mounted(t, "5m")
	before := strings.Repeat("x", 2<<20) + "the end"
	path := write(t, filepath.Join(folder, "card.pdf"), before)
	if err := os.Link(path, filepath.Join(folder, "twin.pdf")); err != nil {
		t.Fatal(err)
	}
	if err := disk.Replace(path, make([]byte, 9<<19), 0o666); !errors.Is(err, syscall.ENOSPC) {
		t.Fatalf("error %v, want one of a full disk", err)
	}
	onDisk(t, path, before)
	if left := names(t, folder); len(left) != 2 {
		t.Errorf("the folder holds %q", left)
	}
}

// Nothing half made is left where a new file does not fit.
func TestAFullDiskTakesNoNewFile(t *testing.T) {
	folder := disktest.Mounted(t, "64k")
	content := make([]byte, 1<<20)
	if err := disk.Create(filepath.Join(folder, "copy.toml"), content); !errors.Is(err, syscall.ENOSPC) {
		t.Errorf("made: %v", err)
	}
	if _, err := disk.PutAside(filepath.Join(folder, "copy.toml"), "mine", content); !errors.Is(err, syscall.ENOSPC) {
		t.Errorf("put aside: %v", err)
	}
	if err := disk.Replace(filepath.Join(folder, "copy.toml"), content, 0o666); !errors.Is(err, syscall.ENOSPC) {
		t.Errorf("replaced: %v", err)
	}
	if left := names(t, folder); left != nil {
		t.Errorf("the folder holds %q", left)
	}
}

// Of a pipe nothing is read, for it might never come.
func TestAPipeIsNotRead(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe.toml")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Skip(err)
	}
	if _, _, err := disk.Read(pipe, 10); err == nil || err.Error() != pipe+": it is a device or pipe" {
		t.Errorf("read: %v", err)
	}
}
