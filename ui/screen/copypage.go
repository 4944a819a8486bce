package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/desk"
	"capscye/ui/parts"
	"capscye/ui/typeset"
)

// copyPage shows the sheet and its copies side by side with all that differs, and
// what can be done with the one at hand.
type copyPage struct {
	desk   *desk.Desk
	styles parts.Styles
	lines  *parts.ScrollPage
}

func newCopyPage(d *desk.Desk, st parts.Styles, width, height int) *copyPage {
	text := func(width int) ([]string, int) { return d.CopyLines(width), 0 }
	return &copyPage{d, st, parts.NewScrollPage("", text, width, height-1)}
}

// Resize is told the window, so that scrolling ends where the page does.
func (p *copyPage) Resize(width, height int) { p.lines.Resize(width, height-1) }

func (p *copyPage) Key(msg tea.KeyMsg) parts.Wish { return parts.Named(msg, p.press) }

func (p *copyPage) press(name string) parts.Wish {
	d := p.desk
	d.Message = ""
	switch name {
	case "left", "shift+tab":
		return d.NextLaid(-1)
	case "right", "tab", "ctrl+g":
		return d.NextLaid(1)
	case "up", "down", "pgup", "pgdown", "home", "end":
		return p.lines.Press(name)
	case "ctrl+z":
		return p.unlessEmpty(d.Undo())
	case "ctrl+y":
		return p.unlessEmpty(d.Redo())
	case "k":
		if d.IsExample() {
			d.Message = "The example stays as it is: s gives a copy a file of its own."
			return nil
		}
		return toChooseCopy{}
	case "d", "s":
		switch {
		case d.Hand == 0:
			d.Message = "This is the worksheet itself; left and right go to the copies."
			return nil
		case name == "s":
			return toNameCopy{}
		}
		d.DropHand("Copy dropped; ^z brings it back.")
		return p.unlessEmpty(nil)
	}
	return parts.ToGoBack{}
}

// unlessEmpty is what is wanted, and to go back where there is no copy any more.
func (p *copyPage) unlessEmpty(w parts.Wish) parts.Wish {
	if len(p.desk.Copies) == 0 {
		return toGoBackAnd{then: w}
	}
	return w
}

// toGoBackAnd wants the page away, and one thing more.
type toGoBackAnd struct {
	parts.Wanted
	then parts.Wish
}

func (w toGoBackAnd) grant(m *root) tea.Cmd { return both(m.goBack(), m.grant(w.then)) }

func (p *copyPage) Render(width, height int) string {
	d, page := p.desk, *p.lines
	page.Head = p.styles.Heading.Render("What if") + "   in " + d.LaidWords(d.Hand)
	if d.Message != "" {
		page.Head = p.styles.Warn.Render(typeset.Cut("> "+d.Message, width))
	}
	keys := parts.KeyLine([]parts.Key{
		{Show: "up/down", Does: "scroll"}, {Show: "left/right", Does: "other"}, {Show: "s", Does: "own file"}, {Show: "d", Does: "drop"},
		{Show: "k", Does: "keep this one"}, {Show: "esc", Does: "back"},
	}, p.styles, width)
	if height < 2 {
		return keys
	}
	return page.Render(width, height-1) + "\n" + keys
}
