package screen

import (
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/worksheets"
)

// ask keeps what its file cannot take where the next start on a screen finds it.
func TestAskKeepsWhatItsFileCannotTake(t *testing.T) {
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	t.Chdir(t.TempDir())
	p := talk(t, "ask", "sheet").Hears("Begin it in inches")
	p.Says("i").Hears("Bicep, in inches?")
	if err := os.Remove("sheet.toml"); err != nil {
		t.Fatal(err)
	}
	os.Mkdir("sheet.toml", 0o755) // a folder takes no answers
	p.Says("14").Hears("Not saved").Hears("Ease at").Says("next").Hears("Other arm").Says("13").Hears("Bust").Says("quit")
	if status := <-p.Status; status != console.ExitUnfinished || !strings.Contains(p.Errs.String(), "your answers are safe in ") {
		t.Errorf("status %d, %s", status, p.Errs.String())
	}
	os.Remove("sheet.toml")
	os.WriteFile("sheet.toml", []byte("[about]\nunit = \"in\"\n"), 0o644)
	r := reopen(t, "sheet.toml").Sees("Unsaved work of ", "bicep                                     -          14 in")
	r.Press("ctrl+g", "ctrl+x", "k").Sees("[saved]")
	if got := props.Read(t, "sheet.toml"); !strings.Contains(got, `"13"`) {
		t.Errorf("the file is\n%s", got)
	}
}

// A sheet whose comments would go is kept elsewhere until the person has decided,
// and the question is not covered by another page.
func TestWhatWaitsForAnAnswerIsKept(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("sheet.toml", []byte("about = {title = \"x\", unit = \"in\"} # mine\nbody = {bicep = \"13\"}\n"), 0o644)
	r := reopen(t, "sheet.toml").Types("14").Press("enter").Sees("lose its comments")
	crash(r)
	r = reopen(t, "sheet.toml").Sees("13 in          14 in").Press("ctrl+g", "ctrl+x", "k").Sees("lose its comments").Press("esc")
	r.Press("tab").Types("40").Press("ctrl+o").Sees("lose its comments").Press("s").Sees("Worksheets of this folder").Press("esc").Sees("[saved]")
	if got := props.Read(t, "sheet.toml"); !strings.Contains(got, `"14"`) || !strings.Contains(got, `"40"`) {
		t.Errorf("the file is\n%s", got)
	}
}

// A title of any length suggests a name that a file can have.
func TestALongTitleGivesAShortName(t *testing.T) {
	t.Chdir(t.TempDir())
	title := strings.Repeat("long ", 100)
	if name := console.FileNameFor(title); len(name) > 80 || strings.Contains(name, "-.toml") {
		t.Error(name)
	}
	if status, out, _ := run("i\nnext\nnext\n"+title+"\nquit\n\n", "ask"); status == console.ExitUnread || !strings.Contains(out, "Saved in long-") {
		t.Errorf("status %d, %s", status, out)
	}
	r := sit(t, nil, 80, 24)
	rootOf(r).grant(toName{})
	r.Types(strings.Repeat("x", 300)).Press("enter")
	r.Sees("This name is too long.").DoesNotSee("exists already")
}

// Left at the second ctrl+c, the copies are away, and what is seen is the sheet; ^z
// brings them back.
func TestAfterTheCopiesTheSheetIsSeen(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Types("14").Press("enter", "shift+tab", "ctrl+l").Types("20").Press("enter", "ctrl+c")
	r.Sees("The copies are not saved.").Press("ctrl+c").Sees("Bicep               14 in", "Sleeve needs 2 3/4 in").DoesNotSee("copy 1")
	r.Press("ctrl+z").Sees("copy 1 of 1", "20 in")
}

// The page of copies goes with the last of them, whatever puts that away.
func TestThePageOfCopiesGoesWithTheLast(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("ctrl+l").Types("20").Press("enter", "ctrl+x", "s")
	cmd := rootOf(r).grant(toSaveCopy{path: "own.toml"})
	r.Press("ctrl+x").Sees("What if")
	r.Tell(cmd()) // it took that long to be written
	r.Sees("The copy is saved in own.toml.", "[saved]").DoesNotSee("What if").DoesNotSee("copy 1")
}

