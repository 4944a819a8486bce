package screen

import (
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/worksheets"
)

// Every field that is kept is on disk at once, and nothing else in the file
// has changed.
func TestEveryKeptFieldIsSaved(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	r.Sees("[saved]").Types("14").Press("enter").Sees("[saved]")
	want := strings.Replace(before, `bicep       = "13 3/4"`, `bicep       = "14"`, 1)
	if got := props.Read(t, "sheet.toml"); got != want {
		t.Errorf("the file is now\n%s", got)
	}
	r.Press("f4", "right").Sees("[saved]")
	if got := props.Read(t, "sheet.toml"); !strings.Contains(got, `slide   = "1/2"`) {
		t.Errorf("the file is now\n%s", got)
	}
}

// A new worksheet is on disk before the first girth is typed, with the middle
// of the usual ease in it.
func TestBeginAWorksheet(t *testing.T) {
	t.Chdir(t.TempDir())
	r := sit(t, nil, 80, 24)
	rootOf(r).front = rootOf(r).askBegin("smock.toml")
	r.Sees("smock.toml does not exist yet. Begin it?", "begin it in centimetres").Press("c", "enter")
	r.Sees("[1 Body]", "centimetres, ruler 1 mm", "[saved]", "Not begun: measure the upper arm", "No figures yet")
	if got := props.Read(t, "smock.toml"); !strings.Contains(got, `pivot_limit_sleeve = "2.5"`) {
		t.Errorf("the file is\n%s", got)
	}
	r.Types("34,9").Press("f3", "tab").Sees("choose: seam to seam or edge to edge").Press("tab", "tab").Types("33").Press("enter").Sees("Sleeve: an answer is missing")
	r.Press("shift+tab", "shift+tab", "shift+tab", "right").Sees("Sleeve needs 6.9 cm")
}

func TestListOpensBeginsAndSaysWhatCannotBeRead(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	os.WriteFile("broken.toml", []byte("[body\n"), 0o644)
	os.WriteFile("package.toml", []byte("[package]\nname = \"other\"\n"), 0o644)
	r.Press("ctrl+o").Sees("Worksheets of this folder", "> broken.toml", "unreadable", "sheet.toml", "ready", "Odile, Choir").DoesNotSee("package.toml")
	r.Press("enter").Sees("broken.toml, line 1")
	r.Press("down", "enter").Sees("[1 Body]", "Choir blouse, for Odile")
	r.Press("ctrl+o", "down", "down").Sees("> Begin a new worksheet").Press("enter").Types("sheet").Press("enter")
	r.Sees("sheet.toml exists already").Types("-2").Press("enter", "i", "enter").Sees("[1 Body]", "inches, ruler 1/8 in", "[saved]")
	if _, err := worksheets.Load("sheet-2.toml"); err != nil {
		t.Error(err)
	}
	r.Press("ctrl+o", "esc").Sees("[1 Body]")
}

// A file that another program changed is never overwritten unasked.
func TestFileChangedElsewhere(t *testing.T) {
	theirs := "version = 1\n[body]\nbicep = \"15\"\n"
	t.Run("theirs", func(t *testing.T) {
		r := sitWithFile(t, "choir-blouse", 80, 24)
		os.WriteFile("sheet.toml", []byte(theirs), 0o644)
		r.Types("14").Press("enter").Sees("Not saved: another program changed the file", "[not saved]")
		if props.Read(t, "sheet.toml") != theirs {
			t.Fatal("theirs was overwritten")
		}
		r.Press("ctrl+s").Sees("Another program changed ").Press("t").Sees("[15", "[saved]", "sheet.toml.mine-1")
		if !strings.Contains(props.Read(t, "sheet.toml.mine-1"), `"14"`) {
			t.Error("mine was not kept beside theirs")
		}
	})
	t.Run("mine", func(t *testing.T) {
		r := sitWithFile(t, "choir-blouse", 80, 24)
		os.WriteFile("sheet.toml", []byte(theirs), 0o644)
		r.Types("14").Press("enter", "ctrl+s", "m").Sees("sheet.toml.before-1", "[saved]")
		if props.Read(t, "sheet.toml.before-1") != theirs || !strings.Contains(props.Read(t, "sheet.toml"), `"14"`) {
			t.Error("mine was not written, or theirs not kept")
		}
	})
	t.Run("later", func(t *testing.T) {
		r := sitWithFile(t, "choir-blouse", 80, 24)
		os.WriteFile("sheet.toml", []byte(theirs), 0o644)
		r.Types("14").Press("enter", "ctrl+s", "esc").Sees("[not saved]").Press("ctrl+c").Sees("^s decides, ^c again").Press("ctrl+c")
		if !r.Ended || props.Read(t, "sheet.toml") != theirs {
			t.Error("leaving must leave theirs alone")
		}
	})
}

