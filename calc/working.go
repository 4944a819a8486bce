package calc

import (
	"slices"

	"capscye/units"
)

// Subject is what a figure or a finding is about.
type Subject uint8

// The subjects. Those of the four sides follow the order of [Side].
const (
	OfSheet Subject = iota
	OfSleeve
	OfBust
	OfFront // the front seam of cap and armhole
	OfBack
	OfSleeveFront
	OfSleeveBack
	OfBodiceFront
	OfBodiceBack
)

// Subject is the side as a subject.
func (s Side) Subject() Subject { return OfSleeveFront + Subject(s) }

// Subject is the half as a subject.
func (h Half) Subject() Subject { return OfFront + Subject(h) }

// Quantity is what a figure measures.
type Quantity uint8

// The quantities, in the order in which they are computed.
const (
	LargerArm Quantity = iota + 1
	FrontWidth
	BackWidth
	FlatWidth
	Need
	HalfNeed
	CapSeam
	ArmholeSeam
	CapEase
	CapSpare   // the usual cap ease at its highest - CapEase
	CapRoom    // how much longer the cap may get at each half with the armhole kept
	LeastSlide // of a side: need - limit
	MostSlide  // of a side: need + limit
	BandLow
	BandHigh
	KeptLow // the band again, with the armhole kept
	KeptHigh
	EvenSlide
	Slide
	AfterSlide // need - slide, what is left for the pivot
	Pivot
	Total
	LeftOver
	SlideMark
	TotalMark
	PivotMark
	AtLine     // of a side: what it gains at the line of the girth, where that is not its total
	AtLineMark // ... by the marks
	CapSeamAfter
	ArmholeSeamAfter
	CapEaseAfter
	Finished
	FinishedMarked
	EaseAfter
	AtLineDrawn     // what a side gains at the line on the seam that is drawn out to fit,
	AtLineDrawnMark // ... by the marks,
	Drawn           // and what comes out then
	DrawnMarked
	EaseDrawn
)

// Figure names one computed length.
type Figure struct {
	Of       Subject
	Quantity Quantity
}

// Op is how the terms of a line make its result.
type Op uint8

// The operations.
const (
	Sum      Op = iota // every term times its factor, added
	Part               // Share of the one term, rounded to the count
	Largest            // the largest of the terms
	Smallest           // the smallest of the terms
	Within             // the first term, moved between the second and the third
	OnMark             // the first term, rounded to the nearest multiple of the second
	ReadOff            // read off the outline, to the count; see [TurnWorking]
)

// Term is one number of a line: an answer of the worksheet by name, or a
// figure of an earlier line.
type Term struct {
	Answer Answer // where it was typed in; NoAnswer for a figure or a constant
	Figure Figure // where it was computed
	Times  int64  // its factor in a Sum, negative where it is taken off
	Value  units.Length
}

// Line is one line of the working: how one figure follows from others.
type Line struct {
	Figure Figure
	Op     Op
	Terms  []Term
	Share  units.Share // for Part
	Result units.Length
}

// Working is every line of arithmetic behind [Compute], in the order in which
// a person would write them. Each figure of a line is the result of an earlier
// one.
func Working(in Input) []Line {
	t := &tally{record: true}
	compute(in, t)
	return t.lines
}

// tally does the arithmetic of the plan and, where somebody wants to see it,
// keeps the lines.
type tally struct {
	record bool
	lines  []Line
}

func (t *tally) keep(f Figure, op Op, share units.Share, result units.Length, terms []Term) units.Length {
	if !t.record {
		return result
	}
	same := slices.IndexFunc(t.lines, func(l Line) bool { return l.Figure == f })
	switch {
	case same < 0:
		t.lines = append(t.lines, Line{f, op, append([]Term(nil), terms...), share, result})
	case t.lines[same].Result != result: // a figure that is needed twice is the same both times
		panic("calc: one figure has two values")
	}
	return result
}

func (t *tally) sum(f Figure, terms ...Term) units.Length {
	var total units.Length
	for _, term := range terms {
		total += units.Length(term.Times) * term.Value
	}
	return t.keep(f, Sum, units.Share{}, total, terms)
}

func (t *tally) part(f Figure, share units.Share, whole Term) units.Length {
	return t.keep(f, Part, share, share.Of(whole.Value), []Term{whole})
}

func (t *tally) largest(f Figure, terms ...Term) units.Length {
	most := terms[0].Value
	for _, term := range terms[1:] {
		most = max(most, term.Value)
	}
	return t.keep(f, Largest, units.Share{}, most, terms)
}

func (t *tally) smallest(f Figure, terms ...Term) units.Length {
	least := terms[0].Value
	for _, term := range terms[1:] {
		least = min(least, term.Value)
	}
	return t.keep(f, Smallest, units.Share{}, least, terms)
}

// within is x where it lies between low and high, else the nearer of the two.
func (t *tally) within(f Figure, x, low, high Term) units.Length {
	return t.keep(f, Within, units.Share{}, min(max(x.Value, low.Value), high.Value), []Term{x, low, high})
}

func (t *tally) onMark(f Figure, x Term, ruler units.Ruler) units.Length {
	mark := Term{Answer: Ruler, Value: ruler.Mark()}
	return t.keep(f, OnMark, units.Share{}, x.Value.Round(mark.Value), []Term{x, mark})
}

func (t *tally) readOff(f Figure, l units.Length) units.Length {
	return t.keep(f, ReadOff, units.Share{}, l, nil)
}

// typed is a term that stands in the worksheet.
func typed(a Answer, l units.Length) Term { return Term{Answer: a, Times: 1, Value: l} }

// computed is a term that an earlier line gave.
func computed(of Subject, q Quantity, l units.Length) Term {
	return Term{Figure: Figure{of, q}, Times: 1, Value: l}
}

// constant is a number that nobody typed and nothing computed: a bound of
// zero, a range of the trade.
func constant(l units.Length) Term { return Term{Times: 1, Value: l} }

// times is the term with a factor.
func (t Term) times(n int64) Term { t.Times *= n; return t }

// less is the term taken off.
func (t Term) less() Term { return t.times(-1) }
