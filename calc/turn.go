package calc

import (
	"math"

	"capscye/units"
)

// Approx is a length in millimetres that comes from a turn and so is not
// exact, or is not known.
type Approx struct {
	MM    float64
	Known bool
}

// Length is the length to the nearest count.
func (a Approx) Length() units.Reading {
	if !a.Known {
		return units.Reading{}
	}
	return units.Known(nearestCount(a.MM))
}

func nearestCount(mm float64) units.Length {
	return units.Length(math.Round(mm * float64(units.Millimetre)))
}

// Turn is what the pivot of a side really does. Lengths are millimetres; the
// pin is the origin, x goes outward and y up.
type Turn struct {
	Known bool    // the corner was measured, and a turn reaches the mark
	Angle float64 // radians; positive swings the underarm corner outward and up
	Lift  float64 // how far the underarm corner rises
	// HeightAfter is the cap height, or the depth of the armhole, that is left.
	HeightAfter float64
	Rise        float64 // along the seam from the mark to the raised corner; negative where it falls
	CornerX     float64 // the underarm corner after turn and slide
	CornerY     float64
	Growth      Approx // of the underarm or side seam
}

// Edge is a side as the turn sees it: the pin at the origin, the underarm
// corner at (W, -H), and the seam below it leaning in by Lean from the
// vertical. Millimetres and radians.
type Edge struct {
	W, H, Lean float64
	Known      bool
	Below      Approx // length of the seam below the corner
	Straight   bool   // the whole seam moves out; else it tapers back to its end
}

// TurnTo is the turn that brings the seam line below the corner of an edge to
// the mark at (W + p, -H). The distance from pin to seam line does not change
// in a turn, so with
//
//	D = W cos(lean) + H sin(lean),  rho = hypot(W + p, H)
//	theta = lean + acos(D / rho) - atan2(H, W + p)
//
// The mark is out of reach where rho < D; then ok is false.
//
// An addition to the method: where a seam leans in by more than the corner lies
// below the pin (lean > atan2(H, W), flatter than any cap that is worn), the
// other root of the same equation is the one that starts from no turn, and acos
// counts negative.
func (e Edge) TurnTo(p float64) (theta float64, ok bool) {
	if p == 0 {
		return 0, true
	}
	d := e.W*math.Cos(e.Lean) + e.H*math.Sin(e.Lean)
	rho := math.Hypot(e.W+p, e.H)
	if rho < d {
		return 0, false
	}
	turned := math.Acos(d / rho)
	if e.otherRoot() {
		turned = -turned
	}
	return e.Lean + turned - math.Atan2(e.H, e.W+p), true
}

// otherRoot tells that the seam leans in by more than the corner lies below the
// pin; see [Edge.TurnTo].
func (e Edge) otherRoot() bool { return math.Atan2(e.H, e.W) < e.Lean }

// Turned is where a point of the pattern lies after a turn about the pin.
func Turned(x, y, theta float64) (float64, float64) {
	sin, cos := math.Sincos(theta)
	return x*cos - y*sin, x*sin + y*cos
}

// Lift is how far a pivot raises the underarm corner, which is what it takes
// off the cap's height or the armhole's depth.
func (e Edge) Lift(p float64) Approx {
	t := e.turn(p, 0)
	return Approx{t.Lift, t.Known}
}

// turn gives the whole effect of a pivot and a slide on an edge.
func (e Edge) turn(pivot, slide float64) Turn {
	theta, ok := e.TurnTo(pivot)
	if !e.Known || !ok {
		return Turn{}
	}
	ux, uy := Turned(e.W, -e.H, theta)
	t := Turn{Known: true, Angle: theta, Lift: e.H + uy, HeightAfter: -uy, CornerX: ux + slide, CornerY: uy}
	t.Rise = math.Copysign(math.Hypot(ux-e.W-pivot, uy+e.H), pivot)
	if pivot == 0 {
		t.Rise, t.Lift, t.HeightAfter = 0, 0, e.H
	}
	t.Growth = e.growth(t)
	return t
}

// growth is how much longer the seam below the corner gets: by the rise where
// the whole seam moves out; else it runs straight from the new corner back to
// its old end.
func (e Edge) growth(t Turn) Approx {
	if e.Straight {
		return Approx{t.Rise, true}
	}
	if !e.Below.Known {
		return Approx{}
	}
	x, y := e.End()
	return Approx{math.Hypot(t.CornerX-x, t.CornerY-y) - e.Below.MM, true}
}

// chord is the straight distance from the pin to the corner.
func (e Edge) chord() float64 { return math.Hypot(e.W, e.H) }

