package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// What is not in a sheet's file is guarded elsewhere against a crash; the root sees to it behind
// every message.

// guardWork brings what is guarded against a crash up to date.
func (m *root) guardWork() tea.Cmd {
	d := m.desk
	if d == nil {
		return nil
	}
	list, wants := d.ToGuard(m.saving, m.halfTyped)
	if !wants {
		return nil
	}
	return guardList(d, list)
}

// halfTyped is what stands in a line of input and was not left yet. While a part in front
// has one, nothing is typed in the form behind it.
func (m *root) halfTyped() (one worksheets.Draft, ok bool) {
	if typed := m.leavers(); len(typed) > 0 {
		return typed[0].halfTyped()
	}
	return m.desk.HalfTyped()
}

// guarded takes the outcome, and says once that nothing can be guarded.
func (m *root) guarded(msg guardedMsg) {
	if msg.desk.GuardWrote(msg.err) {
		m.complain("A crash would lose what is not saved: " + typeset.Plain(console.FileWords(msg.err)) + ".")
	}
}

// leave is the end of the work on what is on the desk.
func (m *root) leave(stopped bool) error {
	if m.desk == nil {
		return nil
	}
	return m.desk.Leave(stopped, m.halfTyped)
}

// keepsAside tells that something is kept for the next start.
func (m *root) keepsAside(stopped bool) bool { return m.desk != nil && m.desk.KeepsAside(stopped) }
