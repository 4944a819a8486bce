//go:build linux

package ui_test

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// answered is the real program asked on in a folder, with lines for an answer, and how
// it ends. What is not saved is kept in "state" there.
func answered(t *testing.T, folder, lines string, args ...string) (out string, status int) {
	t.Helper()
	built, err := program.Binary()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(built, args...)
	cmd.Dir, cmd.Stdin = folder, strings.NewReader(lines)
	cmd.Env = append(os.Environ(), "XDG_STATE_HOME="+filepath.Join(folder, "state"))
	raw, err := cmd.CombinedOutput()
	if err != nil && !errors.As(err, new(*exec.ExitError)) {
		t.Fatal(err)
	}
	return string(raw), cmd.ProcessState.ExitCode()
}

// linkedRooms is a folder with a sheet in real, by way of links that lead up again: a
// path made shorter by its letters leads to home/blouse.toml, which is another sheet.
func linkedRooms(t *testing.T) (folder, sheet, another string) {
	t.Helper()
	folder = t.TempDir()
	sheet, another = filepath.Join(folder, "real", "blouse.toml"), filepath.Join(folder, "home", "blouse.toml")
	if err := errors.Join(os.MkdirAll(filepath.Join(folder, "real", "deep"), 0o755), os.Mkdir(filepath.Join(folder, "home"), 0o755),
		os.Symlink("../real/deep", filepath.Join(folder, "home", "linked")), os.Symlink("../blouse.toml", filepath.Join(folder, "real", "deep", "blouse.toml"))); err != nil {
		t.Fatal(err)
	}
	props.LayAt(t, sheet, "choir-blouse")
	props.LayAt(t, another, "choir-blouse") // nothing that it says tells them apart
	return folder, sheet, another
}

// Written is what was read, wherever the letters of its path seem to lead.
func TestASheetIsWrittenWhereItIsRead(t *testing.T) {
	t.Parallel()
	for _, path := range []string{"linked/blouse.toml", "linked/../blouse.toml", "./linked/..//blouse.toml", "../home/linked/../deep/blouse.toml"} {
		folder, sheet, another := linkedRooms(t)
		out, status := answered(t, filepath.Join(folder, "home"), "14 1/8\nquit\n", "ask", path)
		if status != 0 {
			t.Errorf("%s: status %d, %s", path, status, out)
		}
		if got := props.AnswerIn(t, sheet, worksheets.Bicep); got != "14 1/8" {
			t.Errorf("%s: the sheet has %q", path, got)
		}
		if props.Read(t, another) != props.Read(t, props.Example("choir-blouse")) {
			t.Errorf("%s: another sheet was written over", path)
		}
		if info, err := os.Lstat(filepath.Join(folder, "real", "deep", "blouse.toml")); err != nil || info.Mode().Type() != os.ModeSymlink {
			t.Errorf("%s: the link is no link any more: %v", path, err)
		}
		for _, room := range []string{"home", "real", "real/deep"} {
			if left, _ := filepath.Glob(filepath.Join(folder, room, ".*")); len(left) > 0 {
				t.Errorf("%s: left: %q", path, left)
			}
		}
	}
}

