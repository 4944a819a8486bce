package screen

import (
	"os"
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// What the form and the page of sizes, and the pages over a worksheet, have to do alike.

// An answer of the file is not read as typed: 161/2 is a question there too, and enter
// leaves it as it is.
func TestEnterLeavesAnAnswerOfTheFile(t *testing.T) {
	sitWithFile(t, "market-smock", 80, 24)
	os.WriteFile("sheet.toml", []byte(strings.ReplaceAll(props.Read(t, "sheet.toml"), `"16 1/2"`, `"161/2"`)), 0o644)
	before := props.Read(t, "sheet.toml")
	reopen(t, "sheet.toml").Press("f3", "ctrl+b", "down", "down", "down", "enter", "enter", "up", "up", "right", "enter", "esc", "f3", "enter", "enter", "enter")
	if got := props.Read(t, "sheet.toml"); got != before || !strings.Contains(before, "161/2") {
		t.Errorf("the file is\n%s", got)
	}
}

// A draft that is emptied leaves the answer behind it, on the form as at the sizes.
func TestEmptyingADraftLeavesTheAnswer(t *testing.T) {
	r := sizesOf(t, 80, 24).Press("down", "down", "down").Types("16 x").Press("down", "up").Sees("[16 x").Press("delete", "down")
	r.Sees("> Sleeve width of size 20 stays 16 1/2 in; empty it again to clear it.", "16 1/2 in")
	if now := smock(t); now.Text(worksheets.SleeveWidth) != "16 1/2" {
		t.Errorf("the file says %q", now.Text(worksheets.SleeveWidth))
	}
	r.Press("up", "delete", "down").DoesNotSee("16 1/2 in")
	r.Press("ctrl+z", "up", "right").Types("17 x").Press("down", "up", "delete", "down").Sees("> Sleeve width of size 18 stays ")
}

// A key that a page names does there what it says.
func TestKeysThatAreNamedAreThere(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("ctrl+l").Types("14").Press("enter", "ctrl+l").Types("15").Press("enter", "ctrl+x", "d")
	r.Sees("Copy dropped; ^z brings it back.").Press("ctrl+z").Sees("Copy 2", "Undone: copy dropped").Press("ctrl+y").DoesNotSee("Copy 2")
	r.Press("d").Sees("^z brings it back").Press("ctrl+z").Sees("copy 1 of 1")

	r = sitWithFile(t, "choir-blouse", 80, 24).Press("f6", "ctrl+l", "t", " ").Sees("keep it first (^x), or go to the worksheet (^g)")
	r.Press("ctrl+g", " ").Sees("step 2 of ").Press("ctrl+g", "ctrl+x").Sees("What if   in copy 1")

	r = sizesOf(t, 80, 24).Press("esc", "ctrl+l", "ctrl+b", "ctrl+s").Sees("> This copy is not saved: esc, then ^x keeps it or gives it its own file.")
	r.Press("esc", "ctrl+x").Sees("What if   in copy 1")
}

// Saving a note of a fitting may ask about comments first: the offer to change the ease
// comes behind that.
func TestAQuestionLeavesTheOneBefore(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	os.WriteFile("sheet.toml", []byte("# mine\nbody = {bicep = \"13\", bust = \"39\"} # both\nsleeve = {width = \"13\"}\n"), 0o644)
	r := reopen(t, "sheet.toml").Types("14").Press("enter").Sees("lose its comments").Press("esc")
	r.Press("f6", "n").Types("upper arm 1/2 in too tight").Press("enter").Sees("lose its comments").Press("s").Sees("Change the ease at the bicep by +1/2")
}

// What is taken twice from a worksheet is held against what it said the second time; what
// is taken while a save is under way is held against too.
func TestWhatIsTakenTwice(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	os.WriteFile("other.toml", []byte("[body]\nbust = \"46\"\n"), 0o644)
	r := reopen(t, "sheet.toml").Press("ctrl+f", "enter").Sees("Took the body of other.toml.")
	os.WriteFile("other.toml", []byte("[body]\nbust = \"47\"\n"), 0o644)
	r.Press("ctrl+f", "enter").Sees("Took the body of other.toml.").Press("f5").DoesNotSee("was taken from")

	r = reopen(t, "sheet.toml")
	r.Press("f3").Slow = true
	d := rootOf(r).desk
	from, err := worksheets.Load("other.toml")
	if err != nil {
		t.Fatal(err)
	}
	r.Press("f1", "down", "down").Types("48").Press("enter")
	d.Take(worksheets.BodySection, from)
	if r.Arrive(); len(d.Doc.Origins) != 1 {
		t.Errorf("%d origins", len(d.Doc.Origins))
	}
}

// Alt and a letter type nothing, in a name as in a field.
func TestAltTypesNothing(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f6", "n")
	alt := r.Key("a")
	alt.Alt = true
	r.Tell(alt)
	r.Types("bust").Sees("[bust ")
}
