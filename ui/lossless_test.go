package ui

import (
	"errors"
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/worksheets"
)

// ask keeps what its file cannot take where the next start on a screen finds it.
func TestAskKeepsWhatItsFileCannotTake(t *testing.T) {
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	t.Chdir(t.TempDir())
	p := talk(t, "ask", "sheet").hears("Begin it in inches")
	p.says("i").hears("Bicep, in inches?")
	if err := os.Remove("sheet.toml"); err != nil {
		t.Fatal(err)
	}
	os.Mkdir("sheet.toml", 0o755) // a folder takes no answers
	p.says("14").hears("Not saved").hears("Other arm").says("13").hears("Bust").says("quit")
	if status := <-p.status; status != exitUnfinished || !strings.Contains(p.errs.String(), "it is kept in ") {
		t.Errorf("status %d, %s", status, p.errs.String())
	}
	os.Remove("sheet.toml")
	os.WriteFile("sheet.toml", []byte("[about]\nunit = \"in\"\n"), 0o644)
	r := reopen(t, "sheet.toml").sees("Beside it lies what was not saved", "bicep                                     -          14 in")
	r.press("ctrl+g", "ctrl+x", "k").sees("[saved]")
	if got := read(t, "sheet.toml"); !strings.Contains(got, `"13"`) {
		t.Errorf("the file is\n%s", got)
	}
}

// A sheet whose comments would go is kept elsewhere until the person has decided,
// and the question is not covered by another page.
func TestWhatWaitsForAnAnswerIsKept(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("sheet.toml", []byte("about = {title = \"x\", unit = \"in\"} # mine\nbody = {bicep = \"13\"}\n"), 0o644)
	r := reopen(t, "sheet.toml").types("14").press("enter").sees("its comments go")
	crash(r)
	r = reopen(t, "sheet.toml").sees("13 in          14 in").press("ctrl+g", "ctrl+x", "k").sees("its comments go").press("esc")
	r.press("tab").types("40").press("ctrl+o").sees("its comments go").press("s").sees("Worksheets of this folder").press("esc").sees("[saved]")
	if got := read(t, "sheet.toml"); !strings.Contains(got, `"14"`) || !strings.Contains(got, `"40"`) {
		t.Errorf("the file is\n%s", got)
	}
}

// A title of any length suggests a name that a file can have.
func TestALongTitleGivesAShortName(t *testing.T) {
	t.Chdir(t.TempDir())
	title := strings.Repeat("long ", 100)
	if name := fileNameFor(title); len(name) > 80 || strings.Contains(name, "-.toml") {
		t.Error(name)
	}
	if status, out, _ := run("i\nnext\n"+title+"\nquit\n\n", "ask"); status == exitUnread || !strings.Contains(out, "Kept in long-") {
		t.Errorf("status %d, %s", status, out)
	}
	r := sitWithExample(t, "choir-blouse", 80, 24).press("ctrl+s").types(strings.Repeat("x", 300)).press("enter")
	r.sees("Not saved").doesNotSee("exists already")
}

// A card finds a name beside a sheet of any name, or says that there is none.
func TestACardBesideALongName(t *testing.T) {
	t.Chdir(t.TempDir())
	name, err := cardNameFor(strings.Repeat("n", 250) + ".toml")
	if err != nil || len(name) > 255 || !strings.HasSuffix(name, "-card.pdf") {
		t.Errorf("%q, %v", name, err)
	}
	if name, err := cardNameFor("gone/\x00.toml"); err == nil {
		t.Errorf("%q", name)
	}
}

// Left at the second ctrl+c, the copies are away, and what is seen is the sheet; ^z
// brings them back.
func TestAfterTheCopiesTheSheetIsSeen(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).types("14").press("enter", "shift+tab", "ctrl+l").types("20").press("enter", "ctrl+c")
	r.sees("What lies beside the sheet is not kept").press("ctrl+c").sees("Bicep               14 in", "Sleeve needs 2 3/4 in").doesNotSee("copy 1")
	r.press("ctrl+z").sees("copy 1 of 1", "20 in")
}

