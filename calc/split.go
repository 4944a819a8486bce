package calc

import "capscye/units"

// One slide for both pieces: the sleeve side and the bodice side that are sewn
// together must slide by the same amount, or the cap no longer fits the
// armhole. What remains of each need is pivoted.

// seam is the front or the back seam of cap and armhole, with what its two
// sides need.
type seam struct {
	half           Half
	sleeve, bodice units.Reading
}

// asked tells that there is anything to do at the seam.
func (s seam) asked() bool { return s.sleeve.Known || s.bodice.Known }

// split finds the band, the slide and the pivots of one seam.
func (c *computation) split(s seam) {
	sleeve := reach{s.half.Sleeve(), s.sleeve, c.in.Method.LimitSleeve}
	bodice := reach{s.half.Bodice(), s.bodice, c.in.Method.LimitBodice}
	var slide units.Length
	switch {
	case !s.asked():
	case c.in.Method.Armhole == KeepArmhole:
		slide = c.keptSlide(s, sleeve)
	default:
		slide = c.sharedSlide(s, sleeve, bodice)
	}
	c.pivot(sleeve, slide)
	if c.in.Method.Armhole == KeepArmhole {
		kept := SidePlan{Need: s.bodice}
		if s.bodice.Known { // nothing is done to it, so it lacks all that it needs
			kept.LeftOver = c.sum(Figure{bodice.side.Subject(), LeftOver}, bodice.needTerm())
		}
		c.plan.Sides[bodice.side] = kept
		return
	}
	c.pivot(bodice, slide)
}

// reach is a side, what it needs, and how far it may pivot either way.
type reach struct {
	side  Side
	need  units.Reading
	limit units.Length
}

// needTerm is the need as a term; a side that is not asked counts as zero.
func (r reach) needTerm() Term {
	if !r.need.Known {
		return constant(0)
	}
	return computed(r.side.Subject(), Need, r.need.Length)
}

func (r reach) limitTerm() Term {
	if r.side.OfSleeve() {
		return typed(LimitSleeve, r.limit)
	}
	return typed(LimitBodice, r.limit)
}

// leastSlide is need - limit: with less, the side could not pivot far enough.
func (c *computation) leastSlide(r reach) Term {
	of := r.side.Subject()
	return computed(of, LeastSlide, c.sum(Figure{of, LeastSlide}, r.needTerm(), r.limitTerm().less()))
}

// mostSlide is need + limit: with more, it could not pivot back far enough.
func (c *computation) mostSlide(r reach) Term {
	of := r.side.Subject()
	return computed(of, MostSlide, c.sum(Figure{of, MostSlide}, r.needTerm(), r.limitTerm()))
}

// bounds is the band of every slide with which all the given sides reach their
// needs.
//
// Let out, all growing: from max(t - P, b - Q) to max(t, b); all shrinking:
// from min(t, b) to min(t + P, b + Q). Needs of opposite sign, or hold: from
// max(t - P, b - Q) to min(t + P, b + Q).
func (c *computation) bounds(half Half, sides ...reach) (low, high Term) {
	growing, shrinking := c.in.Method.Follow == LetOut, c.in.Method.Follow == LetOut
	needs := make([]Term, len(sides))
	for i, r := range sides {
		needs[i] = r.needTerm()
		growing = growing && needs[i].Value >= 0
		shrinking = shrinking && needs[i].Value <= 0
	}
	each := func(end func(reach) Term) []Term {
		terms := make([]Term, len(sides))
		for i, r := range sides {
			terms[i] = end(r)
		}
		return terms
	}
	lowest := Figure{half.Subject(), BandLow}
	highest := Figure{half.Subject(), BandHigh}
	low.Figure, low.Times = lowest, 1
	high.Figure, high.Times = highest, 1
	switch {
	case growing:
		low.Value = c.largest(lowest, each(c.leastSlide)...)
		high.Value = c.largest(highest, needs...)
	case shrinking:
		low.Value = c.smallest(lowest, needs...)
		high.Value = c.smallest(highest, each(c.mostSlide)...)
	default:
		low.Value = c.largest(lowest, each(c.leastSlide)...)
		high.Value = c.smallest(highest, each(c.mostSlide)...)
	}
	return low, high
}

