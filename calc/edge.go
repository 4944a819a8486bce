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
	return units.Known(NearestCount(a.MM))
}

// NearestCount is a length in counts, from millimetres that need not be one.
func NearestCount(mm float64) units.Length {
	return units.Length(math.Round(mm * float64(units.Millimetre)))
}

// Edge is a side as the turn sees it: the pin at the origin, x outward, y up, the
// underarm corner at (W, -H), and the seam below it leaning in by Lean from the
// vertical. Millimetres and radians.
type Edge struct {
	W, H, Lean float64
	Known      bool
	Leans      bool   // the width of the seam's lower end was measured; else Lean is 0
	Below      Approx // length of the seam below the corner
	Straight   bool   // the whole seam moves out; else it tapers back to its end
	FromCorner bool   // tapers from the new corner on, not from the line of the girth
	// Line is how far below the corner, along the seam, the girth is measured.
	Line float64
}

// TurnTo is the angle by which the pattern is turned about the pin to pivot by p,
// in radians; ok is false where no turn does it.
//
// Outward, the seam line below the corner comes to the mark at (W + p, -H). The
// distance from pin to seam line does not change in a turn, so with
//
//	D = W cos(lean) + H sin(lean),  rho = hypot(W + p, H)
//	theta = lean + acos(D / rho) - atan2(H, W + p)        (rho >= |D|)
//
// An addition to the method: where a seam leans in by more than the corner lies
// below the pin (lean > atan2(H, W), flatter than any cap that is worn), the
// other root of the same equation is the one that starts from no turn, and acos
// counts negative.
//
// Inward, the corner itself comes straight below the mark:
//
//	theta = atan2(H, W) - acos((W + p) / hypot(W, H))     (|W + p| <= hypot(W, H))
//
// Were it the seam line that passes through an inward mark, the corner would come
// to lie below the mark and further in, and the piece narrower than was asked.
func (e Edge) TurnTo(p float64) (theta float64, ok bool) {
	switch {
	case p == 0:
		return 0, true
	case p < 0:
		if math.Abs(e.W+p) > e.chord() {
			return 0, false
		}
		return math.Atan2(e.H, e.W) - math.Acos((e.W+p)/e.chord()), true
	}
	d := e.pinToSeam()
	rho := math.Hypot(e.W+p, e.H)
	if rho < math.Abs(d) { // negative where the corner lies far inside the pin
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

func (e Edge) pinToSeam() float64 {
	sin, cos := math.Sincos(e.Lean)
	return e.W*cos + e.H*sin
}

// Turned is where a point of the pattern lies after a turn about the pin.
func Turned(x, y, theta float64) (float64, float64) {
	sin, cos := math.Sincos(theta)
	return x*cos - y*sin, x*sin + y*cos
}

// Lift is how far a pivot raises the underarm corner, which is what it takes
// off the cap's height or the armhole's depth.
func (e Edge) Lift(p float64) Approx {
	t := e.Turn(p, 0, Fit{})
	return Approx{t.Lift, t.Known}
}

// chord is the straight distance from the pin to the corner.
func (e Edge) chord() float64 { return math.Hypot(e.W, e.H) }

// End is the lower end of the seam: the hem corner, or the waist.
func (e Edge) End() (x, y float64) {
	p := e.down(e.Below.MM)
	return p.X, p.Y
}

// down is the point of the old seam at a distance from the corner.
func (e Edge) down(along float64) Point {
	sin, cos := math.Sincos(e.Lean)
	return Point{e.W - along*sin, -e.H - along*cos}
}

// SeamTo is the point of the old seam's line at a level.
func (e Edge) SeamTo(y float64) Point { return Point{e.W + (y+e.H)*math.Tan(e.Lean), y} }

// LineAt is the point of the old seam at the level where the girth is measured.
func (e Edge) LineAt() Point { return e.down(e.Line) }
