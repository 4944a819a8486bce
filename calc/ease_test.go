package calc_test

import (
	"testing"

	"capscye/calc"
	"capscye/units"
)

// The middle of 1 1/2 to 4 in (Robinson, ch. 16; NMSU Guide C-228; McCunn) is
// 2 3/4; of 3/4 to 1 in at a dress waist 7/8; of 2 to 2 3/4 at the hip 2 3/8.
func TestMiddleEase(t *testing.T) {
	for place, want := range map[calc.Place]string{
		calc.AtBicep: "2", calc.AtBust: "2 3/4", calc.AtWaist: "7/8", calc.AtHip: "2 3/8", calc.AtElbow: "1", calc.AtWrist: "1",
	} {
		if got := calc.MiddleEase(place, calc.Woven); got != in(want) {
			t.Errorf("place %d: %v, want %s in", place, got, want)
		}
		if got := calc.MiddleEase(place, calc.Knit); got != 0 {
			t.Errorf("knit: %v; little or none", got)
		}
	}
}

// An armhole of 16 1/2 in takes a cap seam of 17 1/4 (McCunn, How to Make
// Sewing Patterns, p. 74): cap ease 3/4 in, which the set-in range has to hold.
func TestUsualCapEase(t *testing.T) {
	setIn := calc.UsualCapEase(calc.SetIn, calc.Woven)
	if ease := in("17 1/4") - in("16 1/2"); ease < setIn.Low || ease > setIn.High {
		t.Errorf("%v is outside %v to %v", ease, setIn.Low, setIn.High)
	}
	for _, style := range []calc.SleeveStyle{calc.SetIn, calc.Shirt, calc.Gathered} {
		for _, fabric := range []calc.Fabric{calc.Woven, calc.Knit} {
			if r := calc.UsualCapEase(style, fabric); r.Low < 0 || r.Bounded && r.High < r.Low {
				t.Errorf("style %d, fabric %d: never less than none: %v", style, fabric, r)
			}
		}
	}
	if got := calc.UsualCapEase(calc.SetIn, calc.Knit).High; got != in("3/4") {
		t.Errorf("knits take 0 to 3/4 in, not %v", got)
	}
}

// A knit is taken from nothing down to an inch less than the body.
func TestTheUsualEaseIsWhatAllSourcesSpan(t *testing.T) {
	for fabric, want := range map[calc.Fabric][2]units.Length{
		calc.Woven: {3 * units.Inch / 2, 4 * units.Inch}, calc.Knit: {-units.Inch, 0},
	} {
		if low, high := calc.EaseSpan(calc.AtBust, fabric); [2]units.Length{low, high} != want {
			t.Errorf("fabric %d: %v to %v, want %v", fabric, low, high, want)
		}
	}
}
