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
	calc.LargerArm: "larger arm", calc.FrontWidth: "front width", calc.BackWidth: "back width",
	calc.FlatWidth: "flat width", calc.Need: "need", calc.HalfNeed: "half of the need",
	calc.CapSeam: "cap seam", calc.ArmholeSeam: "armhole seam", calc.CapEase: "cap ease",
	calc.CapSpare: "cap ease to spare", calc.CapRoom: "room in the cap, each half",
	calc.LeastSlide: "least slide", calc.MostSlide: "most slide",
	calc.BandLow: "slide from", calc.BandHigh: "slide to",
	calc.KeptLow: "slide from, armhole kept", calc.KeptHigh: "slide to, armhole kept",
	calc.CapSeamAfter: "cap seam after", calc.ArmholeSeamAfter: "armhole seam after", calc.CapEaseAfter: "cap ease after",
	calc.EvenSlide: "even slide", calc.Slide: "slide", calc.AfterSlide: "left after the slide",
	calc.Pivot: "pivot", calc.Total: "total", calc.LeftOver: "left over",
	calc.SlideMark: "slide to mark", calc.TotalMark: "total to mark", calc.PivotMark: "pivot to mark",
	calc.AtLine: "gain at the line", calc.AtLineMark: "gain at the line, by the marks",
	calc.Finished: "finished", calc.FinishedMarked: "finished, by the marks", calc.EaseAfter: "ease after",
}

func figureWords(f calc.Figure) string {
	return SubjectWords[f.Of] + " " + QuantityWords[f.Quantity]
}

// WorkingLine writes one line of arithmetic in the sheet's unit, finer than any
// ruler, so that it adds up as it stands:
//
//	sleeve need = bicep 13 3/4 + ease at the bicep 1 3/4 - sleeve width 13 = 2 1/2 in
func WorkingLine(line calc.Line, sc units.Scale) string {
	var b strings.Builder
	b.WriteString(figureWords(line.Figure) + " = ")
	switch line.Op {
	case calc.Sum:
		for i, t := range line.Terms {
			b.WriteString(summand(t, i == 0, sc))
		}
	case calc.Part:
		fmt.Fprintf(&b, "%s x %s", line.Share, termWords(line.Terms[0], sc))
	case calc.Largest:
		b.WriteString(choiceWords("the largest of ", line.Terms, sc))
	case calc.Smallest:
		b.WriteString(choiceWords("the smallest of ", line.Terms, sc))
	case calc.Within:
		wanted := termWords(line.Terms[0], sc)
		if isConstant(line.Terms[0]) {
			wanted = "as near to " + wanted + " as may be"
		}
		fmt.Fprintf(&b, "%s, within %s and %s", wanted, termWords(line.Terms[1], sc), termWords(line.Terms[2], sc))
	case calc.OnMark:
		fmt.Fprintf(&b, "%s, to the nearest mark of %s", termWords(line.Terms[0], sc), sc.OnRuler(line.Terms[1].Value))
	case calc.ReadOff:
		b.WriteString("read off the new seam")
	}
	b.WriteString(" = " + Exact(line.Result, sc))
	return b.String()
}

// Exact is a figure as it can be written down, with its unit.
func Exact(length units.Length, sc units.Scale) string {
	return sc.Exact(length) + " " + sc.System.String()
}

func isConstant(t calc.Term) bool { return t.Figure == calc.Figure{} && t.Answer == calc.NoAnswer }

// summand is a term with its sign and factor; the first has no plus.
func summand(t calc.Term, first bool, sc units.Scale) string {
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
	return sign + factor + termWords(t, sc)
}

// termWords is a term by name, with its value; a negative one stands in
// brackets, so that no two signs meet.
func termWords(t calc.Term, sc units.Scale) string {
	value := sc.Exact(t.Value)
	if isConstant(t) && t.Value == units.Max {
		return "no bound"
	}
	if t.Value < 0 {
		value = "(" + value + ")"
	}
	switch {
	case t.Figure != calc.Figure{}:
		return figureWords(t.Figure) + " " + value
	case t.Answer != calc.NoAnswer:
		return forms.Fields[forms.KeyOf[t.Answer]].Words + " " + value
	}
	return value
}

// choiceWords lists the terms of which one is taken; a single one speaks for
// itself.
func choiceWords(lead string, terms []calc.Term, sc units.Scale) string {
	if len(terms) == 1 {
		return termWords(terms[0], sc)
	}
	words := make([]string, len(terms))
	for i, t := range terms {
		words[i] = termWords(t, sc)
	}
	return lead + strings.Join(words, " and ")
}
