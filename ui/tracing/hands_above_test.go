package tracing_test

import (
	"strings"
	"testing"
)

// An underarm corner that lies 1/2 in outside the pin swings past it when it comes in by
// 1 1/4 in, and up again: 3/4 in inside the pin it lies higher than it did.
func TestHandsTurnACornerPastItsPin(t *testing.T) {
	for _, slide := range []string{"least", "-1/4"} {
		s := sheet{
			"about.ruler": "1/16 in", "body.bust": "36", "ease.bust": "3", "bodice.measured": "seam", "bodice.front": "11", "bodice.back": "11",
			"bodice.side_seam": "8", "bodice.waist_front": "9 1/2", "bodice.waist_back": "9 1/2", "method.pivot_limit_bodice": "1 1/4", "method.slide": slide,
		}
		for _, side := range []string{"front", "back"} {
			s["bodice.corner_out_"+side], s["bodice.corner_down_"+side], s["bodice.armhole_"+side] = "1/2", "7", "7 3/8"
		}
		if slide != "least" {
			s["body.bust"] = "35"
		}
		tr := trace(s, newProgram(t).ask(s), cut(s, false))
		tr.judge()
		for _, f := range tr.faults {
			t.Errorf("slide %s: %s", slide, f)
		}
		if len(tr.faults) > 0 || strings.Count(tr.answer.printed, "straight above") != map[string]int{"least": 1, "-1/4": 2}[slide] {
			t.Errorf("%s", tr.answer.printed)
		}
	}
}
