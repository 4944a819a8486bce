package calc

import (
	"fmt"

	"capscye/units"
)

// Action is what the hands do in one step at the table.
type Action uint8

// The actions.
const (
	Lay Action = iota
	Mark
	Pin
	TurnTo
	TraceCurve
	SlideOut
	Extend    // trace a straight seam on to the hem, which stays
	Taper     // draw the seam back to its old end
	SameAgain // do the same on the other side, or the other piece
	LayBack   // back on the old outline, before the other side
	TraceAsIs // a side of the sleeve that stays as it was
	True
	Notch
	Leave // a piece that stays as it is
	CheckSeams
	CheckSides
	AlterToo
	TestGarment
)

// Piece is a pattern piece on the table.
type Piece uint8

// The pieces; Garment is none of them, but what they make.
const (
	SleevePiece Piece = iota
	BodiceFrontPiece
	BodiceBackPiece
	Garment
)

// Stage is how far the alteration of a side has come.
type Stage uint8

// The stages.
const (
	AsItWas Stage = iota
	Marked
	TurnedOut
	SlidOut
	Altered
)

// Stages are the stages of the four sides.
type Stages [4]Stage

// AllAltered is how everything lies in the end.
var AllAltered = Stages{Altered, Altered, Altered, Altered}

// TraceStep is one step at the table. Amounts are marks of the ruler, negative
// where a side comes in.
type TraceStep struct {
	Name         string // stable
	Piece        Piece
	Side         Side // whose amounts they are
	Both         bool // front and back alike
	Action       Action
	Pivot, Slide units.Length
	Stages       Stages // how the sides lie once the step is done

	goesBy []SidePlan // the sides whose amounts a step without any of its own goes by
}

// ID is what a finished step is remembered by: its name, and the amounts that it
// was done with, in millimetres. When the plan changes, what was done with other
// amounts is not done.
func (s TraceStep) ID() string {
	id, mark := s.Name, "@"
	add := func(pivot, slide units.Length) {
		id += fmt.Sprintf("%s%g%+g", mark, pivot.Millimetres(), slide.Millimetres())
		mark = ","
	}
	if s.Pivot != 0 || s.Slide != 0 {
		add(s.Pivot, s.Slide)
	}
	for _, side := range s.goesBy {
		add(side.PivotMark, side.SlideMark)
	}
	return id
}

// TraceSteps is the work at the table in its order: the sleeve, the bodice, and
// what has to be checked and altered with them. It is empty while the plan is
// open. Front and back are told apart only where they differ.
func TraceSteps(in Input, p Plan) []TraceStep {
	if p.Open {
		return nil
	}
	b := &stepList{plan: p, long: in.Sleeve.Long}
	b.sleeve()
	b.bodice(in.Method.Armhole == KeepArmhole)
	if len(b.steps) == 0 {
		return nil
	}
	b.add(TraceStep{Name: "check-cap-and-armhole", Piece: Garment, Action: CheckSeams})
	b.add(TraceStep{Name: "check-side-seams", Piece: Garment, Action: CheckSides})
	b.add(TraceStep{Name: "alter-too", Piece: Garment, Action: AlterToo})
	b.add(TraceStep{Name: "test-garment", Piece: Garment, Action: TestGarment})
	return b.steps
}

// stepList gathers the steps, and knows how the sides lie so far.
type stepList struct {
	plan   Plan
	long   bool
	steps  []TraceStep
	stages Stages
}

func (b *stepList) add(s TraceStep) {
	s.Stages = b.stages
	switch sides := b.plan.Sides; {
	case s.Piece == Garment:
		s.goesBy = sides[:]
	case s.Action != True && s.Action != Notch:
	case s.Piece == SleevePiece:
		s.goesBy = sides[:BodiceFront]
	default:
		s.goesBy = sides[s.Side : s.Side+1]
	}
	b.steps = append(b.steps, s)
}

// alters tells that a side is marked at all.
func (b *stepList) alters(s Side) bool {
	return b.plan.Sides[s].PivotMark != 0 || b.plan.Sides[s].SlideMark != 0
}

// alike tells that front and back have the same marks.
func (b *stepList) alike(front Side) bool {
	f, k := b.plan.Sides[front], b.plan.Sides[front+1]
	return f.PivotMark == k.PivotMark && f.SlideMark == k.SlideMark
}

