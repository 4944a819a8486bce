// Package trace is what follows from a plan at the table: the steps in which the hands carry
// it out, and the pieces as they lie on the paper at each.
package trace

import (
	"fmt"
	"slices"
	"strings"

	"capscye/calc"
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
	LayBack   // back where it lay, before the other side
	TraceAsIs // a side of the sleeve that stays as it was
	True
	Leave       // a piece that stays as it is
	Unreachable // a piece that no turn alters as planned
	Notch
	CheckSeams
	CheckWidths
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

// Step is one step at the table. Amounts are marks of the ruler, negative
// where a side comes in.
type Step struct {
	Name         string // stable
	Piece        Piece
	Side         calc.Side // whose amounts they are
	Both         bool      // front and back alike
	Action       Action
	Pivot, Slide units.Length
	Stages       Stages // how the sides lie once the step is done
	Detail

	goesBy []calc.SidePlan // the sides whose amounts a step without any of its own goes by
}

// ID is what a finished step is remembered by: its name, the amounts that it was
// done with, in millimetres, and a digest of whatever else its words say. When one
// of them changes, what was done by other words is not done.
func (s Step) ID() string {
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
	if s.Detail != (Detail{}) {
		id += "#" + s.digest()
	}
	return id
}

// StepName is the name of the step that an ID is of.
func StepName(id string) string {
	if end := strings.IndexAny(id, "@#"); end >= 0 {
		return id[:end]
	}
	return id
}

// Steps is the work at the table in its order: the sleeve, the bodice, and
// what has to be checked and altered with them. It is empty while the plan is
// open. Front and back are told apart only where they differ.
func Steps(in calc.Input, p calc.Plan) []Step {
	if p.Open || p.TooFar() {
		return nil
	}
	b := &stepList{in: in, plan: p, marked: p.AsMarked(in)}
	for _, s := range calc.Sides() {
		b.details[s] = b.detail(s)
	}
	b.sleeve()
	b.bodice(in.Method.Armhole == calc.KeepArmhole)
	switch {
	case len(b.steps) == 0:
		return nil
	case !slices.ContainsFunc(b.steps, func(s Step) bool { return s.Action == Unreachable }):
		b.garment() // what has a piece that cannot be done is no garment yet
	}
	return b.steps
}

// stepList gathers the steps, and knows how the sides lie so far.
type stepList struct {
	in      calc.Input
	plan    calc.Plan
	marked  calc.Plan // as it will lie on the paper
	details [4]Detail
	steps   []Step
	stages  Stages
}

func (b *stepList) add(s Step) {
	s.Stages = b.stages
	switch sides := b.plan.Sides; {
	case s.Piece == Garment:
		s.goesBy = sides[:]
	case s.Action != True:
	case s.Piece == SleevePiece:
		s.goesBy = sides[:calc.BodiceFront]
	default:
		s.goesBy = sides[s.Side : s.Side+1]
	}
	b.steps = append(b.steps, s)
}

// alters tells that a side is marked at all.
func (b *stepList) alters(s calc.Side) bool { return b.plan.Sides[s].Altered() }

// stuck tells that no hands can alter a side as planned, or as it would be marked.
func (b *stepList) stuck(s calc.Side) bool { return b.plan.Turns[s].OutOfReach }

// alike tells that the steps of front and back say the same, but for the length of
// a curve that an inward slide leaves.
func (b *stepList) alike(front calc.Side) bool {
	f, k := b.plan.Sides[front], b.plan.Sides[front+1]
	one, other := b.details[front], b.details[front+1]
	measured := one.Curve.Known == other.Curve.Known
	one.Curve, other.Curve = units.Reading{}, units.Reading{}
	return measured && f.PivotMark == k.PivotMark && f.SlideMark == k.SlideMark && one == other
}

func (b *stepList) sleeve() {
	switch {
	case !b.alters(calc.SleeveFront) && !b.alters(calc.SleeveBack):
		return
	case b.stuck(calc.SleeveFront) || b.stuck(calc.SleeveBack):
		b.add(Step{Name: "sleeve-unreachable", Piece: SleevePiece, Action: Unreachable})
		return
	}
	b.add(Step{Name: "sleeve-lay", Piece: SleevePiece, Action: Lay, Detail: b.layDetail(calc.SleeveFront)})
	switch {
	case b.alike(calc.SleeveFront):
		b.side(calc.SleeveFront, SleevePiece, "sleeve-front", true)
		b.stages[calc.SleeveBack] = Altered
		b.add(b.sameAgain("sleeve-back-same", SleevePiece, calc.SleeveBack))
	case !b.alters(calc.SleeveFront):
		b.add(Step{Name: "sleeve-front-as-it-is", Piece: SleevePiece, Side: calc.SleeveFront, Action: TraceAsIs})
		b.side(calc.SleeveBack, SleevePiece, "sleeve-back", false)
	default:
		b.side(calc.SleeveFront, SleevePiece, "sleeve-front", false)
		b.add(Step{Name: "sleeve-lay-back", Piece: SleevePiece, Side: calc.SleeveBack, Action: LayBack})
		if b.alters(calc.SleeveBack) {
			b.side(calc.SleeveBack, SleevePiece, "sleeve-back", false)
		} else {
			b.add(Step{Name: "sleeve-back-as-it-is", Piece: SleevePiece, Side: calc.SleeveBack, Action: TraceAsIs})
		}
	}
	b.add(Step{Name: "sleeve-true", Piece: SleevePiece, Action: True, Detail: b.hemDetail()})
}

func (b *stepList) bodice(kept bool) {
	front, back := b.alters(calc.BodiceFront), b.alters(calc.BodiceBack)
	switch {
	case kept && len(b.steps) > 0:
		b.add(Step{Name: "bodice-leave", Piece: BodiceFrontPiece, Side: calc.BodiceFront, Both: true, Action: Leave})
	case !front && !back:
	case b.alike(calc.BodiceFront) && !b.stuck(calc.BodiceFront) && !b.stuck(calc.BodiceBack):
		b.piece(calc.BodiceFront, BodiceFrontPiece, "bodice-front", true)
		b.stages[calc.BodiceBack] = Altered
		b.add(b.sameAgain("bodice-back-same", BodiceBackPiece, calc.BodiceBack))
	default:
		if front {
			b.piece(calc.BodiceFront, BodiceFrontPiece, "bodice-front", false)
		}
		if back {
			b.piece(calc.BodiceBack, BodiceBackPiece, "bodice-back", false)
		}
	}
}

// sameAgain is the other side of a piece, or the other piece, by the same words.
func (b *stepList) sameAgain(name string, piece Piece, s calc.Side) Step {
	return Step{Name: name, Piece: piece, Side: s, Action: SameAgain,
		Pivot: b.plan.Sides[s].PivotMark, Slide: b.plan.Sides[s].SlideMark, Detail: b.details[s]}
}

// piece is one piece of the bodice from laying it down to its armhole.
func (b *stepList) piece(s calc.Side, piece Piece, id string, both bool) {
	if b.stuck(s) {
		b.add(Step{Name: id + "-unreachable", Piece: piece, Side: s, Action: Unreachable})
		return
	}
	b.add(Step{Name: id + "-lay", Piece: piece, Side: s, Both: both, Action: Lay, Detail: b.layDetail(s)})
	b.side(s, piece, id, both)
	armhole := Detail{Dart: orNoneBut(b.details[s].Dart, calc.ArmholeDart)}
	b.add(Step{Name: id + "-true", Piece: piece, Side: s, Both: both, Action: True, Detail: armhole})
}

// side marks, turns and slides one side, and draws the seam below it.
func (b *stepList) side(s calc.Side, piece Piece, id string, both bool) {
	if !b.alters(s) {
		return
	}
	p, d := b.plan.Sides[s], b.details[s]
	step := func(name string, a Action, stage Stage, d Detail) {
		b.stages[s] = stage
		b.add(Step{Name: id + "-" + name, Piece: piece, Side: s, Both: both, Action: a, Pivot: p.PivotMark, Slide: p.SlideMark, Detail: d})
	}
	// What does not change the words of a step is no part of it: a tick must stay.
	trace, slide := Detail{}, Detail{Curve: d.Curve, Above: d.Above}
	trace.FromCorner = d.FromCorner && p.PivotMark > 0 && p.SlideMark == 0
	slide.FromCorner = d.FromCorner && p.PivotMark > 0
	step("mark", Mark, Marked, Detail{Via: d.Via, LineOut: d.LineOut})
	lies := Marked
	if p.PivotMark != 0 {
		step("pin", Pin, Marked, Detail{})
		step("turn", TurnTo, TurnedOut, Detail{Above: d.Above})
		lies = TurnedOut
	}
	step("trace", TraceCurve, lies, trace)
	if p.SlideMark != 0 {
		step("slide", SlideOut, SlidOut, slide)
	}
	d.Curve, d.Above, d.Dart = units.Reading{}, false, orNoneBut(d.Dart, calc.SideDart)
	if d.Straight {
		step("extend", Extend, Altered, Detail{})
	} else {
		step("taper", Taper, Altered, d)
	}
}

// garment is what concerns more than one piece.
func (b *stepList) garment() {
	add := func(name string, a Action, d Detail) {
		b.add(Step{Name: name, Piece: Garment, Action: a, Detail: d})
	}
	seams := b.marked.Seams
	changed := func(front calc.Side) bool { return b.alters(front) || b.alters(front+1) }
	sleeve, bodice := changed(calc.SleeveFront), changed(calc.BodiceFront)
	if slides := b.plan.Sides[calc.SleeveFront].SlideMark != 0 || b.plan.Sides[calc.SleeveBack].SlideMark != 0; slides || sleeve && bodice {
		add("notches", Notch, Detail{})
		add("check-cap-and-armhole", CheckSeams, Detail{Kept: b.in.Method.Armhole == calc.KeepArmhole, Unchanged: !slides,
			Cap: seams.CapAfter, Armhole: seams.ArmholeAfter, CapEase: seams.CapEaseAfter})
	} // else one piece only pivots: its seam keeps its length, and fits as before
	if d := b.widthDetail(); d.Sleeve.Known || d.Bust.Known {
		add("check-widths", CheckWidths, d)
	}
	growths := Detail{OfSleeve: sleeve, OfBodice: bodice}
	for _, s := range calc.Sides() {
		if s.OfSleeve() && sleeve || !s.OfSleeve() && bodice {
			growths.Growths[s] = b.plan.Sides[s].Grows
		}
	}
	add("check-side-seams", CheckSides, growths)
	add("alter-too", AlterToo, Detail{OfSleeve: sleeve, OfBodice: bodice, Straight: !b.in.Sleeve.Long})
	add("test-garment", TestGarment, b.lastDetail())
}
