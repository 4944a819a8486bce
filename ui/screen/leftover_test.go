package screen

import (
	"os"
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/worksheets"
)

// reopen opens a file as the program does when it starts.
func reopen(t *testing.T, path string) *robot.Robot {
	t.Helper()
	d, err := worksheets.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	r := sit(t, nil, 80, 24)
	r.Tell(opening(d, path, nil))
	return r
}

// crash is what the system does for a program that is killed: it lets its locks go.
func crash(r *robot.Robot) { rootOf(r).desk.GuardedBy().Close() }

// What could not be saved before a crash lies beside the sheet at the next start,
// with the difference to be seen, and neither is preferred.
func TestAfterACrashWhatWasNotSavedIsOffered(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	r := reopen(t, "sheet.toml")
	theirs := strings.Replace(props.Read(t, "sheet.toml"), `bust        = "39 1/2"`, `bust        = "41"`, 1)
	os.WriteFile("sheet.toml", []byte(theirs), 0o644)
	crash(r.Types("14").Press("enter").Sees("Not saved: another program changed the file."))

	r = reopen(t, "sheet.toml").Sees("Unsaved work of ", "^x shows it.", "> worksheet         copy 1")
	r.Sees("13 3/4 in          14 in", "41 in      39 1/2 in")
	if props.Read(t, "sheet.toml") != theirs {
		t.Error("the file was changed")
	}
	crash(r) // once more, before anything was decided
	r = reopen(t, "sheet.toml").Sees("13 3/4 in          14 in")
	r.Press("ctrl+g", "ctrl+x", "k").Sees("is now the worksheet", "[saved]")
	if got := props.Read(t, "sheet.toml"); !strings.Contains(got, `= "14"`) {
		t.Errorf("kept, the file is\n%s", got)
	}
	crash(r)
	reopen(t, "sheet.toml").DoesNotSee("was not saved on")
}

// Copies are kept too, as far as they were changed; dropped, they are gone.
func TestCopiesOutliveACrash(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	r := reopen(t, "sheet.toml").Press("f2", "ctrl+l").Types("2").Press("enter", "ctrl+g", "ctrl+l", "f4", "e")
	crash(r)
	r = reopen(t, "sheet.toml").Sees("Unsaved work of ").Press("ctrl+x").Sees("Copy 1 (ease at the bicep 2 in)", "Copy 2 (slide even)")
	crash(r.Press("right", "d", "d").Sees("[saved]"))
	reopen(t, "sheet.toml").DoesNotSee("was not saved on")
}

// What somebody tries in an example outlives a crash, until it is left on purpose.
func TestWhatIsTriedInAnExampleOutlivesACrash(t *testing.T) {
	t.Chdir(t.TempDir())
	open := func() *robot.Robot {
		r := sit(t, nil, 80, 24)
		r.Tell(openingExample("choir-blouse", nil))
		return r
	}
	crash(open().Types("14").Press("enter", "w"))
	crash(open().Sees("Unsaved work of ", "13 3/4 in          14 in"))
	r := open().Sees("Unsaved work of ").Press("ctrl+c").Sees("^c again quits").Press("ctrl+c")
	if !r.Ended {
		t.Fatal("it did not end")
	}
	if err := rootOf(r).leave(false); err != nil {
		t.Fatal(err)
	}
	open().DoesNotSee("was not saved on")
}

// Where a signal ends the program before anybody could answer, what is not saved
// is kept.
func TestASignalKeepsWhatIsNotSaved(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	r := reopen(t, "sheet.toml")
	os.WriteFile("sheet.toml", []byte(props.Read(t, "sheet.toml")+"# theirs\n"), 0o644)
	r.Types("14").Tell(signalMsg{143})
	if !r.Ended {
		t.Fatal("it did not end")
	}
	if err := rootOf(r).leave(true); err != nil {
		t.Fatal(err)
	}
	reopen(t, "sheet.toml").Sees("Unsaved work of ", "13 3/4 in          14 in")
}

// The second program on a sheet is told, and what both leave is found.
func TestTheSecondProgramIsTold(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	one := reopen(t, "sheet.toml").DoesNotSee("Another capscye")
	two := reopen(t, "sheet.toml").Sees("This worksheet is open in another capscye; change it in one place only.")
	two.Types("14").Press("enter").Sees("[saved]")
	one.Types("15").Press("enter").Sees("Not saved: another program changed the file.")
	crash(one)
	crash(two)
	reopen(t, "sheet.toml").Sees("Unsaved work of ", "14 in          15 in")
}

