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
	printNeeds(line, r)
	line("")
	printSides(line, r)
	line("")
	printFinished(line, r)
	if len(r.findings) > 0 {
		line("")
		line("Findings")
		for _, f := range r.findings {
			printHanging(line, fmt.Sprintf("  %-5s ", f.level), f.line())
		}
	}
	if working {
		line("")
		line("Working")
		for _, l := range calc.Working(input(&r.sheet)) {
			name, sum, _ := strings.Cut(workingLine(l, r.scale), " = ")
			line("  %s", name)
			printHanging(line, "      = ", sum)
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

func printNeeds(line func(string, ...any), r report) {
	line("%-16s %12s %12s %12s %14s", "", "body", "+ ease", "- pattern", "= need")
	for _, g := range []struct {
		name  string
		girth calc.Girth
	}{{"Sleeve at bicep", r.plan.Sleeve}, {"Bodice at bust", r.plan.Bust}} {
		line("%-16s %12s %12s %12s %14s", g.name, orDash(g.girth.Body, r.scale), orDash(g.girth.Ease, r.scale),
			orDash(g.girth.Flat, r.scale), orDash(g.girth.Need, r.scale))
	}
}

// orDash is a number, or a dash for what is not known.
func orDash(l units.Reading, sc units.Scale) string {
	if !l.Known {
		return "-"
	}
	return sc.Number(l.Length)
}

func printSides(line func(string, ...any), r report) {
	line("%-16s %9s %9s %9s %9s   %s", "Side", "need", "pivot", "slide", "total", "mark")
	for _, s := range calc.Sides() {
		p := r.plan.Sides[s]
		marks := sideWords(p, r.scale)
		if marks == "" {
			marks = "nothing"
		}
		line("%-16s %9s %9s %9s %9s   %s", capitalised(subjectWords[s.Subject()]), orDash(p.Need, r.scale),
			r.scale.Number(p.Pivot), r.scale.Number(p.Slide), r.scale.Number(p.Total), marks)
	}
	for _, h := range calc.Halves() {
		line("%-16s %s", "Slide, "+subjectWords[h.Subject()], bandWords(r, h))
	}
}

// bandWords is the slide of a half within its band, and the rule it follows.
func bandWords(r report, h calc.Half) string {
	band, slide := r.plan.Bands[h], r.plan.Sides[h.Sleeve()].Slide
	if band.Empty() {
		return fmt.Sprintf("%s; no slide serves both pieces", r.scale.Format(slide))
	}
	return fmt.Sprintf("%s, of %s to %s", r.scale.Format(slide), r.scale.Number(band.Low), r.scale.Format(band.High))
}

func printFinished(line func(string, ...any), r report) {
	line("%-16s %12s %12s %12s %14s", "Finished", "asked", "comes out", "by marks", "ease")
	for _, g := range []struct {
		name  string
		girth calc.Girth
	}{{"Bicep", r.plan.Sleeve}, {"Bust", r.plan.Bust}} {
		line("%-16s %12s %12s %12s %14s", g.name, orDash(asked(g.girth), r.scale), orDash(g.girth.Finished, r.scale),
			orDash(g.girth.Marked, r.scale), orDash(g.girth.EaseAfter, r.scale))
	}
}

// asked is the girth that was asked for.
func asked(g calc.Girth) units.Reading {
	if !g.Body.Known || !g.Ease.Known {
		return units.Reading{}
	}
	return units.Known(g.Body.Length + g.Ease.Length)
}

func capitalised(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
