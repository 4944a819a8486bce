package screen

import (
	"fmt"
	"os"
	"runtime"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"capscye/calc"
	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/worksheets"
)

// spent is what a key cost. A frame is drawn for every message, as the library
// does it: one for the key, and one more where a save reports back.
type spent struct{ frames, plans, steps, workings, drawings, pictures int64 }

// did counts one piece of work.
func (s *spent) did(w report.Work) {
	*map[report.Work]*int64{report.ReckonedPlan: &s.plans, report.ListedSteps: &s.steps, report.ListedWorking: &s.workings,
		report.DrewCurves: &s.drawings, report.DrewPicture: &s.pictures}[w]++
}

// sitCounting opens a document on a screen whose work is counted.
func sitCounting(t *testing.T, d *worksheets.Document, width, height int) (*robot.Robot, *spent) {
	t.Helper()
	var soFar spent
	m := &root{styles: parts.NewStyles(os.Stdout, termenv.Ascii, false), today: props.SomeDay, did: soFar.did}
	return sitAt(t, m, d, width, height), &soFar
}

// spend presses a key and draws every frame that comes of it.
func spend(r *robot.Robot, soFar *spent, key string) spent {
	r.T.Helper()
	before, frames := *soFar, int64(0)
	for queue := []tea.Msg{r.Key(key)}; len(queue) > 0; queue = queue[1:] {
		_, cmd := r.Model.Update(queue[0])
		r.Model.View()
		frames++
		if cmd != nil {
			queue = append(queue, cmd())
		}
	}
	after := *soFar
	return spent{frames, after.plans - before.plans, after.steps - before.steps, after.workings - before.workings,
		after.drawings - before.drawings, after.pictures - before.pictures}
}

// Work is done once. What each key costs is counted, not timed, in a window of
// 120 x 40, where every frame of a form shows two pictures: sleeve and bodice.
//
//   - A letter that reads as a length costs one plan, for the pictures, and the
//     curves of both pieces. One that does not costs none.
//   - What was typed costs no further plan when it is kept: it was foreseen. The
//     curves are there too. The second frame says that it is saved.
//   - Whatever only moves the hands costs no plan and no curve, just dots.
//   - A push, a nudge or a choice is a changed sheet: one plan, two curves.
//   - A tick is a changed sheet too. The piece of a step is drawn as it lies in
//     that step, so it has its own curve in every frame.
//   - Beside copies, a change of a copy costs the plan of that copy. A change of
//     the sheet costs its own, and one for each copy that follows. Its verdict counts
//     the steps that are ticked, so they are listed.
func TestWorkIsDoneOnce(t *testing.T) {
	props.Lay(t, "choir-blouse")
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	r, soFar := sitCounting(t, d, 120, 40)
	r.Model.View()
	for i, c := range []struct {
		key  string
		why  string
		want spent
	}{
		{"1", "a letter", spent{frames: 1, plans: 1, drawings: 2, pictures: 2}},
		{"4", "a letter", spent{frames: 1, plans: 1, drawings: 2, pictures: 2}},
		{"x", "a letter that makes it unreadable", spent{frames: 1, pictures: 2}},
		{"backspace", "readable again", spent{frames: 1, plans: 1, drawings: 2, pictures: 2}},
		{"enter", "kept, as it was foreseen", spent{frames: 2, pictures: 4}},
		{"tab", "the next field", spent{frames: 1, pictures: 2}},
		{"shift+tab", "the field before", spent{frames: 1, pictures: 2}},
		{"right", "a nudge", spent{frames: 2, plans: 1, drawings: 2, pictures: 4}},
		{"ctrl+z", "undo", spent{frames: 2, plans: 1, drawings: 2, pictures: 4}},
		{"ctrl+t", "the other unit: all words anew", spent{frames: 1, plans: 1, drawings: 2, pictures: 2}},
		{"ctrl+t", "and back", spent{frames: 1, plans: 1, drawings: 2, pictures: 2}},
		{"f4", "to the slide", spent{frames: 1, pictures: 2}},
		{"right", "a push", spent{frames: 2, plans: 1, drawings: 2, pictures: 4}},
		{"l", "the least slide", spent{frames: 2, plans: 1, drawings: 2, pictures: 4}},
		{"l", "it is the least already", spent{frames: 1, pictures: 2}},
		{"f5", "a page", spent{frames: 1, pictures: 2}},
		{"down", "scrolled", spent{frames: 1, pictures: 2}},
		{"ctrl+r", "the working", spent{frames: 1, workings: 1}},
		{"down", "scrolled", spent{frames: 1}},
		{"esc", "back", spent{frames: 1, pictures: 2}},
		{"f6", "the steps at the table", spent{frames: 1, steps: 1, drawings: 1, pictures: 1}},
		{"down", "the next step", spent{frames: 1, drawings: 1, pictures: 1}},
		{" ", "ticked off", spent{frames: 2, plans: 1, steps: 1, drawings: 2, pictures: 2}},
		{"t", "as large as the screen", spent{frames: 1, drawings: 1, pictures: 1}},
		{"esc", "back", spent{frames: 1, drawings: 1, pictures: 1}},
		{"f2", "to the ease", spent{frames: 1, drawings: 2, pictures: 2}},
		{"ctrl+l", "a copy: the same answers", spent{frames: 1, pictures: 2}},
		{"right", "a nudge in the copy; what differs leaves room for one picture", spent{frames: 1, plans: 1, steps: 1, drawings: 1, pictures: 1}},
		{"ctrl+g", "to the sheet", spent{frames: 1, pictures: 1}},
		{"tab", "to an ease that the copy has from the sheet", spent{frames: 1, pictures: 1}},
		{"right", "a nudge that the copy follows", spent{frames: 2, plans: 2, steps: 1, drawings: 1, pictures: 2}},
		{"ctrl+g", "to the copy, whose verdict is said now", spent{frames: 1, steps: 1, drawings: 1, pictures: 1}},
	} {
		if got := spend(r, soFar, c.key); got != c.want {
			t.Errorf("%d, %s, %s: %+v, want %+v", i, c.key, c.why, got, c.want)
		}
	}
}

