package calc

import "capscye/units"

// Compute is the whole plan. It never fails: what is missing or impossible is a
// finding, and the figures that need it are not known.
func Compute(in Input) Plan { return compute(in, &tally{}) }

// computation carries one run through the steps of the method.
type computation struct {
	*tally
	in   Input
	plan Plan
	room Term // what the cap may gain at each half with the armhole kept

	bends [4]float64 // by Side: the sharpest bend of the seam that is drawn, in radians

	sleeveTerms, bustTerms girthTerms
}

func compute(in Input, t *tally) Plan {
	c := &computation{tally: t, in: in}
	c.splits()
	if !c.plan.Open {
		c.follow()
	}
	c.judge()
	return c.plan
}

// splits finds the needs and divides them into pivots and slides.
func (c *computation) splits() {
	in, p := c.in, &c.plan
	p.Sleeve, c.sleeveTerms = c.sleeve()
	p.Bust, c.bustTerms = c.bust()
	c.seamsBefore()
	sleeve, bodice := c.sleeveNeeds(), c.bodiceNeeds()
	p.Open = in.Unread || p.Sleeve.Body.Known && !p.Sleeve.Asked() || p.Bust.Body.Known && !p.Bust.Asked()
	for _, h := range Halves() {
		p.Sides[h.Sleeve()].Need, p.Sides[h.Bodice()].Need = sleeve[h], bodice[h]
	}
	if p.Open {
		return
	}
	if in.Method.Armhole == KeepArmhole && p.Sleeve.Asked() {
		c.room = c.capRoom()
	}
	for _, h := range Halves() {
		c.split(seam{half: h, sleeve: sleeve[h], bodice: bodice[h]})
	}
}

// follow goes after what the pieces come to.
func (c *computation) follow() {
	p := &c.plan
	for _, s := range Sides() {
		c.marks(s)
	}
	c.turns()
	c.finish(&p.Sleeve, OfSleeve, c.sleeveTerms, SleeveFront, SleeveBack, 1)
	c.finish(&p.Bust, OfBust, c.bustTerms, BodiceFront, BodiceBack, 2) // left and right
	c.seamsAfter()
	c.below()
	c.drawn(&p.Sleeve, OfSleeve, c.sleeveTerms, SleeveFront, 1)
	c.drawn(&p.Bust, OfBust, c.bustTerms, BodiceFront, 2)
	c.judgeGrowths(OfSleeve, SleeveFront)
	c.judgeGrowths(OfBust, BodiceFront)
}

func (c *computation) find(f Finding) {
	if c.plan.Findings == nil {
		c.plan.Findings = make([]Finding, 0, 8) // most sheets have no more
	}
	c.plan.Findings = append(c.plan.Findings, f)
}

// sleeveNeeds divides the sleeve's need over its two sides: the front takes its
// share, rounded to the count, and the back gets the rest.
func (c *computation) sleeveNeeds() [2]units.Reading {
	if !c.plan.Sleeve.Asked() {
		return [2]units.Reading{}
	}
	return c.divide(SleeveFront, SleeveBack, c.in.Method.ShareSleeve,
		computed(OfSleeve, Need, c.plan.Sleeve.Need.Length))
}

// bodiceNeeds divides half the bust's need over a front and a back side; the
// other half of the body is cut from the same paper.
func (c *computation) bodiceNeeds() [2]units.Reading {
	if !c.plan.Bust.Asked() {
		return [2]units.Reading{}
	}
	half := c.part(Figure{OfBust, HalfNeed}, units.Half, computed(OfBust, Need, c.plan.Bust.Need.Length))
	return c.divide(BodiceFront, BodiceBack, c.in.Method.ShareBust, computed(OfBust, HalfNeed, half))
}

func (c *computation) divide(front, back Side, share units.Share, whole Term) [2]units.Reading {
	f := c.part(Figure{front.Subject(), Need}, share, whole)
	b := c.sum(Figure{back.Subject(), Need}, whole, computed(front.Subject(), Need, f).less())
	return [2]units.Reading{units.Known(f), units.Known(b)}
}

// marks rounds what a side gains to the ruler: the slide to the nearest mark,
// halves away from zero, and the pivot is what is left to the rounded total. So
// the marks of a side add up, and the two sides of a seam get one slide mark.
func (c *computation) marks(s Side) {
	p := &c.plan.Sides[s]
	if p.Slide == 0 && p.Total == 0 {
		return
	}
	of := s.Subject()
	p.SlideMark = c.onMark(Figure{of, SlideMark}, computed(s.Half().Subject(), Slide, p.Slide), c.in.Ruler)
	total := c.onMark(Figure{of, TotalMark}, computed(of, Total, p.Total), c.in.Ruler)
	p.PivotMark = c.sum(Figure{of, PivotMark},
		computed(of, TotalMark, total), computed(of, SlideMark, p.SlideMark).less())
}

// gain is what a side gains at the line of the girth: its total or, where the outline
// gives another length there, that.
func (c *computation) gain(s Side, total, atLine Quantity, whole, there units.Length) Term {
	switch {
	case whole == 0 && there == 0:
		return constant(0)
	case there == whole:
		return computed(s.Subject(), total, whole)
	}
	return computed(s.Subject(), atLine, c.readOff(Figure{s.Subject(), atLine}, there))
}

// finish adds what the sides gain at the line of the girth to the flat width.
// copies is how often each side occurs around the body. Where the outline gives a
// side less than it pivots and slides, its gain is read off the outline.
func (c *computation) finish(g *Girth, of Subject, from girthTerms, front, back Side, copies int64) {
	if !g.Flat.Known {
		return
	}
	f, b := c.plan.Sides[front], c.plan.Sides[back]
	if !f.AtLine.Known || !b.AtLine.Known {
		return
	}
	gain := func(s Side, total, atLine Quantity, whole, there units.Length) Term {
		return c.gain(s, total, atLine, whole, there).times(copies)
	}
	g.Finished = units.Known(c.sum(Figure{of, Finished}, from.flat,
		gain(front, Total, AtLine, f.Total, f.AtLine.Length), gain(back, Total, AtLine, b.Total, b.AtLine.Length)))
	g.Marked = units.Known(c.sum(Figure{of, FinishedMarked}, from.flat,
		gain(front, TotalMark, AtLineMark, f.Marked(), f.AtLineMark.Length), gain(back, TotalMark, AtLineMark, b.Marked(), b.AtLineMark.Length)))
	if g.Body.Known {
		g.EaseAfter = units.Known(c.sum(Figure{of, EaseAfter},
			computed(of, Finished, g.Finished.Length), from.body.less()))
	}
}
