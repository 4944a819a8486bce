package disk_test

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"capscye/worksheets/disk"
)

// takeNames takes every name that is tried.
func takeNames(t testing.TB, lead string) {
	t.Helper()
	taken := write(t, lead, "taken")
	for n := range 1000 {
		if err := os.Link(taken, fmt.Sprintf("%s-%d", lead, n+1)); err != nil {
			t.Fatal(err)
		}
	}
}

func TestWhatIsPutAsideTakesTheFirstFreeName(t *testing.T) {
	path := filepath.Join(t.TempDir(), "blouse.toml")
	write(t, path+".before-2", "another's")
	for _, want := range []string{".before-1", ".before-3", ".before-4"} {
		aside, err := disk.PutAside(path, "before", []byte("for "+want))
		if aside != path+want || err != nil {
			t.Errorf("it is in %s, %v", aside, err)
		}
		onDisk(t, path+want, "for "+want)
	}
	onDisk(t, path+".before-2", "another's")
	if mine, err := disk.PutAside(path, "mine", nil); mine != path+".mine-1" || err != nil {
		t.Errorf("with another word it is in %s, %v", mine, err)
	}
}

// A killed program may have put the same there: once is enough.
func TestTheSameIsPutAsideOnce(t *testing.T) {
	path := filepath.Join(t.TempDir(), "blouse.toml")
	for _, c := range []struct{ content, want string }{{"one", "-1"}, {"two", "-2"}, {"two", "-2"}, {"one", "-1"}, {"three", "-3"}} {
		if aside, err := disk.PutAsideOnce(path, "before", []byte(c.content)); aside != path+".before"+c.want || err != nil {
			t.Errorf("%s is in %s, %v", c.content, aside, err)
		}
	}
	if got := names(t, filepath.Dir(path)); len(got) != 3 {
		t.Errorf("the folder holds %q", got)
	}
}

func TestWhatIsMovedAsideTakesTheFirstFreeName(t *testing.T) {
	folder := t.TempDir()
	lead := filepath.Join(folder, "blouse.unreadable")
	for _, want := range []string{"-1", "-2"} {
		path := write(t, filepath.Join(folder, "blouse.json"), "torn "+want)
		if aside, err := disk.MoveAside(path, lead); aside != lead+want || err != nil {
			t.Errorf("it is in %s, %v", aside, err)
		}
		onDisk(t, lead+want, "torn "+want)
		if _, err := os.Stat(path); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("it lies in the way still: %v", err)
		}
	}
	if aside, err := disk.MoveAside(filepath.Join(folder, "gone.json"), lead); aside != "" || !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("what is not there is in %s, %v", aside, err)
	}
	if got := names(t, folder); len(got) != 2 {
		t.Errorf("the folder holds %q", got)
	}
}

func TestNamesComeToAnEnd(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), "whole")
	takeNames(t, path+".before")
	if aside, err := disk.PutAside(path, "before", nil); aside != "" || !errors.Is(err, fs.ErrExist) {
		t.Errorf("put aside in %q, %v", aside, err)
	}
	if aside, err := disk.MoveAside(path, path+".before"); aside != "" || !errors.Is(err, fs.ErrExist) {
		t.Errorf("moved to %q, %v", aside, err)
	}
	onDisk(t, path, "whole")
	onDisk(t, path+".before-1000", "taken")
}

// A name may have 255 bytes on the usual file systems, and need be no text.
func TestEveryNameThatAFileSystemTakes(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("other systems take other names")
	}
	for _, name := range []string{
		strings.Repeat("n", 255), strings.Repeat("é", 127) + "n", "n" + strings.Repeat("é", 127), "xyz" + strings.Repeat("💩", 63), strings.Repeat("\xff", 255), strings.Repeat("\x80", 255),
		" ", "-x", "a\nb", "\x1b[31m", "*?[a]", "two words", ".toml", "~", "$HOME", "a\\b",
	} {
		path := filepath.Join(t.TempDir(), name)
		replace(t, path, "made")
		replace(t, path, "replaced")
		onDisk(t, path, "replaced")
		if err := os.Link(path, filepath.Join(filepath.Dir(path), "twin")); err != nil {
			t.Fatal(err)
		}
		replace(t, path, "in place")
		onDisk(t, path, "in place")
		for n := range 2 {
			aside, err := disk.PutAside(path, "before", []byte("aside"))
			if err != nil {
				t.Fatalf("%q, put aside: %v", name, err)
			}
			onDisk(t, aside, "aside")
			base := filepath.Base(aside)
			if end := fmt.Sprintf(".before-%d", n+1); !strings.HasSuffix(base, end) || len(name)+len(end) > 255 && len(base) < 248 {
				t.Errorf("%.20q: more is cut than needed in %q", name, base)
			}
			if utf8.ValidString(name) && !utf8.ValidString(base) {
				t.Errorf("%q: a character is cut in %q", name, base)
			}
		}
	}
}

// What a killed program left is swept by the next save: drafts of programs that are
// gone, and of an earlier one that had our number. Another's, and another file's, stays.
func TestTheNextSaveSweepsWhatAKilledOneLeft(t *testing.T) {
	gone := exec.Command(os.Args[0], "-test.run=^$")
	if err := gone.Run(); err != nil {
		t.Fatal(err)
	}
	dead, parent, own := gone.Process.Pid, os.Getppid(), os.Getpid()
	folder := t.TempDir()
	draft := func(name string, pid int) string {
		return write(t, filepath.Join(folder, fmt.Sprintf(".%s.%d-1.capscye-tmp", name, pid)), "half writ")
	}
	path := write(t, filepath.Join(folder, "blouse.toml"), "old")
	goes := []string{draft("blouse.toml", dead), draft("blouse.toml", own)}
	stays := []string{draft("blouse.toml", parent), draft("coat.toml", dead), draft("blouse.toml.toml", dead), draft("blouse", dead),
		write(t, filepath.Join(folder, ".blouse.toml.1x-1.capscye-tmp"), ""), write(t, filepath.Join(folder, ".blouse.toml.0-1.capscye-tmp"), ""),
		write(t, filepath.Join(folder, fmt.Sprintf(".blouse.toml.%d-1.txt", dead)), ""), write(t, filepath.Join(folder, fmt.Sprintf("blouse.toml.%d-1.capscye-tmp", dead)), ""),
		write(t, filepath.Join(folder, fmt.Sprintf("%d-1.capscye-tmp", dead)), "")}
	replace(t, path, "new")
	for _, p := range goes {
		if _, err := os.Stat(p); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("%s is still there: %v", filepath.Base(p), err)
		}
	}
	aside := draft("coat.toml", dead) // of a version that was to be put aside
	stays = slices.DeleteFunc(stays, func(p string) bool { return p == aside })
	if _, err := disk.PutAside(filepath.Join(folder, "coat.toml"), "mine", []byte("mine")); err != nil {
		t.Error(err)
	}
	if _, err := os.Stat(aside); err == nil {
		t.Error("what was to be put aside is still there")
	}
	stays = append(stays, draft("blouse.toml", own)) // another save of this program, going on
	if err := disk.Replace(path, []byte("newer"), 0o666); err != nil {
		t.Error(err)
	}
	for _, p := range stays {
		if _, err := os.Stat(p); err != nil {
			t.Error(err)
		}
	}
}
