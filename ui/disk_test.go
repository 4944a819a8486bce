//go:build linux

package ui

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"capscye/worksheets"
)

// sewing is a folder with a sheet, on a small disk of its own where that can be had,
// and the real program at it, which keeps what is not saved elsewhere.
func sewing(t *testing.T, ownDisk bool) (folder string, term *terminal) {
	t.Helper()
	folder = filepath.Join(t.TempDir(), "sewing")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	if ownDisk {
		if err := syscall.Mount("none", folder, "tmpfs", 0, "size=64k"); err != nil {
			t.Skipf("no disk of our own to fill here: %v", err)
		}
		t.Cleanup(func() { syscall.Unmount(folder, syscall.MNT_DETACH) })
	}
	layAt(t, filepath.Join(folder, "blouse.toml"), "choir-blouse")
	term = start(t, folder, []string{"XDG_STATE_HOME=" + filepath.Dir(folder)}, "blouse.toml")
	term.await("Sleeve needs 2 1/2 in")
	return folder, term
}

// What happens to the file or its folder under the program is said on the screen;
// the work stays, a kill does not take it, and once the trouble is over it is saved.
func TestWhatHappensToTheFileUnderTheProgram(t *testing.T) {
	file := func(folder string) string { return filepath.Join(folder, "blouse.toml") }
	gone := func(folder string) error { return os.Remove(file(folder)) }
	for _, c := range []struct {
		name          string
		ownDisk       bool
		happens, ends func(folder string) error
		said          string
	}{
		{"the disk is full", true, func(folder string) error {
			full := os.WriteFile(filepath.Join(folder, "film"), make([]byte, 1<<20), 0o644)
			if !errors.Is(full, syscall.ENOSPC) {
				return errors.New("it does not fill")
			}
			return nil
		}, func(folder string) error { return os.Remove(filepath.Join(folder, "film")) }, "Not saved: write blouse.toml: no space left on device"},
		{"the disk is read-only", true, func(folder string) error {
			return syscall.Mount("none", folder, "tmpfs", syscall.MS_REMOUNT|syscall.MS_RDONLY, "")
		}, func(folder string) error { return syscall.Mount("none", folder, "tmpfs", syscall.MS_REMOUNT, "") }, "Not saved: write blouse.toml: read-only file system"},
		{"the folder is removed", false, os.RemoveAll, nil, "Not saved: blouse.toml: there is no such folder"},
		{"the file is a folder", false, func(folder string) error { return errors.Join(gone(folder), os.Mkdir(file(folder), 0o755)) }, gone, "Not saved: blouse.toml: it is a folder"},
		{"the file is a pipe", false, func(folder string) error { return errors.Join(gone(folder), syscall.Mkfifo(file(folder), 0o644)) }, gone, "Not saved: blouse.toml: it is a device or pipe"},
		{"the file is a link round to itself", false, func(folder string) error { return errors.Join(gone(folder), os.Symlink("blouse.toml", file(folder))) }, gone,
			"Not saved: stat blouse.toml: too many levels of symbolic links"},
		{"the file is cut off", false, func(folder string) error { return os.Truncate(file(folder), 40) }, gone, "Not saved: another program changed the file"},
		{"the file is another's", false, func(folder string) error { return os.WriteFile(file(folder), []byte("# theirs\n"), 0o644) }, gone, "Not saved: another program changed the file"},
		{"the file is a link to another", false, func(folder string) error {
			return errors.Join(gone(folder), os.WriteFile(filepath.Join(folder, "coat.toml"), []byte("# theirs\n"), 0o644), os.Symlink("coat.toml", file(folder)))
		}, gone, "Not saved: another program changed the file"},
	} {
		t.Run(c.name, func(t *testing.T) {
			folder, term := sewing(t, c.ownDisk)
			if err := c.happens(folder); err != nil {
				t.Fatal(err)
			}
			term.goes("14 1/4\r", c.said)
			term.await("[not saved]")
			await(t, "it to be kept elsewhere", func() bool {
				kept, _ := filepath.Glob(filepath.Join(filepath.Dir(folder), "capscye", "*.json"))
				return len(kept) == 1 && strings.Contains(read(t, kept[0]), "14 1/4")
			})
			if c.ends == nil { // nothing more can be saved: it is said, and can be left
				term.types("\x03")
				term.goes("\x03", "")
				if status := term.ends(); status != exitUnfinished {
					t.Errorf("status %d", status)
				}
				term.givenBack()
				return
			}
			term.cmd.Process.Kill()
			_ = term.cmd.Wait()
			if err := c.ends(folder); err != nil {
				t.Fatal(err)
			}
			if _, err := os.Stat(file(folder)); errors.Is(err, os.ErrNotExist) { // the person puts it back
				layAt(t, file(folder), "choir-blouse")
			}
			again := start(t, folder, []string{"XDG_STATE_HOME=" + filepath.Dir(folder)}, "blouse.toml")
			again.await("Beside it lies what was not saved")
			again.goes("\x07", "copy 1 of 1")
			again.goes("\x18", "What if")
			again.goes("k", "[saved]")
			again.types("\x03")
			if status := again.ends(); status != 0 {
				t.Errorf("status %d", status)
			}
			if got := answerIn(t, file(folder), worksheets.Bicep); got != "14 1/4" {
				t.Errorf("in the end the file has %q", got)
			}
		})
	}
}

