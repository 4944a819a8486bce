package calc

import (
	"math"

	"capscye/units"
)

// What the outlines below the underarm tell: whether the girth is reached at its
// line, what the sleeve measures across its new corners, how sharply a seam bends.

// bendMost is the bend, in radians, from which a seam is said to need care in
// smoothing: 15 degrees. Nobody publishes such a bound; it is ours.
const bendMost = 15 * math.Pi / 180

// judgeOutline looks at the outlines of a piece by its front and back side.
func (c *computation) judgeOutline(of Subject, g Girth, front Side) {
	f, b := c.plan.Sides[front], c.plan.Sides[front+1]
	moved := f.Pivot != 0 || f.Slide != 0 || b.Pivot != 0 || b.Slide != 0
	if !moved {
		return
	}
	if !f.AtLine.Known || !b.AtLine.Known {
		c.find(Finding{Code: OutlineUnknown, About: of, Missing: c.outlineNeeds(front), Ways: []Way{TaperTheLine}})
	} else {
		c.judgeLine(of, front)
	}
	if of == OfBust {
		c.judgeBustLine()
	} else {
		c.judgeCorners(g)
	}
	if bend := max(c.plan.Turns[front].Bend.MM, c.plan.Turns[front+1].Bend.MM); bend > bendMost {
		c.find(Finding{Code: SharpBend, About: of, Degrees: bend * 180 / math.Pi})
	}
}

// judgeLine says by how much a piece that tapers from its corners is narrower at the
// line than its sides pivot and slide: a check where a ruler shows it.
func (c *computation) judgeLine(of Subject, front Side) {
	f, b := c.plan.Sides[front], c.plan.Sides[front+1]
	copies := units.Length(1)
	if of == OfBust {
		copies = 2
	}
	short := copies * (f.Total + b.Total - f.AtLine.Length - b.AtLine.Length)
	level := Note
	if short >= c.in.Ruler.Mark() {
		level = Warn
	}
	if short >= units.Millimetre/10 {
		c.find(Finding{Code: ShortAtLine, Level: level, About: of, Amount: short, Ways: []Way{TaperTheLine}})
	}
}

// outlineNeeds are the answers that would tell what a piece measures at its line.
func (c *computation) outlineNeeds(front Side) (missing []Answer) {
	in := c.in
	if front == SleeveFront {
		missing = lacking(missing, in.Sleeve.CapHeight, CapHeight)
		missing = lacking(missing, in.Sleeve.UnderarmSeam, UnderarmSeam)
		return lacking(missing, in.Sleeve.HemWidth, HemWidth)
	}
	b := in.Bodice
	for _, a := range []struct {
		measured units.Reading
		answer   Answer
	}{
		{b.CornerOutFront, CornerOutFront}, {b.CornerDownFront, CornerDownFront},
		{b.CornerOutBack, CornerOutBack}, {b.CornerDownBack, CornerDownBack}, {b.SideSeam, SideSeam},
		{b.Front, BodiceFrontWidth}, {b.WaistFront, WaistFront}, {b.Back, BodiceBackWidth}, {b.WaistBack, WaistBack},
	} {
		missing = lacking(missing, a.measured, a.answer)
	}
	return missing
}

// judgeBustLine says where the bust line was taken.
func (c *computation) judgeBustLine() {
	switch in := c.in.Bodice; {
	case c.in.Bodice.bustLineImpossible():
		c.find(Finding{Code: BustLineImpossible, Level: Warn, About: OfBust, Amount: in.BustDown.Length, Other: in.SideSeam.Length,
			Ways: []Way{MeasureAgain}})
	case !in.BustDown.Known:
		c.find(Finding{Code: BustLineAssumed, About: OfBust})
	}
}

// judgeCorners speaks of the sleeve across its new underarm corners. They lie above
// the bicep line after an outward pivot, and the sleeve is narrower there.
func (c *computation) judgeCorners(g Girth) {
	across := c.plan.AcrossCorners
	if !across.Known || !g.Flat.Known {
		return
	}
	asked := g.Flat.Length + c.plan.Sides[SleeveFront].Total + c.plan.Sides[SleeveBack].Total
	if less := asked - across.Length; less.Round(c.in.Ruler.Mark()) > 0 {
		c.find(Finding{Code: NarrowerAtCorners, About: OfSleeve, Amount: across.Length,
			Other: nearestCount(c.plan.Turns[SleeveFront].Lift), Third: nearestCount(c.plan.Turns[SleeveBack].Lift)})
	}
}
