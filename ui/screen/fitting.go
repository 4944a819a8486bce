package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/desk"
	"capscye/ui/parts"
)

// What a test garment showed, and what follows for the ease.

// askFitting asks for a note. What is half typed waits in the sheet, however the note or
// the program is left, and is there the next time.
func (m *root) askFitting() parts.Part {
	switch {
	case m.desk.Shut():
		m.desk.Message = m.desk.ReadOnly()
		return nil
	case m.desk.OnCopy():
		return nil
	}
	n := parts.NewNaming("What did the test garment show? Say where, how much and which way, such as: upper arm 1/2 in too tight", m.desk.Doc.Sheet.Drafts.Note, m.styles, nil)
	n.Accept = "enter adds the note  esc back: it waits here"
	n.Typed = m.desk.Jot
	n.Take = func(text string) parts.Wish {
		if text == "" {
			return parts.ToGoBack{}
		}
		return toAddFitting{note: text}
	}
	return n
}

// toAddFitting wants a note added, and where it says how much and which way, to ask whether
// the ease is to change so.
type toAddFitting struct {
	parts.Wanted
	note string
}

func (w toAddFitting) grant(m *root) tea.Cmd {
	d := m.desk
	save := d.AddFitting(w.note, m.today)
	m.front = nil
	if change, ok := desk.ReadFitting(w.note, d.Sheet(), d.Rep.Scale.System); ok {
		m.front = m.askEase(change)
	}
	return m.grant(save)
}

// askEase offers to turn a fitting into a change of ease.
func (m *root) askEase(c desk.EaseChange) parts.Part {
	return parts.NewQuestion("The note is added. "+c.Question(m.desk.Rep.Scale), m.styles).
		Or("y", "yes", toChangeEase{c: c}).
		Or("esc", "no, the note alone", parts.ToGoBack{})
}
