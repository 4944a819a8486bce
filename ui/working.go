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
	for _, l := range lines {
		text := workingLines(l, d.rep.scale, width)
		if d.isAtHand(l) {
			text[0] = d.styles.here.Render(">") + text[0][1:]
			if from < 0 {
				from = len(out)
			}
		}
		out = append(out, text...)
	}
	return out, max(from, 0)
}

// isAtHand tells that a line of the working is about the field, the page or the
// step at the table that the person is at.
func (d *desk) isAtHand(l calc.Line) bool {
	switch k, ok := d.focused(); {
	case ok && k == worksheets.Slide:
		return l.Figure.Quantity == calc.Slide
	case ok:
		return slices.ContainsFunc(l.Terms, func(t calc.Term) bool {
			return t.Answer != calc.NoAnswer && keyOf[t.Answer] == k
		})
	case d.step == stepMatch:
		return l.Figure.Quantity == calc.Finished || l.Figure.Quantity == calc.FinishedMarked || l.Figure.Quantity == calc.EaseAfter
	}
	steps := d.rep.traceSteps()
	if len(steps) == 0 {
		return false
	}
	s := steps[d.traceAt(d.trace)]
	return l.Figure.Of == s.Side.Subject() && (l.Figure.Quantity == calc.SlideMark || l.Figure.Quantity == calc.PivotMark)
}
