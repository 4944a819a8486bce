package calc_test

import (
	"capscye/calc"
	"capscye/units"
)

// This file does the sums a second time, slowly and in fractions, written from
// the rules of the method and not from the code that it checks. A mistake has
// to be made twice, in two shapes, to pass. Nothing here is taken from
// [calc.Compute] but the types of its input and its answer.

// exactSpan is every length from low to high, or none.
type exactSpan struct{ low, high exact }

func (s exactSpan) empty() bool           { return s.high.less(s.low) }
func (s exactSpan) nearest(a exact) exact { return smallest(largest(a, s.low), s.high) }

// oracleSleeveFlat is the sleeve's width without the allowances of its two
// seamed edges.
func oracleSleeveFlat(s calc.SleeveInput) exact {
	flat := exactReading(s.Width)
	switch s.Measured {
	case calc.NotTold:
		return exact{}
	case calc.EdgeToEdge:
		flat = flat.minus(exactReading(s.Allowance).times(exactly(2)))
	}
	return flat.ifPositive()
}

// oracleBustFlat goes around the body: front and back are half of it. A printed
// finished bust makes the widths superfluous.
func oracleBustFlat(b calc.BodiceInput) exact {
	if b.FinishedBust.Known {
		return exactReading(b.FinishedBust).ifPositive()
	}
	front, back := oraclePiece(b, b.Front, b.TakeOffFront), oraclePiece(b, b.Back, b.TakeOffBack)
	return front.plus(back).times(exactly(2)).ifPositive()
}

func oraclePiece(b calc.BodiceInput, width, takeOff units.Reading) exact {
	flat := exactReading(width).minus(exactReading(takeOff).or(nought))
	if b.Measured == calc.NotTold {
		return exact{}
	}
	if b.Measured == calc.EdgeToEdge && b.Crossings > 0 {
		flat = flat.minus(exactReading(b.Allowance).times(exactly(b.Crossings)))
	}
	return flat
}

// oracleLarger is the larger of two arms, or the one that was measured.
func oracleLarger(a, b exact) exact {
	if !a.known() || !b.known() {
		return a.or(b)
	}
	return largest(a, b)
}

// oracleSplit gives the front its share and the back what is left, so that
// rounding loses nothing. The result is indexed by half.
func oracleSplit(need exact, s units.Share) [2]exact {
	share := exactly(s.Numerator).over(exactly(s.Denominator))
	front := need.times(share).rounded()
	return [2]exact{front, need.minus(front)}
}

// oracleRoom is what each side of a kept bodice's cap may still slide: half of
// what the cap ease now falls short of the most that the style takes. Seams
// that were not measured leave no room; gathers take any amount.
func oracleRoom(in calc.Input) exact {
	ease := exactReading(in.Sleeve.CapFront).plus(exactReading(in.Sleeve.CapBack)).
		minus(exactReading(in.Bodice.ArmholeFront)).minus(exactReading(in.Bodice.ArmholeBack))
	if !ease.known() {
		return nought
	}
	highest := exactly(units.Inch * 3 / 2)
	switch {
	case in.Sleeve.Style == calc.Gathered:
		return exactly(units.Max)
	case in.Sleeve.Style == calc.Shirt || in.Fabric == calc.Knit:
		highest = exactly(units.Inch * 3 / 4)
	}
	return largest(nought, highest.minus(ease)).half()
}

// oracleEdge is a side before it is decided what it does. Without a need it is
// not asked for anything.
type oracleEdge struct{ need, limit exact }

// reach is every slide from which the side's pivot can do the rest.
func (e oracleEdge) reach() exactSpan {
	need := e.need.or(nought)
	return exactSpan{need.minus(e.limit), need.plus(e.limit)}
}

// oracleSeam is the sleeve's and the bodice's edge that are sewn together, and
// so have to slide alike.
type oracleSeam struct {
	calc.Method
	sleeve, bodice oracleEdge
	room           exact
}

func (s oracleSeam) kept() bool { return s.Armhole == calc.KeepArmhole }

