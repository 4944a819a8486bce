package screen

import (
	"fmt"
	"strconv"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/compare"
	"capscye/ui/parts"
	"capscye/ui/typeset"
)

// offerPage lists the offers, to open one as a what-if.
type offerPage struct {
	styles   parts.Styles
	troubles []compare.Trouble
	at       int
}

func (p *offerPage) offers() (list []compare.Offer) {
	for _, t := range p.troubles {
		list = append(list, t.Offers...)
	}
	return list
}

func (p *offerPage) Key(msg tea.KeyMsg) parts.Wish { return parts.Named(msg, p.press) }

func (p *offerPage) press(name string) parts.Wish {
	list := p.offers()
	to := func(at int) parts.Wish {
		p.at = max(0, min(at, len(list)-1))
		return nil
	}
	switch name {
	case "up", "shift+tab":
		return to(p.at - 1)
	case "down", "tab":
		return to(p.at + 1)
	case "pgup":
		return to(p.at - pageOfOffers)
	case "pgdown":
		return to(p.at + pageOfOffers)
	case "home":
		return to(0)
	case "end":
		return to(len(list) - 1)
	case "enter":
		if len(list) > 0 {
			return toTry{sheet: list[p.at].Sheet}
		}
		return parts.ToGoBack{}
	}
	if n, err := strconv.Atoi(name); err == nil && 1 <= n && n <= len(list) {
		return toTry{sheet: list[n-1].Sheet}
	}
	if name == "esc" || len([]rune(name)) == 1 { // a letter or digit that takes none
		return parts.ToGoBack{}
	}
	return nil
}

// pageOfOffers is how many offers fill about a small screen.
const pageOfOffers = 4

func (p *offerPage) Render(width, height int) string {
	lines, at := compare.Lines(p.troubles, width, false)
	focus := 0
	if len(at) > 0 {
		focus = at[p.at]
		lines[focus] = p.styles.Here.Render(lines[focus])
	}
	seen, below := typeset.Window(lines, min(focus+2, len(lines)-1), height-3) // the price of what is at hand is seen too
	if below > 0 && len(seen) > 1 {
		seen[len(seen)-1] = typeset.Cut(fmt.Sprintf("... and %d lines more below", below+1), width)
	}
	keys := parts.KeyLine([]parts.Key{{Show: "up/down", Does: "choose"}, {Show: "enter", Does: "open as what if"}, {Show: "esc", Does: "back"}}, p.styles, width)
	words, kind := compare.Heading(p.troubles)
	head := []string{p.styles.Heading.Render(words) + "   " + kind, ""}
	return typeset.Block(append(head, seen...), width, height-1) + "\n" + typeset.Cut(keys, width)
}
