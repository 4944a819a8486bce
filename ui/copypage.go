package ui

import (
	"fmt"
	"slices"
)

// copyPage shows the sheet and its copies side by side with all that differs, and
// what can be done with the one at hand.
type copyPage struct {
	desk  *desk
	lines *scrollPage
}

func newCopyPage(d *desk, width, height int) *copyPage {
	text := func(width int) ([]string, int) { return d.copyLines(width), 0 }
	return &copyPage{d, newScrollPage("", text, width, height-1)}
}

// resize is told the window, so that scrolling ends where the page does.
func (p *copyPage) resize(width, height int) { p.lines.resize(width, height-1) }

func (p *copyPage) key(name string) wish {
	d := p.desk
	d.message = ""
	switch name {
	case "left", "shift+tab":
		return d.nextLaid(-1)
	case "right", "tab", "ctrl+g":
		return d.nextLaid(1)
	case "up", "down", "pgup", "pgdown", "home", "end":
		return p.lines.key(name)
	case "k":
		return wish{kind: wishKeepCopy}
	case "d", "s":
		switch {
		case d.hand == 0:
			d.message = "This is the sheet itself; left and right go to the copies."
			return wish{}
		case name == "s":
			return wish{kind: wishNameCopy}
		}
		d.dropHand("The copy is put away; ^z brings it back.")
		if len(d.copies) > 0 {
			return wish{}
		}
	}
	return wish{kind: wishBack}
}

func (p *copyPage) render(width, height int) string {
	d, page := p.desk, *p.lines
	page.head = d.styles.heading.Render("What if") + "   at " + d.laidWords(d.hand)
	if d.message != "" {
		page.head = d.styles.warn.Render(cut("> "+d.message, width))
	}
	keys := keyLine([]binding{
		{show: "left/right", does: "another"}, {show: "s", does: "own file"}, {show: "d", does: "drop"},
		{show: "up/down", does: "scroll"}, {show: "k", does: "keep, drop the rest"}, {show: "esc", does: "back"},
	}, d.styles, width)
	if height < 2 {
		return keys
	}
	return page.render(width, height-1) + "\n" + keys
}

// copyLines are the copies by name, and all that differs.
func (d *desk) copyLines(width int) []string {
	var out []string
	for n := range d.beside {
		lead := "  "
		if n == d.hand {
			lead = "> "
		}
		out = append(out, hanging(lead, capitalised(d.laidWords(n)), width)...)
	}
	return append(append(out, ""), d.besideLines(width)...)
}

// The columns of sheets side by side.
const (
	besideLabel     = 14 // at least; longer ones are broken
	besideLabelMost = 28
	besideCell      = 15
)

// besideLines are the sheet and its copies side by side, as many as the width
// takes: what differs, row by row, and the findings that came or went with the
// copy at hand. All numbers are in the unit of what is at hand.
func (d *desk) besideLines(width int) []string {
	if len(d.copies) == 0 {
		return nil
	}
	shown := d.laidShown((width - besideLabel) / besideCell)
	label := min(width-besideCell*len(shown), besideLabelMost)
	head, sheets := pad("", label), make([]report, len(shown))
	for i, n := range shown {
		sheets[i] = d.beside[n]
		name := "sheet"
		if n > 0 {
			name = fmt.Sprintf("copy %d", n)
		}
		if n == d.hand {
			name = d.styles.here.Render("> " + name)
		}
		head += padLeft(name, besideCell)
	}
	out := []string{head}
	for _, row := range compare(sheets...) {
		lines := wrap(row.what, label-1)
		lines[0] = pad(lines[0], label)
		for _, c := range row.cells {
			lines[0] += padLeft(cut(c, besideCell-1), besideCell)
		}
		out = append(out, lines...)
	}
	came, went := cameAndWent(d.beside[0], d.beside[d.focusCopy()])
	for _, f := range came {
		out = append(out, hanging("came  ", f.leveled(), width)...)
	}
	for _, f := range went {
		out = append(out, hanging("went  ", f.leveled(), width)...)
	}
	if len(out) == 1 {
		out = append(out, wrap("Nothing differs yet: change something in the copy.", width)...)
	}
	return out
}

// besideIn is as much of it as a height takes.
func (d *desk) besideIn(width, height int) []string {
	lines := d.besideLines(width)
	if more := len(lines) - height; more > 0 {
		lines = append(lines[:max(height-1, 0)], cut(fmt.Sprintf("... and %d more: ^x", more+1), width))
	}
	return lines
}

// focusCopy is the copy at hand, or the latest while the hands are on the sheet.
func (d *desk) focusCopy() int {
	if d.hand > 0 {
		return d.hand
	}
	return len(d.copies)
}

// laidShown are the sheet and the copy in focus, and as many more as have room,
// in their order.
func (d *desk) laidShown(room int) []int {
	shown := []int{0, d.focusCopy()}
	for n := 1; n <= len(d.copies) && len(shown) < room; n++ {
		if n != shown[1] {
			shown = append(shown, n)
		}
	}
	slices.Sort(shown)
	return shown
}
