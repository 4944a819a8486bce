package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/typeset"
)

// question asks something that one key answers.
type question struct {
	styles  styles
	text    string
	answers []answer
	message string // what went wrong with the answer
	slip    string // which keys answer, once another was pressed
}

type answer struct {
	key, words string
	wish       wish
}

// newQuestion asks something, with no answer yet.
func newQuestion(text string, st styles) *question { return &question{styles: st, text: text} }

// or adds an answer by a key.
func (q *question) or(key, words string, w wish) *question {
	q.answers = append(q.answers, answer{key, words, w})
	return q
}

func (q *question) key(msg tea.KeyMsg) wish { return named(msg, q.press) }

func (q *question) press(name string) wish {
	for _, a := range q.answers {
		if a.key == name {
			return a.wish
		}
	}
	keys := make([]string, len(q.answers))
	for i, a := range q.answers {
		keys[i] = a.key
	}
	q.slip = pressOneOf(keys)
	return nil
}

// pressOneOf names the keys that answer, for somebody who pressed another.
func pressOneOf(keys []string) string { return "Press " + typeset.OrList(keys) + "." }

func (q *question) render(width, height int) string {
	out := typeset.Wrap(q.text, width)
	out = append(out, "")
	for _, a := range q.answers {
		out = append(out, "  "+q.styles.key.Render(typeset.Pad(a.key, 7))+a.words)
	}
	for _, text := range []string{q.message, q.slip} {
		if text != "" {
			out = append(append(out, ""), bold(typeset.Wrap(text, width), q.styles)...)
		}
	}
	return typeset.Block(out, width, height)
}

func (q *question) complain(text string) { q.message = text }
