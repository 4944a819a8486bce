package desk

import (
	"fmt"
	"strings"

	"capscye/ui/compare"
	"capscye/ui/report"
	"capscye/ui/typeset"
)

// Sheets side by side, in the panel, below a form and on the page of copies.

// The columns of sheets side by side.
const (
	besideLabel     = 14 // at least; longer ones are broken
	besideLabelMost = 28
	besideCell      = 15
)

// besideLines are the sheet and its copies side by side, as many as the width
// takes: what differs, row by row, and the findings that are new, gone or still there
// with the copy at hand. All numbers are in the unit of what is at hand.
func (d *Desk) besideLines(width int) []string {
	if len(d.Copies) == 0 {
		return nil
	}
	shown := d.inSight((width - besideLabel) / besideCell)
	label := min(width-besideCell*len(shown), besideLabelMost)
	head, sheets := typeset.Pad("", label), make([]report.Report, len(shown))
	for i, n := range shown {
		sheets[i] = d.beside[n]
		name := "worksheet"
		if n > 0 {
			name = fmt.Sprintf("copy %d", n)
		}
		if n == d.Hand {
			name = d.styles.Here.Render("> " + name)
		}
		head += typeset.PadLeft(name, besideCell)
	}
	out := append(verdictLines(d.beside[d.Hand], d.styles, width), head)
	begun := len(out)
	for _, row := range compare.Sheets(sheets...) {
		out = append(out, besideRow(row, label)...)
	}
	for _, c := range compare.Findings(d.beside[0], d.beside[d.focusCopy()]) {
		out = append(out, typeset.Hanging(fmt.Sprintf("%-6s", c.How), c.Finding.Leveled(), width)...)
	}
	if len(out) == begun {
		out = append(out, typeset.Wrap("Nothing differs yet: change something in the copy.", width)...)
	}
	return out
}

// besideRow is a row of sheets side by side. An amount that is wider than its column goes on
// below, where it ends; other words are cut there.
func besideRow(row compare.Row, label int) []string {
	const most = 2
	lines := typeset.Wrap(row.What, label-1)
	cells, tall := make([][]string, len(row.Cells)), 1
	for i, c := range row.Cells {
		cells[i] = typeset.Wrap(c, besideCell-1)
		if len(cells[i]) > most {
			cells[i] = []string{cells[i][0], typeset.Cut(strings.Join(cells[i][1:], " "), besideCell-1)}
		}
		tall = max(tall, len(cells[i]))
	}
	for len(lines) < tall {
		lines = append(lines, "")
	}
	for n := range tall {
		lines[n] = typeset.Pad(lines[n], label)
		for _, c := range cells {
			text := ""
			if n < len(c) {
				text = c[n]
			}
			lines[n] += typeset.PadLeft(text, besideCell)
		}
		lines[n] = strings.TrimRight(lines[n], " ")
	}
	return lines
}

// besideIn is as much of it as a height takes.
func (d *Desk) besideIn(width, height int) []string {
	lines := d.besideLines(width)
	if more := len(lines) - height; more > 0 {
		lines = append(lines[:max(height-1, 0)], typeset.Cut(fmt.Sprintf("... and %d more: ^x", more+1), width))
	}
	return lines
}

// CopyLines are the copies by name, and all that differs.
func (d *Desk) CopyLines(width int) []string {
	var out []string
	for n := range d.beside {
		lead := "  "
		if n == d.Hand {
			lead = "> "
		}
		out = append(out, typeset.Hanging(lead, typeset.Capitalised(d.LaidWords(n)), width)...)
	}
	return append(append(out, ""), d.besideLines(width)...)
}
