package desk

import (
	"strings"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
)

// What a slide or a limit costs, beside the place where it is chosen.

// costLines shows what moves with the slide, as numbers and as short bars: a
// full bar is the whole cap height, the most cap ease that is usual, twice the
// ease that was asked at the bust, two inches of seam. Of front and back the
// lower cap is shown, and both growths where they differ.
func costLines(r report.Report, width int) []string {
	if r.Plan.Open {
		return nil
	}
	const columnsFrom = 78
	column := width
	if width >= columnsFrom {
		column = (width - 1) / 2
	}
	var items []string
	add := func(name, number string, part, whole float64) {
		items = append(items, typeset.Pad(name, 11)+bar(part, whole)+" "+number)
		if typeset.Width(items[len(items)-1]) > column { // no number is cut
			column = width
		}
	}
	front, back := r.Plan.Turns[calc.SleeveFront], r.Plan.Turns[calc.SleeveBack]
	if edge := r.Plan.Edges[calc.SleeveFront]; front.Known && back.Known {
		lower := min(front.HeightAfter, back.HeightAfter)
		add("Cap height", r.Millimetres(lower)+" of "+r.Millimetres(edge.H), lower, edge.H)
	}
	if ease := r.Plan.Seams.CapEaseAfter; ease.Known {
		most := calc.UsualCapEase(r.Input.Sleeve.Style, r.Input.Fabric).High
		if most == 0 {
			most = 2 * units.Inch
		}
		add("Cap ease", r.Scale.Number(ease.Length), ease.Length.Millimetres(), most.Millimetres())
	}
	if bust := r.Plan.Bust; bust.EaseDrawn.Known && bust.Ease.Length > 0 {
		add("Bust ease", r.Scale.Number(bust.EaseDrawn.Length)+", asked "+r.Scale.Number(bust.Ease.Length),
			bust.EaseDrawn.Length.Millimetres(), 2*bust.Ease.Length.Millimetres())
	}
	for _, g := range []struct {
		name  string
		front calc.Side
	}{{"Underarm", calc.SleeveFront}, {"Side seam", calc.BodiceFront}} {
		f, b := r.Plan.Sides[g.front].Grows, r.Plan.Sides[g.front+1].Grows
		if !f.Known || !b.Known {
			continue
		}
		words := wording.Signed(f.Length, r.Scale)
		if other := wording.Signed(b.Length, r.Scale); other != words {
			words += ", back " + other
		}
		more := f.Length
		if b.Length.Abs() > more.Abs() {
			more = b.Length
		}
		add(g.name, words, more.Millimetres(), 2*units.Inch.Millimetres())
	}
	var lines []string
	for i := 0; i < len(items); i++ {
		line := items[i]
		if column < width && i+1 < len(items) {
			i++
			line = typeset.Pad(line, column) + " " + items[i]
		}
		lines = append(lines, typeset.Cut(strings.TrimRight(line, " "), width))
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
