// Package units says what a length is: how it is counted, read, written and
// rounded.
//
// A [Length] is a whole number of 1/1280 millimetre. That is the largest unit
// in which a quarter of 1/64 inch and a quarter of a tenth of a millimetre are
// both whole, so halving a need twice, the deepest division of the work, loses
// nothing on either kind of ruler:
//
//	l, err := units.Parse("13 3/4", units.Inches) // 447040 counts, 349.25 mm
//	sc := units.Scale{System: units.Inches, Ruler: units.EighthInch}
//	sc.Format(l)                                  // "13 3/4 in"
//	sc.Format(l + units.Millimetre)               // "~13 3/4 in": not on a mark
//
// The package imports the standard library only.
package units

import "strconv"

// Length is a signed length counted in 1/1280 mm. The zero value is the length
// zero; whether a length is known at all is the business of [Reading].
type Length int64

// The lengths that everything else is a multiple of. The inch is 25.4 mm
// exactly: Addendum to National Bureau of Standards Circular 572 (1960), one
// yard being 0.9144 m.
const (
	Millimetre Length = 1280
	Centimetre        = 10 * Millimetre
	Inch              = 254 * Millimetre / 10
)

// Max is the longest length that is read, 100 m either way: far past any
// garment, and small enough that no sum of the work can overflow.
const Max = 100_000 * Millimetre

// Millimetres is the length as a floating-point number of millimetres. It is
// for output: the shortest decimal that reads back as the result is the exact
// length, since a count has at most eight decimals.
func (l Length) Millimetres() float64 { return float64(l) / float64(Millimetre) }

// Abs is the length without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// Half is half of the length, rounded to the nearest count, halves away from
// zero.
func (l Length) Half() Length { return divideRounded(l, 2) }

// Round returns the multiple of mark that is nearest to l; a length half way
// between two goes to the one farther from zero. A mark of zero or less leaves
// l as it is.
func (l Length) Round(mark Length) Length {
	if mark <= 0 {
		return l
	}
	return divideRounded(l, mark) * mark
}

// divideRounded is a/b to the nearest whole, halves away from zero. b > 0.
func divideRounded(a, b Length) Length {
	if a < 0 {
		return (a - b/2) / b
	}
	return (a + b/2) / b
}

// String is the exact length in millimetres, as in "349.25 mm". [Parse] reads
// it back without loss.
func (l Length) String() string {
	return strconv.FormatFloat(l.Millimetres(), 'f', -1, 64) + " mm"
}

// Reading is a length that may not have been taken: missing is not zero. The
// zero value is "not measured".
type Reading struct {
	Length Length
	Known  bool
}

// Known is the reading of a length that was taken.
func Known(l Length) Reading { return Reading{Length: l, Known: true} }

// Or is the length, or instead where nothing was taken.
func (r Reading) Or(instead Length) Length {
	if r.Known {
		return r.Length
	}
	return instead
}
