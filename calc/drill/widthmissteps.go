package drill

import (
	"capscye/calc"
	"capscye/units"
)

// What each misstep gives, in the order of the table.

// tapeWidth is a width as the tape showed it, with what has to come off.
type tapeWidth struct {
	measured, allowance, takeOff units.Length
	crossed                      int64 // seamed edges that the tape crossed, if it went from edge to edge
	edges                        bool
}

// right is the width with all of it taken off.
func (w tapeWidth) right() units.Length {
	if !w.edges {
		return w.less(0, 1)[0]
	}
	return w.less(w.crossed, 1)[0]
}

// less is the width with so many allowances taken off, and so many take-offs.
func (w tapeWidth) less(allowances, takeOffs int64) []units.Length {
	return []units.Length{w.measured - units.Length(allowances)*w.allowance - units.Length(takeOffs)*w.takeOff}
}

// tape is the measured width behind the figure; not ok for the bust's, which is
// put together from two.
func (s solved) tape() (w tapeWidth, ok bool) {
	sleeve, bodice := s.in.Sleeve, s.in.Bodice
	switch s.figure {
	case figure(calc.OfSleeve, calc.FlatWidth), figure(calc.OfSleeve, calc.Need):
		return tapeWidth{sleeve.Width.Length, sleeve.Allowance.Length, 0, 2, sleeve.Measured == calc.EdgeToEdge}, true
	case figure(calc.OfBust, calc.FrontWidth):
		return tapeAcross(bodice, bodice.Front, bodice.TakeOffFront), true
	case figure(calc.OfBust, calc.BackWidth):
		return tapeAcross(bodice, bodice.Back, bodice.TakeOffBack), true
	}
	return tapeWidth{}, false
}

// tapeAcross is the tape across half a front or half a back.
func tapeAcross(b calc.BodiceInput, width, takeOff units.Reading) tapeWidth {
	return tapeWidth{width.Length, b.Allowance.Length, takeOff.Length, int64(b.Crossings), b.Measured == calc.EdgeToEdge}
}

func allowanceLeftOn(s solved) []units.Length {
	if w, ok := s.tape(); ok && w.edges {
		return w.less(0, 1)
	}
	return nil
}

func allowanceOnce(s solved) []units.Length {
	if w, ok := s.tape(); ok && w.edges && w.crossed == 2 {
		return w.less(1, 1)
	}
	return nil
}

func allowanceTwice(s solved) []units.Length {
	if w, ok := s.tape(); ok && w.edges && w.crossed == 1 {
		return w.less(2, 1)
	}
	return nil
}

func allowanceAdded(s solved) []units.Length {
	if w, ok := s.tape(); ok && w.edges {
		return w.less(-w.crossed, 1)
	}
	return nil
}

// allowanceNotInside shows in the need of a sleeve, whose width asks for no sum
// of its own then, and in all four widths around the bust.
func allowanceNotInside(s solved) []units.Length {
	w, ok := s.tape()
	b := s.in.Bodice
	switch {
	case ok && !w.edges && s.figure.Quantity == calc.Need:
		return []units.Length{s.right + 2*w.allowance}
	case ok && !w.edges:
		return w.less(w.crossed, 1)
	case s.figure == figure(calc.OfBust, calc.FlatWidth) && b.Measured != calc.EdgeToEdge:
		return []units.Length{s.right - 4*units.Length(b.Crossings)*b.Allowance.Length}
	}
	return nil
}

func takeOffLeftIn(s solved) []units.Length {
	if w, ok := s.tape(); ok && w.takeOff > 0 {
		return []units.Length{s.right + w.takeOff}
	}
	return nil
}

func takeOffAdded(s solved) []units.Length {
	if w, ok := s.tape(); ok && w.takeOff > 0 {
		return []units.Length{s.right + 2*w.takeOff}
	}
	return nil
}

// halves are half a front and half a back without allowances and take-off.
func (s solved) halves() (front, back units.Length) {
	b := s.in.Bodice
	return tapeAcross(b, b.Front, b.TakeOffFront).right(), tapeAcross(b, b.Back, b.TakeOffBack).right()
}

func notDoubled(s solved) []units.Length {
	if s.figure != figure(calc.OfBust, calc.FlatWidth) {
		return nil
	}
	front, back := s.halves()
	return []units.Length{front + back}
}

func oneDoubled(s solved) []units.Length {
	if s.figure != figure(calc.OfBust, calc.FlatWidth) {
		return nil
	}
	front, back := s.halves()
	return []units.Length{2*front + back, front + 2*back}
}

