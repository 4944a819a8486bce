// Package calc says what follows from the measurements: how much each seam
// edge of a sleeve and of a bodice pivots and slides so that the girths come
// out as asked and the two pieces still sew together.
//
// Plain values go in, plain values come out; there are no files, no screen and
// no clock here. All sums are exact integers in the counts of [units.Length],
// rounded only where the doc of a figure says so. An example, in inches:
//
//	in := calc.Input{Ruler: units.EighthInch, Method: calc.UsualMethod()}
//	in.Sleeve.Measured, in.Bodice.Measured = calc.SeamToSeam, calc.SeamToSeam
//	in.Bicep, in.BicepEase, in.Sleeve.Width = in(13.75), in(1.75), in(13)
//	in.Bust, in.BustEase = in(39.5), in(3)
//	in.Bodice.Front, in.Bodice.Back = in(10.25), in(9.75)
//	p := calc.Compute(in)
//	// The sleeve needs 2 1/2, 1 1/4 a side. A side may pivot by 1, so the
//	// common slide is 1/4: p.Sides[calc.SleeveFront] pivots 1 and slides 1/4,
//	// p.Sides[calc.BodiceFront] pivots 3/8 and slides 1/4.
//
// [Working] gives the same figures as lines of arithmetic: it is the same
// computation with a listener, so the two cannot disagree. The turn is geometry, in
// floating point; its lengths are [Approx]. Odd counts, which only decimals can make,
// are rounded in three places: the front's part of a need, half of the bust's need, and
// the even slide. Half of an odd need can leave a bust one count off.
//
// A [Finding] is data; sentences are made elsewhere. What the hands do with a plan, and how
// the pieces lie then, is in calc/trace.
//
// The method is common practice at the cutting table: total need divided over
// the seam edges (Robinson, costume construction text, Central Washington
// University, ch. 17), turned about a pin at the top as far as the limit
// allows, and moved out at the underarm by the rest. No published text that was
// read gives a limit per side or a worked example of pivot and slide together.
//
// What comes out is what a tape finds on the seam that is traced below the underarm,
// at the line where the girth is measured; see [Outline]. It was held against pieces
// traced by the printed steps alone.
package calc

import "capscye/units"

// Input is everything that the sums need. Widths are as the tape showed them:
// seam allowances and take-off are taken off here, once.
type Input struct {
	Fabric Fabric
	Ruler  units.Ruler

	Bicep, BicepOther, Bust units.Reading
	HighBust, Waist, Hip    units.Reading
	Elbow, Wrist            units.Reading
	BicepEase, BustEase     units.Reading
	WaistEase, HipEase      units.Reading
	ElbowEase, WristEase    units.Reading
	MeasuredLongAgo         bool // more than six months
	// Unread tells that an answer which the sums use was given and cannot be
	// read: then nothing can be planned, least of all without it.
	Unread bool
	// Typed is the answers as they were typed; nil where nobody typed them. Only
	// guesses are made of it.
	Typed *Typed

	Sleeve SleeveInput
	Bodice BodiceInput
	Method Method
}

// SleeveInput is the sleeve pattern, measured flat.
type SleeveInput struct {
	Style     SleeveStyle
	Measured  Measured // of every width
	Allowance units.Reading
	Width     units.Reading // at the bicep line
	CapFront  units.Reading // half-cap seam from underarm to shoulder dot
	CapBack   units.Reading

	// What the turn needs, and what lies below the underarm.
	Long bool // tapers back to its hem; else the whole seam moves out
	// LengthAssumed tells that nobody said so, and that it counts as short.
	LengthAssumed bool
	CapHeight     units.Reading // from the bicep line straight up to the shoulder dot
	UnderarmSeam  units.Reading
	HemWidth      units.Reading
	ElbowWidth    units.Reading
}

// BodiceInput is the bodice pattern, measured flat; front and back are half a
// front and half a back.
type BodiceInput struct {
	Measured                  Measured // of every width
	Allowance                 units.Reading
	LikeSleeve                bool          // one of these was not told, and is the sleeve's
	Front, Back               units.Reading // centre or fold to side, at bust level
	Crossings                 int           // seamed edges that the tape crossed on each piece
	TakeOffFront, TakeOffBack units.Reading
	FinishedBust              units.Reading // replaces front and back where known
	ArmholeFront, ArmholeBack units.Reading

	// The underarm corners: how far outside and below the pin where the shoulder
	// seam line crosses the armhole.
	CornerOutFront, CornerDownFront units.Reading
	CornerOutBack, CornerDownBack   units.Reading
	BustDown                        units.Reading // the bust line below the corner, along the side seam
	SideSeam                        units.Reading // corner to waist
	WaistFront, WaistBack           units.Reading // half a front and half a back
	HipFront, HipBack               units.Reading
	DartFront, DartBack             Dart // where the dart starts that was taken off
}

