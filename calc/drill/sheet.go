package drill

import (
	"capscye/calc"
	"capscye/units"
)

// ranges are what the measurements of a problem are drawn from, counted in
// marks of its ruler, so that everything measured lies on a mark.
type ranges struct {
	ruler        units.Ruler
	armLow       int // the smallest upper arm
	armHigh      int
	bustLow      int
	bustHigh     int
	allowances   []int
	sleeveLimits []int
	bodiceLimits []int
}

// Arms of 10 to 18 in, and busts in proportion to them: upper arm over chest
// lies between 0.258 and 0.423 for all 6,068 people of ANSUR II. A seam
// allowance of 5/8 in (1.5 cm) is what most patterns have.
var (
	inInches = ranges{
		ruler: units.EighthInch, armLow: 80, armHigh: 144, bustLow: 240, bustHigh: 448,
		allowances: []int{5, 5, 5, 4, 3}, sleeveLimits: []int{8, 8, 6}, bodiceLimits: []int{8, 6, 4},
	}
	inCentimetres = ranges{
		ruler: units.FiveMillimetres, armLow: 52, armHigh: 90, bustLow: 152, bustHigh: 284,
		allowances: []int{3, 3, 2}, sleeveLimits: []int{5, 5, 4}, bodiceLimits: []int{5, 4, 3},
	}
)

// sheet draws the measurements of a problem. They are drawn from the answer
// back, girth and need first and the pattern last, so that everything asked can
// be written: half a mark where front and back are alike, a fifth of one else.
func (d dice) sheet(level int) calc.Input {
	r := inInches
	if level == metricLevel {
		r = inCentimetres
	}
	in := calc.Input{Ruler: r.ruler, Method: calc.UsualMethod()}
	if level >= 4 {
		in.Method.LimitSleeve, in.Method.LimitBodice = r.marks(d.one(r.sleeveLimits...)), r.marks(d.one(r.bodiceLimits...))
	}
	if level == metricLevel {
		in.Method.ShareSleeve = units.Share{Numerator: int64(d.one(2, 3)), Denominator: 5}
		in.Method.ShareBust = units.Share{Numerator: int64(d.one(2, 3)), Denominator: 5}
	}
	arm := d.between(r.armLow, r.armHigh)
	bust := d.between(arm*11/4, arm*13/4)
	bust = min(max(bust, r.bustLow), r.bustHigh) / 2 * 2
	if level != otherCases {
		d.drawSleeve(&in, r, level, arm, d.sleeveNeed(in, level))
		d.drawBodice(&in, r, level, bust, d.bodiceNeed(in, level))
		return in
	}
	switch d.between(0, 2) {
	case 0:
		d.drawSleeve(&in, r, level, arm, -2*d.between(2, 6))
		d.drawBodice(&in, r, level, bust, -4*d.between(1, 6))
	case 1:
		in.Method.Slide = calc.SlideEven
		d.drawSleeve(&in, r, level, arm, 4*d.between(2, 6))
		d.drawBodice(&in, r, level, bust, 4*d.between(1, 6))
	case 2:
		d.drawKept(&in, r, arm)
	}
	return in
}

// drawKept draws a sleeve for an armhole that is cut, around which a cap has half an
// inch of ease to one inch, so that it can take some more; see [calc.UsualCapEase].
// An armhole measures some 5/4 of the arm.
func (d dice) drawKept(in *calc.Input, r ranges, arm int) {
	in.Method.Armhole = calc.KeepArmhole
	armhole, ease := arm*5/4/2*2, 2*d.between(2, 4)
	most := int(calc.UsualCapEase(calc.SetIn, calc.Woven).High / r.ruler.Mark())
	d.drawSleeve(in, r, otherCases, arm, 2*int(in.Method.LimitSleeve/r.ruler.Mark())+d.between(1, most-ease))
	front := armhole/2 - d.between(0, 3)
	in.Bodice.ArmholeFront, in.Bodice.ArmholeBack = r.known(front), r.known(armhole-front)
	in.Sleeve.CapFront, in.Sleeve.CapBack = r.known(front+ease/2), r.known(armhole-front+ease/2)
}

