package report

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// Millimetres shows a length that comes from a turn.
func (r Report) Millimetres(mm float64) string {
	return r.Scale.Number(calc.Approx{MM: mm, Known: true}.Length().Length)
}

// costOfLimit says what a pivot of the limit, and of half as much again, takes
// off the cap or the armhole: the reason for a limit.
func (r Report) costOfLimit(k worksheets.Key) string {
	side, what := calc.SleeveFront, "cap"
	switch k {
	case worksheets.PivotLimitSleeve:
	case worksheets.PivotLimitBodice:
		side, what = calc.BodiceFront, "armhole"
	default:
		return ""
	}
	limit := r.Sheet.Reading(k).Length
	wider := 3 * limit / 2
	one, more := 0.0, 0.0
	for _, e := range []calc.Edge{r.Plan.Edges[side], r.Plan.Edges[side+1]} {
		a, b := e.Lift(limit.Millimetres()), e.Lift(wider.Millimetres())
		if !a.Known || !b.Known {
			return ""
		}
		one, more = max(one, a.MM), max(more, b.MM)
	}
	if limit <= 0 {
		return ""
	}
	further := r.Scale.Format(wider)
	if strings.HasPrefix(further, units.OffMark) {
		further = "half as much again"
	}
	inUnit := func(mm float64) string { return r.Millimetres(mm) + " " + r.Scale.System.String() }
	return fmt.Sprintf(" Here %s lowers the %s by %s, %s by %s.", r.Scale.Format(limit), what, inUnit(one), further, inUnit(more))
}

// SlideRule says which slide was chosen, in words.
func (r Report) SlideRule() string {
	if l := r.Sheet.Reading(worksheets.Slide); l.Known {
		return r.Scale.Format(l.Length)
	}
	if r.Sheet.Text(worksheets.Slide) == "even" {
		return "even"
	}
	return "least"
}
