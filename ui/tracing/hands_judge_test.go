package tracing_test

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"capscye/ui/typeset"
)

// Holding what the tape finds against what the program says, and against what was asked.

// trial is one sheet that was traced.
type trial struct {
	sheet  sheet
	answer answer
	loose  bool // what was not measured is of any shape, so that only the girths can be held

	pattern *pattern
	hands   *hands
	tape    tape
	held    map[string]int // what was held, by name
	faults  []string
	void    bool // the pattern, as far as it was made up, is such that the work cannot be done
}

// trace carries out what the program prints about a sheet, and measures.
func trace(s sheet, a answer, p *pattern) *trial {
	t := &trial{sheet: s, answer: a, loose: p.loose, pattern: p, hands: sitDown(p), held: map[string]int{}}
	err := t.hands.obey(readSteps(a.printed))
	var stuck *stuckError
	if errors.As(err, &stuck) && !t.measuredCurve(stuck.half) {
		t.void = true // what was not measured is such that it cannot be done, and nobody could know
		return t
	}
	if err != nil {
		t.fault("%v", err)
		return t
	}
	if t.tape, err = t.hands.measure(p); err != nil {
		t.fault("%v", err)
	}
	return t
}

func (t *trial) fault(format string, args ...any) {
	t.faults = append(t.faults, fmt.Sprintf(format, args...))
}

// measuredCurve tells that the shape of a half was measured, its corner and its curve.
func (t *trial) measuredCurve(h *half) bool {
	piece, side, _ := strings.Cut(h.name, " ")
	keys := []string{"sleeve.width", "sleeve.cap_height", "sleeve.cap_" + side}
	if piece == "bodice" {
		keys = []string{"bodice.corner_out_" + side, "bodice.corner_down_" + side, "bodice.armhole_" + side}
	}
	for _, key := range keys {
		if _, ok := t.sheet.mm(key); !ok {
			return false
		}
	}
	return true
}

// same holds a length on the paper against one that was said.
func (t *trial) same(what string, found, said, within float64) {
	t.held[what]++
	if !(math.Abs(found-said) <= within) { // also where it is no number
		t.fault("%s: the tape finds %.3f mm, it says %.3f mm (%+.3f, allowed %.3f)", what, found, said, found-said, within)
	}
}

// judge holds everything.
func (t *trial) judge() {
	if len(t.faults) > 0 || t.void {
		return
	}
	t.gaps()
	t.darts()
	t.drawnOut()
	t.bends()
	t.girths()
	if t.loose {
		return
	}
	t.sayings()
	t.seams()
	t.outlines()
	t.further()
}

// gaps: each line that was drawn meets the next.
func (t *trial) gaps() {
	for _, o := range t.halves() {
		if o.gap > hair {
			t.fault("%s: a gap of %.2f mm between the lines that were drawn", o.name, o.gap)
		}
	}
}

// shownWithin is how far a figure that people read may be off: by its rounding, if it
// was rounded.
func (t *trial) shownWithin(rough bool) float64 {
	if rough {
		return hair + t.sheet.step()/2
	}
	return hair
}

func (t *trial) halves() []outline {
	return append(append([]outline{}, t.tape.sleeve[:]...), t.tape.bodice[:]...)
}

// fromLine tells that the taper begins at the line of the girth.
func (t *trial) fromLine() bool { return t.sheet.is("method.taper_from", "line") == "line" }

// girths: what is around at the line of the girth is what the program says and, if the
// taper begins there, what was asked, but for the rounding to the ruler.
func (t *trial) girths() {
	sleeve, bodice := t.answer.sides()
	for _, g := range []struct {
		piece, what string
		halves      [2]outline
		said        *float64
		sides       [2]sideFigures
		copies      float64
		greater     []string
		ease        string
	}{
		{"sleeve", "bicep", t.tape.sleeve, t.answer.figures.Finished.BicepMarked, sleeve, 1, []string{"body.bicep", "body.bicep_other"}, "ease.bicep"},
		{"bodice", "bust", t.tape.bodice, t.answer.figures.Finished.BustMarked, bodice, 2, []string{"body.bust"}, "ease.bust"},
	} {
		if t.hands.cannot[g.piece] {
			continue // a stop is no job: nothing was traced
		}
		found := around(g.halves, outline.girth)
		straight := t.fromLine() || g.what == "bicep" && t.sheet.is("sleeve.length", "short") == "short"
		if printed, rough, ok := t.answer.inTable(typeset.Capitalised(g.what), 34, 47, t.sheet.is("about.unit", "in")); ok && (straight || !t.loose) {
			t.same(g.what+" by the marks", found, printed, t.shownWithin(rough))
		}
		// From the corner, the JSON is without the points where the seam is drawn out to fit.
		plain := !g.halves[0].fitted && !g.halves[1].fitted
		if g.said != nil && (straight || plain && !t.loose) {
			t.same(g.what, found, *g.said, hair)
		}
		ease, asked := t.sheet.mm(g.ease)
		body := 0.0
		for _, key := range g.greater {
			if mm, ok := t.sheet.mm(key); ok {
				body = max(body, mm)
			}
		}
		if !asked || body == 0 || !straight || !g.sides[0].asNeeded() || !g.sides[1].asNeeded() {
			continue
		}
		rounding := g.copies * t.sheet.rulerMark() // two sides, half a mark each
		t.same(g.what+" as asked", found, body+ease, rounding+hair)
	}
}

