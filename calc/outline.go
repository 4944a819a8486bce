package calc

import "math"

// Vertex names a point that the new seam below the underarm passes through.
type Vertex uint8

// The vertices, from the underarm down.
const (
	NewCorner Vertex = iota // the underarm corner after turn and slide
	LastMark                // where the seam line passes the level of the old corner
	LinePoint               // the old seam's point at the line of the girth, moved out
	FitPoint                // out at the elbow, where a straight line would bind
	SeamEnd                 // the hem or waist corner
)

// Outline is the new seam below the underarm corner: straight from each of its
// points to the next. Millimetres, the pin as origin, x outward and y up. Without
// points it is not known.
type Outline struct {
	points [5]Point
	names  [5]Vertex
	count  int
}

// Points are the points that the seam passes through, from the underarm down.
func (o Outline) Points() []Point { return o.points[:o.count:o.count] }

// Vertex is the name of a point of Points.
func (o Outline) Vertex(i int) Vertex { return o.names[i] }

// Find is the point of that name.
func (o Outline) Find(v Vertex) (p Point, ok bool) {
	for i := range o.count {
		if o.names[i] == v {
			return o.points[i], true
		}
	}
	return Point{}, false
}

func (o *Outline) add(v Vertex, p Point) {
	o.points[o.count], o.names[o.count] = p, v
	o.count++
}

// Length is the length of the way through all points.
func (o Outline) Length() float64 {
	sum := 0.0
	for i := 1; i < o.count; i++ {
		sum += o.points[i].To(o.points[i-1])
	}
	return sum
}

// Bend is the largest change of direction at a point in between, in radians.
func (o Outline) Bend() float64 {
	most, before, started := 0.0, 0.0, false
	for i := 1; i < o.count; i++ {
		from, to := o.points[i-1], o.points[i]
		if from.To(to) < shortest {
			continue
		}
		direction := math.Atan2(to.Y-from.Y, to.X-from.X)
		if started {
			most = max(most, math.Abs(math.Remainder(direction-before, 2*math.Pi)))
		}
		before, started = direction, true
	}
	return most
}

// shortest is a stretch that is no stretch, in millimetres: two marks that are one.
const shortest = 1e-9

// at is how far out the seam lies at a level: at its highest point for what lies
// above it, at its end for what lies below.
func (o Outline) at(y float64) float64 {
	for i := 1; i < o.count; i++ {
		from, to := o.points[i-1], o.points[i]
		switch {
		case y > from.Y && i == 1:
			return from.X
		case y >= to.Y && from.Y > to.Y:
			return from.X + (to.X-from.X)*(from.Y-y)/(from.Y-to.Y)
		}
	}
	return o.points[o.count-1].X
}

// To is how far another point is.
func (p Point) To(q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }

// Fit is how far a new seam is drawn out so that it does not bind below the
// underarm. Millimetres from the old seam line, on marks of the ruler; the zero
// value fits.
type Fit struct {
	Elbow     bool
	ElbowDown float64 // what part of the way down the old seam,
	ElbowOut  float64 // and how far out from it
	EndOut    float64 // out from the hem or waist corner
	HipOut    float64 // ... from the old seam at the hip, below the outline
}

// outline is the seam as it is traced once the corner has come to c:
//
//   - straight: down the turned seam to the last mark, then the old seam moved out;
//     turned inward, straight from the corner to the moved end;
//   - tapered from the line: from the corner by the last mark to the old seam's
//     point at the line of the girth, moved out, so that the piece has its full
//     width there, and on to the old end;
//   - tapered from the corner (the hand rule): straight to the old end.
//
// total is pivot and slide together. A straight seam whose length is not known
// ends at the last mark, any other is not known then.
func (e Edge) outline(c Point, pivot, total float64, fit Fit) (o Outline) {
	if !e.Below.Known && !e.Straight {
		return o
	}
	end := e.down(e.Below.MM)
	end.X += fit.EndOut
	o.add(NewCorner, c)
	outward := pivot >= 0
	above := c.Y >= -e.H // a corner inside the pin can swing lower at first: then the mark is not on its way
	if outward && above && (e.Straight || !e.FromCorner) {
		o.add(LastMark, Point{e.W + total, -e.H})
	}
	if e.Straight {
		end.X += total
	} else if line := e.LineAt(); !e.FromCorner && e.Line > 0 && (outward || line.Y < c.Y) {
		o.add(LinePoint, Point{line.X + total, line.Y})
	}
	if elbow := e.down(fit.ElbowDown * e.Below.MM); fit.Elbow {
		o.add(FitPoint, Point{elbow.X + fit.ElbowOut, elbow.Y})
	}
	if e.Below.Known {
		o.add(SeamEnd, end)
	}
	return o
}

// gainAtLine is what a side gains at the line of the girth, as a tape finds it on
// the outline: all that it pivots and slides where the outline goes by that line
// or is taken at the new corner's own level, else what is left of it there.
func (e Edge) gainAtLine(t Turn, pivot, total float64) Approx {
	whole := Approx{total, true}
	switch {
	case e.Straight || !e.FromCorner || pivot <= 0 && e.Line == 0 || pivot == 0 && total == 0:
		return whole
	case !t.Known || !e.Below.Known || !e.Leans:
		return Approx{}
	}
	line := e.LineAt()
	if pivot < 0 && line.Y >= t.CornerY {
		return whole
	}
	return Approx{t.Outline.at(line.Y) - line.X, true}
}

// Marked are the points of an outline where it bends, and those where it was drawn
// out to fit.
func (o Outline) Marked(fit Fit) (bends, fits []Point) {
	for i, p := range o.Points() {
		switch v := o.names[i]; {
		case v == FitPoint || v == SeamEnd && fit.EndOut != 0:
			fits = append(fits, p)
		case v != NewCorner && v != SeamEnd && p.To(o.points[0]) > shortest:
			bends = append(bends, p)
		}
	}
	return bends, fits
}
