package screen

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/typeset"
)

// naming asks for a line of text: a file name, with the ending of a worksheet
// added if it has none, or anything at all.
type naming struct {
	styles  styles
	text    string
	typing  typing
	message string
	accept  string                 // what the keys do
	grant   func(path string) wish // for a file name
	take    func(text string) wish // for anything else, instead of grant
	typed   func(text string)      // is told what is typed so far; nil for nobody. Esc leaves that where it is
}

func newNaming(text, suggestion string, st styles, grant func(string) wish) *naming {
	n := &naming{styles: st, text: text, typing: newTyping(st), grant: grant, accept: "enter saves  esc back"}
	n.typing.begin(suggestion, false)
	return n
}

func (n *naming) key(msg tea.KeyMsg) wish {
	n.message = ""
	switch name := msg.String(); {
	case name == "esc" && n.typed == nil && n.typing.changed():
		n.typing.giveBack()
		n.message = "As it was. Esc again goes back."
		return nil
	case name == "esc":
		return toGoBack{}
	case name == "enter":
		return n.done()
	}
	if n.message = n.typing.refuses(msg); n.message != "" {
		return nil
	}
	n.typing.take(msg)
	if n.typed != nil {
		n.typed(n.typing.text())
	}
	return nil
}

// done takes the name, unless something else has it.
func (n *naming) done() wish {
	text := strings.TrimSpace(n.typing.text())
	if n.take != nil {
		return n.take(text)
	}
	path, refusal := console.FreeName(text)
	if refusal != "" {
		n.message = refusal
		return nil
	}
	return n.grant(path)
}

func (n *naming) render(width, height int) string {
	box := max(min(width-2, 60), 2)
	out := append(typeset.Wrap(n.text, width), "", "["+n.typing.render(box, n.styles)+"]", n.styles.warn.Render(typeset.Cut(n.message, width)),
		"", n.accept)
	return typeset.Block(out, width, height)
}

func (n *naming) complain(text string) { n.message = text }
