package calc_test

import (
	"math"
	"testing"

	"capscye/calc"
	"capscye/units"
)

// A piece that stays as it is stays so below the underarm too, however it binds there:
// neither its picture nor the growth of its seams is that of one drawn out to fit.
func TestAPieceThatStaysIsNotDrawnOut(t *testing.T) {
	binds := geometry()
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
