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
	TurnAngle                     // lean + acos(D / rho) - atan2(H, W + p): lean, D, rho, H, W + p, and -1 where acos counts negative
	CornerLift                    // H - H cos(turn) + W sin(turn): H, turn, W
	HeightLeft                    // H - lift: H, lift
	RiseOnSeam                    // of the corner over the mark: sideways, upwards
	TaperGrowth                   // of the seam back to its old end: sideways, up and down, its length before
)

// TurnLine is one line of the working of a turn: how a figure follows from its
// terms.
type TurnLine struct {
	Side   Side
	Figure TurnFigure
	Terms  []float64
	Result float64 // radians for SeamLean and TurnAngle, else millimetres
}

// TurnWorking is the working behind the turns of a plan, for every side that turns.
// Each line is worked out anew from its own terms, the results of the lines
// before it among them.
func TurnWorking(p Plan) []TurnLine {
	var lines []TurnLine
	for _, s := range Sides() {
		if e, t := p.Edges[s], p.Turns[s]; t.Known && p.Sides[s].Pivot != 0 {
			lines = append(lines, e.working(s, p.Sides[s].Pivot.Millimetres(), p.Sides[s].Slide.Millimetres(), t)...)
		}
	}
	return lines
}

func (e Edge) working(s Side, pivot, slide float64, t Turn) (lines []TurnLine) {
	add := func(f TurnFigure, result float64, terms ...float64) float64 {
		lines = append(lines, TurnLine{s, f, terms, result})
		return result
	}
	lean := 0.0
	if e.Lean != 0 {
		in := e.Below.MM * math.Sin(e.Lean)
		lean = add(SeamLean, leanOver(in, e.Below.MM), in, e.Below.MM)
	}
	d := add(PinToSeam, e.W*math.Cos(lean)+e.H*math.Sin(lean), e.W, lean, e.H)
	rho := add(PinToMark, math.Hypot(e.W+pivot, e.H), e.W, pivot, e.H)
	sign := 1.0
	if e.otherRoot() {
		sign = -1
	}
	turn := add(TurnAngle, lean+sign*math.Acos(d/rho)-math.Atan2(e.H, e.W+pivot), lean, d, rho, e.H, e.W+pivot, sign)
	lift := add(CornerLift, e.H-e.H*math.Cos(turn)+e.W*math.Sin(turn), e.H, turn, e.W)
	height := add(HeightLeft, e.H-lift, e.H, lift)
	switch {
	case e.Straight:
		across := t.CornerX - slide - e.W - pivot
		add(RiseOnSeam, math.Copysign(math.Hypot(across, e.H-height), pivot), across, e.H-height)
	case e.Below.Known:
		x, y := e.End()
		across, down := t.CornerX-x, -height-y
		add(TaperGrowth, math.Hypot(across, down)-e.Below.MM, across, down, e.Below.MM)
	}
	return lines
}