// serving is every slide that serves these edges. Where a piece that needs less
// may be let out, a slide may go up to the largest need when all grow (down to
// the smallest when all shrink); otherwise each edge has to reach its own need.
func (s oracleSeam) serving(edges ...oracleEdge) exactSpan {
	var needs, lows, highs []exact
	growing, shrinking := true, true
	for _, e := range edges {
		if !e.need.known() && s.Follow == calc.LetOut {
			continue
		}
		need := e.need.or(nought)
		growing = growing && !need.less(nought)
		shrinking = shrinking && !nought.less(need)
		needs, lows, highs = append(needs, need), append(lows, e.reach().low), append(highs, e.reach().high)
	}
	switch {
	case s.Follow == calc.LetOut && growing:
		return exactSpan{largest(lows...), largest(needs...)}
	case s.Follow == calc.LetOut && shrinking:
		return exactSpan{smallest(needs...), smallest(highs...)}
	}
	return exactSpan{largest(lows...), smallest(highs...)}
}

// band is every slide that works. A bodice that is already cut allows only the
// room in its armhole, and has no say of its own.
func (s oracleSeam) band() exactSpan {
	asked := s.sleeve.need.known() || s.bodice.need.known() && !s.kept()
	if !asked {
		return exactSpan{nought, nought}
	}
	if s.kept() {
		own := s.serving(s.sleeve)
		return exactSpan{largest(own.low, nought), smallest(own.high, s.room)}
	}
	return s.serving(s.sleeve, s.bodice)
}

func (s oracleSeam) slide() exact {
	band := s.band()
	if band.empty() {
		return s.compromise()
	}
	switch s.Slide {
	case calc.SlideEven:
		return band.nearest(s.sleeve.need.or(s.bodice.need).or(nought).half())
	case calc.SlideChosen:
		return band.nearest(exactly(s.SlideLength))
	}
	return band.nearest(nought)
}

// compromise is the slide where none serves. With a kept bodice it goes as far
// towards the sleeve as there is room; otherwise the sleeve gets what it needs,
// with its pivot at the limit on the bodice's side.
func (s oracleSeam) compromise() exact {
	if s.kept() {
		if s.room.less(s.serving(s.sleeve).low) {
			return s.room
		}
		return nought
	}
	sleeve, bodice := s.sleeve.reach(), s.bodice.reach()
	if sleeve.high.less(bodice.low) {
		return sleeve.high
	}
	return sleeve.low
}

// pivot is how much the edge turns after the slide, and what it then still
// lacks. A piece that is let out turns only in the direction of its need: where
// that stops it, it comes out wider than asked and lacks nothing.
func (s oracleSeam) pivot(e oracleEdge, slide exact) (pivot, lacking exact) {
	need := e.need.or(nought)
	rest := need.minus(slide)
	if s.Follow == calc.LetOut && rest.sign()*need.sign() <= 0 {
		return nought, nought
	}
	pivot = exactSpan{nought.minus(e.limit), e.limit}.nearest(rest)
	return pivot, rest.minus(pivot)
}

func (s oracleSeam) side(e oracleEdge, slide exact, ruler units.Ruler) calc.SidePlan {
	pivot, lacking := s.pivot(e, slide)
	total := pivot.plus(slide)
	slideMark := slide.toMark(ruler)
	return calc.SidePlan{
		Need:  e.need.reading(),
		Pivot: pivot.length(), Slide: slide.length(), Total: total.length(), LeftOver: lacking.length(),
		PivotMark: total.toMark(ruler).minus(slideMark).length(), SlideMark: slideMark.length(),
	}
}

