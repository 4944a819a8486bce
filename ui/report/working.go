package report

import (
	"fmt"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// WorkedLine is one line of the working in words: a sum of lengths, or a step of
// the geometry of a turn.
type WorkedLine struct {
	Text  string
	Why   string // of a slide, what a person would say before any sums; "" of the rest
	Sum   *calc.Line
	Turn  *calc.TurnLine
	width *calc.Width
}

// keysOfLevel are the answers that a check below the underarm is made from.
var keysOfLevel = map[calc.Place][]worksheets.Key{
	calc.AtElbow: {worksheets.Elbow, worksheets.EaseElbow, worksheets.ElbowWidth},
	calc.AtWrist: {worksheets.Wrist, worksheets.EaseWrist, worksheets.HemWidth},
	calc.AtWaist: {worksheets.Waist, worksheets.EaseWaist, worksheets.WaistFront, worksheets.WaistBack},
	calc.AtHip:   {worksheets.Hip, worksheets.EaseHip, worksheets.HipFront, worksheets.HipBack},
}

// Worked is every line of the working: the sums from the girths to the marks, the
// turns, and what has to fit below the underarm.
func (r Report) Worked() []WorkedLine {
	var lines []WorkedLine
	for _, l := range calc.Working(r.Input) {
		line := WorkedLine{Text: wording.WorkingLine(l, r.Scale), Sum: &l}
		if l.Figure.Quantity == calc.Slide {
			line.Why = wording.SlideWords(r.Input, r.Plan, calc.Half(l.Figure.Of-calc.OfFront), false, r.Scale)
		}
		lines = append(lines, line)
	}
	for _, l := range calc.TurnWorking(r.Plan) {
		lines = append(lines, WorkedLine{Text: turnLine(l, r.Scale), Turn: &l})
	}
	for _, w := range r.Plan.Widths {
		lines = append(lines, WorkedLine{Text: r.wantedLine(w), width: &w}, WorkedLine{Text: r.spareLine(w), width: &w})
	}
	return lines
}

// wantedLine is what a level below the underarm needs, spareLine what it has more
// than that.
func (r Report) wantedLine(w calc.Width) string {
	keys := keysOfLevel[w.At]
	girth, ease := r.Sheet.Reading(keys[0]).Length, r.Sheet.Reading(keys[1]).Length
	return fmt.Sprintf("%s wanted = %s %s + %s %s = %s", wording.PlaceWords[w.At], forms.Fields[keys[0]].Words, r.Scale.Exact(girth),
		forms.Fields[keys[1]].Words, r.Scale.Exact(ease), wording.Exact(w.Wanted, r.Scale))
}

func (r Report) spareLine(w calc.Width) string {
	return fmt.Sprintf("%s to spare = comes out %s - wanted %s = %s", wording.PlaceWords[w.At], r.Scale.Exact(w.Around), r.Scale.Exact(w.Wanted),
		wording.Exact(-w.Lacks(), r.Scale))
}

// Rows are the figure and, below it, why it is so and what it comes of.
func (l WorkedLine) Rows(width int) []string {
	rows := WorkingRows(l.Text, width)
	if l.Why == "" {
		return rows
	}
	figure, _, _ := strings.Cut(l.Text, " = ")
	return slices.Insert(rows, len(typeset.Hanging("  ", figure, width)), typeset.Hanging("      ", l.Why, width)...)
}

// WorkingRows are a figure and, below it, what it comes of.
func WorkingRows(text string, width int) []string {
	figure, how, _ := strings.Cut(text, " = ")
	return append(typeset.Hanging("  ", figure, width), typeset.Hanging("      = ", how, width)...)
}

// Uses tells that a line is made from an answer.
func (l WorkedLine) Uses(k worksheets.Key) bool {
	switch {
	case l.Turn != nil:
		return turns(k, l.Turn.Side)
	case l.width != nil:
		return slices.Contains(keysOfLevel[l.width.At], k)
	}
	switch of, q := l.Sum.Figure.Of, l.Sum.Figure.Quantity; k {
	case worksheets.FrontShareSleeve:
		return q == calc.Need && (of == calc.OfSleeveFront || of == calc.OfSleeveBack)
	case worksheets.FrontShareBust:
		return q == calc.Need && (of == calc.OfBodiceFront || of == calc.OfBodiceBack)
	case worksheets.Follow:
		return q == calc.Pivot
	case worksheets.Armhole:
		return q == calc.BandLow || q == calc.BandHigh || q == calc.KeptLow || q == calc.KeptHigh
	}
	return slices.ContainsFunc(l.Sum.Terms, func(t calc.Term) bool { return t.Answer != calc.NoAnswer && forms.KeyOf[t.Answer] == k })
}
