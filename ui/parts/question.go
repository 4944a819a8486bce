package parts

import (
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/typeset"
)

// Question asks something that one key answers.
type Question struct {
	styles  Styles
	text    string
	answers []answer
	message string // what went wrong with the answer
	slip    string // which keys answer, once another was pressed
}

type answer struct {
	key, words string
	wish       Wish
}

// NewQuestion asks something, with no answer yet.
func NewQuestion(text string, st Styles) *Question { return &Question{styles: st, text: text} }

// Or adds an answer by a key.
func (q *Question) Or(key, words string, w Wish) *Question {
	q.answers = append(q.answers, answer{key, words, w})
	return q
}

// Key answers.
func (q *Question) Key(msg tea.KeyMsg) Wish { return Named(msg, q.press) }

func (q *Question) press(name string) Wish {
	for _, a := range q.answers {
		if a.key == name {
			return a.wish
		}
	}
	keys := make([]string, len(q.answers))
	for i, a := range q.answers {
		keys[i] = a.key
	}
	q.slip = PressOneOf(keys)
	return nil
}

// PressOneOf names the keys that answer, for somebody who pressed another.
func PressOneOf(keys []string) string { return "Press " + typeset.OrList(keys) + "." }

// Render draws it for a window.
func (q *Question) Render(width, height int) string {
	out := typeset.Wrap(q.text, width)
	out = append(out, "")
	for _, a := range q.answers {
		out = append(out, "  "+q.styles.Key.Render(typeset.Pad(a.key, 7))+a.words)
	}
	for _, text := range []string{q.message, q.slip} {
		if text != "" {
			out = append(append(out, ""), Bold(typeset.Wrap(text, width), q.styles)...)
		}
	}
	return typeset.Block(out, width, height)
}

// Complain says what went wrong with the answer.
func (q *Question) Complain(text string) { q.message = text }
