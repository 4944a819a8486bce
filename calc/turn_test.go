package calc_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"capscye/calc"
	"capscye/calc/internal/byhand"
	"capscye/calc/trace"
	"capscye/units"
)

// drawn is a side with plausible measurements, in millimetres.
func drawn(t *rapid.T) calc.Edge {
	mm := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	e := calc.Edge{
		W: mm("out", 20, 250), H: mm("down", 60, 260), Known: true,
		Below: calc.Approx{MM: mm("seam below", 50, 500), Known: true}, Straight: rapid.Bool().Draw(t, "straight"),
	}
	// The seam leans in by less than the corner lies below the pin, as on every
	// cap and armhole that is worn.
	e.Lean = mm("lean", -0.1, min(0.3, math.Atan2(e.H, e.W)-0.15))
	return e
}

// On something flatter than that, a tiny pivot is still a tiny turn.
func TestTurnStartsFromNothingOnAFlatCapToo(t *testing.T) {
	e := calc.Edge{W: 250, H: 60, Lean: 0.3, Known: true}
	for _, p := range []float64{1e-6, 1e-3, 0.1} {
		if theta, ok := e.TurnTo(p); !ok || math.Abs(theta) > p {
			t.Errorf("pivot %v turns by %v, %v", p, theta, ok)
		}
	}
}

// offMark is what is still wrong once the pattern is turned by theta: outward, how
// far the mark (W + p, -H) lies from the seam line below the corner; inward, how far
// beside the mark the corner lies.
func offMark(e calc.Edge, p, theta float64) float64 {
	x, y := calc.Turned(e.W, -e.H, theta)
	if p < 0 {
		return x - (e.W + p)
	}
	dx, dy := calc.Turned(-math.Sin(e.Lean), -math.Cos(e.Lean), theta)
	return (e.W+p-x)*dy - (-e.H-y)*dx
}

// The turn against a search by brute force: of all angles, the smallest that
// lays the seam line on the mark, or inward the corner straight below it.
func TestTurnAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, p := drawn(t), rapid.Float64Range(-25.4, 25.4).Draw(t, "pivot")
		theta, ok := e.TurnTo(p)
		best, found := 0.0, false
		const steps = 4000
		at := func(i int) float64 { return (float64(i)/steps - 0.5) * math.Pi }
		for i := range steps {
			low, high := at(i), at(i+1)
			if offMark(e, p, low)*offMark(e, p, high) > 0 {
				continue
			}
			for range 60 {
				middle := (low + high) / 2
				if offMark(e, p, low)*offMark(e, p, middle) <= 0 {
					high = middle
				} else {
					low = middle
				}
			}
			if !found || math.Abs(low) < math.Abs(best) {
				best, found = low, true
			}
		}
		if ok && (!found || math.Abs(best-theta) > 1e-9) {
			t.Fatalf("the turn is %v, the search found %v (%v)", theta, best, found)
		}
		if !ok && found {
			t.Fatalf("out of reach, but the search found %v", best)
		}
	})
}

// A turn is rigid: the pin keeps its distance to the corner and to the seam
// line; more pivot is more turn and a lower cap; no pivot is no turn; and a tiny
// one turns by p over the height of the corner.
func TestTurnIsRigidAndMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := drawn(t)
		last := -1.0
		for _, p := range []float64{0, 1e-6, 1, 5, 12.7, 25.4, 38.1} {
			theta, ok := e.TurnTo(p)
			if !ok {
				t.Fatalf("pivot %v is out of reach", p)
			}
			x, y := calc.Turned(e.W, -e.H, theta)
			if d := math.Hypot(x, y) - math.Hypot(e.W, e.H); math.Abs(d) > 1e-9 {
				t.Fatalf("the corner moved by %v from the pin", d)
			}
			if theta <= last {
				t.Fatalf("pivot %v turns by %v, less than a smaller one", p, theta)
			}
			last = theta
			if p == 0 && theta != 0 {
				t.Fatalf("no pivot turns by %v", theta)
			}
			// Near zero the mark moves across the seam line at the arm
			// H cos(lean) - W sin(lean) about the pin, per cos(lean).
			if arm := e.H - e.W*math.Tan(e.Lean); p == 1e-6 && math.Abs(theta-p/arm) > 1e-9 {
				t.Fatalf("a tiny pivot turns by %v, want about %v", theta, p/arm)
			}
		}
	})
}

