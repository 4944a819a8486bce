package ui

import (
	"fmt"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/worksheets"
)

// workedLine is one line of the working in words: a sum of lengths, or a step of
// the geometry of a turn.
type workedLine struct {
	text  string
	sum   *calc.Line
	turn  *calc.TurnLine
	width *calc.Width
}

// keysOfLevel are the answers that a check below the underarm is made from.
var keysOfLevel = map[calc.Place][]worksheets.Key{
	calc.AtElbow: {worksheets.Elbow, worksheets.EaseElbow, worksheets.ElbowWidth},
	calc.AtWrist: {worksheets.Wrist, worksheets.EaseWrist, worksheets.HemWidth},
	calc.AtWaist: {worksheets.Waist, worksheets.EaseWaist, worksheets.WaistFront, worksheets.WaistBack},
	calc.AtHip:   {worksheets.Hip, worksheets.EaseHip, worksheets.HipFront, worksheets.HipBack},
}

// worked is every line of the working: the sums from the girths to the marks, the
// turns, and what has to fit below the underarm.
func (r report) worked() []workedLine {
	var lines []workedLine
	for _, l := range calc.Working(r.input) {
		lines = append(lines, workedLine{text: workingLine(l, r.scale), sum: &l})
	}
	for _, l := range calc.TurnWorking(r.plan) {
		lines = append(lines, workedLine{text: turnLine(l, r.scale), turn: &l})
	}
	for _, w := range r.plan.Widths {
		lines = append(lines, workedLine{text: r.wantedLine(w), width: &w}, workedLine{text: r.spareLine(w), width: &w})
	}
	return lines
}

// wantedLine is what a level below the underarm needs, spareLine what it has more
// than that.
func (r report) wantedLine(w calc.Width) string {
	keys := keysOfLevel[w.At]
	girth, ease := r.sheet.Reading(keys[0]).Length, r.sheet.Reading(keys[1]).Length
	return fmt.Sprintf("%s wanted = %s %s + %s %s = %s", placeWords[w.At], fields[keys[0]].words, r.scale.Exact(girth),
		fields[keys[1]].words, r.scale.Exact(ease), exactWords(w.Wanted, r.scale))
}

func (r report) spareLine(w calc.Width) string {
	return fmt.Sprintf("%s to spare = comes out %s - wanted %s = %s", placeWords[w.At], r.scale.Exact(w.Around), r.scale.Exact(w.Wanted),
		exactWords(-w.Lacks(), r.scale))
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
	if !slices.ContainsFunc(lines, isAtHand) {
		out = append(wrap("No line of the working is about what is at hand; all of it:", width), "")
	}
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
	turnOf := func(figures ...calc.TurnFigure) func(workedLine) bool {
		return func(l workedLine) bool {
			return l.turn != nil && l.turn.Side == s.Side && (figures == nil || slices.Contains(figures, l.turn.Figure))
		}
	}
	switch known := d.rep.plan.Turns[s.Side].Known; {
	case known && s.Action == calc.TurnTo:
		return turnOf()
	case known && (s.Action == calc.Taper || s.Action == calc.Extend):
		return turnOf(calc.RiseOnSeam, calc.TaperGrowth)
	}
	return func(l workedLine) bool { return marks(l) && l.sum.Figure.Of == s.Side.Subject() }
}

// uses tells that a line is made from an answer.
func (l workedLine) uses(k worksheets.Key) bool {
	switch {
	case l.turn != nil:
		return turns(k, l.turn.Side)
	case l.width != nil:
		return slices.Contains(keysOfLevel[l.width.At], k)
	}
	switch of, q := l.sum.Figure.Of, l.sum.Figure.Quantity; k {
	case worksheets.FrontShareSleeve:
		return q == calc.Need && (of == calc.OfSleeveFront || of == calc.OfSleeveBack)
	case worksheets.FrontShareBust:
		return q == calc.Need && (of == calc.OfBodiceFront || of == calc.OfBodiceBack)
	case worksheets.Follow:
		return q == calc.Pivot
	case worksheets.Armhole:
		return q == calc.BandLow || q == calc.BandHigh || q == calc.KeptLow || q == calc.KeptHigh
	}
	return slices.ContainsFunc(l.sum.Terms, func(t calc.Term) bool { return t.Answer != calc.NoAnswer && keyOf[t.Answer] == k })
}
