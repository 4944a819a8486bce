package screen

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"capscye/ui/desk"
	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/worksheets"
)

// sizesOf sits down with the smock in three sizes, at the page of sizes.
func sizesOf(t *testing.T, width, height int) *robot.Robot {
	t.Helper()
	return sitWithFile(t, "market-smock", width, height).Press("f3", "ctrl+b")
}

func smock(t *testing.T) worksheets.Sheet {
	t.Helper()
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	return d.Sheet
}

func TestSizesAsSeen(t *testing.T) {
	for _, window := range [][2]int{{80, 24}, {120, 40}} {
		t.Run(fmt.Sprintf("%dx%d", window[0], window[1]), func(t *testing.T) {
			golden.RequireEqual(t, lookAt(t, "market-smock", window[0], window[1]).Press("f3", "ctrl+b").Fits().Screen()+"\n")
		})
	}
}

// What is typed in a cell is on disk once it is left, of that size and no other, and what
// the size costs follows.
func TestSizesAreTypedInPlace(t *testing.T) {
	r := sizesOf(t, 80, 24)
	before := props.Read(t, "sheet.toml")
	r.Press("down", "down", "down", "right").Sees("> Sleeve width", "[16 ").Sees("3/4 + 0            1 + 0          1 + 1/4")
	r.Types("17").Sees("[17", "= 17 in = ~43.2 cm").Press("down")
	r.Sees("17 in", "3/4 + 0          1/2 + 0          1 + 1/4", "> Cap height")
	if got := props.Read(t, "sheet.toml"); got != strings.Replace(before, `width         = "16"`, `width         = "17"`, 1) {
		t.Errorf("the file is\n%s", got)
	}
	r.Press("ctrl+z").Sees("16 in        15 1/2 in", "sleeve width of size 18.")
	if props.Read(t, "sheet.toml") != before {
		t.Error("undone, the file is another")
	}
	r.Press("ctrl+y", "esc").Sees("The pattern, laid flat").Press("ctrl+z")
	if props.Read(t, "sheet.toml") != before {
		t.Error("undone in the form, the file is another")
	}
}

// Enter on a name takes that size in hand, as one change; the page opens there.
func TestEnterTakesASizeInHand(t *testing.T) {
	r := sizesOf(t, 80, 24)
	before := smock(t)
	r.Press("enter").Sees("This size is in hand").Press("right").Sees("enter take in hand").Press("enter")
	r.Sees("Size 18 is in hand now. ^z undoes that.", "> Size                 [18 ")
	if !smock(t).Equal(before.TakeInHand(0)) {
		t.Errorf("the file says %+v", smock(t))
	}
	r.Press("ctrl+z")
	if !smock(t).Equal(before) {
		t.Error("it was more than one change")
	}
	r.Press("right", "enter", "esc").Sees("Sleeve width        16 in", "Sleeve needs 2 in")
}

// Behind the last size is room for another one, which begins with its name; ^x removes one.
func TestSizesAreAddedAndRemoved(t *testing.T) {
	r := sizesOf(t, 120, 40)
	before := smock(t)
	r.Press("right", "right", "right").Sees("type the name of another size").Press("enter").Sees("Type the name of another size here.")
	r.Press("down", "1").Sees("Give the size its name first.").Press("up")
	r.Types("18").Press("down").Sees(`> "18" is the name of another size already; esc drops it. Give it a name of its own.`, "> Size", "[18  ")
	r.Press("ctrl+u").Types(strings.Repeat("w", 41)).Sees("has more than 40 characters; esc drops it.").Press("enter").Sees("> Size", "has more than 40 characters").Press("backspace", "ctrl+u")
	r.Types("22 W").Press("enter").Types("48").Press("enter", "enter").Types("17").Press("enter")
	s := smock(t)
	if len(s.Sizes) != 3 || s.Sizes[2].Name() != "22 W" || s.Sizes[2].Text(worksheets.ChartBust) != "48" || s.Sizes[2].Text(worksheets.SleeveWidth) != "17" {
		t.Errorf("the sizes are %+v", s.Sizes)
	}
	r.Press("ctrl+x").Sees("Size 22 W is removed; ^z brings it back.").DoesNotSee("22 W  ")
	if !smock(t).Equal(before) {
		t.Errorf("the sizes are %+v", smock(t).Sizes)
	}
	r.Press("ctrl+z").Sees("22 W")
	for range 3 {
		r.Press("left")
	}
	r.Press("ctrl+x").Sees("This size is in hand: take another in hand first.")
}