// A straight-line cap, by mathematics: 14 wide and 6 high it is 18.4391 long,
// and when it is 16 wide it is sqrt(21) = 4.5826 high. A turn that brings the
// corner itself to 8 out must leave that height.
func TestTurnAgreesWithTheStraightLineCap(t *testing.T) {
	e := calc.Edge{W: 7, H: 6, Known: true, Straight: true}
	if got := 2 * math.Hypot(e.W, e.H); math.Abs(got-18.4391) > 5e-5 {
		t.Errorf("the cap is %v", got)
	}
	low, high := 0.0, 4.0
	for range 100 {
		p := (low + high) / 2
		theta, ok := e.TurnTo(p)
		if x, _ := calc.Turned(e.W, -e.H, theta); ok && x < 8 {
			low = p
		} else {
			high = p
		}
	}
	theta, _ := e.TurnTo(low)
	x, y := calc.Turned(e.W, -e.H, theta)
	if math.Abs(x-8) > 1e-9 || math.Abs(-y-math.Sqrt(21)) > 1e-9 || math.Abs(-y-4.5826) > 5e-5 {
		t.Errorf("the corner is at %v, %v", x, y)
	}
	// And back: a pivot of 1 inward brings the corner itself straight below its mark.
	back := calc.Edge{W: 8, H: math.Sqrt(21), Known: true, Straight: true}
	if lift := back.Lift(-1); !lift.Known || math.Abs(lift.MM-(4.5826-6)) > 5e-5 {
		t.Errorf("turned inward from 16 wide to 14 the cap gets %v lower, want 6 - 4.5826 higher", lift)
	}
}

// By hand, in inches: w = 6 1/2, h = 5 1/4, p = 1, a straight side. D = 6.5,
// rho = hypot(7.5, 5.25) = 9.154917; theta = acos(0.710001) - atan2(5.25, 7.5) =
// 0.781297 - 0.610726 = 0.170571, 9.77 degrees; the corner comes to (7.296833,
// -4.070471): the cap loses 1.179529, more than an inch for an inch of pivot, as
// common practice has it. (A desk calculator's figures.)
func TestTurnWorkedByHand(t *testing.T) {
	p := calc.Compute(byhand.Geometry())
	turn := p.Turns[calc.SleeveFront]
	for what, c := range map[string]struct{ got, want float64 }{
		"angle":      {turn.Angle, 0.170571},
		"lift":       {turn.Lift / 25.4, 1.179529},
		"cap height": {turn.HeightAfter / 25.4, 4.070471},
		"corner out": {turn.CornerX / 25.4, 7.296833 + 0.25},
		// from (7.5, -5.25) to the corner
		"growth": {turn.Growth.MM / 25.4, 1.196898},
	} {
		if math.Abs(c.got-c.want) > 1e-6 {
			t.Errorf("%s %v, want %v", what, c.got, c.want)
		}
	}
	// The front bodice side pivots 3/8 about a pin 2 in and 7 up: D = 2, rho =
	// hypot(2.375, 7) = 7.391930, theta = 1.296816 - 1.243698 = 0.053118.
	bodice := p.Turns[calc.BodiceFront]
	if math.Abs(bodice.Angle-0.053118) > 1e-6 {
		t.Errorf("bodice turns by %v", bodice.Angle)
	}
	// Its side seam runs from the corner, turned and slid by 1/4, to the last mark
	// at (2 5/8, -7) and from there back to the waist at (2, -15).
	x, y := calc.Turned(2, -7, bodice.Angle)
	if want := math.Hypot(x+0.25-2.625, y+7) + math.Hypot(0.625, 8) - 8; math.Abs(bodice.Growth.MM/25.4-want) > 1e-6 {
		t.Errorf("side seam grows by %v, want %v", bodice.Growth.MM/25.4, want)
	}
}

