package screen

import (
	"strings"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/typeset"
)

// naming asks for a line of text: a file name, with the ending of a worksheet
// added if it has none, or anything at all.
type naming struct {
	styles  styles
	text    string
	offered string // what stood there first
	entry   textinput.Model
	message string
	accept  string                 // what the keys do
	grant   func(path string) wish // for a file name
	take    func(text string) wish // for anything else, instead of grant
	typed   func(text string)      // is told what is typed so far; nil for nobody. Esc leaves that where it is
}

func newNaming(text, suggestion string, st styles, grant func(string) wish) *naming {
	n := &naming{styles: st, text: text, offered: suggestion, entry: newEntry(st), grant: grant, accept: "enter saves  esc back"}
	n.entry.SetValue(suggestion)
	n.entry.CursorEnd()
	return n
}

func (n *naming) key(msg tea.KeyMsg) wish {
	n.message = ""
	switch name := msg.String(); {
	case name == "esc" && n.typed == nil && n.entry.Value() != n.offered:
		n.entry.SetValue(n.offered)
		n.entry.CursorEnd()
		n.message = "As it was. Esc again goes back."
		return nil
	case name == "esc":
		return toGoBack{}
	case name == "enter":
		return n.done()
	}
	if n.message = refusedPaste(msg, n.entry); n.message != "" {
		return nil
	}
	n.entry, _ = n.entry.Update(msg)
	if n.typed != nil {
		n.typed(n.entry.Value())
	}
	return nil
}

// done takes the name, unless something else has it.
func (n *naming) done() wish {
	text := strings.TrimSpace(n.entry.Value())
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
	e := n.entry
	box := max(min(width-2, 60), 2)
	e.Width = box - 1
	out := append(typeset.Wrap(n.text, width), "", "["+typeset.Pad(shownEntry(e), box)+"]", n.styles.warn.Render(typeset.Cut(n.message, width)),
		"", n.accept)
	return typeset.Block(out, width, height)
}

func (n *naming) complain(text string) { n.message = text }