// The rules of the form hold: what cannot be read waits and replaces nothing, what cannot
// begin an answer does not, esc brings back, fractions that were run together are offered.
func TestSizesKeepTheRulesOfTheForm(t *testing.T) {
	r := sizesOf(t, 80, 24).Press("right", "down", "down", "down")
	before := props.Read(t, "sheet.toml")
	r.Press("d").Sees(`"d" begins no answer here`).Press(" ").Sees("A space begins no answer here")
	r.Types("16 x").Sees(`-- "16 x" is not a length: "x" is no unit here; the answer stays.`).Press("down").Sees(`> "16 x" is not a length: "x" is no unit here; the answer stays.`, "16 x?", "1 + 0")
	if props.Read(t, "sheet.toml") != before {
		t.Error("the file was changed")
	}
	r.Press("esc").Sees("The pattern, laid flat").Press("ctrl+b", "right", "down", "down", "down").Sees("[16 x")
	r.Press("esc").Sees("As it was").Sees("[16 ").DoesNotSee("16 x")
	r.Types("161/2").Sees("16 1/2? enter takes it").Press("enter").Sees("16 1/2 in        16 1/2 in")
	r.Press("up").Types("9").Press("left", "7").Sees("[79").Press("esc").Sees("[16 1/2", "As it was. Esc again goes back.")
	r.Press("ctrl+z", "ctrl+z", "ctrl+z")
	r.Press("up", "up", "up").Types("x").Press("backspace", "down").Sees("A size needs a name; ^x removes the size.", "> Size", "[18  ")
	r.Types("16").Press("down").Sees(`> "16" is the name of another size already; the answer stays.`, "16?", "> Chart: bust").Press("up", "esc").Sees("[18  ")
	r.Types("x").Press("backspace", "ctrl+z").Sees("A size needs a name").Press("esc")
	if props.Read(t, "sheet.toml") != before {
		t.Errorf("the file is\n%s", props.Read(t, "sheet.toml"))
	}
}

// What is being typed when the program is ended is kept.
func TestEndingKeepsWhatIsTypedOfASize(t *testing.T) {
	r := sizesOf(t, 80, 24).Press("right", "down", "down", "down").Types("17 1/4").Press("ctrl+c")
	if !r.Ended || smock(t).Sizes[0].Text(worksheets.SleeveWidth) != "17 1/4" {
		t.Errorf("ended: %v, the size says %q", r.Ended, smock(t).Sizes[0].Text(worksheets.SleeveWidth))
	}
}

// twentySizes is the smock with as many sizes as a worksheet has.
func twentySizes(t testing.TB) *worksheets.Document {
	t.Helper()
	d, err := worksheets.Example("market-smock")
	if err != nil {
		t.Fatal(err)
	}
	z := d.Sheet.Sizes[0]
	for i := range worksheets.MostSizes {
		d.Sheet = d.Sheet.WithSize(min(i, len(d.Sheet.Sizes)), z.With(worksheets.PatternSize, fmt.Sprint(30+i)))
	}
	return d
}

// With twenty sizes every window shows what it can, and the hands stay in sight.
func TestTwentySizesInAnyWindow(t *testing.T) {
	d := desk.New(twentySizes(t), nil, parts.Styles{}, report.Reckoner{Today: props.SomeDay})
	for _, window := range [][2]int{{60, 16}, {80, 24}, {120, 40}, {300, 60}, {59, 24}} {
		p := newSizesPage(d, parts.Styles{})
		for range 25 {
			p.move(0, 1)
			lines := strings.Split(p.Render(window[0], window[1]), "\n")
			if len(lines) > window[1] {
				t.Fatalf("%d lines in a window of %v", len(lines), window)
			}
			if window[0] >= parts.SmallestWidth && !strings.Contains(lines[1], "[") {
				t.Fatalf("%v: the hands are out of sight: %q", window, lines[1])
			}
		}
	}
}

// A changed size is reckoned alone.
func TestOneSizeIsReckonedForOneChange(t *testing.T) {
	plans := 0
	d := desk.New(twentySizes(t), nil, parts.Styles{}, report.Reckoner{Today: props.SomeDay, Did: func(w report.Work) {
		if w == report.ReckonedPlan {
			plans++
		}
	}})
	d.TryHere()
	p := newSizesPage(d, parts.Styles{})
	p.move(0, 1)
	p.row = 3
	p.reach()
	p.typing.Put("17 3/4")
	plans = 0
	if p.move(1, 0); plans > 2 { // the size, and the sheet that has it
		t.Errorf("%d plans for one size", plans)
	}
}

// While the costs wait for an answer that has no row here, the page says where to give it.
func TestThePageOfSizesSaysWhatItCannotAsk(t *testing.T) {
	r := sitWithFile(t, "market-smock", 80, 24).Press("f3", "down").Sees("> Measured").Press("delete", "ctrl+b").Sees("no costs yet: step 3 asks how the pattern was measured").Fits()
	r.Press("esc").Types("s").Press("ctrl+b").Sees("marks are pivot + slide").DoesNotSee("no costs yet")
}
