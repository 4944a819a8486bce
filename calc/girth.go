package calc

import (
	"slices"

	"capscye/units"
)

// The needs: girth + ease - flat width, absent where the girth was not asked.

// girthTerms are the two terms of a need that are used again for what is
// finished.
type girthTerms struct{ body, flat Term }

// sleeve computes the sleeve's girth up to its need.
func (c *computation) sleeve() (Girth, girthTerms) {
	in := c.in.Sleeve
	g := Girth{Ease: c.in.BicepEase, Flat: in.Width}
	from := girthTerms{flat: typed(SleeveWidth, in.Width.Length)}
	g.Body, from.body = c.arm()

	missing := untold(nil, in.Measured, SleeveMeasured, in.Width)
	if in.Measured == EdgeToEdge {
		missing = lacking(missing, in.Allowance, SleeveAllowance)
	}
	missing = lacking(missing, in.Width, SleeveWidth)
	if len(missing) > 0 {
		g.Flat = units.Reading{}
	} else if in.Measured == EdgeToEdge {
		g.Flat = units.Known(c.sum(Figure{OfSleeve, FlatWidth},
			from.flat, typed(SleeveAllowance, in.Allowance.Length).times(-2))) // a seam at either edge
		from.flat = computed(OfSleeve, FlatWidth, g.Flat.Length)
	}
	missing = lacking(missing, g.Ease, BicepEase)
	c.need(&g, OfSleeve, missing, from, typed(BicepEase, g.Ease.Length))
	return g, from
}

// arm is the larger of the two arms where both were measured.
func (c *computation) arm() (units.Reading, Term) {
	one, other := typed(Bicep, c.in.Bicep.Length), typed(BicepOther, c.in.BicepOther.Length)
	switch {
	case c.in.Bicep.Known && c.in.BicepOther.Known:
		larger := c.largest(Figure{OfSleeve, LargerArm}, one, other)
		return units.Known(larger), computed(OfSleeve, LargerArm, larger)
	case c.in.BicepOther.Known:
		return c.in.BicepOther, other
	}
	return c.in.Bicep, one
}

// bust computes the bodice's girth up to its need.
func (c *computation) bust() (Girth, girthTerms) {
	in := c.in.Bodice
	g := Girth{Body: c.in.Bust, Ease: c.in.BustEase, Flat: in.FinishedBust}
	from := girthTerms{
		body: typed(Bust, g.Body.Length),
		flat: typed(FinishedBust, in.FinishedBust.Length),
	}
	var missing []Answer
	if !in.FinishedBust.Known {
		missing = untold(nil, in.Measured, BodiceMeasured, in.Front, in.Back)
		if in.seamsCrossed() {
			missing = lacking(missing, in.Allowance, BodiceAllowance)
		}
		missing = lacking(missing, in.Front, BodiceFrontWidth)
		missing = lacking(missing, in.Back, BodiceBackWidth)
		if len(missing) == 0 {
			front := c.bodiceWidth(FrontWidth, typed(BodiceFrontWidth, in.Front.Length), TakeOffFront, in.TakeOffFront)
			back := c.bodiceWidth(BackWidth, typed(BodiceBackWidth, in.Back.Length), TakeOffBack, in.TakeOffBack)
			g.Flat = units.Known(c.sum(Figure{OfBust, FlatWidth}, front.times(2), back.times(2))) // half a body each
			from.flat = computed(OfBust, FlatWidth, g.Flat.Length)
		}
	}
	missing = lacking(missing, g.Ease, BustEase)
	c.need(&g, OfBust, missing, from, typed(BustEase, g.Ease.Length))
	return g, from
}

// bodiceWidth is half a front or half a back at bust level, without the
// allowances that the tape crossed and without take-off.
func (c *computation) bodiceWidth(q Quantity, width Term, takeOffAnswer Answer, takeOff units.Reading) Term {
	terms := append(make([]Term, 0, 3), width)
	if c.in.Bodice.seamsCrossed() {
		in := c.in.Bodice
		terms = append(terms, typed(BodiceAllowance, in.Allowance.Length).times(-int64(in.Crossings)))
	}
	if takeOff.Known {
		terms = append(terms, typed(takeOffAnswer, takeOff.Length).less())
	}
	if len(terms) == 1 {
		return width
	}
	return computed(OfBust, q, c.sum(Figure{OfBust, q}, terms...))
}

func lacking(missing []Answer, r units.Reading, a Answer) []Answer {
	if r.Known {
		return missing
	}
	return append(missing, a)
}

// untold adds the answer between what the tape lay, where a width waits for it.
func untold(missing []Answer, m Measured, a Answer, widths ...units.Reading) []Answer {
	if m != NotTold || !slices.ContainsFunc(widths, func(w units.Reading) bool { return w.Known }) {
		return missing
	}
	return append(missing, a)
}

// need closes a girth: it is body + ease - flat width where all three are
// known. What an asked girth lacks is a finding; a girth that was not entered
// is not asked, and lacks nothing.
func (c *computation) need(g *Girth, of Subject, missing []Answer, from girthTerms, ease Term) {
	if g.Flat.Known && g.Flat.Length <= 0 {
		c.find(Finding{Code: WidthImpossible, Level: Stop, About: of, Amount: g.Flat.Length})
		g.Flat = units.Reading{}
	}
	if !g.Body.Known {
		return
	}
	for _, a := range missing {
		c.find(Finding{Code: AnswerMissing, Level: Warn, About: of, Answer: a})
	}
	if g.Flat.Known && g.Ease.Known {
		g.Need = units.Known(c.sum(Figure{of, Need}, from.body, ease, from.flat.less()))
	}
}

// Flat is a width of the sleeve without its allowances.
func (in SleeveInput) Flat(width units.Reading) units.Reading {
	switch {
	case !width.Known || in.Measured == NotTold || in.Measured == EdgeToEdge && !in.Allowance.Known:
		return units.Reading{}
	case in.Measured == EdgeToEdge:
		return units.Known(width.Length - 2*in.Allowance.Length)
	}
	return width
}

// flat is half a front's or half a back's width without its allowances, take-off and
// all: its width on the paper.
func (in BodiceInput) flat(width units.Reading) units.Reading {
	switch {
	case !width.Known || in.Measured == NotTold || in.seamsCrossed() && !in.Allowance.Known:
		return units.Reading{}
	case in.seamsCrossed():
		return units.Known(width.Length - units.Length(in.Crossings)*in.Allowance.Length)
	}
	return width
}

// seamsCrossed tells that the widths of the bodice hold allowances.
func (in BodiceInput) seamsCrossed() bool { return in.Measured == EdgeToEdge && in.Crossings > 0 }

// Dart is the seam in which a dart of a bodice piece starts, or that there is none.
type Dart uint8

// The darts. Any is for a piece of which nobody told: whatever is there is traced.
const (
	AnyDart Dart = iota
	NoDart
	SideDart
	WaistDart
	ShoulderDart
	ArmholeDart
)