func TestTurnLimits(t *testing.T) {
	input := byhand.Geometry()
	input.BicepEase = known("-3/4") // nothing to do at the sleeve
	input.Bust = units.Reading{}
	p := calc.Compute(input)
	if turn := p.Turns[calc.SleeveFront]; !turn.Known || turn.Angle != 0 || turn.Lift != 0 || turn.HeightAfter != 5.25*25.4 {
		t.Errorf("no pivot: %+v", turn)
	}
	e := calc.Edge{W: 30, H: 40, Known: true}
	if _, ok := e.TurnTo(-81); ok { // 51 on the other side of the pin, and the corner is 50 from it
		t.Error("a mark out of the corner's reach was reached")
	}
	if theta, ok := e.TurnTo(-80); !ok || math.Abs(theta+math.Pi-math.Atan2(40, 30)) > 1e-12 {
		t.Errorf("on the edge of reach: %v, %v", theta, ok)
	}
	input = byhand.Geometry()
	input.Sleeve.CapHeight = units.Reading{}
	if p := calc.Compute(input); p.Turns[calc.SleeveFront].Known || !p.Turns[calc.BodiceFront].Known {
		t.Error("what was not measured is not known, and nothing else")
	}
	input = byhand.Geometry()
	input.Sleeve.HemWidth, input.Sleeve.UnderarmSeam = known("1"), known("2")
	checkHas(t, calc.Compute(input), calc.LeanImpossible, calc.OfSleeveFront)
}

// A pivot that no turn reaches stops, and is said once: no limit holds it, and the
// corner, 6 1/2 out and 1 in down, never comes to 7 1/2 on the other side of its pin.
func TestTurnOutOfReachStops(t *testing.T) {
	input := byhand.Geometry()
	input.Bust = units.Reading{}
	input.Bicep, input.BicepEase, input.Sleeve.CapHeight = known("-15"), known("0"), known("1")
	input.Method.LimitSleeve = known("20").Length
	p := calc.Compute(input)
	said := 0
	for _, f := range p.Findings {
		if f.Code == calc.OutOfReach {
			said++
			if f.Level != calc.Stop || f.About != calc.OfSleeve || f.Answer != calc.Bicep || len(f.Ways) > 0 { // nobody has such an arm
				t.Errorf("%+v", f)
			}
		}
	}
	if d := trace.SleeveDrawing(input, p, trace.AllAltered); said != 1 || !d.Unreached {
		t.Errorf("said %d times, drawn %v", said, d.Unreached)
	}
}

// Front and back with each other's measurements turn like each other.
func TestTurnMirrored(t *testing.T) {
	input := byhand.Geometry()
	mirrored := input
	b := &mirrored.Bodice
	b.CornerOutFront, b.CornerOutBack = b.CornerOutBack, b.CornerOutFront
	b.CornerDownFront, b.CornerDownBack = b.CornerDownBack, b.CornerDownFront
	one, other := calc.Compute(input), calc.Compute(mirrored)
	for _, s := range calc.Sides() {
		if one.Turns[s] != other.Turns[s^1] {
			t.Errorf("side %d: %+v, mirrored %+v", s, one.Turns[s], other.Turns[s^1])
		}
	}
}

