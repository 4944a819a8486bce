package calc

import "math"

// TurnFigure is a figure of the turn of a side.
type TurnFigure uint8

// The figures, in the order in which they follow from each other. Terms of a
// [TurnLine] are what is said here, lengths in millimetres, angles in radians;
// W, H, p, s are the corner out and down, the pivot and the slide.
const (
	SeamLean    TurnFigure = iota // asin(in / seam): how far the seam goes in, its length
	PinToSeam                     // W cos(lean) + H sin(lean): W, lean, H
	PinToMark                     // hypot(W + p, H): W, p, H
	PinToCorner                   // hypot(W, H): W, H
	TurnAngle                     // lean + acos(D / rho) - atan2(H, W + p): lean, D, rho, H, W + p, and -1 where acos counts negative
	InwardAngle                   // atan2(H, W) - acos((W + p) / r): H, W, W + p, pin to corner
	CornerOut                     // W cos(turn) + H sin(turn) + s: W, turn, H, s
	CornerLift                    // H - H cos(turn) + W sin(turn): H, turn, W
	HeightLeft                    // H - lift: H, lift
	LegToMark                     // hypot(across, down): from the new corner to the last mark
	LegToLine                     // ... on to the line of the girth
	LegToEnd                      // ... on to the end of the seam
	SeamGrowth                    // the legs, less the seam before: the legs, the length before
	FallOnSeam                    // -lift: the growth of a straight seam of unknown length that turns inward
	GainAtLine                    // C + (E - C) x a / b - L: corner, end and old seam at the line outward, line and end below the corner
)

// TurnLine is one line of the working of a turn: how a figure follows from its
// terms.
type TurnLine struct {
	Side   Side
	Figure TurnFigure
	Terms  []float64
	Result float64 // radians for the lean and the angles, else millimetres
}

// TurnWorking is the working behind the turns of a plan, and behind the outlines
// below the underarm, for every side that is altered. Each line is worked out anew
// from its own terms, the results of the lines before it among them.
func TurnWorking(p Plan) []TurnLine {
	var lines []TurnLine
	for _, s := range Sides() {
		if t := p.Turns[s]; t.Known && (p.Sides[s].Pivot != 0 || p.Sides[s].Slide != 0) {
			w := turnSteps{e: p.Edges[s], side: s, pivot: p.Sides[s].Pivot.Millimetres(), slide: p.Sides[s].Slide.Millimetres()}
			w.work(t)
			lines = append(lines, w.lines...)
		}
	}
	return lines
}

// turnSteps is the working of one side.
type turnSteps struct {
	e            Edge
	side         Side
	pivot, slide float64
	lines        []TurnLine
}

func (w *turnSteps) add(f TurnFigure, result float64, terms ...float64) float64 {
	w.lines = append(w.lines, TurnLine{w.side, f, terms, result})
	return result
}

func (w *turnSteps) work(t Turn) {
	e := w.e
	lean := 0.0
	if e.Lean != 0 {
		over := e.Below.MM - e.Line
		in := over * math.Sin(e.Lean)
		lean = w.add(SeamLean, LeanOver(in, over), in, over)
	}
	turn := w.turn(lean)
	x := w.add(CornerOut, e.W*math.Cos(turn)+e.H*math.Sin(turn)+w.slide, e.W, turn, e.H, w.slide)
	lift := w.add(CornerLift, e.H-e.H*math.Cos(turn)+e.W*math.Sin(turn), e.H, turn, e.W)
	height := w.add(HeightLeft, e.H-lift, e.H, lift)
	w.legs(t, Point{x, -height}, lift)
	atCorner := w.pivot <= 0 && e.Line == 0 // the girth is read at the corner's own level
	if line := e.LineAt(); e.FromCorner && e.Below.Known && e.Leans && !e.Straight && !atCorner && line.Y < -height {
		end := e.down(e.Below.MM)
		a, b := -height-line.Y, -height-end.Y
		w.add(GainAtLine, x+(end.X-x)*a/b-line.X, x, end.X, line.X, a, b)
	}
}

// turn is the angle, from the formula of its direction.
func (w *turnSteps) turn(lean float64) float64 {
	e := w.e
	switch {
	case w.pivot == 0:
		return 0
	case w.pivot < 0:
		r := w.add(PinToCorner, e.chord(), e.W, e.H)
		return w.add(InwardAngle, math.Atan2(e.H, e.W)-math.Acos((e.W+w.pivot)/r), e.H, e.W, e.W+w.pivot, r)
	}
	d := w.add(PinToSeam, e.W*math.Cos(lean)+e.H*math.Sin(lean), e.W, lean, e.H)
	rho := w.add(PinToMark, math.Hypot(e.W+w.pivot, e.H), e.W, w.pivot, e.H)
	sign := 1.0
	if e.otherRoot() {
		sign = -1
	}
	return w.add(TurnAngle, lean+sign*math.Acos(d/rho)-math.Atan2(e.H, e.W+w.pivot), lean, d, rho, e.H, e.W+w.pivot, sign)
}

// legs are the stretches of the outline and what they come to.
func (w *turnSteps) legs(t Turn, from Point, lift float64) {
	var terms []float64
	for i, to := range t.Outline.Points() {
		leg, ok := map[Vertex]TurnFigure{LastMark: LegToMark, LinePoint: LegToLine, SeamEnd: LegToEnd}[t.Outline.Vertex(i)]
		if !ok {
			continue
		}
		across, down := to.X-from.X, from.Y-to.Y
		terms = append(terms, w.add(leg, math.Hypot(across, down), across, down))
		from = to
	}
	switch {
	case w.e.Below.Known:
		sum := -w.e.Below.MM
		for _, leg := range terms {
			sum += leg
		}
		w.add(SeamGrowth, sum, append(terms, w.e.Below.MM)...)
	case w.e.Straight && w.pivot < 0:
		w.add(FallOnSeam, -math.Abs(lift), lift)
	}
}
