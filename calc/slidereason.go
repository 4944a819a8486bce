package calc

import "capscye/units"

// SlideReason is why a half slides as it does, where a sentence can say it: what a person
// would say who does not work out the range first.
type SlideReason uint8

// The reasons.
const (
	NoReason      SlideReason = iota // no sentence says it: the slide was chosen, or no slide serves both pieces
	PivotsReach                      // each side that counts can pivot all that it needs: nothing slides
	BeyondLimits                     // the slide is what the needs have beyond the limits, of both sides the larger
	HalfWorks                        // half of what a side needs, which lies in the range
	HalfTooLittle                    // the low end of the range, since that half is below it
	HalfTooMuch                      // its high end, since that half is above it
)

// SlideReason is why a half slides as it does.
func (p Plan) SlideReason(in Input, h Half) SlideReason {
	sides := p.SidesThatSlide(in, h)
	if p.Open || len(sides) == 0 || p.Bands[h].Empty() {
		return NoReason
	}
	slide := p.Sides[sides[0]].Slide
	switch in.Method.Slide {
	case SlideLeast:
		return p.leastReason(in, sides, slide)
	case SlideEven:
		switch half := units.Half.Of(p.Sides[sides[0]].Need.Length); {
		case half < slide:
			return HalfTooLittle
		case half > slide:
			return HalfTooMuch
		}
		return HalfWorks
	}
	return NoReason
}

func (p Plan) leastReason(in Input, sides []Side, slide units.Length) SlideReason {
	low, high := units.Length(0), units.Length(0)
	for _, s := range sides {
		beyond := p.BeyondLimit(in, s)
		low, high = min(low, beyond), max(high, beyond)
	}
	switch {
	case low == 0 && high == 0 && slide == 0:
		return PivotsReach
	case slide != 0 && low+high == slide && (low == 0 || high == 0):
		return BeyondLimits
	}
	return NoReason
}

// SidesThatSlide are the sides of a half whose needs decide the slide, the sleeve's first.
func (p Plan) SidesThatSlide(in Input, h Half) (sides []Side) {
	for _, s := range []Side{h.Sleeve(), h.Bodice()} {
		if p.Sides[s].Need.Known && (s.OfSleeve() || in.Method.Armhole != KeepArmhole) {
			sides = append(sides, s)
		}
	}
	return sides
}

// Limit is how far a side may pivot either way.
func (m Method) Limit(s Side) units.Length {
	if s.OfSleeve() {
		return m.LimitSleeve
	}
	return m.LimitBodice
}

// BeyondLimit is what a side needs more than it may pivot, negative where it comes in; 0
// where the pivot is enough.
func (p Plan) BeyondLimit(in Input, s Side) units.Length {
	need, limit := p.Sides[s].Need.Length, in.Method.Limit(s)
	return need - min(max(need, -limit), limit)
}
