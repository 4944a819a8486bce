package ui

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"capscye/worksheets"
)

// A quick check costs three keys and risks nothing: ^l lays a copy, up changes
// it, and what differs is beside it; the file does not change.
func TestWhatIfCostsThreeKeysAndRisksNothing(t *testing.T) {
	for _, size := range []struct{ width, height int }{{80, 24}, {120, 40}} {
		t.Run(fmt.Sprintf("%dx%d", size.width, size.height), func(t *testing.T) {
			r := sitWithFile(t, "choir-blouse", size.width, size.height)
			before := read(t, "sheet.toml")
			r.press("f2", "ctrl+l", "up").fits()
			r.sees("copy 1 of 1, not kept", "sheet       > copy 1", "1 3/4 in       1 7/8 in", "2 1/2          2 5/8")
			if read(t, "sheet.toml") != before {
				t.Error("the file changed with the copy")
			}
			t.Chdir(sourceFolder + "/ui")
			golden.RequireEqual(t, r.screen()+"\n")
		})
	}
}

// Both columns are live: what is changed in the sheet follows in the copies that
// do not differ there, and ^g goes from one to the other.
func TestSheetAndCopiesAreBothLive(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("f2", "ctrl+l").types("2").press("enter", "ctrl+g")
	r.sees("Now at the sheet as it was.", "[saved]", "> sheet         copy 1", "At the bicep        1 3/4 in")
	r.press("f1").types("14").press("enter").sees("sleeve need")
	if !strings.Contains(read(t, "sheet.toml"), `bicep       = "14"`) {
		t.Error("the sheet was not saved")
	}
	r.sees("2 3/4              3") // 14 + 1 3/4 - 13, and 14 + 2 - 13
	r.press("ctrl+g").sees("copy 1 of 1", "  Bicep               14 in").doesNotSee("\nbicep  ")
}

// Up to three copies, named by what was changed in them.
func TestCopiesAreNamedByWhatWasChanged(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("f2", "ctrl+l").types("2").press("enter")
	r.press("ctrl+g", "ctrl+l", "f4", "e", "ctrl+g", "ctrl+l", "f4", "shift+tab", "right", "ctrl+x").fits()
	r.sees("Copy 1 (ease at the bicep 2 in)", "Copy 2 (chosen slide even)", "> Copy 3 (armhole keep)").press("end").fits().sees("came  stop: With the bodice kept")
	r.press("esc", "ctrl+l").sees("3 copies are laid already: ^x keeps or drops one.")
	r.press("ctrl+x", "right", "right", "d").sees("The copy is put away", "> Copy 1 (chosen slide even)").doesNotSee("ease at the bicep 2")
}

// Keeping one drops the rest and saves it; undo brings all of them back.
func TestKeepingACopy(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := read(t, "sheet.toml")
	r.press("f2", "ctrl+l").types("2").press("enter", "ctrl+x", "k").sees("Kept copy 1 (ease at the bicep 2 in)", "[saved]", "At the bicep        2 in")
	if got := read(t, "sheet.toml"); got != strings.Replace(before, `bicep = "1 3/4"`, `bicep = "2"`, 1) {
		t.Errorf("the file is now\n%s", got)
	}
	r.press("ctrl+z").sees("Taken back: kept copy 1", "copy 1 of 1, not kept")
	if read(t, "sheet.toml") != before {
		t.Error("undo did not bring the file back")
	}
	r.press("ctrl+z").sees("Taken back: ease at the bicep is 1 3/4 in.").press("ctrl+z").sees("Taken back: copy laid beside the sheet.", "[saved]")
	r.press("ctrl+y", "ctrl+y", "ctrl+y").sees("[saved]", "2 in")
	if !strings.Contains(read(t, "sheet.toml"), `bicep = "2"`) {
		t.Error("done again, the copy is not in the file")
	}
	r.press("ctrl+z", "ctrl+g", "ctrl+x", "k").sees("Kept the sheet as it was")
	if read(t, "sheet.toml") != before {
		t.Error("keeping the sheet as it was changed the file")
	}
}

