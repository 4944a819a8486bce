package screen

import (
	"strings"
	"testing"

	"capscye/ui/internal/props"
)

// A bust that grows unasked: the page offers the smallest changes with their
// prices, and a chosen one lies beside the sheet as a what-if, the file untouched.
// The sleeve needs 15 + 1 3/4 - 13 = 3 3/4, 1 7/8 a side: 7/8 more than pivots. An ease of
// nothing would do without, and nobody can wear that: at the upper arm 2 in is usual.
func TestWhatWouldMakeItWork(t *testing.T) {
	for _, size := range []struct{ width, height int }{{80, 24}, {120, 40}, {60, 16}} {
		r := sitWithFile(t, "choir-blouse", size.width, size.height)
		r.Types("15").Press("enter", "tab", "delete", "enter", "f5").Sees("No bust is given, but the bodice grows by 3 1/2 in")
		before := props.Read(t, "sheet.toml")
		r.Press("w").Fits().Sees("What would make it work", " 1  What slides too far: keep its width, not widen to").DoesNotSee("Ease at the bicep")
		r.Press("enter").Fits().Sees("copy 1 of 1, not saved").Press("ctrl+x").Fits().Sees("what slides too far")
		if size.height >= 24 {
			r.Sees("gone  check: No bust is given", "new   check: To keep its width the bodice pivots the other way by up to 7/8 in")
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
	sitWithExample(t, "choir-blouse", 80, 24).Press("f5", "w").Sees("[5 Match]").DoesNotSee("What would make it work")
	r := sitWithExample(t, "allotment-shirt", 80, 40).Press("f5", "w").Sees("No bicep is given", "Ease at the bust: 1 13/16 in instead of 3 1/2 in")
	r.Press("9").Sees("[5 Match]").Press("w", "1", "f2").Sees("copy 1 of 1", "At the bust         1 13/16 in", "gone  check: No bicep is given")
}

// The bust is larger than the high bust by 3 1/2 in: the front may take three quarters of
// what it needs, or all (common practice, no source). All of half of 5 in is 2 1/2: a pivot
// of 1 and a slide of 1 1/2; the back stays.
func TestTheFrontMayTakeAllOfTheBust(t *testing.T) {
	r := sitWithExample(t, "allotment-shirt", 80, 60).Press("f5").Sees("or all of it: the back fits then")
	r.Press("w").Sees("4  Front share of the bust: 75 % instead of 3/5.", "5  Front share of the bust: 100 % instead of 3/5.")
	r.Press("5").Sees("copy 1 of 1").Press("ctrl+x").Sees("bodice back marks")
}

// With the armhole kept and an ease of 3 the bust is 2 1/2 in too small. With 1/2 in of ease
// it would not be: that can be accepted, and is no offer.
func TestWhatNobodyCanWearIsNotOffered(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 40).Press("f4", "shift+tab", "right", "f5", "w").Sees("With the armhole kept, the bust is 2 1/2 in too small")
	r.Sees("No single change solves this.", "set a gusset 1 1/4 in wide", "Or accept it as it is, with 1/2 in of ease (usually at least 1 1/2 in).")
	r.DoesNotSee("Ease at the bust")
}

// On the ways out the keys that move move, and only esc, or a letter that takes none, goes
// back.
func TestTheKeysOfTheWaysOut(t *testing.T) {
	r := sitWithExample(t, "allotment-shirt", 80, 60).Press("f5", "w").Sees("5  Front share of the bust: 100 %")
	at := func() int { return rootOf(r).front.(*offerPage).at }
	for _, move := range []struct {
		key string
		at  int
	}{{"end", 4}, {"home", 0}, {"pgdown", 4}, {"pgdown", 4}, {"pgup", 0}, {"down", 1}, {"up", 0}, {"left", 0}, {"right", 0}, {"f2", 0}, {"delete", 0}, {"ctrl+z", 0}} {
		if r.Press(move.key).Sees("What would make it work"); at() != move.at {
			t.Errorf("%s goes to %d", move.key, at())
		}
	}
	r.Press("esc").Sees("[5 Match]").Press("w", "q").Sees("[5 Match]")
}