// Passing over a text that a line of input cannot hold leaves it alone.
func TestLongAndManyLinedNotesAreLeftAlone(t *testing.T) {
	t.Chdir(t.TempDir())
	source := "[about]\nnotes = \"\"\"first line\nsecond line\t" + strings.Repeat("x", 3000) + "\"\"\"\n"
	os.WriteFile("sheet.toml", []byte(source), 0o644)
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	r := sit(t, d, 80, 24)
	r.Press("shift+tab").Sees("> Notes").Press("x").Sees("edit it in the file").Press("ctrl+s", "f2", "ctrl+c")
	if got := props.Read(t, "sheet.toml"); got != source || !r.Ended {
		t.Errorf("ended %v; the file is now %.80q", r.Ended, got)
	}
}

// Another worksheet does not take the place of one that is not saved without a
// question.
func TestAnotherSheetWaitsForThisOne(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	theirs := props.Read(t, "sheet.toml") + "# theirs\n"
	os.WriteFile("sheet.toml", []byte(theirs), 0o644)
	r.Types("14").Press("enter", "ctrl+o", "end", "up", "enter")
	r.Sees("has changes that are not saved").Press("esc").Sees("  Bicep               14 in")
	r.Press("ctrl+o", "end", "up", "enter", "d").Sees("Tunic from the costume").DoesNotSee("[not saved]")
	if props.Read(t, "sheet.toml") != theirs {
		t.Error("theirs was overwritten")
	}
}

// A name that cannot be written is asked again, and the sheet stays whole.
func TestNameThatCannotBeWritten(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	os.WriteFile("sheet.toml", []byte("# theirs\n"), 0o644)
	r.Types("14").Press("enter", "ctrl+s", "b")
	r.Tell(rootOf(r).grant(toSaveAs{path: "nosuch/x.toml"})())
	r.Sees("Not saved: nosuch/x.toml", "File name")
	r.Press("ctrl+u").Types("x").Press("enter").Sees("[saved]", "  Bicep               14 in")
}

// What is typed while the first save is under way is laid over what was saved,
// and nothing that was left to the usual is blanked.
func TestTypingDuringTheFirstSave(t *testing.T) {
	r := sitWithExample(t, "allotment-shirt", 80, 24)
	cmd := saveFile(rootOf(r).desk, "shirt.toml", false)
	rootOf(r).saving = true
	msg := cmd() // the file is written, and the screen does not know yet
	r.Types("13").Press("enter").Tell(msg)
	got := props.Read(t, "shirt.toml")
	if !strings.Contains(got, `bicep = "13"`) || strings.Contains(got, `follow = ""`) || strings.Contains(got, `unit = ""`) {
		t.Errorf("the file is now\n%s", got)
	}
	r.Sees("[saved]")
}

// ^c during a save ends behind it, and a second one does not wait.
func TestEndingDuringASave(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	cmd := saveFile(rootOf(r).desk, "sheet.toml", false)
	rootOf(r).saving = true
	if r.Types("14").Press("ctrl+c"); r.Ended {
		t.Fatal("it ended while a save was under way")
	}
	r.Tell(cmd())
	if !r.Ended || !strings.Contains(props.Read(t, "sheet.toml"), `"14"`) {
		t.Errorf("ended %v, and the file is\n%s", r.Ended, props.Read(t, "sheet.toml"))
	}
	r = sitWithFile(t, "choir-blouse", 80, 24)
	rootOf(r).saving = true // one that never comes back
	if r.Press("ctrl+c", "ctrl+c"); !r.Ended {
		t.Error("nobody can leave")
	}
}