// The page of copies goes with the last of them, whatever puts that away.
func TestThePageOfCopiesGoesWithTheLast(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("ctrl+l").types("20").press("enter", "ctrl+x", "s")
	cmd := rootOf(r).grant(wish{kind: wishSaveCopy, path: "own.toml"})
	r.press("ctrl+x").sees("What if")
	r.tell(cmd()) // it took that long to be written
	r.sees("The copy is in own.toml.", "[saved]")
	if lines := rootOf(r).desk.besideLines(40); lines != nil {
		t.Errorf("%q", lines)
	}
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
	r.tell(openedMsg{doc: d, left: left})
	r.press("ctrl+l").sees("5 copies are laid already").press("ctrl+x").fits().sees("Copy 5")
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
	os.WriteFile("sheet.toml", []byte(strings.Replace(read(t, "sheet.toml"), "[body]", "body_from = \"origin.toml\"\n\n[body]", 1)), 0o644)
	r := reopen(t, "sheet.toml")
	os.WriteFile("sheet.toml", []byte(strings.Replace(read(t, "sheet.toml"), `"39 1/2"`, `"41"`, 1)), 0o644)
	r.types("14").press("enter", "ctrl+s", "t").sees("What was changed here is kept in").press("f5").sees("The body was taken from origin.toml")
	crash(r)
	reopen(t, "sheet.toml").doesNotSee("was not saved on")
}

// The third way: theirs stays, and mine goes on in a file of its own, written as the
// other was, comments and all.
func TestMineGoesOnBeside(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	os.WriteFile("sheet.toml", []byte("# before the concert\n"+read(t, "sheet.toml")), 0o644)
	mine := read(t, "sheet.toml")
	r := reopen(t, "sheet.toml")
	theirs := strings.Replace(mine, `"39 1/2"`, `"41"`, 1)
	os.WriteFile("sheet.toml", []byte(theirs), 0o644)
	r.types("14").press("enter", "ctrl+s").sees("leave theirs, and go on with mine").press("b").sees("choir-blouse.toml").press("enter").sees("[saved]")
	if read(t, "sheet.toml") != theirs || read(t, "choir-blouse.toml") != strings.Replace(mine, `"13 3/4"`, `"14"`, 1) {
		t.Errorf("theirs:\n%s\nmine:\n%s", read(t, "sheet.toml"), read(t, "choir-blouse.toml"))
	}
	crash(r.types("12").press("enter").sees("[saved]"))
	if !strings.Contains(read(t, "choir-blouse.toml"), `"12"`) {
		t.Error("it does not go on there")
	}
	reopen(t, "sheet.toml").doesNotSee("was not saved on")
	reopen(t, "choir-blouse.toml").doesNotSee("was not saved on")
}

// Two presses in a list open one sheet once.
func TestTwoPressesOpenOnce(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("ctrl+o")
	enter := tea.KeyMsg{Type: tea.KeyEnter}
	_, first := r.model.Update(enter)
	_, second := r.model.Update(enter)
	if first == nil || second != nil {
		t.Fatal("it is opened twice")
	}
	r.tell(first())
	r.doesNotSee(openElsewhere).sees("[saved]")
}

// A paste presses no key, on any page, and a line break in it is refused.
func TestAPasteOnAPagePressesNothing(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("ctrl+k")
	r.tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("x"), Paste: true})
	r.sees("any other key goes back").press("esc", "f6", "n")
	r.tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("upper arm\n1/2 in too tight"), Paste: true})
	r.sees("A pasted text with a line break is not taken")
}

// A fault outside the screen ends with its status and a report, too.
func TestAFaultWithoutAScreen(t *testing.T) {
	status, out, errs := 0, &strings.Builder{}, &strings.Builder{}
	status = runWith(faultyReader{}, out, errs, "show", "-")
	if status != exitFault || !strings.Contains(errs.String(), "a fault of its own") || strings.Contains(errs.String(), "private") {
		t.Errorf("status %d, %s", status, errs)
	}
}

type faultyReader struct{}

func (faultyReader) Read([]byte) (int, error) { panic(errors.New("private")) }