// Choices go round in a copy as they do in the sheet, each from its own.
func TestChoicesOfACopy(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("f4", "shift+tab", "shift+tab", "ctrl+l").sees("< let out >")
	r.press("right").sees("< hold >").press("right").sees("< let out >").press("left").sees("< hold >")
	r.press("ctrl+g").sees("< let out >").press("ctrl+g").sees("< hold >").press("ctrl+s").sees("The sheet is saved, this copy is not")
}

// Marks are compared as marks and lengths exactly: half of 2 5/8 in on a side less a
// pivot of 1 is a slide of 5/16, which is marked as 3/8, with 1/4 for the bodice's
// pivot so that 5/8 in all is right. Another ruler changes the marks alone.
func TestComparisonsAreExact(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("f2", "ctrl+l", "up", "ctrl+x")
	r.sees("sleeve slide, each side                 1/4           5/16", "bodice marks, each side           3/8 + 1/4      1/4 + 3/8")
	_, out, _ := run("", "try", "sheet.toml", "ease.bicep=1 7/8")
	if !strings.Contains(out, "1/4  ->  5/16") || !strings.Contains(out, "3/8 + 1/4  ->  1/4 + 3/8") {
		t.Errorf("tried:\n%s", out)
	}
	os.WriteFile("fine.toml", []byte(strings.Replace(read(t, "sheet.toml"), `bicep = "1 3/4"`, `bicep = "1 7/8"`, 1)), 0o644)
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
	before := read(t, "sheet.toml")
	r.press("f2", "ctrl+l").types("2").press("enter", "ctrl+x", "s").sees("choir-blouse-what-if.toml").press("enter")
	r.sees("The copy is in choir-blouse-what-if.toml.", "[saved]").doesNotSee("copy 1 of 1")
	if got := read(t, "choir-blouse-what-if.toml"); got != strings.Replace(before, `bicep = "1 3/4"`, `bicep = "2"`, 1) {
		t.Errorf("the copy's file is\n%s", got)
	}
	if read(t, "sheet.toml") != before {
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
	r := sitWithFile(t, "choir-blouse", 80, 24).press("ctrl+l").types("15").press("enter", "ctrl+c")
	r.sees("What lies beside the sheet is not kept: ^x decides, ^c again leaves it.")
	if r.ended {
		t.Fatal("it ended at once")
	}
	r.press("ctrl+o", "down", "down", "enter").sees("A copy lies beside this sheet").press("esc", "ctrl+c", "ctrl+c")
	if !r.ended || rootOf(r).status != exitWell {
		t.Errorf("ended %v with status %d", r.ended, rootOf(r).status)
	}
}

// What is done at the table, a fitting and the card belong to the sheet itself.
func TestNobodyCutsAWhatIf(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("ctrl+l", "f6")
	before := read(t, "sheet.toml")
	for _, key := range []string{" ", "x", "n", "c"} {
		r.press(key).sees("This is a copy: keep it first (^x), or go to the sheet (^g).")
	}
	if list, _ := os.ReadDir("."); len(list) != 1 || read(t, "sheet.toml") != before {
		t.Error("something was written")
	}
}

// A sheet that may not be written can still be tried on.
func TestWhatIfOnAReadOnlySheet(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("new.toml", []byte("version = 99\n[body]\nbicep = \"13\"\n[ease]\nbicep = \"2\"\n[sleeve]\nwidth = \"14\"\n"), 0o644)
	d, err := worksheets.Load("new.toml")
	if err != nil {
		t.Fatal(err)
	}
	r := sit(t, d, 80, 24).press("ctrl+l").types("14").press("enter").sees("13 in          14 in")
	r.press("ctrl+x", "k").sees("Read-only").press("ctrl+x", "s").types("x").press("enter").sees("The copy is in")
}

// Another program's version can be taken while copies lie beside: they follow.
func TestCopiesFollowTheirVersion(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("f2", "ctrl+l").types("2").press("enter", "ctrl+g", "f1")
	theirs := strings.Replace(read(t, "sheet.toml"), `bust        = "39 1/2"`, `bust        = "41"`, 1)
	os.WriteFile("sheet.toml", []byte(theirs), 0o644)
	r.types("14").press("enter", "ctrl+s").sees("was changed by another program").press("t")
	r.sees("What was changed here is kept in", "ease at the bicep", "Bust                41 in").press("ctrl+g").sees("copy 1 of 1", "Bust                41 in")
}