// One file is one sheet by whatever path: the second program is told, and what a killed
// one left is offered.
func TestOneSheetByTwoPaths(t *testing.T) {
	t.Parallel()
	for name, lay := range map[string]func(folder string) (one, two string, err error){
		"a linked folder": func(folder string) (string, string, error) {
			return "blouse.toml", "linked/blouse.toml", os.Symlink(".", filepath.Join(folder, "linked"))
		},
		"a link up": func(folder string) (string, string, error) {
			return "blouse.toml", "away/../blouse.toml", errors.Join(os.MkdirAll(filepath.Join(folder, "deep"), 0o755), os.Symlink("deep", filepath.Join(folder, "away")))
		},
		"a second name": func(folder string) (string, string, error) {
			return "blouse.toml", "twin.toml", os.Link(filepath.Join(folder, "blouse.toml"), filepath.Join(folder, "twin.toml"))
		},
		"a second name elsewhere": func(folder string) (string, string, error) {
			return "blouse.toml", "deep/twin.toml", errors.Join(os.Mkdir(filepath.Join(folder, "deep"), 0o755), os.Link(filepath.Join(folder, "blouse.toml"), filepath.Join(folder, "deep", "twin.toml")))
		},
		"a second name by a link": func(folder string) (string, string, error) {
			return "twin.toml", "link.toml", errors.Join(os.Link(filepath.Join(folder, "blouse.toml"), filepath.Join(folder, "twin.toml")), os.Symlink("blouse.toml", filepath.Join(folder, "link.toml")))
		},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			folder := t.TempDir()
			props.LayAt(t, filepath.Join(folder, "blouse.toml"), "choir-blouse")
			one, two, err := lay(folder)
			if err != nil {
				t.Fatal(err)
			}
			state := []string{"XDG_STATE_HOME=" + filepath.Join(folder, "state")}
			first := program.Start(t, folder, state, one)
			first.Await("Sleeve needs 2 1/2 in")
			if out, _ := answered(t, folder, "quit\n", "ask", two); !strings.Contains(out, "open in another capscye") && !strings.Contains(out, "Another capscye has this sheet open") {
				t.Errorf("the second program is not told:\n%s", out)
			}
			// what cannot be saved is left behind
			if err := os.Chmod(filepath.Join(folder, "blouse.toml"), 0o444); err != nil {
				t.Fatal(err)
			}
			first.Goes("14 1/4\r", "[not saved]")
			program.Await(t, "it to be kept elsewhere", func() bool { return keptAnswer(filepath.Join(folder, "state"), worksheets.Bicep) == "14 1/4" })
			first.Cmd.Process.Kill()
			_ = first.Cmd.Wait()
			if err := os.Chmod(filepath.Join(folder, "blouse.toml"), 0o644); err != nil {
				t.Fatal(err)
			}
			second := program.Start(t, folder, state, two)
			second.Await("[saved]")
			second.Goes("\x07", "copy 1 of 1")
			second.Await("14 1/4")
		})
	}
}

// The owner of a file may lock it while it is open: it is not written, which is said, and
// with the lock gone the same is saved.
func TestAFileIsLockedUnderTheProgram(t *testing.T) {
	t.Parallel()
	folder, term := program.Sewing(t, false)
	path := filepath.Join(folder, "blouse.toml")
	before := props.Read(t, path)
	if err := os.Chmod(path, 0o444); err != nil {
		t.Fatal(err)
	}
	term.Goes("14 1/4\r", "Not saved: it is write-protected.")
	if props.Read(t, path) != before {
		t.Error("it was written all the same")
	}
	if err := os.Chmod(path, 0o644); err != nil {
		t.Fatal(err)
	}
	term.Goes("15\r", "[saved]")
	if got := props.AnswerIn(t, path, worksheets.Bicep); got != "14 1/4" {
		t.Errorf("then the file has %q", got)
	}
}

// Pipes in the place of everything that is kept for a sheet hold nobody up: they are
// nobody's, and what is typed is saved.
func TestPipesWhereThingsAreKept(t *testing.T) {
	t.Parallel()
	folder, term := program.Sewing(t, false)
	term.Types("\x03")
	term.Ends()
	state := filepath.Join(filepath.Dir(folder), "capscye")
	locks, err := filepath.Glob(filepath.Join(state, "*-1.lock"))
	if err != nil || len(locks) == 0 {
		t.Fatalf("no lock to put a pipe for: %v", err)
	}
	for _, lock := range locks {
		for _, n := range []string{"-1", "-2", "-3", "-4"} {
			slot := strings.TrimSuffix(lock, "-1.lock") + n
			_ = os.Remove(slot + ".lock")
			if err := errors.Join(syscall.Mkfifo(slot+".lock", 0o600), syscall.Mkfifo(slot+".json", 0o600)); err != nil {
				t.Skip(err)
			}
		}
	}
	again := program.Start(t, folder, []string{"XDG_STATE_HOME=" + filepath.Dir(folder)}, "blouse.toml")
	again.Await("Sleeve needs 2 1/2 in")
	again.Goes("14 1/4\r", "14 1/4 in")
	program.Await(t, "it to be saved", func() bool {
		return props.AnswerIn(t, filepath.Join(folder, "blouse.toml"), worksheets.Bicep) == "14 1/4"
	})
	again.Types("\x03")
	if status := again.Ends(); status != 0 {
		t.Errorf("status %d", status)
	}
}

