package screen

import (
	"strings"
	"testing"

	"capscye/worksheets"
)

// A slip in a cell is asked there, as on the form, and ^a takes the guess for that size
// alone. 165 for 16.5: no sleeve is as wide.
func TestASlipInASizeIsAsked(t *testing.T) {
	r := sizesOf(t, 80, 24).Press("right", "down", "down", "down")
	before := smock(t)
	r.Types("165").Press("down").Sees("165 in?", "-- Sleeve width: 16.5 in? ^a takes it", "^a take guess", "stop").Fits()
	r.Press("up").Sees("[165  ", "-- 16.5 in? ^a takes it").Press("ctrl+a").Sees("> Sleeve width of size 18 is now 16 1/2 in. ^z undoes that.", "[16.5  ").DoesNotSee("take guess")
	if now := smock(t); now.Sizes[0].Text(worksheets.SleeveWidth) != "16.5" || now.Text(worksheets.SleeveWidth) != before.Text(worksheets.SleeveWidth) {
		t.Errorf("the sheet is %+v", now)
	}
	if r.Press("ctrl+z", "ctrl+z"); !smock(t).Equal(before) {
		t.Error("it was more than one change")
	}
	r.Press("left").Types("165").Press("down", "up", "ctrl+a").Sees("> Sleeve width of size 20 is now 16 1/2 in.")
	r.Types("17").Press("ctrl+a").Sees("[17") // with nothing to guess it goes to the beginning
}

// What a size comes to is said in words while it is not well; of an empty cell the hint says
// how to measure it.
func TestWhatASizeComesToIsSaid(t *testing.T) {
	r := sizesOf(t, 80, 24).Press("right", "down", "down", "down").Press("delete", "down").Fits()
	r.Sees("-- Answers missing: sleeve width. ---", "1 missing").Press("up").Sees("-- The sleeve pattern laid flat").Types("13").Press("down").DoesNotSee("Answers missing")
	r.Sees("-- Check this first: ").Press("up", "up", "up", "up").Sees("> Size", "-- Check this first: ").Press("left").Sees("-- Check this first: the sleeve width of size 18 is less than that of size")
	r = sizesOf(t, 120, 40).Sees("-- Ready to trace. ", "No size has a stop.", "Size 20 needs the least pivot", "The high bust says size 18", "Common practice: ").Fits()
	r.Press("right", "down", "down", "down").Sees("-- The sleeve pattern laid flat")
}

// What cannot be read in the file gives its reason in its cell.
func TestAnUnreadableSizeSaysWhy(t *testing.T) {
	d, err := worksheets.Example("market-smock")
	if err != nil {
		t.Fatal(err)
	}
	d.Sheet = d.Sheet.WithSize(0, d.Sheet.Sizes[0].With(worksheets.SleeveWidth, "wide")).WithSize(1, d.Sheet.Sizes[1].With(worksheets.PatternSize, "18"))
	r := sit(t, d, 80, 24).Press("f3", "ctrl+b", "right", "down", "down", "down").Sees(`-- "wide" is not a length; type it again.`)
	r.Press("right", "up", "up", "up").Sees(`-- "18" is the name of another size already; type it again.`)
}

// In the smallest window the verdict of each size is in sight, and no line of the head is empty.
func TestSizesInASmallWindow(t *testing.T) {
	r := sizesOf(t, 60, 16).Fits().Sees("Before cutting                  ready")
	for range 3 {
		for _, line := range strings.Split(r.Screen(), "\n") {
			if strings.TrimSpace(line) == "" {
				t.Errorf("an empty line:\n%s", r.Screen())
			}
		}
		r.Press("right").Fits().Sees("Before cutting")
	}
}
