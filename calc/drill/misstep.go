package drill

import (
	"slices"

	"capscye/calc"
	"capscye/units"
)

// Misstep is a usual wrong turn in the reasoning of the drill. [calc.Slip] is its
// sibling in typing.
type Misstep uint8

// The wrong turns, each with what the person did.
const (
	AllowanceLeftOn    Misstep = iota // measured between cut edges, and the allowances were not taken off
	AllowanceOnce                     // taken off once, where the tape crossed two edges
	AllowanceTwice                    // taken off twice, where the tape crossed one edge
	AllowanceAdded                    // added instead of taken off
	AllowanceNotInside                // taken off, though it was measured between seam lines
	TakeOffLeftIn                     // the dart or pleat inside the tape was not taken off
	TakeOffAdded                      // ... was added
	NotDoubled                        // front + back is half a body, and was not doubled
	OneDoubled                        // only one of the two was doubled
	PatternForgotten                  // girth + ease given as the need
	EaseForgotten                     // need = girth - flat width
	EaseTakenOff                      // need = girth - ease - flat width
	OtherWayRound                     // need = flat width - girth - ease
	WidthAsMeasured                   // the width that the tape showed stands for the flat width
	HalfTheBody                       // half a body's width was taken off a whole body's girth
	SmallerArm                        // the need of the smaller arm
	NotDivided                        // the whole need for one side
	DividedByTwo                      // the whole need of the bust shared by two sides, where four share it
	ShareOfWhole                      // the share of a side taken of the whole need of the bust, where it is of half of it
	HalvedTwice                       // halved once more than the sides ask for
	ShareExchanged                    // the share of the other side
	EvenShare                         // front and back alike, where they are not
	LimitIgnored                      // the whole need pivoted, and nothing slid
	OnlySleeveMatched                 // the slide that the sleeve needs, where the bodice needs more
	OnlyBodiceMatched                 // the slide that the bodice needs, where the sleeve needs more
	NothingPivoted                    // the whole need of a side slid
	LimitOffWholeNeed                 // the limit of a side taken off the need of the piece
	LimitForSlide                     // what a side may pivot, given as the slide
	BelowNothing                      // need - limit, where less than nothing has to slide
	OtherHalf                         // the figure of the back for the front, or the other way
	SlideForgotten                    // the whole need pivoted, though a part of it slides
	SlideAdded                        // the slide added to the need instead of taken off
	OtherPiece                        // the pivot of the other piece
	LimitForPivot                     // pivoted to the limit, though less is needed
	NotRounded                        // not on a mark of the ruler
	RoundedOtherWay                   // on the mark that is not the nearest, or down from half way
	RoundedAlone                      // the pivot rounded by itself, not as what is left of the rounded total
	MarkOffExact                      // the marked slide taken off the total that is not rounded
	TotalForPivot                     // the whole total to mark, the slide in it
	OneSideCounted                    // only the front's gain, or only the back's
	CountedOnce                       // each side of the bodice once, where there are two of each
	CountedTwice                      // each side of the sleeve twice, where there is one of each
	SlideNotCounted                   // only what the sides pivot
	AddedToBody                       // the gains added to the body instead of the pattern
	SignForgotten                     // a side that comes in pivots inward, below nothing
	LeastForEven                      // the least slide, where an even one is asked for
	EvenOfPiece                       // half of what the piece needs, where half of a side's is meant
	OneSeamCompared                   // cap ease of the front alone, or of the back
	SpareNotHalved                    // all that the cap can still take, for one half
	EaseForRoom                       // half of the cap ease that there is, not of what it lacks of the most
	SlideIntoArmhole                  // cap ease unchanged, though the armhole is kept
	OneSlideEased                     // the slide of one half added to the cap ease
	ExactForMarks                     // from what was asked instead of from the marks
	MisstepCount       = iota
)

// solved is a sheet with its answer, and the figure that is asked.
type solved struct {
	in     calc.Input
	plan   calc.Plan
	figure calc.Figure
	right  units.Length
}

