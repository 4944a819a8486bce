package trace

import (
	"capscye/calc"
	"capscye/units"
)

// Stroke is a line through points.
type Stroke []calc.Point

// Drawing is a pattern piece as it lies, before and after, for looking at: its
// proportions and the order of work, no pattern to cut. A sleeve is whole, its
// front on the positive side; of the bodice it is one piece.
type Drawing struct {
	Old, New []Stroke
	Girth    Stroke // the line where the girth is measured, from seam to seam or from the centre
	Pin      calc.Point
	Corners  []Corner
	// Assumed tells that not everything was measured, and usual proportions
	// stand in; Approximate that a curve cannot be as long as it was measured.
	Assumed, Approximate bool
	BustLine             bool      // the girth is measured at a bust line of its own, not level with the underarm
	turns                []float64 // of its sides
	// Unreached tells that a side cannot be altered as planned; then it is drawn as it
	// was.
	Unreached bool
}

// Corner is an underarm corner of a drawing.
type Corner struct {
	Side     calc.Side
	Old, New calc.Point
	Mark     calc.Point   // the last mark, slide included
	Marked   bool         // the mark is on the paper by now
	Line     calc.Point   // where the seam crosses the line of the girth
	Bends    []calc.Point // where the new seam bends, drawn smooth on the outside
	Fits     []calc.Point // where it is drawn out so that it does not bind
}

// The proportions that stand in for what was not measured: a sleeve 13 in wide
// with a cap two fifths as high as it is wide, a short underarm seam half the
// width long and a long one 1 1/4 of it, tapering to 7/10; a front or back 10 in
// wide whose corner lies 2 in out and 7 in down, and 8 in of side seam. Common
// practice for a middle size, no source; they only shape pictures.
const (
	assumedSleeve    = 13 * 25.4
	assumedCap       = 0.4
	assumedShortSeam = 0.5
	assumedLongSeam  = 1.25
	assumedTaper     = 0.7
	assumedPiece     = 10 * 25.4
	assumedOut       = 2 * 25.4
	assumedDown      = 7 * 25.4
	assumedSideSeam  = 8 * 25.4
)

// SleeveDrawing is the whole sleeve, each side as far as its stage.
func SleeveDrawing(in calc.Input, p calc.Plan, stages Stages) Drawing {
	d := Drawing{}
	flat := p.Sleeve.Flat.Length.Millimetres()
	if !p.Sleeve.Flat.Known || !p.Edges[calc.SleeveFront].Known {
		d.Assumed = true
	}
	if !p.Sleeve.Flat.Known {
		flat = assumedSleeve
	}
	for _, s := range []calc.Side{calc.SleeveFront, calc.SleeveBack} {
		e := p.Edges[s]
		if !e.Known {
			e = calc.Edge{W: flat / 2, H: assumedCap * flat, Known: true, Straight: !in.Sleeve.Long, Below: e.Below, FromCorner: in.Method.TaperFrom == calc.FromCorner}
		}
		if !e.Below.Known {
			d.Assumed = true
			e.Below = calc.Approx{MM: assumedShortSeam * flat, Known: true}
			if in.Sleeve.Long {
				e.Below.MM = assumedLongSeam * flat
				e.Lean = calc.LeanOver(flat/2*(1-assumedTaper), e.Below.MM)
			}
		}
		seam := approx([...]units.Reading{in.Sleeve.CapFront, in.Sleeve.CapBack}[s])
		d.side(e, p, s, stages[s], func(k float64) calc.Cubic { return calc.HalfCap(e.W, e.H, k) }, seam)
	}
	// The hem runs from seam to seam.
	d.Old = append(d.Old, Stroke{lastOf(d.Old[0]), lastOf(d.Old[1])})
	d.New = append(d.New, Stroke{lastOf(d.New[0]), lastOf(d.New[1])})
	d.Girth = Stroke{d.Corners[0].Line, d.Corners[1].Line}
	d.movePaper(p, stages, calc.SleeveFront, calc.SleeveBack)
	return d
}

// movePaper turns and slides the whole piece while one of its sides is being
// turned or slid: paper does not move in part. What was traced before stays.
func (d *Drawing) movePaper(p calc.Plan, stages Stages, sides ...calc.Side) {
	for i, s := range sides {
		if stages[s] != TurnedOut && stages[s] != SlidOut || !p.Turns[s].Known && !d.Assumed {
			continue
		}
		theta, moved := d.turns[i], 0.0
		if stages[s] == SlidOut {
			moved = p.Sides[s].Slide.Millimetres()
		}
		if s == calc.SleeveBack {
			theta, moved = -theta, -moved
		}
		var lying []Stroke
		for _, stroke := range d.Old {
			copied := make(Stroke, len(stroke))
			for j, point := range stroke {
				copied[j] = point.Turned(theta)
				copied[j].X += moved
			}
			lying = append(lying, copied)
		}
		for j, other := range sides {
			if other != s && stages[other] == Altered {
				lying = append(lying, d.New[j])
			}
		}
		d.New = lying
	}
}

