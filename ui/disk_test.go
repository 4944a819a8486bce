//go:build linux

package ui_test

import (
	"encoding/json"
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

	"capscye/ui/console"
	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
	"capscye/worksheets"
	"capscye/worksheets/disk/disktest"
)

// What happens to the file or its folder under the program is said on the screen;
// the work stays, a kill does not take it, and once the trouble is over it is saved.
func TestWhatHappensToTheFileUnderTheProgram(t *testing.T) {
	t.Parallel()
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
		}, func(folder string) error { return os.Remove(filepath.Join(folder, "film")) }, "Not saved: no space left on device. ^s tries again, ^c keeps it aside."},
		{"the disk is read-only", true, func(folder string) error {
			return syscall.Mount("none", folder, "tmpfs", syscall.MS_REMOUNT|syscall.MS_RDONLY, "")
		}, func(folder string) error { return syscall.Mount("none", folder, "tmpfs", syscall.MS_REMOUNT, "") }, "Not saved: read-only file system."},
		{"the folder is removed", false, os.RemoveAll, nil, "Not saved: there is no such folder."},
		{"the file is a folder", false, func(folder string) error { return errors.Join(gone(folder), os.Mkdir(file(folder), 0o755)) }, gone, "Not saved: it is a folder."},
		{"the file is a pipe", false, func(folder string) error { return errors.Join(gone(folder), syscall.Mkfifo(file(folder), 0o644)) }, gone, "Not saved: it is a device or pipe."},
		{"the file is a link round to itself", false, func(folder string) error { return errors.Join(gone(folder), os.Symlink("blouse.toml", file(folder))) }, gone,
			"Not saved: too many levels of sym..."},
		{"the file is cut off", false, func(folder string) error { return os.Truncate(file(folder), 40) }, gone, "Not saved: another program changed the file"},
		{"the file is another's", false, func(folder string) error { return os.WriteFile(file(folder), []byte("# theirs\n"), 0o644) }, gone, "Not saved: another program changed the file"},
		{"the file is a link to another", false, func(folder string) error {
			return errors.Join(gone(folder), os.WriteFile(filepath.Join(folder, "coat.toml"), []byte("# theirs\n"), 0o644), os.Symlink("coat.toml", file(folder)))
		}, gone, "Not saved: another program changed the file"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			folder, term := program.Sewing(t, c.ownDisk)
			if err := c.happens(folder); err != nil {
				t.Fatal(err)
			}
			term.Goes("14 1/4\r", c.said)
			term.Await("[not saved]")
			program.Await(t, "it to be kept elsewhere", func() bool { return keptAnswer(filepath.Dir(folder), worksheets.Bicep) == "14 1/4" })
			if c.ends == nil { // nothing more can be saved: it is said, and can be left
				term.Types("\x03")
				term.Goes("\x03", "")
				if status := term.Ends(); status != console.ExitUnfinished {
					t.Errorf("status %d", status)
				}
				term.GivenBack()
				return
			}
			term.Cmd.Process.Kill()
			_ = term.Cmd.Wait()
			if err := c.ends(folder); err != nil {
				t.Fatal(err)
			}
			if _, err := os.Stat(file(folder)); errors.Is(err, os.ErrNotExist) { // the person puts it back
				props.LayAt(t, file(folder), "choir-blouse")
			}
			again := program.Start(t, folder, []string{"XDG_STATE_HOME=" + filepath.Dir(folder)}, "blouse.toml")
			again.Await("Unsaved work of ")
			again.Goes("\x07", "copy 1 of 1")
			again.Goes("\x18", "What if")
			again.Goes("k", "[saved]")
			again.Types("\x03")
			if status := again.Ends(); status != 0 {
				t.Errorf("status %d", status)
			}
			if got := props.AnswerIn(t, file(folder), worksheets.Bicep); got != "14 1/4" {
				t.Errorf("in the end the file has %q", got)
			}
		})
	}
}

// keptAnswer is an answer of the one version that is kept in a state folder. What is half
// typed is kept there too, and is no answer yet.
func keptAnswer(state string, k worksheets.Key) string {
	kept, _ := filepath.Glob(filepath.Join(state, "capscye", "*.json"))
	if len(kept) != 1 {
		return ""
	}
	raw, _ := os.ReadFile(kept[0])
	var place struct {
		Versions []struct{ Answers map[string]string }
	}
	if json.Unmarshal(raw, &place) != nil || len(place.Versions) != 1 {
		return ""
	}
	return place.Versions[0].Answers[k.Path()]
}

