// Package drill makes problems with invented measurements, to do the sums of the trade
// by hand, and knows what each usual wrong turn gives.
//
// It promises that a seed gives the same problems on every machine and in every
// version, so that a class can be told a seed. How often and in which order is drawn
// from the stream of PCG, the ranges, [Wearers], [Garments] and what is usual for ease
// are all part of that; the golden problems of the face hold it. What is right comes from
// [calc.Compute] and [calc.Working], like everything that a worksheet shows.
package drill

import (
	"math/rand/v2"
	"slices"

	"capscye/calc"
	"capscye/units"
)

// Levels is how many levels there are, from 1. The steps of a problem grow from one
// to the next, and nowhere double:
//
//	1  flat widths
//	2  to the need of each side
//	3  pivots are enough
//	4  the limit is reached, and the marks are rounded
//	5  the same in centimetres, front and back unequal
//	6  pieces that come in, an even slide, an armhole that is kept with its cap ease
const Levels = 6

const (
	metricLevel = 5 // in centimetres, front and back differ
	otherCases  = 6
)

// UsualCount is how many problems of a level fit a lesson: some thirty to forty
// steps, and fewer at the first levels.
func UsualCount(level int) int { return [Levels]int{5, 4, 3, 3, 2, 3}[level-1] }

// Problem is one exercise: a sheet, and what is asked about it.
type Problem struct {
	Level     int
	System    units.System // what a bare number means
	Wearer    int          // below Wearers; a face has the names
	Garment   int          // below Garments
	Input     calc.Input
	Questions []Question
}

// How many wearers and garments are drawn from.
const (
	Wearers  = 16
	Garments = 12
)

// Alike tells that front and back are, and the front stands for both.
func (p Problem) Alike() bool { return alike(p.Level) }

// Question asks for one figure of the working.
type Question struct {
	Figure   calc.Figure
	Alike    bool // asked of the front, and the back is the same
	Right    units.Length
	Lines    []calc.Line // the working from the figures that were asked before
	Missteps []MisstepValue
}

// MisstepValue is what comes out with a wrong turn of the reasoning; sometimes
// several lead to the same.
type MisstepValue struct {
	Value    units.Length
	Missteps []Misstep
}

// Misled lists the wrong turns that an answer looks like; none where it is
// right, or wrong in no way that is known.
func (q Question) Misled(answer units.Length) []Misstep {
	for _, m := range q.Missteps {
		if m.Value == answer {
			return m.Missteps
		}
	}
	return nil
}

// Problems makes the problems of a seed, the same on every machine and in every
// version. Those of a longer drill begin with those of a shorter one.
func Problems(seed uint64, level, count int) []Problem {
	d := dice{rand.NewPCG(seed, uint64(level))}
	problems := make([]Problem, count)
	for i := range problems {
		problems[i] = d.problem(level)
	}
	return problems
}

// dice draws for the drill. The stream of PCG is specified to the bit, and what
// is made of its numbers is written here, so neither can change with a release
// of Go.
type dice struct{ *rand.PCG }

// between is a whole number from low to high, both included. The remainder
// favours the low ones by less than one part in 2^50.
func (d dice) between(low, high int) int { return low + int(d.Uint64()%uint64(high-low+1)) }

// one is one of the numbers.
func (d dice) one(of ...int) int { return of[d.between(0, len(of)-1)] }

// problem draws until the sheet is one that teaches the level, which took
// at most 19 rounds in 10,000 problems of each level.
func (d dice) problem(level int) Problem {
	p := Problem{Level: level, System: units.Inches}
	if level == metricLevel {
		p.System = units.Centimetres
	}
	p.Wearer, p.Garment = d.between(0, Wearers-1), d.between(0, Garments-1)
	for {
		p.Input = d.sheet(level)
		if teaches(level, p.Input) {
			p.Questions = Questions(level, p.Input)
			return p
		}
	}
}

// teaches tells that a sheet has what its level is about, and nothing that a
// person would be warned of; but one pattern measured in two ways is there to be seen.
func teaches(level int, in calc.Input) bool {
	p := calc.Compute(in)
	for _, f := range p.Findings {
		if f.Code == calc.CapTakesSlide && level == otherCases {
			continue // a kept armhole is what it teaches
		}
		if f.Level != calc.Note && f.Code != calc.MeasuredDifferently || f.Code == calc.GirthUnusual || f.Code == calc.ArmForBust || f.Code == calc.ChildsNightwear {
			return false
		}
	}
	front, back := p.Sides[calc.SleeveFront].Slide, p.Sides[calc.SleeveBack].Slide
	mark := in.Ruler.Mark()
	rounds := front%mark != 0 || back%mark != 0
	switch {
	case !p.Whole():
		return false
	case level < 4:
		return front == 0 && back == 0
	case level == otherCases:
		return (front == 0) == comesIn(p)
	case level == metricLevel && front == back:
		return false
	}
	return front > 0 && back > 0 && rounds
}

