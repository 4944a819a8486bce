package calc

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/integrate/quad"
)

// Point is a place on the pattern in millimetres: the pin is the origin, x goes
// outward and y up.
type Point struct{ X, Y float64 }

// Turned is where the point lies after a turn about the pin.
func (p Point) Turned(theta float64) Point {
	x, y := Turned(p.X, p.Y, theta)
	return Point{x, y}
}

// Cubic is a cubic Bezier curve by its four control points. It is for looking
// and for checking lengths; it is no pattern to cut.
type Cubic [4]Point

// At is the point of the curve at t, from 0 to 1.
func (c Cubic) At(t float64) Point {
	u := 1 - t
	a, b, d, e := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return Point{
		a*c[0].X + b*c[1].X + d*c[2].X + e*c[3].X,
		a*c[0].Y + b*c[1].Y + d*c[2].Y + e*c[3].Y,
	}
}

// Length is the arc length in millimetres, to about twelve digits: the speed
// integrated by Gauss's rule, once over each half of the curve.
func (c Cubic) Length() float64 {
	sum := 0.0
	rule := halves()
	for i, t := range rule.at {
		u := 1 - t
		dx := u*u*(c[1].X-c[0].X) + 2*u*t*(c[2].X-c[1].X) + t*t*(c[3].X-c[2].X)
		dy := u*u*(c[1].Y-c[0].Y) + 2*u*t*(c[2].Y-c[1].Y) + t*t*(c[3].Y-c[2].Y)
		sum += rule.weight[i] * 3 * math.Hypot(dx, dy)
	}
	return sum
}

// halves is Gauss's rule for either half of the way from 0 to 1.
var halves = sync.OnceValue(func() (rule struct{ at, weight []float64 }) {
	const nodes = 48
	rule.at, rule.weight = make([]float64, 2*nodes), make([]float64, 2*nodes)
	quad.Legendre{}.FixedLocations(rule.at[:nodes], rule.weight[:nodes], 0, 0.5)
	quad.Legendre{}.FixedLocations(rule.at[nodes:], rule.weight[nodes:], 0.5, 1)
	return rule
})

// Turned is the same curve after a turn about the pin: a rigid motion, which
// leaves its length alone.
func (c Cubic) Turned(theta float64) Cubic {
	for i, p := range c {
		c[i] = p.Turned(theta)
	}
	return c
}

// HalfCap is half a cap over a side w wide and h high: from the pin, leaving
// level, to the underarm corner, arriving level, with both handles k x w long.
func HalfCap(w, h, k float64) Cubic {
	return Cubic{{0, 0}, {k * w, 0}, {w - k*w, -h}, {w, -h}}
}

// HalfArmhole is half an armhole whose corner lies out and down from the pin:
// leaving downward, arriving level, with both handles k x down long, so that a
// long one scoops inward.
func HalfArmhole(out, down, k float64) Cubic {
	return Cubic{{0, 0}, {0, -k * down}, {out - k*down, -down}, {out, -down}}
}

// Fitted is the curve of a family whose arc length is the measured one. k is
// solved between 0, the straight line, and 1. Without a measurement k is 1/2.
// A length that the family does not reach is drawn at the nearer end and
// called approximate.
func Fitted(family func(k float64) Cubic, length Approx) (c Cubic, approximate bool) {
	if !length.Known {
		return family(0.5), false
	}
	low, high := 0.0, 1.0
	short, long := family(low).Length()-length.MM, family(high).Length()-length.MM
	switch {
	case short > 0:
		return family(low), true
	case long < 0:
		return family(high), true
	}
	// The length grows with k: false position, with the end that stays put
	// counted half (the Illinois rule), closes in from both sides.
	for range 60 {
		k := (low*long - high*short) / (long - short)
		off := family(k).Length() - length.MM
		if math.Abs(off) < 1e-12*length.MM || high-low < 1e-15 {
			return family(k), false
		}
		if off < 0 {
			low, short, long = k, off, long/2
		} else {
			high, long, short = k, off, short/2
		}
	}
	return family((low + high) / 2), false
}

// Toward is a part of the way to another point.
func (p Point) Toward(q Point, part float64) Point {
	return Point{p.X + (q.X-p.X)*part, p.Y + (q.Y-p.Y)*part}
}
