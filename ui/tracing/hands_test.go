package tracing_test

import (
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"capscye/ui/internal/props"
)

// The last judge is the paper: a pair of hands that knows only the printed sentences, and
// a tape. They trace every sheet as trace prints it, and what they measure is what the
// program says and, where the taper begins at the line of the girth, what was asked.

// manySheets is how many random sheets are traced, unless CAPSCYE_TEST_SHEETS says
// otherwise. Fewer than 200 do not bring every sentence.
var manySheets = props.OfMany(240, 600)

func TestHandsTraceRandomSheets(t *testing.T) {
	p, sheets := newProgram(t), many(t)
	faulty, void := 0, 0
	understood, held := map[string]bool{}, map[string]int{}
	for n := range sheets {
		s, kind := randomSheet(n)
		tr := trace(s, p.ask(s), cut(s, false))
		tr.judge()
		tr.stuck()
		if tr.pattern.guessed && tr.fromLine() {
			loose := trace(s, tr.answer, cut(s, true))
			loose.judge()
			for _, f := range loose.faults {
				tr.fault("on a loose pattern: %s", f)
			}
		}
		if n%20 == 0 {
			tr.sameInJSON(p.jsonSteps())
		}
		for text := range tr.hands.understood {
			understood[text] = true
		}
		for what, n := range tr.held {
			held[what] += n
		}
		if tr.void {
			void++
		}
		if len(tr.faults) > 0 {
			faulty++
			t.Errorf("sheet %d, %s:\n  %s\n%s\n%s", n, kind, strings.Join(tr.faults, "\n  "), s.toml(), tr.answer.printed)
		}
		if faulty == tooMany {
			t.Fatalf("%d sheets of the first %d do not trace to what is said", faulty, n+1)
		}
	}
	t.Logf("%d sheets; %d have patterns, as far as these were made up, on which it cannot be done", sheets, void)
	if void > sheets/10 {
		t.Errorf("%d sheets say nothing", void)
	}
	if sheets < manySheets {
		return
	}
	for _, form := range forms() {
		if !understood[form] {
			t.Errorf("no sheet says %q", form)
		}
	}
	for _, what := range []string{"bicep", "bicep as asked", "bust", "bust as asked", "sleeve around", "bodice around", "hem", "hem change", "cap", "armhole", "cap ease",
		"cap by its figures", "armhole by its figures", "half-cap sleeve front", "half-armhole bodice back", "cap less armhole, front",
		"growth sleeve front", "growth bodice back", "growth of sleeve back by its figures", "growth of bodice front by its figures",
		"sleeve front at its line by its figures", "bodice back at its line by its figures", "sleeve across its new underarm points by its figures", "points of the outline", "further down",
		"bicep by the marks", "bust by the marks", "growth of sleeve front as shown", "growth of bodice back as shown", "drawn out"} {
		if held[what] < 5 {
			t.Errorf("%q was held %d times", what, held[what])
		}
	}
	t.Logf("held to what was asked: %d biceps, %d busts; to what is said: %d and %d", held["bicep as asked"], held["bust as asked"], held["bicep"], held["bust"])
}

// forms are all that the hands understand.
func forms() (list []string) {
	for _, r := range grammar {
		list = append(list, r.text)
	}
	for _, p := range pointForms {
		list = append(list, p.form.String())
	}
	return list
}

// tooMany is how many sheets are reported before the rest is given up.
const tooMany = 10

// many is how many random sheets are to be traced.
func many(t *testing.T) int {
	text := os.Getenv("CAPSCYE_TEST_SHEETS")
	if text == "" {
		return manySheets
	}
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// What cannot be read or done is no work: the hands say so, and never guess.
func TestHandsNeverGuess(t *testing.T) {
	const lay = "[ ]  1  Lay the sleeve pattern on fresh paper. Mark both underarm points, where the seam lines of cap and underarm seam cross, one seam allowance from both edges. " +
		"Draw the grain line, and the bicep line through both underarm points and well past them. Trace the shoulder dot and the hem line, from seam line to seam line."
	for _, bad := range []struct{ step, why string }{
		{"Turn the pattern a little.", "do not understand"},
		{"On the bicep line, mark the pivot 1 in out from the underarm point.", "on which of 2 halves"},
		{"Front: on the bicep line, mark the pivot ~1 in out from the underarm point.", "nobody can mark"},
		{"Front: on the level line, mark the pivot 1 in out from the underarm point.", "no level line"},
		{"Front: on the bicep line, mark the pivot 1 in out from the underarm point. Pivot: turn the pattern about the pin, outward, until its underarm seam line passes through the mark.", "no pin"},
		{"Front: on the bicep line, mark the pivot 1 in out from the underarm point and the slide 1 in beyond it. Put the pin in the shoulder dot, on the seam line. " +
			"Pivot: turn the pattern about the pin, outward, until its underarm seam line passes through the mark.", "which"},
		{"Front: on the bicep line, mark the slide 1 in out from the underarm point. Slide the pattern straight out by 1/2 in, without turning it, until its underarm point lies on the mark.", "mm from the mark"},
		{"Front: on the bicep line, mark the slide 1 in out from the underarm point. In a second colour, draw a straight line from the new underarm point to the old hem corner.", "no new underarm point"},
		{"Front: on the bicep line, mark the slide 1 in out from the underarm point. In a second colour, draw a straight line from the mark to the old knee.", "do not know this point"},
	} {
		h := sitDown(cut(sheet{"sleeve.width": "14"}, false))
		err := h.obey(readSteps("Sleeve\n" + lay + "\n[ ]  2  " + bad.step))
		if err == nil || !strings.Contains(err.Error(), bad.why) {
			t.Errorf("%q: %v, want %q", bad.step, err, bad.why)
		}
	}
}

// sameInJSON holds the steps of trace --json against what is printed.
func (t *trial) sameInJSON(texts []string) {
	var printed []string
	for _, s := range readSteps(t.answer.printed) {
		printed = append(printed, s.text)
	}
	if !slices.Equal(texts, printed) {
		t.fault("trace --json says %q", texts)
	}
}
