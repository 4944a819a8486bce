package units

import "strconv"

// Share is the part of a whole that falls to one of two sides, between 0 and
// 1. The zero value is not a share; see [Half].
type Share struct{ Numerator, Denominator int64 }

// Half is the even share.
var Half = Share{1, 2}

// WantShare says what [ParseShare] reads.
const WantShare = "a part from 0 to 1, such as 1/2, 0.55 or 55 %"

// ParseShare reads a share written as a fraction, a decimal or a percentage:
// "1/2", "0.55", "0,55", "55 %". Outside 0 to 1 it is an error.
func ParseShare(s string) (Share, error) {
	r := reader{text: s}
	n, err := r.number()
	if err != nil {
		return Share{}, notAShare(s, err.Offset, err.Reason)
	}
	r.spaces()
	if r.take('%') {
		n.denominator *= 100
		r.spaces()
	}
	if !r.atEnd() {
		return Share{}, notAShare(s, r.pos, "there is more after the number")
	}
	if n.negative && n.numerator != 0 || n.numerator > n.denominator {
		return Share{}, notAShare(s, 0, "it goes from 0 to 1")
	}
	share := Share{n.numerator, n.denominator}.reduced()
	if share.Denominator > finestShare {
		return Share{}, notAShare(s, 0, "too many digits")
	}
	return share, nil
}

func notAShare(s string, offset int, reason string) *ParseError {
	return &ParseError{Input: s, Offset: offset, Reason: reason, Kind: "share", Want: "Write it like 1/2, 0.55 or 55 %"}
}

// finestShare bounds the denominator, so that a share of any length that is
// read fits the integers.
const finestShare = 1_000_000_000

// reduced is the share in lowest terms.
func (s Share) reduced() Share {
	a, b := s.Numerator, s.Denominator
	for b != 0 {
		a, b = b, a%b
	}
	return Share{s.Numerator / a, s.Denominator / a}
}

// Of is the share of a length, rounded to the nearest count, halves away from
// zero. Whoever splits a length gives the other side the rest, so that the two
// add up.
func (s Share) Of(l Length) Length {
	if s.Denominator == 0 {
		return 0
	}
	return divideRounded(l*Length(s.Numerator), Length(s.Denominator))
}

// Rest is what the share leaves to the other side.
func (s Share) Rest() Share { return Share{s.Denominator - s.Numerator, s.Denominator} }

// String is the share as a fraction in lowest terms, "1/2"; none and all are
// "0" and "1".
func (s Share) String() string {
	if s.Denominator == 0 {
		return ""
	}
	r := s.reduced()
	if r.Denominator == 1 {
		return strconv.FormatInt(r.Numerator, 10)
	}
	return strconv.FormatInt(r.Numerator, 10) + "/" + strconv.FormatInt(r.Denominator, 10)
}