// What something made of a kept file, and this program never writes, is torn: it is put
// aside and said, whatever reads it.
func TestWhatIsKeptIsTorn(t *testing.T) {
	t.Parallel()
	for _, torn := range []string{`{"versions":[null]}`, `{"versions":[{}]}`, `{"versions":[{"answers":null}]}`, `{"versions":[{"answers":{"body.bicep":"14"}},null]}`} {
		folder, term := program.Sewing(t, false)
		term.Types("\x03")
		term.Ends()
		state := filepath.Join(filepath.Dir(folder), "capscye")
		locks, _ := filepath.Glob(filepath.Join(state, "*-1.lock"))
		for _, lock := range locks {
			if err := os.WriteFile(strings.TrimSuffix(lock, ".lock")+".json", []byte(torn), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		again := program.Start(t, folder, []string{"XDG_STATE_HOME=" + filepath.Dir(folder)}, "blouse.toml")
		again.Await("cannot be read")
		again.Types("\x03")
		if status := again.Ends(); status != 0 {
			t.Errorf("%s: status %d", torn, status)
		}
		if aside, _ := filepath.Glob(filepath.Join(state, "*.unreadable-1")); len(aside) != len(locks) || props.Read(t, aside[0]) != torn {
			t.Errorf("%s: put aside: %q", torn, aside)
		}
	}
}

// A number that no reader of ours holds, under keys that nobody uses, stays as it is;
// under one of ours it is an answer that cannot be read.
func TestANumberThatNobodyUsesIsTooLarge(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	path := filepath.Join(folder, "blouse.toml")
	source := "\ufeff[about]\nunit = \"in\"\n[body]\nbicep = \"13\" # arm\nneck = 99999999999999999999 # long\n[shop]\nlist = [1, 0xFFFFFFFFFFFFFFFFFFFF, -1e999, 9_999_999_999_999_999_999, 1e999]\nat = {x = 123456789012345678901234567890}\n"
	if err := os.WriteFile(path, []byte(source), 0o644); err != nil {
		t.Fatal(err)
	}
	out, status := answered(t, folder, "14\nquit\n", "ask", "blouse.toml")
	if want := strings.Replace(source, `"13"`, `"14"`, 1); props.Read(t, path) != want {
		t.Errorf("status %d, the file is\n%s\nwant\n%s\n%s", status, props.Read(t, path), want, out)
	}
	for from, to := range map[string]string{`bicep = "14"`: "bicep = 99999999999999999999", "\ufeff": "\ufeffversion = 99999999999999999999\n"} {
		if err := os.WriteFile(path, []byte(strings.Replace(source, strings.Replace(from, "14", "13", 1), to, 1)), 0o644); err != nil {
			t.Fatal(err)
		}
		if out, _ := answered(t, folder, "", "show", "blouse.toml"); !strings.Contains(out, "99999999999999999999") {
			t.Errorf("%s is not said:\n%s", to, out)
		}
	}
	many := strings.Repeat("x = 99999999999999999999\n[[shop]]\n", 1000)
	if err := os.WriteFile(path, []byte(many), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, status := answered(t, folder, "", "show", "blouse.toml"); status != 2 {
		t.Errorf("a thousand of them: status %d", status)
	}
}