// Method holds the choices of the person who alters.
type Method struct {
	LimitSleeve, LimitBodice units.Length // the most that one side may pivot
	ShareSleeve, ShareBust   units.Share  // what the front takes of a need
	Slide                    SlideChoice
	SlideLength              units.Length // for SlideChosen
	Follow                   Follow
	Armhole                  Armhole
	TaperFrom                TaperFrom
}

// UsualLimit is the most that a side commonly pivots: 1 in. Common practice, no
// source.
const UsualLimit = units.Inch

// MostLimit is how far a way out widens a pivot limit: half as much again as the
// usual inch. Common practice knows no such bound; it is ours, for a wider turn
// lowers the cap by more than it gains.
const MostLimit = 3 * UsualLimit / 2

// UsualMethod is the method where nothing was chosen.
func UsualMethod() Method {
	return Method{
		LimitSleeve: UsualLimit, LimitBodice: UsualLimit,
		ShareSleeve: units.Half, ShareBust: units.Half,
	}
}

// Fabric is what the garment is made of.
type Fabric uint8

// The two kinds of cloth that take different ease.
const (
	Woven Fabric = iota
	Knit
)

// Measured says between what the tape lay across a pattern. Seam lines taken for cut
// edges, or cut edges for seam lines, are off by every allowance in the piece, so
// nothing is assumed.
type Measured uint8

// The two ways, and none told.
const (
	NotTold    Measured = iota // a width makes no need
	SeamToSeam                 // seam line to seam line
	EdgeToEdge                 // cut edge to cut edge, so the allowances are inside
)

// SleeveStyle is how the cap is set into the armhole.
type SleeveStyle uint8

// The styles, by the ease that their caps take.
const (
	SetIn SleeveStyle = iota
	Shirt
	Gathered
)

// SlideChoice says where in the band the common slide lies.
type SlideChoice uint8

// The choices of slide.
const (
	SlideLeast  SlideChoice = iota // nearest to zero: the armhole changes least
	SlideEven                      // nearest to half the need: less pivot, more armhole
	SlideChosen                    // a length, moved into the band if it lies outside
)

// Follow says what a piece does where the common slide is more than it needs.
type Follow uint8

// The two customs.
const (
	LetOut Follow = iota // it comes out wider than asked; common practice
	Hold                 // it pivots the other way and keeps its width; geometry, not custom
)

// Armhole says whether the bodice can still be altered.
type Armhole uint8

// The two states of a bodice.
const (
	AlterArmhole Armhole = iota
	KeepArmhole          // already cut: the sleeve has to do it alone
)

// TaperFrom says from where a seam tapers back to its old end.
type TaperFrom uint8

// The two ways. From the corner is the hand rule: quicker, and narrower than asked
// at the line where the girth is measured.
const (
	FromLine TaperFrom = iota
	FromCorner
)

// Side is one edge that is altered.
type Side uint8

// The four sides. Those of one half are sewn to each other.
const (
	SleeveFront Side = iota
	SleeveBack
	BodiceFront
	BodiceBack
)

// Sides lists the four, in the order of the worksheet.
func Sides() [4]Side { return [4]Side{SleeveFront, SleeveBack, BodiceFront, BodiceBack} }

// Half is front or back: the seam in which one side of the sleeve is sewn to
// one side of the bodice.
type Half uint8

// The two halves.
const (
	Front Half = iota
	Back
)

// Halves lists the two.
func Halves() [2]Half { return [2]Half{Front, Back} }

// Sleeve is the side of the sleeve in this half.
func (h Half) Sleeve() Side { return Side(h) }

// Bodice is the side of the bodice in this half.
func (h Half) Bodice() Side { return BodiceFront + Side(h) }

// Half is the half that the side belongs to.
func (s Side) Half() Half { return Half(s % 2) }

// OfSleeve tells the sides of the sleeve from those of the bodice.
func (s Side) OfSleeve() bool { return s < BodiceFront }

