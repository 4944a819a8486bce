package screen

import (
	"errors"
	rand "math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/worksheets"
)

// inAnEmptyFolder looks at an example where nothing else is.
func inAnEmptyFolder(t *testing.T) *robot.Robot {
	t.Helper()
	t.Chdir(t.TempDir())
	r := sit(t, nil, 80, 24)
	openFolder(rootOf(r))
	return r.Press("l").Sees("Choir blouse, for Odile", "[example, not saved]")
}

// Looking at an example, and pushing what is in it, leaves nothing behind and asks
// nothing at the end.
func TestLookingAtAnExampleLeavesNothingBehind(t *testing.T) {
	r := inAnEmptyFolder(t).Press("f4", "right").Sees("this is a what-if").Press("right").Sees("copy 1 of 1")
	if rootOf(r).desk.Doc.Changed() {
		t.Error("the example was changed")
	}
	r.Press("f6", "f5", "ctrl+c")
	if left, _ := os.ReadDir("."); !r.Ended || len(left) != 0 || rootOf(r).status != 0 {
		t.Errorf("ended %v with %d, left %v", r.Ended, rootOf(r).status, left)
	}
}

// The first typed answer asks for a worksheet of one's own, and goes there, in the unit
// that is chosen then: nothing of the example comes with it.
func TestATypedAnswerAsksForAnOwnWorksheet(t *testing.T) {
	for _, leave := range []string{"enter", "tab", "f3", "ctrl+o", "ctrl+s", "ctrl+c", "ctrl+f"} {
		r := inAnEmptyFolder(t).Types("36.5").Press(leave).Fits()
		r.Sees("Your own worksheet?", "You typed bicep: 36.5.").Press("enter").Types("mine").Press("enter", "c", "enter")
		r.Sees("mine.toml", "[saved]", "36.5")
		d, err := worksheets.Load("mine.toml")
		if err != nil {
			t.Fatal(err)
		}
		example, err := worksheets.Example("choir-blouse")
		if err != nil {
			t.Fatal(err)
		}
		for _, k := range worksheets.Keys() {
			if k.IsLength() && k != worksheets.Bicep && !strings.HasPrefix(k.Path(), "ease.") && !strings.HasPrefix(k.Path(), "method.") && k != worksheets.Ruler && d.Sheet.Text(k) != "" && d.Sheet.Text(k) == example.Sheet.Text(k) {
				t.Errorf("after %s %v is the example's: %q", leave, k, d.Sheet.Text(k))
			}
		}
		if got := d.Sheet.Reading(worksheets.Bicep).Length.String(); got != "36.5 cm" && d.Sheet.Text(worksheets.Bicep) != "36.5" {
			t.Errorf("after %s the bicep is %q", leave, d.Sheet.Text(worksheets.Bicep))
		}
		if d.Sheet.Text(worksheets.Wearer) != "" || d.Sheet.Text(worksheets.Title) != "" {
			t.Errorf("after %s it is called %q for %q", leave, d.Sheet.Text(worksheets.Title), d.Sheet.Text(worksheets.Wearer))
		}
	}
}

// Who only tries is asked once; the copy is not saved unasked, and takes a name of its
// own, under which it does not pretend to be the example.
func TestTryingInAnExample(t *testing.T) {
	r := inAnEmptyFolder(t).Types("14").Press("enter", "esc").Sees("> Bicep               [14 ", "[example, not saved]")
	r.Press("enter", "w").Sees("copy 1 of 1", "  Bicep               14 in", "> Other arm", "The example stays as it is; this is a what-if.")
	r.Types("14").Press("enter").DoesNotSee("Your own worksheet?")
	r.Press("ctrl+s").Sees("^x gives it a file of its own").Press("ctrl+c").Sees("^c again quits without them").Press("ctrl+x", "k").Sees("The example stays as it is")
	r.Press("s").Sees("[choir-blouse-what-if.toml").Press("enter").Sees("The copy is saved in choir-blouse-what-if.toml.")
	d, err := worksheets.Load("choir-blouse-what-if.toml")
	if err != nil || d.Sheet.Text(worksheets.Bicep) != "14" || d.Sheet.Text(worksheets.Title) != "" {
		t.Errorf("%v, %v", d, err)
	}
	inAnEmptyFolder(t).Press("f6", "n").Sees("Notes go into your own worksheet").Press("ctrl+s").Sees("Your own worksheet?").DoesNotSee("what-if")
}

