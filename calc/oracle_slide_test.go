package calc_test

import (
	"math/rand/v2"
	"testing"

	"capscye/calc"
	"capscye/calc/drill"
	"capscye/units"
)

// What a reason claims of a slide, held against the slow sums: what is within a limit, what
// is beyond it, and where half of a need lies in the range.

// slowlyBeyond is what a need has beyond a limit, in fractions.
func slowlyBeyond(need, limit units.Length) exact {
	n, l := exactly(need), exactly(limit)
	switch {
	case l.less(n):
		return n.minus(l)
	case n.less(nought.minus(l)):
		return n.plus(l)
	}
	return nought
}

// claims tells whether what a reason says is so, by the slow plan.
func claims(in calc.Input, slow calc.Plan, h calc.Half, why calc.SlideReason) bool {
	sleeve, bodice := slow.Sides[h.Sleeve()], slow.Sides[h.Bodice()]
	if in.Method.Armhole == calc.KeepArmhole {
		bodice = calc.SidePlan{Slide: sleeve.Slide} // nothing is done to it
	}
	beyond := []exact{slowlyBeyond(sleeve.Need.Or(0), in.Method.LimitSleeve), slowlyBeyond(bodice.Need.Or(0), in.Method.LimitBodice)}
	low, high := smallest(beyond...), largest(beyond...)
	slide, band := exactly(sleeve.Slide), slow.Bands[h]
	halved := sleeve.Need
	if !halved.Known {
		halved, slide = bodice.Need, exactly(bodice.Slide)
	}
	half := exactReading(halved).or(nought).half()
	switch why {
	case calc.PivotsReach:
		return low.sign() == 0 && high.sign() == 0 && slide.sign() == 0
	case calc.BeyondLimits:
		return low.sign() >= 0 && high.compare(slide) == 0 && slide.sign() > 0 || high.sign() <= 0 && low.compare(slide) == 0 && slide.sign() < 0
	case calc.HalfWorks:
		return slide.compare(half) == 0 && band.Low <= half.length() && half.length() <= band.High
	case calc.HalfTooLittle:
		return half.length() < band.Low && slide.compare(exactly(band.Low)) == 0
	case calc.HalfTooMuch:
		return half.length() > band.High && slide.compare(exactly(band.High)) == 0
	}
	return true
}

// A slide that is the least or the even one, and serves both pieces, has a reason, and
// the reason is so.
func TestSlidesHaveTrueReasons(t *testing.T) {
	dice := oracleDice{rand.New(rand.NewPCG(19, 77))}
	met := map[calc.SlideReason]int{}
	for n := range 8_000 {
		in := dice.input()
		plan, slow := calc.Compute(in), oraclePlan(in)
		for _, h := range calc.Halves() {
			why := plan.SlideReason(in, h)
			met[why]++
			asked := slow.Sides[h.Sleeve()].Need.Known || slow.Sides[h.Bodice()].Need.Known && in.Method.Armhole != calc.KeepArmhole
			mustHave := asked && !slow.Open && !slow.Bands[h].Empty() && in.Method.Slide != calc.SlideChosen
			if !claims(in, slow, h, why) || mustHave != (why != calc.NoReason) {
				t.Fatalf("input %d, half %d: the reason is %d, of %+v and %+v in %+v, %+v", n, h, why,
					slow.Sides[h.Sleeve()], slow.Sides[h.Bodice()], slow.Bands[h], in.Method)
			}
		}
	}
	for why := calc.NoReason; why <= calc.HalfTooMuch; why++ {
		t.Logf("reason %d: %d", why, met[why])
		if met[why] == 0 {
			t.Errorf("reason %d is never met", why)
		}
	}
}

// Every slide that the drill asks for has one.
func TestSlidesOfTheDrillHaveTrueReasons(t *testing.T) {
	asked := 0
	for seed := range uint64(80) {
		for level := 3; level <= drill.Levels; level++ {
			for _, p := range drill.Problems(seed, level, 5) {
				plan, slow := calc.Compute(p.Input), oraclePlan(p.Input)
				for _, q := range p.Questions {
					if q.Figure.Quantity != calc.Slide {
						continue
					}
					asked++
					h := calc.Half(q.Figure.Of - calc.OfFront)
					if why := plan.SlideReason(p.Input, h); why == calc.NoReason || !claims(p.Input, slow, h, why) {
						t.Fatalf("level %d, seed %d: the reason is %d, of %+v", level, seed, why, slow.Sides)
					}
				}
			}
		}
	}
	if asked < 1600 {
		t.Errorf("only %d slides were asked", asked)
	}
}
