package screen

import (
	"os"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/ui/parts"
	"capscye/worksheets"
)

// Over a slow link keys come in packets, and a crash comes whenever it likes.

// packet is letters that came at once.
func packet(text string) tea.KeyMsg { return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text)} }

// Letters that come in one packet are keys, one after the other: the first of a note opens
// it, and the rest stands in it.
func TestAPacketIsKeys(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f6")
	r.Tell(packet("nupper"))
	r.Press(" ").Types("arm").Sees("What did the test garment show?", "[upper arm ")
	r.Press("esc", "f1")
	r.Tell(packet("14"))
	r.Press("enter").Sees("Bicep               14 in")

	r = sitWithFile(t, "choir-blouse", 80, 24).Press("ctrl+l", "ctrl+l", "ctrl+x")
	r.Tell(packet("dd"))
	r.DoesNotSee("What if").DoesNotSee("copy 1")
	r.Tell(packet("tab")) // which is no key of that name
	r.Sees("> Bicep")
}

// Nobody can have seen a question that was just asked: what is pressed with the key that
// brought it does not answer it.
func TestAQuestionIsSeenBeforeItIsAnswered(t *testing.T) {
	sitWithInline(t, 80, 24)
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	m := &root{styles: parts.NewStyles(os.Stdout, termenv.Ascii, false), today: props.SomeDay, waits: waits{blind: time.Millisecond}}
	r := sitAt(t, m, d, 80, 24)
	r.Slow = true
	r.Types("14").Press("enter").Sees("lose its comments").Press("s").Sees("lose its comments")
	if got := props.Read(t, "sheet.toml"); got != props.InlineSheet {
		t.Errorf("the file is\n%s", got)
	}
	r.Arrive().Press("s").DoesNotSee("lose its comments").Sees("[saved]")
}

// What is pressed while a worksheet is being opened is dropped, and that is said.
func TestWhatIsDroppedIsSaid(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	r := reopen(t, "sheet.toml").Press("ctrl+o")
	r.Slow = true
	r.Press("enter").Types("15").Arrive().Sees("What was pressed while it was being opened was dropped.", "[13 3/4")
}

// The name of a size that is not there yet outlives a crash, and one that no size can have
// outlives the end of the program.
func TestTheNameOfANewSizeIsKept(t *testing.T) {
	at := func() *robot.Robot {
		return reopen(t, "sheet.toml").Press("f3", "ctrl+b", "right", "right", "right")
	}
	sitWithFile(t, "market-smock", 120, 40)
	crash(at().Types("14 W"))
	r := reopen(t, "sheet.toml").Sees(`Typed before and not finished: another size "14 W".`)
	r.Press("f3", "ctrl+b", "right", "right", "right").Sees("[14 W").Press("enter")
	if now := smock(t); len(now.Sizes) != 3 || now.Sizes[2].Name() != "14 W" {
		t.Errorf("the sizes are %+v", now.Sizes)
	}
	crash(r)
	reopen(t, "sheet.toml").DoesNotSee("Typed before")

	sitWithFile(t, "market-smock", 120, 40)
	r = at().Types("20").Press("ctrl+c")
	if err := rootOf(r).leave(false); err != nil || !r.Ended {
		t.Fatal(r.Ended, err)
	}
	crash(reopen(t, "sheet.toml").Sees(`another size "20".`))
}

// With three copies beside an example, what was typed waits in its field, also where it is
// only to be tried.
func TestAFullExampleKeepsWhatIsTried(t *testing.T) {
	r := inAnEmptyFolder(t).Press("ctrl+l", "ctrl+g", "ctrl+l", "ctrl+g", "ctrl+g", "ctrl+l", "ctrl+g").Types("14 1/8").Press("enter", "w")
	r.Sees("has 3 copies: ^x drops one", "14 1/8").Press("up").Sees("[14 1/8 ")
}

// A copy that differs by a note or by ticks says so, and is not called unchanged: after a
// crash it may be the only place that has them.
func TestACopyThatDiffersByItsNotes(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	r := reopen(t, "sheet.toml").Press("f6", " ", " ", "n").Types("upper arm 1/2 in too tight")
	os.WriteFile("sheet.toml", []byte(props.Read(t, "sheet.toml")+"# theirs\n"), 0o644)
	crash(r.Press("enter").Sees("The note is added."))
	r = reopen(t, "sheet.toml").Press("ctrl+x").Sees("Copy 1 (a note of a fitting)", "notes of fittings").DoesNotSee("Nothing differs").DoesNotSee("nothing changed yet")
	crash(r)
}
