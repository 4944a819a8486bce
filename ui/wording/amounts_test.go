package wording

import (
	"testing"

	"capscye/units"
)

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