func (r ranges) marks(n int) units.Length { return units.Length(n) * r.ruler.Mark() }

func (r ranges) known(n int) units.Reading { return units.Known(r.marks(n)) }

// sleeveNeed draws what a sleeve needs, in marks.
func (d dice) sleeveNeed(in calc.Input, level int) int {
	switch {
	case level == metricLevel:
		return d.between(10, 18)
	case level == 4: // beyond the limit by up to half an inch a side
		return 2*int(in.Method.LimitSleeve/in.Ruler.Mark()) + d.between(1, 8)
	}
	return d.between(4, 16)
}

// bodiceNeed draws what a bodice needs, in marks.
func (d dice) bodiceNeed(in calc.Input, level int) int {
	switch {
	case level == metricLevel:
		return 2 * d.between(4, 14)
	case level == 4:
		return 2 * d.between(2, 2*int(in.Method.LimitBodice/in.Ruler.Mark())+4)
	}
	return 2 * d.between(2, 16)
}

// drawSleeve draws arm and sleeve. The ease is what is usual, and up to four
// marks more for looks.
func (d dice) drawSleeve(in *calc.Input, r ranges, level, arm, need int) {
	mark := r.ruler.Mark()
	ease := int(calc.MiddleEase(calc.AtBicep, calc.Woven).Round(mark)/mark) + d.between(0, 4)
	in.Bicep, in.BicepEase = r.known(arm), r.known(ease)
	if other := arm - d.between(1, 4); level >= 4 && d.between(0, 1) == 0 {
		in.BicepOther = r.known(other)
		if d.between(0, 1) == 0 {
			in.Bicep, in.BicepOther = in.BicepOther, in.Bicep
		}
	}
	s := &in.Sleeve
	s.Measured = d.measured(level)
	allowance := d.one(r.allowances...)
	s.Allowance = r.known(allowance)
	width := arm + ease - need
	if s.Measured == calc.EdgeToEdge {
		width += 2 * allowance
	}
	s.Width = r.known(width)
}

// measured draws between what the tape lay; for the first level allowances have to be
// taken off.
func (d dice) measured(level int) calc.Measured {
	if level == 1 || d.between(0, 3) > 0 {
		return calc.EdgeToEdge
	}
	return calc.SeamToSeam
}

// drawBodice draws bust and bodice, with a front as wide as the back or wider. The
// ease is within what is usual. Everything around the body is an even number of
// marks, so that half of it is on a mark.
func (d dice) drawBodice(in *calc.Input, r ranges, level, bust, need int) {
	mark := r.ruler.Mark()
	low, high := usualSpan(calc.AtBust)
	ease := 2 * d.between(int((low+2*mark-1)/(2*mark)), int(high/(2*mark)))
	in.Bust, in.BustEase = r.known(bust), r.known(ease)
	half := (bust + ease - need) / 2
	back := (half - d.between(0, 6)) / 2
	front := half - back

	b := &in.Bodice
	b.Measured = d.measured(level)
	allowance := d.one(r.allowances...)
	b.Allowance, b.Crossings = r.known(allowance), d.one(1, 1, 2)
	if b.Measured == calc.EdgeToEdge {
		front, back = front+b.Crossings*allowance, back+b.Crossings*allowance
	}
	if d.between(0, 1) == 0 {
		dart := d.between(2, 6)
		b.TakeOffFront, front = r.known(dart), front+dart
	}
	if d.between(0, 3) == 0 {
		pleat := d.between(2, 6)
		b.TakeOffBack, back = r.known(pleat), back+pleat
	}
	b.Front, b.Back = r.known(front), r.known(back)
}

// usualSpan is what all sources of [calc.UsualEase] span, for woven cloth.
func usualSpan(at calc.Place) (low, high units.Length) {
	for i, r := range calc.UsualEase(at, calc.Woven) {
		if i == 0 {
			low, high = r.Low, r.High
		}
		low, high = min(low, r.Low), max(high, r.High)
	}
	return low, high
}
