package calc

import "capscye/units"

// Where a child's girths may end: the first percentile of adult arms (NHANES
// 2013-2014); of women's chests (ANSUR II); a bust of 32 in, up to which a small
// arm still speaks of a child (common practice, no source).
const (
	childsArm      = 230 * units.Millimetre
	childsBust     = 784 * units.Millimetre
	childsBustMost = 32 * units.Inch
)

// judgeBody says what is unlikely about the measurements themselves.
func (c *computation) judgeBody() {
	in := c.in
	c.judgeAnswers()
	if in.MeasuredLongAgo {
		c.find(Finding{Code: MeasuredLongAgo, About: OfSheet})
	}
	// More than 8 in between the two is no figure but a slip.
	if d := in.Bust.Length - in.HighBust.Length; in.Bust.Known && in.HighBust.Known && d >= 2*units.Inch && d <= 8*units.Inch {
		c.find(Finding{Code: SizeByHighBust, About: OfBust, Amount: d, Ways: c.frontTakesMore()})
	}
	if in.small() {
		c.find(Finding{Code: ChildsNightwear, About: OfSheet, Doubt: Doubt{Slips: c.grownUp()}})
	}
}

// frontTakesMore offers to give the front more of what the bust needs, or all of it, where
// the back has less to mark then: a pattern chosen by the high bust fits the back. Common
// practice, no source. A back that slides to match its sleeve gains as much all the same.
func (c *computation) frontTakesMore() []Way {
	if need := c.plan.Bust.Need; need.Or(0) <= 0 || c.in.Method.Armhole == KeepArmhole || c.plan.Open {
		return nil
	}
	tried := computation{tally: &tally{}, in: c.in}
	tried.in.Method.ShareBust = units.Share{Numerator: 1, Denominator: 1}
	tried.splits()
	tried.marks(BodiceBack)
	if tried.plan.Sides[BodiceBack].Marked() >= c.plan.Sides[BodiceBack].Marked() {
		return nil
	}
	return []Way{FrontTakesMore}
}

// grownUp lists the slips that would make a child's girths of a grown-up's.
func (c *computation) grownUp() (slips []Slip) {
	for _, slip := range []struct {
		slip        Slip
		times, over units.Length
	}{{InchesAsCentimetres, 254, 100}, {HalfAGirth, 2, 1}} {
		in := Input{Bicep: c.in.larger(), Bust: c.in.Bust}
		in.Bicep.Length = in.Bicep.Length * slip.times / slip.over
		in.Bust.Length = in.Bust.Length * slip.times / slip.over
		kept, h := true, hold(&in)
		h.of[GrownUp] = true
		for i := range Bounds {
			b := &Bounds[i]
			kept = kept && (b.For != GrownUp || b.kept(&h))
		}
		if kept {
			slips = append(slips, slip.slip)
		}
	}
	return slips
}

// larger is the larger arm, or the one that was measured.
func (in *Input) larger() units.Reading {
	if !in.Bicep.Known || in.BicepOther.Known && in.BicepOther.Length > in.Bicep.Length {
		return in.BicepOther
	}
	return in.Bicep
}

// small tells whether the girths that are known can be a child's: the arm
// decides where it was measured, unless the bust is no child's.
func (in *Input) small() bool {
	arm, bust := in.larger(), in.Bust
	if !arm.Known {
		return bust.Known && bust.Length < childsBust
	}
	return arm.Length < childsArm && (!bust.Known || bust.Length <= childsBustMost)
}

// child tells that the girths are held against a child's; a small bust alone may as
// well be a slip.
func (in *Input) child() bool { return in.small() && in.larger().Known }

// judgeSize says when sleeve and bust both need far more than pivots can give:
// more than twice what the limits allow. By how much larger the pattern should
// be is what the limits leave over.
func (c *computation) judgeSize() {
	p, m := c.plan, c.in.Method
	if !p.Sleeve.Asked() || !p.Bust.Asked() {
		return
	}
	sleeve, bust := p.Sleeve.Need.Length, p.Bust.Need.Length
	if can, could := 2*m.LimitSleeve, 4*m.LimitBodice; sleeve > 2*can && bust > 2*could {
		c.find(Finding{Code: StartLarger, Level: Warn, About: OfSheet, Amount: bust - could, Other: sleeve - can,
			Ways: []Way{OtherSize}})
	}
}
