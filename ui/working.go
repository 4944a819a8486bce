package ui

import (
	"slices"
	"strings"

	"capscye/calc"
	"capscye/worksheets"
)

// workedLine is one line of the working in words: a sum of lengths, or a step of
// the geometry of a turn.
type workedLine struct {
	text string
	sum  *calc.Line
	turn *calc.TurnLine
}

// worked is every line of the working, the sums from the girths to the marks and
// then the turns.
func (r report) worked() []workedLine {
	var lines []workedLine
	for _, l := range calc.Working(r.input) {
		lines = append(lines, workedLine{workingLine(l, r.scale), &l, nil})
	}
	for _, l := range calc.TurnWorking(r.plan) {
		lines = append(lines, workedLine{turnLine(l, r.scale), nil, &l})
	}
	return lines
}

func (l workedLine) rows(width int) []string { return workingRows(l.text, width) }

// workingRows are a figure and, below it, what it comes of.
func workingRows(text string, width int) []string {
	figure, how, _ := strings.Cut(text, " = ")
	return append(hanging("  ", figure, width), hanging("      = ", how, width)...)
}

// workingText is the working of the sheet, as far as it was kept; from is the
// first line about what is at hand, and all of those are pointed out.
func (d *desk) workingText(width int) (out []string, from int) {
	lines := d.rep.working()
	if len(lines) == 0 {
		return wrap(d.rep.nothingToTrace(), width), 0
	}
	from = -1
	isAtHand := d.lineAtHand()
	for _, l := range lines {
		text := l.rows(width)
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
func (d *desk) lineAtHand() func(workedLine) bool {
	of := func(quantities ...calc.Quantity) func(workedLine) bool {
		return func(l workedLine) bool { return l.sum != nil && slices.Contains(quantities, l.sum.Figure.Quantity) }
	}
	switch k, ok := d.focused(); {
	case ok && k == worksheets.Slide:
		return of(calc.Slide)
	case ok:
		return func(l workedLine) bool { return l.uses(k) }
	case d.step == stepMatch:
		return of(calc.Finished, calc.FinishedMarked, calc.EaseAfter)
	}
	steps, marks := d.rep.traceSteps(), of(calc.SlideMark, calc.PivotMark)
	if len(steps) == 0 {
		return of()
	}
	s := steps[d.traceAt(d.trace)]
	if s.Action == calc.TurnTo && d.rep.plan.Turns[s.Side].Known {
		return func(l workedLine) bool { return l.turn != nil && l.turn.Side == s.Side }
	}
	return func(l workedLine) bool { return marks(l) && l.sum.Figure.Of == s.Side.Subject() }
}

// uses tells that a line is made from an answer.
func (l workedLine) uses(k worksheets.Key) bool {
	if l.turn != nil {
		return turns(k, l.turn.Side)
	}
	return slices.ContainsFunc(l.sum.Terms, func(t calc.Term) bool { return t.Answer != calc.NoAnswer && keyOf[t.Answer] == k })
}
