package calc

import (
	"math"

	"capscye/units"
)

// Turn is what the pivot and the slide of a side really do. Lengths are
// millimetres; the pin is the origin, x goes outward and y up.
type Turn struct {
	Known bool    // the corner was measured, and a turn reaches the mark
	Angle float64 // radians; positive swings the underarm corner outward and up
	Lift  float64 // how far the underarm corner rises
	// HeightAfter is the cap height, or the depth of the armhole, that is left.
	HeightAfter float64
	CornerX     float64 // the underarm corner after turn and slide
	CornerY     float64
	Outline     Outline // the new seam below the underarm
	Growth      Approx  // of the underarm or side seam
	Bend        Approx  // the sharpest bend of the outline, in radians
	// OutOfReach tells that the hands cannot do it: no turn reaches the mark, or
	// no shorter curve reaches a corner that slides inward.
	OutOfReach bool
}

// Turn gives the whole effect of a pivot and a slide on an edge, the seam below
// drawn out to fit.
func (e Edge) Turn(pivot, slide float64, fit Fit) Turn {
	theta, ok := e.TurnTo(pivot)
	if !e.Known || !ok {
		return Turn{OutOfReach: e.Known}
	}
	ux, uy := Turned(e.W, -e.H, theta)
	t := Turn{Known: true, Angle: theta, Lift: e.H + uy, HeightAfter: -uy, CornerX: ux + slide, CornerY: uy}
	t.Outline = e.outline(Point{t.CornerX, t.CornerY}, pivot, pivot+slide, fit)
	t.Growth = e.growth(t, pivot)
	switch {
	case t.Outline.count == 0:
	case e.Straight && !e.Below.Known: // the old seam goes on below the mark
		t.Bend = Approx{max(theta, 0), true}
	default:
		t.Bend = Approx{t.Outline.Bend(), true}
	}
	return t
}

// growth is how much longer the seam below the corner gets. A straight seam of
// unknown length grows by what its corner rises along it, or falls.
func (e Edge) growth(t Turn, pivot float64) Approx {
	switch {
	case e.Below.Known:
		return Approx{t.Outline.Length() - e.Below.MM, true}
	case e.Straight && (pivot < 0 || t.Outline.count == 1):
		return Approx{-math.Abs(t.Lift), true}
	case e.Straight:
		return Approx{t.Outline.Length(), true}
	}
	return Approx{}
}

// turns computes the four sides, by the exact amounts and by the marks: neither may
// be out of reach.
func (c *computation) turns() {
	for _, s := range Sides() {
		e := c.edge(s)
		p, t := &c.plan.Sides[s], &c.plan.Turns[s]
		if e.Known {
			c.plan.Edges[s] = e
			*t = c.turned(s, p.Pivot, p.Slide)
		}
		pivot, total := p.Pivot.Millimetres(), p.Total.Millimetres()
		p.AtLine = e.gainAtLine(*t, pivot, total).Length()
		p.AtLineMark, p.Grows, c.bends[s] = p.AtLine, t.Growth.Length(), t.Bend.MM
		if p.PivotMark != p.Pivot || p.SlideMark != p.Slide {
			marked := c.turned(s, p.PivotMark, p.SlideMark)
			p.AtLineMark = e.gainAtLine(marked, p.PivotMark.Millimetres(), p.Marked().Millimetres()).Length()
			p.Grows = marked.Growth.Length()
			t.OutOfReach = t.OutOfReach || marked.OutOfReach
		}
		c.judgeReach(s)
	}
	if f, b := c.plan.Turns[SleeveFront], c.plan.Turns[SleeveBack]; f.Known && b.Known {
		c.plan.AcrossCorners = units.Known(NearestCount(f.CornerX + b.CornerX))
	}
}

// turned is the turn of a side; it is out of reach where the corner comes to lie below
// the end of its seam, or the straight way from the pin to a corner that slides inward
// is longer than the curve that is left.
func (c *computation) turned(s Side, pivot, slide units.Length) Turn {
	return turned(c.plan.Edges[s], c.in.HalfSeams()[s], pivot, slide, Fit{})
}

func turned(e Edge, curve units.Reading, pivot, slide units.Length, fit Fit) Turn {
	t := e.Turn(pivot.Millimetres(), slide.Millimetres(), fit)
	if _, end := e.End(); t.Known && e.Below.Known && t.CornerY <= end {
		t = Turn{OutOfReach: true}
	}
	if t.Known && slide < 0 && curve.Known {
		t.OutOfReach = math.Hypot(t.CornerX, t.CornerY) > (curve.Length + slide).Millimetres()
	}
	return t
}

