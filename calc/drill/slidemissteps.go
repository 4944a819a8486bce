package drill

import (
	"capscye/calc"
	"capscye/units"
)

// What the missteps give from the slide on.

// half is the half of a figure of the slide, with what each of its sides needs.
func (s solved) half() (h calc.Half, sleeve, bodice units.Length) {
	h = calc.Half(s.figure.Of - calc.OfFront)
	return h, s.plan.Sides[h.Sleeve()].Need.Length, s.plan.Sides[h.Bodice()].Need.Length
}

// limitIgnored: everything pivots, so nothing slides.
func limitIgnored(solved) []units.Length { return []units.Length{0} }

func onlySleeveMatched(s solved) []units.Length {
	_, sleeve, _ := s.half()
	return []units.Length{max(0, sleeve-s.in.Method.LimitSleeve)}
}

func onlyBodiceMatched(s solved) []units.Length {
	if !s.plan.Bust.Asked() {
		return nil
	}
	_, _, bodice := s.half()
	return []units.Length{max(0, bodice-s.in.Method.LimitBodice)}
}

func nothingPivoted(s solved) []units.Length {
	_, sleeve, bodice := s.half()
	if !s.plan.Bust.Asked() {
		return []units.Length{sleeve}
	}
	return []units.Length{sleeve, bodice}
}

func limitOffWholeNeed(s solved) []units.Length {
	sleeve := max(0, s.plan.Sleeve.Need.Length-s.in.Method.LimitSleeve)
	if !s.plan.Bust.Asked() {
		return []units.Length{sleeve}
	}
	return []units.Length{sleeve, max(0, s.plan.Bust.Need.Length-s.in.Method.LimitBodice)}
}

func limitForSlide(s solved) []units.Length {
	return []units.Length{s.in.Method.LimitSleeve, s.in.Method.LimitBodice}
}

// belowNothing is need - limit of either piece where both are below nothing.
func belowNothing(s solved) []units.Length {
	_, sleeve, bodice := s.half()
	sleeve, bodice = sleeve-s.in.Method.LimitSleeve, bodice-s.in.Method.LimitBodice
	if sleeve >= 0 || bodice >= 0 || !s.plan.Bust.Asked() {
		return nil
	}
	return []units.Length{sleeve, bodice}
}

func otherHalf(s solved) []units.Length {
	if s.figure.Quantity == calc.Slide {
		h, _, _ := s.half()
		return []units.Length{s.plan.Sides[acrossHalf(h.Sleeve())].Slide}
	}
	side, _, _, _, _ := s.side()
	other := s.plan.Sides[acrossHalf(side)]
	switch s.figure.Quantity {
	case calc.SlideMark:
		return []units.Length{other.SlideMark}
	case calc.PivotMark:
		return []units.Length{other.PivotMark}
	}
	return []units.Length{other.Pivot}
}

// own is what the side of the figure does.
func (s solved) own() calc.SidePlan {
	side, _, _, _, _ := s.side()
	return s.plan.Sides[side]
}

func slideForgotten(s solved) []units.Length { return []units.Length{s.own().Need.Length} }

func slideAdded(s solved) []units.Length {
	return []units.Length{s.own().Need.Length + s.own().Slide}
}

func otherPiece(s solved) []units.Length {
	side, _, _, _, _ := s.side()
	if s.in.Method.Armhole == calc.KeepArmhole {
		return nil // the other piece does nothing
	}
	other := s.plan.Sides[acrossSeam(side)]
	if s.figure.Quantity == calc.PivotMark {
		return []units.Length{other.PivotMark}
	}
	return []units.Length{other.Pivot}
}

func limitForPivot(s solved) []units.Length {
	_, _, _, limit, _ := s.side()
	return []units.Length{limit}
}

func notRounded(s solved) []units.Length {
	if s.figure.Quantity == calc.PivotMark {
		return []units.Length{s.own().Pivot}
	}
	return []units.Length{s.own().Slide}
}

// roundedOtherWay is the mark on the other side of a slide between two.
func roundedOtherWay(s solved) []units.Length {
	mark := s.in.Ruler.Mark()
	switch slide := s.own().Slide; {
	case slide > s.right:
		return []units.Length{s.right + mark}
	case slide < s.right:
		return []units.Length{s.right - mark}
	}
	return nil
}

