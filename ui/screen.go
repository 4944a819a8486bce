package ui

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/signal"
	"runtime"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"

	_ "capscye/ui/background" // before bubbletea, or it asks the terminal
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// framesPerSecond is twice the library's own: a key is seen in half the time,
// and an idle screen costs no more.
const framesPerSecond = 120

// open starts the screen on a worksheet, on the folder's list, or on the
// built-in example.
func (s *session) open(names []string) error {
	m := &root{styles: screenStyles(s.out), today: s.today}
	if len(names) == 1 {
		d, name, err := loadNamed(names[0])
		switch {
		case errors.Is(err, fs.ErrNotExist):
			m.front = m.askBegin(name)
		case err != nil:
			s.complain(err)
			s.worse(exitUnread)
			return nil
		default:
			m.opened(opening(d, name, nil))
		}
	} else if err := openFolder(m); err != nil {
		return err
	}
	return s.run(m)
}

// run runs the screen to its end, and whatever that is, gives the terminal back
// and leaves nothing unsaved behind that is not kept.
func (s *session) run(m *root) error {
	in, keys := s.in, (*keyboard)(nil)
	if file, ok := s.in.(*os.File); ok && runtime.GOOS != "windows" { // where the library reads the keys themselves
		keys = &keyboard{File: file}
		in = keys
	}
	program := tea.NewProgram(m, tea.WithInput(in), tea.WithOutput(s.out), tea.WithAltScreen(),
		tea.WithFPS(framesPerSecond), tea.WithoutSignalHandler(), tea.WithoutCatchPanics(), tea.WithFilter(withoutTails()))
	if keys != nil {
		keys.tell = func() { program.Send(floodMsg{}) }
		keys.gone = func() { program.Send(signalMsg{128 + int(syscall.SIGHUP)}) }
	}
	stop, wake := passSignals(program), passSuspension(program)
	fault, err := runCaught(program)
	stop()
	wake()
	if fault != nil {
		kept := m.place().Path()
		switch lost := m.leave(true); {
		case m.desk == nil || len(m.desk.unsaved()) == 0:
			kept = ""
		case lost != nil:
			kept = "memory only, and is lost (" + typeset.Plain(fileWords(lost)) + ")"
		}
		fmt.Fprint(s.errs, fault.report(s.version, typeset.Plain(kept)))
		s.worse(exitFault)
		return nil
	}
	if lost := m.leave(m.signalled || err != nil); lost != nil {
		s.complain(lost)
	}
	if err != nil {
		return fmt.Errorf("the screen failed: %w", err)
	}
	s.worse(m.status)
	return nil
}

// runCaught runs the program; a fault of it is caught here, where the terminal can
// be given back first.
func runCaught(program *tea.Program) (caught *fault, err error) {
	defer func() {
		if r := recover(); r != nil {
			f := newFault(r)
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
	return onSignals(func(status int) { program.Send(signalMsg{status}) })
}

// onSignals tells of the signals that end a program, instead of letting them. The
// status is 128 and the signal's number, as shells have it.
func onSignals(tell func(status int)) (stop func()) {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, syscall.SIGHUP, syscall.SIGINT, syscall.SIGTERM, syscall.SIGQUIT)
	go func() {
		for s := range signals {
			if n, ok := s.(syscall.Signal); ok {
				tell(128 + int(n))
			}
		}
	}()
	return func() {
		signal.Stop(signals)
		close(signals)
	}
}

func openFolder(m *root) error {
	found, listing := rosterRows(".", m.today)
	if len(found) > 0 {
		m.listed(listedMsg{found: found})
		return nil
	}
	msg := openingExample(worksheets.Examples()[0], nil)
	m.opened(msg)
	if listing != nil && msg.err == nil {
		m.desk.message = typeset.Plain(fileWords(listing))
	}
	return msg.err
}
