//go:build linux

package screen

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
	"capscye/ui/parts"
	"capscye/worksheets"
)

// faultHere makes the test binary a program with a fault, in an update or in a view.
const faultHere = "CAPSCYE_TEST_FAULT"

func init() {
	insteadOfTests = func() {
		if what := os.Getenv(faultHere); what != "" {
			os.Exit(runWithAFault(what))
		}
	}
}

type faulty struct{ what string }

func (f faulty) Render(int, int) string {
	if f.what == "view-now" {
		var none []string
		_ = none[len(f.what)]
	}
	return "ready to fail"
}

// runWithAFault is the program at blouse.toml, with a copy beside, and something
// in front that fails at the first key.
func runWithAFault(what string) int {
	s := &console.Session{In: os.Stdin, Out: os.Stdout, Errs: os.Stderr, Today: props.SomeDay}
	d, err := worksheets.Load("blouse.toml")
	if err != nil {
		panic(err)
	}
	m := &root{styles: parts.StylesFor(s.Out), today: s.Today}
	m.opened(opening(d, "blouse.toml", nil))
	m.desk.Key(tea.KeyMsg{Type: tea.KeyCtrlL})
	m.desk.Set(worksheets.Bicep, "14 5/8")
	m.front = keyed{faulty{what}, m}
	if err := runScreen(s, m); err != nil {
		panic(err)
	}
	return s.Status
}

type keyed struct {
	faulty
	m *root
}

func (k keyed) Key(tea.KeyMsg) parts.Wish {
	switch k.what {
	case "update":
		panic("Odile, bicep 14 5/8") // private, and not to be repeated
	case "view":
		k.m.front = keyed{faulty{"view-now"}, k.m}
	}
	return nil
}

// A fault of the program gives the terminal back, names the file with what was not
// saved, says nothing of what was typed, and ends with status 3. The next start
// offers what was kept.
func TestAFaultGivesTheTerminalBack(t *testing.T) {
	for _, what := range []string{"update", "view"} {
		t.Run(what, func(t *testing.T) {
			folder := t.TempDir()
			props.LayAt(t, filepath.Join(folder, "blouse.toml"), "choir-blouse")
			env := []string{faultHere + "=" + what, "XDG_STATE_HOME=" + folder}
			term := program.StartCommand(t, folder, env, exec.Command(os.Args[0]))
			term.Await("ready to fail")
			term.Types("x")
			if status := term.Ends(); status != console.ExitFault {
				t.Errorf("status %d", status)
			}
			term.GivenBack()
			_, report, _ := strings.Cut(term.Raw(), "\x1b[?1049l")
			for _, want := range []string{"Your terminal is as it was", folder + "/capscye/", "  at screen."} {
				if !strings.Contains(strings.ReplaceAll(report, "\r\n", ""), want) {
					t.Errorf("the report lacks %q:\n%s", want, report)
				}
			}
			for _, private := range []string{"Odile", "14 5/8", "blouse"} {
				if strings.Contains(report, private) {
					t.Errorf("the report has %q:\n%s", private, report)
				}
			}
			after := program.Start(t, folder, env[1:], "blouse.toml")
			after.Await("Unsaved work of ")
			after.Await("14 5/8 in")
		})
	}
}

// A half-typed note of a fitting is there at the next start, however the program ended:
// by a key, by any signal, killed; and the file has nothing of it.
func TestAHalfTypedNoteOutlivesTheProgram(t *testing.T) {
	t.Parallel()
	note := "upper arm 1/2 in too"
	for _, end := range []struct {
		name, keys string
		signal     syscall.Signal
		status     int
	}{
		{"^c", "\x03", 0, 0}, {"^q", "\x11", 0, 0}, {"esc and ^c", "\x1b", 0, 0},
		{"INT", "", syscall.SIGINT, 130}, {"TERM", "", syscall.SIGTERM, 143}, {"HUP", "", syscall.SIGHUP, 129}, {"QUIT", "", syscall.SIGQUIT, 131},
		{"KILL", "", syscall.SIGKILL, -1},
	} {
		t.Run(end.name, func(t *testing.T) {
			folder := t.TempDir()
			path := filepath.Join(folder, "blouse.toml")
			props.LayAt(t, path, "choir-blouse")
			before := props.Read(t, path)
			env := []string{"XDG_STATE_HOME=" + folder}
			term := program.Start(t, folder, env, "blouse.toml")
			term.Await("Sleeve needs")
			term.Types("\x1b[17~n")
			term.Await("What did the test garment show?")
			term.Types(note)
			term.Await("[" + note)
			if end.signal == syscall.SIGKILL { // nothing runs behind it; it is kept as it is typed
				program.Await(t, "the note in its place", func() bool {
					kept, _ := filepath.Glob(filepath.Join(folder, "capscye", "*.json"))
					return len(kept) == 1 && strings.Contains(props.Read(t, kept[0]), note)
				})
			}
			if end.keys == "\x1b" { // seen to have left, or it would be alt and c
				term.Goes("\x1b", "[6 Trace]")
				term.Types("\x03")
			} else {
				term.Types(end.keys)
			}
			if end.signal != 0 {
				if err := term.Cmd.Process.Signal(end.signal); err != nil {
					t.Fatal(err)
				}
			}
			if status := term.Ends(); status != end.status {
				t.Errorf("status %d", status)
			}
			if got := props.Read(t, path); got != before {
				t.Errorf("the file is\n%s", got)
			}
			term = program.Start(t, folder, env, "blouse.toml")
			term.Await("Typed before and not finished: the note of a fitting")
			term.Types("\x1b[17~n")
			term.Await("[" + note)
			term.Types(" tight\r")
			term.Await("The note is added")
			term.Goes("\x1b", "[6 Trace]")
			term.Types("\x03")
			if status := term.Ends(); status != 0 || !strings.Contains(props.Read(t, path), note+" tight") {
				t.Errorf("status %d, the file is\n%s", status, props.Read(t, path))
			}
			if kept, _ := filepath.Glob(filepath.Join(folder, "capscye", "*.json")); len(kept) > 0 {
				t.Errorf("there is still %q", kept)
			}
		})
	}
}

// A command runs in a goroutine of its own, where a fault would leave the terminal
// raw: it comes back as a message.
func TestAFaultInACommandComesBack(t *testing.T) {
	msg := safely(func() tea.Msg { panic(fmt.Errorf("Odile")) })()
	f, ok := msg.(faultMsg)
	if !ok || strings.Contains(f.fault.Report("0.0.0", ""), "Odile") || len(f.fault.Where) == 0 {
		t.Fatalf("%+v", msg)
	}
	defer func() {
		if again := console.NewFault(recover()); again.What != f.fault.What {
			t.Errorf("it is passed on as %+v", again)
		}
	}()
	new(root).Update(msg)
	t.Error("the screen goes on")
}