// sitWithInline sits down with that file.
func sitWithInline(t *testing.T, width, height int) *robot.Robot {
	t.Helper()
	t.Chdir(t.TempDir())
	os.WriteFile("sheet.toml", []byte(props.InlineSheet), 0o644)
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	return sit(t, d, width, height)
}

// A file whose comments would go is not made anew before the person agreed.
func TestCommentsThatWouldGoAreSaidFirst(t *testing.T) {
	r := sitWithInline(t, 80, 24).Types("14").Press("tab", "delete").Types("12").Press("enter")
	r.Sees("lose its comments")
	if props.Read(t, "sheet.toml") != props.InlineSheet {
		t.Fatal("the file was made anew before anybody agreed")
	}
	r.Press("s").Sees("[saved]", "sheet.toml.before-1")
	if props.Read(t, "sheet.toml.before-1") != props.InlineSheet {
		t.Error("the original is not beside it")
	}
}

// Leaving while that question is open loses nothing unsaid, and can be insisted on.
func TestLeavingWhenCommentsWouldGo(t *testing.T) {
	r := sitWithInline(t, 80, 24).Types("14").Press("ctrl+c")
	r.Sees("lose its comments")
	if r.Ended || props.Read(t, "sheet.toml") != props.InlineSheet {
		t.Fatal("it ended unsaved, or saved unasked")
	}
	if r.Press("ctrl+c"); !r.Ended || rootOf(r).status == 0 {
		t.Errorf("ended %v with status %d, want ended with another status than 0", r.Ended, rootOf(r).status)
	}
	if props.Read(t, "sheet.toml") != props.InlineSheet {
		t.Error("the file was made anew before anybody agreed")
	}
}

// Nobody answers questions, or tries again, once the system ends the program.
func TestTheSystemEndsIt(t *testing.T) {
	sitWithInline(t, 80, 24) // nobody agreed that its comments go: what was typed is kept aside
	r := reopen(t, "sheet.toml").Types("14")
	if r.Tell(signalMsg{status: 143}); !r.Ended || rootOf(r).status != 143 || props.Read(t, "sheet.toml") != props.InlineSheet || !rootOf(r).keepsAside(true) {
		t.Errorf("ended %v with status %d, and the file is\n%s", r.Ended, rootOf(r).status, props.Read(t, "sheet.toml"))
	}
	if err := rootOf(r).leave(true); err != nil {
		t.Fatal(err)
	}
	crash(reopen(t, "sheet.toml").Sees("Unsaved work of ", "14 in"))

	r = sitWithFile(t, "choir-blouse", 80, 24)
	os.Remove("sheet.toml")
	os.Mkdir("sheet.toml", 0o755)
	r.Types("14").Tell(signalMsg{status: 143})
	if !r.Ended {
		t.Error("a save that fails keeps the program")
	}
}

// A file of a newer version opens, and stays as it is.
func TestNewerVersionIsReadOnly(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	newer := strings.Replace(props.Read(t, "sheet.toml"), "version = 1", "version = 2", 1)
	os.WriteFile("sheet.toml", []byte(newer), 0o644)
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	r := sit(t, d, 80, 24)
	r.Sees("[read-only]", "it has version 2").Types("14").Press("enter").Sees("  Bicep               13 3/4 in")
	r.Press("ctrl+t", "f4", "right", "ctrl+s", "ctrl+c")
	if !r.Ended || props.Read(t, "sheet.toml") != newer {
		t.Error("the file of the newer version changed")
	}
}

// What cannot be saved is said and kept, and saved when it can be.
func TestSaveThatFailsIsSaidAndTriedAgain(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	os.Remove("sheet.toml")
	os.Mkdir("sheet.toml", 0o755)
	r.Types("14").Press("enter").Sees("Not saved:", "[not saved]", "  Bicep               14 in")
	if r.Press("ctrl+c"); r.Ended {
		t.Error("it ended without saving, and without saying so")
	}
	if r.Press("ctrl+c"); !r.Ended {
		t.Error("nobody can leave")
	}
	os.Remove("sheet.toml")
	os.WriteFile("sheet.toml", []byte(before), 0o644)
	r.Press("ctrl+s").Sees("[saved]")
	if !strings.Contains(props.Read(t, "sheet.toml"), `"14"`) {
		t.Error("the second try saved nothing")
	}
}

