package screen

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// Space ticks a step off, saves it, and goes on; x takes it back.
func TestTickingOff(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f6").Sees("Lay: sleeve  (1 of 24, to do)")
	r.Press(" ", " ").Sees("Pin: sleeve, front first  (3 of 24, to do)", "xx[ ]...")
	if got := props.Read(t, "sheet.toml"); !regexp.MustCompile(`done = \["sleeve-lay#[0-9a-f]{8}", "sleeve-front-mark@25.4\+6.35"\]`).MatchString(got) {
		t.Errorf("the file is now\n%s", got)
	}
	r.Press("up").Sees("Mark: sleeve, front first  (2 of 24, done)").Press("x").Sees("(2 of 24, to do)")
	// Opened again, it begins where the hands stopped.
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	sit(t, d, 80, 24).Press("f6").Sees("(2 of 24, to do)")
}

// Each tick can be taken back, whatever the step is remembered by: its amounts, its words,
// both or neither.
func TestEveryTickCanBeTakenBack(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f6")
	for n := 1; n <= 24; n++ {
		r.Press("home")
		for range n - 1 {
			r.Press("down")
		}
		r.Press(" ")
		if n < 24 { // from the last there is nowhere to go on to
			r.Press("up")
		}
		r.Sees(fmt.Sprintf("(%d of 24, done)", n)).Press("x").Sees(fmt.Sprintf("(%d of 24, to do)", n))
	}
	if got := props.Read(t, "sheet.toml"); !strings.Contains(got, "done = []") {
		t.Errorf("the file is now\n%s", got)
	}
}

// Space on a step that is done goes on to the next that is not, and undoes
// nothing.
func TestTickingNeverUndoes(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("f6", " ", " ", " ", "home", " ").Sees("(4 of 24, to do)", "xxx[ ]")
	r.Press("end").Sees("(24 of 24, to do)").Press(" ", " ").Sees("(24 of 24, done)")
	r.Press("home", "right").Sees("Lay: bodice front").Press("right").Sees("bodice back").Press("left").Sees("Lay: bodice front")
}

// What was done with other amounts is not done: cap and armhole would no longer
// match.
func TestTicksKnowTheirAmounts(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f6", " ", " ", " ", " ", " ", " ")
	r.Press("f1").Types("13").Press("tab", "delete", "enter", "f6").Sees("(2 of 22, it has changed: do it again)", "x[ ]..")
	r.Press("ctrl+z", "ctrl+z", "f6").Sees("(7 of 24, to do)")
}

// The table view is readable across a table: verb, piece, which step of how many, the
// amount as tall as the window allows, the whole instruction, the picture, and how to
// leave, in any window that has room; in words in any that has not.
func TestTableView(t *testing.T) {
	for _, size := range []struct{ width, height, tall int }{{80, 24, 10}, {120, 40, 15}} {
		t.Run(fmt.Sprintf("%dx%d", size.width, size.height), func(t *testing.T) {
			r := lookAt(t, "choir-blouse", size.width, size.height).Press("f6", "down", "t").Fits()
			golden.RequireEqual(t, r.Screen()+"\n")
			r.Sees("step 2 of 24", "mark the pivot 1 in out from the underarm point and", "the slide 1/4 in beyond it.", "Back", "esc leaves")
			if rows := regexp.MustCompile(`(?m)^.*#.*$`).FindAllString(r.Screen(), -1); len(rows) < size.tall {
				t.Errorf("digits of %d rows, want %d", len(rows), size.tall)
			}
		})
	}
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("f6", "t").Sees("LAY  sleeve").Press(" ").Sees("MARK  sleeve, front first")
	r.Press("down", "down").Sees("PIVOT").Press("esc").Sees("[6 Trace]")
	for _, size := range []struct{ w, h int }{{1, 1}, {20, 5}, {30, 10}, {60, 16}, {120, 40}, {500, 200}} {
		r.Tell(tea.WindowSizeMsg{Width: size.w, Height: size.h})
		r.Press("t")
		for range 26 {
			r.Press("down").Fits()
			if size.w >= 60 && size.h >= 16 {
				r.Sees("esc leaves", "step ")
			}
		}
		if size.w >= 20 && size.h >= 5 {
			r.Sees("TEST GARMENT")
		}
		r.Press("esc")
	}
}

// A read-only sheet is not ticked off.
func TestTickingOffAReadOnlySheet(t *testing.T) {
	d, err := worksheets.Decode("x.toml", []byte(fmt.Sprintf("version = 2\n[body]\nbicep = %q\n[ease]\nbicep = %q\n[sleeve]\nmeasured = \"seam\"\nwidth = %q\n", "13", "2", "14")))
	if err != nil {
		t.Fatal(err)
	}
	r := sit(t, d, 80, 24).Press("f6", " ")
	r.Sees("Read-only", "(1 of ")
}

// Why there are no steps is said whole, in any window.
func TestWhyThereAreNoStepsIsSaidWhole(t *testing.T) {
	for _, width := range []int{80, 120} {
		r := sitWithExample(t, "choir-blouse", width, 40).Press("f2").Types("17 3/4").Press("enter", "f6")
		var page []string // without what stands beside it
		for _, line := range strings.Split(r.Fits().Screen(), "\n") {
			page = append(page, strings.Fields(string([]rune(line)[:min(78, len([]rune(line)))]))...)
		}
		if words := strings.Join(page, " "); !strings.Contains(words, "nobody alters a pattern so far. Check the measurements, or start") || !strings.Contains(words, "another size.") {
			t.Errorf("at %d:\n%s", width, r.Screen())
		}
	}
}

// The paper of another size is not laid when that of the one in hand is; what is done to
// that one is done still when it is taken in hand again.
func TestTicksGoWithTheirSize(t *testing.T) {
	r := sitWithFile(t, "market-smock", 80, 24).Press("f6", " ", " ").Sees("step")
	r.Press("f3", "ctrl+b").Sees("tracing", "ready")
	r.Press("right", "enter").Sees("Size 18 is in hand now").Press("f6").Sees("(1 of ", "[ ]").DoesNotSee("it has changed")
	r.Press("f3", "ctrl+b", "right", "enter").Sees("Size 20 is in hand now").Press("f6").Sees("xx[ ]")
}
