package ui

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"

	_ "capscye/ui/background" // before bubbletea, or it asks the terminal
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
		name := names[0]
		d, err := worksheets.Load(name)
		if errors.Is(err, fs.ErrNotExist) && filepath.Ext(name) == "" {
			name += ".toml" // the ending by which the list of a folder knows them
			d, err = worksheets.Load(name)
		}
		switch {
		case errors.Is(err, fs.ErrNotExist):
			m.front = m.askBegin(name)
		case err != nil:
			s.complain(err)
			s.worse(exitUnread)
			return nil
		default:
			m.opened(openedMsg{doc: d})
		}
	} else if err := openFolder(m); err != nil {
		return err
	}
	program := tea.NewProgram(m, tea.WithInput(s.in), tea.WithOutput(s.out), tea.WithAltScreen(),
		tea.WithFPS(framesPerSecond), tea.WithoutSignalHandler())
	defer passSignals(program)()
	if _, err := program.Run(); err != nil {
		return fmt.Errorf("the screen failed: %w", err)
	}
	s.worse(m.status)
	return nil
}

// passSignals turns the signals that end a program into a message: the library
// would quit without asking the screen, and what was typed last would be lost.
// The status is 128 and the signal's number, as shells have it.
func passSignals(program *tea.Program) (stop func()) {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, syscall.SIGHUP, syscall.SIGINT, syscall.SIGTERM)
	go func() {
		for s := range signals {
			if n, ok := s.(syscall.Signal); ok {
				program.Send(signalMsg{128 + int(n)})
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
	d, err := worksheets.Example(worksheets.Examples()[0])
	m.opened(openedMsg{doc: d, err: err})
	if listing != nil && err == nil {
		m.desk.message = plain(fileWords(listing))
	}
	return err
}