func (b *stepList) sleeve() {
	if !b.alters(SleeveFront) && !b.alters(SleeveBack) {
		return
	}
	b.add(TraceStep{Name: "sleeve-lay", Piece: SleevePiece, Action: Lay})
	switch {
	case b.alike(SleeveFront):
		b.side(SleeveFront, SleevePiece, "sleeve-front", true)
		b.stages[SleeveBack] = Altered
		b.add(TraceStep{Name: "sleeve-back-same", Piece: SleevePiece, Side: SleeveBack, Action: SameAgain,
			Pivot: b.plan.Sides[SleeveBack].PivotMark, Slide: b.plan.Sides[SleeveBack].SlideMark})
	case !b.alters(SleeveFront):
		b.add(TraceStep{Name: "sleeve-front-as-it-is", Piece: SleevePiece, Side: SleeveFront, Action: TraceAsIs})
		b.side(SleeveBack, SleevePiece, "sleeve-back", false)
	default:
		b.side(SleeveFront, SleevePiece, "sleeve-front", false)
		b.add(TraceStep{Name: "sleeve-lay-back", Piece: SleevePiece, Side: SleeveBack, Action: LayBack})
		if b.alters(SleeveBack) {
			b.side(SleeveBack, SleevePiece, "sleeve-back", false)
		} else {
			b.add(TraceStep{Name: "sleeve-back-as-it-is", Piece: SleevePiece, Side: SleeveBack, Action: TraceAsIs})
		}
	}
	b.add(TraceStep{Name: "sleeve-true", Piece: SleevePiece, Action: True})
	b.add(TraceStep{Name: "sleeve-notches", Piece: SleevePiece, Action: Notch})
}

func (b *stepList) bodice(kept bool) {
	front, back := b.alters(BodiceFront), b.alters(BodiceBack)
	switch {
	case kept && len(b.steps) > 0:
		b.add(TraceStep{Name: "bodice-leave", Piece: BodiceFrontPiece, Side: BodiceFront, Both: true, Action: Leave})
	case !front && !back:
	case b.alike(BodiceFront):
		b.piece(BodiceFront, BodiceFrontPiece, "bodice-front", true)
		b.stages[BodiceBack] = Altered
		b.add(TraceStep{Name: "bodice-back-same", Piece: BodiceBackPiece, Side: BodiceBack, Action: SameAgain,
			Pivot: b.plan.Sides[BodiceBack].PivotMark, Slide: b.plan.Sides[BodiceBack].SlideMark})
	default:
		if front {
			b.piece(BodiceFront, BodiceFrontPiece, "bodice-front", false)
		}
		if back {
			b.piece(BodiceBack, BodiceBackPiece, "bodice-back", false)
		}
	}
}

// piece is one piece of the bodice from laying it down to its notches.
func (b *stepList) piece(s Side, piece Piece, id string, both bool) {
	b.add(TraceStep{Name: id + "-lay", Piece: piece, Side: s, Both: both, Action: Lay})
	b.side(s, piece, id, both)
	b.add(TraceStep{Name: id + "-true", Piece: piece, Side: s, Both: both, Action: True})
	b.add(TraceStep{Name: id + "-notches", Piece: piece, Side: s, Both: both, Action: Notch})
}

// side marks, turns and slides one side, and draws the seam below it.
func (b *stepList) side(s Side, piece Piece, id string, both bool) {
	if !b.alters(s) {
		return
	}
	p := b.plan.Sides[s]
	step := func(name string, a Action, stage Stage) {
		b.stages[s] = stage
		b.add(TraceStep{Name: id + "-" + name, Piece: piece, Side: s, Both: both, Action: a, Pivot: p.PivotMark, Slide: p.SlideMark})
	}
	step("mark", Mark, Marked)
	lies := Marked
	if p.PivotMark != 0 {
		step("pin", Pin, Marked)
		step("turn", TurnTo, TurnedOut)
		lies = TurnedOut
	}
	step("trace", TraceCurve, lies)
	if p.SlideMark != 0 {
		step("slide", SlideOut, SlidOut)
	}
	if s.OfSleeve() && !b.long {
		step("extend", Extend, Altered)
	} else {
		step("taper", Taper, Altered)
	}
}

// AsMarked is the plan as it will lie on the paper: every side by its marks, and
// what follows from them for turns and seams. Pictures and checks at the table go
// by it.
func (p Plan) AsMarked() Plan {
	for s := range p.Sides {
		side := &p.Sides[s]
		side.Pivot, side.Slide, side.Total = side.PivotMark, side.SlideMark, side.Marked()
		if e := p.Edges[s]; e.Known {
			p.Turns[s] = e.turn(side.Pivot.Millimetres(), side.Slide.Millimetres())
		}
	}
	longer := func(before units.Reading, front, back Side) units.Reading {
		before.Length += p.Sides[front].Slide + p.Sides[back].Slide
		return before
	}
	p.Seams.CapAfter = longer(p.Seams.CapBefore, SleeveFront, SleeveBack)
	p.Seams.ArmholeAfter = longer(p.Seams.ArmholeBefore, BodiceFront, BodiceBack)
	if p.Seams.CapEaseBefore.Known {
		p.Seams.CapEaseAfter = units.Known(p.Seams.CapAfter.Length - p.Seams.ArmholeAfter.Length)
	}
	return p
}
