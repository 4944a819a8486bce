package ui

import (
	"errors"
	"fmt"
	"io/fs"

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
	m := &root{styles: screenStyles(s.out)}
	if len(names) == 1 {
		d, err := worksheets.Load(names[0])
		switch {
		case errors.Is(err, fs.ErrNotExist):
			m.front = m.askBegin(names[0])
		case err != nil:
			s.complain(err)
			s.worse(exitUnread)
			return nil
		default:
			m.opened(openedMsg{doc: d})
		}
	} else if err := s.openFolder(m); err != nil {
		return err
	}
	program := tea.NewProgram(m, tea.WithInput(s.in), tea.WithOutput(s.out), tea.WithAltScreen(), tea.WithFPS(framesPerSecond))
	if _, err := program.Run(); err != nil {
		return fmt.Errorf("the screen failed: %w", err)
	}
	return nil
}

func (s *session) openFolder(m *root) error {
	found, err := worksheets.List(".")
	if err == nil && len(found) > 0 {
		m.listed(listedMsg{found: found})
		return nil
	}
	d, err := worksheets.Example(worksheets.Examples()[0])
	m.opened(openedMsg{d, err})
	return err
}
