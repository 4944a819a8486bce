package calc_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"capscye/calc"
)

// family is half a cap or half an armhole of one size.
func family(name string, across, down float64) func(k float64) calc.Cubic {
	if name == "cap" {
		return func(k float64) calc.Cubic { return calc.HalfCap(across, down, k) }
	}
	return func(k float64) calc.Cubic { return calc.HalfArmhole(across, down, k) }
}

// The arc length of 400 random half-caps and half-armholes against another
// library: bezier-js 6.1.4 (MIT), which was run once to write the file. And the
// handle that was used is found again from the length.
func TestArcLengthAgainstAnotherLibrary(t *testing.T) {
	rows := testRows(t, "bezier-arc-lengths.csv")
	if len(rows) != 400 {
		t.Fatalf("%d rows", len(rows))
	}
	for _, row := range rows {
		var n [4]float64
		for i := range n {
			var err error
			if n[i], err = strconv.ParseFloat(row[1+i], 64); err != nil {
				t.Fatal(err)
			}
		}
		across, down, k, want := n[0], n[1], n[2], n[3]
		curves := family(row[0], across, down)
		if got := curves(k).Length(); math.Abs(got-want) > 1e-9*want {
			t.Errorf("%v: length %v", row, got)
		}
		c, approximate := calc.Fitted(curves, calc.Approx{MM: want, Known: true})
		if approximate || math.Abs(c.Length()-want) > 1e-9*want {
			t.Errorf("%v: fitted to %v, approximate %v", row, c.Length(), approximate)
		}
	}
}

// The same against chords, which know nothing of integrals: with n chords the error
// falls as 1/n^2, so two counts give the limit.
func TestArcLengthAgainstChords(t *testing.T) {
	chords := func(c calc.Cubic, n int) float64 {
		sum, last := 0.0, c.At(0)
		for i := 1; i <= n; i++ {
			p := c.At(float64(i) / float64(n))
			sum += math.Hypot(p.X-last.X, p.Y-last.Y)
			last = p
		}
		return sum
	}
	r := rand.New(rand.NewPCG(3, 1280))
	for range 6 {
		for _, c := range []calc.Cubic{
			calc.HalfCap(50+200*r.Float64(), 50+150*r.Float64(), r.Float64()),
			calc.HalfArmhole(10+80*r.Float64(), 120+120*r.Float64(), r.Float64()),
		} {
			coarse, fine := chords(c, 1<<14), chords(c, 1<<15)
			want := fine + (fine-coarse)/3
			if got := c.Length(); math.Abs(got-want) > 1e-9*want {
				t.Errorf("%v: length %v, by chords %v", c, got, want)
			}
		}
	}
}

// A turn is rigid: it leaves the arc length alone.
func TestTurnLeavesArcLengthAlone(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1280))
	for range 200 {
		c := calc.HalfCap(50+200*r.Float64(), 50+150*r.Float64(), r.Float64())
		before, after := c.Length(), c.Turned(r.Float64()-0.5).Length()
		if math.Abs(before-after) > 1e-9*before {
			t.Errorf("%v became %v", before, after)
		}
	}
}

// A straight line is k = 0; what is shorter or longer than the family reaches
// is drawn at its end, and called approximate; without a length k is 1/2.
func TestFittedAtItsEnds(t *testing.T) {
	curves := family("cap", 160, 120) // 200 straight, by Pythagoras
	if got := curves(0).Length(); math.Abs(got-200) > 1e-9 {
		t.Errorf("the straight line is %v", got)
	}
	for _, c := range []struct {
		length      calc.Approx
		k           float64
		approximate bool
	}{
		{calc.Approx{MM: 150, Known: true}, 0, true}, {calc.Approx{MM: 500, Known: true}, 1, true}, {calc.Approx{}, 0.5, false},
	} {
		got, approximate := calc.Fitted(curves, c.length)
		if got != curves(c.k) || approximate != c.approximate {
			t.Errorf("%v: %v, %v", c.length, got, approximate)
		}
	}
}

func BenchmarkFitted(b *testing.B) {
	curves := family("cap", 165, 133)
	for b.Loop() {
		calc.Fitted(curves, calc.Approx{MM: 228.6, Known: true})
	}
}
