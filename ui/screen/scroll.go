package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/typeset"
)

// scrollPage is a text in front of everything, under a head that stays; it
// scrolls where the window is small.
type scrollPage struct {
	head   string
	text   func(width int) (lines []string, from int) // from is the line to begin with
	height int                                        // of the text, in the window it was last seen in
	scroll int
	end    int // how far it can scroll there
}

// newScrollPage opens the page at its first line of interest.
func newScrollPage(head string, text func(int) ([]string, int), width, height int) *scrollPage {
	_, from := text(width)
	p := &scrollPage{head: head, text: text, scroll: from}
	p.resize(width, height)
	return p
}

func (p *scrollPage) key(msg tea.KeyMsg) wish { return named(msg, p.press) }

func (p *scrollPage) press(name string) wish {
	by, ok := map[string]int{"down": 1, "up": -1, "pgdown": p.height - 1, "pgup": 1 - p.height, "home": -p.end, "end": p.end}[name]
	if !ok {
		return toGoBack{}
	}
	p.scroll = min(max(p.scroll+by, 0), p.end)
	return nil
}

// resize is told the window, so that scrolling ends where the page does.
func (p *scrollPage) resize(width, height int) {
	lines, _ := p.text(width)
	p.height = max(height-1, 2)
	p.end = max(0, len(lines)-p.height)
	p.scroll = min(p.scroll, p.end)
}

func (p *scrollPage) render(width, height int) string {
	lines, _ := p.text(width)
	if height < 2 {
		return typeset.Block([]string{p.head}, width, height)
	}
	return typeset.Cut(p.head, width) + "\n" + typeset.Scrolled(lines, p.scroll, width, height-1)
}
