package screen

import (
	rand "math/rand/v2"
	"slices"
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/worksheets"
)

// Every change can be taken back, across steps, and says what it was; the file
// follows.
func TestUndoAndRedo(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	first := props.Read(t, "sheet.toml")
	r.Press("ctrl+z").Sees("Nothing to undo.")
	r.Types("14").Press("enter", "f2").Types("2").Press("enter", "f4", "e", "f6", " ")
	r.Press("ctrl+z").Sees("Undone: step Lay.").Press("ctrl+z").Sees("Undone: slide, now least.")
	r.Press("ctrl+z").Sees("Undone: ease at the bicep, now 1 3/4 in.").Press("ctrl+z").Sees("Undone: bicep, now 13 3/4 in.", "[saved]")
	if got := props.Read(t, "sheet.toml"); got != first {
		t.Errorf("the file is now\n%s", got)
	}
	r.Press("ctrl+y").Sees("Redone: bicep, now 14 in.").Press("f1").Sees("  Bicep               14 in")
	r.Types("15").Press("enter", "ctrl+y").Sees("Nothing to redo.")
	r.Types("13").Press("ctrl+z").Sees("Undone: bust, now 39 1/2 in.") // what is being typed counts as the latest change
}

// A fitting note that is taken back is cut out of the file, which is then as it was.
func TestUndoOfAFitting(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	first := props.Read(t, "sheet.toml")
	r.Press("f6", "n").Types("drags at the back").Press("enter", "f1").Sees("[saved]")
	if !strings.Contains(props.Read(t, "sheet.toml"), "drags at the back") {
		t.Fatal("the note was not saved")
	}
	if r.Press("ctrl+z").Sees("[saved]"); props.Read(t, "sheet.toml") != first {
		t.Errorf("the file is now\n%s", props.Read(t, "sheet.toml"))
	}
}

// What is typed when undo or redo is pressed is kept, and saved.
func TestRedoKeepsWhatWasTyped(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24).Types("14").Press("ctrl+y").Sees("[saved]")
	if !strings.Contains(props.Read(t, "sheet.toml"), `bicep       = "14"`) {
		t.Errorf("the file is\n%s", props.Read(t, "sheet.toml"))
	}
}

// laidAt are the sheet and its copies.
func laidAt(r *robot.Robot) []worksheets.Sheet {
	d := rootOf(r).desk
	return append([]worksheets.Sheet{d.Doc.Sheet}, d.Copies...)
}

// Any random sequence of edits undone wholly gives the first sheet, and redone
// the last.
func TestUndoGoesAllTheWay(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 1280))
	keys := []string{"tab", "shift+tab", "enter", "up", "down", "left", "right", "pgdown", "pgup", "1", "3", "/", "4", " ", "l", "e", "delete", "f4", "f6", "f1",
		"ctrl+l", "ctrl+g", "ctrl+x k", "ctrl+x d"}
	for range 30 {
		r := sitWithExample(t, "archive-coat", 80, 24)
		first := laidAt(r)
		for range 60 {
			key := keys[random.IntN(len(keys))]
			if on, decision, ok := strings.Cut(key, "+x "); ok { // two keys, one after the other
				r.Press(on+"+x", decision)
			} else {
				r.Press(key)
			}
			rootOf(r).front = nil
		}
		r.Press("esc")
		last := laidAt(r)
		for range 100 {
			r.Press("ctrl+z")
		}
		if now := laidAt(r); !slices.EqualFunc(now, first, worksheets.Sheet.Same) {
			t.Fatal("undone wholly, it is not the first sheet")
		}
		for range 100 {
			r.Press("ctrl+y")
		}
		if now := laidAt(r); !slices.EqualFunc(now, last, worksheets.Sheet.Equal) {
			t.Fatal("redone wholly, it is not the last sheet")
		}
	}
}
