package calc

import "capscye/units"

// drawn goes after the seams of a piece as they are drawn: out to the points that fit,
// where they would bind. What is defined without these points stays as it is; people
// read what a tape will find.
func (c *computation) drawn(g *Girth, of Subject, from girthTerms, front Side, copies int64) {
	g.Drawn, g.DrawnMarked, g.EaseDrawn = g.Finished, g.Marked, g.EaseAfter
	sides := [2]Side{front, front + 1}
	var exact, marked [2]units.Reading
	moved := false
	for i, s := range sides {
		p, e, fit := &c.plan.Sides[s], c.plan.Edges[s], c.plan.Fits[s]
		exact[i], marked[i] = p.AtLine, p.AtLineMark
		if fit == (Fit{}) || !e.Known {
			continue
		}
		curve := c.in.HalfSeams()[s]
		lies := turned(e, curve, p.PivotMark, p.SlideMark, fit)
		p.Grows, c.bends[s] = lies.Growth.Length(), lies.Bend.MM
		if !e.FromCorner || e.Straight {
			continue
		}
		moved = true
		marked[i] = e.gainAtLine(lies, p.PivotMark.Millimetres(), p.Marked().Millimetres()).Length()
		exact[i] = e.gainAtLine(turned(e, curve, p.Pivot, p.Slide, fit), p.Pivot.Millimetres(), p.Total.Millimetres()).Length()
	}
	if !moved || !g.Finished.Known || !exact[0].Known || !exact[1].Known || !marked[0].Known || !marked[1].Known {
		return
	}
	terms := func(total, atLine Quantity, whole func(SidePlan) units.Length, there [2]units.Reading) []Term {
		sum := []Term{from.flat}
		for i, s := range sides {
			sum = append(sum, c.gain(s, total, atLine, whole(c.plan.Sides[s]), there[i].Length).times(copies))
		}
		return sum
	}
	g.Drawn = units.Known(c.sum(Figure{of, Drawn}, terms(Total, AtLineDrawn, func(p SidePlan) units.Length { return p.Total }, exact)...))
	g.DrawnMarked = units.Known(c.sum(Figure{of, DrawnMarked}, terms(TotalMark, AtLineDrawnMark, SidePlan.Marked, marked)...))
	if g.Body.Known {
		g.EaseDrawn = units.Known(c.sum(Figure{of, EaseDrawn}, computed(of, Drawn, g.Drawn.Length), from.body.less()))
	}
}
