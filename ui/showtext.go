package ui

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// printWidth is how wide the printed sheet is.
const printWidth = 80

// sheetText is the computed sheet as plain text of 80 columns, for a terminal,
// a pipe or a printer. With working, every line of arithmetic follows.
func sheetText(r report, working bool) string {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("%s", r.name())
	line("Lengths in %s; amounts to mark for a ruler in %s.", unitWords(r.scale.System), r.scale.Ruler)
	if notes := plain(r.sheet.Text(worksheets.Notes)); notes != "" {
		printHanging(line, "", notes)
	}
	line("")
	for _, p := range r.pieces() {
		line("%s", p.needWords(r.scale))
		for _, words := range p.sidesWords(r.scale) {
			printHanging(line, "  ", words)
		}
		if words := p.finishedWords(r.scale); words != "" {
			printHanging(line, "  ", "comes out: "+words)
		}
	}
	for _, table := range printedTables(r) {
		line("")
		for _, row := range table {
			line("%s", strings.TrimRight(row, " "))
		}
	}
	if len(r.findings) > 0 {
		line("")
		line("Findings")
		for _, f := range r.findings {
			printHanging(line, fmt.Sprintf("  %-5s ", f.level), f.line())
		}
	}
	if lines := fittingLines(r); len(lines) > 0 {
		line("")
		line("Fittings")
		for _, l := range lines {
			printHanging(line, "  ", l)
		}
	}
	if working {
		line("")
		line("Working")
		for _, l := range calc.Working(r.input) {
			for _, text := range workingLines(l, r.scale, printWidth) {
				line("%s", text)
			}
		}
	}
	line("")
	for _, c := range cautions {
		printHanging(line, "", c)
	}
	if note := offMarkNote(b.String()); note != "" {
		line("%s", note)
	}
	return b.String()
}

func unitWords(s units.System) string {
	if s == units.Inches {
		return "inches"
	}
	return "centimetres"
}

// printHanging prints a paragraph with its lead hanging out to the left.
func printHanging(line func(string, ...any), lead, text string) {
	for _, l := range hanging(lead, text, printWidth) {
		line("%s", l)
	}
}
