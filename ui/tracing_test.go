package ui

import (
	"fmt"
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/worksheets"
)

// plans are eight kinds of work at the table.
var plans = []struct {
	name, example string
	set           map[worksheets.Key]string
}{
	{"both-pieces", "choir-blouse", nil},
	{"long-and-front-unlike-back", "archive-coat", nil},
	{"bust-only", "allotment-shirt", nil},
	{"coming-in", "costume-tunic", nil},
	{"pivot-alone", "choir-blouse", map[worksheets.Key]string{worksheets.EaseBicep: "1", worksheets.Bust: ""}},
	{"slide-alone", "choir-blouse", map[worksheets.Key]string{worksheets.Slide: "1 1/4"}},
	{"bodice-kept", "choir-blouse", map[worksheets.Key]string{worksheets.Armhole: "keep", worksheets.Bust: ""}},
	{"held", "choir-blouse", map[worksheets.Key]string{worksheets.EaseBicep: "5", worksheets.Follow: "hold"}},
}

func planned(t *testing.T, i int) report.Report {
	t.Helper()
	d, err := worksheets.Example(plans[i].example)
	if err != nil {
		t.Fatal(err)
	}
	for k, text := range plans[i].set {
		if err := d.Sheet.Set(k, text); err != nil {
			t.Fatal(err)
		}
	}
	return report.Reckon(d, someDay, 0)
}

// The steps of eight plans in words. An amount that stands in them is the
// plan's mark; the order is the order of the hands.
func TestStepsAtTheTable(t *testing.T) {
	for i, p := range plans {
		t.Run(p.name, func(t *testing.T) { golden.RequireEqual(t, traceText(planned(t, i))) })
	}
}

// Every amount in the steps is the mark of its side, every altered side is
// marked, and nothing that is not altered is touched.
func TestStepsFollowThePlan(t *testing.T) {
	for i, p := range plans {
		r := planned(t, i)
		marked := map[calc.Side]bool{}
		ids := map[string]bool{}
		for _, s := range r.TraceSteps() {
			if ids[s.ID()] {
				t.Errorf("%s: two steps are called %s", p.name, s.ID())
			}
			ids[s.ID()] = true
			side := r.Plan.Sides[s.Side]
			switch s.Action {
			case calc.Mark, calc.SameAgain, calc.Pin, calc.TurnTo, calc.SlideOut:
				if s.Pivot != side.PivotMark || s.Slide != side.SlideMark {
					t.Errorf("%s, %s: %v and %v, the plan has %v and %v", p.name, s.Name, s.Pivot, s.Slide, side.PivotMark, side.SlideMark)
				}
				marked[s.Side] = true
			}
			if s.Action == calc.TurnTo && s.Pivot == 0 || s.Action == calc.SlideOut && s.Slide == 0 {
				t.Errorf("%s, %s: nothing to turn or to slide", p.name, s.Name)
			}
			if text := stepText(s, r); strings.Contains(text, "-") && strings.Contains(text, " -") {
				t.Errorf("%s, %s: a minus sign that somebody will overlook: %s", p.name, s.Name, text)
			}
		}
		for _, s := range calc.Sides() {
			altered := r.Plan.Sides[s].PivotMark != 0 || r.Plan.Sides[s].SlideMark != 0
			if marked[s] != altered {
				t.Errorf("%s: side %d is altered %v and marked %v", p.name, s, altered, marked[s])
			}
		}
	}
}

// Space ticks a step off, saves it, and goes on; space on it again takes it back.
func TestTickingOff(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("f6").sees("Lay: sleeve  (1 of 24, to do)")
	r.press(" ", " ").sees("Pin: sleeve, front first  (3 of 24, to do)", "xx[ ]...")
	if got := read(t, "sheet.toml"); !strings.Contains(got, `done = ["sleeve-lay", "sleeve-front-mark@25.4+6.35"]`) {
		t.Errorf("the file is now\n%s", got)
	}
	r.press("up").sees("Mark: sleeve, front first  (2 of 24, done)").press("x").sees("(2 of 24, to do)")
	// Opened again, it begins where the hands stopped.
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	sit(t, d, 80, 24).press("f6").sees("(2 of 24, to do)")
}

