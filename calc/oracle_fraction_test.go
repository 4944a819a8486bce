package calc_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"capscye/units"
)

// exact is a length in counts as a fraction in lowest terms; without a denominator it is not
// known. A sum with a part that is not known is not known, which is the very rule for needs.
// Numbers of any size would serve too, and take most of the time of these tests: here a sum
// that is too large for its number ends the test instead.
type exact struct{ above, below int64 }

func exactly[T ~int | ~int64](n T) exact { return exact{int64(n), 1} }

func exactReading(r units.Reading) exact {
	if !r.Known {
		return exact{}
	}
	return exactly(r.Length)
}

var nought = exactly(0)

func (a exact) known() bool { return a.below != 0 }

// lowest is a fraction in lowest terms, with the sign above.
func lowest(above, below int64) exact {
	if below == 1 {
		return exact{above, 1}
	}
	a, b := above, below
	for b != 0 {
		a, b = b, a%b
	}
	return exact{above / a, below / a}.upright()
}

// upright has its sign above.
func (a exact) upright() exact {
	if a.below < 0 {
		return exact{-a.above, -a.below}
	}
	return a
}

// product and sum are what they are called, or the end of the test.
func product(a, b int64) int64 {
	if a == 0 || b == 1 {
		return a
	}
	c := a * b
	if c/a != b || a == math.MinInt64 || b == math.MinInt64 {
		panic(fmt.Sprintf("too large: %d times %d", a, b))
	}
	return c
}

func sum(a, b int64) int64 {
	c := a + b
	if (c > a) != (b > 0) && b != 0 {
		panic(fmt.Sprintf("too large: %d and %d", a, b))
	}
	return c
}

func (a exact) plus(b exact) exact {
	if !a.known() || !b.known() {
		return exact{}
	}
	return lowest(sum(product(a.above, b.below), product(b.above, a.below)), product(a.below, b.below))
}

func (a exact) minus(b exact) exact { return a.plus(exact{-b.above, b.below}) }

func (a exact) times(b exact) exact {
	if !a.known() || !b.known() {
		return exact{}
	}
	return lowest(product(a.above, b.above), product(a.below, b.below))
}

func (a exact) over(b exact) exact {
	if b.known() && b.above == 0 {
		panic("divided by nothing")
	}
	return a.times(exact{b.below, b.above}.upright())
}

func (a exact) compare(b exact) int {
	if !a.known() || !b.known() {
		panic("compared with what is not known")
	}
	return cmp.Compare(product(a.above, b.below), product(b.above, a.below))
}
func (a exact) less(b exact) bool { return a.compare(b) < 0 }
func (a exact) sign() int         { return a.compare(nought) }
func (a exact) float() float64    { return float64(a.above) / float64(a.below) }

func (a exact) or(instead exact) exact {
	if a.known() {
		return a
	}
	return instead
}

// ifPositive forgets a width that no cloth can have.
func (a exact) ifPositive() exact {
	if a.known() && a.sign() <= 0 {
		return exact{}
	}
	return a
}

// rounded is the nearest whole, halves away from zero: the whole part of
// |a| + 1/2 with the sign of a.
func (a exact) rounded() exact {
	if !a.known() {
		return a
	}
	whole := sum(product(2, max(a.above, -a.above)), a.below) / product(2, a.below)
	if a.sign() < 0 {
		whole = -whole
	}
	return exactly(whole)
}

func (a exact) half() exact { return a.over(exactly(2)).rounded() }

func (a exact) toMark(mark units.Ruler) exact {
	return a.over(exactly(mark)).rounded().times(exactly(mark))
}

// length hands the figure back. A fraction of a count here would be a rounding
// that was forgotten, so it must not be swallowed.
func (a exact) length() units.Length {
	if a.below != 1 {
		panic(fmt.Sprintf("not a whole number of counts: %d over %d", a.above, a.below))
	}
	return units.Length(a.above)
}

func (a exact) reading() units.Reading {
	if !a.known() {
		return units.Reading{}
	}
	return units.Known(a.length())
}

func largest(all ...exact) exact  { return slices.MaxFunc(all, exact.compare) }
func smallest(all ...exact) exact { return slices.MinFunc(all, exact.compare) }