// missteps is the table of wrong turns: which quantities they can lead to, and
// what they give. Where one does not apply it gives nothing.
var missteps = []struct {
	misstep Misstep
	of      []calc.Quantity
	gives   func(solved) []units.Length
}{
	{AllowanceLeftOn, widths, allowanceLeftOn},
	{AllowanceOnce, widths, allowanceOnce},
	{AllowanceTwice, widths, allowanceTwice},
	{AllowanceAdded, widths, allowanceAdded},
	{AllowanceNotInside, widthsAndNeed, allowanceNotInside},
	{TakeOffLeftIn, widths, takeOffLeftIn},
	{TakeOffAdded, widths, takeOffAdded},
	{NotDoubled, widths, notDoubled},
	{OneDoubled, widths, oneDoubled},
	{PatternForgotten, needs, patternForgotten},
	{EaseForgotten, needs, easeForgotten},
	{EaseTakenOff, needs, easeTakenOff},
	{OtherWayRound, []calc.Quantity{calc.Need, calc.CapEase}, otherWayRound},
	{WidthAsMeasured, []calc.Quantity{calc.Need, calc.Finished, calc.FinishedMarked}, widthAsMeasured},
	{HalfTheBody, needs, halfTheBody},
	{SmallerArm, needs, smallerArm},
	{NotDivided, needs, notDivided},
	{DividedByTwo, needs, dividedByTwo},
	{ShareOfWhole, needs, shareOfWhole},
	{HalvedTwice, needs, halvedTwice},
	{ShareExchanged, needs, shareExchanged},
	{EvenShare, needs, evenShare},
	{LimitIgnored, slides, limitIgnored},
	{OnlySleeveMatched, slides, onlySleeveMatched},
	{OnlyBodiceMatched, slides, onlyBodiceMatched},
	{NothingPivoted, slides, nothingPivoted},
	{LimitOffWholeNeed, slides, limitOffWholeNeed},
	{LimitForSlide, slides, limitForSlide},
	{BelowNothing, slides, belowNothing},
	{OtherHalf, []calc.Quantity{calc.Slide, calc.Pivot, calc.SlideMark, calc.PivotMark}, otherHalf},
	{SlideForgotten, pivots, slideForgotten},
	{SlideAdded, pivots, slideAdded},
	{OtherPiece, []calc.Quantity{calc.Pivot, calc.PivotMark}, otherPiece},
	{LimitForPivot, pivots, limitForPivot},
	{NotRounded, []calc.Quantity{calc.SlideMark, calc.PivotMark}, notRounded},
	{RoundedOtherWay, []calc.Quantity{calc.SlideMark}, roundedOtherWay},
	{RoundedAlone, []calc.Quantity{calc.PivotMark}, roundedAlone},
	{MarkOffExact, []calc.Quantity{calc.PivotMark}, markOffExact},
	{TotalForPivot, []calc.Quantity{calc.PivotMark}, totalForPivot},
	{OneSideCounted, finished, oneSideCounted},
	{CountedOnce, finished, countedOnce},
	{CountedTwice, finished, countedTwice},
	{SlideNotCounted, finished, slideNotCounted},
	{AddedToBody, finished, addedToBody},
	{SignForgotten, []calc.Quantity{calc.Pivot, calc.PivotMark}, signForgotten},
	{LeastForEven, slides, leastForEven},
	{EvenOfPiece, []calc.Quantity{calc.EvenSlide}, evenOfPiece},
	{OneSeamCompared, []calc.Quantity{calc.CapEase, calc.CapEaseAfter}, oneSeamCompared},
	{SpareNotHalved, []calc.Quantity{calc.CapRoom}, spareNotHalved},
	{EaseForRoom, []calc.Quantity{calc.CapRoom}, easeForRoom},
	{SlideIntoArmhole, []calc.Quantity{calc.CapEaseAfter}, slideIntoArmhole},
	{OneSlideEased, []calc.Quantity{calc.CapEaseAfter}, oneSlideEased},
	{ExactForMarks, []calc.Quantity{calc.FinishedMarked}, exactForMarks},
}

var (
	widths        = []calc.Quantity{calc.FrontWidth, calc.BackWidth, calc.FlatWidth}
	needs         = []calc.Quantity{calc.Need}
	widthsAndNeed = []calc.Quantity{calc.FrontWidth, calc.BackWidth, calc.FlatWidth, calc.Need}
	slides        = []calc.Quantity{calc.Slide}
	pivots        = []calc.Quantity{calc.Pivot}
	finished      = []calc.Quantity{calc.Finished, calc.FinishedMarked}
)

// misstepsOf are the wrong answers that speak for themselves, each value once,
// with every wrong turn that leads to it.
func misstepsOf(s solved) []MisstepValue {
	var list []MisstepValue
	for _, m := range missteps {
		if !slices.Contains(m.of, s.figure.Quantity) {
			continue
		}
		for _, value := range m.gives(s) {
			if value != s.right {
				list = withMisstep(list, value, m.misstep)
			}
		}
	}
	return list
}

func withMisstep(list []MisstepValue, value units.Length, m Misstep) []MisstepValue {
	i := slices.IndexFunc(list, func(v MisstepValue) bool { return v.Value == value })
	switch {
	case i < 0:
		return append(list, MisstepValue{value, []Misstep{m}})
	case !slices.Contains(list[i].Missteps, m):
		list[i].Missteps = append(list[i].Missteps, m)
	}
	return list
}
