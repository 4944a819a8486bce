package screen

import (
	"strings"
	"testing"

	"capscye/ui/internal/props"
)

// A bust that grows unasked: the page offers the smallest changes with their
// prices, and a chosen one lies beside the sheet as a what-if, the file untouched.
// The sleeve needs 15 + 1 3/4 - 13 = 3 3/4, 1 7/8 a side: 7/8 more than pivots.
func TestWhatWouldMakeItWork(t *testing.T) {
	for _, size := range []struct{ width, height int }{{80, 24}, {120, 40}, {60, 16}} {
		r := sitWithFile(t, "choir-blouse", size.width, size.height)
		r.Types("15").Press("enter", "tab", "delete", "enter", "f5").Sees("The bust was not asked, but grows by 3 1/2 in")
		before := props.Read(t, "sheet.toml")
		r.Press("w").Fits().Sees("What would make it work", " 1  Ease at the bicep: 0 in instead of 1 3/4 in.")
		r.Press("down", "enter").Fits().Sees("copy 1 of 1, not kept").Press("ctrl+x").Fits().Sees("what a following piece does")
		if size.height >= 24 {
			r.Sees("new   check: Held: a bodice side turns against its need, by 7/8 in", "gone  check: The bust was not asked")
		}
		if props.Read(t, "sheet.toml") != before {
			t.Error("a what-if was saved")
		}
		r.Press("k").Sees("[saved]")
		if got := props.Read(t, "sheet.toml"); !strings.Contains(got, `follow  = "hold"`) {
			t.Errorf("kept, the file is\n%s", got)
		}
	}
}

// A number takes an offer too; what is no offer goes back; a sound sheet has none.
func TestOffersByNumber(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("f5", "w").Sees("5 MATCH").DoesNotSee("What would make it work")
	r.Press("f4", "shift+tab", "right", "f5", "w").Sees("With the bodice kept, the bust comes out 2 1/2 in short", "Ease at the bust: 1/2 in instead of 3 in")
	r.Press("9").Sees("5 MATCH").Press("w", "1", "f2").Sees("copy 1 of 1", "At the bust         1/2 in", "Check this first: the armhole is kept").Press("ctrl+x").Sees("gone  stop: With the bodice kept")
}
