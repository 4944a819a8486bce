package calc_test

import (
	"strings"

	"capscye/calc"
	"capscye/units"
)

// findingsDice makes sheets on which every finding turns up: nearly everything is
// measured and nearly everything fits together, and here and there something does not.
type findingsDice struct{ oracleDice }

func (d findingsDice) input() calc.Input {
	const in = units.Inch
	s := calc.Input{
		Fabric: calc.Fabric(d.IntN(2)), Ruler: units.Rulers()[d.IntN(len(units.Rulers()))],
		MeasuredLongAgo: d.chance(5), Unread: d.chance(2), Method: d.method(),
	}
	s.Method.Armhole = calc.Armhole(d.IntN(3) / 2)
	s.Method.TaperFrom = calc.TaperFrom(d.IntN(2))
	if d.chance(60) { // the commonest pattern: front and back alike
		s.Method.ShareSleeve, s.Method.ShareBust = units.Half, units.Half
	}
	if d.chance(50) {
		s.Method.LimitSleeve, s.Method.LimitBodice = in, in
	}
	if d.chance(3) {
		s.Method.LimitSleeve, s.Method.LimitBodice = 30*in, 30*in
	}
	d.sleeve(&s)
	d.bodice(&s)
	d.girths(&s)
	if d.chance(70) {
		d.typed(&s)
	}
	return s
}

// typed writes the answers down as a person would, and of some sheets one wrongly.
func (d findingsDice) typed(s *calc.Input) {
	t := &calc.Typed{Unit: []units.System{units.Inches, units.Centimetres}[d.IntN(2)]}
	s.Typed = t
	sc := units.Scale{System: t.Unit, Ruler: s.Ruler}
	var written []calc.Answer
	for a := calc.Bicep; a < calc.AnswerCount; a++ {
		if r, measured := where[a]; measured && r(s).Known {
			t.Texts[a] = sc.Exact(r(s).Length) // of some it cannot be written
			if l, err := units.Parse(t.Texts[a], t.Unit); err == nil && l == r(s).Length {
				written = append(written, a)
			}
		}
	}
	if len(written) == 0 || !d.chance(50) {
		return
	}
	a := written[d.IntN(len(written))]
	text := t.Texts[a]
	switch i := d.IntN(len(text)); {
	case d.chance(30):
		text = strings.Replace(text, ".", "", 1)
	case d.chance(30):
		text = strings.Replace(text, " ", "", 1) // 141/2
	case d.chance(50) && isDigit(text[i]):
		text = text[:i+1] + text[i:]
	case i > 0 && isDigit(text[i]) && isDigit(text[i-1]):
		text = text[:i-1] + text[i:i+1] + text[i-1:i] + text[i+1:]
	}
	if l, err := units.Parse(text, t.Unit); err == nil {
		t.Texts[a], where[a](s).Length = text+strings.Repeat(" ", d.IntN(2)), l
	}
}

// sleeve lays out a sleeve: the cap's seam about as long as its side asks for, the seam
// below leaning in a little.
func (d findingsDice) sleeve(s *calc.Input) {
	const in = units.Inch
	width, height := d.length(9*in, 18*in), d.length(3*in, 7*in)
	if d.chance(4) {
		height = d.length(in/8, in) // hardly a cap at all
	}
	allowance := d.length(0, in)
	if d.chance(4) {
		allowance = d.length(4*in, 10*in)
	}
	below := d.length(3*in, 20*in)
	s.Sleeve = calc.SleeveInput{
		Style: calc.SleeveStyle(d.IntN(3)), Long: d.chance(60),
		Width: d.maybe(96, width), Measured: d.measured(), Allowance: d.maybe(93, allowance),
		CapHeight: d.maybe(88, height), UnderarmSeam: d.maybe(85, below),
		HemWidth: d.maybe(85, width-d.length(-in, 5*in)), ElbowWidth: d.maybe(60, width-d.length(-in, 4*in)),
		CapFront: d.maybe(90, d.across(width/2, height)), CapBack: d.maybe(90, d.across(width/2, height)),
	}
	s.Sleeve.LengthAssumed = !s.Sleeve.Long && d.chance(30)
	if d.chance(3) {
		s.Sleeve.UnderarmSeam = units.Known(d.length(0, in))
	}
}

// across is a seam that reaches over a side so wide and so tall; seldom it does not.
func (d findingsDice) across(wide, tall units.Length) units.Length {
	least := max(wide, tall) + min(wide, tall)/3
	if d.chance(5) {
		return d.length(0, 2*(wide+tall))
	}
	return d.length(least, max(least, wide+tall))
}