// sayings: everything that the sentences say will be found.
func (t *trial) sayings() {
	for _, s := range t.hands.said {
		found, ok := t.find(s.what)
		if h := t.seamBelow(s.what); h != nil && h.halfLeant {
			continue
		}
		if !ok {
			t.fault("the hands do not know how to measure %q", s.what)
			continue
		}
		within := hair
		if s.rough {
			within += t.sheet.step() / 2
		}
		t.same(s.what, found, s.mm, within)
	}
}

// seamBelow is the half whose seam below the underarm a growth is of; nil for what is no
// growth.
func (t *trial) seamBelow(what string) *half {
	for _, o := range t.halves() {
		if what == "growth "+o.name {
			return o.half
		}
	}
	return nil
}

// find is a length on the paper by its name.
func (t *trial) find(what string) (float64, bool) {
	at := t.tape
	for i, side := range []string{"front", "back"} {
		switch what {
		case "half-cap sleeve " + side:
			return at.sleeve[i].curve.length(), true
		case "half-armhole bodice " + side:
			return at.bodice[i].curve.length(), true
		case "cap less armhole, " + side:
			return at.sleeve[i].grown() - at.bodice[i].grown(), true
		case "change of cap, " + side:
			return at.sleeve[i].grown(), true
		case "change of armhole, " + side:
			return at.bodice[i].grown(), true
		case "growth sleeve " + side:
			return at.sleeve[i].seamLength() - at.sleeve[i].seam, true
		case "growth bodice " + side:
			return at.bodice[i].seamLength() - at.bodice[i].seam, true
		}
	}
	hem := func() float64 { return around(at.sleeve, func(o outline) float64 { return o.width(o.below.last().y) }) }
	switch what {
	case "cap":
		return curves(at.sleeve), true
	case "armhole":
		return curves(at.bodice), true
	case "cap ease":
		return curves(at.sleeve) - curves(at.bodice), true
	case "hem":
		return hem(), true
	case "hem change":
		return hem() - at.sleeve[0].end().x - at.sleeve[1].end().x, true
	case "sleeve around":
		return around(at.sleeve, outline.girth), true
	case "bodice around":
		return around(at.bodice, outline.girth), true
	}
	return 0, false
}

// seams: cap and armhole, where the amounts are marks of the ruler.
func (t *trial) seams() {
	sleeve, bodice := t.answer.sides()
	for _, s := range []struct {
		what   string
		halves [2]outline
		said   *float64
		sides  [2]sideFigures
	}{
		{"cap", t.tape.sleeve, t.answer.figures.Seams.Cap, sleeve},
		{"armhole", t.tape.bodice, t.answer.figures.Seams.Armhole, bodice},
	} {
		if !t.hands.cannot[s.halves[0].piece()] && s.said != nil && s.sides[0].onMarks() && s.sides[1].onMarks() {
			t.same(s.what+" by its figures", curves(s.halves), *s.said, hair)
		}
	}
}

