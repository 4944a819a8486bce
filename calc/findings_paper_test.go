package calc_test

import (
	"math"

	"capscye/calc"
	"capscye/units"
)

// This file lays a pattern on the table a second time, slowly: turns are found by
// turning, widths by walking down the new seam. It is written from the words of the
// method and takes nothing from [calc.Compute]; the findings about the outline are
// held against it.

// spot is a place on the paper in millimetres, the pin at the origin, up positive.
type spot struct{ x, y float64 }

func (a spot) to(b spot) float64 { return math.Hypot(a.x-b.x, a.y-b.y) }

// swung is where a spot comes to lie when the paper is turned about the pin.
func (a spot) swung(by float64) spot {
	sin, cos := math.Sincos(by)
	return spot{a.x*cos - a.y*sin, a.x*sin + a.y*cos}
}

// slowSeam is one side on the table: its underarm corner, the seam below, and what
// pivot and slide make of them.
type slowSeam struct {
	measured   bool // out and down of the corner, and no lean that cannot be
	corner     spot
	below      float64 // the length of the seam below it
	length     bool    // ... was measured, and is one
	lean       float64 // from straight down
	leans      bool    // ... could be told from widths and length
	tooFar     bool    // the widths say that it leans in by more than it is long
	in         units.Length
	line       float64 // how far down the seam the girth is measured
	straight   bool    // a short sleeve: the seam moves out as a whole
	fromCorner bool    // the hand rule

	fits                    bool    // it goes out to points that fit:
	fitDown, fitOut, endOut float64 // what part of the way down and how far out, and how far out at its end

	pivot, slide float64
	reached      bool // some turn does it
	angle        float64
	lies         spot // the corner in the end
}

// moves tells that the side is altered.
func (s slowSeam) moves() bool { return s.pivot != 0 || s.slide != 0 }

func (s slowSeam) total() float64 { return s.pivot + s.slide }

// down is a spot of the old seam, so far below the corner.
func (s slowSeam) down(d float64) spot {
	return spot{s.corner.x - d*math.Sin(s.lean), s.corner.y - d*math.Cos(s.lean)}
}

// off is how wrong a turn still is: outward, how far the mark lies from the turned seam
// line; inward, how far beside the mark the corner lies.
func (s slowSeam) off(angle float64) float64 {
	c := s.corner.swung(angle)
	if s.pivot < 0 {
		return c.x - s.corner.x - s.pivot
	}
	way := spot{-math.Sin(s.lean), -math.Cos(s.lean)}.swung(angle)
	return (s.corner.x+s.pivot-c.x)*way.y - (s.corner.y-c.y)*way.x
}

// turned finds the turn that does what is asked, by turning further and further until it
// overshoots, and then halving. One turns the way in which a tiny pivot is reached by
// a tiny turn.
func (s slowSeam) turned() (angle float64, reached bool) {
	if s.pivot == 0 {
		return 0, true
	}
	tiny, way := s, 0.02
	tiny.pivot *= 1e-6
	if tiny.off(0)*tiny.off(1e-3) > 0 {
		way = -way
	}
	for low, high := 0.0, way; math.Abs(high) <= math.Pi; low, high = high, high+way {
		if s.off(low)*s.off(high) > 0 {
			continue
		}
		for range 50 {
			middle := (low + high) / 2
			if s.off(low)*s.off(middle) > 0 {
				low = middle
			} else {
				high = middle
			}
		}
		return low, true
	}
	return 0, false
}

// way is the new seam from the underarm corner down, a spot for each place where it
// may bend; ok is false where its end cannot be told. A straight seam of unknown length
// goes on below its mark all the same.
func (s slowSeam) way() (way []spot, ok bool) {
	if !s.measured || !s.reached || !s.length && !s.straight {
		return nil, false
	}
	mark, girth, end := s.down(0), s.down(s.line), s.down(s.below)
	if !s.length {
		end = s.down(1)
	}
	mark.x, girth.x = mark.x+s.total(), girth.x+s.total()
	way = append(way, s.lies)
	if s.straight {
		if end.x += s.total(); s.byMark() {
			way = append(way, mark)
		}
	} else if !s.fromCorner {
		if s.byMark() {
			way = append(way, mark)
		}
		if s.line > 0 && (s.pivot >= 0 || girth.y < s.lies.y) {
			way = append(way, girth)
		}
	}
	if s.fitDown > 0 {
		fit := s.down(s.fitDown * s.below)
		way = append(way, spot{fit.x + s.fitOut, fit.y})
	}
	end.x += s.endOut
	return append(way, end), s.length
}

// byMark tells that the seam goes down past its last mark: that of a corner which lies
// inside its pin and swings lower would have to go up to it.
func (s slowSeam) byMark() bool { return s.pivot >= 0 && s.lies.y >= s.corner.y }

// out is how much farther out the new seam lies than the old one, at a level so far
// down the old seam; above the new corner the corner counts.
func (s slowSeam) out(d float64) (out float64, ok bool) {
	way, ok := s.way()
	if !ok {
		return 0, false
	}
	level := s.down(d)
	if level.y >= s.lies.y {
		return s.lies.x - level.x, true
	}
	for i := 1; i < len(way); i++ {
		if a, b := way[i-1], way[i]; b.y <= level.y {
			part := 0.0
			if a.y != b.y {
				part = (a.y - level.y) / (a.y - b.y)
			}
			return a.x + (b.x-a.x)*part - level.x, true
		}
	}
	return way[len(way)-1].x - level.x, true
}

