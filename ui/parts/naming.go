package parts

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/typeset"
)

// Naming asks for a line of text: a file name, with the ending of a worksheet
// added if it has none, or anything at all.
type Naming struct {
	Message string                 // what went wrong
	Accept  string                 // what the keys do
	Take    func(text string) Wish // for anything but a file name
	Typed   func(text string)      // is told what is typed so far; nil for nobody. Esc leaves that where it is

	styles Styles
	text   string
	typing Typing
	grant  func(path string) Wish // for a file name
}

// NewNaming asks for a file name that no file has; the line begins with a suggestion.
func NewNaming(text, suggestion string, st Styles, grant func(string) Wish) *Naming {
	n := &Naming{styles: st, text: text, typing: NewTyping(st), grant: grant, Accept: "enter saves  esc back"}
	n.typing.Begin(suggestion, false)
	return n
}

// Key types, or takes what was typed.
func (n *Naming) Key(msg tea.KeyMsg) Wish {
	n.Message = ""
	switch name := msg.String(); {
	case name == "esc" && n.Typed == nil && n.typing.Changed():
		n.typing.GiveBack()
		n.Message = "As it was. Esc again goes back."
		return nil
	case name == "esc":
		return ToGoBack{}
	case name == "enter":
		return n.done()
	}
	if n.Message = n.typing.Refuses(msg); n.Message != "" {
		return nil
	}
	n.typing.Take(msg)
	if n.Typed != nil {
		n.Typed(n.typing.Text())
	}
	return nil
}

// done takes the name, unless something else has it.
func (n *Naming) done() Wish {
	text := strings.TrimSpace(n.typing.Text())
	if n.Take != nil {
		return n.Take(text)
	}
	path, refusal := console.FreeName(text)
	if refusal != "" {
		n.Message = refusal
		return nil
	}
	return n.grant(path)
}

// Render draws it for a window.
func (n *Naming) Render(width, height int) string {
	box := max(min(width-2, 60), 2)
	out := append(typeset.Wrap(n.text, width), "", "["+n.typing.Render(box, n.styles)+"]", n.styles.Warn.Render(typeset.Cut(n.Message, width)),
		"", n.Accept)
	return typeset.Block(out, width, height)
}

// Complain says what went wrong.
func (n *Naming) Complain(text string) { n.Message = text }