// A window that is moved about costs frames, and the drill needs no plan for the
// words of a problem.
func TestFramesReckonNothing(t *testing.T) {
	d, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	r, soFar := sitCounting(t, d, 80, 24)
	for _, key := range []string{"f1", "f2", "f3", "f4", "f5", "f6", "t", "esc", "ctrl+k", "esc", "ctrl+r", "esc", "ctrl+d"} {
		r.Press(key)
		r.Model.View()
		before := *soFar
		for width := 60; width < 140; width += 7 {
			r.Tell(tea.WindowSizeMsg{Width: width, Height: width / 3})
			r.Model.View()
		}
		after := *soFar
		if after.plans != before.plans || after.steps != before.steps || after.workings != before.workings {
			t.Errorf("%s: %+v, then %+v", key, before, after)
		}
	}
}

// What one plan allocates: the tally; two lists of terms for the band of either
// half; and the list of the findings, which has room for eight.
func TestAllocationsOfAPlan(t *testing.T) {
	in := report.Input(&rootOf(sitWithExample(t, "choir-blouse", 80, 24)).desk.Doc.Sheet, props.SomeDay)
	calc.Compute(in)
	if got := testing.AllocsPerRun(100, func() { calc.Compute(in) }); got != 1+2*2+1 {
		t.Errorf("%v allocations", got)
	}
}

// Nothing of ours runs while nobody does anything: no timer, no goroutine but the
// one that waits for signals, which is started with the program and not here.
func TestIdleRunsNothing(t *testing.T) {
	before := runtime.NumGoroutine()
	r := sitWithFile(t, "choir-blouse", 120, 40)
	r.Types("14").Press("enter", "f4", "right", "f6", " ", "t", "esc", "ctrl+k", "esc", "ctrl+d", "1", "esc", "ctrl+c")
	time.Sleep(10 * time.Millisecond)
	if after := runtime.NumGoroutine(); after > before {
		var stacks strings.Builder
		buf := make([]byte, 1<<16)
		fmt.Fprintf(&stacks, "%s", buf[:runtime.Stack(buf, true)])
		t.Errorf("%d goroutines, then %d:\n%s", before, after, stacks.String())
	}
}
