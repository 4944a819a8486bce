//go:build linux

package ui_test

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"

	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// savingCalls are the system calls that change something on a disk, or look at it while
// something is.
var savingCalls = []string{"openat", "write", "pwrite64", "ftruncate", "fchmod", "fsync", "linkat", "renameat", "unlinkat", "flock"}

// callsBeforeTheFirstAnswer are how often the program makes each of these calls until it
// asks its first question: what it does at its start changes no sheet, and is most of all.
func callsBeforeTheFirstAnswer(t *testing.T, strace, built string) map[string]int {
	t.Helper()
	folder := t.TempDir()
	props.LayAt(t, filepath.Join(folder, "blouse.toml"), "choir-blouse")
	cmd := exec.Command(strace, "-f", "-qq", "-s", "4096", "-o", "calls", "-e", "trace="+strings.Join(savingCalls, ","), built, "ask", "blouse.toml")
	cmd.Dir, cmd.Stdin = folder, strings.NewReader("quit\n")
	cmd.Env = append(os.Environ(), "XDG_STATE_HOME="+filepath.Join(folder, "state"))
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Skipf("nothing can be watched here: %v\n%s", err, out)
	}
	before, _, asked := strings.Cut(props.Read(t, filepath.Join(folder, "calls")), "Bicep, in inches?")
	if !asked {
		t.Fatalf("it asks nothing:\n%s", before)
	}
	count := map[string]int{}
	for _, m := range regexp.MustCompile(`(?m)^\d+ +(\w+)\(`).FindAllStringSubmatch(before, -1) {
		count[m[1]]++
	}
	return count
}

// A sheet that can only be written in place, and one that can be renamed over, is the old
// or the new one for the next start, whichever system call of a save the program is
// killed at; and the save after that leaves nothing beside it.
func TestKilledAtEverySystemCallOfASave(t *testing.T) {
	t.Parallel()
	strace, err := exec.LookPath("strace")
	if err != nil {
		t.Skip("nothing to kill at a system call with here")
	}
	built, err := program.Binary()
	if err != nil {
		t.Fatal(err)
	}
	before := callsBeforeTheFirstAnswer(t, strace, built)
	root := func() error {
		if os.Getuid() != 0 {
			return errors.New("only root can")
		}
		return nil
	}
	for name, lay := range map[string]func(t *testing.T, path string) error{
		"alone":           func(*testing.T, string) error { return nil },
		"with two names":  func(_ *testing.T, path string) error { return os.Link(path, path+".twin") },
		"written shorter": func(_ *testing.T, path string) error { return errors.Join(lengthen(path), os.Link(path, path+".twin")) },
		"mounted": func(t *testing.T, path string) error {
			kept := filepath.Join(filepath.Dir(filepath.Dir(path)), "kept.toml")
			if err := errors.Join(root(), os.WriteFile(kept, []byte(props.Read(t, path)), 0o644)); err != nil {
				return err
			}
			if err := syscall.Mount(kept, path, "", syscall.MS_BIND, ""); err != nil {
				return err
			}
			t.Cleanup(func() { syscall.Unmount(path, syscall.MNT_DETACH) })
			return nil
		},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			kills, step := 0, 1
			if !props.Thorough() {
				if step = 4; name == "mounted" || name == "written shorter" { // which go the same way as two names
					t.Skip("CAPSCYE_TEST_ALL=1 tries it")
				}
			}
			for _, call := range savingCalls {
				for n := max(before[call]-3, 1); ; n += step { // a few calls of the runtime come when they like
					path := filepath.Join(t.TempDir(), "sewing", "blouse.toml")
					if err := os.Mkdir(filepath.Dir(path), 0o755); err != nil {
						t.Fatal(err)
					}
					props.LayAt(t, path, "choir-blouse")
					if err := lay(t, path); err != nil {
						t.Skip(err)
					}
					cmd := exec.Command(strace, "-f", "-qq", "-o", "/dev/null", "-e", "trace="+call, "-e", fmt.Sprintf("inject=%s:signal=KILL:when=%d", call, n), built, "ask", path)
					cmd.Dir, cmd.Stdin = filepath.Dir(path), strings.NewReader("14\nquit\n")
					cmd.Env = append(os.Environ(), "XDG_STATE_HOME="+filepath.Dir(cmd.Dir))
					out, err := cmd.CombinedOutput()
					if err == nil {
						break // it has no such call left
					}
					if !strings.Contains(err.Error(), "killed") {
						t.Skipf("nothing can be killed at a system call here: %v\n%s", err, out)
					}
					kills++
					if comesBack(t, fmt.Sprintf("killed at %s %d", call, n), path); t.Failed() {
						return
					}
				}
			}
			if t.Logf("%d kills", kills); kills < 10 {
				t.Error("hardly anything was killed")
			}
		})
	}
}

