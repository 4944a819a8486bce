package ui

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/units"
)

// The tables that the screen and the printed sheet share. Their first row is
// the heading.

// printedTables are all of them, for paper; those that have nothing to say are
// left out.
func printedTables(r report) [][]string {
	all := [][]string{
		needsTable(r), sidesTable(r), bandLines(r), finishedTable(r), seamsTable(r), turnTable(r), widthsTable(r),
	}
	return slices.DeleteFunc(all, func(table []string) bool { return len(table) == 0 })
}

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
		lines = append(lines, row(capitalised(subjectWords[s.Subject()]), orDash(p.Need, r.scale), r.planned(p.Pivot),
			r.planned(p.Slide), r.planned(p.Total), r.marksShort(p)))
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
		lines = append(lines, row(capitalised(p.place), orDash(g.Wanted(), r.scale), orDash(g.Finished, r.scale),
			orDash(g.Marked, r.scale), orDash(g.EaseAfter, r.scale)))
	}
	return lines
}

// turnTable is what the pivots do: the turn, the height that is left, and how
// much longer the seam below the underarm gets. It is nil where no corner was
// measured. All of it is rounded, for a turn is not exact.
func turnTable(r report) []string {
	row := func(name string, cells ...any) string {
		return fmt.Sprintf("%-13s%8s%12s%12s%14s", append([]any{name}, cells...)...)
	}
	lines := []string{row("", "turn", "height", "after", "seam below")}
	for _, s := range calc.Sides() {
		t, e := r.plan.Turns[s], r.plan.Edges[s]
		if !t.Known {
			continue
		}
		growth := "-"
		if t.Growth.Known {
			growth = signed(t.Growth.Length().Length, r.scale)
		}
		lines = append(lines, row(capitalised(subjectWords[s.Subject()]), fmt.Sprintf("%.1f deg", t.Angle*180/math.Pi),
			r.millimetres(e.H), r.millimetres(t.HeightAfter), growth))
	}
	if len(lines) == 1 {
		return nil
	}
	return lines
}

// signed writes a change with its sign.
func signed(l units.Length, sc units.Scale) string {
	text := sc.Number(l)
	if l > 0 && strings.ContainsAny(text, "123456789") {
		return "+" + text
	}
	return text
}

// seamsTable is cap and armhole before and after; nil where neither was
// measured.
func seamsTable(r report) []string {
	s := r.plan.Seams
	if !s.CapBefore.Known && !s.ArmholeBefore.Known {
		return nil
	}
	row := func(name string, cells ...any) string {
		return fmt.Sprintf("%-13s%12s%12s   %s", append([]any{name}, cells...)...)
	}
	usual := calc.UsualCapEase(r.input.Sleeve.Style, r.input.Fabric)
	remark := "usual " + span(usual.Low, usual.High, r.scale)
	if !usual.Bounded {
		remark = "usual from " + r.scale.Format(usual.Low)
	}
	return []string{
		row("", "before", "after", ""),
		row("Cap seam", orDash(s.CapBefore, r.scale), orDash(s.CapAfter, r.scale), ""),
		row("Armhole", orDash(s.ArmholeBefore, r.scale), orDash(s.ArmholeAfter, r.scale), ""),
		row("Cap ease", orDash(s.CapEaseBefore, r.scale), orDash(s.CapEaseAfter, r.scale), remark),
	}
}

// widthsTable is what has to fit below the underarm; nil where nothing was
// measured there.
func widthsTable(r report) []string {
	if len(r.plan.Widths) == 0 {
		return nil
	}
	row := func(name string, cells ...any) string {
		return fmt.Sprintf("%-13s%12s%12s%12s", append([]any{name}, cells...)...)
	}
	lines := []string{row("", "wanted", "comes out", "to spare")}
	for _, w := range r.plan.Widths {
		lines = append(lines, row(capitalised(placeWords[w.At]), r.scale.Number(w.Wanted), r.scale.Number(w.Around), signed(-w.Lacks(), r.scale)))
	}
	return lines
}

// bandLines says in words where the slide lies in its band.
func bandLines(r report) []string {
	var lines []string
	for _, h := range calc.Halves() {
		lines = append(lines, fmt.Sprintf("%-16s%s", "Slide, "+subjectWords[h.Subject()], r.bandWords(h)))
	}
	return lines
}

func (r report) bandWords(h calc.Half) string {
	band, slide := r.plan.Bands[h], r.scale.Format(r.plan.Sides[h.Sleeve()].Slide)
	switch {
	case r.plan.Open:
		return "not known yet"
	case band.Empty() && r.input.Method.Armhole == calc.KeepArmhole:
		return slide + "; the kept armhole leaves no other"
	case band.Empty():
		return slide + "; no slide serves both pieces"
	}
	return fmt.Sprintf("%s, of %s to %s", slide, r.scale.Number(band.Low), r.scale.Format(band.High))
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

// planned is a figure of a side, or a dash while the plan is open.
func (r report) planned(l units.Length) string {
	if r.plan.Open {
		return "-"
	}
	return r.scale.Number(l)
}

// marksShort is the two amounts to mark, "1 + 1/4 in".
func (r report) marksShort(s calc.SidePlan) string {
	switch {
	case r.plan.Open:
		return "not known yet"
	case s.PivotMark == 0 && s.SlideMark == 0:
		return "nothing"
	}
	return bothMarks(s.PivotMark, s.SlideMark, r.scale)
}

// bothMarks is "1 + 1/4 in".
func bothMarks(pivot, slide units.Length, sc units.Scale) string {
	return bareMarks(pivot, slide, sc) + " " + sc.Ruler.System().String()
}

// bareMarks is "1 + 1/4", in the ruler's unit.
func bareMarks(pivot, slide units.Length, sc units.Scale) string {
	held := units.Scale{System: sc.Ruler.System(), Ruler: sc.Ruler}
	return held.Number(pivot) + " + " + held.Number(slide)
}

func capitalised(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
