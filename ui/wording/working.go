package wording

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/units"
)

// SubjectWords names what a figure or a finding is about.
var SubjectWords = map[calc.Subject]string{
	calc.OfSheet: "sheet", calc.OfSleeve: "sleeve", calc.OfBust: "bust", calc.OfFront: "front", calc.OfBack: "back",
	calc.OfSleeveFront: "sleeve front", calc.OfSleeveBack: "sleeve back",
	calc.OfBodiceFront: "bodice front", calc.OfBodiceBack: "bodice back",
}

// QuantityWords names what a figure measures.
var QuantityWords = map[calc.Quantity]string{
	calc.LargerArm: "larger arm", calc.FrontWidth: "front width between seam lines", calc.BackWidth: "back width between seam lines",
	calc.FlatWidth: "flat width", calc.Need: "need", calc.HalfNeed: "half of the need",
	calc.CapSeam: "cap seam", calc.ArmholeSeam: "armhole seam", calc.CapEase: "cap ease",
	calc.CapSpare: "cap ease still free", calc.CapRoom: "room in the cap, each half",
	calc.LeastSlide: "need less the limit", calc.MostSlide: "need plus the limit",
	calc.BandLow: "smallest slide that works", calc.BandHigh: "largest slide that works",
	calc.KeptLow: "smallest slide that works with the armhole kept", calc.KeptHigh: "largest slide that works with the armhole kept",
	calc.CapSeamAfter: "cap seam after", calc.ArmholeSeamAfter: "armhole seam after", calc.CapEaseAfter: "cap ease after",
	calc.EvenSlide: "even slide", calc.Slide: "slide", calc.AfterSlide: "need after the slide",
	calc.Pivot: "pivot", calc.Total: "total", calc.LeftOver: "still short",
	calc.SlideMark: "slide to mark", calc.TotalMark: "total to mark", calc.PivotMark: "pivot to mark",
	calc.AtLine: "gain at the line", calc.AtLineMark: "gain at the line, by the marks",
	calc.Finished: "finished", calc.FinishedMarked: "finished, by the marks", calc.EaseAfter: "ease after",
	calc.AtLineDrawn: "gain at the line, drawn out to fit", calc.AtLineDrawnMark: "gain at the line, drawn out to fit, by the marks",
	calc.Drawn: "finished, drawn out to fit", calc.DrawnMarked: "finished, drawn out to fit, by the marks", calc.EaseDrawn: "ease after, drawn out to fit",
}

// FigureWords names a figure as a line of working does: "sleeve front need", "smallest
// slide that works, front".
func FigureWords(f calc.Figure) string {
	words, of := QuantityWords[f.Quantity], SubjectWords[f.Of]
	switch f.Quantity {
	case calc.FrontWidth, calc.BackWidth, calc.CapSeam, calc.CapSeamAfter, calc.ArmholeSeam, calc.ArmholeSeamAfter,
		calc.CapEase, calc.CapEaseAfter, calc.CapSpare, calc.CapRoom: // there is one of each
		return words
	case calc.HalfNeed:
		return "half of the " + of + " need"
	case calc.BandLow, calc.BandHigh, calc.KeptLow, calc.KeptHigh:
		return words + ", " + of
	}
	if f.Of == calc.OfSheet {
		return words
	}
	return of + " " + words
}

// WorkingLine writes one line of arithmetic in the sheet's unit, finer than any
// ruler, so that it adds up as it stands:
//
//	sleeve need = bicep 13 3/4 + ease at the bicep 1 3/4 - sleeve width 13 = 2 1/2 in
func WorkingLine(line calc.Line, sc units.Scale) string { return WorkingLineBy(line, sc, FigureWords) }

