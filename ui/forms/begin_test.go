package forms

import (
	"testing"

	"capscye/units"
	"capscye/worksheets"
)

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