func roundedAlone(s solved) []units.Length {
	return []units.Length{s.own().Pivot.Round(s.in.Ruler.Mark())}
}

// markOffExact is the exact total less the mark of the slide: rounded too late.
func markOffExact(s solved) []units.Length { return []units.Length{s.own().Total - s.own().SlideMark} }

func signForgotten(s solved) []units.Length {
	if s.right < 0 {
		return []units.Length{-s.right}
	}
	return nil
}

// leastForEven is the end of the range that is nearer to nothing.
func leastForEven(s solved) []units.Length {
	if s.in.Method.Slide != calc.SlideEven {
		return nil
	}
	h, _, _ := s.half()
	return []units.Length{max(0, s.plan.Bands[h].Low)}
}

func evenOfPiece(s solved) []units.Length { return []units.Length{s.plan.Sleeve.Need.Length.Half()} }

// oneSeamCompared is the cap ease of the front alone, or of the back.
func oneSeamCompared(s solved) []units.Length {
	sleeve, bodice := s.in.Sleeve, s.in.Bodice
	slides := [2]units.Length{}
	if s.figure.Quantity == calc.CapEaseAfter {
		slides = [2]units.Length{s.plan.Sides[calc.SleeveFront].Slide, s.plan.Sides[calc.SleeveBack].Slide}
	}
	return []units.Length{
		sleeve.CapFront.Length + slides[0] - bodice.ArmholeFront.Length,
		sleeve.CapBack.Length + slides[1] - bodice.ArmholeBack.Length,
	}
}

func spareNotHalved(s solved) []units.Length { return []units.Length{2 * s.right} }

func easeForRoom(s solved) []units.Length {
	return []units.Length{s.plan.Seams.CapEaseBefore.Length.Half()}
}

func slideIntoArmhole(s solved) []units.Length {
	return []units.Length{s.plan.Seams.CapEaseBefore.Length}
}

func oneSlideEased(s solved) []units.Length {
	return []units.Length{s.plan.Seams.CapEaseBefore.Length + s.plan.Sides[calc.SleeveFront].Slide}
}

func totalForPivot(s solved) []units.Length { return []units.Length{s.own().Marked()} }

// gains are what the sides of the piece gain, exactly or by the marks, what of
// it is pivot, and how often each side occurs around the body.
func (s solved) gains() (front, back, pivots, copies units.Length) {
	f, b, copies := s.plan.Sides[calc.SleeveFront], s.plan.Sides[calc.SleeveBack], 1
	if s.figure.Of == calc.OfBust {
		f, b, copies = s.plan.Sides[calc.BodiceFront], s.plan.Sides[calc.BodiceBack], 2
	}
	if s.figure.Quantity == calc.FinishedMarked {
		return f.Marked(), b.Marked(), f.PivotMark + b.PivotMark, units.Length(copies)
	}
	return f.Total, b.Total, f.Pivot + b.Pivot, units.Length(copies)
}

func (s solved) flat() units.Length {
	g, _ := s.girth()
	return g.Flat.Length
}

// oneSideCounted is the gain of one side, once or, of a bodice whose front and
// back differ, on both halves of the body.
func oneSideCounted(s solved) []units.Length {
	front, back, _, copies := s.gains()
	list := []units.Length{s.flat() + front, s.flat() + back}
	if front != back {
		list = append(list, s.flat()+copies*front, s.flat()+copies*back)
	}
	return list
}

func countedOnce(s solved) []units.Length {
	if front, back, _, copies := s.gains(); copies == 2 {
		return []units.Length{s.flat() + front + back}
	}
	return nil
}

func countedTwice(s solved) []units.Length {
	if front, back, _, copies := s.gains(); copies == 1 {
		return []units.Length{s.flat() + 2*(front+back)}
	}
	return nil
}

func slideNotCounted(s solved) []units.Length {
	_, _, pivots, copies := s.gains()
	return []units.Length{s.flat() + copies*pivots}
}

func addedToBody(s solved) []units.Length {
	g, _ := s.girth()
	return []units.Length{s.right - g.Flat.Length + g.Body.Length}
}

func exactForMarks(s solved) []units.Length {
	g, _ := s.girth()
	return []units.Length{g.Finished.Length}
}
