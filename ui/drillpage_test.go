package ui

import (
	"fmt"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"capscye/calc"
)

// The drill as a person sees it: a question with a slip just recognised, the
// working shown in level 5, and the score.
func TestDrillAsSeen(t *testing.T) {
	for _, size := range []struct{ width, height int }{{80, 24}, {120, 40}} {
		seen := func(name string, script func(*robot)) {
			t.Run(fmt.Sprintf("%dx%d/%s", size.width, size.height, name), func(t *testing.T) {
				r := sitWithExample(t, "choir-blouse", size.width, size.height).press("ctrl+d")
				script(r)
				golden.RequireEqual(t, r.fits().screen()+"\n")
			})
		}
		seen("slip", func(r *robot) {
			_, q := rootOf(r).front.(*drillPage).lesson.now()
			r.types(q.Missteps[0].Value.String()).press("enter").types("13.3")
		})
		seen("working", func(r *robot) {
			r.press("pgdown", "pgdown", "pgdown", "pgdown")
			for range 12 {
				r.press("?")
			}
		})
		seen("score", func(r *robot) { r.types("1").press("enter", "?", "esc") })
	}
}

// rightNow is the right answer to the question at hand, as somebody types it.
func rightNow(r *robot) string {
	p, q := rootOf(r).front.(*drillPage).lesson.now()
	return drillScale(p).Exact(q.Right)
}

// Somebody goes through a whole drill by keys.
func TestDrillByKeys(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).press("ctrl+d").sees("Drill: the sums of the trade", "Problem 1 of 5.", "level 1")
	page := rootOf(r).front.(*drillPage)
	r.types("13 3/4").sees("[13 3/4", "= 13 3/4 in = ~34.9 cm").press("backspace", "backspace").sees("cannot be read")
	r.press("enter").sees("This does not count as an answer.", "[13 3")
	for range 4 {
		r.press("backspace")
	}
	for n := 0; !page.lesson.ended(); n++ {
		if n > 50 {
			t.Fatal("it does not end")
		}
		r.types(rightNow(r)).press("enter").fits().sees("Right: ")
	}
	r.sees("steps done.", "right at once", "another drill")
	r.press("enter").sees(fmt.Sprintf("seed %d", clockSeed(someDay)+1), "Problem 1 of 5.")
	r.press("esc").sees("|===1 BODY") // nothing was answered: no score
}

// Esc shows the score first, and then goes back to where the drill was begun.
func TestDrillGoesBack(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).press("ctrl+d", "?", "esc").sees("Score, level 1", "shown")
	r.press("esc").sees("Choir blouse, for Odile", "1 BODY")
	t.Chdir(t.TempDir())
	r = sit(t, nil, 80, 24)
	r.tell(listedMsg{})
	r.press("end").sees("> Drill: the sums of the trade").press("enter").sees("Problem 1 of 5.").press("esc").sees("Worksheets of this folder")
	r.press("end", "enter", "ctrl+c")
	if !r.ended {
		t.Error("ctrl+c does not end the program")
	}
}

// A key goes to another level; there is none beyond the last.
func TestDrillChangesLevel(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).press("ctrl+d", "pgup").sees("Levels go from 1 to 5.", "level 1, seed")
	for level := 2; level <= calc.DrillLevels; level++ {
		r.press("pgdown").fits().sees(fmt.Sprintf("Level %d begins.", level), fmt.Sprintf("level %d, seed", level))
	}
	r.press("pgdown").sees("Levels go from 1 to 5.", "level 5", "centimetres")
}

// In a small window what is known and said scrolls, and what is asked stays.
func TestDrillInSmallWindows(t *testing.T) {
	for level := range calc.DrillLevels {
		r := sitWithExample(t, "choir-blouse", 60, 16).press("ctrl+d")
		for range level {
			r.press("pgdown")
		}
		for range 30 {
			r.press("?").fits()
		}
	}
	r := sitWithExample(t, "choir-blouse", 60, 16).press("ctrl+d", "pgdown", "pgdown", "pgdown", "pgdown", "?", "?", "?")
	for range 30 {
		r.press("up")
	}
	r.fits().sees("Problem 1 of 5.", "lines more below", "> ")
	for range 30 {
		r.press("down")
	}
	r.fits().doesNotSee("lines more below")
	for _, size := range [][2]int{{59, 16}, {60, 15}, {20, 5}, {1, 1}} {
		r := sitWithExample(t, "choir-blouse", size[0], size[1]).press("ctrl+d", "?", "1", "enter", "esc").fits()
		if size[0] > 20 {
			r.sees("Nothing is lost")
		}
	}
}
