package calc

import (
	"slices"

	"capscye/units"
)

// Way is a way out of a finding.
type Way uint8

// The ways out.
const (
	OtherSize Way = iota
	OtherShare
	WiderLimit
	Gusset
	SlashAndSpread
	LessEase
	MoreEase
	LessEaseThere // at the piece that pushes
	MoreEaseThere
	FoldOut
	WidenBelow   // do not taper all the way back
	TaperTheLine // taper from the line of the girth, not from the corner
	NarrowerLimit
	OtherStyle
	MeasureAgain
	TryTheSeam // sew the cap into the armhole in a test first
	AlterTheBodice
	LetItOut
	HoldIt
	MeasureTheSeams
	MeasureTheGirth
)

// waysOut are the ways out where a side misses its need: too small asks for
// more paper, too large for less; a limit is only worth widening where a little
// is missing; another share only takes from one side what it gives to the other, so
// it is none where both miss the same way.
func (c *computation) waysOut(p piece, side units.Length, halves []Half) []Way {
	var ways []Way
	add := func(when bool, w ...Way) {
		if when {
			ways = append(ways, w...)
		}
	}
	keep, small := c.in.Method.Armhole == KeepArmhole, side > 0
	add(!keep, OtherSize)
	add(!p.kept && !sameWay(p.front.LeftOver, p.back.LeftOver), OtherShare)
	add(small && p.girth.Body.Known, LessEase)
	add(!small && p.girth.Body.Known, MoreEase)
	add(keep && !p.kept && small && !c.plan.Seams.CapEaseBefore.Known, MeasureTheSeams)
	add(keep, AlterTheBodice)
	add(!p.kept && side.Abs() <= UsualLimit, WiderLimit)
	add(small, Gusset)
	add(small && !p.kept, SlashAndSpread)
	add(!small && !p.kept, FoldOut)
	add(c.in.Method.Follow == Hold && !keep && !slices.ContainsFunc(halves, c.opposed), LetItOut)
	return ways
}

// sameWay tells that both are too little, or both too much.
func sameWay(a, b units.Length) bool { return a > 0 && b > 0 || a < 0 && b < 0 }

// opposed tells that one piece has to grow and the other to shrink at a half; then
// nothing follows there that could be let out.
func (c *computation) opposed(h Half) bool {
	sleeve, bodice := c.plan.Sides[h.Sleeve()].Need.Or(0), c.plan.Sides[h.Bodice()].Need.Or(0)
	return sleeve != 0 && bodice != 0 && !sameWay(sleeve, bodice)
}
