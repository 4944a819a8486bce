package calc

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"capscye/units"
)

// Which of several sizes of a pattern to begin with: what each costs, and which one the
// body says. Which of them is taken is not for sums to decide.

// FullBust is from where on a bust counts as fuller than the high bust: the size is then
// chosen by the high bust, for shoulders and neck are harder to alter than widths (Texas
// Agricultural Extension Service, E-372).
const FullBust = 2 * units.Inch

// Charted is the body that the pattern's own chart gives for a size.
type Charted struct{ Bust, HighBust units.Reading }

// In is its figure in a column of the chart, [Bust] or [HighBust].
func (c Charted) In(column Answer) units.Reading {
	if column == HighBust {
		return c.HighBust
	}
	return c.Bust
}

// SizeChoice is what the body says of the sizes of a pattern.
type SizeChoice struct {
	By      Answer // Bust or HighBust; NoAnswer where that was not measured
	Column  Answer // the column of the chart that it is best held against, Bust or HighBust
	Against Answer // the one that it is held against: Bust, while a size lacks the other
	Nearest []int  // the sizes nearest to it, several where they are as near
}

// ChooseSize says which sizes are nearest to the body: by the high bust where the bust is
// fuller by [FullBust] or more, else by the bust. A chart without a column of the high
// bust is made for bodies whose bust is not fuller, so that the high bust is held against
// its bust (common practice). Sizes without a figure in that column do not count.
func ChooseSize(bust, highBust units.Reading, charts []Charted) (c SizeChoice) {
	body := bust
	switch {
	case !bust.Known || !highBust.Known:
		return c
	case bust.Length-highBust.Length >= FullBust:
		c.By, body = HighBust, highBust
	default:
		c.By = Bust
	}
	c.Column = Bust
	if c.By == HighBust && slices.ContainsFunc(charts, func(of Charted) bool { return of.HighBust.Known }) {
		c.Column = HighBust
	}
	c.Against = c.Column
	if slices.ContainsFunc(charts, func(of Charted) bool { return of.Bust.Known && !of.HighBust.Known }) {
		c.Against = Bust
	}
	nearest := units.Length(0)
	for i, of := range charts {
		printed := of.In(c.Against)
		if !printed.Known {
			continue
		}
		switch off := (printed.Length - body.Length).Abs(); {
		case len(c.Nearest) == 0 || off < nearest:
			c.Nearest, nearest = []int{i}, off
		case off == nearest:
			c.Nearest = append(c.Nearest, i)
		}
	}
	return c
}

// Unasked is by how much the girth comes out larger than was asked for: of a girth that
// nobody asked for, all that its piece gains.
func (g Girth) Unasked() units.Reading {
	asked := g.Wanted()
	if !g.Body.Known {
		asked = g.Flat
	}
	if !g.Drawn.Known || !asked.Known {
		return units.Reading{}
	}
	return units.Known(max(0, g.Drawn.Length-asked.Length))
}

// MostPivot is the largest pivot to mark on any side, inward or out; not known while the
// plan is open.
func (p Plan) MostPivot() units.Reading {
	return p.mostMarked(func(s SidePlan) units.Length { return s.PivotMark })
}

// MostSlide is the same of the slide.
func (p Plan) MostSlide() units.Reading {
	return p.mostMarked(func(s SidePlan) units.Length { return s.SlideMark })
}

func (p Plan) mostMarked(mark func(SidePlan) units.Length) units.Reading {
	if p.Open {
		return units.Reading{}
	}
	most := units.Length(0)
	for _, s := range p.Sides {
		most = max(most, mark(s).Abs())
	}
	return units.Known(most)
}

// CapLost is by how much the cap gets lower, on the side where that is more; negative
// where it gets higher.
func (p Plan) CapLost() Approx {
	front, back := p.Turns[SleeveFront], p.Turns[SleeveBack]
	if !front.Known || !back.Known {
		return Approx{}
	}
	return Approx{MM: max(p.Edges[SleeveFront].H-front.HeightAfter, p.Edges[SleeveBack].H-back.HeightAfter), Known: true}
}

// Rising is the order in which sizes rise: by the bust of the chart where all have one,
// else by their names where all are numbers, or all letters from XXS to XXXL. It is not ok
// where nothing tells.
func Rising(names []string, charts []Charted) (order []int, ok bool) {
	by := make([]units.Length, len(names))
	for _, rank := range []func(i int) (units.Length, bool){
		func(i int) (units.Length, bool) { return charts[i].Bust.Length, charts[i].Bust.Known },
		func(i int) (units.Length, bool) { n, err := strconv.Atoi(names[i]); return units.Length(n), err == nil },
		func(i int) (units.Length, bool) {
			n := slices.Index(letterSizes, strings.ToUpper(names[i]))
			return units.Length(n), n >= 0
		},
	} {
		ok = true
		for i := range names {
			n, known := rank(i)
			by[i], ok = n, ok && known
		}
		if ok {
			break
		}
	}
	for i := range names {
		order = append(order, i)
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(by[a], by[b]) })
	return order, ok && len(names) > 1
}

var letterSizes = []string{"XXS", "XS", "S", "M", "L", "XL", "XXL", "XXXL"}

// Falls are the neighbours among sizes, of those whose width is known, of which the larger
// has the smaller width. A pattern is graded so that no width falls while sizes rise
// (common practice).
func Falls(order []int, widths []units.Reading) (pairs [][2]int) {
	before := -1
	for _, i := range order {
		if !widths[i].Known {
			continue
		}
		if before >= 0 && widths[i].Length < widths[before].Length {
			pairs = append(pairs, [2]int{before, i})
		}
		before = i
	}
	return pairs
}
