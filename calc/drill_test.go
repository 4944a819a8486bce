package calc_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/units"
)

// drilled are 2,000 problems over all levels.
func drilled() []calc.Problem {
	var list []calc.Problem
	for seed := range uint64(80) {
		for level := 1; level <= calc.DrillLevels; level++ {
			list = append(list, calc.Drill(seed, level, 5)...)
		}
	}
	return list
}

// oracleFigure is a figure that the drill asks for, out of the slow plan in
// fractions that is written from the rules of the method.
func oracleFigure(in calc.Input, p calc.Plan, f calc.Figure) units.Reading {
	girth, side := p.Sleeve, calc.SidePlan{}
	switch f.Of {
	case calc.OfBust:
		girth = p.Bust
	case calc.OfFront, calc.OfBack:
		side = p.Sides[f.Of-calc.OfFront]
	case calc.OfSleeveFront, calc.OfSleeveBack, calc.OfBodiceFront, calc.OfBodiceBack:
		side, girth.Need = p.Sides[f.Of-calc.OfSleeveFront], p.Sides[f.Of-calc.OfSleeveFront].Need
	}
	switch f.Quantity {
	case calc.FrontWidth:
		return oraclePiece(in.Bodice, in.Bodice.Front, in.Bodice.TakeOffFront).reading()
	case calc.BackWidth:
		return oraclePiece(in.Bodice, in.Bodice.Back, in.Bodice.TakeOffBack).reading()
	case calc.FlatWidth:
		return girth.Flat
	case calc.Need:
		return girth.Need
	case calc.Slide:
		return units.Known(side.Slide)
	case calc.Pivot:
		return units.Known(side.Pivot)
	case calc.SlideMark:
		return units.Known(side.SlideMark)
	case calc.PivotMark:
		return units.Known(side.PivotMark)
	case calc.Finished:
		return girth.Finished
	case calc.FinishedMarked:
		return girth.Marked
	}
	return units.Reading{}
}

func TestDrillAgainstTheSlowSums(t *testing.T) {
	asked := 0
	for _, p := range drilled() {
		slow := oraclePlan(p.Input)
		for _, q := range p.Questions {
			asked++
			if want := oracleFigure(p.Input, slow, q.Figure); !want.Known || want.Length != q.Right {
				t.Fatalf("level %d, %v: %v, the slow sums say %v", p.Level, q.Figure, q.Right, want)
			}
			if last := q.Lines[len(q.Lines)-1]; last.Figure != q.Figure || last.Result != q.Right {
				t.Fatalf("level %d: the working of %v ends with %v = %v", p.Level, q.Figure, last.Figure, last.Result)
			}
			if q.Alike {
				back := calc.Figure{Of: q.Figure.Of + 1, Quantity: q.Figure.Quantity}
				if want := oracleFigure(p.Input, slow, back); want.Length != q.Right {
					t.Fatalf("level %d: front and back of %v are not alike", p.Level, q.Figure)
				}
			}
		}
	}
	if asked < 20000 {
		t.Errorf("only %d figures were asked", asked)
	}
}

// What is asked can be written exactly, on a mark or in lowest terms, and what is
// given lies on the marks of the ruler and is such as people and patterns are.
func TestDrillLooksLikeTheTable(t *testing.T) {
	inches := func(low, high units.Length, r units.Reading) bool {
		return !r.Known || low*units.Inch <= r.Length && r.Length <= high*units.Inch
	}
	for _, p := range drilled() {
		in, plan := p.Input, calc.Compute(p.Input)
		sc := units.Scale{System: p.System, Ruler: in.Ruler}
		for _, q := range p.Questions {
			if strings.HasPrefix(sc.Exact(q.Right), units.OffMark) {
				t.Fatalf("level %d: %v of %v cannot be written", p.Level, q.Right, q.Figure)
			}
		}
		for _, r := range []units.Reading{
			in.Bicep, in.BicepOther, in.Bust, in.BicepEase, in.BustEase, in.Sleeve.Width, in.Sleeve.Allowance,
			in.Bodice.Front, in.Bodice.Back, in.Bodice.Allowance, in.Bodice.TakeOffFront, in.Bodice.TakeOffBack,
		} {
			if r.Length%in.Ruler.Mark() != 0 {
				t.Fatalf("level %d: %v is on no mark of %v", p.Level, r.Length, in.Ruler)
			}
		}
		// Ease at the bicep: Armstrong by way of the README, 2 in, and some for looks;
		// at the bust: from Robinson's 1 1/2 in to NMSU's 4 in.
		if !inches(9, 18, in.Bicep) || !inches(28, 57, in.Bust) || !inches(1, 3, in.BicepEase) || !inches(1, 4, in.BustEase) {
			t.Errorf("level %d: %+v", p.Level, in)
		}
		for _, f := range plan.Findings {
			if f.Level != calc.Note {
				t.Errorf("level %d: %v", p.Level, f)
			}
		}
		if !plan.Whole() {
			t.Errorf("level %d is not whole", p.Level)
		}
	}
}

// Every level asks what it is about.
func TestDrillLevels(t *testing.T) {
	for _, p := range drilled() {
		plan := calc.Compute(p.Input)
		front, back := plan.Sides[calc.SleeveFront], plan.Sides[calc.SleeveBack]
		both := plan.Sleeve.Asked() && plan.Bust.Asked()
		var quantities []calc.Quantity
		for _, q := range p.Questions {
			quantities = append(quantities, q.Figure.Quantity)
		}
		for quantity, from := range map[calc.Quantity]int{
			calc.Need: 2, calc.Slide: 3, calc.Pivot: 3, calc.SlideMark: 4, calc.PivotMark: 4, calc.FinishedMarked: 4,
		} {
			if slices.Contains(quantities, quantity) != (p.Level >= from) {
				t.Errorf("level %d asks %v", p.Level, quantities)
			}
		}
		slid := front.Slide > 0 && back.Slide > 0
		switch {
		case len(p.Questions) == 0 || both != (p.Level > 2) || slid != (p.Level > 3):
			t.Errorf("level %d: %d questions, both pieces %v, slide %v", p.Level, len(p.Questions), both, front.Slide)
		case p.Level == 5 && (p.System != units.Centimetres || front.Total == back.Total || front.Slide == back.Slide):
			t.Errorf("level 5: %v, %+v, %+v", p.System, front, back)
		case p.Level < 5 && p.System != units.Inches:
			t.Errorf("level %d: %v", p.Level, p.System)
		}
	}
}

// A longer drill begins with a shorter one, and seeds differ.
func TestDrillSeeds(t *testing.T) {
	five, two := calc.Drill(7, 4, 5), calc.Drill(7, 4, 2)
	if !reflect.DeepEqual(five[:2], two) {
		t.Error("two problems of seed 7 are not the first two of five")
	}
	if reflect.DeepEqual(two, calc.Drill(8, 4, 2)) || reflect.DeepEqual(five[0], five[1]) {
		t.Error("seeds or problems do not differ")
	}
}
