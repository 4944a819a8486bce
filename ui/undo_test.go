package ui

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"capscye/worksheets"
)

// Every change can be taken back, across steps, and says what it was; the file
// follows.
func TestUndoAndRedo(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	first := read(t, "sheet.toml")
	r.press("ctrl+z").sees("There is nothing to undo.")
	r.types("14").press("enter", "f2").types("2").press("enter", "f4", "e", "f6", " ")
	r.press("ctrl+z").sees("Taken back: step Lay.").press("ctrl+z").sees("Taken back: chosen slide is least.")
	r.press("ctrl+z").sees("Taken back: ease at the bicep is 1 3/4 in.").press("ctrl+z").sees("Taken back: bicep is 13 3/4 in.", "[saved]")
	if got := read(t, "sheet.toml"); got != first {
		t.Errorf("the file is now\n%s", got)
	}
	r.press("ctrl+y").sees("Done again: bicep is 14 in.").press("f1").sees("  Bicep               14 in")
	r.types("15").press("enter", "ctrl+y").sees("There is nothing to do again.")
	r.types("13").press("ctrl+z").sees("Taken back: bust is 39 1/2 in.") // what is being typed counts as the latest change
}

// A fitting note that is taken back is cut out of the file, which is then as it was.
func TestUndoOfAFitting(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	first := read(t, "sheet.toml")
	r.press("f6", "n").types("drags at the back").press("enter", "f1").sees("[saved]")
	if !strings.Contains(read(t, "sheet.toml"), "drags at the back") {
		t.Fatal("the note was not saved")
	}
	if r.press("ctrl+z").sees("[saved]"); read(t, "sheet.toml") != first {
		t.Errorf("the file is now\n%s", read(t, "sheet.toml"))
	}
}

// What is typed when undo or redo is pressed is kept, and saved.
func TestRedoKeepsWhatWasTyped(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24).types("14").press("ctrl+y").sees("[saved]")
	if !strings.Contains(read(t, "sheet.toml"), `bicep       = "14"`) {
		t.Errorf("the file is\n%s", read(t, "sheet.toml"))
	}
}

// Any random sequence of edits undone wholly gives the first sheet, and redone
// the last.
func TestUndoGoesAllTheWay(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 1280))
	keys := []string{"tab", "shift+tab", "enter", "up", "down", "left", "right", "pgdown", "pgup", "1", "3", "/", "4", " ", "l", "e", "delete", "f4", "f6", "f1",
		"ctrl+l", "ctrl+g", "ctrl+x k", "ctrl+x d"}
	for range 30 {
		r := sitWithExample(t, "archive-coat", 80, 24)
		first := rootOf(r).desk.laid()
		for range 60 {
			key := keys[random.IntN(len(keys))]
			if on, decision, ok := strings.Cut(key, "+x "); ok { // two keys, one after the other
				r.press(on+"+x", decision)
			} else {
				r.press(key)
			}
			rootOf(r).front = nil
		}
		r.press("esc")
		last := rootOf(r).desk.laid()
		for range 100 {
			r.press("ctrl+z")
		}
		if now := rootOf(r).desk.laid(); !now.equal(first) {
			t.Fatal("undone wholly, it is not the first sheet")
		}
		for range 100 {
			r.press("ctrl+y")
		}
		if now := rootOf(r).desk.laid(); !now.sheet.Equal(last.sheet) || !slices.EqualFunc(now.copies, last.copies, worksheets.Sheet.Equal) {
			t.Fatal("redone wholly, it is not the last sheet")
		}
	}
}
