package screen

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/desk"
	"capscye/ui/parts"
	"capscye/ui/typeset"
)

// A built-in example is looked at. What is pushed in it is a copy beside it, and what
// is typed asks for a worksheet of one's own: nobody gets an answer from two bodies.

// toTryHere wants what was typed in a copy of the example, and then what the key does that
// took it.
type toTryHere struct {
	parts.Wanted
	desk.TypedAnswer
	again *tea.KeyMsg // nil for none
}

// askOwn asks whether somebody wants a worksheet of their own.
func (m *root) askOwn(w desk.ToOwn) {
	d := m.desk
	text := fmt.Sprintf("Your own worksheet? This is the example %s; it stays as it is.", d.Rep.Name())
	begin := "begin your own worksheet"
	if w.First != nil {
		if w.First.Text != "" {
			text += fmt.Sprintf(" You typed %s: %s.", w.First.Words(), typeset.Plain(w.First.Text))
			begin += " with this answer"
		}
		if w.Try == nil {
			w.Try = toTryHere{TypedAnswer: *w.First, again: w.Again}
		}
	}
	q := parts.NewQuestion(text, m.styles).Or("enter", begin, toName{first: w.First})
	if w.Try != nil {
		q.Or("w", "only try it here, as a what-if", w.Try)
	}
	m.cover(q.Or("esc", "back to the example", parts.ToGoBack{}))
}

func (w toTryHere) grant(m *root) tea.Cmd {
	m.front = nil
	m.desk.TryHere()
	cmd := m.grant(m.desk.Answer(w.Key, w.Text))
	if w.again == nil {
		return cmd
	}
	said := m.desk.Message
	then := m.desk.Key(*w.again)
	if m.desk.Message == "" {
		m.desk.Message = said
	}
	return both(cmd, m.grant(then))
}