// lengthen makes the file longer than what is saved of it: a long answer that is taken
// away again with the first line that is typed.
func lengthen(path string) error {
	raw, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	return os.WriteFile(path, []byte(strings.Replace(string(raw), `"13 3/4"`, `"13                                   3/4"`, 1)), 0o644)
}

// comesBack starts the program once more, which must show the sheet whole, with the old
// answer or the new one; then saves, which must leave nothing beside it. What was killed
// is gone, so this can be the program within the test, which costs no processes.
func comesBack(t *testing.T, when, path string) {
	t.Helper()
	folder := filepath.Dir(path)
	raw, _ := os.ReadFile(path)
	if status, _, errs := run("", "show", path); status != 0 {
		t.Errorf("%s: shown with status %d: %.200s\nthe file was left as\n%s", when, status, errs, raw)
		return
	}
	example := strings.Replace(props.Read(t, props.Example("choir-blouse")), `"13 3/4"`, `"BICEP"`, 1)
	if got := regexp.MustCompile(`"(14|13 +3/4)"`).ReplaceAllString(props.Read(t, path), `"BICEP"`); got != example {
		t.Errorf("%s: the file is neither the old nor the new one:\n%s", when, got)
	}
	if status, out, errs := run("15\nquit\n", "ask", path); status != 0 {
		t.Errorf("%s: then it cannot be saved: %s%s", when, out, errs)
	}
	if got := props.AnswerIn(t, path, worksheets.Bicep); got != "15" {
		t.Errorf("%s: saved again, it has %q", when, got)
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if name := e.Name(); name != "blouse.toml" && name != "blouse.toml.twin" {
			t.Errorf("%s: left beside it: %s", when, name)
		}
	}
}

// Two programs that answer at the same moment: both answers are in the file or one of
// them is told, and what it was told is kept beside it.
func TestTwoSavesAtTheSameMoment(t *testing.T) {
	if _, err := program.Binary(); err != nil {
		t.Fatal(err)
	}
	rounds := props.OfMany(10, 26)
	if n, err := strconv.Atoi(os.Getenv(kills)); err == nil {
		rounds = n
	}
	lost, told := 0, 0
	for n := range rounds {
		folder := t.TempDir()
		path := filepath.Join(folder, "blouse.toml")
		props.LayAt(t, path, "choir-blouse")
		names := [2]string{"blouse.toml", "blouse.toml"}
		if n%2 == 1 { // by two names in two folders
			names[1] = "deep/twin.toml"
			if err := errors.Join(os.Mkdir(filepath.Join(folder, "deep"), 0o755), os.Link(path, filepath.Join(folder, names[1]))); err != nil {
				t.Fatal(err)
			}
		}
		lines := [2]string{"14\nquit\n", "\n40\nquit\n"} // the bicep, and the ease behind it
		var out [2]string
		var wait sync.WaitGroup
		for i := range lines {
			wait.Go(func() { out[i], _ = answered(t, folder, lines[i], "ask", names[i]) })
		}
		wait.Wait()
		beside, _ := filepath.Glob(filepath.Join(folder, "*.mine-*"))
		deeper, _ := filepath.Glob(filepath.Join(folder, "deep", "*.mine-*"))
		beside = append(beside, deeper...)
		said := strings.Contains(out[0]+out[1], "Another program changed")
		has := func(file string) (bicep, ease bool) {
			return props.AnswerIn(t, file, worksheets.Bicep) == "14", props.AnswerIn(t, file, worksheets.EaseBicep) == "40"
		}
		bicep, ease := has(path)
		if bicep && ease {
			continue
		}
		if !said || len(beside) != 1 {
			t.Logf("round %d: bicep %v, ease %v, beside %q; they said\n%s\n%s", n, bicep, ease, beside, out[0], out[1])
			lost++
			continue
		}
		if keptBicep, keptEase := has(beside[0]); (bicep || keptBicep) && (ease || keptEase) {
			told++
		} else {
			lost++
		}
	}
	t.Logf("%d rounds: %d told, %d lost", rounds, told, lost)
	if lost > 0 {
		t.Errorf("in %d of %d rounds an answer vanished", lost, rounds)
	}
}

