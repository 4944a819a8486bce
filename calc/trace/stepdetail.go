package trace

import (
	"fmt"
	"hash/fnv"
	"reflect"

	"capscye/calc"
	"capscye/units"
)

// Detail is what the words of a step at the table say besides its amounts. Only
// what the words of that very step say is set, and in one that says "the same again" all
// that the first time said. Lengths are what is to be marked, or measured, by the marks.
type Detail struct {
	Straight   bool // the whole seam below moves out
	FromCorner bool // it tapers from the new corner

	Allowance units.Reading
	Hip       bool // the piece reaches the hip
	HipLine   bool // and its seam is drawn to a point on the hip line
	Dart      calc.Dart

	Above bool // turned far inward, the underarm point comes above the level of its mark

	LineDown units.Reading // the bust line below the underarm point
	Via      bool          // the new seam passes a mark on it,
	LineOut  units.Length  // so far out from the old seam,
	IfBelow  bool          // if that lies below the new underarm point, which nobody can tell beforehand

	Elbow               bool          // the seam is drawn out at the elbow,
	ElbowDown           units.Reading // so far down the old seam,
	ElbowOut            units.Length  // so far out from it
	EndOut, HipOut      units.Length  // the same at hem or waist, and at the hip
	AtMark, AtLineBends bool          // where the seam bends

	Curve units.Reading // the half-cap or half-armhole that an inward slide leaves

	Hem      units.Reading // the width of the hem of a straight sleeve,
	HemWiden units.Length  // and by how much that is more

	Kept               bool // the armhole is kept
	Unchanged          bool // neither cap nor armhole slides
	Cap, Armhole       units.Reading
	CapEase            units.Reading
	Sleeve, Bust       units.Reading // around the body, by the marks
	LowSleeve, LowBust bool          // a side is measured at its new underarm point, which lies below the line
	Growths            [4]units.Reading
	OfSleeve, OfBodice bool // what else is altered
}

// digest is a short hash of the details that are set, by their names: a new version with
// another detail takes no tick away from steps that say nothing of it.
func (d Detail) digest() string {
	h, v := fnv.New32a(), reflect.ValueOf(d)
	for i := range v.NumField() {
		if !v.Field(i).IsZero() {
			fmt.Fprintf(h, "%s=%v;", v.Type().Field(i).Name, v.Field(i))
		}
	}
	return fmt.Sprintf("%08x", h.Sum32())
}

// orNoneBut leaves out a dart that cannot start in one seam.
func orNoneBut(d, in calc.Dart) calc.Dart {
	if d == in || d == calc.AnyDart {
		return d
	}
	return calc.NoDart
}

// detail is what the steps of a side say of the seam below it.
func (b *stepList) detail(s calc.Side) (d Detail) {
	p, t := b.marked.Sides[s], b.marked.Turns[s]
	d.Straight = s.OfSleeve() && !b.in.Sleeve.Long
	d.FromCorner = !d.Straight && b.in.Method.TaperFrom == calc.FromCorner
	if curve := b.in.HalfSeams()[s]; p.Slide < 0 && curve.Known {
		d.Curve = units.Known(curve.Length + p.Slide)
	}
	d.Above = p.Pivot < 0 && t.Known && t.CornerY > -b.marked.Edges[s].H
	if d.Straight {
		return d
	}
	fit := b.plan.Fits[s]
	d.Dart = calc.NoDart
	d.Elbow, d.ElbowOut, d.EndOut, d.HipOut = fit.Elbow, calc.NearestCount(fit.ElbowOut), calc.NearestCount(fit.EndOut), calc.NearestCount(fit.HipOut)
	if below := b.marked.Edges[s].Below; fit.Elbow && below.Known {
		d.ElbowDown = units.Known(calc.NearestCount(fit.ElbowDown * below.MM))
	}
	d.AtMark = !d.FromCorner && p.Pivot > 0
	if s.OfSleeve() {
		return d
	}
	d.Dart, d.Hip = b.dart(s.Half()), b.in.Bodice.HipFront.Known || b.in.Bodice.HipBack.Known
	if down := b.in.Bodice.BustLine(); !d.FromCorner && down > 0 {
		_, passes := t.Outline.Find(calc.LinePoint)
		unknown := len(t.Outline.Points()) == 0
		if d.Via = passes || unknown; d.Via {
			d.LineOut, d.AtLineBends, d.IfBelow = p.Total, p.Total != 0 || p.Pivot < 0 || d.EndOut != 0, unknown && p.Pivot < 0
		}
	}
	return d
}