// End is the lower end of the seam: the hem corner, or the waist.
func (e Edge) End() (x, y float64) {
	sin, cos := math.Sincos(e.Lean)
	return e.W - e.Below.MM*sin, -(e.H + e.Below.MM*cos)
}

// turns computes the four sides. A pivot that no turn reaches is a reason to
// stop; it is said once for a piece whose sides are alike.
func (c *computation) turns() {
	for _, s := range Sides() {
		e := c.edge(s)
		if !e.Known {
			continue
		}
		p := c.plan.Sides[s]
		c.plan.Edges[s] = e
		c.plan.Turns[s] = e.turn(p.Pivot.Millimetres(), p.Slide.Millimetres())
		if c.plan.Turns[s].Known || s.Half() == Back && c.plan.Edges[s-1].Known && !c.plan.Turns[s-1].Known {
			continue
		}
		about := OfSleeve
		if !s.OfSleeve() {
			about = OfBust
		}
		c.find(Finding{Code: OutOfReach, Level: Stop, About: about, Amount: p.Pivot,
			Ways: []Way{OtherSize, FoldOut, NarrowerLimit, MeasureAgain}})
	}
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
// the hem.
func (c *computation) sleeveEdge(s Side) Edge {
	in, flat := c.in.Sleeve, c.plan.Sleeve.Flat
	e := Edge{Known: flat.Known && in.CapHeight.Known, Straight: !in.Long, Below: below(in.UnderarmSeam)}
	if !e.Known {
		return e
	}
	e.W, e.H = flat.Length.Millimetres()/2, in.CapHeight.Length.Millimetres()
	if hem := c.sleeveFlat(in.HemWidth); hem.Known {
		c.lean(&e, s, (flat.Length - hem.Length).Half())
	}
	return e
}

// bodiceEdge: the pin is where the shoulder seam line crosses the armhole. The
// seam leans from the flat width in to the waist.
func (c *computation) bodiceEdge(s Side) Edge {
	in := c.in.Bodice
	out, down, width, waist := in.CornerOutFront, in.CornerDownFront, c.fronts, in.WaistFront
	if s.Half() == Back {
		out, down, width, waist = in.CornerOutBack, in.CornerDownBack, c.backs, in.WaistBack
	}
	e := Edge{Known: out.Known && down.Known, Below: below(in.SideSeam)}
	if !e.Known {
		return e
	}
	e.W, e.H = out.Length.Millimetres(), down.Length.Millimetres()
	if waist = c.bodiceFlat(waist); waist.Known && width.Known {
		c.lean(&e, s, width.Length-waist.Length)
	}
	return e
}

// lean turns the distance that a seam goes in over its length into an angle.
func (c *computation) lean(e *Edge, s Side, in units.Length) {
	if !e.Below.Known {
		return
	}
	if math.Abs(in.Millimetres()) > e.Below.MM {
		e.Known = false
		c.find(Finding{Code: LeanImpossible, Level: Warn, About: s.Subject(), Amount: nearestCount(e.Below.MM), Other: in,
			Ways: []Way{MeasureAgain}})
		return
	}
	e.Lean = leanOver(in.Millimetres(), e.Below.MM)
}

// leanOver is the angle of a seam that goes in by that much over its length.
func leanOver(in, length float64) float64 { return math.Asin(in / length) }

// below is the length of the seam below the corner. One of no length has no way to
// lean or to taper in, and tells as little as none.
func below(r units.Reading) Approx {
	return Approx{r.Length.Millimetres(), r.Known && r.Length > 0}
}

func approx(r units.Reading) Approx { return Approx{r.Length.Millimetres(), r.Known} }

// sleeveFlat is a width of the sleeve without its allowances.
func (c *computation) sleeveFlat(width units.Reading) units.Reading {
	in := c.in.Sleeve
	switch {
	case !width.Known || in.EdgeToEdge && !in.Allowance.Known:
		return units.Reading{}
	case in.EdgeToEdge:
		return units.Known(width.Length - 2*in.Allowance.Length)
	}
	return width
}

// bodiceFlat is half a front's or half a back's width without its allowances.
func (c *computation) bodiceFlat(width units.Reading) units.Reading {
	in := c.in.Bodice
	switch {
	case !width.Known || c.bodiceSeamsCrossed() && !in.Allowance.Known:
		return units.Reading{}
	case c.bodiceSeamsCrossed():
		return units.Known(width.Length - units.Length(in.Crossings)*in.Allowance.Length)
	}
	return width
}
