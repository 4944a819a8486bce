package calc_test

import (
	"testing"

	"capscye/calc"
	"capscye/calc/drill"
	"capscye/units"
)

// What the drill says is right, held against the slow sums. It stands here because they
// do, and no other package can use what is in tests.

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
	case calc.CapSeam:
		return p.Seams.CapBefore
	case calc.ArmholeSeam:
		return p.Seams.ArmholeBefore
	case calc.CapEase:
		return p.Seams.CapEaseBefore
	case calc.CapEaseAfter:
		return p.Seams.CapEaseAfter
	case calc.CapRoom: // up to 1 1/2 in for a set-in sleeve (see the sources of cap ease), half of it at each seam
		return units.Known((3*units.Inch/2 - p.Seams.CapEaseBefore.Length) / 2)
	case calc.EvenSlide:
		return units.Known(p.Sides[calc.SleeveFront].Need.Length / 2)
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
	var problems []drill.Problem
	for seed := range uint64(80) {
		for level := 1; level <= drill.Levels; level++ {
			problems = append(problems, drill.Problems(seed, level, 5)...)
		}
	}
	asked := 0
	for _, p := range problems {
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