// BodiceDrawing is half a front or half a back, as far as its stage.
func BodiceDrawing(in calc.Input, p calc.Plan, h calc.Half, stages Stages) Drawing {
	s := h.Bodice()
	e := p.Edges[s]
	width, seam := approx(in.Bodice.Front), approx(in.Bodice.ArmholeFront)
	if h == calc.Back {
		width, seam = approx(in.Bodice.Back), approx(in.Bodice.ArmholeBack)
	}
	d := Drawing{Assumed: !e.Known || !e.Below.Known || !width.Known}
	if !e.Known {
		e = calc.Edge{W: assumedOut, H: assumedDown, Known: true, Below: e.Below, FromCorner: in.Method.TaperFrom == calc.FromCorner, Line: in.Bodice.BustLine().Millimetres()}
	}
	if !e.Below.Known {
		e.Below = calc.Approx{MM: assumedSideSeam, Known: true}
	}
	if !width.Known {
		width.MM = assumedPiece
	}
	d.BustLine = e.Line > 0
	d.side(e, p, s, stages[s], func(k float64) calc.Cubic { return calc.HalfArmhole(e.W, e.H, k) }, seam)
	// From the pin along the shoulder to the neck, down to the centre, and along
	// centre and waist back to the side seam: it stays where it was.
	centre, waist := e.W-width.MM, lastOf(d.Old[0])
	neck := at(centre+(0-centre)*0.45, 0.22*e.H)
	rest := Stroke{at(0, 0), neck, at(centre, -0.25*e.H), at(centre, waist.Y), waist}
	d.Old = append(d.Old, rest)
	d.New = append(d.New, append(rest[:len(rest):len(rest)], lastOf(d.New[0]))) // the waist reaches out to its new corner
	d.Girth = Stroke{at(centre, d.Corners[0].Line.Y), d.Corners[0].Line}
	d.movePaper(p, stages, s)
	return d
}

// side draws one side before and after: the curve from the pin to the underarm
// corner, and the seam below. While it is turned or slid, movePaper shows it. In
// the end the curve is the same one, turned; the slide adds a piece at the underarm,
// or draws the end of the curve anew; and the seam below is the outline.
func (d *Drawing) side(e calc.Edge, p calc.Plan, s calc.Side, stage Stage, family func(k float64) calc.Cubic, length calc.Approx) {
	curve, approximate := calc.Fitted(family, length)
	d.Approximate = d.Approximate || approximate
	pivot, slide := p.Sides[s].Pivot.Millimetres(), p.Sides[s].Slide.Millimetres()
	t := e.Turn(pivot, slide, p.Fits[s])
	d.turns = append(d.turns, t.Angle)
	endX, endY := e.End()
	corner, end := at(e.W, -e.H), at(endX, endY)
	c := Corner{Side: s, Old: corner, New: corner, Mark: at(e.W+pivot+slide, -e.H), Marked: stage > AsItWas, Line: e.LineAt()}
	before := append(flattened(curve), corner, end)
	after := append(Stroke(nil), before...)
	switch {
	case !t.Known || p.Turns[s].OutOfReach:
		d.Unreached = true
	case stage == TurnedOut:
		c.New = at(t.CornerX-slide, t.CornerY)
	case stage == SlidOut:
		c.New = at(t.CornerX, t.CornerY)
	case stage == Altered:
		c.New = at(t.CornerX, t.CornerY)
		after = flattened(curve.Turned(t.Angle))
		if slide < 0 {
			after = after.shortened(c.New, curve.Length()+slide)
		}
		after = append(append(after, c.New), t.Outline.Points()[1:]...)
		c.Line = e.LineAfter(t, pivot)
		c.Bends, c.Fits = t.Outline.Marked(p.Fits[s])
	}
	if s == calc.SleeveBack {
		before, after = before.mirrored(), after.mirrored()
		for _, point := range []*calc.Point{&c.Old, &c.New, &c.Mark, &c.Line} {
			point.X = -point.X
		}
		c.Bends, c.Fits = Stroke(c.Bends).mirrored(), Stroke(c.Fits).mirrored()
	}
	d.Old, d.New, d.Corners = append(d.Old, before), append(d.New, after), append(d.Corners, c)
}

// shortened is the curve left where a straight line from it to its new end makes it
// exactly so long; all of it where no such place is.
func (s Stroke) shortened(end calc.Point, length float64) Stroke {
	way := 0.0
	for i := 1; i < len(s); i++ {
		step := s[i].To(s[i-1])
		if way+step+s[i].To(end) > length && way+s[i-1].To(end) <= length {
			low, high := 0.0, 1.0 // part of the step
			for range 50 {
				part := (low + high) / 2
				if leave := s[i-1].Toward(s[i], part); way+step*part+leave.To(end) <= length {
					low = part
				} else {
					high = part
				}
			}
			return append(s[:i:i], s[i-1].Toward(s[i], low))
		}
		way += step
	}
	return s
}

// flattened is a curve as a line of many points.
func flattened(c calc.Cubic) Stroke {
	const parts = 24
	points := make(Stroke, 0, parts+4)
	for i := range parts + 1 {
		points = append(points, c.At(float64(i)/parts))
	}
	return points
}

func (s Stroke) mirrored() Stroke {
	for i := range s {
		s[i].X = -s[i].X
	}
	return s
}

func lastOf(s Stroke) calc.Point { return s[len(s)-1] }

// approx is a length as far as it is known.
func approx(r units.Reading) calc.Approx {
	return calc.Approx{MM: r.Length.Millimetres(), Known: r.Known}
}

func at(x, y float64) calc.Point { return calc.Point{X: x, Y: y} }