// comesIn tells a plan in which the pattern has to shrink.
func comesIn(p calc.Plan) bool { return p.Sleeve.Need.Or(0) < 0 }

// Questions asks for every step of the working that a level has, in the order
// of the hands. A step that a sheet does not have, a width without allowances
// say, is not asked.
func Questions(level int, in calc.Input) []Question {
	lines, plan := calc.Working(in), calc.Compute(in)
	var list []Question
	shown := map[calc.Figure]bool{}
	for _, l := range lines {
		shown[l.Figure] = alike(level) && ofBack(l.Figure.Of) // as the front's
	}
	for _, f := range figuresOf(level) {
		at := slices.IndexFunc(lines, func(l calc.Line) bool { return l.Figure == f })
		if at < 0 {
			continue
		}
		q := Question{
			Figure: f, Alike: alike(level) && hasHalf(f.Of), Right: lines[at].Result,
			Lines: leadingTo(lines[:at+1], shown),
		}
		q.Missteps = misstepsOf(solved{in, plan, f, q.Right})
		list = append(list, q)
	}
	return list
}

// alike tells the levels at which front and back are, and the front stands for both.
func alike(level int) bool { return level != metricLevel }

// hasHalf tells the subjects that there are of the front and of the back.
func hasHalf(s calc.Subject) bool { return s >= calc.OfFront }

func ofBack(s calc.Subject) bool {
	return s == calc.OfBack || s == calc.OfSleeveBack || s == calc.OfBodiceBack
}

// figuresOf are what a level asks for, where the sheet has it.
func figuresOf(level int) []calc.Figure {
	list := []calc.Figure{
		figure(calc.OfSleeve, calc.FlatWidth),
		figure(calc.OfBust, calc.FrontWidth), figure(calc.OfBust, calc.BackWidth), figure(calc.OfBust, calc.FlatWidth),
	}
	add := func(q calc.Quantity, of ...calc.Subject) {
		for _, s := range of {
			list = append(list, figure(s, q))
		}
	}
	halves, sleeves, sides := []calc.Subject{calc.OfFront}, []calc.Subject{calc.OfSleeveFront}, []calc.Subject{calc.OfSleeveFront, calc.OfBodiceFront}
	if level == metricLevel {
		halves, sleeves = []calc.Subject{calc.OfFront, calc.OfBack}, []calc.Subject{calc.OfSleeveFront, calc.OfSleeveBack}
		sides = []calc.Subject{calc.OfSleeveFront, calc.OfSleeveBack, calc.OfBodiceFront, calc.OfBodiceBack}
	}
	if level == otherCases {
		add(calc.CapSeam, calc.OfSleeve)
		add(calc.ArmholeSeam, calc.OfBust)
		add(calc.CapEase, calc.OfSleeve)
	}
	if level >= 2 {
		add(calc.Need, calc.OfSleeve, calc.OfBust)
		add(calc.Need, sides...)
	}
	switch {
	case level == 3:
		add(calc.Slide, halves...)
		add(calc.Pivot, sides...)
		add(calc.Finished, calc.OfSleeve, calc.OfBust)
	case level > 3:
		add(calc.CapRoom, calc.OfSleeve)
		add(calc.EvenSlide, calc.OfFront)
		add(calc.Slide, halves...)
		add(calc.Pivot, sides...)
		add(calc.SlideMark, sleeves...) // the bodice's is the same: they are sewn together
		add(calc.PivotMark, sides...)
		add(calc.FinishedMarked, calc.OfSleeve, calc.OfBust)
		add(calc.CapEaseAfter, calc.OfSleeve)
	}
	return list
}

func figure(of calc.Subject, q calc.Quantity) calc.Figure { return calc.Figure{Of: of, Quantity: q} }

// leadingTo are the lines that the last of them follows from, itself included,
// without those that were shown before.
func leadingTo(lines []calc.Line, shown map[calc.Figure]bool) []calc.Line {
	wanted := map[calc.Figure]bool{lines[len(lines)-1].Figure: true}
	var list []calc.Line
	for i := len(lines) - 1; i >= 0; i-- {
		l := lines[i]
		if !wanted[l.Figure] || shown[l.Figure] {
			continue
		}
		shown[l.Figure] = true
		list = append(list, l)
		for _, t := range l.Terms {
			wanted[t.Figure] = true
		}
	}
	slices.Reverse(list)
	return list
}
