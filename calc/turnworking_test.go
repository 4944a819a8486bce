package calc_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"capscye/calc"
	"capscye/units"
)

// The working of a turn, written out: each line comes to its result from its own
// terms, by the formula that its name stands for, and the last ones are what the plan
// says of the turn. The plan gets there another way, by turning the corner as a
// point.
func TestTurnWorkingAddsUp(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 5))
	between := func(low, high float64) units.Reading {
		return units.Known(units.Length((low + random.Float64()*(high-low)) * float64(units.Inch)))
	}
	seen := map[calc.TurnFigure]int{}
	for range 400 {
		in := flat("", "")
		in.Bicep, in.BicepEase, in.Sleeve.Width = between(9, 18), between(0, 3), between(9, 18)
		in.Bust, in.BustEase, in.Bodice.FinishedBust = between(30, 50), between(0, 5), units.Reading{}
		in.Bodice.Front, in.Bodice.Back = between(8, 13), between(8, 13)
		in.Sleeve.CapHeight, in.Sleeve.UnderarmSeam, in.Sleeve.HemWidth = between(3, 7), between(4, 18), between(7, 16)
		in.Sleeve.Long = random.IntN(2) == 0
		if !in.Sleeve.Long && random.IntN(2) == 0 {
			in.Sleeve.UnderarmSeam = units.Reading{}
		}
		in.Bodice.BustDown = between(-1, 3)
		if in.Bodice.BustDown.Length < 0 {
			in.Bodice.BustDown = units.Reading{}
		}
		if random.IntN(3) == 0 {
			in.Method.TaperFrom = calc.FromCorner
		}
		in.Bodice.CornerOutFront, in.Bodice.CornerDownFront = between(0, 4), between(5, 9)
		in.Bodice.CornerOutBack, in.Bodice.CornerDownBack = between(0, 4), between(5, 9)
		in.Bodice.SideSeam, in.Bodice.WaistFront, in.Bodice.WaistBack = between(6, 10), between(6, 12), between(6, 12)
		plan := calc.Compute(in)
		last := map[calc.Side]map[calc.TurnFigure]float64{}
		for _, l := range calc.TurnWorking(plan) {
			a := func(i int) float64 { return l.Terms[i] }
			var want float64
			switch l.Figure {
			case calc.SeamLean:
				want = math.Asin(a(0) / a(1))
			case calc.PinToSeam:
				want = a(0)*math.Cos(a(1)) + a(2)*math.Sin(a(1))
			case calc.PinToMark:
				want = math.Sqrt((a(0)+a(1))*(a(0)+a(1)) + a(2)*a(2))
			case calc.TurnAngle:
				want = a(0) + a(5)*math.Acos(a(1)/a(2)) - math.Atan2(a(3), a(4))
			case calc.CornerLift:
				want = a(0) - a(0)*math.Cos(a(1)) + a(2)*math.Sin(a(1))
			case calc.HeightLeft:
				want = a(0) - a(1)
			case calc.PinToCorner, calc.LegToMark, calc.LegToLine, calc.LegToEnd:
				want = math.Sqrt(a(0)*a(0) + a(1)*a(1))
			case calc.InwardAngle:
				want = math.Atan2(a(0), a(1)) - math.Acos(a(2)/a(3))
			case calc.CornerOut:
				want = a(0)*math.Cos(a(1)) + a(2)*math.Sin(a(1)) + a(3)
			case calc.SeamGrowth:
				for _, leg := range l.Terms[:len(l.Terms)-1] {
					want += leg
				}
				want -= l.Terms[len(l.Terms)-1]
			case calc.FallOnSeam:
				want = -math.Abs(a(0))
			case calc.GainAtLine:
				want = a(0) + (a(1)-a(0))*a(3)/a(4) - a(2)
			}
			if math.Abs(want-l.Result) > 1e-9 {
				t.Fatalf("%+v comes to %v", l, want)
			}
			if last[l.Side] == nil {
				last[l.Side] = map[calc.TurnFigure]float64{}
			}
			last[l.Side][l.Figure] = l.Result
			seen[l.Figure]++
		}
		for side, so := range last {
			turn := plan.Turns[side]
			checks := map[calc.TurnFigure]float64{
				calc.TurnAngle: turn.Angle, calc.InwardAngle: turn.Angle, calc.CornerOut: turn.CornerX,
				calc.CornerLift: turn.Lift, calc.HeightLeft: turn.HeightAfter,
				calc.SeamGrowth: turn.Growth.MM, calc.FallOnSeam: turn.Growth.MM,
				calc.GainAtLine: plan.Sides[side].AtLine.Length.Millimetres(),
			}
			for f, want := range checks {
				const count = 1.0 / 1280 // the gain at the line is given to the count
				if got, said := so[f]; said && math.Abs(got-want) > count {
					t.Fatalf("side %d, figure %d: the working says %v, the plan %v", side, f, got, want)
				}
			}
		}
	}
	for f := calc.SeamLean; f <= calc.GainAtLine; f++ {
		if seen[f] < 50 {
			t.Errorf("figure %d was seen %d times", f, seen[f])
		}
	}
}

// By hand, with the straight-line cap of mathematics in mind: a sleeve side 6 1/2
// out and 5 1/4 down that pivots 1 stays 6 1/2 from its seam line, while its mark
// is sqrt(7.5^2 + 5.25^2) = 9.155 away: acos(6.5/9.155) - atan(5.25/7.5) =
// 44.764 - 34.992 = 9.772 degrees.
func TestTurnWorkingByHand(t *testing.T) {
	in := flat("2", "")
	in.Sleeve.Width, in.Bicep, in.Sleeve.CapHeight = known("13"), known("11"), known("5 1/4")
	lines := calc.TurnWorking(calc.Compute(in))
	if len(lines) == 0 || lines[0].Figure != calc.PinToSeam || lines[2].Figure != calc.TurnAngle {
		t.Fatalf("%+v", lines)
	}
	if d := lines[2].Result * 180 / math.Pi; math.Abs(d-9.772) > 0.002 {
		t.Errorf("the turn is %v degrees", d)
	}
	in = flat("2", "")
	if lines := calc.TurnWorking(calc.Compute(in)); len(lines) != 0 {
		t.Errorf("without a corner: %+v", lines)
	}
	in = flat("0", "")
	in.Sleeve.CapHeight = known("5 1/4")
	if lines := calc.TurnWorking(calc.Compute(in)); len(lines) != 0 {
		t.Errorf("of a sleeve that stays: %+v", lines)
	}
}
