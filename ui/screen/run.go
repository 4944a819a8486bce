package screen

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"runtime"
	"slices"
	"syscall"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	_ "capscye/ui/background" // before bubbletea, or it asks the terminal
	"capscye/ui/console"
	"capscye/ui/parts"
	"capscye/ui/roster"
	"capscye/ui/terminal"
	"capscye/ui/typeset"
)

// framesPerSecond is twice the library's own: a key is seen in half the time,
// and an idle screen costs no more.
const framesPerSecond = 120

// Open starts the screen on a worksheet, on the folder's list, or where there is
// nothing to list, on the offer to begin.
func Open(s *console.Session, names []string) error {
	m := &root{styles: parts.StylesFor(s.Out), today: s.Today, waits: waits{blind: frame}}
	if len(names) == 1 {
		d, name, err := console.LoadNamed(names[0])
		switch {
		case errors.Is(err, fs.ErrNotExist) && console.MayBegin(name) == nil:
			m.front = m.askBegin(name)
		case err != nil:
			if errors.Is(err, fs.ErrNotExist) {
				err = console.MayBegin(name)
			}
			s.Complain(err)
			s.Worse(console.ExitUnread)
			return nil
		default:
			m.opened(opening(d, name, nil))
		}
	} else {
		openFolder(m)
	}
	return runScreen(s, m)
}

// runScreen runs the screen to its end, and whatever that is, gives the terminal back
// and leaves nothing unsaved behind that is not guarded.
func runScreen(s *console.Session, m *root) error {
	in, keys := s.In, (*terminal.Keyboard)(nil)
	if file, ok := s.In.(*os.File); ok && runtime.GOOS != "windows" { // where the library reads the keys themselves
		keys = &terminal.Keyboard{File: file}
		in = keys
	}
	program := tea.NewProgram(m, tea.WithInput(in), tea.WithOutput(s.Out), tea.WithAltScreen(),
		tea.WithFPS(framesPerSecond), tea.WithoutSignalHandler(), tea.WithoutCatchPanics(), tea.WithFilter(terminal.WithoutTails()))
	if keys != nil {
		keys.Tell = func() { program.Send(terminal.FloodMsg{}) }
		keys.Gone = func() { program.Send(signalMsg{console.ExitSignal + int(syscall.SIGHUP)}) }
	}
	stop, wake := passSignals(program), terminal.PassSuspension(program)
	fault, err := runCaught(program)
	stop()
	wake()
	if fault != nil {
		guarded := m.place().Path()
		switch lost := m.leave(true); {
		case m.desk == nil || len(m.desk.Unsaved()) == 0:
			guarded = ""
		case lost != nil:
			guarded = "memory only, and is lost (" + typeset.Plain(console.FileWords(lost)) + ")"
		}
		fmt.Fprint(s.Errs, fault.Report(s.Version, typeset.Plain(guarded)))
		s.Worse(console.ExitFault)
		return nil
	}
	stopped := m.signalled || err != nil
	aside, place := m.keepsAside(stopped), m.place().Path()
	switch lost := m.leave(stopped); {
	case lost != nil:
		s.Complain(fmt.Errorf("what was not saved is lost: %w", lost))
	case aside && place != "":
		file := typeset.Plain(cmp.Or(m.desk.Doc.Path(), "the example"))
		fmt.Fprintf(s.Errs, "capscye: %s is not saved. Your answers are safe in %s; open it with capscye to get them back.\n", file, typeset.Plain(place))
	}
	if err != nil {
		return fmt.Errorf("the screen failed: %w", err)
	}
	s.Worse(m.status)
	return nil
}

// runCaught runs the program; a fault of it is caught here, where the terminal can
// be given back first.
func runCaught(program *tea.Program) (caught *console.Fault, err error) {
	defer func() {
		if r := recover(); r != nil {
			f := console.NewFault(r)
			caught = &f
			_ = program.ReleaseTerminal() // nothing better is left to try
		}
	}()
	_, err = program.Run()
	return nil, err
}

// passSignals turns the signals that end a program into a message: the library
// would quit without asking the screen, and what was typed last would be lost.
func passSignals(program *tea.Program) (stop func()) {
	return console.OnSignals(func(status int) { program.Send(signalMsg{status}) })
}

// hasWorksheets tells that the folder has worksheets to take from.
func hasWorksheets(today time.Time) bool {
	found, _ := roster.Rows(".", today)
	return slices.ContainsFunc(found, func(r roster.Row) bool { return r.Failure == "" })
}

// openFolder begins with the list of the folder, or where there is none to begin.
func openFolder(m *root) {
	found, listing := roster.Rows(".", m.today)
	if len(found) > 0 {
		m.layList(listedMsg{found: found})
		return
	}
	first := &start{styles: m.styles}
	if listing != nil {
		first.message = typeset.Plain(console.FileWords(listing))
	}
	m.front = first
}
