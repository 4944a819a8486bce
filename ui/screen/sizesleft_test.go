package screen

import (
	"testing"

	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// What is typed on the page of sizes when the system ends the program is kept as on the
// form: what reads is in the file, the rest waits in its cell.
func TestASignalKeepsWhatIsTypedOfASize(t *testing.T) {
	sitWithFile(t, "market-smock", 80, 24)
	r := reopen(t, "sheet.toml").Press("f3", "ctrl+b", "right", "down", "down", "down").Types("17 1/4")
	if r.Tell(signalMsg{status: 143}); !r.Ended || smock(t).Sizes[0].Text(worksheets.SleeveWidth) != "17 1/4" {
		t.Errorf("ended: %v, the size says %q", r.Ended, smock(t).Sizes[0].Text(worksheets.SleeveWidth))
	}
	if err := rootOf(r).leave(true); err != nil {
		t.Fatal(err)
	}
	r = reopen(t, "sheet.toml").Press("f3", "ctrl+b", "right", "down", "down", "down").Types("18 1/")
	if r.Tell(signalMsg{status: 129}); !r.Ended || smock(t).Sizes[0].Text(worksheets.SleeveWidth) != "17 1/4" {
		t.Errorf("ended: %v, the size says %q", r.Ended, smock(t).Sizes[0].Text(worksheets.SleeveWidth))
	}
	if err := rootOf(r).leave(true); err != nil {
		t.Fatal(err)
	}
	crash(reopen(t, "sheet.toml").Sees(`Typed before and not finished: sleeve width of size 18 "18 1/".`).Press("f3", "ctrl+b").Sees("18 1/?"))
}

// What was half typed when the program was killed is back in its cell, of the size in hand,
// of another and in a copy; it is no answer before enter takes it, also where it reads.
func TestHalfTypedOfASizeOutlivesACrash(t *testing.T) {
	sitWithFile(t, "market-smock", 80, 24)
	before := props.Read(t, "sheet.toml")
	crash(reopen(t, "sheet.toml").Press("f3", "ctrl+b", "right", "down", "down", "down").Types("17 1"))
	crash(reopen(t, "sheet.toml").Sees(`sleeve width of size 18 "17 1".`).Press("f3", "ctrl+b", "down", "down", "down").Types("16"))
	r := reopen(t, "sheet.toml").Sees(`sleeve width "16", sleeve width of size 18`).Press("f3", "ctrl+b").Sees("16?", "17 1?")
	r.Press("down", "down", "down").Sees("[16  ", "= 16 in = ~40.6 cm, no answer yet: enter takes it")
	if got := props.Read(t, "sheet.toml"); got != before {
		t.Errorf("the file is\n%s", got)
	}
	r.Press("enter").Sees("> Cap height", "Sleeve width                    16 in")
	if now := smock(t); now.Text(worksheets.SleeveWidth) != "16" {
		t.Errorf("the sleeve width is %q", now.Text(worksheets.SleeveWidth))
	}
	crash(r.Press("esc", "ctrl+l", "ctrl+b", "right", "right", "down", "down", "down").Types("15"))
	crash(reopen(t, "sheet.toml").Press("ctrl+g", "f3", "ctrl+b", "right", "right", "down", "down", "down").Sees("[15  ", "enter takes it"))
}

// In a copy a change of a size that is not in hand is a change: it is named, and kept.
func TestACopyIsNamedByAnotherSize(t *testing.T) {
	r := sitWithFile(t, "market-smock", 120, 40).Press("f3", "ctrl+l", "ctrl+b", "right", "down", "down", "down").Types("17").Press("down", "esc")
	r.DoesNotSee("Nothing differs yet")
	r.Press("ctrl+x").Sees("in copy 1 (sleeve width of size 18: 17 in)", "sleeve width of size 18               16 in          17 in").DoesNotSee("nothing changed yet").Press("k")
	if now := smock(t); now.Sizes[0].Text(worksheets.SleeveWidth) != "17" {
		t.Errorf("the size is %+v", now.Sizes[0])
	}
	r.Press("ctrl+l", "ctrl+b", "right", "ctrl+x", "ctrl+x").Sees("Size 16 is removed").Press("esc", "ctrl+x").Sees("(size 18 removed and 1 more)")
}
