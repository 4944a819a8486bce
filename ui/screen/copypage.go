package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/typeset"
)

// copyPage shows the sheet and its copies side by side with all that differs, and
// what can be done with the one at hand.
type copyPage struct {
	desk   *desk
	styles styles
	lines  *scrollPage
}

func newCopyPage(d *desk, st styles, width, height int) *copyPage {
	text := func(width int) ([]string, int) { return d.copyLines(width), 0 }
	return &copyPage{d, st, newScrollPage("", text, width, height-1)}
}

// resize is told the window, so that scrolling ends where the page does.
func (p *copyPage) resize(width, height int) { p.lines.resize(width, height-1) }

func (p *copyPage) key(msg tea.KeyMsg) wish { return named(msg, p.press) }

func (p *copyPage) press(name string) wish {
	d := p.desk
	d.message = ""
	switch name {
	case "left", "shift+tab":
		return d.nextLaid(-1)
	case "right", "tab", "ctrl+g":
		return d.nextLaid(1)
	case "up", "down", "pgup", "pgdown", "home", "end":
		return p.lines.press(name)
	case "k":
		if d.isExample() {
			d.message = "The example stays as it is: s gives a copy a file of its own."
			return nil
		}
		return toChooseCopy{}
	case "d", "s":
		switch {
		case d.hand == 0:
			d.message = "This is the worksheet itself; left and right go to the copies."
			return nil
		case name == "s":
			return toNameCopy{}
		}
		d.dropHand("Copy dropped; ^z brings it back.")
		if len(d.copies) > 0 {
			return nil
		}
	}
	return toGoBack{}
}

func (p *copyPage) render(width, height int) string {
	d, page := p.desk, *p.lines
	page.head = p.styles.heading.Render("What if") + "   in " + d.laidWords(d.hand)
	if d.message != "" {
		page.head = p.styles.warn.Render(typeset.Cut("> "+d.message, width))
	}
	keys := keyLine([]Key{
		{Show: "up/down", Does: "scroll"}, {Show: "left/right", Does: "another"}, {Show: "s", Does: "own file"}, {Show: "d", Does: "drop"},
		{Show: "k", Does: "keep, drop the rest"}, {Show: "esc", Does: "back"},
	}, p.styles, width)
	if height < 2 {
		return keys
	}
	return page.render(width, height-1) + "\n" + keys
}
