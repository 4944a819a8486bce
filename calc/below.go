package calc

import "capscye/units"

// What happens below the underarm: the seams of front and back are sewn
// together, and what tapers back to its end must still go around elbow, wrist,
// waist and hip.

func (c *computation) below() {
	in := c.in
	if in.Sleeve.Long {
		c.elbow()
		c.wrist()
	}
	c.judgeLevel(OfBust, AtWaist, in.Waist, in.WaistEase, c.around(in.Bodice.WaistFront, in.Bodice.WaistBack), func(_ Side, f Fit, out fitting) Fit {
		f.EndOut = out(0)
		return f
	})
	c.judgeLevel(OfBust, AtHip, in.Hip, in.HipEase, c.around(in.Bodice.HipFront, in.Bodice.HipBack), func(_ Side, f Fit, out fitting) Fit {
		f.HipOut = out(0)
		return f
	})
}

// judgeGrowths compares the seams of front and back below the underarm, as they are drawn;
// a difference that a ruler shows has to be trued at the hem.
func (c *computation) judgeGrowths(of Subject, front Side) {
	f, b := c.plan.Sides[front].Grows, c.plan.Sides[front+1].Grows
	if !f.Known || !b.Known {
		return
	}
	if d := (f.Length - b.Length).Abs(); d.Round(c.in.Ruler.Mark()) > 0 {
		c.find(Finding{Code: GrowthsDiffer, About: of, Amount: d})
	}
}

// Width is a width below the underarm after the alteration, beside the girth
// and ease that have to fit into it.
type Width struct {
	At     Place
	Wanted units.Length // girth + ease
	Around units.Length // after the alteration, read off the outline
	Marked units.Length // the same by the marks
}

// Lacks is how much is missing around, or negative what is to spare.
func (w Width) Lacks() units.Length { return w.Wanted - w.Around }

// LacksMarked is the same by the marks.
func (w Width) LacksMarked() units.Length { return w.Wanted - w.Marked }

// level is a width at a level below the underarm with what the outlines gain there, by
// the exact amounts and by the marks.
type level struct{ after, marked units.Reading }

// fitting is how far out from the old seam a side is marked so that it fits, given what
// its outline gains there: on the next mark of the ruler, for what is drawn out to fit
// must fit. Millimetres.
type fitting func(gain units.Length) float64

// judgeLevel checks one level: it binds by the exact amounts, or by the marks. What is
// missing is shared by the sides that are drawn anew, or by all where none is; fit draws
// each of them out.
func (c *computation) judgeLevel(of Subject, at Place, girth, ease units.Reading, l level, fit func(Side, Fit, fitting) Fit) {
	if !girth.Known || !ease.Known || !l.after.Known {
		return
	}
	w := Width{at, girth.Length + ease.Length, l.after.Length, l.marked.Length}
	c.plan.Widths = append(c.plan.Widths, w)
	front, copies := SleeveFront, units.Length(1)
	if of == OfBust {
		front, copies = BodiceFront, 2
	}
	drawn := make([]Side, 0, 2)
	for _, s := range []Side{front, front + 1} {
		if c.plan.Sides[s].Altered() {
			drawn = append(drawn, s)
		}
	}
	sides := copies * units.Length(len(drawn))
	if sides == 0 {
		sides = 2 * copies
	}
	lacks := w.Lacks()
	if lacks <= 0 {
		lacks = w.LacksMarked()
	}
	if lacks <= 0 {
		return
	}
	f := Finding{Code: BindsBelow, Level: Warn, About: of, At: at, Amount: lacks, Other: (lacks + sides/2) / sides}
	if len(drawn) > 0 { // else it stays: nothing tapers that could taper less
		f.Ways = append(f.Ways, WidenBelow)
	}
	if ease.Length-ceil(lacks, c.in.mark()) >= c.in.leastEase(at) {
		f.Ways = append(f.Ways, LessEase)
	}
	if of == OfBust && c.in.Method.Armhole == KeepArmhole { // it is cut: not of another size
		f.Ways = append(f.Ways, AlterTheBodice)
	} else {
		f.Ways = append(f.Ways, OtherSize)
	}
	c.find(f)
	mark := c.in.Ruler.Mark()
	for _, s := range drawn {
		c.plan.Fits[s] = fit(s, c.plan.Fits[s], func(gain units.Length) float64 {
			wanted := sides*gain + max(w.LacksMarked(), 0)
			return (ceil(wanted, sides*mark) / sides).Millimetres()
		})
	}
}

