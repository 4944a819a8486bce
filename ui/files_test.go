package ui

import (
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/worksheets"
)

func read(t *testing.T, name string) string {
	t.Helper()
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// Every field that is kept is on disk at once, and nothing else in the file
// has changed.
func TestEveryKeptFieldIsSaved(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := read(t, "sheet.toml")
	r.sees("[saved]").types("14").press("enter").sees("[saved]")
	want := strings.Replace(before, `bicep       = "13 3/4"`, `bicep       = "14"`, 1)
	if got := read(t, "sheet.toml"); got != want {
		t.Errorf("the file is now\n%s", got)
	}
	r.press("f4", "right").sees("[saved]")
	if got := read(t, "sheet.toml"); !strings.Contains(got, `slide   = "1/2"`) {
		t.Errorf("the file is now\n%s", got)
	}
}

// The example has no file: saving asks for a name, and only then keeps going by
// itself.
func TestExampleIsKeptUnderANameOfItsOwn(t *testing.T) {
	t.Chdir(t.TempDir())
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.types("14").press("enter").sees("[example, not kept]")
	r.press("ctrl+c").sees("This sheet has no file: ^s keeps it, ^c again leaves it.")
	if r.ended {
		t.Fatal("it ended without asking")
	}
	r.press("ctrl+s").sees("Under which name", "[choir-blouse.toml").press("enter").sees("[saved]")
	d, err := worksheets.Load("choir-blouse.toml")
	if err != nil || d.Sheet.Text(worksheets.Bicep) != "14" {
		t.Fatalf("%v, %v", d, err)
	}
	r.press("ctrl+c")
	if !r.ended {
		t.Error("it did not end")
	}
}

func TestLookingAtTheExampleLeavesNothingBehind(t *testing.T) {
	t.Chdir(t.TempDir())
	r := sitWithExample(t, "choir-blouse", 80, 24).press("f4", "f5", "ctrl+c")
	if left, _ := os.ReadDir("."); !r.ended || len(left) != 0 {
		t.Errorf("ended %v, left %v", r.ended, left)
	}
}

// A new worksheet is on disk before the first girth is typed, with the middle
// of the usual ease in it.
func TestBeginAWorksheet(t *testing.T) {
	t.Chdir(t.TempDir())
	r := sit(t, nil, 80, 24)
	rootOf(r).front = rootOf(r).askBegin("smock.toml")
	r.sees("smock.toml does not exist yet. Begin it?", "begin it in centimetres").press("c")
	r.sees("1 BODY", "centimetres, ruler 1 mm", "[saved]", "Nothing is reckoned yet")
	if got := read(t, "smock.toml"); !strings.Contains(got, `pivot_limit_sleeve = "2.5"`) {
		t.Errorf("the file is\n%s", got)
	}
	r.types("34,9").press("f3").types("33").press("enter").sees("Sleeve needs 6.9 cm")
}

func TestListOpensBeginsAndSaysWhatCannotBeRead(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	os.WriteFile("broken.toml", []byte("[body\n"), 0o644)
	os.WriteFile("package.toml", []byte("[package]\nname = \"other\"\n"), 0o644)
	r.press("ctrl+o").sees("Worksheets of this folder", "> broken.toml", "cannot be read", "sheet.toml", "Choir blouse").doesNotSee("package.toml")
	r.press("enter").sees("broken.toml, line 1")
	r.press("down", "enter").sees("1 BODY", "Choir blouse, for Odile")
	r.press("ctrl+o", "down", "down").sees("> Begin a new worksheet").press("enter").types("sheet").press("enter")
	r.sees("sheet.toml exists already").types("-2").press("enter", "i").sees("1 BODY", "inches, ruler 1/8 in", "[saved]")
	if _, err := worksheets.Load("sheet-2.toml"); err != nil {
		t.Error(err)
	}
	r.press("ctrl+o", "esc").sees("1 BODY")
}

// A file that another program changed is never overwritten unasked.
func TestFileChangedElsewhere(t *testing.T) {
	theirs := "version = 1\n[body]\nbicep = \"15\"\n"
	t.Run("theirs", func(t *testing.T) {
		r := sitWithFile(t, "choir-blouse", 80, 24)
		os.WriteFile("sheet.toml", []byte(theirs), 0o644)
		r.types("14").press("enter").sees("Not saved: another program changed the file", "[not saved]")
		if read(t, "sheet.toml") != theirs {
			t.Fatal("theirs was overwritten")
		}
		r.press("ctrl+s").sees("was changed by another program").press("t").sees("[15", "[saved]", "sheet.toml.mine-1")
		if !strings.Contains(read(t, "sheet.toml.mine-1"), `"14"`) {
			t.Error("mine was not kept beside theirs")
		}
	})
	t.Run("mine", func(t *testing.T) {
		r := sitWithFile(t, "choir-blouse", 80, 24)
		os.WriteFile("sheet.toml", []byte(theirs), 0o644)
		r.types("14").press("enter", "ctrl+s", "m").sees("sheet.toml.before-1", "[saved]")
		if read(t, "sheet.toml.before-1") != theirs || !strings.Contains(read(t, "sheet.toml"), `"14"`) {
			t.Error("mine was not written, or theirs not kept")
		}
	})
	t.Run("later", func(t *testing.T) {
		r := sitWithFile(t, "choir-blouse", 80, 24)
		os.WriteFile("sheet.toml", []byte(theirs), 0o644)
		r.types("14").press("enter", "ctrl+s", "esc").sees("[not saved]").press("ctrl+c").sees("^c again leaves").press("ctrl+c")
		if !r.ended || read(t, "sheet.toml") != theirs {
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
	r.press("shift+tab").sees("> Notes").press("x").sees("edit it in the file").press("ctrl+s", "f2", "ctrl+c")
	if got := read(t, "sheet.toml"); got != source || !r.ended {
		t.Errorf("ended %v; the file is now %.80q", r.ended, got)
	}
}

// Another worksheet does not take the place of one that is not saved without a
// question.
func TestAnotherSheetWaitsForThisOne(t *testing.T) {
	t.Chdir(t.TempDir())
	r := sitWithExample(t, "choir-blouse", 80, 24).types("14").press("enter", "ctrl+o", "down", "down", "enter")
	r.sees("has changes that are not saved").press("esc").sees("  Bicep               14 in")
	r.press("ctrl+o", "down", "down", "enter", "s").sees("Under which name").press("enter").sees("[saved]")
	r.press("ctrl+o", "down", "down", "down", "enter").sees("Work coat for the archive")
	if !strings.Contains(read(t, "choir-blouse.toml"), `bicep = "14"`) {
		t.Error("what was typed is gone")
	}
}

// A name that cannot be written is asked again, and the sheet stays whole.
func TestNameThatCannotBeWritten(t *testing.T) {
	t.Chdir(t.TempDir())
	r := sitWithExample(t, "choir-blouse", 80, 24).types("14").press("enter", "ctrl+s")
	for range 40 {
		r.press("backspace")
	}
	r.types("nosuch/x").press("enter").sees("Not saved: nosuch/x.toml", "Under which name")
	for range 40 {
		r.press("backspace")
	}
	r.types("x").press("enter").sees("[saved]", "  Bicep               14 in")
}

// What is typed while the first save is under way is laid over what was saved,
// and nothing that was left to the usual is blanked.
func TestTypingDuringTheFirstSave(t *testing.T) {
	t.Chdir(t.TempDir())
	r := sitWithExample(t, "allotment-shirt", 80, 24)
	cmd := saveFile(rootOf(r).desk, "shirt.toml", false)
	rootOf(r).saving = true
	msg := cmd() // the file is written, and the screen does not know yet
	r.types("13").press("enter").tell(msg)
	got := read(t, "shirt.toml")
	if !strings.Contains(got, `bicep = "13"`) || strings.Contains(got, `follow = ""`) || strings.Contains(got, `unit = ""`) {
		t.Errorf("the file is now\n%s", got)
	}
	r.sees("[saved]")
}

// ^c during a save ends behind it, and a second one does not wait.
func TestEndingDuringASave(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	cmd := saveFile(rootOf(r).desk, "sheet.toml", false)
	rootOf(r).saving = true
	if r.types("14").press("ctrl+c"); r.ended {
		t.Fatal("it ended while a save was under way")
	}
	r.tell(cmd())
	if !r.ended || !strings.Contains(read(t, "sheet.toml"), `"14"`) {
		t.Errorf("ended %v, and the file is\n%s", r.ended, read(t, "sheet.toml"))
	}
	r = sitWithFile(t, "choir-blouse", 80, 24)
	rootOf(r).saving = true // one that never comes back
	if r.press("ctrl+c", "ctrl+c"); !r.ended {
		t.Error("nobody can leave")
	}
}

// inlineSheet is a file in which no single value can be changed.
const inlineSheet = "# keep me\nbody = { bicep = \"13\" } # arm\n"

// sitWithInline sits down with that file.
func sitWithInline(t *testing.T, width, height int) *robot {
	t.Helper()
	t.Chdir(t.TempDir())
	os.WriteFile("sheet.toml", []byte(inlineSheet), 0o644)
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	return sit(t, d, width, height)
}

// A file whose comments would go is not made anew before the person agreed.
func TestCommentsThatWouldGoAreSaidFirst(t *testing.T) {
	r := sitWithInline(t, 80, 24).types("14").press("tab", "delete").types("12").press("enter")
	r.sees("its comments go")
	if read(t, "sheet.toml") != inlineSheet {
		t.Fatal("the file was made anew before anybody agreed")
	}
	r.press("s").sees("[saved]", "sheet.toml.before-1")
	if read(t, "sheet.toml.before-1") != inlineSheet {
		t.Error("the original is not beside it")
	}
}

// Leaving while that question is open loses nothing unsaid, and can be insisted on.
func TestLeavingWhenCommentsWouldGo(t *testing.T) {
	r := sitWithInline(t, 80, 24).types("14").press("ctrl+c")
	r.sees("its comments go")
	if r.ended || read(t, "sheet.toml") != inlineSheet {
		t.Fatal("it ended unsaved, or saved unasked")
	}
	if r.press("ctrl+c"); !r.ended || rootOf(r).status == 0 {
		t.Errorf("ended %v with status %d, want ended with another status than 0", r.ended, rootOf(r).status)
	}
	if read(t, "sheet.toml") != inlineSheet {
		t.Error("the file was made anew before anybody agreed")
	}
}

// Nobody answers questions, or tries again, once the system ends the program.
func TestTheSystemEndsIt(t *testing.T) {
	r := sitWithInline(t, 80, 24).types("14")
	if r.tell(signalMsg{status: 143}); !r.ended || rootOf(r).status != 143 || !strings.Contains(read(t, "sheet.toml"), `"14"`) || read(t, "sheet.toml.before-1") != inlineSheet {
		t.Errorf("ended %v with status %d, and the file is\n%s", r.ended, rootOf(r).status, read(t, "sheet.toml"))
	}

	r = sitWithFile(t, "choir-blouse", 80, 24)
	os.Remove("sheet.toml")
	os.Mkdir("sheet.toml", 0o755)
	r.types("14").tell(signalMsg{status: 143})
	if !r.ended {
		t.Error("a save that fails keeps the program")
	}
}

// A file of a newer version opens, and stays as it is.
func TestNewerVersionIsReadOnly(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	newer := strings.Replace(read(t, "sheet.toml"), "version = 1", "version = 2", 1)
	os.WriteFile("sheet.toml", []byte(newer), 0o644)
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	r := sit(t, d, 80, 24)
	r.sees("[read-only]", "it has version 2").types("14").press("enter").sees("  Bicep               13 3/4 in")
	r.press("ctrl+t", "f4", "right", "ctrl+s", "ctrl+c")
	if !r.ended || read(t, "sheet.toml") != newer {
		t.Error("the file of the newer version changed")
	}
}

// What cannot be saved is said and kept, and saved when it can be.
func TestSaveThatFailsIsSaidAndTriedAgain(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := read(t, "sheet.toml")
	os.Remove("sheet.toml")
	os.Mkdir("sheet.toml", 0o755)
	r.types("14").press("enter").sees("Not saved:", "[not saved]", "  Bicep               14 in")
	if r.press("ctrl+c"); r.ended {
		t.Error("it ended without saving, and without saying so")
	}
	if r.press("ctrl+c"); !r.ended {
		t.Error("nobody can leave")
	}
	os.Remove("sheet.toml")
	os.WriteFile("sheet.toml", []byte(before), 0o644)
	r.press("ctrl+s").sees("[saved]")
	if !strings.Contains(read(t, "sheet.toml"), `"14"`) {
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
				r.tell(sizes[int(lead>>1)%len(sizes)])
			case c == utf8.RuneError && size == 1:
				text, _, _ := strings.Cut(strings.ToValidUTF8(string(keys[1:]), "\ufffd"), "\ufffd")
				size += len(text)
				r.tell(pasted(text))
			case int(c) < len(names):
				r.press(names[c])
			default:
				r.tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{c}})
			}
			keys = keys[size:]
			if r.width > 0 && r.height > 0 {
				r.fits()
			}
		}
		if rootOf(r).front != nil || rootOf(r).desk == nil || rootOf(r).desk.doc.Path() == "" {
			return
		}
		r.press("ctrl+s")
		again, err := worksheets.Load(rootOf(r).desk.doc.Path())
		if err != nil {
			t.Fatal(err)
		}
		if !again.Sheet.Equal(rootOf(r).desk.doc.Sheet) {
			t.Fatalf("the file does not say what is on the table:\n%s", r.screen())
		}
	})
}