// outlines: each side's outline, what it gains at the line, and how much longer its seam
// gets, where the amounts are marks of the ruler.
func (t *trial) outlines() {
	sleeve, bodice := t.answer.sides()
	sides := append(append([]sideFigures{}, sleeve[:]...), bodice[:]...)
	for i, o := range t.halves() {
		s := sides[i]
		if printed, rough, ok := t.answer.inTable(typeset.Capitalised(o.name), 45, 59, t.sheet.is("about.unit", "in")); ok && o.touched && !o.halfLeant {
			t.same("growth of "+o.name+" as shown", o.seamLength()-o.seam, printed, t.shownWithin(rough))
		}
		if !o.touched || !s.onMarks() {
			continue
		}
		if s.AtLine != nil && (!o.fitted || t.fromLine()) {
			t.same(o.name+" at its line by its figures", o.gain(), *s.AtLine, hair)
		}
		if o.halfLeant || o.fitted {
			continue // the figures are those of a seam that hangs straight, and is not drawn out to fit
		}
		if s.Growth != nil {
			t.same("growth of "+o.name+" by its figures", o.seamLength()-o.seam, *s.Growth, hair)
		}
		for n, q := range s.Outline {
			t.held["points of the outline"]++
			if _, off := o.below.nearest(point{q[0], q[1]}); off > hair {
				t.fault("%s: point %d of its figures, (%.2f, %.2f), lies %.2f mm off the line that was drawn", o.name, n+1, q[0], q[1], off)
			}
		}
		if n := len(s.Outline); n > 0 {
			if off := o.curve.last().to(point{s.Outline[0][0], s.Outline[0][1]}); off > hair {
				t.fault("%s: the underarm point lies %.2f mm off that of its figures", o.name, off)
			}
		}
	}
	if c := t.answer.figures.Finished.Corners; c != nil && !t.tape.sleeve[0].halfLeant && sleeve[0].onMarks() && sleeve[1].onMarks() {
		t.same("sleeve across its new underarm points by its figures", t.tape.sleeve[0].curve.last().x+t.tape.sleeve[1].curve.last().x, *c, hair)
	}
}

// further: below the line of the girth the garment goes around the body, wherever that
// was measured; the steps go to a point that fits, where the old end would bind.
func (t *trial) further() {
	for _, f := range t.fits() {
		t.held["further down"]++
		if f.short > hair {
			t.fault("%s: the tape finds %.2f mm less than girth and ease", f.what, f.short)
		}
	}
}

// fit is how a piece that was altered goes around the body further down.
type fit struct {
	what  string
	short float64 // girth and ease, less what the tape finds
}

func (t *trial) fits() (list []fit) {
	for _, g := range []struct {
		what   string
		halves [2]outline
		level  func(o outline) float64
		keys   []string
	}{
		{"elbow", t.tape.sleeve, func(o outline) float64 { return o.half.below.along(o.elbow).y }, []string{"sleeve.elbow_width"}},
		{"wrist", t.tape.sleeve, func(o outline) float64 { return o.end().y }, []string{"sleeve.hem_width"}},
		{"waist", t.tape.bodice, func(o outline) float64 { return o.end().y }, []string{"bodice.waist_front", "bodice.waist_back"}},
		{"hip", t.tape.bodice, func(o outline) float64 { return o.hip }, []string{"bodice.hip_front", "bodice.hip_back"}},
	} {
		body, ok := t.sheet.mm("body." + g.what)
		ease, eased := t.sheet.mm("ease." + g.what)
		known := ok && eased && (g.halves[0].touched || g.halves[1].touched) && !t.hands.cannot[g.halves[0].piece()]
		for _, key := range g.keys {
			known = known && t.sheet[key] != ""
		}
		for _, key := range []string{"sleeve.cap_height", "sleeve.underarm_seam", "sleeve.hem_width"} { // or nobody knows what is at the elbow, which is said
			known = known && (g.what != "elbow" || t.fromLine() || t.sheet[key] != "")
		}
		if !known || !g.halves[0].bodice && t.sheet.is("sleeve.length", "short") == "short" {
			continue
		}
		// What was taken off lay in the tape at the bust; waist and hip were measured without.
		found := around(g.halves, func(o outline) float64 { return o.width(g.level(o)) + o.takenOff })
		list = append(list, fit{g.what, body + ease - found})
	}
	return list
}

// stuck: a piece that is said to be impossible is. The hands try what would be marked.
func (t *trial) stuck() {
	for piece := range t.hands.stopped {
		sleeve, bodice := t.answer.sides()
		halves, sides := map[string][]*half{"sleeve": t.pattern.sleeve[:], "bodice front": t.pattern.bodice[:1], "bodice back": t.pattern.bodice[1:]}[piece],
			map[string][]sideFigures{"sleeve": sleeve[:], "bodice front": bodice[:1], "bodice back": bodice[1:]}[piece]
		impossible := false
		for i, h := range halves {
			var exact, marked *stuckError
			s := sides[i]
			impossible = impossible || errors.As(freshPaper(h).perform(*s.Pivot, *s.Slide), &exact) ||
				errors.As(freshPaper(h).perform(*s.PivotMark, *s.SlideMark), &marked)
		}
		if !impossible {
			t.fault("the %s is said to be impossible, and is not", piece)
		}
	}
}
