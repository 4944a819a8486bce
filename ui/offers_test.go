package ui

import (
	"strings"
	"testing"

	"capscye/ui/report"
	"capscye/worksheets"
)

// A bust that grows unasked: the page offers the smallest changes with their
// prices, and a chosen one lies beside the sheet as a what-if, the file untouched.
// The sleeve needs 15 + 1 3/4 - 13 = 3 3/4, 1 7/8 a side: 7/8 more than pivots.
func TestWhatWouldMakeItWork(t *testing.T) {
	for _, size := range []struct{ width, height int }{{80, 24}, {120, 40}, {60, 16}} {
		r := sitWithFile(t, "choir-blouse", size.width, size.height)
		r.types("15").press("enter", "tab", "delete", "enter", "f5").sees("The bust was not asked, but grows by 3 1/2 in")
		before := read(t, "sheet.toml")
		r.press("w").fits().sees("What would make it work", " 1  Ease at the bicep: 0 in instead of 1 3/4 in.")
		r.press("down", "enter").fits().sees("copy 1 of 1, not kept").press("ctrl+x").fits().sees("what a following piece does")
		if size.height >= 24 {
			r.sees("went  warn: The bust was not asked", "came  warn: Held: a bodice side turns against its need, by 7/8 in")
		}
		if read(t, "sheet.toml") != before {
			t.Error("a what-if was saved")
		}
		r.press("k").sees("[saved]")
		if got := read(t, "sheet.toml"); !strings.Contains(got, `follow  = "hold"`) {
			t.Errorf("kept, the file is\n%s", got)
		}
	}
}

// A number takes an offer too; what is no offer goes back; a sound sheet has none.
func TestOffersByNumber(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).press("f5", "w").sees("5 MATCH").doesNotSee("What would make it work")
	r.press("f4", "shift+tab", "right", "f5", "w").sees("With the bodice kept, the bust comes out 2 1/2 in short", "Ease at the bust: 1/2 in instead of 3 in")
	r.press("9").sees("5 MATCH").press("w", "1", "f2").sees("copy 1 of 1", "At the bust         1/2 in", "went  stop: With the bodice kept")
}

// Every offer on every example, made troublesome in many ways, is a whole sheet
// that reads, and keeps every answer but one.
func TestOffersChangeOneAnswer(t *testing.T) {
	for _, name := range worksheets.Examples() {
		for _, change := range []string{"body.bust=", "body.bicep=20", "body.bicep=50 cm", "method.armhole=keep", "method.follow=hold", "body.bust=30"} {
			d, err := worksheets.Example(name)
			if err != nil {
				t.Fatal(err)
			}
			list, err := trials(d, []string{change})
			if err != nil {
				t.Fatal(err)
			}
			r := report.Reckon(&list[0].doc, someDay, 0)
			for _, trouble := range Troubles(r) {
				for _, o := range trouble.offers {
					changed := 0
					for _, k := range worksheets.Keys() {
						if o.sheet.Text(k) != r.Sheet.Text(k) {
							changed++
							if err := o.sheet.Check(k); err != nil {
								t.Errorf("%s, %s: %v", name, change, err)
							}
						}
					}
					if changed != 1 {
						t.Errorf("%s, %s: %q changes %d answers", name, change, o.change, changed)
					}
				}
			}
		}
	}
}
