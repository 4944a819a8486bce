package ui

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/units"
)

// The tables that the screen and the printed sheet share. Their first row is
// the heading.

// needsTable is body + ease - pattern = need.
func needsTable(r report) []string {
	row := func(name string, cells ...any) string {
		return fmt.Sprintf("%-16s%12s%12s%12s%12s", append([]any{name}, cells...)...)
	}
	lines := []string{row("", "body", "+ ease", "- pattern", "= need")}
	for _, p := range r.pieces() {
		g := p.girth
		lines = append(lines, row(p.name+", "+p.place, orDash(g.Body, r.scale), orDash(g.Ease, r.scale),
			orDash(g.Flat, r.scale), orDash(g.Need, r.scale)))
	}
	return lines
}

// sidesTable is the four sides next to each other.
func sidesTable(r report) []string {
	row := func(name string, cells ...any) string {
		return fmt.Sprintf("%-13s%8s%8s%8s%8s   %s", append([]any{name}, cells...)...)
	}
	lines := []string{row("", "need", "pivot", "slide", "total", "mark pivot + slide")}
	for _, s := range calc.Sides() {
		p := r.plan.Sides[s]
		lines = append(lines, row(capitalised(subjectWords[s.Subject()]), orDash(p.Need, r.scale), r.scale.Number(p.Pivot),
			r.scale.Number(p.Slide), r.scale.Number(p.Total), marksShort(p, r.scale)))
	}
	return lines
}

// finishedTable is what comes out beside what was asked.
func finishedTable(r report) []string {
	row := func(name string, cells ...any) string {
		return fmt.Sprintf("%-8s%13s%13s%13s%13s", append([]any{name}, cells...)...)
	}
	lines := []string{row("", "asked", "comes out", "by marks", "ease")}
	for _, p := range r.pieces() {
		g := p.girth
		lines = append(lines, row(capitalised(p.place), orDash(asked(g), r.scale), orDash(g.Finished, r.scale),
			orDash(g.Marked, r.scale), orDash(g.EaseAfter, r.scale)))
	}
	return lines
}

// bandLines says in words where the slide lies in its band.
func bandLines(r report) []string {
	var lines []string
	for _, h := range calc.Halves() {
		band, slide := r.plan.Bands[h], r.plan.Sides[h.Sleeve()].Slide
		words := fmt.Sprintf("%s, of %s to %s", r.scale.Format(slide), r.scale.Number(band.Low), r.scale.Format(band.High))
		if band.Empty() {
			words = r.scale.Format(slide) + "; no slide serves both pieces"
		}
		lines = append(lines, fmt.Sprintf("%-16s%s", "Slide, "+subjectWords[h.Subject()], words))
	}
	return lines
}

// headed sets the first row of a table off, and keeps all rows to a width.
func headed(table []string, st styles, width int) []string {
	for i, row := range table {
		table[i] = cut(row, width)
	}
	table[0] = st.heading.Render(table[0])
	return table
}

// orDash is a number, or a dash for what is not known.
func orDash(l units.Reading, sc units.Scale) string {
	if !l.Known {
		return "-"
	}
	return sc.Number(l.Length)
}

// asked is the girth that was asked for.
func asked(g calc.Girth) units.Reading {
	if !g.Body.Known || !g.Ease.Known {
		return units.Reading{}
	}
	return units.Known(g.Body.Length + g.Ease.Length)
}

// marksShort is the two amounts to mark, "1 + 1/4 in".
func marksShort(s calc.SidePlan, sc units.Scale) string {
	if s.PivotMark == 0 && s.SlideMark == 0 {
		return "nothing"
	}
	pivot, _, _ := strings.Cut(sc.OnRuler(s.PivotMark), " "+sc.Ruler.System().String())
	return pivot + " + " + sc.OnRuler(s.SlideMark)
}

func capitalised(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
