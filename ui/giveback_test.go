//go:build linux

package ui

import (
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/creack/pty"
	"golang.org/x/sys/unix"

	"capscye/worksheets"
)

// modes are what a terminal was told to be in the end: the private modes that
// were set or reset at all.
func modes(raw string) map[string]bool {
	list := map[string]bool{}
	for _, m := range regexp.MustCompile(`\x1b\[\?([0-9;]+)([hl])`).FindAllStringSubmatch(raw, -1) {
		for _, mode := range strings.Split(m[1], ";") {
			list[mode] = m[2] == "h"
		}
	}
	return list
}

// givenBack fails unless the terminal is as a shell wants it: the first screen,
// the cursor to be seen, no bracketed paste or mouse, and the line discipline that
// echoes and edits.
func (m *terminal) givenBack() {
	m.t.Helper()
	for mode, on := range modes(m.raw()) {
		if on != (mode == "25") { // 25 is the cursor
			m.t.Errorf("mode %s is left on %v", mode, on)
		}
	}
	if state, err := unix.IoctlGetTermios(int(m.file.Fd()), unix.TCGETS); err == nil { // gone with its last user on some systems
		if want := uint32(unix.ICANON | unix.ECHO | unix.ISIG); state.Lflag&want != want {
			m.t.Errorf("the line discipline is left at %#x", state.Lflag)
		}
	}
}

// faultHere makes the test binary a program with a fault, in an update or in a view.
const faultHere = "CAPSCYE_TEST_FAULT"

func init() {
	afterTests = removeBinary
	insteadOfTests = func() {
		if what := os.Getenv(faultHere); what != "" {
			os.Exit(runWithAFault(what))
		}
	}
}

type faulty struct{ what string }

func (f faulty) render(int, int) string {
	if f.what == "view-now" {
		var none []string
		_ = none[len(f.what)]
	}
	return "ready to fail"
}

// runWithAFault is the program at blouse.toml, with a copy beside, and something
// in front that fails at the first key.
func runWithAFault(what string) int {
	s := &session{in: os.Stdin, out: os.Stdout, errs: os.Stderr, today: someDay}
	d, err := worksheets.Load("blouse.toml")
	if err != nil {
		panic(err)
	}
	m := &root{styles: screenStyles(s.out), today: s.today}
	m.opened(opening(d, "blouse.toml", nil))
	m.desk.layCopy()
	m.desk.set(worksheets.Bicep, "14 5/8")
	m.front = keyed{faulty{what}, m}
	if err := s.run(m); err != nil {
		panic(err)
	}
	return s.status
}

type keyed struct {
	faulty
	m *root
}

func (k keyed) key(tea.KeyMsg) wish {
	switch k.what {
	case "update":
		panic("Odile, bicep 14 5/8") // private, and not to be repeated
	case "view":
		k.m.front = keyed{faulty{"view-now"}, k.m}
	}
	return wish{}
}

// A fault of the program gives the terminal back, names the file with what was not
// saved, says nothing of what was typed, and ends with status 3. The next start
// offers what was kept.
func TestAFaultGivesTheTerminalBack(t *testing.T) {
	for _, what := range []string{"update", "view"} {
		t.Run(what, func(t *testing.T) {
			folder := t.TempDir()
			layAt(t, filepath.Join(folder, "blouse.toml"), "choir-blouse")
			env := []string{faultHere + "=" + what, "XDG_STATE_HOME=" + folder}
			term := startCommand(t, folder, env, exec.Command(os.Args[0]))
			term.await("ready to fail")
			term.types("x")
			if status := term.ends(); status != exitFault {
				t.Errorf("status %d", status)
			}
			term.givenBack()
			_, report, _ := strings.Cut(term.raw(), "\x1b[?1049l")
			for _, want := range []string{"Your terminal is as it was", folder + "/capscye/", "  at ui."} {
				if !strings.Contains(strings.ReplaceAll(report, "\r\n", ""), want) {
					t.Errorf("the report lacks %q:\n%s", want, report)
				}
			}
			for _, private := range []string{"Odile", "14 5/8", "blouse"} {
				if strings.Contains(report, private) {
					t.Errorf("the report has %q:\n%s", private, report)
				}
			}
			after := start(t, folder, env[1:], "blouse.toml")
			after.await("Beside it lies what was not saved")
			after.await("14 5/8 in")
		})
	}
}

// A command runs in a goroutine of its own, where a fault would leave the terminal
// raw: it comes back as a message.
func TestAFaultInACommandComesBack(t *testing.T) {
	msg := safely(func() tea.Msg { panic(fmt.Errorf("Odile")) })()
	f, ok := msg.(faultMsg)
	if !ok || strings.Contains(f.fault.report(Version, ""), "Odile") || len(f.fault.where) == 0 {
		t.Fatalf("%+v", msg)
	}
	defer func() {
		if again := newFault(recover()); again.what != f.fault.what {
			t.Errorf("it is passed on as %+v", again)
		}
	}()
	new(root).Update(msg)
	t.Error("the screen goes on")
}

// Suspended from outside, the program gives the terminal back, and takes it again
// when it goes on.
func TestSuspendedAndGoingOn(t *testing.T) {
	path, err := binary()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	term := startCommand(t, folder, nil, exec.Command("sh", "-c", path+" smock.toml; exit $?"))
	term.await("Begin it?")
	children, err := os.ReadFile(fmt.Sprintf("/proc/%d/task/%[1]d/children", term.cmd.Process.Pid))
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
	await(t, "the program to be stopped", func() bool {
		stat, _ := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
		return strings.Contains(string(stat), ") T ")
	})
	term.givenBack()
	before := maps.Clone(modes(term.raw()))
	if err := syscall.Kill(pid, syscall.SIGCONT); err != nil {
		t.Fatal(err)
	}
	await(t, "the screen to be taken again", func() bool { return modes(term.raw())["1049"] && !before["1049"] })
	term.types("i")
	term.await("[saved]")
	term.types("\x03")
	if status := term.ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	term.givenBack()
}

func await(t *testing.T, what string, so func() bool) {
	t.Helper()
	for deadline := time.Now().Add(10 * time.Second); time.Now().Before(deadline); time.Sleep(2 * time.Millisecond) {
		if so() {
			return
		}
	}
	t.Fatalf("waited in vain for %s", what)
}

// A terminal that is closed ends the program with everything kept.
func TestAClosedTerminalKeepsEverything(t *testing.T) {
	term, file := beginSmock(t)
	term.types("14 3/8")
	term.await("= 14 3/8 in")
	if err := term.file.Close(); err != nil {
		t.Fatal(err)
	}
	term.ends()
	if got := answerIn(t, file, worksheets.Bicep); got != "14 3/8" {
		t.Errorf("the file has %q", got)
	}
}

// Any size, one after the other as fast as it goes: the program answers at the end
// as if nothing had been.
func TestAStormOfSizes(t *testing.T) {
	term, _ := beginSmock(t)
	for i := range 400 {
		size := pty.Winsize{Rows: uint16(1 + i*7%200), Cols: uint16(1 + i*13%500)}
		if err := pty.Setsize(term.file, &size); err != nil {
			t.Fatal(err)
		}
	}
	if err := pty.Setsize(term.file, &pty.Winsize{Rows: 24, Cols: 80}); err != nil {
		t.Fatal(err)
	}
	term.types("14 1/8")
	term.await("= 14 1/8 in")
	term.types("\x03")
	if status := term.ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	term.givenBack()
}
