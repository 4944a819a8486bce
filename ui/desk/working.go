package desk

import (
	"slices"

	"capscye/calc"
	"capscye/calc/trace"
	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// WorkingText is the working of the sheet, as far as it was kept; from is the
// first line about what is at hand, and all of those are pointed out.
func (d *Desk) WorkingText(width int) (out []string, from int) {
	lines := d.Rep.Working()
	if len(lines) == 0 {
		return typeset.Wrap(d.Rep.NothingToTrace(), width), 0
	}
	from = -1
	isAtHand := d.lineAtHand()
	if !slices.ContainsFunc(lines, isAtHand) {
		out = append(typeset.Wrap("No line is about this field; here is everything:", width), "")
	}
	for _, l := range lines {
		text := l.Rows(width)
		if isAtHand(l) {
			text[0] = d.styles.Here.Render(">") + text[0][1:]
			if from < 0 {
				from = len(out)
			}
		}
		out = append(out, text...)
	}
	return out, max(from, 0)
}

// lineAtHand tells the lines of the working about the field, the page or the step
// at the table that the person is at.
func (d *Desk) lineAtHand() func(report.WorkedLine) bool {
	of := func(quantities ...calc.Quantity) func(report.WorkedLine) bool {
		return func(l report.WorkedLine) bool {
			return l.Sum != nil && slices.Contains(quantities, l.Sum.Figure.Quantity)
		}
	}
	switch k, ok := d.Focused(); {
	case ok && k == worksheets.Slide:
		return of(calc.Slide)
	case ok:
		return func(l report.WorkedLine) bool { return l.Uses(k) }
	case d.step == forms.Match:
		return of(calc.Finished, calc.FinishedMarked, calc.EaseAfter, calc.Drawn, calc.DrawnMarked, calc.EaseDrawn)
	}
	steps, marks := d.Rep.TraceSteps(), of(calc.SlideMark, calc.PivotMark)
	if len(steps) == 0 {
		return of()
	}
	s := steps[d.traceAt(d.trace)]
	turnOf := func(figures ...calc.TurnFigure) func(report.WorkedLine) bool {
		return func(l report.WorkedLine) bool {
			return l.Turn != nil && l.Turn.Side == s.Side && (figures == nil || slices.Contains(figures, l.Turn.Figure))
		}
	}
	switch known := d.Rep.Plan.Turns[s.Side].Known; {
	case known && s.Action == trace.TurnTo:
		return turnOf()
	case known && (s.Action == trace.Taper || s.Action == trace.Extend):
		return turnOf(calc.LegToMark, calc.LegToLine, calc.LegToEnd, calc.SeamGrowth, calc.FallOnSeam, calc.GainAtLine)
	}
	return func(l report.WorkedLine) bool { return marks(l) && l.Sum.Figure.Of == s.Side.Subject() }
}