// ceil is the next multiple of a step.
func ceil(l, step units.Length) units.Length {
	over := l % step
	if over < 0 {
		over += step
	}
	if over == 0 {
		return l
	}
	return l + step - over
}

// around is the width around the body at a level below the bust. Every bodice
// side tapers back to its waist, so nothing is gained there or below.
func (c *computation) around(front, back units.Reading) level {
	front, back = c.in.Bodice.flat(front), c.in.Bodice.flat(back)
	if !front.Known || !back.Known {
		return level{}
	}
	width := units.Known(2 * (front.Length + back.Length))
	return level{width, width}
}

// wrist checks the hem of a long sleeve, which stays.
func (c *computation) wrist() {
	hem := c.in.Sleeve.Flat(c.in.Sleeve.HemWidth)
	c.judgeLevel(OfSleeve, AtWrist, c.in.Wrist, c.in.WristEase, level{hem, hem}, func(_ Side, f Fit, out fitting) Fit {
		f.EndOut = out(0)
		return f
	})
}

// elbow checks the width at the elbow of a long sleeve, which is read off the new
// outlines at the level where it lies on the old seam. Where along the seam that is
// follows from its width, or is half way where that does not tell.
func (c *computation) elbow() {
	width := c.in.Sleeve.Flat(c.in.Sleeve.ElbowWidth)
	flat, hem := c.plan.Sleeve.Flat, c.in.Sleeve.Flat(c.in.Sleeve.HemWidth)
	if !width.Known || !c.plan.Sides[SleeveFront].AtLine.Known || !c.plan.Sides[SleeveBack].AtLine.Known {
		return // what is not known at the line is not known further down
	}
	down := 0.5
	if flat.Known && hem.Known && flat.Length > width.Length && width.Length > hem.Length {
		down = float64(flat.Length-width.Length) / float64(flat.Length-hem.Length)
	}
	exact, marked := 0.0, [2]float64{}
	for _, h := range Halves() {
		s, p := h.Sleeve(), c.plan.Sides[h.Sleeve()]
		exact += c.gainBelow(s, c.plan.Turns[s], p.Total, down)
		marked[h] = c.gainBelow(s, c.turned(s, p.PivotMark, p.SlideMark), p.Marked(), down)
	}
	l := level{units.Known(width.Length + NearestCount(exact)), units.Known(width.Length + NearestCount(marked[Front]+marked[Back]))}
	c.judgeLevel(OfSleeve, AtElbow, c.in.Elbow, c.in.ElbowEase, l, func(s Side, f Fit, out fitting) Fit {
		f.Elbow = true
		f.ElbowDown = down
		f.ElbowOut = out(NearestCount(marked[s.Half()]))
		return f
	})
}

// gainBelow is how far out the new seam of a side lies at a part of the way
// down the old one. Without the corner or the seam's length the taper is
// straight from the side's whole gain at the old corner.
func (c *computation) gainBelow(s Side, t Turn, total units.Length, down float64) float64 {
	e := c.plan.Edges[s]
	if !t.Known || !e.Below.Known {
		return total.Millimetres() * (1 - down)
	}
	old := e.down(e.Below.MM * down)
	return t.Outline.at(old.Y) - old.X
}

// judgeCurve names a half-cap or a half-armhole that cannot be: it is at least
// as long as the straight line, and a cap at most as long as the way out and
// down.
func (c *computation) judgeCurve(s Side, e Edge) {
	seam, code := c.in.HalfSeams()[s], CapImpossible
	if !s.OfSleeve() {
		code = ArmholeImpossible
	}
	if !seam.Known {
		return
	}
	longest := NearestCount(e.W + e.H) // in counts: in millimetres a sum that is just as long can come out a bit shorter
	if seam.Length.Millimetres() < e.chord() || s.OfSleeve() && seam.Length > longest {
		c.find(Finding{Code: code, Level: Warn, About: s.Subject(), Amount: seam.Length,
			Other: NearestCount(e.W), Third: NearestCount(e.H)})
	}
}