// FuzzKeys presses anything in any window: no panic, nothing sticks out of the
// window, and what was saved is the sheet on the table. A byte that is no UTF-8
// gives the window another size, or pastes what follows, up to the next such byte.
func FuzzKeys(f *testing.F) {
	f.Add([]byte("\x00\x01\x0213 3/4\x02"), uint8(80), uint8(24))
	f.Add([]byte("\x12\x07\x07l\x07e\x02\x0f\x02\x05i"), uint8(60), uint8(16))
	f.Add([]byte("\x0b\x0b\x0c\x0d\x0e\x10\x11"), uint8(120), uint8(40))
	f.Add([]byte("\x1e13\x02?\x09\x02\x04\x03\x03"), uint8(60), uint8(16))
	f.Add([]byte("\x1f\x07\x0b\x1f"), uint8(80), uint8(24))
	f.Add([]byte("13\x20\xf0\x9f\x92\xa9\x06\x06"), uint8(1), uint8(1))
	f.Add([]byte("\x1914\x02\x1a\x1bk\x1c\x1b\x1ad"), uint8(80), uint8(24))
	f.Add([]byte("14\x80\x82\x8c\x02\x8e1\x86\x02"), uint8(80), uint8(24))
	f.Add([]byte("\x8114 1/8\x80\x02\x8113\n\x1b[31m\x03\xff\x02"), uint8(80), uint8(24))
	f.Add([]byte("\x14\x05\x81Blouse \u202e\u009b31m\xfe\x02\x88\x12\x81j\xfe\x02"), uint8(120), uint8(40))
	names := []string{
		"tab", "shift+tab", "enter", "esc", "up", "down", "left", "right", "pgup", "pgdown", "home", "end", "backspace",
		"delete", "ctrl+s", "ctrl+t", "ctrl+o", "ctrl+k", "ctrl+r", "f1", "f2", "f3", "f4", "f5", "f6",
		"ctrl+l", "ctrl+g", "ctrl+x", "ctrl+z", "ctrl+y", "ctrl+d", "ctrl+e",
	}
	sizes := []tea.WindowSizeMsg{
		{Width: 1, Height: 1}, {Width: 80, Height: 24}, {Width: 500, Height: 200}, {Width: 60, Height: 16}, {Width: 59, Height: 200}, {Width: 120, Height: 40},
		{Width: 500, Height: 15}, {Width: 99, Height: 17}, {Width: 100, Height: 16}, {Width: 3, Height: 90}, {Width: 0, Height: 0}, {Width: 2, Height: 1},
	}
	f.Fuzz(func(t *testing.T, keys []byte, width, height uint8) {
		if len(keys) > 60 {
			keys = keys[:60]
		}
		r := sitWithFile(t, "choir-blouse", int(width), int(height))
		for len(keys) > 0 {
			c, size := utf8.DecodeRune(keys)
			switch lead := keys[0]; {
			case c == utf8.RuneError && size == 1 && lead&1 == 0:
				r.Tell(sizes[int(lead>>1)%len(sizes)])
			case c == utf8.RuneError && size == 1:
				text, _, _ := strings.Cut(strings.ToValidUTF8(string(keys[1:]), "\ufffd"), "\ufffd")
				size += len(text)
				r.Tell(robot.Pasted(text))
			case int(c) < len(names):
				r.Press(names[c])
			default:
				r.Tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}})
			}
			keys = keys[size:]
			if r.Width > 0 && r.Height > 0 {
				r.Fits()
			}
		}
		if rootOf(r).front != nil || rootOf(r).desk == nil || rootOf(r).desk.Doc.Path() == "" {
			return
		}
		r.Press("ctrl+s")
		again, err := worksheets.Load(rootOf(r).desk.Doc.Path())
		if err != nil {
			t.Fatal(err)
		}
		if !again.Sheet.Equal(rootOf(r).desk.Doc.Sheet) {
			t.Fatalf("the file does not say what is on the table:\n%s", r.Screen())
		}
	})
}
