package screen

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"capscye/ui/drill"
	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/ui/wording"
)

// The drill as a person sees it: a question with a slip just recognised, the
// working shown in level 5, and the score.
func TestDrillAsSeen(t *testing.T) {
	for _, size := range []struct{ width, height int }{{80, 24}, {120, 40}} {
		seen := func(name string, script func(*robot.Robot)) {
			t.Run(fmt.Sprintf("%dx%d/%s", size.width, size.height, name), func(t *testing.T) {
				r := lookAt(t, "choir-blouse", size.width, size.height).Press("ctrl+d")
				script(r)
				golden.RequireEqual(t, r.Fits().Screen()+"\n")
			})
		}
		seen("slip", func(r *robot.Robot) {
			_, q := rootOf(r).front.(*drillPage).lesson.Now()
			r.Types(q.Missteps[0].Value.String()).Press("enter").Types("13.3")
		})
		seen("working", func(r *robot.Robot) {
			r.Press("pgdown", "pgdown", "pgdown", "pgdown")
			r.Press("?")
			for range 11 { // the working of one step is in sight when that of the next is asked for
				r.Press("?", "?")
			}
		})
		seen("score", func(r *robot.Robot) { r.Types("1").Press("enter", "?", "esc") })
	}
}

// rightNow is the right answer to the question at hand, as somebody types it.
func rightNow(r *robot.Robot) string {
	p, q := rootOf(r).front.(*drillPage).lesson.Now()
	return drill.Scale(p).Exact(q.Right)
}

// Somebody goes through a whole drill by keys.
func TestDrillByKeys(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("ctrl+d").Sees("Drill: practise the arithmetic", "Problem 1 of 5.", "level 1")
	page := rootOf(r).front.(*drillPage)
	r.Types("13 3/4").Sees("[13 3/4", "= 13 3/4 in = ~34.9 cm").Press("backspace", "backspace").Sees("cannot be read")
	r.Press("enter").Sees("This does not count as an answer.", "[13 3")
	for range 4 {
		r.Press("backspace")
	}
	for n := 0; !page.lesson.Ended(); n++ {
		if n > 50 {
			t.Fatal("it does not end")
		}
		r.Types(rightNow(r)).Press("enter").Fits().Sees("Right: ")
		if page.lesson.Finished() { // it stays, for whoever wants to look at it
			at := page.lesson.At
			r.Press("x", "?", "down").Sees("This problem is done. Enter for the next.", "Done: ")
			r.Press("enter").Sees(fmt.Sprintf("Problem %d of 5.", at+2))
		}
	}
	r.Sees("20 of 20 right.", "another drill")
	r.Press("enter").Sees(fmt.Sprintf("seed %d", drill.ClockSeed(props.SomeDay)+1), "Problem 1 of 5.")
	r.Press("esc").Sees("[1 Body]") // nothing was answered: no score
}

// Esc shows the score first, and then goes back to where the drill was begun.
func TestDrillGoesBack(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("ctrl+d", "?", "esc").Sees("Level 1, seed", "1 shown")
	r.Press("esc").Sees("Choir blouse, for Odile", "[1 Body]")
	r.Press("ctrl+o", "end").Sees("> Drill: practise the arithmetic").Press("enter").Sees("Problem 1 of 5.").Press("esc", "esc").Sees("[1 Body]")
	r.Press("ctrl+o", "end", "enter", "ctrl+c")
	if !r.Ended {
		t.Error("ctrl+c does not end the program")
	}
}

// A drill that is left waits: it goes on at its step, from the worksheet, from the list, and
// from another worksheet, in whatever window.
func TestDrillGoesOnWhereItWasLeft(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("ctrl+d", "pgdown", "pgdown", "pgdown", "pgdown").Sees("level 5")
	for range 12 {
		r.Types(rightNow(r)).Press("enter")
	}
	there := []string{"level 5, seed", "Problem 1 of 2.", "Done: sleeve flat width", "> How much does the sleeve front pivot?"}
	r.Sees("Done: sleeve flat width", "> How much does the sleeve front pivot?").Press("esc").Sees("12 of 12 right.", "^d in a worksheet goes on here")
	r.Press("esc").Sees("[1 Body]").Press("ctrl+d").Fits().Sees(there[3]).DoesNotSee("level 1")
	for range 30 {
		r.Press("up")
	}
	r.Sees(there[:2]...).Press("esc", "esc", "ctrl+o", "end", "enter").Sees(there[3], "level 5")
	r.Press("esc", "esc")
	r.Tell(tea.WindowSizeMsg{Width: 60, Height: 16})
	r.Press("ctrl+d").Fits().Sees(there[3]).Types(rightNow(r)).Press("enter").Sees("Right: ").Press("esc").Sees("13 of 13 right.")
	r.Press("enter").Sees("> How much does the sleeve back pivot?")
}

