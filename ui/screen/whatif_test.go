package screen

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"capscye/ui/console"
	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// A quick check costs three keys and risks nothing: ^l lays a copy, right changes
// it, and what differs is beside it; the file does not change.
func TestWhatIfCostsThreeKeysAndRisksNothing(t *testing.T) {
	for _, size := range []struct{ width, height int }{{80, 24}, {120, 40}} {
		t.Run(fmt.Sprintf("%dx%d", size.width, size.height), func(t *testing.T) {
			r := sitWithFile(t, "choir-blouse", size.width, size.height)
			before := props.Read(t, "sheet.toml")
			r.Press("f2", "ctrl+l", "right").Fits()
			r.Sees("copy 1 of 1, not saved", "worksheet       > copy 1", "1 3/4 in       1 7/8 in", "2 1/2          2 5/8")
			if props.Read(t, "sheet.toml") != before {
				t.Error("the file changed with the copy")
			}
			t.Chdir(props.SourceFolder + "/ui/screen")
			golden.RequireEqual(t, r.Screen()+"\n")
		})
	}
}

// Both columns are live: what is changed in the sheet follows in the copies that
// do not differ there, and ^g goes from one to the other.
func TestSheetAndCopiesAreBothLive(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f2", "ctrl+l").Types("2").Press("enter", "ctrl+g")
	r.Sees("Now in the worksheet as it was.", "[saved]", "> worksheet         copy 1", "At the bicep        1 3/4 in")
	r.Press("f1").Types("14").Press("enter").Sees("sleeve need")
	if !strings.Contains(props.Read(t, "sheet.toml"), `bicep       = "14"`) {
		t.Error("the sheet was not saved")
	}
	r.Sees("2 3/4              3") // 14 + 1 3/4 - 13, and 14 + 2 - 13
	r.Press("ctrl+g").Sees("copy 1 of 1", "  Bicep               14 in").DoesNotSee("\nbicep  ")
}

// The verdict is of what the hands are on. The archive coat is too tight at the waist; with
// 3 cm of ease there, in a copy alone, it is not, and whoever goes back to the worksheet must
// not read of it that it is ready.
func TestTheVerdictIsOfWhatIsAtHand(t *testing.T) {
	r := sitWithFile(t, "archive-coat", 80, 24).Sees("Check this first: at the waist")
	r.Press("f2", "ctrl+l", "down", "down").Types("3").Press("enter").Sees("copy 1 of 1", "Ready to trace.")
	r.Press("ctrl+g").Sees("Now in the worksheet as it was.", "Check this first: at the waist").DoesNotSee("Ready to trace.")
	r.Press("ctrl+x").Sees("Check this first: at the waist").DoesNotSee("Ready to trace.")
	r.Press("right").Sees("Ready to trace.")
}

// Up to three copies, named by what was changed in them.
func TestCopiesAreNamedByWhatWasChanged(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f2", "ctrl+l").Types("2").Press("enter")
	r.Press("ctrl+g", "ctrl+l", "f4", "e", "ctrl+g", "ctrl+l", "f4", "shift+tab", "right", "ctrl+x").Fits()
	r.Sees("Copy 1 (ease at the bicep 2 in)", "Copy 2 (slide even)", "> Copy 3 (armhole keep)").Press("end").Fits().Sees("new   stop: With the armhole kept")
	r.Press("esc", "ctrl+l").Sees("3 copies are the most; ^x drops one.")
	r.Press("ctrl+x", "right", "right", "d").Sees("Copy dropped", "> Copy 1 (slide even)").DoesNotSee("ease at the bicep 2")
}

// Keeping one drops the rest and saves it; undo brings all of them back.
func TestKeepingACopy(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	r.Press("f2", "ctrl+l").Types("2").Press("enter", "ctrl+x", "k").Sees("Copy 1 (ease at the bicep 2 in) is now the worksheet", "[saved]", "At the bicep        2 in")
	if got := props.Read(t, "sheet.toml"); got != strings.Replace(before, `bicep = "1 3/4"`, `bicep = "2"`, 1) {
		t.Errorf("the file is now\n%s", got)
	}
	r.Press("ctrl+z").Sees("Undone: kept copy 1", "copy 1 of 1, not saved")
	if props.Read(t, "sheet.toml") != before {
		t.Error("undo did not bring the file back")
	}
	r.Press("ctrl+z").Sees("Undone: ease at the bicep, now 1 3/4 in.").Press("ctrl+z").Sees("Undone: copy made.", "[saved]")
	r.Press("ctrl+y", "ctrl+y", "ctrl+y").Sees("[saved]", "2 in")
	if !strings.Contains(props.Read(t, "sheet.toml"), `bicep = "2"`) {
		t.Error("done again, the copy is not in the file")
	}
	r.Press("ctrl+z", "ctrl+g", "ctrl+x", "k").Sees("The copies are dropped")
	if props.Read(t, "sheet.toml") != before {
		t.Error("keeping the worksheet as it was changed the file")
	}
}

// Choices go round in a copy as they do in the sheet, each from its own.
func TestChoicesOfACopy(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f4", "shift+tab", "shift+tab", "ctrl+l").Sees("< widen to match >")
	r.Press("right").Sees("< keep its width >").Press("right").Sees("< widen to match >").Press("left").Sees("< keep its width >")
	r.Press("ctrl+g").Sees("< widen to match >").Press("ctrl+g").Sees("< keep its width >").Press("ctrl+s").Sees("The worksheet is saved, not this copy")
}

