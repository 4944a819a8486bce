package calc

import "capscye/units"

// Slip is a usual mistake in typing a girth.
type Slip uint8

// The slips.
const (
	CentimetresAsInches Slip = iota
	InchesAsCentimetres
	HalfAGirth
	ArmAsBust
)

// GirthRange is what was measured on people.
type GirthRange struct {
	Low, High units.Length
	Source    string
}

const (
	nhanes = "NHANES 2013-2014, age 20 and over, third-party copy"
	ansur  = "ANSUR II, 6,068 soldiers, fitter than most people"
)

// UsualGirth is the smallest and the largest of a girth among adults in open
// data: National Center for Health Statistics, NHANES 2013-2014; 2012
// Anthropometric Survey of U.S. Army Personnel, Gordon et al., NATICK/TR-15/007
// (2014). The waist is a band that refuses no adult in these data. ok is false
// for what nobody measured.
func UsualGirth(a Answer) (r GirthRange, ok bool) {
	mm := func(low, high units.Length, source string) (GirthRange, bool) {
		return GirthRange{low * units.Millimetre, high * units.Millimetre, source}, true
	}
	switch a {
	case Bicep, BicepOther:
		return mm(178, 594, nhanes)
	case Bust:
		return mm(695, 1469, ansur)
	case Waist:
		return mm(500, 1900, "a band that refuses no adult of ANSUR II or NHANES")
	case Hip:
		return mm(737, 1341, ansur)
	case Wrist:
		return mm(124, 216, ansur)
	}
	return GirthRange{}, false
}

// Where a child's girths may end: the first percentile of adult arms (NHANES
// 2013-2014); of women's chests (ANSUR II); a bust of 32 in, up to which a small
// arm still speaks of a child (common practice, no source); and the smallest arm
// of any child (NHANES 2013-2014, from birth).
const (
	childsArm      = 230 * units.Millimetre
	childsBust     = 784 * units.Millimetre
	childsBustMost = 32 * units.Inch
	smallestOfAll  = 104 * units.Millimetre
)

// judgeBody says what is unlikely about the measurements themselves.
func (c *computation) judgeBody() {
	in := c.in
	small, exchanged := c.small(), c.exchanged()
	child := small && c.plan.Sleeve.Body.Known // a small bust alone may as well be a slip
	for _, g := range []struct {
		answer Answer
		girth  units.Reading
	}{{Bicep, in.Bicep}, {BicepOther, in.BicepOther}, {Bust, in.Bust}, {Waist, in.Waist}, {Hip, in.Hip}, {Wrist, in.Wrist}} {
		if g.girth.Known && !(exchanged && g.answer <= Bust) {
			c.judgeGirth(g.answer, g.girth.Length, child)
		}
	}
	c.judgeProportion()
	if in.MeasuredLongAgo {
		c.find(Finding{Code: MeasuredLongAgo, About: OfSheet})
	}
	// More than 8 in between the two is no figure but a slip.
	if d := in.Bust.Length - in.HighBust.Length; in.Bust.Known && in.HighBust.Known && d >= 2*units.Inch && d <= 8*units.Inch {
		c.find(Finding{Code: SizeByHighBust, About: OfBust, Amount: d, Ways: c.frontTakesMore()})
	}
	if small {
		c.find(Finding{Code: ChildsNightwear, About: OfSheet, Slips: c.grownUp()})
	}
}

// frontTakesMore offers to give the front more of what the bust needs, or all of it: a
// pattern chosen by the high bust fits the back. Common practice, no source.
func (c *computation) frontTakesMore() []Way {
	need, share := c.plan.Bust.Need, c.in.Method.ShareBust
	if need.Or(0) <= 0 || c.in.Method.Armhole == KeepArmhole || share.Numerator >= share.Denominator {
		return nil
	}
	return []Way{FrontTakesMore}
}

// exchanged tells that arm and bust fit people only the other way round.
func (c *computation) exchanged() bool {
	arm, bust := c.plan.Sleeve.Body, c.in.Bust
	arms, _ := UsualGirth(Bicep)
	busts, _ := UsualGirth(Bust)
	return arm.Known && bust.Known && arm.Length > bust.Length && arms.holds(bust.Length) && busts.holds(arm.Length)
}

// grownUp lists the slips that would make a child's girths of a grown-up's.
func (c *computation) grownUp() (slips []Slip) {
	arms, _ := UsualGirth(Bicep)
	busts, _ := UsualGirth(Bust)
	fits := func(times, over units.Length) bool {
		arm, bust := c.plan.Sleeve.Body, c.in.Bust
		return (!arm.Known || arms.holds(arm.Length*times/over)) && (!bust.Known || busts.holds(bust.Length*times/over))
	}
	if fits(254, 100) {
		slips = append(slips, InchesAsCentimetres)
	}
	if fits(2, 1) {
		slips = append(slips, HalfAGirth)
	}
	return slips
}

func (r GirthRange) holds(l units.Length) bool { return r.Low <= l && l <= r.High }

// small tells whether the girths that are known can be a child's: the arm
// decides where it was measured, unless the bust is no child's.
func (c *computation) small() bool {
	arm, bust := c.plan.Sleeve.Body, c.in.Bust
	if !arm.Known {
		return bust.Known && bust.Length < childsBust
	}
	return arm.Length < childsArm && (!bust.Known || bust.Length <= childsBustMost)
}

// judgeGirth holds a girth against what was measured on people, and guesses at
// the slip.
func (c *computation) judgeGirth(a Answer, girth units.Length, child bool) {
	r, ok := UsualGirth(a)
	if child {
		ok, r.Low = a == Bicep || a == BicepOther, smallestOfAll
	}
	if !ok || r.holds(girth) {
		return
	}
	f := Finding{Code: GirthUnusual, About: OfSheet, Answer: a, Amount: girth}
	if other, _ := UsualGirth(Bust); (a == Bicep || a == BicepOther) && !c.in.Bust.Known && other.holds(girth) {
		f.Slips = append(f.Slips, ArmAsBust)
	}
	if r.holds(girth * 100 / 254) {
		f.Slips = append(f.Slips, CentimetresAsInches)
	}
	if r.holds(girth * 254 / 100) {
		f.Slips = append(f.Slips, InchesAsCentimetres)
	}
	if r.holds(2 * girth) {
		f.Slips = append(f.Slips, HalfAGirth)
	}
	c.find(f)
}

// judgeProportion asks whether arm and bust were exchanged. Upper arm over
// chest lies between 0.258 and 0.423 for all 6,068 people of ANSUR II.
func (c *computation) judgeProportion() {
	arm, bust := c.plan.Sleeve.Body, c.in.Bust
	if !arm.Known || !bust.Known {
		return
	}
	if a, b := 100*arm.Length, bust.Length; a < 25*b || a > 45*b {
		c.find(Finding{Code: ArmForBust, About: OfSheet, Amount: arm.Length, Other: bust.Length})
	}
}

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