// Somebody else writes the file while a save of it is under way, the first call of which to
// reach the disk takes long here: in place or by renaming. Theirs stays, and the program says so and keeps its own beside.
func TestSomebodyWritesInTheMiddleOfASave(t *testing.T) {
	t.Parallel()
	strace, err := exec.LookPath("strace")
	if err != nil {
		t.Skip("nothing to hold a system call up with here")
	}
	built, err := program.Binary()
	if err != nil {
		t.Fatal(err)
	}
	for name, write := range map[string]func(path, content string) error{
		"in place": func(path, content string) error { return os.WriteFile(path, []byte(content), 0o644) },
		"by renaming": func(path, content string) error {
			return errors.Join(os.WriteFile(path+"~", []byte(content), 0o644), os.Rename(path+"~", path))
		},
		"locking it": func(path, _ string) error { return os.Chmod(path, 0o444) },
		"by linking": func(path, _ string) error { return os.Link(path, path+".twin") },
	} {
		for _, links := range []int{1, 2} {
			t.Run(fmt.Sprint(name, links), func(t *testing.T) {
				t.Parallel()
				folder := t.TempDir()
				path := filepath.Join(folder, "blouse.toml")
				props.LayAt(t, path, "choir-blouse")
				if links == 2 {
					if err := os.Link(path, filepath.Join(folder, "first.twin")); err != nil {
						t.Fatal(err)
					}
				}
				cmd := exec.Command(strace, "-f", "-qq", "-o", "/dev/null", "-e", "trace=fsync", "-e", "inject=fsync:delay_enter=1000000:when=1", built, "ask", path)
				cmd.Dir, cmd.Stdin = folder, strings.NewReader("14\nquit\n")
				cmd.Env = append(os.Environ(), "XDG_STATE_HOME="+filepath.Join(folder, "state"))
				var out strings.Builder
				cmd.Stdout, cmd.Stderr = &out, &out
				if err := cmd.Start(); err != nil {
					t.Skip(err)
				}
				program.Await(t, "a draft", func() bool { return len(halfWritten(folder)) > 0 })
				theirs := strings.Replace(props.Read(t, path), `"39 1/2"`, `"41"`, 1)
				if err := write(path, theirs); err != nil {
					t.Fatal(err)
				}
				_ = cmd.Wait()
				kept, _ := filepath.Glob(filepath.Join(folder, "blouse.toml.mine-1"))
				switch bicep := props.AnswerIn(t, path, worksheets.Bicep); {
				case name == "by linking":
					if bicep != "14" || props.Read(t, path) != props.Read(t, path+".twin") {
						t.Errorf("the two names have come apart, or it is not saved:\n%s", out.String())
					}
				case name == "locking it":
					if bicep == "14" && links == 1 || !strings.Contains(out.String(), "Not saved") && bicep != "14" {
						t.Errorf("the file has %q:\n%s", bicep, out.String())
					}
				case props.Read(t, path) != theirs || len(kept) != 1 || !strings.Contains(out.String(), "Another program changed"):
					t.Errorf("the file has %q, beside it lies %q, and it said\n%s", bicep, kept, out.String())
				case props.AnswerIn(t, kept[0], worksheets.Bicep) != "14":
					t.Error("mine is not kept")
				}
			})
		}
	}
}
