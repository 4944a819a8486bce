package calc

import "capscye/units"

// CapEaseRange is how much longer than the armhole a cap is commonly cut.
type CapEaseRange struct {
	Low, High units.Length
	Bounded   bool // false: gathers take any length, High means nothing
	Source    string
}

// UsualCapEase is the working range of a sleeve style. Sources disagree, down
// to the view that no cap ease is needed at all; never less than none.
func UsualCapEase(style SleeveStyle, fabric Fabric) CapEaseRange {
	switch {
	case style == Gathered:
		return CapEaseRange{Low: units.Inch, Source: "practitioners' text: more than 1 in gathers"}
	case style == Shirt || fabric == Knit:
		return CapEaseRange{High: 3 * units.Inch / 4, Bounded: true, Source: "practitioners' texts; some use none at all"}
	}
	return CapEaseRange{
		Low: units.Inch / 2, High: 3 * units.Inch / 2, Bounded: true,
		Source: "sewing texts, at second hand: 1 to 1 1/2 in; McCunn, How to Make Sewing Patterns: 3/4 in",
	}
}

// capEase is how much longer the cap is than the armhole, where both were measured.
func (c *computation) capEase(q Quantity, cap, armhole units.Reading, of, less Quantity) units.Reading {
	if !cap.Known || !armhole.Known {
		return units.Reading{}
	}
	return units.Known(c.sum(Figure{OfSleeve, q},
		computed(OfSleeve, of, cap.Length), computed(OfBust, less, armhole.Length).less()))
}

// capRoom is what the cap may gain at each half while the armhole stays: half
// of what its style can still ease in, where all four seams were measured.
func (c *computation) capRoom() Term {
	ease := c.plan.Seams.CapEaseBefore
	if !ease.Known {
		return constant(0)
	}
	usual := UsualCapEase(c.in.Sleeve.Style, c.in.Fabric)
	if !usual.Bounded {
		return constant(units.Max)
	}
	spare := c.sum(Figure{OfSleeve, CapSpare}, constant(usual.High), computed(OfSleeve, CapEase, ease.Length).less())
	if spare <= 0 {
		return constant(0)
	}
	return computed(OfSleeve, CapRoom,
		c.part(Figure{OfSleeve, CapRoom}, units.Half, computed(OfSleeve, CapSpare, spare)))
}

// judgeCapEase holds the cap ease that comes out against the working range of
// the sleeve style.
func (c *computation) judgeCapEase() {
	ease := c.plan.Seams.CapEaseAfter
	if !ease.Known {
		return
	}
	usual := UsualCapEase(c.in.Sleeve.Style, c.in.Fabric)
	switch {
	case ease.Length < usual.Low:
		c.find(Finding{Code: CapEaseLow, Level: Warn, About: OfSleeve, Amount: ease.Length, Other: usual.Low,
			Ways: []Way{MeasureAgain, OtherStyle}})
	case usual.Bounded && ease.Length > usual.High:
		c.find(Finding{Code: CapEaseHigh, Level: Warn, About: OfSleeve, Amount: ease.Length, Other: usual.High,
			Ways: []Way{MeasureAgain, OtherStyle}})
	}
}
