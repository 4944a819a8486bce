package tracing

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"capscye/calc"
	"capscye/calc/trace"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

// The steps of eight plans in words. An amount that stands in them is the
// plan's mark; the order is the order of the hands.
func TestStepsAtTheTable(t *testing.T) {
	for i, p := range props.Plans {
		t.Run(p.Name, func(t *testing.T) { golden.RequireEqual(t, Text(props.Planned(t, i))) })
	}
}

// Every amount in the steps is the mark of its side, every altered side is
// marked, and nothing that is not altered is touched.
func TestStepsFollowThePlan(t *testing.T) {
	for i, p := range props.Plans {
		r := props.Planned(t, i)
		marked := map[calc.Side]bool{}
		ids := map[string]bool{}
		for _, s := range r.TraceSteps() {
			if ids[s.ID()] {
				t.Errorf("%s: two steps are called %s", p.Name, s.ID())
			}
			ids[s.ID()] = true
			side := r.Plan.Sides[s.Side]
			switch s.Action {
			case trace.Mark, trace.SameAgain, trace.Pin, trace.TurnTo, trace.SlideOut:
				if s.Pivot != side.PivotMark || s.Slide != side.SlideMark {
					t.Errorf("%s, %s: %v and %v, the plan has %v and %v", p.Name, s.Name, s.Pivot, s.Slide, side.PivotMark, side.SlideMark)
				}
				marked[s.Side] = true
			}
			if s.Action == trace.TurnTo && s.Pivot == 0 || s.Action == trace.SlideOut && s.Slide == 0 {
				t.Errorf("%s, %s: nothing to turn or to slide", p.Name, s.Name)
			}
			if text := Sentence(s, r.Scale); strings.Contains(text, "-") && strings.Contains(text, " -") {
				t.Errorf("%s, %s: a minus sign that somebody will overlook: %s", p.Name, s.Name, text)
			}
		}
		for _, s := range calc.Sides() {
			altered := r.Plan.Sides[s].PivotMark != 0 || r.Plan.Sides[s].SlideMark != 0
			if marked[s] != altered {
				t.Errorf("%s: side %d is altered %v and marked %v", p.Name, s, altered, marked[s])
			}
		}
	}
}

// The words of the table go by the marks: with a coarse ruler the cap that is
// measured is the cap that was marked.
func TestExpectedLengthsAreThoseOfTheMarks(t *testing.T) {
	d, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	d.Sheet.Set(worksheets.Ruler, "1/2 in")
	r := report.Reckon(d, props.SomeDay, 0)
	marks := r.Plan.Sides[calc.SleeveFront].SlideMark + r.Plan.Sides[calc.SleeveBack].SlideMark
	want := "The cap should measure " + r.Scale.Format(r.Plan.Seams.CapBefore.Length+marks)
	if text := Text(r); !strings.Contains(strings.Join(strings.Fields(text), " "), want) {
		t.Errorf("%q is not in\n%s", want, text)
	}
}
