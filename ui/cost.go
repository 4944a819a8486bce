package ui

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// What a slide or a limit costs, beside the place where it is chosen.

// costLines shows what moves with the slide, as numbers and as short bars: a
// full bar is the whole cap height, the most cap ease that is usual, twice the
// ease that was asked at the bust, an inch of seam.
func costLines(r report, width int) []string {
	var items []string
	add := func(name, number string, part, whole float64) {
		items = append(items, pad(name, 11)+bar(part, whole)+" "+pad(number, 15))
	}
	if r.plan.Open {
		return nil
	}
	sleeve, edge := r.plan.Turns[calc.SleeveFront], r.plan.Edges[calc.SleeveFront]
	if sleeve.Known {
		add("Cap height", r.millimetres(sleeve.HeightAfter)+" of "+r.millimetres(edge.H), sleeve.HeightAfter, edge.H)
	}
	if ease := r.plan.Seams.CapEaseAfter; ease.Known {
		most := calc.UsualCapEase(r.input.Sleeve.Style, r.input.Fabric).High
		if most == 0 {
			most = 2 * units.Inch
		}
		add("Cap ease", r.scale.Number(ease.Length), ease.Length.Millimetres(), most.Millimetres())
	}
	if bust := r.plan.Bust; bust.Finished.Known && bust.EaseAfter.Known {
		add("Bust ease", r.scale.Number(bust.EaseAfter.Length)+" of "+r.scale.Number(bust.Ease.Length),
			bust.EaseAfter.Length.Millimetres(), 2*bust.Ease.Length.Millimetres())
	}
	for _, g := range []struct {
		name  string
		front calc.Side
	}{{"Underarm", calc.SleeveFront}, {"Side seam", calc.BodiceFront}} {
		if t := r.plan.Turns[g.front]; t.Growth.Known {
			add(g.name, signed(t.Growth.Length().Length, r.scale), t.Growth.MM, units.Inch.Millimetres())
		}
	}
	var lines []string
	for i := 0; i < len(items); i += 2 {
		line := items[i]
		if i+1 < len(items) {
			line += " " + items[i+1]
		}
		lines = append(lines, cut(strings.TrimRight(line, " "), width))
	}
	return lines
}

// bar is a short bar of eight cells.
func bar(part, whole float64) string {
	const cells = 8
	n := 0
	if whole > 0 {
		n = int(min(max(part/whole, 0), 1)*cells + 0.5)
	}
	return "|" + strings.Repeat("=", n) + strings.Repeat(" ", cells-n) + "|"
}

// millimetres shows a length that comes from a turn.
func (r report) millimetres(mm float64) string {
	return r.scale.Number(calc.Approx{MM: mm, Known: true}.Length().Length)
}

// costOfLimit says what a pivot of the limit, and of half as much again, takes
// off the cap or the armhole: the reason for a limit.
func (d *desk) costOfLimit(k worksheets.Key) string {
	side, what := calc.SleeveFront, "cap"
	switch k {
	case worksheets.PivotLimitSleeve:
	case worksheets.PivotLimitBodice:
		side, what = calc.BodiceFront, "armhole"
	default:
		return ""
	}
	edge, limit := d.rep.plan.Edges[side], d.doc.Sheet.Reading(k).Length
	if !edge.Known || limit <= 0 {
		return ""
	}
	wider := 3 * limit / 2
	one, more := edge.Lift(limit.Millimetres()), edge.Lift(wider.Millimetres())
	if !one.Known || !more.Known {
		return ""
	}
	return fmt.Sprintf(" Here %s lowers the %s by %s, %s by %s.", d.rep.scale.Format(limit), what, d.rep.millimetres(one.MM),
		d.rep.scale.Format(wider), d.rep.millimetres(more.MM))
}