// oraclePlan is the reference: all of a plan but its findings.
func oraclePlan(in calc.Input) calc.Plan {
	arm, bust := oracleLarger(exactReading(in.Bicep), exactReading(in.BicepOther)), exactReading(in.Bust)
	sleeveFlat, bustFlat := oracleSleeveFlat(in.Sleeve), oracleBustFlat(in.Bodice)
	armNeed := arm.plus(exactReading(in.BicepEase)).minus(sleeveFlat)
	bustNeed := bust.plus(exactReading(in.BustEase)).minus(bustFlat)

	m, room := in.Method, oracleRoom(in)
	sleeve, bodice := oracleSplit(armNeed, m.ShareSleeve), oracleSplit(bustNeed.half(), m.ShareBust)
	// A girth that is asked and cannot be reckoned leaves the whole plan open,
	// since both pieces share the slide.
	p := calc.Plan{Open: arm.known() && !armNeed.known() || bust.known() && !bustNeed.known()}
	if p.Open {
		for h := range 2 {
			p.Sides[h].Need, p.Sides[2+h].Need = sleeve[h].reading(), bodice[h].reading()
		}
		p.Sleeve = oracleOpenGirth(arm, in.BicepEase, sleeveFlat, armNeed)
		p.Bust = oracleOpenGirth(bust, in.BustEase, bustFlat, bustNeed)
		p.Seams = oracleSeams(in, p.Sides)
		p.Seams.CapAfter, p.Seams.ArmholeAfter, p.Seams.CapEaseAfter = units.Reading{}, units.Reading{}, units.Reading{}
		return p
	}
	for h := range 2 {
		seam := oracleSeam{
			Method: m, room: room,
			sleeve: oracleEdge{sleeve[h], exactly(m.LimitSleeve)},
			bodice: oracleEdge{bodice[h], exactly(m.LimitBodice)},
		}
		band, slide := seam.band(), seam.slide()
		p.Bands[h] = calc.Band{Low: band.low.length(), High: band.high.length()}
		p.Sides[h] = seam.side(seam.sleeve, slide, in.Ruler)
		p.Sides[2+h] = seam.side(seam.bodice, slide, in.Ruler)
		if seam.kept() { // nothing is done to it, so it lacks all that it needs
			p.Sides[2+h] = calc.SidePlan{
				Need: bodice[h].reading(), LeftOver: bodice[h].or(nought).length(),
			}
		}
	}
	for s := range p.Sides { // nothing here says that a seam tapers from its corner: the whole gain is at the line
		side := &p.Sides[s]
		side.AtLine, side.AtLineMark = units.Known(side.Pivot+side.Slide), units.Known(side.PivotMark+side.SlideMark)
	}
	p.Sleeve = oracleGirth(arm, in.BicepEase, sleeveFlat, armNeed, 1, p.Sides[0], p.Sides[1])
	p.Bust = oracleGirth(bust, in.BustEase, bustFlat, bustNeed, 2, p.Sides[2], p.Sides[3])
	p.Seams = oracleSeams(in, p.Sides)
	return p
}

// oracleSeams says how long cap and armhole are, before and after: both get
// longer by what their own sides slide.
func oracleSeams(in calc.Input, sides [4]calc.SidePlan) calc.Seams {
	cap := exactReading(in.Sleeve.CapFront).plus(exactReading(in.Sleeve.CapBack))
	armhole := exactReading(in.Bodice.ArmholeFront).plus(exactReading(in.Bodice.ArmholeBack))
	capAfter := cap.plus(exactly(sides[0].Slide)).plus(exactly(sides[1].Slide))
	armholeAfter := armhole.plus(exactly(sides[2].Slide)).plus(exactly(sides[3].Slide))
	return calc.Seams{
		CapBefore: cap.reading(), CapAfter: capAfter.reading(),
		ArmholeBefore: armhole.reading(), ArmholeAfter: armholeAfter.reading(),
		CapEaseBefore: cap.minus(armhole).reading(), CapEaseAfter: capAfter.minus(armholeAfter).reading(),
	}
}

// oracleOpenGirth is a girth of a plan that is open: nothing comes out of it.
func oracleOpenGirth(body exact, ease units.Reading, flat, need exact) calc.Girth {
	return calc.Girth{Body: body.reading(), Ease: exactReading(ease).reading(), Flat: flat.reading(), Need: need.reading()}
}

// oracleGirth says what becomes of a girth that has each of these sides so many
// times.
func oracleGirth(body exact, ease units.Reading, flat, need exact, times int, a, b calc.SidePlan) calc.Girth {
	grown := func(a, b units.Length) exact {
		return flat.plus(exactly(a).plus(exactly(b)).times(exactly(times)))
	}
	finished := grown(a.Total, b.Total)
	marked := grown(a.PivotMark+a.SlideMark, b.PivotMark+b.SlideMark)
	return calc.Girth{
		Body: body.reading(), Ease: exactReading(ease).reading(), Flat: flat.reading(), Need: need.reading(),
		Finished:  finished.reading(),
		Marked:    marked.reading(),
		EaseAfter: finished.minus(body).reading(),
		Drawn:     finished.reading(), DrawnMarked: marked.reading(), EaseDrawn: finished.minus(body).reading(),
	}
}
