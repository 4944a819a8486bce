package calc_test

import (
	"math"
	"testing"

	"capscye/calc"
	"capscye/calc/internal/byhand"
	"capscye/units"
)

// A piece that stays as it is stays so below the underarm too, however it binds there:
// neither its picture nor the growth of its seams is that of one drawn out to fit.
func TestAPieceThatStaysIsNotDrawnOut(t *testing.T) {
	binds := byhand.Geometry()
	binds.Waist, binds.WaistEase = known("34"), known("1") // the pattern has 32
	binds.Bodice.WaistFront, binds.Bodice.WaistBack = known("8 1/4"), known("7 3/4")
	binds.Sleeve.Long, binds.Sleeve.HemWidth, binds.Sleeve.UnderarmSeam = true, known("9"), known("17")
	binds.Wrist, binds.WristEase = known("9"), known("1")
	for what, input := range map[string]calc.Input{
		"a bodice that is cut": func(in calc.Input) calc.Input { in.Method.Armhole = calc.KeepArmhole; return in }(binds),
		"a bodice that only the sleeve is altered beside": func(in calc.Input) calc.Input {
			in.Bust, in.BicepEase = units.Reading{}, known("1/4")
			return in
		}(binds),
		"a sleeve that fits": func(in calc.Input) calc.Input { in.BicepEase = known("-3/4"); return in }(binds),
	} {
		p := calc.Compute(input)
		marked, stays := p.AsMarked(input), 0
		for _, s := range calc.Sides() {
			if p.Sides[s].PivotMark != 0 || p.Sides[s].SlideMark != 0 {
				if p.Fits[s] == (calc.Fit{}) {
					t.Errorf("%s: side %d is altered and not drawn out", what, s)
				}
				continue
			}
			stays++
			if growth := marked.Turns[s].Growth.MM; math.Abs(growth) > 1e-9 || p.Fits[s] != (calc.Fit{}) {
				t.Errorf("%s: side %d stays, its seam grows by %v, drawn out by %+v", what, s, growth, p.Fits[s])
			}
		}
		if stays == 0 {
			t.Errorf("%s: every side is altered", what)
		}
	}
}

// What binds is drawn out to the next mark of the ruler that fits, never to one below, at
// its own level, also where a piece only slides, and by what the marks lack.
func TestDrawnOutToTheNextMark(t *testing.T) {
	input := byhand.Geometry()
	input.Ruler = units.HalfInch
	input.Bust = units.Reading{} // it slides along by 1/4, marked 1/2
	input.Waist, input.WaistEase = known("32 1/2"), known("1")
	input.Bodice.WaistFront, input.Bodice.WaistBack = known("8 1/4"), known("7 3/4") // 32: 1 1/2 is missing, 3/8 a side
	input.Hip, input.HipEase = known("38"), known("2")
	input.Bodice.HipFront, input.Bodice.HipBack = known("9"), known("9") // 36: 4 is missing, 1 a side
	p := calc.Compute(input)
	for _, s := range []calc.Side{calc.BodiceFront, calc.BodiceBack} {
		if f := p.Fits[s]; f != (calc.Fit{EndOut: 12.7, HipOut: 25.4}) {
			t.Errorf("side %d: %+v", s, f)
		}
	}
	e := p.Edges[calc.BodiceFront]
	endX, endY := e.End()
	if end, ok := p.AsMarked(input).Turns[calc.BodiceFront].Outline.Find(calc.SeamEnd); !ok || end != (calc.Point{X: endX + 12.7, Y: endY}) {
		t.Errorf("the seam ends at %v, ended at %v, %v", end, endX, endY)
	}
}

// An elbow that fits by the exact amounts may bind by the marks, and then it is drawn out
// and said, as far out as the marks lie and what they lack besides. On a ruler in halves the
// sleeve's 1.2 a side is marked 1; half way down a long seam that is 1/2, and not
// 0.6. The elbow has 11 and wants 12.1: 12.2 by the amounts, 12 by the marks.
func TestElbowBindsByTheMarks(t *testing.T) {
	input := flat("2.4", "")
	input.Ruler, input.Method.LimitSleeve = units.HalfInch, in("2")
	input.Sleeve.Long, input.Sleeve.ElbowWidth = true, known("11")
	input.Elbow, input.ElbowEase = known("11.1"), known("1")
	p := calc.Compute(input)
	checkHas(t, p, calc.BindsBelow, calc.OfSleeve)
	for _, f := range p.Findings {
		if f.Code == calc.BindsBelow && f.Amount != in("1/10") {
			t.Errorf("by the marks it lacks 1/10: %+v", f)
		}
	}
	if len(p.Widths) != 1 || (p.Widths[0].Around-in("12.2")).Abs() > 1 || p.Widths[0].Marked != in("12") {
		t.Errorf("%+v", p.Widths)
	}
	if f := p.Fits[calc.SleeveFront]; !f.Elbow || f.ElbowOut != 25.4 { // 1/2 and 1/20: the next mark is 1
		t.Errorf("%+v", f)
	}
}
