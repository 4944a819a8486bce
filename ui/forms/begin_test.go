package forms

import (
	"testing"

	"capscye/units"
	"capscye/worksheets"
)

// The middle of what is usual in woven cloth, in inches and in half centimetres. Upper arm
// 2 in: common practice, no source. Bust 1 1/2 to 4 in: Robinson, ch. 16; NMSU Guide C-228,
// table 1; McCunn. Waist 3/4 to 1 in: Robinson, ch. 16. A pivot of 1 in at most, and rulers
// in 1/8 in and 1 mm: common practice, no source.
func TestBeginIsInTheMiddleOfTheUsual(t *testing.T) {
	inches, metric := Begin(units.Inches), Begin(units.Centimetres)
	for k, want := range map[worksheets.Key][2]string{
		worksheets.EaseBicep: {"2", "5.0"}, worksheets.EaseBust: {"2 3/4", "7.0"}, worksheets.EaseWaist: {"7/8", "2.0"},
		worksheets.PivotLimitSleeve: {"1", "2.5"}, worksheets.Ruler: {"1/8 in", "1 mm"},
	} {
		if got := [2]string{inches.Text(k), metric.Text(k)}; got != want {
			t.Errorf("%v: %q, want %q", k, got, want)
		}
	}
}