// WorkingLineBy is the same with names of its own for figures.
func WorkingLineBy(line calc.Line, sc units.Scale, name func(calc.Figure) string) string {
	w := worker{sc, name}
	var b strings.Builder
	b.WriteString(name(line.Figure) + " = ")
	switch line.Op {
	case calc.Sum:
		for i, t := range line.Terms {
			b.WriteString(w.summand(t, i == 0))
		}
	case calc.Part:
		fmt.Fprintf(&b, "%s x %s", line.Share, w.term(line.Terms[0]))
	case calc.Largest:
		b.WriteString(w.choice("the larger of ", line.Terms))
	case calc.Smallest:
		b.WriteString(w.choice("the smaller of ", line.Terms))
	case calc.Within:
		b.WriteString(w.within(line))
	case calc.OnMark:
		fmt.Fprintf(&b, "%s, to the nearest mark of %s", w.term(line.Terms[0]), sc.OnRuler(line.Terms[1].Value))
	case calc.ReadOff:
		b.WriteString("read off the new seam")
	}
	b.WriteString(" = " + Exact(line.Result, sc))
	return b.String()
}

// worker writes a line of the working.
type worker struct {
	sc   units.Scale
	name func(calc.Figure) string
}

// within says how a term is held between two others. A pivot that comes in is held by
// the same limit as one that goes out, which nobody calls a limit below nothing.
func (w worker) within(line calc.Line) string {
	x, low, high := line.Terms[0], line.Terms[1], line.Terms[2]
	words := w.term(x)
	limit := low
	limit.Value = -low.Value
	switch {
	case isConstant(x):
		return "the nearest to " + words + " between " + w.term(low) + " and " + w.term(high)
	case line.Figure.Quantity == calc.Pivot && isConstant(low) && isConstant(high):
		return words + ", but what needs nothing does not pivot"
	case line.Figure.Quantity == calc.Pivot && isConstant(high):
		return words + ", but at most 0 and no further in than " + w.term(limit)
	case line.Figure.Quantity == calc.Pivot && !isConstant(low):
		return words + ", but no further in or out than " + w.term(limit)
	}
	return words + ", but at least " + w.term(low) + " and at most " + w.term(high)
}

// Exact is a figure as it can be written down, with its unit.
func Exact(length units.Length, sc units.Scale) string {
	return sc.Exact(length) + " " + sc.System.String()
}

// MarkedOff is a length that hands mark off on paper, and so is never rounded to the
// ruler: in the sheet's unit or, where only that writes it out, in the other.
func MarkedOff(length units.Length, sc units.Scale) string {
	if text := sc.Format(length); !strings.HasPrefix(text, units.OffMark) {
		return text
	}
	text, other := Exact(length, sc), Exact(length, units.Scale{System: sc.System.Other()})
	if strings.HasPrefix(text, units.OffMark) && !strings.HasPrefix(other, units.OffMark) {
		return other
	}
	return text
}

func isConstant(t calc.Term) bool { return t.Figure == calc.Figure{} && t.Answer == calc.NoAnswer }

// summand is a term with its sign and factor; the first has no plus.
func (w worker) summand(t calc.Term, first bool) string {
	sign, times := " + ", t.Times
	switch {
	case times < 0 && first:
		sign, times = "-", -times
	case times < 0:
		sign, times = " - ", -times
	case first:
		sign = ""
	}
	factor := ""
	if times != 1 {
		factor = fmt.Sprintf("%d x ", times)
	}
	return sign + factor + w.term(t)
}

// term is a term by name, with its value; a negative one stands in
// brackets, so that no two signs meet.
func (w worker) term(t calc.Term) string {
	value := w.sc.Exact(t.Value)
	if isConstant(t) && t.Value == units.Max {
		return "no bound"
	}
	if t.Value < 0 {
		value = "(" + value + ")"
	}
	switch {
	case t.Figure != calc.Figure{}:
		return w.name(t.Figure) + " " + value
	case t.Answer != calc.NoAnswer:
		return forms.Fields[forms.KeyOf[t.Answer]].Words + " " + value
	}
	return value
}

// choice lists the terms of which one is taken; a single one speaks for
// itself.
func (w worker) choice(lead string, terms []calc.Term) string {
	if len(terms) == 1 {
		return w.term(terms[0])
	}
	words := make([]string, len(terms))
	for i, t := range terms {
		words[i] = w.term(t)
	}
	return lead + strings.Join(words, " and ")
}