// Plan is the answer.
type Plan struct {
	// Open tells that a girth is asked and an answer that it needs is missing or
	// unreadable. Both pieces share a slide, so no side is planned then: bands,
	// pivots, slides and what comes out are not known, whatever their numbers.
	Open          bool
	Sleeve, Bust  Girth
	Bands         [2]Band     // by Half
	Sides         [4]SidePlan // by Side
	Edges         [4]Edge     // by Side: the corners as measured
	Turns         [4]Turn     // by Side: what the pivots do to them
	Seams         Seams
	Widths        []Width       // below the underarm, those that were measured
	Fits          [4]Fit        // by Side: how far out the seam is drawn where it would bind
	AcrossCorners units.Reading // the sleeve across its new underarm corners
	Findings      []Finding
}

// Girth is what becomes of the sleeve at the bicep, or of the bodice at the
// bust.
type Girth struct {
	Body units.Reading // the body's girth; of two arms the larger
	Ease units.Reading // asked for
	Flat units.Reading // the pattern around the body, without allowances and take-off
	Need units.Reading // Body + Ease - Flat; not known where the girth was not asked

	Finished  units.Reading // what the outline measures at the line of this girth: Flat + what its sides gain there
	Marked    units.Reading // the same from the amounts on the ruler
	EaseAfter units.Reading // Finished - Body

	// The same three on the seams as they are drawn: out to the points where they would
	// bind below. Only what tapers from its corners is wider for that.
	Drawn, DrawnMarked, EaseDrawn units.Reading
}

// Asked tells whether this girth has a need that can be computed.
func (g Girth) Asked() bool { return g.Need.Known }

// Wanted is Body + Ease, the girth that was asked for.
func (g Girth) Wanted() units.Reading {
	if !g.Body.Known || !g.Ease.Known {
		return units.Reading{}
	}
	return units.Known(g.Body.Length + g.Ease.Length)
}

// Band is every slide that works for one half. It is empty where Low > High.
type Band struct{ Low, High units.Length }

// Empty tells that no slide serves both pieces.
func (b Band) Empty() bool { return b.Low > b.High }

// within is the slide of the band that is nearest to one wanted.
func (b Band) within(l units.Length) units.Length { return min(max(l, b.Low), b.High) }

// LeastSlide is the slide of a half's band that is nearest to zero.
func (p Plan) LeastSlide(h Half) units.Length { return p.Bands[h].within(0) }

// EvenSlide is the slide of a half's band that is nearest to half the sleeve
// side's need, or the bodice side's where the sleeve is not asked.
func (p Plan) EvenSlide(h Half) units.Length { return p.Bands[h].within(p.evenNeed(h).Length.Half()) }

func (p Plan) evenNeed(h Half) units.Reading {
	if need := p.Sides[h.Sleeve()].Need; need.Known {
		return need
	}
	return p.Sides[h.Bodice()].Need
}

// SidePlan is what one side does.
type SidePlan struct {
	Need  units.Reading // its part of the girth's need
	Pivot units.Length
	Slide units.Length
	Total units.Length // Pivot + Slide
	// LeftOver is Need - Total where pivot and slide cannot reach the need, and
	// zero otherwise. A piece that only follows has a Total beyond its Need instead.
	LeftOver units.Length

	PivotMark, SlideMark units.Length // on the ruler; they add up to the rounded Total

	// AtLine is what the side gains at the line where the girth is measured, on the
	// outline that is traced, to the nearest count; AtLineMark the same by the marks.
	AtLine, AtLineMark units.Reading
	Grows              units.Reading // how much longer the seam below gets as it is drawn: by the marks, out to the points that fit
}

// Marked is the sum of the two marks.
func (s SidePlan) Marked() units.Length { return s.PivotMark + s.SlideMark }

// AsMarked is the plan as it will lie on the paper: every side by its marks, drawn
// out where it would bind, and what follows from that for turns and seams. Pictures
// and checks at the table go by it.
func (p Plan) AsMarked(in Input) Plan {
	curves := in.HalfSeams()
	for s := range p.Sides {
		side := &p.Sides[s]
		side.Pivot, side.Slide, side.Total, side.AtLine = side.PivotMark, side.SlideMark, side.Marked(), side.AtLineMark
		if e := p.Edges[s]; e.Known {
			p.Turns[s] = turned(e, curves[s], side.Pivot, side.Slide, p.Fits[s])
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
