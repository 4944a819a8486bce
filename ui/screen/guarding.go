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
	left := worksheets.Leftover{Versions: d.unguarded(m.saving), Drafts: d.doc.Sheet.Drafts}
	if one, ok := m.halfTyped(); ok {
		d.addHalfTyped(&left, one)
	}
	d.guard.place.Typed(left.Drafts)
	if !d.guard.wants(left) {
		return nil
	}
	d.guard.held, d.guard.writing = left, true
	return guardList(d, left.Versions)
}

// halfTyped is what stands in a line of input and was not left yet. While a part in front
// has one, nothing is typed in the form behind it.
func (m *root) halfTyped() (one worksheets.Draft, ok bool) {
	if typed := m.leavers(); len(typed) > 0 {
		return typed[0].halfTyped()
	}
	return m.desk.halfTyped()
}

// guarded takes the outcome, and says once that nothing can be guarded.
func (m *root) guarded(msg guardedMsg) {
	if msg.desk.guard.wrote(msg.err) {
		m.complain("A crash would lose what is not saved: " + typeset.Plain(console.FileWords(msg.err)) + ".")
	}
}

// leave is the end of the work on what is on the desk.
func (m *root) leave(stopped bool) error {
	if m.desk == nil {
		return nil
	}
	return m.desk.guard.leave(m.keepsAside(stopped), m.desk.unsaved(), m.desk.doc.Sheet.Drafts)
}

// keepsAside tells that something is kept for the next start: what the file could not
// take, and where the program was stopped the copies too.
func (m *root) keepsAside(stopped bool) bool {
	return m.desk != nil && (m.desk.loose() || stopped && len(m.desk.copies) > 0)
}