// Two real programs on one sheet: the second is told, and what either types is in
// the file or kept beside it, whoever saves first.
func TestTwoRealProgramsOnOneSheet(t *testing.T) {
	folder, one := sewing(t, false)
	two := start(t, folder, []string{"XDG_STATE_HOME=" + filepath.Dir(folder)}, "blouse.toml")
	two.await("Another capscye has this sheet open: let only one of them change it.")
	two.goes("15\r", "15 in")
	await(t, "the second to save", func() bool {
		return strings.Contains(read(t, filepath.Join(folder, "blouse.toml")), `"15"`)
	})
	one.goes("14\r", "Not saved: another program changed the file.")
	one.goes("\x13", "decide later")
	one.goes("\x1b", "BODY")
	one.goes("\x13", "take theirs, and keep mine beside it")
	one.goes("t", "blouse.toml.mine-1")
	if got := answerIn(t, filepath.Join(folder, "blouse.toml.mine-1"), worksheets.Bicep); got != "14" {
		t.Errorf("mine has %q", got)
	}
	if got := answerIn(t, filepath.Join(folder, "blouse.toml"), worksheets.Bicep); got != "15" {
		t.Errorf("theirs has %q", got)
	}
	for _, term := range []*terminal{one, two} {
		term.types("\x03")
		if status := term.ends(); status != 0 {
			t.Errorf("status %d", status)
		}
		term.givenBack()
	}
}

// A clock that goes back, and files from the future, change nothing: no time of a
// file is looked at.
func TestTheClockGoesBack(t *testing.T) {
	folder, term := sewing(t, false)
	path := filepath.Join(folder, "blouse.toml")
	for i, when := range []time.Time{time.Now().AddDate(30, 0, 0), time.Unix(0, 0)} {
		if err := os.Chtimes(path, when, when); err != nil {
			t.Fatal(err)
		}
		text := []string{"14", "15"}[i]
		term.goes(text+"\r", text+" in")
		await(t, "it to be saved", func() bool { return strings.Contains(read(t, path), `= "`+text+`"`) })
		term.types("\x1b[Z") // back to the field
	}
	if err := os.WriteFile(path, []byte(strings.Replace(read(t, path), `"15"`, `"16"`, 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(path, time.Unix(0, 0), time.Unix(0, 0)); err != nil { // older, and as long as it was
		t.Fatal(err)
	}
	term.goes("17\r", "Not saved: another program changed the file.")
}

// Somebody who may write a sheet and not own it saves it in place: it stays with its
// owner, whatever the program is killed over.
func TestASheetOfSomebodyElse(t *testing.T) {
	if os.Getuid() != 0 {
		t.Skip("only root can be two people")
	}
	program, err := binary()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	path := filepath.Join(folder, "blouse.toml")
	source, _ := os.ReadFile(example("choir-blouse"))
	ours := filepath.Join(folder, "capscye")
	copied, err := os.ReadFile(program)
	if err := errors.Join(err, os.WriteFile(ours, copied, 0o755), os.Chmod(filepath.Dir(folder), 0o755), os.Chmod(folder, 0o777),
		os.WriteFile(path, source, 0o666), os.Chmod(path, 0o666), os.Chown(path, 4242, 4242)); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(ours, "ask", "blouse.toml")
	cmd.Dir, cmd.Stdin = folder, strings.NewReader("14\nquit\n")
	cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: 4343, Gid: 4343}}
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	if is := info.Sys().(*syscall.Stat_t); is.Uid != 4242 || is.Gid != 4242 || answerIn(t, path, worksheets.Bicep) != "14" {
		t.Errorf("it belongs to %d and %d now, and has %q", is.Uid, is.Gid, answerIn(t, path, worksheets.Bicep))
	}
	if left, _ := filepath.Glob(filepath.Join(folder, "*before*")); len(left) > 0 {
		t.Errorf("left: %q", left)
	}
}

// A kill proves nothing about a loss of power, so the order is watched: the new version
// is on disk before it takes the name, and the name before the save is over.
func TestTheOrderOfASave(t *testing.T) {
	watch, err := exec.LookPath("strace")
	if err != nil {
		t.Skip("nothing to watch system calls with here")
	}
	program, err := binary()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	layAt(t, filepath.Join(folder, "blouse.toml"), "choir-blouse")
	cmd := exec.Command(watch, "-f", "-y", "-o", "calls", "-e", "trace=fsync,renameat,rename,renameat2", program, "ask", "blouse.toml")
	cmd.Dir, cmd.Stdin = folder, strings.NewReader("14\nquit\n")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Skipf("it cannot be watched here: %v\n%s", err, out)
	}
	var order []string
	for _, c := range []struct{ what, call string }{
		{"version", `fsync\(\d+<[^>]*\.capscye-tmp>\)\s*= 0`}, {"name", `rename\w*\(.*\.capscye-tmp", .*"blouse\.toml".*= 0`}, {"folder", `fsync\(\d+<` + regexp.QuoteMeta(folder) + `>\)\s*= 0`},
	} {
		for i, line := range strings.Split(read(t, filepath.Join(folder, "calls")), "\n") {
			if regexp.MustCompile(c.call).MatchString(line) {
				order = append(order, fmt.Sprintf("%03d %s", i, c.what))
			}
		}
	}
	slices.Sort(order)
	var words []string
	for _, o := range order {
		words = append(words, o[4:])
	}
	if want := []string{"version", "name", "folder"}; !slices.Equal(words, want) {
		t.Errorf("a save is %q, want %q:\n%s", words, want, read(t, filepath.Join(folder, "calls")))
	}
}