// girth is the girth of a figure about a whole piece; not ok for one of a side.
func (s solved) girth() (g calc.Girth, ok bool) {
	switch s.figure.Of {
	case calc.OfSleeve:
		return s.plan.Sleeve, true
	case calc.OfBust:
		return s.plan.Bust, true
	}
	return calc.Girth{}, false
}

// needWith is the need with another ease and another flat width.
func needWith(g calc.Girth, ease, flat units.Length) []units.Length {
	return []units.Length{g.Body.Length + ease - flat}
}

func patternForgotten(s solved) []units.Length {
	if g, ok := s.girth(); ok {
		return needWith(g, g.Ease.Length, 0)
	}
	return nil
}

func easeForgotten(s solved) []units.Length {
	if g, ok := s.girth(); ok {
		return needWith(g, 0, g.Flat.Length)
	}
	return nil
}

func easeTakenOff(s solved) []units.Length {
	if g, ok := s.girth(); ok {
		return needWith(g, -g.Ease.Length, g.Flat.Length)
	}
	return nil
}

func otherWayRound(s solved) []units.Length {
	if _, ok := s.girth(); ok || s.figure.Quantity == calc.CapEase {
		return []units.Length{-s.right}
	}
	return nil
}

// measuredAround is the pattern around the body as the tape showed it.
func (s solved) measuredAround() units.Length {
	if s.figure.Of == calc.OfSleeve {
		return s.in.Sleeve.Width.Length
	}
	return 2 * (s.in.Bodice.Front.Length + s.in.Bodice.Back.Length)
}

func widthAsMeasured(s solved) []units.Length {
	g, ok := s.girth()
	switch {
	case !ok:
		return nil
	case s.figure.Quantity == calc.Need:
		return needWith(g, g.Ease.Length, s.measuredAround())
	}
	return []units.Length{s.right - g.Flat.Length + s.measuredAround()}
}

func halfTheBody(s solved) []units.Length {
	if g, ok := s.girth(); ok && s.figure.Of == calc.OfBust {
		return needWith(g, g.Ease.Length, g.Flat.Length.Half())
	}
	return nil
}

func smallerArm(s solved) []units.Length {
	if s.figure.Of != calc.OfSleeve || !s.in.Bicep.Known || !s.in.BicepOther.Known {
		return nil
	}
	g := s.plan.Sleeve
	g.Body.Length = min(s.in.Bicep.Length, s.in.BicepOther.Length)
	return needWith(g, g.Ease.Length, g.Flat.Length)
}

// side is the side of the figure, what its piece needs, how front and back share
// that, and what the side may pivot; not ok for a figure of a whole piece.
func (s solved) side() (side calc.Side, whole units.Length, share units.Share, limit units.Length, ok bool) {
	if s.figure.Of < calc.OfSleeveFront {
		return 0, 0, units.Share{}, 0, false
	}
	side, m := calc.Side(s.figure.Of-calc.OfSleeveFront), s.in.Method
	whole, share, limit = s.plan.Bust.Need.Length, m.ShareBust, m.LimitBodice
	if side.OfSleeve() {
		whole, share, limit = s.plan.Sleeve.Need.Length, m.ShareSleeve, m.LimitSleeve
	}
	if side.Half() == calc.Back {
		share = share.Rest()
	}
	return side, whole, share, limit, true
}

func notDivided(s solved) []units.Length {
	if _, whole, _, _, ok := s.side(); ok {
		return []units.Length{whole}
	}
	return nil
}

func dividedByTwo(s solved) []units.Length {
	if side, whole, _, _, ok := s.side(); ok && !side.OfSleeve() {
		return []units.Length{whole.Half()}
	}
	return nil
}

func shareOfWhole(s solved) []units.Length {
	if side, whole, share, _, ok := s.side(); ok && !side.OfSleeve() && 2*share.Numerator != share.Denominator {
		return []units.Length{share.Of(whole)}
	}
	return nil
}

func halvedTwice(s solved) []units.Length {
	if _, _, _, _, ok := s.side(); ok {
		return []units.Length{s.right.Half()}
	}
	return nil
}

func shareExchanged(s solved) []units.Length {
	if side, _, _, _, ok := s.side(); ok {
		return []units.Length{s.plan.Sides[acrossHalf(side)].Need.Length}
	}
	return nil
}

// acrossHalf is the same piece's side on the other half.
func acrossHalf(s calc.Side) calc.Side { return s ^ 1 }

// acrossSeam is the side that this one is sewn to.
func acrossSeam(s calc.Side) calc.Side { return (s + calc.BodiceFront) % 4 }

func evenShare(s solved) []units.Length {
	side, whole, _, _, ok := s.side()
	switch {
	case !ok:
		return nil
	case side.OfSleeve():
		return []units.Length{whole.Half()}
	}
	return []units.Length{whole.Half().Half()}
}
