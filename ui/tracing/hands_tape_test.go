package tracing_test

import (
	"fmt"
	"math"
)

// What a tape finds on the paper when the hands are done.

// outline is the new outline of a half, on its seam lines.
type outline struct {
	*half
	curve, below line    // pin to underarm point, and on
	gap          float64 // the widest that the pencil had to jump
	lineAt       float64 // the level at which the girth was measured
	touched      bool    // something was drawn for it
	fitted       bool    // it goes out to a point where the garment would bind
}

// outline joins what was drawn; a half that nothing was drawn for is as it was.
func (p *paper) outline(lineAt float64) (outline, error) {
	o := outline{half: p.half, curve: p.curve, below: p.below, lineAt: lineAt, touched: len(p.drawn) > 0, fitted: p.fitted}
	if !o.touched {
		return o, nil
	}
	traced, corner := p.drawn[0], p.underarm()
	if len(p.fresh) > 0 {
		corner = p.fresh[len(p.fresh)-1]
	}
	rest, gap := joined(traced.last(), p.drawn[1:])
	rest = append(line{traced.last()}, rest...).tidy()
	at, off := rest.vertex(corner)
	o.gap = max(gap, off, traced.first().to(point{}))
	if miss := math.Abs(rest.last().y - p.below.last().y); miss > o.gap+hair {
		return o, fmt.Errorf("%s: what is drawn ends at %v, %.2f mm from the level of its end", p.name, rest.last(), miss)
	}
	o.curve, o.below = append(append(line{}, traced...), rest[1:at+1]...), rest[at:]
	return o, nil
}

// vertex is the point of a line that is nearest to another, and how far off that is.
func (l line) vertex(p point) (at int, off float64) {
	off = math.Inf(1)
	for i, q := range l {
		if d := q.to(p); d < off {
			at, off = i, d
		}
	}
	return at, off
}

// girthLevel is where the girth is measured around this half: at its line, or where that
// lies above the underarm point, at the latter's own level.
func (o outline) girthLevel() float64 { return min(o.lineAt, o.curve.last().y) }

// width is how wide the half is at a level, from grain line or centre, less what a dart
// takes up.
func (o outline) width(y float64) float64 {
	x, ok := o.below.reach(y)
	if !ok {
		x, ok = append(append(line{}, o.curve...), o.below...).reach(y)
	}
	if !ok {
		return math.NaN()
	}
	return x - o.middle - o.takenOff
}

// girth is how wide the half is where its girth is measured. Where the underarm point
// came to lie below a bust line, the method takes what it came in from the old underarm
// point; the pattern was measured at the bust line, where its seam lies further in by what
// it leans on the way there, and so the tape finds that much more.
func (o outline) girth() float64 {
	width := o.width(o.girthLevel())
	if o.girthLevel() < o.lineAt {
		width -= o.underarm().x - o.takenOff - o.middle - o.before().width(o.lineAt)
	}
	return width
}

// gain is how much wider the half got there.
func (o outline) gain() float64 { return o.girth() - o.before().width(o.lineAt) }

// grown is how much longer the curve got.
func (o outline) grown() float64 { return o.curve.length() - o.half.curve.length() }

// before is the half as it was.
func (o outline) before() outline {
	return outline{half: o.half, curve: o.half.curve, below: o.half.below, lineAt: o.lineAt}
}

// seamLength is that of the seam below the underarm, to the end that was measured to.
func (o outline) seamLength() float64 { return o.below.downTo(o.end().y).length() }

// tape is what was measured on every piece.
type tape struct {
	sleeve, bodice [2]outline
}

func (h *hands) measure(p *pattern) (t tape, err error) {
	for i := range 2 {
		if t.sleeve[i], err = h.sleeve[i].outline(h.sleeve[i].underarm().y); err != nil {
			return t, err
		}
		b := h.bodice[i]
		level := b.below.along(p.bustDown).y
		if b.bustLine != nil {
			level = *b.bustLine
		}
		if t.bodice[i], err = b.outline(level); err != nil {
			return t, err
		}
	}
	return t, nil
}

// around is how far it is around a sleeve, or a bodice, by a width of its halves.
func around(halves [2]outline, width func(o outline) float64) float64 {
	sum := width(halves[0]) + width(halves[1])
	if halves[0].bodice {
		sum *= 2 // left and right
	}
	return sum
}

func curves(halves [2]outline) float64 { return halves[0].curve.length() + halves[1].curve.length() }
