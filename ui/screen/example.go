package screen

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/typeset"
)

// A built-in example is looked at. What is pushed in it is a copy beside it, and what
// is typed asks for a worksheet of one's own: nobody gets an answer from two bodies.

// toTryHere wants what was typed in a copy of the example.
type toTryHere struct {
	wanted
	typedAnswer
}

// askOwn asks whether somebody wants a worksheet of their own.
func (m *root) askOwn(w toOwn) {
	d := m.desk
	text := fmt.Sprintf("Your own worksheet? This is the example %s; it stays as it is.", d.rep.Name())
	begin := "begin your own worksheet"
	if w.first != nil {
		if w.first.text != "" {
			text += fmt.Sprintf(" You typed %s: %s.", w.first.words(), typeset.Plain(w.first.text))
			begin += " with this answer"
		}
		if w.try == nil {
			w.try = toTryHere{typedAnswer: *w.first}
		}
	}
	q := newQuestion(text, m.styles).or("enter", begin, toName{first: w.first})
	if w.try != nil {
		q.or("w", "only try it here, as a what-if", w.try)
	}
	m.cover(q.or("esc", "back to the example", toGoBack{}))
}

func (w toTryHere) grant(m *root) tea.Cmd {
	m.front, m.desk.trying = nil, true
	return m.grant(m.desk.set(w.key, w.text))
}
