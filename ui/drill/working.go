package drill

import (
	"capscye/calc"
	"capscye/calc/drill"
	"capscye/ui/wording"
)

// The working of a problem, in the words of its questions.

// figureWords name a figure as the questions do: "sleeve side need" for both of those that
// are alike, and the bodice, not the bust, for what is cut.
func figureWords(f calc.Figure, alike bool) string {
	words := wording.QuantityWords[f.Quantity]
	switch f.Of {
	case calc.OfBust:
		switch f.Quantity {
		case calc.FlatWidth:
			return "flat width around the whole body"
		case calc.HalfNeed:
			return "half of the bodice need"
		case calc.Need, calc.Finished, calc.FinishedMarked:
			return "bodice " + words
		}
	case calc.OfFront, calc.OfBack:
		if alike {
			return words
		}
	case calc.OfSleeveFront, calc.OfSleeveBack:
		if alike {
			return "sleeve side " + words
		}
	case calc.OfBodiceFront, calc.OfBodiceBack:
		if alike {
			return "bodice side " + words
		}
	}
	return wording.FigureWords(f)
}

// whyWords say why the slide that is asked for is what it is; "" of any other figure.
func whyWords(p drill.Problem, q drill.Question) string {
	if q.Figure.Quantity != calc.Slide {
		return ""
	}
	return wording.SlideWords(p.Input, calc.Compute(p.Input), calc.Half(q.Figure.Of-calc.OfFront), p.Alike(), Scale(p))
}

// workingLines are the lines of the working behind a question, in its words.
func workingLines(p drill.Problem, q drill.Question) []string {
	name := func(f calc.Figure) string { return figureWords(f, p.Alike()) }
	lines := make([]string, len(q.Lines))
	for i, l := range q.Lines {
		if l.Op == calc.Sum {
			l.Terms = together(l.Terms, name)
		}
		lines[i] = wording.WorkingLineBy(l, Scale(p), name)
	}
	return lines
}

// together counts terms of one name and value, as those of front and back are where they are
// alike, and leaves out what adds nothing and has no name.
func together(terms []calc.Term, name func(calc.Figure) string) []calc.Term {
	var list []calc.Term
	for _, t := range terms {
		last := len(list) - 1
		switch named := t.Figure != (calc.Figure{}); {
		case last >= 0 && !named && t.Answer == calc.NoAnswer && t.Value == 0:
		case last >= 0 && named && list[last].Figure != (calc.Figure{}) && name(list[last].Figure) == name(t.Figure) && list[last].Value == t.Value:
			list[last].Times += t.Times
		default:
			list = append(list, t)
		}
	}
	return list
}
