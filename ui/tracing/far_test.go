package tracing_test

import (
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/tracing"
	"capscye/worksheets"
)

// A slide of over 4 in (10 cm) a side, a bound of ours, is not handed out as a job: an arm
// of 365 cm is a lost point, and nobody marks 162 cm.
func TestASlideThatNoHandWouldMakeIsNoJob(t *testing.T) {
	r := props.ReportOf(t, "choir-blouse")
	for bicep, steps := range map[string]bool{"13 3/4": true, "21 1/8": true, "21 1/4 in": true, "22": false, "365 cm": false} {
		s := r.Sheet
		s.Set(worksheets.Bicep, bicep)
		s.Set(worksheets.BicepOther, "")
		text := tracing.Text(r.With(s))
		if strings.Contains(text, "mark the pivot") != steps || strings.Contains(text, "Do not cut") == steps {
			t.Errorf("%s:\n%s", bicep, text)
		}
	}
}