// atLine is what the side gains where the girth is measured. Drawn from the line it
// is what was asked, by making; drawn from the corner it has to be measured, but where
// the line is at a corner that did not turn outward.
func (s slowSeam) atLine() (gain float64, ok bool) {
	if s.straight || !s.fromCorner || !s.moves() || s.line == 0 && s.pivot <= 0 {
		return s.total(), true
	}
	if _, ok := s.way(); !ok || !s.leans {
		return 0, false
	}
	if s.pivot < 0 && s.down(s.line).y >= s.lies.y { // corner beside corner, for the line lies above the new one
		return s.lies.x - s.corner.x, true
	}
	return s.out(s.line)
}

// growth is by how much the seam below the underarm gets longer.
func (s slowSeam) growth() (grown float64, ok bool) {
	way, ok := s.way()
	switch {
	case s.measured && s.reached && !s.moves():
		return 0, true
	case way != nil && s.straight && !ok && s.byMark():
		return way[0].to(way[1]), true
	case way != nil && s.straight && !ok: // how far the corner falls
		return -math.Abs(s.lies.y - s.corner.y), true
	case !ok:
		return 0, false
	}
	for i := 1; i < len(way); i++ {
		grown += way[i-1].to(way[i])
	}
	return grown - s.below, true
}

// bend is the largest change of direction of the new seam, in degrees.
func (s slowSeam) bend() (degrees float64) {
	way, _ := s.way()
	for i := 2; i < len(way); i++ {
		a, b, c := way[i-2], way[i-1], way[i]
		if a.to(b) < 1e-9 || b.to(c) < 1e-9 {
			continue
		}
		change := math.Atan2(c.y-b.y, c.x-b.x) - math.Atan2(b.y-a.y, b.x-a.x)
		degrees = max(degrees, math.Abs(math.Remainder(change, 2*math.Pi))*180/math.Pi)
	}
	return degrees
}

// laid is every side of a sheet on the table, by what it pivots and slides, exactly or
// by the marks.
func laid(in calc.Input, p calc.Plan, marks bool) (seams [4]slowSeam) {
	sleeve, bodice := in.Sleeve, in.Bodice
	for h := range 2 {
		s := &seams[h]
		s.straight = !sleeve.Long
		flat := oracleSleeveFlat(sleeve)
		s.measure(flat.reading(), sleeve.CapHeight, sleeve.UnderarmSeam)
		s.corner.x /= 2
		s.narrowing(flat.minus(paperSleeve(sleeve, sleeve.HemWidth)).half(), 0)
	}
	corners := [2][4]units.Reading{
		{bodice.CornerOutFront, bodice.CornerDownFront, bodice.Front, bodice.WaistFront},
		{bodice.CornerOutBack, bodice.CornerDownBack, bodice.Back, bodice.WaistBack},
	}
	for h, c := range corners {
		s := &seams[2+h]
		s.measure(c[0], c[1], bodice.SideSeam)
		down := bodice.BustDown.Or(0)
		if bustLineImpossible(in) {
			down = 0
		}
		s.line = mm(down)
		none := units.Reading{}
		s.narrowing(oraclePiece(bodice, c[2], none).minus(oraclePiece(bodice, c[3], none)), down)
	}
	for i := range seams {
		s, side := &seams[i], p.Sides[i]
		s.fromCorner = in.Method.TaperFrom == calc.FromCorner
		s.pivot, s.slide = mm(side.Pivot), mm(side.Slide)
		if marks {
			s.pivot, s.slide = mm(side.PivotMark), mm(side.SlideMark)
		}
		s.angle, s.reached = s.turned()
		s.lies = s.corner.swung(s.angle)
		s.lies.x += s.slide
		if s.length && s.lies.y <= s.down(s.below).y { // no seam is left below it
			s.reached = false
		}
	}
	return seams
}

// paperSleeve is a width of the sleeve without its allowances.
func paperSleeve(sleeve calc.SleeveInput, width units.Reading) exact {
	flat := exactReading(width)
	switch sleeve.Measured {
	case calc.NotTold:
		return exact{}
	case calc.EdgeToEdge:
		flat = flat.minus(exactReading(sleeve.Allowance).times(exactly(2)))
	}
	return flat
}

func mm(l units.Length) float64 { return float64(l) / float64(units.Millimetre) }

// bustLineImpossible tells that the bust line was measured below the end of the side
// seam. A seam of no length tells as little as one that was not measured.
func bustLineImpossible(in calc.Input) bool {
	down, seam := in.Bodice.BustDown, in.Bodice.SideSeam
	return down.Known && seam.Known && seam.Length > 0 && down.Length >= seam.Length
}

func (s *slowSeam) measure(out, down, below units.Reading) {
	s.measured, s.corner = out.Known && down.Known, spot{mm(out.Length), -mm(down.Length)}
	s.length, s.below = below.Known && below.Length > 0, mm(below.Length)
}

// narrowing tells how far the seam goes in on its way down, from the line of the girth
// to its end. One that leans by as much as it is long, or more, cannot be laid out.
func (s *slowSeam) narrowing(in exact, line units.Length) {
	if !in.known() || !s.length || !s.measured {
		return
	}
	run := s.below - mm(line)
	s.in = in.length()
	if s.tooFar = math.Abs(mm(s.in)) >= run; s.tooFar {
		s.measured = false
		return
	}
	s.lean, s.leans = math.Asin(mm(s.in)/run), true
}
