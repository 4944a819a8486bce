package tracing_test

import (
	"errors"
	"fmt"
	"math"
)

// Carrying out what the sentences say. Every deed answers with an error where it
// cannot be done as it is said: a turn that never gets to its mark, a slide that does
// not end where the sentence says it ends, a line from a point that nobody marked.

// paper is what lies on the table for one half of a piece: fresh paper, and the pattern
// on it.
type paper struct {
	*half
	there map[string]bool // lines and points that were drawn or marked on it

	at       placement // how the pattern lies
	pinned   bool
	marks    []point  // on the line through the underarm point
	bustLine *float64 // level of the bust line, where it was drawn
	bustMark *point
	fresh    []point // places where the pattern's underarm point was marked, as it lay
	hemMark  *point
	drawn    []line // what makes the new outline
	smoothed []point
	elbowOut *point // the point that fits at the elbow
	endsOut  bool   // the new seam ends outside the old one
	fitted   bool   // it goes out to a point where the garment would bind
}

func freshPaper(h *half) *paper { return &paper{half: h, there: map[string]bool{}} }

// fold folds a dart shut before a seam is drawn across it.
func (p *paper) fold() error {
	if p.dart == "armhole" {
		p.there["folded at the armhole"] = true
		return p.has("dart")
	}
	p.there["folded dart"] = true
	return p.has("dart")
}

// has holds that lines or points are on the paper.
func (p *paper) has(what ...string) error {
	for _, w := range what {
		if !p.there[w] {
			return fmt.Errorf("there is no %s on the paper of the %s", w, p.name)
		}
	}
	return nil
}

// stuckError is work that no hands can do on this half, whatever they try.
type stuckError struct {
	half *half
	why  string
}

func (e *stuckError) Error() string { return e.half.name + ": " + e.why }

// seamNow is the line below the underarm as the pattern lies.
func (p *paper) seamNow() line { return p.at.line(p.below) }

// underarmAsItLies is where the underarm point of the pattern lies.
func (p *paper) underarmAsItLies() point { return p.at.point(p.underarm()) }

// oldSeam is the place of the old line below the underarm at a level, where amounts are
// marked from.
func (p *paper) oldSeam(y float64) (point, error) {
	x, ok := p.below.reach(y)
	if !ok {
		return point{}, fmt.Errorf("the seam has no point at the level %.2f", y)
	}
	return point{x, y}, nil
}

// draw draws a line of the new outline.
func (p *paper) draw(l line) { p.drawn = append(p.drawn, l) }

// markOut marks amounts one behind the other on the line through the underarm point.
func (p *paper) markOut(amounts ...float64) error {
	at, err := p.oldSeam(p.underarm().y)
	for _, out := range amounts {
		at = at.outBy(out)
		p.marks = append(p.marks, at)
	}
	return err
}

// mark is the mark, where there is one; else the first or the last.
func (p *paper) mark(which string) (point, error) {
	switch n := len(p.marks); {
	case n == 0:
		return point{}, errors.New("nothing was marked")
	case which == "mark" && n > 1:
		return point{}, errors.New("there are two marks, and it does not say which")
	case which != "mark" && n == 1:
		return point{}, errors.New("there is one mark only")
	case which == "first mark":
		return p.marks[0], nil
	default:
		return p.marks[n-1], nil
	}
}

// markBust marks an amount on the bust line, out from the old side seam.
func (p *paper) markBust(out float64) error {
	if p.bustLine == nil {
		return errors.New("no bust line was drawn")
	}
	at, err := p.oldSeam(*p.bustLine)
	at = at.outBy(out)
	p.bustMark = &at
	return errors.Join(err, p.has("old side seam line"))
}

// underarmNow is the place where the underarm point was marked last.
func (p *paper) underarmNow() (point, error) {
	if len(p.fresh) == 0 {
		return point{}, errors.New("no new underarm point was marked")
	}
	return p.fresh[len(p.fresh)-1], nil
}

// layBack lays the pattern back, and moves it straight out.
func (p *paper) layBack(out float64) error {
	p.at, p.pinned = placement{move: point{out, 0}}, false
	return p.has("grain line", "dot")
}

// pin puts the pin in.
func (p *paper) pin() error {
	p.pinned = true
	if p.bodice {
		return p.has("shoulder point")
	}
	return p.has("dot")
}

// turn turns the pattern about the pin until what is looked at is nil.
func (p *paper) turn(outward bool, look func(placement) float64) error {
	if !p.pinned {
		return errors.New("there is no pin to turn about")
	}
	at, ok := turnUntil(outward, look)
	if !ok {
		return &stuckError{p.half, "no turn gets there"}
	}
	p.at = at
	return nil
}

// turnToMark turns the pattern until its seam line passes through a mark.
func (p *paper) turnToMark(which string, outward bool) error {
	goal, err := p.mark(which)
	if err != nil {
		return err
	}
	err = p.turn(outward, func(at placement) float64 {
		a, b := at.point(p.below[0]), at.point(p.below[1])
		return b.minus(a).cross(goal.minus(a)) / b.to(a)
	})
	if err != nil {
		return err
	}
	return p.passes(which)
}

// turnStraight turns the pattern until its underarm point lies straight below a mark, or
// above.
func (p *paper) turnStraight(where, which string, outward bool) error {
	goal, err := p.mark(which)
	if err != nil {
		return err
	}
	if err := p.turn(outward, func(at placement) float64 { return at.point(p.underarm()).x - goal.x }); err != nil {
		return err
	}
	return p.liesStraight(where, which)
}

