//go:build linux

package screen

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"capscye/calc"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/ui/sizes"
	"capscye/units"
	"capscye/worksheets"
)

// TestGrowth prints how the time grows with the work, as an exponent: the slope
// of time over size, both as logarithms, by least squares; and the slope between
// the two largest sizes, where what does not grow along weighs least. 1 is linear.
// It fails for nothing that is slow, but what is worse than linear by far is no
// noise. It runs only when asked for:
//
//	CAPSCYE_MEASURE=1 go test ./ui/screen -count=1 -v -run TestGrowth
func TestGrowth(t *testing.T) {
	if os.Getenv("CAPSCYE_MEASURE") == "" {
		t.Skip("set CAPSCYE_MEASURE=1 to measure; it takes a minute")
	}
	fmt.Println("\n| what | sizes | smallest | largest | exponent | at the end |\n|---|---|---|---|---|---|")
	for _, g := range []struct {
		what, of string
		sizes    []int
		prepare  func(t *testing.T, n int) (work func())
	}{
		{"plan", "sheets", []int{1, 10, 100, 1000, 10_000, 100_000}, plansOf},
		{"load and reckon", "fittings", []int{1, 10, 100, 1000, 10_000}, loadWithFittings},
		{"save one changed answer", "fittings", []int{1, 10, 100, 1000, 10_000}, saveWithFittings},
		{"frame of step 5", "fittings", []int{1, 10, 100, 1000, 10_000}, frameWithFittings},
		{"frame of step 4, pictures and all", "cells", []int{80 * 24, 120 * 40, 200 * 60, 300 * 100, 500 * 200}, frameOfArea},
		{"sizes of a pattern", "sizes", []int{1, 2, 5, 10, 20}, sizesCompared},
		{"read or refuse a length", "characters", []int{5, 50, 500, 5000}, lengthOf},
	} {
		var times []float64
		for _, n := range g.sizes {
			times = append(times, quickest(g.prepare(t, n)))
		}
		last := len(times) - 1
		all, end := slope(g.sizes, times), slope(g.sizes[last-1:], times[last-1:])
		fmt.Printf("| %s | %d to %d %s | %s | %s | %.2f | %.2f |\n", g.what, g.sizes[0], g.sizes[last], g.of, seconds(times[0]), seconds(times[last]), all, end)
		if max(all, end) > 1.5 {
			t.Errorf("%s: exponents %.2f and %.2f; the times are %v", g.what, all, end, times)
		}
	}
}

// quickest is the least time of several, in seconds: noise only adds.
func quickest(work func()) float64 {
	best := math.Inf(1)
	for begun, n := time.Now(), 0; n < 3 || time.Since(begun) < time.Second/2; n++ {
		before := time.Now()
		work()
		best = min(best, time.Since(before).Seconds())
	}
	return best
}

func seconds(s float64) string {
	if s < 1e-3 {
		return fmt.Sprintf("%.1f us", s*1e6)
	}
	return fmt.Sprintf("%.1f ms", s*1e3)
}

// slope is that of the logarithms, by least squares.
func slope(sizes []int, times []float64) float64 {
	var x, y, xx, xy float64
	for i, n := range sizes {
		a, b := math.Log(float64(n)), math.Log(times[i])
		x, y, xx, xy = x+a, y+b, xx+a*a, xy+a*b
	}
	n := float64(len(sizes))
	return (n*xy - x*y) / (n*xx - x*x)
}

// A slope that is known: y = 7 x^2.
func TestSlope(t *testing.T) {
	if got := slope([]int{1, 2, 5, 10}, []float64{7, 28, 175, 700}); math.Abs(got-2) > 1e-12 {
		t.Errorf("%v", got)
	}
}

// sizesCompared are so many sizes, all reckoned.
func sizesCompared(t *testing.T, n int) func() {
	d := twentySizes(t)
	d.Sheet.Sizes = d.Sheet.Sizes[:n]
	r := report.Reckon(d, props.SomeDay, 0)
	return func() { sizes.Of(r) }
}

func plansOf(t *testing.T, n int) func() {
	in := report.Input(&lit(t, 80, 24).desk.Doc.Sheet, props.SomeDay)
	return func() {
		for range n {
			calc.Compute(in)
		}
	}
}

// withFittings is a file with so many notes.
func withFittings(t *testing.T, n int) string {
	source, err := os.ReadFile(props.Example("choir-blouse"))
	if err != nil {
		t.Fatal(err)
	}
	notes := strings.Repeat("\n[[fitting]]\ndate = 2026-11-20\nnote = \"sits well\"\n", n)
	path := filepath.Join(t.TempDir(), "sheet.toml")
	if err := os.WriteFile(path, append(source, notes...), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func loaded(t *testing.T, path string) *worksheets.Document {
	d, err := worksheets.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func loadWithFittings(t *testing.T, n int) func() {
	path := withFittings(t, n)
	return func() { report.Reckon(loaded(t, path), props.SomeDay, 0) }
}

func saveWithFittings(t *testing.T, n int) func() {
	d := loaded(t, withFittings(t, n))
	girths := []string{"14", "14 1/8"}
	return func() {
		slices.Reverse(girths)
		if err := d.Sheet.Set(worksheets.Bicep, girths[0]); err != nil {
			t.Fatal(err)
		}
		if _, err := d.Save(); err != nil {
			t.Fatal(err)
		}
	}
}

func frameWithFittings(t *testing.T, n int) func() {
	m := lit(t, 120, 40)
	m.opened(openedMsg{doc: loaded(t, withFittings(t, n))})
	m.desk.StepNamed("f5")
	return func() { m.View() }
}

// frameOfArea draws windows of a shape, about, between 80 x 24 and 500 x 200.
func frameOfArea(t *testing.T, cells int) func() {
	width := map[int]int{80 * 24: 80, 120 * 40: 120, 200 * 60: 200, 300 * 100: 300, 500 * 200: 500}[cells]
	m := lit(t, width, cells/width)
	m.desk.StepNamed("f4")
	return func() {
		m.desk.Rep.Derived = m.desk.Rep.Derive() // as after a change: nothing is kept from the frame before
		m.View()
	}
}

// lengthOf reads a number with so many digits behind its point, which is far more
// than a length has.
func lengthOf(_ *testing.T, n int) func() {
	text := "13." + strings.Repeat("0", n-3)
	return func() {
		for range 100 {
			_, _ = units.Parse(text, units.Inches)
		}
	}
}