// What is typed of a step waits too, though the first esc of those that leave takes it out
// of the line; an answer that was given does not come back.
func TestDrillKeepsAStepHalfTyped(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("ctrl+d").Types("1/4").Press("esc").Sees("[      ", "As it was. Esc again leaves the drill.")
	r.Press("esc").Sees("[1 Body]").Press("ctrl+d").Sees("[1/4 ", "= 1/4 in", "Problem 1 of 5.")
	r.Press("esc").Types("7").Press("esc").Press("esc", "ctrl+d").Sees("[7 ").Press("backspace")
	r.Types(rightNow(r)).Press("enter").Sees("Right: ").Types("3/8").Press("esc").Sees("As it was. Esc again shows the score.")
	r.Press("esc").Sees("1 of 1 right.").Press("enter").Sees("[3/8 ").Press("esc", "esc", "esc", "ctrl+d").Sees("[3/8 ")
	r.Press("backspace", "backspace", "backspace").Types(rightNow(r)).Press("enter", "esc", "enter").Sees("[      ", "How wide is the b")
}

// The working stays in sight until the next answer, whatever else is pressed, and asking to
// read it again does not give the next step away.
func TestDrillKeepsTheWorkingInSight(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("ctrl+d", "?").Sees("The working:", "sleeve flat width\n", "> How wide is the front")
	r.Press("?").Fits().Sees("This working is of the last step. Press ? again for the answer to this one.", "sleeve flat width\n", "> How wide is the front")
	r.Press("enter").Sees("Type a length; ? shows the working.", "sleeve flat width\n").DoesNotSee("Press ? again")
	r.Press("x").Sees(`"x" begins no answer here`, "sleeve flat width\n").Press("9", "-").Sees("[9-").Press("enter").Sees("This does not count as an answer.", "sleeve flat width\n")
	r.Press("esc").Sees("As it was.", "sleeve flat width\n").Press("pgdown").Sees("Press again to start level 2", "sleeve flat width\n")
	r.Press("up", "?").Sees("Press ? again", "sleeve flat width\n").Press("?").Sees("front width between seam lines\n", "> How wide is the b").DoesNotSee("sleeve flat width\n")
	r.Press("9", "enter").Sees("Not right.").DoesNotSee("The working:").Press("esc", "enter").Sees("Not right.")
	r.Press("?").Sees("The working:") // of a step that was tried, nothing else is in sight
	r.Press("esc").Sees("0 of 3 right, 3 shown.")

	// What is long scrolls, and its end stays in sight too.
	r = sitWithExample(t, "choir-blouse", 60, 16).Press("ctrl+d", "pgdown", "?", "?", "?").Fits()
	last := strings.Split(r.Screen(), "\n")[11]
	r.Press("?").Fits().Sees("Press ? again", last).Press("down").DoesNotSee("Press ? again").Sees(last)
}

// With an answer typed, ? asks what is meant: nothing is thrown away or counted unasked.
func TestDrillAsksBeforeItThrowsAnAnswerAway(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("ctrl+d").Types("1/4?").Fits()
	r.Sees("[1/4 ", "1/4 is not checked yet: enter checks it, ? again shows the working.", "> How wide is the sleeve").DoesNotSee("The working:")
	r.Press("backspace").Sees("[1/ ").DoesNotSee("not checked yet").Press("?").Sees("1/ is not checked yet").Press("4", "enter").Sees("Not right.", "> How wide is the sleeve")
	r.Types("3/8?").Sees("3/8 is not checked yet").Press("?").Sees("You typed 3/8. The working:", "> How wide is the front", "[      ")
	r.Press("esc").Sees("0 of 1 right, 1 shown.")
}

// The words of the trade are a key away, from the one that is asked about on, and the drill
// comes back as it was; so it does where no worksheet is open.
func TestDrillShowsTheWords(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("ctrl+d").Sees("^e words").Types("13 1").Press("ctrl+e").Fits()
	r.Sees("Words   any other key goes back", "> flat width: The pattern laid flat").Press("down", "x").Sees("[13 1 ", "> How wide is the sleeve")
	r.Press("backspace", "backspace", "?").Press("?").Press("ctrl+e").Sees("> seam line: The line on which a piece is sewn").Press("esc").Sees("The working:", "> How wide is the front")
	r.Press("esc").Sees("1 shown").Press("ctrl+e").Sees("> seam line").Press("esc").Sees("1 shown", "goes on")
	r.Press("ctrl+e")
	r.Tell(tea.WindowSizeMsg{Width: 60, Height: 16})
	r.Press("esc").Fits().Press("enter").Fits().Sees("> How wide is the front")

	r = class(t, 80, 24).Press("end").Sees("> Drill: practise").Press("enter", "ctrl+e").Sees("Words").Press("esc").Sees("Problem 1 of 5.")
	r.Press("esc").Sees("Worksheets of this folder").DoesNotSee("Problem 1")
}