// Space on a step that is done goes on to the next that is not, and undoes
// nothing.
func TestTickingNeverUndoes(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).press("f6", " ", " ", " ", "home", " ").sees("(4 of 24, to do)", "xxx[ ]")
	r.press("end").sees("(24 of 24, to do)").press(" ", " ").sees("(24 of 24, done)")
	r.press("home", "right").sees("Lay: bodice front").press("right").sees("bodice back").press("left").sees("Lay: bodice front")
}

// What was done with other amounts is not done: cap and armhole would no longer
// match.
func TestTicksKnowTheirAmounts(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("f6", " ", " ", " ", " ", " ", " ")
	r.press("f1").types("13").press("tab", "delete", "enter", "f6").sees("(2 of 22, done with other amounts: do it again)", "x[ ]..")
	r.press("ctrl+z", "ctrl+z", "f6").sees("(7 of 24, to do)")
}

// The words of the table go by the marks: with a coarse ruler the cap that is
// measured is the cap that was marked.
func TestExpectedLengthsAreThoseOfTheMarks(t *testing.T) {
	d, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	d.Sheet.Set(worksheets.Ruler, "1/2 in")
	r := report.Reckon(d, someDay, 0)
	marks := r.Plan.Sides[calc.SleeveFront].SlideMark + r.Plan.Sides[calc.SleeveBack].SlideMark
	want := "The cap should measure " + r.Scale.Format(r.Plan.Seams.CapBefore.Length+marks)
	if text := traceText(r); !strings.Contains(strings.Join(strings.Fields(text), " "), want) {
		t.Errorf("%q is not in\n%s", want, text)
	}
}

// The table view is readable across a table: the amount at least five rows tall,
// verb, piece and picture, in any window that has room, and in words in any
// that has not.
func TestTableView(t *testing.T) {
	t.Run("80x24", func(t *testing.T) {
		r := sitWithExample(t, "choir-blouse", 80, 24).press("f6", "down", "t").fits()
		golden.RequireEqual(t, r.screen()+"\n")
	})
	r := sitWithExample(t, "choir-blouse", 80, 24).press("f6", "t").sees("LAY  sleeve").press(" ").sees("MARK  sleeve, front first")
	r.press("down", "down").sees("TURN").press("esc").sees("6 TRACE")
	for _, size := range []struct{ w, h int }{{1, 1}, {20, 5}, {30, 10}, {60, 16}, {120, 40}, {500, 200}} {
		r.tell(tea.WindowSizeMsg{Width: size.w, Height: size.h})
		r.press("t")
		for range 26 {
			r.press("down").fits()
		}
		if size.w >= 20 && size.h >= 5 {
			r.sees("TEST GARMENT")
		}
		r.press("esc")
	}
}

func TestTraceCommand(t *testing.T) {
	status, out, errs := run("", "trace", example("choir-blouse"))
	if status != 0 || errs != "" || out != traceText(planned(t, 0)) {
		t.Errorf("status %d, %s\n%s", status, errs, out)
	}
	if status, _, errs := run("", "trace"); status != 2 || !strings.Contains(errs, "one file is needed") {
		t.Errorf("status %d, %s", status, errs)
	}
	t.Chdir(t.TempDir())
	os.WriteFile("half.toml", []byte("[body]\nbicep = \"13\"\n"), 0o644)
	if status, out, _ := run("", "trace", "half.toml"); status != 1 || !strings.Contains(out, "Nothing is planned until every answer is there.") {
		t.Errorf("status %d\n%s", status, out)
	}
}

// A read-only sheet is not ticked off.
func TestTickingOffAReadOnlySheet(t *testing.T) {
	d, err := worksheets.Decode("x.toml", []byte(fmt.Sprintf("version = 2\n[body]\nbicep = %q\n[ease]\nbicep = %q\n[sleeve]\nwidth = %q\n", "13", "2", "14")))
	if err != nil {
		t.Fatal(err)
	}
	r := sit(t, d, 80, 24).press("f6", " ")
	r.sees("Read-only", "(1 of ")
}
