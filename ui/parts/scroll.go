package parts

import (
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/typeset"
)

// ScrollPage is a text in front of everything, under a head that stays; it
// scrolls where the window is small.
type ScrollPage struct {
	Head   string
	text   func(width int) (lines []string, from int) // from is the line to begin with
	height int                                        // of the text, in the window it was last seen in
	scroll int
	end    int // how far it can scroll there
}

// NewScrollPage opens the page at its first line of interest.
func NewScrollPage(head string, text func(int) ([]string, int), width, height int) *ScrollPage {
	_, from := text(width)
	p := &ScrollPage{Head: head, text: text, scroll: from}
	p.Resize(width, height)
	return p
}

// Key scrolls, or goes back.
func (p *ScrollPage) Key(msg tea.KeyMsg) Wish { return Named(msg, p.Press) }

// Press is Key for a key by its name.
func (p *ScrollPage) Press(name string) Wish {
	by, ok := map[string]int{"down": 1, "up": -1, "pgdown": p.height - 1, "pgup": 1 - p.height, "home": -p.end, "end": p.end}[name]
	if !ok {
		return ToGoBack{}
	}
	p.scroll = min(max(p.scroll+by, 0), p.end)
	return nil
}

// Resize is told the window, so that scrolling ends where the page does.
func (p *ScrollPage) Resize(width, height int) {
	lines, _ := p.text(width)
	p.height = max(height-1, 2)
	p.end = max(0, len(lines)-p.height)
	p.scroll = min(p.scroll, p.end)
}

// Render draws it for a window.
func (p *ScrollPage) Render(width, height int) string {
	lines, _ := p.text(width)
	if height < 2 {
		return typeset.Block([]string{p.Head}, width, height)
	}
	return typeset.Cut(p.Head, width) + "\n" + typeset.Scrolled(lines, p.scroll, width, height-1)
}