// Where nothing can be kept it is said, once.
func TestNothingCanBeKept(t *testing.T) {
	t.Setenv("XDG_STATE_HOME", "/dev/null/nowhere")
	sitWithFile(t, "choir-blouse", 80, 24)
	r := reopen(t, "sheet.toml").Press("ctrl+l").Sees("A crash would lose what is not saved")
	r.Types("15").Press("enter").DoesNotSee("A crash would lose what is not saved")
}

// What was half typed when the program was killed is back in its field, in the worksheet
// and in a copy; it is no answer before enter takes it, also where it reads.
func TestHalfTypedOutlivesACrash(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	crash(reopen(t, "sheet.toml").Press("down", "down").Types("41 1"))
	crash(reopen(t, "sheet.toml").Sees(`Typed before and not finished: bust "41 1".`, "cannot be read; bust stays 39 1/2 in").Types("14 1/2"))
	r := reopen(t, "sheet.toml").Sees(`bicep "14 1/2"`, `bust "41 1"`).Press("down").Sees("not finished; bicep stays 13 3/4 in")
	if got := props.Read(t, "sheet.toml"); got != before {
		t.Errorf("the file is\n%s", got)
	}
	r.Press("up", "enter").Sees("Bicep               14 1/2 in", "[saved]").Press("up", "ctrl+z").Sees("13 3/4")
	crash(r.Press("ctrl+l").Types("15").Press("enter").Types("16"))
	reopen(t, "sheet.toml").Press("ctrl+g", "down").Sees("[16  ")
}

// A file that is gone with what was not saved in it: whoever is asked to begin it anew is
// told that the answers are there, and beginning it brings them back.
func TestWhatIsKeptOfAFileThatIsGoneIsSaid(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	r := reopen(t, "sheet.toml")
	os.Remove("sheet.toml")
	os.Mkdir("sheet.toml", 0o755) // so that it cannot be saved
	crash(r.Types("14").Press("enter").Sees("Not saved: "))
	os.Remove("sheet.toml")
	r = sit(t, nil, 80, 24)
	rootOf(r).front = rootOf(r).askBegin("sheet.toml")
	r.Sees("sheet.toml does not exist yet. Begin it? Unsaved work of ", "begin it, and that opens as a copy.").Press("i", "enter").Sees("[saved]", "^x shows it.").Press("ctrl+g").Sees("[14  ")
	r = sit(t, nil, 80, 24)
	rootOf(r).front = rootOf(r).askBegin("other.toml")
	r.Sees("other.toml does not exist yet. Begin it?").DoesNotSee("Unsaved work")
}

// Whoever takes the file as another program wrote it has what was half typed still, a note
// too, and so has the next start.
func TestTheirsLeavesWhatIsHalfTyped(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	r := reopen(t, "sheet.toml").Types("13 x").Press("enter").Press("f6", "n").Types("bust too t").Press("esc", "f1")
	os.WriteFile("sheet.toml", []byte(props.Read(t, "sheet.toml")+"# theirs\n"), 0o644)
	r.Press("f2").Types("2").Press("enter", "ctrl+s", "t").Sees("is safe in sheet.toml.mine-1").Press("f1").Sees("[13 x")
	crash(r)
	reopen(t, "sheet.toml").Sees("Typed before and not finished: ", "the note of a fitting (step 6, n), bicep", "[13 x")
}

// A fault of the program, or a terminal that fails, costs nothing of what stands in the
// line of input.
func TestAFaultKeepsWhatIsHalfTyped(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	r := reopen(t, "sheet.toml").Types("14 1")
	if err := rootOf(r).leave(true); err != nil {
		t.Fatal(err)
	}
	crash(reopen(t, "sheet.toml").Sees(`bicep "14 1"`))
}

// Half a number typed in the other unit is of that unit at the next start too.
func TestHalfTypedKeepsItsUnit(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	crash(reopen(t, "sheet.toml").Press("ctrl+t").Types("36"))
	r := reopen(t, "sheet.toml").Sees(`bicep "36 cm"`, "= ~14 1/8 in = 36.0 cm")
	r.Press("enter").Sees("Bicep               ~14 1/8 in")
}
