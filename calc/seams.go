package calc

import "capscye/units"

// Seams are the two seams that are sewn together, over front and back, on
// their seam lines.
type Seams struct {
	CapBefore, CapAfter         units.Reading
	ArmholeBefore, ArmholeAfter units.Reading
	CapEaseBefore, CapEaseAfter units.Reading // cap - armhole
}

// seamsBefore adds up what was measured.
func (c *computation) seamsBefore() {
	s, b, p := c.in.Sleeve, c.in.Bodice, &c.plan.Seams
	if s.CapFront.Known && s.CapBack.Known {
		p.CapBefore = units.Known(c.sum(Figure{OfSleeve, CapSeam},
			typed(CapFront, s.CapFront.Length), typed(CapBack, s.CapBack.Length)))
	}
	if b.ArmholeFront.Known && b.ArmholeBack.Known {
		p.ArmholeBefore = units.Known(c.sum(Figure{OfBust, ArmholeSeam},
			typed(ArmholeFront, b.ArmholeFront.Length), typed(ArmholeBack, b.ArmholeBack.Length)))
	}
	p.CapEaseBefore = c.capEase(CapEase, p.CapBefore, p.ArmholeBefore, CapSeam, ArmholeSeam)
}

// seamsAfter adds the slides: cap and armhole get longer by what their own
// sides slide, so the cap ease stays where both are altered.
func (c *computation) seamsAfter() {
	p := &c.plan.Seams
	after := func(before units.Reading, of Subject, was, is Quantity, front, back Side) units.Reading {
		if !before.Known {
			return units.Reading{}
		}
		return units.Known(c.sum(Figure{of, is}, computed(of, was, before.Length),
			c.slideTerm(front), c.slideTerm(back)))
	}
	p.CapAfter = after(p.CapBefore, OfSleeve, CapSeam, CapSeamAfter, SleeveFront, SleeveBack)
	p.ArmholeAfter = after(p.ArmholeBefore, OfBust, ArmholeSeam, ArmholeSeamAfter, BodiceFront, BodiceBack)
	p.CapEaseAfter = c.capEase(CapEaseAfter, p.CapAfter, p.ArmholeAfter, CapSeamAfter, ArmholeSeamAfter)
	c.judgeCapEase()
}

// slideTerm is what a side slides; a kept bodice slides by nothing of its own.
func (c *computation) slideTerm(s Side) Term {
	slide := c.plan.Sides[s].Slide
	if slide == 0 {
		return constant(0)
	}
	return computed(s.Half().Subject(), Slide, slide)
}

// HalfSeams are the measured halves of cap and armhole, by side.
func (in Input) HalfSeams() [4]units.Reading {
	return [...]units.Reading{in.Sleeve.CapFront, in.Sleeve.CapBack, in.Bodice.ArmholeFront, in.Bodice.ArmholeBack}
}
