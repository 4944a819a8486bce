package ui

import (
	"slices"
	"strings"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// workingLines are a figure and, below it, the sum that it comes of.
func workingLines(l calc.Line, sc units.Scale, width int) []string {
	figure, sum, _ := strings.Cut(workingLine(l, sc), " = ")
	return append(hanging("  ", figure, width), hanging("      = ", sum, width)...)
}

// workingText is all arithmetic of the sheet, as far as it was kept; from is the
// first line about what is at hand, and all of those are pointed out.
func (d *desk) workingText(width int) (out []string, from int) {
	lines := calc.Working(d.rep.input)
	if len(lines) == 0 {
		return wrap(d.rep.nothingToTrace(), width), 0
	}
	from = -1
	isAtHand := d.lineAtHand()
	for _, l := range lines {
		text := workingLines(l, d.rep.scale, width)
		if isAtHand(l) {
			text[0] = d.styles.here.Render(">") + text[0][1:]
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
func (d *desk) lineAtHand() func(calc.Line) bool {
	of := func(quantities ...calc.Quantity) func(calc.Line) bool {
		return func(l calc.Line) bool { return slices.Contains(quantities, l.Figure.Quantity) }
	}
	switch k, ok := d.focused(); {
	case ok && k == worksheets.Slide:
		return of(calc.Slide)
	case ok:
		return func(l calc.Line) bool {
			return slices.ContainsFunc(l.Terms, func(t calc.Term) bool { return t.Answer != calc.NoAnswer && keyOf[t.Answer] == k })
		}
	case d.step == stepMatch:
		return of(calc.Finished, calc.FinishedMarked, calc.EaseAfter)
	}
	steps, marks := d.rep.traceSteps(), of(calc.SlideMark, calc.PivotMark)
	if len(steps) == 0 {
		return of()
	}
	side := steps[d.traceAt(d.trace)].Side.Subject()
	return func(l calc.Line) bool { return l.Figure.Of == side && marks(l) }
}