// Every question is about a word that is explained.
func TestEveryQuestionHasAWord(t *testing.T) {
	seen := 0
	for level := 1; level <= drill.Levels; level++ {
		for seed := range uint64(5) {
			for l := drill.NewLesson(seed, level, 3); !l.Ended(); l.GoOn() {
				word := l.Word()
				if !slices.ContainsFunc(wording.Glossary, func(t wording.Word) bool { return t.Word == word }) {
					p, q := l.Now()
					t.Errorf("%q is about %q, which the glossary has not", drill.AskWords(q, p), word)
				}
				seen++
				l.Answer("?")
			}
		}
	}
	if seen < 500 {
		t.Errorf("only %d questions", seen)
	}
}

// A key of the worksheet says that it is one, and loses nothing; the key that brought the
// drill takes it away. Those that move in a line of input do so.
func TestDrillSaysWhereAKeyWorks(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("ctrl+d", "?").Types("13")
	for key, shown := range map[string]string{"ctrl+o": "^o", "ctrl+s": "^s", "ctrl+k": "^k", "ctrl+n": "^n", "f4": "f4"} {
		r.Press(key).Fits().Sees(shown+" works in the worksheet; ^d leaves the drill for it, and the drill waits.", "The working:", "[13 ")
	}
	r.Press("ctrl+r").Sees("^r works in the worksheet; here ? shows the working.", "[13 ").Press("ctrl+a").Types("2").Sees("[213 ").DoesNotSee("works in the worksheet")
	r.Press("ctrl+d").Sees("[1 Body]").Press("ctrl+r").Sees("sleeve larger arm").Press("esc", "ctrl+d").Sees("The working:", "[213 ")
	r.Press("esc", "esc", "ctrl+o").Sees("^o works in the worksheet", "1 shown").Press("ctrl+d").Sees("[1 Body]")
}

// The working of a slide begins with what a teacher says, and is all there below.
func TestDrillSaysWhyNothingSlides(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 40).Press("ctrl+d", "pgdown", "pgdown")
	for !strings.Contains(r.Screen(), "> What is the least slide") {
		r.Types(rightNow(r)).Press("enter")
	}
	r.Press("?").Fits().Sees("Each sleeve side needs ", "so nothing slides. The working:", "sleeve side need less the limit\n", "  slide\n      = the nearest to 0 between").DoesNotSee("sleeve front")
}

// A key goes to another level; there is none beyond the last.
func TestDrillChangesLevel(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("ctrl+d", "pgup").Sees("Levels go from 1 to 6.", "level 1, seed")
	for level := 2; level <= drill.Levels; level++ {
		r.Press("pgdown").Fits().Sees(fmt.Sprintf("Level %d begins.", level), fmt.Sprintf("level %d, seed", level))
	}
	r.Press("pgdown").Sees("Levels go from 1 to 6.", "level 6", "in inches")
}

// In a small window what is known and said scrolls, and what is asked stays.
func TestDrillInSmallWindows(t *testing.T) {
	for level := range drill.Levels {
		r := sitWithExample(t, "choir-blouse", 60, 16).Press("ctrl+d")
		for range level {
			r.Press("pgdown")
		}
		for range 60 {
			r.Press("?").Fits()
		}
	}
	r := sitWithExample(t, "choir-blouse", 60, 16).Press("ctrl+d", "pgdown", "pgdown", "pgdown", "pgdown", "?", "?", "?", "?", "?")
	for range 30 {
		r.Press("up")
	}
	r.Fits().Sees("Problem 1 of 2.", "lines more below", "> ")
	for range 30 {
		r.Press("down")
	}
	r.Fits().DoesNotSee("lines more below")
	for _, size := range [][2]int{{59, 16}, {60, 15}, {20, 5}, {1, 1}} {
		r := sitWithExample(t, "choir-blouse", size[0], size[1]).Press("ctrl+d", "?", "1", "enter", "esc").Fits()
		if size[0] > 20 {
			r.Sees("Nothing is lost")
		}
	}
}