// sharedSlide is the slide where both pieces can be altered.
func (c *computation) sharedSlide(s seam, sleeve, bodice reach) units.Length {
	var low, high Term
	switch hold := c.in.Method.Follow == Hold; {
	case hold || s.sleeve.Known && s.bodice.Known:
		low, high = c.bounds(s.half, sleeve, bodice)
	case s.sleeve.Known:
		low, high = c.bounds(s.half, sleeve)
	default:
		low, high = c.bounds(s.half, bodice)
	}
	band := Band{low.Value, high.Value}
	c.plan.Bands[s.half] = band
	if !band.Empty() {
		return c.choose(s, low, high)
	}
	// No slide serves both. The sleeve gets its need, and the slide is the end
	// of the sleeve's own interval that is nearer to the bodice's.
	toward := c.mostSlide(bodice)
	if bodice.need.Or(0) > sleeve.need.Or(0) {
		toward = c.leastSlide(bodice)
	}
	return c.within(Figure{s.half.Subject(), Slide}, toward, c.leastSlide(sleeve), c.mostSlide(sleeve))
}

// keptSlide is the slide where the bodice is already cut: the cap alone gets
// longer, by no more than its style can ease in.
func (c *computation) keptSlide(s seam, sleeve reach) units.Length {
	if !s.sleeve.Known {
		return 0
	}
	ownLow, ownHigh := c.bounds(s.half, sleeve)
	of := s.half.Subject()
	zero, room := constant(0), c.room
	low := computed(of, KeptLow, c.largest(Figure{of, KeptLow}, ownLow, zero))
	high := computed(of, KeptHigh, c.smallest(Figure{of, KeptHigh}, ownHigh, room))
	band := Band{low.Value, high.Value}
	c.plan.Bands[s.half] = band
	switch {
	case !band.Empty():
		return c.choose(s, low, high)
	case ownLow.Value > room.Value:
		return c.within(Figure{of, Slide}, ownLow, zero, room)
	}
	return c.within(Figure{of, Slide}, ownHigh, zero, room)
}

// choose takes the slide that was asked for out of the band.
func (c *computation) choose(s seam, low, high Term) units.Length {
	of := s.half.Subject()
	wanted := constant(0)
	switch c.in.Method.Slide {
	case SlideEven:
		need := computed(s.half.Sleeve().Subject(), Need, s.sleeve.Length)
		if !s.sleeve.Known {
			need = computed(s.half.Bodice().Subject(), Need, s.bodice.Length)
		}
		wanted = computed(of, EvenSlide, c.part(Figure{of, EvenSlide}, units.Half, need))
	case SlideChosen:
		wanted = typed(SlideLength, c.in.Method.SlideLength)
	}
	slide := c.within(Figure{of, Slide}, wanted, low, high)
	if c.in.Method.Slide == SlideChosen && slide != wanted.Value {
		c.find(Finding{Code: SlideMoved, Level: Note, About: of, Amount: wanted.Value, Other: slide})
	}
	return slide
}

// pivot gives a side its slide and pivots what remains of its need: within the
// limit; under let out never against the direction of the need, and not at all
// where nothing was asked.
func (c *computation) pivot(r reach, slide units.Length) {
	p := &c.plan.Sides[r.side]
	*p = SidePlan{Need: r.need, Slide: slide, Total: slide}
	if !r.need.Known && slide == 0 {
		return
	}
	of := r.side.Subject()
	shared := computed(r.side.Half().Subject(), Slide, slide)
	letOut := c.in.Method.Follow == LetOut
	if !r.need.Known && letOut {
		c.sum(Figure{of, Total}, shared)
		return
	}
	after := c.sum(Figure{of, AfterSlide}, r.needTerm(), shared.less())
	low, high := r.limitTerm(), r.limitTerm()
	low.Value = -low.Value
	outward, inward := r.need.Length >= 0 && letOut, r.need.Length <= 0 && letOut
	if outward {
		low = constant(0)
	}
	if inward {
		high = constant(0)
	}
	p.Pivot = c.within(Figure{of, Pivot}, computed(of, AfterSlide, after), low, high)
	p.Total = c.sum(Figure{of, Total}, computed(of, Pivot, p.Pivot), shared)
	if after > r.limit && !inward || after < -r.limit && !outward {
		p.LeftOver = c.sum(Figure{of, LeftOver}, r.needTerm(), computed(of, Total, p.Total).less())
	}
}
