package ui

import (
	"fmt"
	"math"
	"strings"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// What a slide or a limit costs, beside the place where it is chosen.

// costLines shows what moves with the slide, as numbers and as short bars: a
// full bar is the whole cap height, the most cap ease that is usual, twice the
// ease that was asked at the bust, two inches of seam. Of front and back the
// lower cap is shown, and both growths where they differ.
func costLines(r report, width int) []string {
	if r.plan.Open {
		return nil
	}
	const columnsFrom = 78
	column := width
	if width >= columnsFrom {
		column = (width - 1) / 2
	}
	var items []string
	add := func(name, number string, part, whole float64) {
		items = append(items, pad(pad(name, 11)+bar(part, whole)+" "+number, column))
	}
	front, back := r.plan.Turns[calc.SleeveFront], r.plan.Turns[calc.SleeveBack]
	if edge := r.plan.Edges[calc.SleeveFront]; front.Known && back.Known {
		lower := min(front.HeightAfter, back.HeightAfter)
		add("Cap height", r.millimetres(lower)+" of "+r.millimetres(edge.H), lower, edge.H)
	}
	if ease := r.plan.Seams.CapEaseAfter; ease.Known {
		most := calc.UsualCapEase(r.input.Sleeve.Style, r.input.Fabric).High
		if most == 0 {
			most = 2 * units.Inch
		}
		add("Cap ease", r.scale.Number(ease.Length), ease.Length.Millimetres(), most.Millimetres())
	}
	if bust := r.plan.Bust; bust.Finished.Known && bust.EaseAfter.Known && bust.Ease.Length > 0 {
		add("Bust ease", r.scale.Number(bust.EaseAfter.Length)+" of "+r.scale.Number(bust.Ease.Length),
			bust.EaseAfter.Length.Millimetres(), 2*bust.Ease.Length.Millimetres())
	}
	for _, g := range []struct {
		name  string
		front calc.Side
	}{{"Underarm", calc.SleeveFront}, {"Side seam", calc.BodiceFront}} {
		f, b := r.plan.Turns[g.front].Growth, r.plan.Turns[g.front+1].Growth
		if !f.Known || !b.Known {
			continue
		}
		words := signed(f.Length().Length, r.scale)
		if other := signed(b.Length().Length, r.scale); other != words {
			words += ", back " + other
		}
		more := f.MM
		if math.Abs(b.MM) > math.Abs(more) {
			more = b.MM
		}
		add(g.name, words, more, 2*units.Inch.Millimetres())
	}
	var lines []string
	for i := 0; i < len(items); i++ {
		line := items[i]
		if column < width && i+1 < len(items) {
			i++
			line += " " + items[i]
		}
		lines = append(lines, cut(strings.TrimRight(line, " "), width))
	}
	return lines
}

// bar is a short bar of eight cells; what shrinks is drawn in minus signs.
func bar(part, whole float64) string {
	const cells = 8
	n, mark := 0, "="
	if part < 0 {
		part, mark = -part, "-"
	}
	if whole > 0 {
		n = int(min(part/whole, 1)*cells + 0.5)
	}
	return "|" + strings.Repeat(mark, n) + strings.Repeat(" ", cells-n) + "|"
}

// millimetres shows a length that comes from a turn.
func (r report) millimetres(mm float64) string {
	return r.scale.Number(calc.Approx{MM: mm, Known: true}.Length().Length)
}

// costOfLimit says what a pivot of the limit, and of half as much again, takes
// off the cap or the armhole: the reason for a limit.
func (r report) costOfLimit(k worksheets.Key) string {
	side, what := calc.SleeveFront, "cap"
	switch k {
	case worksheets.PivotLimitSleeve:
	case worksheets.PivotLimitBodice:
		side, what = calc.BodiceFront, "armhole"
	default:
		return ""
	}
	limit := r.sheet.Reading(k).Length
	wider := 3 * limit / 2
	one, more := 0.0, 0.0
	for _, e := range []calc.Edge{r.plan.Edges[side], r.plan.Edges[side+1]} {
		a, b := e.Lift(limit.Millimetres()), e.Lift(wider.Millimetres())
		if !a.Known || !b.Known {
			return ""
		}
		one, more = max(one, a.MM), max(more, b.MM)
	}
	if limit <= 0 {
		return ""
	}
	return fmt.Sprintf(" Here %s lowers the %s by %s, %s by %s.", r.scale.Format(limit), what, r.millimetres(one),
		r.scale.Format(wider), r.millimetres(more))
}
