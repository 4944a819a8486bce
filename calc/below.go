package calc

import "capscye/units"

// What happens below the underarm: the seams of front and back are sewn
// together, and what tapers back to its end must still go around elbow, wrist,
// waist and hip.

func (c *computation) below() {
	c.judgeGrowths(OfSleeve, SleeveFront)
	c.judgeGrowths(OfBust, BodiceFront)
	for _, s := range Sides() {
		c.judgeCurve(s)
	}
	in := c.in
	if in.Sleeve.Long {
		c.judgeLevel(OfSleeve, AtElbow, in.Elbow, in.ElbowEase, c.elbowAfter(), 2)
		c.judgeLevel(OfSleeve, AtWrist, in.Wrist, in.WristEase, c.sleeveFlat(in.Sleeve.HemWidth), 2)
	}
	c.judgeLevel(OfBust, AtWaist, in.Waist, in.WaistEase, c.around(in.Bodice.WaistFront, in.Bodice.WaistBack), 4)
	c.judgeLevel(OfBust, AtHip, in.Hip, in.HipEase, c.around(in.Bodice.HipFront, in.Bodice.HipBack), 4)
}

// judgeGrowths compares the seams of front and back below the underarm; a
// difference that a ruler shows has to be trued at the hem.
func (c *computation) judgeGrowths(of Subject, front Side) {
	f, b := c.plan.Turns[front].Growth, c.plan.Turns[front+1].Growth
	if !f.Known || !b.Known {
		return
	}
	if d := nearestCount(f.MM - b.MM).Abs(); d.Round(c.in.Ruler.Mark()) > 0 {
		c.find(Finding{Code: GrowthsDiffer, About: of, Amount: d})
	}
}

// Width is a width below the underarm after the alteration, beside the girth
// and ease that have to fit into it.
type Width struct {
	Of     Subject
	At     Place
	Wanted units.Length // girth + ease
	Around units.Length // after the alteration
}

// Lacks is how much is missing around, or negative what is to spare.
func (w Width) Lacks() units.Length { return w.Wanted - w.Around }

// judgeLevel checks one level. sides is how many sides share what is missing.
func (c *computation) judgeLevel(of Subject, at Place, girth, ease, width units.Reading, sides units.Length) {
	if !girth.Known || !ease.Known || !width.Known {
		return
	}
	w := Width{of, at, girth.Length + ease.Length, width.Length}
	c.plan.Widths = append(c.plan.Widths, w)
	if lacks := w.Lacks(); lacks > 0 {
		c.find(Finding{Code: BindsBelow, Level: Warn, About: of, At: at, Amount: lacks, Other: (lacks + sides/2) / sides,
			Ways: []Way{WidenBelow, LessEase, OtherSize}})
	}
}

// around is the width around the body at a level below the bust. Every bodice
// side tapers back to its waist, so nothing is gained there or below.
func (c *computation) around(front, back units.Reading) units.Reading {
	front, back = c.bodiceFlat(front), c.bodiceFlat(back)
	if !front.Known || !back.Known {
		return units.Reading{}
	}
	return units.Known(2 * (front.Length + back.Length))
}

// elbowAfter is the width at the elbow of a sleeve that tapers back to its hem:
// the seam's distance out is linear in between. Where along the seam the elbow
// lies follows from its width, or is half way where that does not tell.
func (c *computation) elbowAfter() units.Reading {
	width := c.sleeveFlat(c.in.Sleeve.ElbowWidth)
	flat, hem := c.plan.Sleeve.Flat, c.sleeveFlat(c.in.Sleeve.HemWidth)
	if !width.Known {
		return units.Reading{}
	}
	down := 0.5
	if flat.Known && hem.Known && flat.Length > width.Length && width.Length > hem.Length {
		down = float64(flat.Length-width.Length) / float64(flat.Length-hem.Length)
	}
	gain := 0.0
	for _, h := range Halves() {
		gain += c.gainBelow(h.Sleeve(), down)
	}
	return units.Known(width.Length + nearestCount(gain))
}

// gainBelow is how far out the new seam of a side lies at a part of the way
// down the old one. Without the corner or the seam's length the taper is
// straight from the side's whole gain at the corner.
func (c *computation) gainBelow(s Side, down float64) float64 {
	e, t := c.plan.Edges[s], c.plan.Turns[s]
	if !t.Known || !e.Below.Known {
		return c.plan.Sides[s].Total.Millimetres() * (1 - down)
	}
	endX, endY := e.End()
	oldX := e.W + (endX-e.W)*down
	y := -e.H + (endY+e.H)*down
	newX := t.CornerX + (endX-t.CornerX)*(y-t.CornerY)/(endY-t.CornerY)
	return newX - oldX
}

// judgeCurve names a half-cap or a half-armhole that cannot be: it is at least
// as long as the straight line, and a cap at most as long as the way out and
// down.
func (c *computation) judgeCurve(s Side) {
	e := c.plan.Edges[s]
	seam, code := c.halfSeam(s), CapImpossible
	if !s.OfSleeve() {
		code = ArmholeImpossible
	}
	if !e.Known || !seam.Known {
		return
	}
	mm := seam.Length.Millimetres()
	if mm < e.chord() || s.OfSleeve() && mm > e.W+e.H {
		c.find(Finding{Code: code, Level: Warn, About: s.Subject(), Amount: seam.Length,
			Other: nearestCount(e.W), Third: nearestCount(e.H)})
	}
}

// halfSeam is the measured half of cap or armhole at a side.
func (c *computation) halfSeam(s Side) units.Reading {
	return [...]units.Reading{
		c.in.Sleeve.CapFront, c.in.Sleeve.CapBack, c.in.Bodice.ArmholeFront, c.in.Bodice.ArmholeBack,
	}[s]
}
