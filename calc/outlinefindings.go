package calc

import (
	"math"
	"slices"

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
		if missing := c.outlineNeeds(front); len(missing) > 0 { // else a lean or a turn is impossible, which is said
			c.find(Finding{Code: OutlineUnknown, About: of, Missing: missing, Ways: []Way{TaperTheLine}})
		}
	} else {
		c.judgeLine(of, front)
	}
	if of == OfBust {
		c.judgeBustLine()
	} else {
		c.judgeCorners(g)
	}
	if bend := max(c.bends[front], c.bends[front+1]); bend > bendMost {
		c.find(Finding{Code: SharpBend, About: of, Degrees: bend * 180 / math.Pi})
	}
}

// judgeLine says by how much a piece that tapers from its corners is narrower at the
// line than its sides pivot and slide, or wider, where it comes in: a check where a ruler
// shows it.
func (c *computation) judgeLine(of Subject, front Side) {
	f, b := c.plan.Sides[front], c.plan.Sides[front+1]
	copies := units.Length(1)
	if of == OfBust {
		copies = 2
	}
	short := copies * (f.Total + b.Total - f.AtLine.Length - b.AtLine.Length)
	level := Note
	if short.Abs() >= c.in.Ruler.Mark() {
		level = Warn
	}
	if short.Abs() >= units.Millimetre/10 {
		c.find(Finding{Code: ShortAtLine, Level: level, About: of, Amount: short, Ways: []Way{TaperTheLine}})
	}
}

// outlineNeeds are the answers that would tell what a piece measures at its line:
// those of the sides that are not known there.
func (c *computation) outlineNeeds(front Side) (missing []Answer) {
	need := func(s Side, r units.Reading, a Answer) {
		if !c.plan.Sides[s].AtLine.Known && !slices.Contains(missing, a) {
			missing = lacking(missing, r, a)
		}
	}
	long := func(r units.Reading) units.Reading { return below(r).Length() }
	unless := func(crossed bool, allowance units.Reading) units.Reading {
		return units.Reading{Known: !crossed || allowance.Known}
	}
	told := func(m Measured) units.Reading { return units.Reading{Known: m != NotTold} }
	for _, s := range []Side{front, front + 1} {
		if in := c.in.Sleeve; s.OfSleeve() {
			need(s, in.Width, SleeveWidth)
			need(s, told(in.Measured), SleeveMeasured)
			need(s, unless(in.Measured == EdgeToEdge, in.Allowance), SleeveAllowance)
			need(s, in.CapHeight, CapHeight)
			need(s, long(in.UnderarmSeam), UnderarmSeam)
			need(s, in.HemWidth, HemWidth)
			continue
		}
		in := c.in.Bodice
		if s == BodiceFront {
			need(s, in.CornerOutFront, CornerOutFront)
			need(s, in.CornerDownFront, CornerDownFront)
			need(s, in.Front, BodiceFrontWidth)
			need(s, in.WaistFront, WaistFront)
		} else {
			need(s, in.CornerOutBack, CornerOutBack)
			need(s, in.CornerDownBack, CornerDownBack)
			need(s, in.Back, BodiceBackWidth)
			need(s, in.WaistBack, WaistBack)
		}
		need(s, long(in.SideSeam), SideSeam)
		need(s, told(in.Measured), BodiceMeasured)
		need(s, unless(in.seamsCrossed(), in.Allowance), BodiceAllowance)
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
			Other: NearestCount(c.plan.Turns[SleeveFront].Lift), Third: NearestCount(c.plan.Turns[SleeveBack].Lift)})
	}
}