// Nothing that is typed in an example is dropped: it stands in its field behind the question,
// whichever key asked, and once it is tried that key does what it does.
func TestNothingTypedInAnExampleIsDropped(t *testing.T) {
	for key, then := range map[string]string{
		"ctrl+z": "Undone: bicep.", "ctrl+y": "Nothing to redo.", "ctrl+g": "Now in the worksheet as it was", "ctrl+l": "copy 3 of 3",
		"ctrl+t": "Shown and typed in centimetres", "f3": "[3 Pattern]", "pgdown": "[2 Ease]", "down": "> Other arm",
	} {
		r := inAnEmptyFolder(t).Press("f4", "right").Sees("copy 1 of 1").Press("ctrl+g", "f1").Types("14").Press(key)
		r.Sees("Your own worksheet?", "You typed bicep: 14.").Press("esc").Sees("> Bicep               [14 ").Press(key, "w").Sees(then)
	}
	r := inAnEmptyFolder(t).Types("14").Press("ctrl+r", "ctrl+c").Sees("Your own worksheet?", "You typed bicep: 14.")
	if r.Press("esc").Sees("Working"); r.Ended {
		t.Error("it ended")
	}
}

// An example with all its copies takes no more: what is typed waits in its field, and
// nothing is said to be empty that is not.
func TestAnExampleWithAllItsCopies(t *testing.T) {
	r := inAnEmptyFolder(t).Types("14").Press("enter", "w", "ctrl+g", "ctrl+l", "ctrl+g", "ctrl+g", "ctrl+l", "ctrl+g").Sees("Now in the worksheet as it was")
	r.Press("f1", "up").Types("15").Press("enter").Sees("has 3 copies: ^x drops one").Press("up").Sees("[15 ")
	r.Press("esc").Sees("Bicep stays 13 3/4 in").Press("delete", "enter").DoesNotSee("is empty now").Press("f4", "right").Sees("has 3 copies: ^x drops one")
}

// Whatever keys are pressed at an example, it stays what it was, and no file says what
// it says: not under its name, and no file has both a bicep that was typed and its title.
func TestAnExampleIsNeverSavedNorMixed(t *testing.T) {
	keys := []string{"tab", "shift+tab", "enter", "esc", "up", "down", "left", "right", "pgdown", "pgup", "1", "3", " ", "l", "e", "w", "b", "i", "c", "k", "d", "s", "n", "t", "x",
		"delete", "f1", "f2", "f3", "f4", "f5", "f6", "ctrl+l", "ctrl+g", "ctrl+x", "ctrl+z", "ctrl+y", "ctrl+s", "ctrl+o", "ctrl+f", "ctrl+t"}
	random := rand.New(rand.NewPCG(14, 1280))
	read, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	home := t.TempDir()
	t.Chdir(home)
	for run := range 60 {
		folder := filepath.Join(home, strconv.Itoa(run))
		if err := errors.Join(os.Mkdir(folder, 0o755), os.Chdir(folder)); err != nil {
			t.Fatal(err)
		}
		r := sit(t, nil, 80, 24)
		openFolder(rootOf(r))
		r.Press("l")
		var pressed []string
		for range 40 {
			if !r.Ended {
				pressed = append(pressed, keys[random.IntN(len(keys))])
				r.Press(pressed[len(pressed)-1])
			}
		}
		if d := rootOf(r).desk; d != nil && d.IsExample() && d.Doc.Sheet.Text(worksheets.Title) == read.Sheet.Text(worksheets.Title) {
			now := d.Doc.Sheet
			if now.Done, now.Drafts = read.Sheet.Done, read.Sheet.Drafts; !now.Equal(read.Sheet) { // steps are practised, and what cannot be read waits
				t.Fatalf("the example is changed by %q", pressed)
			}
		}
		files, _ := filepath.Glob("*.toml")
		for _, f := range files {
			if f == "choir-blouse.toml" || strings.Contains(props.Read(t, f), `"Choir blouse"`) {
				t.Fatalf("after %q %s says\n%s", pressed, f, props.Read(t, f))
			}
		}
	}
}

// What was typed into an example when the system ends the program is offered again.
func TestASignalWhileTypingIntoAnExample(t *testing.T) {
	t.Chdir(t.TempDir())
	r := sit(t, nil, 80, 24)
	r.Tell(openingExample("choir-blouse", nil))
	r.Types("14").Tell(signalMsg{status: 143})
	if err := rootOf(r).leave(true); err != nil || !r.Ended {
		t.Fatal(r.Ended, err)
	}
	again := sit(t, nil, 80, 24)
	again.Tell(openingExample("choir-blouse", nil))
	again.Sees("Unsaved work of ", "14 in")
	crash(again)
}