// Two real programs on one sheet: the second is told, and what either types is in
// the file or kept beside it, whoever saves first.
func TestTwoRealProgramsOnOneSheet(t *testing.T) {
	t.Parallel()
	folder, one := program.Sewing(t, false)
	two := program.Start(t, folder, []string{"XDG_STATE_HOME=" + filepath.Dir(folder)}, "blouse.toml")
	two.Await("This worksheet is open in another capscye; change it in one place only.")
	two.Goes("15\r", "15 in")
	program.Await(t, "the second to save", func() bool {
		return strings.Contains(props.Read(t, filepath.Join(folder, "blouse.toml")), `"15"`)
	})
	one.Goes("14\r", "Not saved: another program changed the file.")
	one.Goes("\x13", "decide later")
	one.Answers("\x1b", "[1 Body]")
	one.Goes("\x13", "take theirs, and save mine beside it")
	one.Answers("t", "blouse.toml.mine-1")
	if got := props.AnswerIn(t, filepath.Join(folder, "blouse.toml.mine-1"), worksheets.Bicep); got != "14" {
		t.Errorf("mine has %q", got)
	}
	if got := props.AnswerIn(t, filepath.Join(folder, "blouse.toml"), worksheets.Bicep); got != "15" {
		t.Errorf("theirs has %q", got)
	}
	for _, term := range []*program.Terminal{one, two} {
		term.Types("\x03")
		if status := term.Ends(); status != 0 {
			t.Errorf("status %d", status)
		}
		term.GivenBack()
	}
}

// A clock that goes back, and files from the future, change nothing: no time of a
// file is looked at.
func TestTheClockGoesBack(t *testing.T) {
	t.Parallel()
	folder, term := program.Sewing(t, false)
	path := filepath.Join(folder, "blouse.toml")
	for i, when := range []time.Time{time.Now().AddDate(30, 0, 0), time.Unix(0, 0)} {
		if err := os.Chtimes(path, when, when); err != nil {
			t.Fatal(err)
		}
		text := []string{"14", "15"}[i]
		term.Goes(text+"\r", text+" in")
		program.Await(t, "it to be saved", func() bool { return strings.Contains(props.Read(t, path), `= "`+text+`"`) })
		term.Types("\x1b[Z") // back to the field
	}
	if err := os.WriteFile(path, []byte(strings.Replace(props.Read(t, path), `"15"`, `"16"`, 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(path, time.Unix(0, 0), time.Unix(0, 0)); err != nil { // older, and as long as it was
		t.Fatal(err)
	}
	term.Goes("17\r", "Not saved: another program changed the file.")
}

// Somebody who may write a sheet and not own it saves it in place: it stays with its
// owner, and nothing stays beside it.
func TestASheetOfSomebodyElse(t *testing.T) {
	if os.Getuid() != 0 {
		t.Skip("only root can be two people")
	}
	built, err := program.Binary()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	path := filepath.Join(folder, "blouse.toml")
	source, _ := os.ReadFile(props.Example("choir-blouse"))
	ours := filepath.Join(folder, "capscye")
	copied, err := os.ReadFile(built)
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
	if is := info.Sys().(*syscall.Stat_t); is.Uid != 4242 || is.Gid != 4242 || props.AnswerIn(t, path, worksheets.Bicep) != "14" {
		t.Errorf("it belongs to %d and %d now, and has %q", is.Uid, is.Gid, props.AnswerIn(t, path, worksheets.Bicep))
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
	built, err := program.Binary()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	props.LayAt(t, filepath.Join(folder, "blouse.toml"), "choir-blouse")
	cmd := exec.Command(watch, "-f", "-y", "-o", "calls", "-e", "trace=fsync,renameat,rename,renameat2", built, "ask", "blouse.toml")
	cmd.Dir, cmd.Stdin = folder, strings.NewReader("14\nquit\n")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Skipf("it cannot be watched here: %v\n%s", err, out)
	}
	var order []string
	for _, c := range []struct{ what, call string }{
		{"version", `fsync\(\d+<[^>]*\.capscye-tmp>\)\s*= 0`}, {"name", `rename\w*\(.*\.capscye-tmp", .*"blouse\.toml".*= 0`}, {"folder", `fsync\(\d+<` + regexp.QuoteMeta(folder) + `>\)\s*= 0`},
	} {
		for i, line := range disktest.WholeCalls(props.Read(t, filepath.Join(folder, "calls"))) {
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
		t.Errorf("a save is %q, want %q:\n%s", words, want, props.Read(t, filepath.Join(folder, "calls")))
	}
}