// dart is the dart of half a front or back, as it was told; there is none where nobody
// told and nothing was taken off.
func (b *stepList) dart(h calc.Half) calc.Dart {
	in := b.in.Bodice
	takeOff, dart := in.TakeOffFront, in.DartFront
	if h == calc.Back {
		takeOff, dart = in.TakeOffBack, in.DartBack
	}
	if dart == calc.AnyDart && takeOff.Or(0) == 0 {
		return calc.NoDart
	}
	return dart
}

// layDetail is what is drawn and marked when a piece is laid down.
func (b *stepList) layDetail(s calc.Side) (d Detail) {
	d.Allowance = b.in.Sleeve.Allowance
	if s.OfSleeve() {
		d.Elbow = b.details[s].Elbow || b.details[s+1].Elbow
	} else {
		side := b.details[s]
		d.Allowance, d.Dart, d.Hip, d.HipLine = b.in.Bodice.Allowance, side.Dart, side.Hip, side.Hip && (side.HipOut != 0 || side.EndOut != 0)
		if down := b.in.Bodice.BustLine(); down > 0 {
			d.LineDown = units.Known(down)
		}
	}
	return d
}

// hemDetail is what becomes of the hem of a straight sleeve.
func (b *stepList) hemDetail() (d Detail) {
	if b.in.Sleeve.Long {
		return d
	}
	d.Straight = true
	d.HemWiden = b.marked.Sides[calc.SleeveFront].Total + b.marked.Sides[calc.SleeveBack].Total
	if hem := b.in.Sleeve.Flat(b.in.Sleeve.HemWidth); hem.Known {
		d.Hem = units.Known(hem.Length + d.HemWiden)
	}
	return d
}

// widthDetail is what a tape finds on the outlines at the lines of the girths. A
// piece that pivots inward is as wide as was asked at its new underarm points,
// where these lie below its line.
func (b *stepList) widthDetail() (d Detail) {
	moved := func(front calc.Side) bool { return b.alters(front) || b.alters(front+1) }
	inward := func(front calc.Side) bool {
		low := func(s calc.Side) bool {
			e, t := b.marked.Edges[s], b.marked.Turns[s]
			return b.plan.Sides[s].PivotMark < 0 && (e.Line == 0 || t.Known && e.LineAt().Y >= t.CornerY)
		}
		return low(front) || low(front+1)
	}
	if moved(calc.SleeveFront) {
		d.Sleeve, d.LowSleeve = b.plan.Sleeve.DrawnMarked, inward(calc.SleeveFront)
	}
	if moved(calc.BodiceFront) {
		d.Bust, d.LowBust = b.plan.Bust.DrawnMarked, inward(calc.BodiceFront)
		if down := b.in.Bodice.BustLine(); down > 0 {
			d.LineDown = units.Known(down)
		}
	}
	return d
}

// lastDetail is what the seam lines need before they are cut.
func (b *stepList) lastDetail() (d Detail) {
	switch sleeve, bodice := b.in.Sleeve.Allowance, b.in.Bodice.Allowance; {
	case !bodice.Known || sleeve == bodice:
		d.Allowance = sleeve
	case !sleeve.Known:
		d.Allowance = bodice
	} // two allowances: each piece has its own
	return d
}
