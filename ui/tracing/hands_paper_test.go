package tracing_test

import (
	"fmt"
	"math"
)

// The paper that a pair of hands works on: points and polylines in millimetres.
// Every side lies on it with its pin at the origin, x outward and y up.

// A sixty-fourth of an inch: what a hand with a sharp pencil and a good tape cannot do
// better than. Everything here is held to it.
const hair = 25.4 / 64

type point struct{ x, y float64 }

func (p point) plus(q point) point        { return point{p.x + q.x, p.y + q.y} }
func (p point) minus(q point) point       { return point{p.x - q.x, p.y - q.y} }
func (p point) times(f float64) point     { return point{p.x * f, p.y * f} }
func (p point) dot(q point) float64       { return p.x*q.x + p.y*q.y }
func (p point) cross(q point) float64     { return p.x*q.y - p.y*q.x }
func (p point) length() float64           { return math.Hypot(p.x, p.y) }
func (p point) to(q point) float64        { return q.minus(p).length() }
func (p point) String() string            { return fmt.Sprintf("(%.2f, %.2f)", p.x, p.y) }
func (p point) outBy(d float64) point     { return point{p.x + d, p.y} }
func between(a, b point, f float64) point { return a.plus(b.minus(a).times(f)) }

// line is a line drawn with a pencil, from point to point.
type line []point

func (l line) first() point { return l[0] }
func (l line) last() point  { return l[len(l)-1] }

func (l line) length() (sum float64) {
	for i := 1; i < len(l); i++ {
		sum += l[i-1].to(l[i])
	}
	return sum
}

func (l line) reversed() line {
	back := make(line, len(l))
	for i, p := range l {
		back[len(l)-1-i] = p
	}
	return back
}

// along is the point so far along the line, measured with the tape laid on it.
func (l line) along(d float64) point {
	for i := 1; i < len(l); i++ {
		step := l[i-1].to(l[i])
		if d <= step && step > 0 {
			return between(l[i-1], l[i], d/step)
		}
		d -= step
	}
	return l.last()
}

// until is the line from its beginning to so far along it, and from is the rest.
func (l line) until(d float64) line {
	for i := 1; i < len(l); i++ {
		step := l[i-1].to(l[i])
		if d <= step && step > 0 {
			return append(append(line{}, l[:i]...), between(l[i-1], l[i], d/step))
		}
		d -= step
	}
	return l
}

// nearest is how far along the line the place lies that is nearest to a point, and
// how far off the point is there.
func (l line) nearest(p point) (along, off float64) {
	off = math.Inf(1)
	sum := 0.0
	for i := 1; i < len(l); i++ {
		step := l[i-1].to(l[i])
		if step == 0 {
			continue
		}
		way := l[i].minus(l[i-1]).times(1 / step)
		f := min(max(p.minus(l[i-1]).dot(way), 0), step)
		if d := p.to(l[i-1].plus(way.times(f))); d < off {
			along, off = sum+f, d
		}
		sum += step
	}
	return along, off
}

// reach is how far out a line comes at a level.
func (l line) reach(y float64) (x float64, ok bool) {
	const touch = 1e-6 // a level through an end touches it
	x = math.Inf(-1)
	for i := 1; i < len(l); i++ {
		a, b := l[i-1], l[i]
		if a.y < b.y {
			a, b = b, a
		}
		switch {
		case y > a.y+touch || y < b.y-touch:
			continue
		case a.y-b.y < touch:
			x = max(x, a.x, b.x)
		default:
			x = max(x, between(a, b, min(max((a.y-y)/(a.y-b.y), 0), 1)).x)
		}
		ok = true
	}
	return x, ok
}

// placement is how a pattern lies on the paper: turned about the origin, where the
// pin is, and then moved.
type placement struct {
	turn float64 // radians, positive swings what hangs below the pin outward
	move point
}

func (at placement) point(p point) point {
	sin, cos := math.Sincos(at.turn)
	return point{p.x*cos - p.y*sin, p.x*sin + p.y*cos}.plus(at.move)
}

func (at placement) line(l line) line {
	moved := make(line, len(l))
	sin, cos := math.Sincos(at.turn)
	for i, p := range l {
		moved[i] = point{p.x*cos - p.y*sin + at.move.x, p.x*sin + p.y*cos + at.move.y}
	}
	return moved
}

// turnUntil turns a pattern about the pin, a little at a time, until what is looked
// at changes sign, and then to and fro until it is nil. It gives up after a third
// of a turn. Nothing here knows how far it will be.
func turnUntil(outward bool, look func(placement) float64) (placement, bool) {
	const little, most = math.Pi / 3600, 2 * math.Pi / 3
	way := little
	if !outward {
		way = -little
	}
	before := look(placement{})
	if math.Abs(before) < 1e-9 {
		return placement{}, true
	}
	for n := 1.0; n*little <= most; n++ {
		now := look(placement{turn: n * way})
		if (now > 0) == (before > 0) && now != 0 {
			before = now
			continue
		}
		near, far := (n-1)*way, n*way
		for range 60 {
			half := (near + far) / 2
			if (look(placement{turn: half}) > 0) == (before > 0) {
				near = half
			} else {
				far = half
			}
		}
		return placement{turn: far}, true
	}
	return placement{}, false
}

// joined lays the lines that were drawn end to end, from a beginning on, each time
// with the nearest end that is left, and says how wide the widest gap is that the
// pencil had to jump.
func joined(begin point, drawn []line) (outline line, gap float64) {
	left := append([]line{}, drawn...)
	end := begin
	for len(left) > 0 {
		at, off, turned := 0, math.Inf(1), false
		for i, l := range left {
			if d := end.to(l.first()); d < off {
				at, off, turned = i, d, false
			}
			if d := end.to(l.last()); d < off {
				at, off, turned = i, d, true
			}
		}
		next := left[at]
		if turned {
			next = next.reversed()
		}
		outline = append(outline, next...)
		gap = max(gap, off)
		end = outline.last()
		left = append(left[:at], left[at+1:]...)
	}
	return outline, gap
}

// from is a line from the place on it that is nearest to a point.
func (l line) from(p point) line {
	at, _ := l.nearest(p)
	return l.reversed().until(l.length() - at).reversed()
}

// downTo is a line that goes down, to a level.
func (l line) downTo(y float64) line {
	for i := 1; i < len(l); i++ {
		if a, b := l[i-1], l[i]; a.y > y && b.y <= y {
			return append(append(line{}, l[:i]...), between(a, b, (a.y-y)/(a.y-b.y)))
		}
	}
	return l
}

// tidy is a line without strokes of no length.
func (l line) tidy() line {
	tidied := line{l[0]}
	for _, p := range l[1:] {
		if p.to(tidied.last()) > 1e-9 {
			tidied = append(tidied, p)
		}
	}
	return tidied
}
