//go:build linux

package terminal_test

import (
	"fmt"
	"maps"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"

	"github.com/creack/pty"

	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// Suspended from outside, the program gives the terminal back, and takes it again
// when it goes on.
func TestSuspendedAndGoingOn(t *testing.T) {
	t.Parallel()
	path, err := program.Binary()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	term := program.StartCommand(t, folder, nil, exec.Command("sh", "-c", path+" smock.toml; exit $?"))
	term.Await("Begin it?")
	children, err := os.ReadFile(fmt.Sprintf("/proc/%d/task/%[1]d/children", term.Cmd.Process.Pid))
	if err != nil {
		t.Skip("no way to find the program under the shell here")
	}
	var pid int
	if _, err := fmt.Sscan(string(children), &pid); err != nil {
		t.Fatal(err)
	}
	if err := syscall.Kill(pid, syscall.SIGTSTP); err != nil {
		t.Fatal(err)
	}
	program.Await(t, "the program to be stopped", func() bool {
		stat, _ := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
		return strings.Contains(string(stat), ") T ")
	})
	program.Await(t, "the first screen", func() bool { return !program.Modes(term.Raw())["1049"] && program.Modes(term.Raw())["25"] })
	term.GivenBack()
	before := maps.Clone(program.Modes(term.Raw()))
	if err := syscall.Kill(pid, syscall.SIGCONT); err != nil {
		t.Fatal(err)
	}
	program.Await(t, "the screen to be taken again", func() bool { return program.Modes(term.Raw())["1049"] && !before["1049"] })
	term.Types("i\r")
	term.Await("[saved]")
	term.Types("\x03")
	if status := term.Ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	term.GivenBack()
}

// A terminal that is closed ends the program with everything kept.
func TestAClosedTerminalKeepsEverything(t *testing.T) {
	t.Parallel()
	term, file := program.BeginSmock(t)
	term.Types("14 3/8")
	term.Await("= 14 3/8 in")
	if err := term.File.Close(); err != nil {
		t.Fatal(err)
	}
	term.Ends()
	if got := props.AnswerIn(t, file, worksheets.Bicep); got != "14 3/8" {
		t.Errorf("the file has %q", got)
	}
}

// Any size, one after the other as fast as it goes: the program answers at the end
// as if nothing had been.
func TestAStormOfSizes(t *testing.T) {
	t.Parallel()
	term, _ := program.BeginSmock(t)
	for i := range 400 {
		size := pty.Winsize{Rows: uint16(1 + i*7%200), Cols: uint16(1 + i*13%500)}
		if err := pty.Setsize(term.File, &size); err != nil {
			t.Fatal(err)
		}
	}
	if err := pty.Setsize(term.File, &pty.Winsize{Rows: 24, Cols: 80}); err != nil {
		t.Fatal(err)
	}
	term.Types("14 1/8")
	term.Await("= 14 1/8 in")
	term.Types("\x03")
	if status := term.Ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	term.GivenBack()
}
