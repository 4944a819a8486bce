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
}

type answer struct {
	key, words string
	wish       wish
}

func (q *question) key(msg tea.KeyMsg) wish { return named(msg, q.press) }

func (q *question) press(name string) wish {
	for _, a := range q.answers {
		if a.key == name {
			return a.wish
		}
	}
	return nil
}

func (q *question) render(width, height int) string {
	out := typeset.Wrap(q.text, width)
	out = append(out, "")
	for _, a := range q.answers {
		out = append(out, "  "+q.styles.key.Render(typeset.Pad(a.key, 7))+a.words)
	}
	if q.message != "" {
		out = append(append(out, ""), bold(typeset.Wrap(q.message, width), q.styles)...)
	}
	return typeset.Block(out, width, height)
}
