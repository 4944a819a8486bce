package screen

import (
	"os"
	"strings"
	"testing"

	"capscye/ui/internal/props"
)

// While the list is on its way, what is pressed is for the list: it ends no program and
// goes into no answer.
func TestKeysBeforeTheListAreForTheList(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	r := sit(t, nil, 80, 24)
	openFolder(rootOf(r))
	r.Press("pgdown", "enter").Sees("Drill: practise")
	r.Slow = true
	if r.Press("esc", "esc"); r.Ended {
		t.Fatal("a second esc ended the program")
	}
	r.Arrive().Sees("Worksheets of this folder")

	r = reopen(t, "sheet.toml").Sees("> Bicep")
	r.Slow = true
	r.Press("ctrl+o").Types("15").Arrive().Sees("Find: 15").Press("esc", "esc").Sees("> Bicep               [13 3/4 ")
	if got := props.Read(t, "sheet.toml"); got != before {
		t.Errorf("the file is\n%s", got)
	}
}

// While a worksheet is being opened nothing is typed into the one before.
func TestNothingIsTypedIntoASheetThatGoes(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	r := reopen(t, "sheet.toml").Types("14").Press("enter")
	os.WriteFile("sheet.toml", []byte(strings.Replace(props.Read(t, "sheet.toml"), `"14"`, `"15"`, 1)), 0o644)
	r.Press("up").Types("16").Press("enter", "ctrl+s").Sees("Another program changed")
	r.Slow = true
	r.Press("t").Types("17").DoesNotSee("[17").Press("enter").Arrive().Sees("Bicep               [15 ", "[saved]").DoesNotSee("17")
}

// A copy that is saved in its own file goes, wherever the hands are meanwhile; what was
// typed into it since stays.
func TestACopyIsSavedWhileTheSizesAreInFront(t *testing.T) {
	sitWithFile(t, "market-smock", 80, 24)
	r := reopen(t, "sheet.toml").Press("ctrl+l", "f3", "ctrl+x", "s")
	r.Slow = true
	r.Press("enter", "esc", "ctrl+b", "right", "right", "down").Arrive()
	r.Press("down", "down").Fits().DoesNotSee("copy 1")

	r = reopen(t, "sheet.toml").Press("ctrl+l", "f3", "ctrl+x", "s").Types("2")
	r.Slow = true
	r.Press("enter", "ctrl+b", "right", "down", "down", "down").Types("17 1/8").Arrive()
	r.Press("up").Sees("17 1/8 in", "copy 1")
}