// More copies may come back after a crash than can be laid; none is laid then.
func TestNoCopyIsLaidOnTooMany(t *testing.T) {
	t.Chdir(t.TempDir())
	var left worksheets.Leftover
	for _, bicep := range []string{"1", "2", "3", "4", "5"} {
		left.Versions = append(left.Versions, sheetWith(t, worksheets.Bicep, bicep))
	}
	d, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	r := sit(t, nil, 80, 24)
	r.Tell(openedMsg{doc: d, left: left})
	r.Press("ctrl+l").Sees("3 copies are the most").Press("ctrl+x").Fits().Sees("Copy 5")
}

func sheetWith(t *testing.T, k worksheets.Key, text string) (s worksheets.Sheet) {
	t.Helper()
	if err := s.Set(k, text); err != nil {
		t.Fatal(err)
	}
	return s
}

// Once theirs is taken, mine lies beside it and is not offered again after a crash;
// what theirs was taken from is still known.
func TestTheirsLeavesNothingBehind(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	os.WriteFile("origin.toml", []byte("[body]\nbicep = \"15\"\n"), 0o644)
	os.WriteFile("sheet.toml", []byte(strings.Replace(props.Read(t, "sheet.toml"), "[body]", "body_from = \"origin.toml\"\n\n[body]", 1)), 0o644)
	r := reopen(t, "sheet.toml")
	os.WriteFile("sheet.toml", []byte(strings.Replace(props.Read(t, "sheet.toml"), `"39 1/2"`, `"41"`, 1)), 0o644)
	r.Types("14").Press("enter", "ctrl+s", "t").Sees("What was changed here is safe in").Press("f5").Sees("The body was taken from origin.toml")
	crash(r)
	reopen(t, "sheet.toml").DoesNotSee("was not saved on")
}

// The third way: theirs stays, and mine goes on in a file of its own, written as the
// other was, comments and all.
func TestMineGoesOnBeside(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	os.WriteFile("sheet.toml", []byte("# before the concert\n"+props.Read(t, "sheet.toml")), 0o644)
	mine := props.Read(t, "sheet.toml")
	r := reopen(t, "sheet.toml")
	theirs := strings.Replace(mine, `"39 1/2"`, `"41"`, 1)
	os.WriteFile("sheet.toml", []byte(theirs), 0o644)
	r.Types("14").Press("enter", "ctrl+s").Sees("leave theirs, and go on with mine").Press("b").Sees("choir-blouse.toml").Press("enter").Sees("[saved]")
	if props.Read(t, "sheet.toml") != theirs || props.Read(t, "choir-blouse.toml") != strings.Replace(mine, `"13 3/4"`, `"14"`, 1) {
		t.Errorf("theirs:\n%s\nmine:\n%s", props.Read(t, "sheet.toml"), props.Read(t, "choir-blouse.toml"))
	}
	crash(r.Types("12").Press("enter").Sees("[saved]"))
	if !strings.Contains(props.Read(t, "choir-blouse.toml"), `"12"`) {
		t.Error("it does not go on there")
	}
	reopen(t, "sheet.toml").DoesNotSee("was not saved on")
	reopen(t, "choir-blouse.toml").DoesNotSee("was not saved on")
}

// Two presses in a list open one sheet once.
func TestTwoPressesOpenOnce(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("ctrl+o")
	enter := tea.KeyMsg{Type: tea.KeyEnter}
	_, first := r.Model.Update(enter)
	_, second := r.Model.Update(enter)
	if first == nil || second != nil {
		t.Fatal("it is opened twice")
	}
	r.Tell(first())
	r.DoesNotSee(console.OpenElsewhere).Sees("[saved]")
}

// A paste presses no key, on any page, and a line break in it is refused.
func TestAPasteOnAPagePressesNothing(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("ctrl+k")
	r.Tell(robot.Pasted("x"))
	r.Sees("any other key goes back").Press("esc", "f6", "n")
	r.Tell(robot.Pasted("upper arm\n1/2 in too tight"))
	r.Sees("The paste has a line break")
}