// A long sleeve keeps its hem and tapers to it; front and back seams that grow
// unlike are pointed out.
func TestTaperedSleeve(t *testing.T) {
	input := byhand.Geometry()
	input.Sleeve.Long = true
	input.Sleeve.UnderarmSeam, input.Sleeve.HemWidth, input.Sleeve.ElbowWidth = known("17"), known("9"), known("11 1/2")
	input.Elbow, input.ElbowEase = known("11"), known("1")
	input.Wrist, input.WristEase = known("6 1/4"), known("3")
	p := calc.Compute(input)
	e := calc.Edge{W: 6.5, H: 5.25, Lean: math.Asin(2.0 / 17), Known: true, Below: calc.Approx{MM: 17, Known: true}}
	theta, _ := e.TurnTo(1)
	x, y := calc.Turned(e.W, -e.H, theta)
	endX, endY := e.End()
	if want := math.Hypot(x+0.25-7.75, y+5.25) + math.Hypot(7.75-endX, -5.25-endY) - 17; math.Abs(p.Turns[calc.SleeveBack].Growth.MM/25.4-want) > 1e-9 {
		t.Errorf("growth %v, want %v", p.Turns[calc.SleeveBack].Growth.MM/25.4, want)
	}
	// The elbow is (13 - 11 1/2)/(13 - 9) = 3/8 of the way down: the sides gain
	// there, but the wrist stays 9 and lacks 1/4, 1/8 on each side.
	checkHas(t, p, calc.BindsBelow, calc.OfSleeve)
	for _, f := range p.Findings {
		if f.Code == calc.BindsBelow && (f.At != calc.AtWrist || f.Amount != in("1/4") || f.Other != in("1/8")) {
			t.Errorf("finding %+v", f)
		}
	}
	input.Bodice.CornerOutBack = known("4")
	checkHas(t, calc.Compute(input), calc.GrowthsDiffer, calc.OfBust)
}

// What tapers back to the waist gains nothing there.
func TestWaistAndHipBind(t *testing.T) {
	input := byhand.Geometry()
	input.Waist, input.WaistEase = known("32"), known("1")
	input.Bodice.WaistFront, input.Bodice.WaistBack = known("8 1/4"), known("7 3/4")
	p := calc.Compute(input)
	found := false
	for _, f := range p.Findings {
		if f.Code == calc.BindsBelow {
			found = f.About == calc.OfBust && f.At == calc.AtWaist && f.Amount == in("1") && f.Other == in("1/4")
		}
	}
	if !found {
		t.Errorf("33 around 32: %+v", p.Findings)
	}
	input.WaistEase = known("0")
	for _, f := range calc.Compute(input).Findings {
		if f.Code == calc.BindsBelow {
			t.Errorf("32 around 32 does not bind: %+v", f)
		}
	}
}

// Cap 18 1/4 over armhole 17 1/2: cap ease 3/4 in, and 3/4 in after both got 1/2 in
// longer. A half-cap of 8 in cannot reach across a side 7 1/4 wide and 5 high.
func TestSeamsThatMustFit(t *testing.T) {
	input := byhand.Geometry()
	p := calc.Compute(input)
	if p.Seams.CapEaseBefore != known("3/4") || p.Seams.CapEaseAfter != known("3/4") ||
		p.Seams.CapAfter != known("18 3/4") || p.Seams.ArmholeAfter != known("18") {
		t.Errorf("%+v", p.Seams)
	}
	input.Sleeve.Width, input.Sleeve.CapHeight, input.Sleeve.CapFront = known("14 1/2"), known("5"), known("8")
	p = calc.Compute(input)
	checkHas(t, p, calc.CapImpossible, calc.OfSleeveFront)
	checkHas(t, p, calc.CapEaseLow, calc.OfSleeve)
	input.Sleeve.CapFront = known("12 1/2") // more than 7 1/4 out and 5 up
	p = calc.Compute(input)
	checkHas(t, p, calc.CapImpossible, calc.OfSleeveFront)
	checkHas(t, p, calc.CapEaseHigh, calc.OfSleeve)
	input = byhand.Geometry()
	input.Bodice.ArmholeBack = known("7")
	checkHas(t, calc.Compute(input), calc.ArmholeImpossible, calc.OfBodiceBack)
}

func checkHas(t *testing.T, p calc.Plan, code calc.Code, about calc.Subject) {
	t.Helper()
	for _, f := range p.Findings {
		if f.Code == code && f.About == about {
			return
		}
	}
	t.Errorf("%s about %d is missing in %+v", code, about, p.Findings)
}
