package ui

import (
	"fmt"
	"strings"

	"capscye/units"
	"capscye/worksheets"
)

// printWidth is how wide the printed sheet is.
const printWidth = 80

// printout is a printed text in the making.
type printout struct{ strings.Builder }

func (p *printout) line(format string, args ...any) { fmt.Fprintf(p, format+"\n", args...) }

// hanging prints a paragraph with its lead hanging out to the left.
func (p *printout) hanging(lead, text string) {
	for _, l := range hanging(lead, text, printWidth) {
		p.line("%s", l)
	}
}

// cautions prints them, set off.
func (p *printout) cautions() {
	p.line("")
	for _, c := range cautions {
		p.hanging("", c)
	}
}

// text is the whole, with the sign of rounded lengths explained where there is
// one.
func (p *printout) text() string {
	if note := offMarkNote(p.String()); note != "" {
		p.line("%s", note)
	}
	return p.String()
}

// sheetText is the computed sheet as plain text of 80 columns, for a terminal,
// a pipe or a printer. With working, every line of arithmetic follows.
func sheetText(r report, working bool) string {
	var out printout
	out.line("%s", r.name())
	out.line("%s", r.scaleWords())
	if notes := plain(r.sheet.Text(worksheets.Notes)); notes != "" {
		out.hanging("", notes)
	}
	out.line("")
	for _, p := range r.pieces() {
		out.line("%s", p.needWords(r.scale))
		for _, words := range p.sidesWords(r.scale) {
			out.hanging("  ", words)
		}
		if words := p.finishedWords(r.scale); words != "" {
			out.hanging("  ", "comes out: "+words)
		}
	}
	for _, table := range printedTables(r) {
		out.line("")
		for _, row := range table {
			out.line("%s", strings.TrimRight(row, " "))
		}
	}
	if len(r.findings) > 0 {
		out.line("")
		out.line("Findings")
		for _, f := range r.findings {
			out.hanging(fmt.Sprintf("  %-5s ", f.level), f.line())
		}
	}
	if lines, _ := troubleLines(r.troubles(), printWidth-2); len(lines) > 0 {
		out.line("")
		out.line("What would make it work: the smallest single changes")
		for _, l := range lines {
			out.line("%s", strings.TrimRight("  "+l, " "))
		}
	}
	if lines := fittingLines(r); len(lines) > 0 {
		out.line("")
		out.line("Fittings")
		for _, l := range lines {
			out.hanging("  ", l)
		}
	}
	if working {
		out.line("")
		out.line("Working")
		for _, l := range r.worked() {
			for _, text := range l.rows(printWidth) {
				out.line("%s", text)
			}
		}
	}
	out.cautions()
	return out.text()
}

// scaleWords says how lengths are shown.
func (r report) scaleWords() string {
	return fmt.Sprintf("Lengths in %s; amounts to mark for a ruler in %s.", unitWords(r.scale.System), r.scale.Ruler)
}

func unitWords(s units.System) string {
	if s == units.Inches {
		return "inches"
	}
	return "centimetres"
}