// judgeReach stops at what no hands can do; it is said once for a piece whose
// sides are alike.
func (c *computation) judgeReach(s Side) {
	if !c.plan.Turns[s].OutOfReach || s.Half() == Back && c.plan.Turns[s-1].OutOfReach {
		return
	}
	about, amount := OfSleeve, c.plan.Sides[s].Pivot
	if !s.OfSleeve() {
		about = OfBust
	}
	f := Finding{Code: OutOfReach, Level: Stop, About: about, Amount: amount, Ways: c.waysOfReach(s, false)}
	if c.plan.Turns[s].Known && c.plan.Sides[s].Slide < 0 { // the turn is possible, the inward slide is not
		f.Amount, f.Other, f.Ways = 0, -c.plan.Sides[s].Slide, c.waysOfReach(s, true)
	}
	c.find(f)
}

// edge is a side as it was measured.
func (c *computation) edge(s Side) Edge {
	if s.OfSleeve() {
		return c.sleeveEdge(s)
	}
	return c.bodiceEdge(s)
}

// sleeveEdge: the pin is in the shoulder dot, the corner half the flat width
// out and the cap height down. The seam leans from half the width in to half
// the hem. The girth is measured at the corner's level, the bicep line.
func (c *computation) sleeveEdge(s Side) Edge {
	in, flat := c.in.Sleeve, c.plan.Sleeve.Flat
	e := Edge{
		Known: flat.Known && in.CapHeight.Known, Straight: !in.Long, Below: below(in.UnderarmSeam),
		FromCorner: c.in.Method.TaperFrom == FromCorner,
	}
	if !e.Known {
		return e
	}
	e.W, e.H = flat.Length.Millimetres()/2, in.CapHeight.Length.Millimetres()
	c.judgeCurve(s, e)
	if hem := c.in.Sleeve.Flat(in.HemWidth); hem.Known {
		c.lean(&e, s, (flat.Length - hem.Length).Half())
	}
	return e
}

// bodiceEdge: the pin is where the shoulder seam line crosses the armhole. The
// seam leans from the bust line in to the waist. Its lean is a thing of the paper:
// the corner lies there with what darts take, and only the girth is reckoned
// without it.
func (c *computation) bodiceEdge(s Side) Edge {
	in := c.in.Bodice
	out, down, width, waist := in.CornerOutFront, in.CornerDownFront, in.Front, in.WaistFront
	if s.Half() == Back {
		out, down, width, waist = in.CornerOutBack, in.CornerDownBack, in.Back, in.WaistBack
	}
	e := Edge{
		Known: out.Known && down.Known, Below: below(in.SideSeam),
		FromCorner: c.in.Method.TaperFrom == FromCorner, Line: c.in.Bodice.BustLine().Millimetres(),
	}
	if !e.Known {
		return e
	}
	e.W, e.H = out.Length.Millimetres(), down.Length.Millimetres()
	c.judgeCurve(s, e)
	if width, waist = c.in.Bodice.flat(width), c.in.Bodice.flat(waist); waist.Known && width.Known {
		c.lean(&e, s, width.Length-waist.Length)
	}
	return e
}

// BustLine is how far below the underarm corner, along the side seam, the bust
// line lies: nothing where it was not measured, or cannot be.
func (in BodiceInput) BustLine() units.Length {
	if in.bustLineImpossible() {
		return 0
	}
	return in.BustDown.Or(0)
}

// bustLineImpossible tells that the bust line would lie at the waist or below.
func (in BodiceInput) bustLineImpossible() bool {
	return in.BustDown.Known && in.SideSeam.Known && in.SideSeam.Length > 0 && in.BustDown.Length >= in.SideSeam.Length
}

// lean turns the distance that a seam goes in, from the line of the girth to its
// end, into an angle.
func (c *computation) lean(e *Edge, s Side, in units.Length) {
	if !e.Below.Known {
		return
	}
	over := e.Below.MM - e.Line
	if math.Abs(in.Millimetres()) >= over {
		e.Known = false
		c.find(Finding{Code: LeanImpossible, Level: Warn, About: s.Subject(), Amount: NearestCount(over), Other: in,
			Ways: []Way{MeasureAgain}})
		return
	}
	e.Lean, e.Leans = LeanOver(in.Millimetres(), over), true
}

// LeanOver is the angle of a seam that goes in by that much over its length.
func LeanOver(in, length float64) float64 { return math.Asin(in / length) }

// below is the length of the seam below the corner. One of no length has no way to
// lean or to taper in, and tells as little as none.
func below(r units.Reading) Approx {
	return Approx{r.Length.Millimetres(), r.Known && r.Length > 0}
}

// LineAfter is where the new seam crosses the line of the girth, which after an
// inward turn is the level of the new corner where that lies lower.
func (e Edge) LineAfter(t Turn, pivot float64) Point {
	y := e.LineAt().Y
	if pivot < 0 {
		y = min(y, t.CornerY)
	}
	return Point{t.Outline.at(y), y}
}