// bodice lays out a front and a back.
func (d findingsDice) bodice(s *calc.Input) {
	const in = units.Inch
	front, back := d.length(7*in, 13*in), d.length(7*in, 13*in)
	allowance := d.length(0, in)
	if d.chance(2) {
		allowance = d.length(4*in, 10*in)
	}
	b := &s.Bodice
	*b = calc.BodiceInput{
		Front: d.maybe(96, front), Back: d.maybe(96, back),
		Measured: d.measured(), Allowance: d.maybe(93, allowance), Crossings: d.IntN(3), LikeSleeve: d.chance(20),
		TakeOffFront: d.maybe(20, d.length(0, 2*in)), TakeOffBack: d.maybe(20, d.length(0, in)),
		FinishedBust:   d.maybe(10, d.length(-in, 50*in)),
		CornerOutFront: d.maybe(85, d.length(in/2, 4*in)), CornerDownFront: d.maybe(90, d.length(5*in, 9*in)),
		CornerOutBack: d.maybe(85, d.length(in/2, 4*in)), CornerDownBack: d.maybe(90, d.length(5*in, 9*in)),
		SideSeam: d.maybe(85, d.length(6*in, 10*in)), BustDown: d.maybe(70, d.length(0, 3*in)),
		WaistFront: d.maybe(80, front-d.length(-in/2, 2*in)), WaistBack: d.maybe(80, back-d.length(-in/2, 2*in)),
		HipFront: d.maybe(30, front+d.length(-in, 2*in)), HipBack: d.maybe(30, back+d.length(-in, 2*in)),
	}
	if d.chance(25) { // both sides cut alike
		b.CornerOutBack, b.CornerDownBack = b.CornerOutFront, b.CornerDownFront
	}
	if d.chance(3) {
		b.CornerDownFront = units.Known(d.length(in/8, in))
	}
	if d.chance(5) {
		b.SideSeam = units.Known(d.length(0, 3*in))
	}
	if d.chance(2) {
		b.BustDown = units.Known(b.SideSeam.Length + d.length(0, 2*in))
	}
	if d.chance(25) {
		b.BustDown.Length = 0
	}
	b.ArmholeFront = d.maybe(90, d.armhole(s.Sleeve.CapFront.Length, b.CornerOutFront.Length, b.CornerDownFront.Length))
	b.ArmholeBack = d.maybe(90, d.armhole(s.Sleeve.CapBack.Length, b.CornerOutBack.Length, b.CornerDownBack.Length))
}

// armhole is about as long as the half-cap that is sewn into it, or as its own corner
// asks for.
func (d findingsDice) armhole(halfCap, out, down units.Length) units.Length {
	if d.chance(50) {
		return d.across(out, down)
	}
	return halfCap - d.length(-units.Inch/8, units.Inch)
}

// girths measures a body that the pattern more or less fits.
func (d findingsDice) girths(s *calc.Input) {
	const in = units.Inch
	bicepEase, bustEase := d.length(-in, 4*in), d.length(-2*in, 6*in)
	flatSleeve := oracleSleeveFlat(s.Sleeve).or(exactly(12 * in)).length()
	flatBust := oracleBustFlat(s.Bodice).or(exactly(38 * in)).length()
	bicep, bust := flatSleeve-bicepEase+d.need(5*in), flatBust-bustEase+d.need(8*in)
	switch {
	case d.chance(4):
		bicep, bust = bust, bicep
	case d.chance(8): // a child
		bicep, bust = d.length(5*in, 10*in), d.length(18*in, 30*in)
	case d.chance(3): // typed in the other unit, or halved
		bicep, bust = bicep*254/100, bust*254/100
	case d.chance(3):
		bicep, bust = bicep*100/254, bust*100/254
	case d.chance(3):
		bust /= 2
	}
	s.Bicep, s.BicepOther = d.maybe(85, bicep), d.maybe(20, bicep+d.length(-in, in))
	s.Bust, s.HighBust = d.maybe(80, bust), d.maybe(40, bust-d.length(-in, 10*in))
	s.BicepEase, s.BustEase = d.maybe(96, bicepEase), d.maybe(96, bustEase)
	s.Waist, s.WaistEase = d.maybe(60, bust-d.length(0, 12*in)), d.maybe(80, d.length(-in, 4*in))
	s.Hip, s.HipEase = d.maybe(60, bust+d.length(-4*in, 4*in)), d.maybe(80, d.length(-in, 4*in))
	s.Elbow, s.ElbowEase = d.maybe(60, flatSleeve-d.length(0, 5*in)), d.maybe(80, d.length(-in, 3*in))
	s.Wrist, s.WristEase = d.maybe(60, d.length(4*in, 12*in)), d.maybe(80, d.length(-in, 4*in))
	if d.chance(2) {
		s.Bicep.Known, s.BicepOther.Known, s.Bust.Known = false, false, false
	}
}