// passes holds that the seam line, as far as it is on the pattern, goes through a mark.
func (p *paper) passes(which string) error {
	goal, err := p.mark(which)
	if err != nil {
		return err
	}
	if _, off := p.seamNow().nearest(goal); off > hair {
		return fmt.Errorf("the seam line passes the %s by %.2f mm", which, off)
	}
	return nil
}

// liesOn holds that the underarm point lies on a mark.
func (p *paper) liesOn(which string) error {
	goal, err := p.mark(which)
	if err != nil {
		return err
	}
	if off := p.underarmAsItLies().to(goal); off > hair {
		return fmt.Errorf("the underarm point lies %.2f mm from the %s", off, which)
	}
	return nil
}

// liesStraight holds that the underarm point lies straight below a mark, or above.
func (p *paper) liesStraight(where, which string) error {
	goal, err := p.mark(which)
	if err != nil {
		return err
	}
	if off := p.underarmAsItLies().minus(goal); math.Abs(off.x) > hair || off.y > hair && where == "below" || off.y < -hair && where == "above" {
		return &stuckError{p.half, fmt.Sprintf("the underarm point lies %.2f mm beside the %s, and %.2f mm below it, not straight %s", off.x, which, -off.y, where)}
	}
	return nil
}

// markUnderarm marks where the underarm point has come to lie.
func (p *paper) markUnderarm() { p.fresh = append(p.fresh, p.underarmAsItLies()) }

// traceCurve traces cap or armhole as the pattern lies.
func (p *paper) traceCurve() {
	p.draw(p.at.line(p.curve))
	p.markUnderarm()
}

// traceDown traces the seam below from the underarm point to a mark.
func (p *paper) traceDown(which string) error {
	goal, err := p.mark(which)
	if err != nil {
		return err
	}
	if err := p.passes(which); err != nil {
		return err
	}
	along, _ := p.seamNow().nearest(goal)
	p.draw(p.seamNow().until(along))
	return nil
}

// slide slides the pattern straight out.
func (p *paper) slide(out float64) error {
	if p.pinned {
		return errors.New("the pin is still in")
	}
	p.at.move = p.at.move.outBy(out)
	return nil
}

// join draws the level line from where the underarm point was to where it is.
func (p *paper) join() error {
	if len(p.fresh) < 2 {
		return errors.New("there are no two underarm points")
	}
	from, to := p.fresh[len(p.fresh)-2], p.fresh[len(p.fresh)-1]
	if math.Abs(from.y-to.y) > hair {
		return fmt.Errorf("the line from %v to %v is not level", from, to)
	}
	p.draw(line{from, to})
	return nil
}

// redraw draws the end of the curve anew, straight to the new underarm point, so that
// it becomes shorter by so much. Where it leaves the traced curve is found by trial.
func (p *paper) redraw(shorter float64) error {
	to, err := p.underarmNow()
	switch {
	case err != nil:
		return err
	case len(p.drawn) == 0:
		return errors.New("no curve was traced")
	}
	traced := p.drawn[0]
	want := traced.length() - shorter
	if straight := traced.first().to(to); want < straight {
		return &stuckError{p.half, fmt.Sprintf("not even a straight line, %.2f mm, is as short as %.2f mm", straight, want)}
	}
	near, far := 0.0, traced.length() // the further on it leaves, the longer it is
	for range 50 {
		if half := (near + far) / 2; half+traced.along(half).to(to) < want {
			near = half
		} else {
			far = half
		}
	}
	p.drawn[0] = append(traced.until(far), to)
	if off := p.drawn[0].length() - want; math.Abs(off) > hair {
		return fmt.Errorf("wherever it leaves, the curve is %.2f mm off", off)
	}
	return nil
}

// perform does to a half what is marked for it, as far as cap or armhole go.
func (p *paper) perform(pivot, slide float64) error {
	if err := p.markOut(pivot, slide); err != nil {
		return err
	}
	p.pinned = true
	turn := func() error { return p.turnToMark("first mark", true) }
	if pivot < 0 {
		where := "below"
		if 2*p.underarm().x+pivot < 0 {
			where = "above"
		}
		turn = func() error { return p.turnStraight(where, "first mark", false) }
	}
	if pivot != 0 {
		if err := turn(); err != nil {
			return err
		}
	}
	p.traceCurve()
	p.pinned = false
	if err := p.slide(slide); err != nil {
		return err
	}
	p.markUnderarm()
	if slide < 0 {
		return p.redraw(-slide)
	}
	return nil
}

// markHem marks the hem corner of the pattern, as it lies, on the hem line.
func (p *paper) markHem() error {
	at := p.at.point(p.end())
	if off := at.y - p.end().y; math.Abs(off) > hair {
		return fmt.Errorf("the hem corner lies %.2f mm off the hem line", off)
	}
	p.hemMark = &at
	return p.has("hem line")
}

// drawOverHip draws on from the last line to a point outside the old seam at the hip
// line, and from there to the hem.
func (p *paper) drawOverHip(hip, hem float64) error {
	p.fitted, p.endsOut = true, hem != 0
	if p.hip == 0 {
		return errors.New("the piece does not reach the hip")
	}
	atHip, err := p.oldSeam(p.hip)
	if err := errors.Join(err, p.has("hip line")); err != nil {
		return err
	}
	p.draw(line{p.drawn[len(p.drawn)-1].last(), atHip.outBy(hip), p.below.last().outBy(hem)})
	return nil
}