// Marks are compared as marks and lengths exactly: half of 2 5/8 in on a side less a
// pivot of 1 is a slide of 5/16, which is marked as 3/8, with 1/4 for the bodice's
// pivot so that 5/8 in all is right. Another ruler changes the marks alone.
func TestComparisonsAreExact(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f2", "ctrl+l", "right", "ctrl+x")
	r.Sees("sleeve slide, each side                 1/4           5/16", "bodice marks, each side           3/8 + 1/4      1/4 + 3/8")
	_, out, _ := run("", "try", "sheet.toml", "ease.bicep=1 7/8")
	if !strings.Contains(out, "1/4  ->  5/16") || !strings.Contains(out, "3/8 + 1/4  ->  1/4 + 3/8") {
		t.Errorf("tried:\n%s", out)
	}
	os.WriteFile("fine.toml", []byte(strings.Replace(props.Read(t, "sheet.toml"), `bicep = "1 3/4"`, `bicep = "1 7/8"`, 1)), 0o644)
	_, out, _ = run("", "try", "fine.toml", "about.ruler=1/16 in")
	if strings.Contains(out, "slide, each side") || !strings.Contains(out, "1 + 3/8  ->  1 + 5/16") {
		t.Errorf("another ruler:\n%s", out)
	}
	if _, out, _ = run("", "try", "sheet.toml", "about.unit=cm"); strings.Contains(out, "need") {
		t.Errorf("another unit changes no need:\n%s", out)
	}
}

// A copy becomes a file of its own, written as the sheet's is; the sheet stays.
func TestSavingACopyAsItsOwnFile(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	r.Press("f2", "ctrl+l").Types("2").Press("enter", "ctrl+x", "s").Sees("choir-blouse-what-if.toml").Press("enter")
	r.Sees("The copy is saved in choir-blouse-what-if.toml.", "[saved]").DoesNotSee("copy 1 of 1")
	if got := props.Read(t, "choir-blouse-what-if.toml"); got != strings.Replace(before, `bicep = "1 3/4"`, `bicep = "2"`, 1) {
		t.Errorf("the copy's file is\n%s", got)
	}
	if props.Read(t, "sheet.toml") != before {
		t.Error("the sheet's file changed")
	}
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	if err := d.SaveCopy("choir-blouse-what-if.toml"); !errors.Is(err, fs.ErrExist) {
		t.Errorf("over a file that is there: %v", err)
	}
}

// Leaving with copies is said first; so is bringing another sheet.
func TestCopiesAreNotLostUnsaid(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("ctrl+l").Types("15").Press("enter", "ctrl+c")
	r.Sees("The copies are not saved. ^x keeps or drops them; ^c again quits without them.")
	if r.Ended {
		t.Fatal("it ended at once")
	}
	r.Press("ctrl+o", "down", "enter").Sees("This worksheet has a copy").Press("esc", "ctrl+o", "end", "up", "enter").Sees("This worksheet has a copy").Press("esc", "ctrl+c", "ctrl+c")
	if !r.Ended || rootOf(r).status != console.ExitWell {
		t.Errorf("ended %v with status %d", r.Ended, rootOf(r).status)
	}
}

// What is done at the table, a fitting and the card belong to the sheet itself.
func TestNobodyCutsAWhatIf(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("ctrl+l", "f6")
	before := props.Read(t, "sheet.toml")
	for _, key := range []string{" ", "x", "n", "c"} {
		r.Press(key).Sees("This is a copy: keep it first (^x), or go to the worksheet (^g).")
	}
	if list, _ := os.ReadDir("."); len(list) != 1 || props.Read(t, "sheet.toml") != before {
		t.Error("something was written")
	}
}

// A sheet that may not be written can still be tried on.
func TestWhatIfOnAReadOnlySheet(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("new.toml", []byte("version = 99\n[body]\nbicep = \"13\"\n[ease]\nbicep = \"2\"\n[sleeve]\nmeasured = \"seam\"\nwidth = \"14\"\n"), 0o644)
	d, err := worksheets.Load("new.toml")
	if err != nil {
		t.Fatal(err)
	}
	r := sit(t, d, 80, 24).Press("ctrl+l").Types("14").Press("enter").Sees("13 in          14 in")
	r.Press("ctrl+x", "k").Sees("Read-only").Press("ctrl+x", "s").Types("x").Press("enter").Sees("The copy is saved in")
}

// Another program's version can be taken while copies lie beside: they follow.
func TestCopiesFollowTheirVersion(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f2", "ctrl+l").Types("2").Press("enter", "ctrl+g", "f1")
	theirs := strings.Replace(props.Read(t, "sheet.toml"), `bust        = "39 1/2"`, `bust        = "41"`, 1)
	os.WriteFile("sheet.toml", []byte(theirs), 0o644)
	r.Types("14").Press("enter", "ctrl+s").Sees("Another program changed ").Press("t")
	r.Sees("What was changed here is safe in", "ease at the bicep", "Bust                41 in").Press("ctrl+g").Sees("copy 1 of 1", "Bust                41 in")
}

// The page of copies says what it has no room for, and how to see it.
func TestThePageOfCopiesSaysWhatIsBelow(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f2", "ctrl+l").Types("4").Press("enter").Types("5").Press("enter", "f4", "up", "left", "ctrl+x")
	r.Fits().Sees("What if", " lines more below", "up/down scroll  left/right other  s own file  d drop  k keep this one  esc back", "esc back")
	r.Press("end").Fits().DoesNotSee("more below")
}
