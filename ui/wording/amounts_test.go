package wording

import (
	"testing"

	"capscye/units"
)

// What is marked off is said as it was measured, whatever ruler the sheet has.
func TestWhatIsMarkedOffIsNotRounded(t *testing.T) {
	quarters := units.Scale{System: units.Inches, Ruler: units.QuarterInch}
	metric := units.Scale{System: units.Centimetres, Ruler: units.FiveMillimetres}
	for _, c := range []struct {
		l    units.Length
		sc   units.Scale
		want string
	}{
		{5 * units.Inch / 8, quarters, "5/8 in"}, {units.Inch / 2, quarters, "1/2 in"}, {15 * units.Millimetre, quarters, "1.5 cm"},
		{units.Inch / 3, quarters, "~0.333 in"},
		{15 * units.Millimetre, metric, "1.5 cm"}, {units.Centimetre, metric, "1.0 cm"}, {125 * units.Millimetre / 10, metric, "1.25 cm"},
		{5 * units.Inch / 8, metric, "5/8 in"},
	} {
		if got := MarkedOff(c.l, c.sc); got != c.want {
			t.Errorf("%v is %q, want %q", c.l, got, c.want)
		}
	}
}

// A change has its sign, and one that is shown as nothing has none.
func TestAChangeHasItsSign(t *testing.T) {
	sc := units.Scale{System: units.Inches, Ruler: units.EighthInch}
	for l, want := range map[units.Length]string{
		units.Inch / 4: "+1/4", -units.Inch / 4: "-1/4", 0: "0", 1: "~0",
	} {
		if got := Signed(l, sc); got != want {
			t.Errorf("a change of %v is %q, want %q", l, got, want)
		}
	}
}
