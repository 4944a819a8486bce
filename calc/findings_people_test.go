package calc_test

import (
	"capscye/calc"
	"capscye/units"
)

// What is to be said of the measurements as those of a person.

func slowPeople() []func(*slowSheet) {
	return []func(*slowSheet){sayMeasuredLongAgo, saySizeByHighBust, sayChildsNightwear}
}

// Measurements are taken again every six months: Texas Agricultural Extension Service,
// E-372.
func sayMeasuredLongAgo(s *slowSheet) {
	if s.MeasuredLongAgo {
		s.say(calc.Finding{Code: calc.MeasuredLongAgo, Level: calc.Note, About: calc.OfSheet})
	}
}

// A bust 2 in or more over the high bust: the smaller size, by the high bust (same
// source). A reading, ours: more than 8 in is no figure but a slip, and means no size.
func saySizeByHighBust(s *slowSheet) {
	more := s.Bust.Length - s.HighBust.Length
	if s.Bust.Known && s.HighBust.Known && more >= 2*units.Inch && more <= 8*units.Inch {
		s.say(calc.Finding{Code: calc.SizeByHighBust, Level: calc.Note, About: calc.OfBust, Amount: more})
	}
}

// peopleSpan is the smallest and the largest of a girth, in millimetres.
type peopleSpan struct{ low, high int64 }

// adults are those of open data: arms of NHANES 2013-2014, the bust of ANSUR II.
var adults = map[calc.Answer]peopleSpan{calc.Bicep: {178, 594}, calc.Bust: {695, 1469}}

// holds tells that a girth, so many times as large, is one that people have.
func (p peopleSpan) holds(l units.Length, times, over int64) bool {
	girth := exactly(l).times(exactly(times)).over(exactly(over))
	return !girth.less(exactly(p.low*int64(units.Millimetre))) && !exactly(p.high*int64(units.Millimetre)).less(girth)
}

// childlike tells that the girths can be a child's. Readings, on open data: an arm
// below the first percentile of adults (NHANES), unless the bust is over the 32 in up
// to which a small arm still speaks of a child (common practice, no source); without an arm
// a bust below the first percentile of women (ANSUR II).
func (s *slowSheet) childlike() bool {
	arm, bust := s.plan.Sleeve.Body, s.Bust
	if arm.Known {
		return arm.Length < 230*units.Millimetre && !(bust.Known && bust.Length > 32*units.Inch)
	}
	return bust.Known && bust.Length < 784*units.Millimetre
}

// Nightwear that is lawful because it fits a child tightly (16 CFR 1615.1(o), 1616.2(m))
// may not be so once widened. Where every girth would be a grown-up's but for one slip,
// that is asked.
func sayChildsNightwear(s *slowSheet) {
	if !s.childlike() {
		return
	}
	grown := func(times, over int64) bool {
		arm, bust := s.plan.Sleeve.Body, s.Bust
		return (!arm.Known || adults[calc.Bicep].holds(arm.Length, times, over)) && (!bust.Known || adults[calc.Bust].holds(bust.Length, times, over))
	}
	f := calc.Finding{Code: calc.ChildsNightwear, Level: calc.Note, About: calc.OfSheet}
	if grown(254, 100) {
		f.Slips = append(f.Slips, calc.InchesAsCentimetres)
	}
	if grown(2, 1) {
		f.Slips = append(f.Slips, calc.HalfAGirth)
	}
	s.say(f)
}
