package units

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// The grammar of a length, as people write it. White space is any Unicode
// space but a line break, no-break spaces included.
//
//	length   = [sign] number [unit]
//	sign     = "-" | "+" | U+2212
//	number   = whole
//	         | whole ("." | ",") digits     13.75   13,75   .5
//	         | [whole join] fraction        13 3/4  13-3/4  3/4
//	         | [whole [join]] vulgar        13¾  13 ¾  13-¾  ¾
//	join     = spaces | hyphen              the hyphen stands without spaces
//	fraction = digits [spaces] slash [spaces] digits
//	slash    = "/" | U+2044 | U+2215
//	vulgar   = one of ⅛ ¼ ⅓ ⅜ ½ ⅝ ⅔ ¾ ⅞
//	unit     = in, inch, inches, ", ″, ”, '' | cm, centimetre(s) | mm, millimetre(s)
//
// A fraction behind a whole number is below one. Feet are not read. Digits are
// the ten of ASCII, at most six before the point or on either side of the
// slash and eight behind the point: no tape shows more, and so the reader
// needs no big numbers.

// Want says all that [Parse] reads; an error gives an [Example].
const Want = `13 3/4, 13-3/4, 13¾, 13.75 or 13,75, with in, ", cm or mm behind it or nothing`

// Example is what an error offers of a length.
const Example = "Write it like 13 3/4, 13.75 or 34,9 cm"

const (
	maxWhole    = 6
	maxDecimals = 8
)

// ParseError says what could not be read, where in it, why, and what would
// have been.
type ParseError struct {
	Input  string // as it was given
	Offset int    // byte offset into Input of the place that could not be read
	Reason string // "" where it is nothing of the kind at all
	Kind   string // what it should have been: "length"
	Want   string // an example, as a sentence
}

// Error is what is wrong, in few words, and an example of what is right:
//
//	"thirty" is not a length. Write it like 13 3/4, 13.75 or 34,9 cm
func (e *ParseError) Error() string {
	msg := fmt.Sprintf("%q is not a %s", shorten(e.Input), e.Kind)
	if e.Reason != "" {
		msg += ": " + e.Reason
	}
	return msg + ". " + e.Want
}

// shorten keeps a message to a line, however much was pasted.
func shorten(s string) string {
	const most = 60
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	return string([]rune(s)[:most]) + "..."
}

// Parse reads a length. A number without a unit is in the given system. The
// result is rounded to the nearest count, halves away from zero: a decimal or
// a third of an inch need not be whole in 1/1280 mm.
//
// The error is a *[ParseError].
func Parse(s string, bare System) (Length, error) {
	l, _, err := ParseNamed(s, bare)
	return l, err
}

// ParseNamed is [Parse], and tells whether the text named its unit.
func ParseNamed(s string, bare System) (l Length, named bool, err error) {
	unit := Centimetre
	if bare == Inches {
		unit = Inch
	}
	if n, ok := plainNumber(s); ok {
		return divideRounded(Length(n.numerator)*unit, Length(n.denominator)), false, nil
	}
	r := reader{text: s}
	n, bad := r.number()
	if bad != nil {
		return 0, false, bad
	}
	r.spaces()
	start := r.pos
	if !r.atEnd() {
		word := r.word()
		if unit, bad = unitNamed(r, start, word); bad != nil {
			return 0, false, bad
		}
		named = true
		r.spaces()
		if !r.atEnd() {
			return 0, false, r.fail("there is more after the unit")
		}
	}
	if Length(n.numerator)*unit > Max*Length(n.denominator) { // before it is rounded down to that
		return 0, false, r.failAt(0, "longer than 100 m")
	}
	l = divideRounded(Length(n.numerator)*unit, Length(n.denominator))
	if n.negative {
		l = -l
	}
	return l, named, nil
}

// unitNamed is the length of the unit that the word at start names.
func unitNamed(r reader, start int, word string) (Length, *ParseError) {
	name := strings.ToLower(word)
	for _, u := range UnitNames {
		if slices.Contains(u.Words, name) {
			return u.Unit, nil
		}
	}
	switch name {
	case "'", "′", "’", "ft", "ft.", "foot", "feet":
		return 0, r.failAt(start, "feet are not used here")
	}
	switch first, _ := utf8.DecodeRuneInString(word); {
	case first == '.' || first == ',':
		return 0, r.failAt(start, "a point or comma too many")
	case isSlash(first):
		return 0, r.failAt(start, "a slash too many, or no number before it")
	case isHyphen(first):
		return 0, r.failAt(start, "a hyphen joins whole and fraction without spaces")
	case isDigit(first) || isVulgar(first):
		return 0, r.failAt(start, "there are two numbers")
	case unicode.IsLetter(first):
		return 0, r.failAt(start, fmt.Sprintf("%q is no unit here", shorten(word)))
	}
	return 0, r.failAt(start, "a character does not belong here")
}

// vulgar holds the fractions that are one character.
var vulgar = map[rune][2]int64{
	'⅛': {1, 8}, '¼': {1, 4}, '⅓': {1, 3}, '⅜': {3, 8}, '½': {1, 2},
	'⅝': {5, 8}, '⅔': {2, 3}, '¾': {3, 4}, '⅞': {7, 8},
}

func isVulgar(r rune) bool { _, ok := vulgarOf(r); return ok }

// vulgarOf spares the letters and digits, which are most of what is read, a
// search in the table.
func vulgarOf(r rune) (f [2]int64, ok bool) {
	if r < utf8.RuneSelf {
		return f, false
	}
	f, ok = vulgar[r]
	return f, ok
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

func isSlash(r rune) bool { return r == '/' || r == '⁄' || r == '∕' }

// isHyphen takes the hyphens and the en dash that word processors put between
// a whole number and its fraction.
func isHyphen(r rune) bool { return r == '-' || r == '‐' || r == '‑' || r == '–' || r == '−' }

// isSpace leaves out line breaks: a pasted line break between two numbers must
// not join them into one length.
func isSpace(r rune) bool {
	return r != '\n' && r != '\r' && r != '\v' && r != '\f' && r != '\u0085' && r != '\u2028' && r != '\u2029' &&
		unicode.IsSpace(r)
}

// reader walks through the text of one length or share.
type reader struct {
	text string
	pos  int
}

func (r *reader) atEnd() bool { return r.pos >= len(r.text) }

// peek is the next character; at the end it is utf8.RuneError, which is of no
// kind.
func (r *reader) peek() rune {
	c, _ := utf8.DecodeRuneInString(r.text[r.pos:])
	return c
}

func (r *reader) next() { _, n := utf8.DecodeRuneInString(r.text[r.pos:]); r.pos += n }

// takeIf steps over the next character where it is of the kind.
func (r *reader) takeIf(kind func(rune) bool) bool {
	if r.atEnd() || !kind(r.peek()) {
		return false
	}
	r.next()
	return true
}

func (r *reader) take(c rune) bool { return r.takeIf(func(p rune) bool { return p == c }) }

func (r *reader) spaces() {
	for r.takeIf(isSpace) {
	}
}

// word is what stands before the next space or the end.
func (r *reader) word() string {
	start := r.pos
	for r.takeIf(func(c rune) bool { return !isSpace(c) }) {
	}
	return r.text[start:r.pos]
}

// noNumber is the reason of what has no number where one should begin: the text speaks for
// itself.
const noNumber = ""

func (r *reader) fail(reason string) *ParseError { return r.failAt(r.pos, reason) }

func (r *reader) failAt(offset int, reason string) *ParseError {
	return &ParseError{Input: r.text, Offset: offset, Reason: reason, Kind: "length", Want: Example}
}

// digits reads a run of at most most digits. None at all is an error that
// says what was wanted.
func (r *reader) digits(most int, wanted string) (value int64, err *ParseError) {
	start := r.pos
	for r.takeIf(isDigit) {
		if r.pos-start > most {
			return 0, r.failAt(start+most, fmt.Sprintf("more than %d digits", most))
		}
		value = value*10 + int64(r.text[r.pos-1]-'0')
	}
	if r.pos == start {
		return 0, r.fail(wanted)
	}
	return value, nil
}

// number is numerator/denominator, exact.
type number struct {
	numerator, denominator int64
	negative               bool
}

// number reads the sign and the number of the grammar above.
func (r *reader) number() (number, *ParseError) {
	r.spaces()
	if r.atEnd() {
		return number{}, r.fail("nothing is written")
	}
	negative := r.take('-') || r.take('−')
	if !negative {
		r.take('+')
	}
	r.spaces()
	n, err := r.unsigned()
	n.negative = negative
	return n, err
}

func (r *reader) unsigned() (number, *ParseError) {
	if r.takeIf(isPoint) {
		return r.decimals(0)
	}
	if f, ok := r.vulgarFraction(); ok {
		return f, nil
	}
	whole, err := r.digits(maxWhole, noNumber)
	if err != nil {
		return number{}, err
	}
	if r.takeIf(isPoint) {
		return r.decimals(whole)
	}
	// What follows decides whether the digits were a whole number or a
	// numerator; where it is neither fraction nor slash, the spaces are not ours.
	end := r.pos
	r.spaces()
	if r.takeIf(isSlash) {
		return r.below(whole)
	}
	hyphen := r.pos == end && r.takeIf(isHyphen)
	if hyphen || isDigit(r.peek()) || isVulgar(r.peek()) {
		return r.mixed(whole)
	}
	r.pos = end
	return number{numerator: whole, denominator: 1}, nil
}

// mixed reads the proper fraction that has to follow a whole number and its
// join.
func (r *reader) mixed(whole int64) (number, *ParseError) {
	start := r.pos
	f, ok := r.vulgarFraction()
	if !ok {
		numerator, err := r.digits(maxWhole, "no fraction after the hyphen")
		if err != nil {
			return number{}, err
		}
		r.spaces()
		if !r.takeIf(isSlash) {
			return number{}, r.failAt(start, "there are two numbers")
		}
		if f, err = r.below(numerator); err != nil {
			return number{}, err
		}
	}
	if f.numerator >= f.denominator {
		return number{}, r.failAt(start, "the fraction after a whole number must be below 1")
	}
	f.numerator += whole * f.denominator
	return f, nil
}

func isPoint(c rune) bool { return c == '.' || c == ',' }

// decimals reads what stands behind the point.
func (r *reader) decimals(whole int64) (number, *ParseError) {
	start := r.pos
	part, err := r.digits(maxDecimals, "no digit after the point")
	if err != nil {
		return number{}, err
	}
	n := number{numerator: whole, denominator: 1}
	for range r.pos - start {
		n.numerator, n.denominator = n.numerator*10, n.denominator*10
	}
	n.numerator += part
	return n, nil
}

// below reads what stands behind the slash.
func (r *reader) below(numerator int64) (number, *ParseError) {
	r.spaces()
	start := r.pos
	denominator, err := r.digits(maxWhole, "no number after the slash")
	if err != nil {
		return number{}, err
	}
	if denominator == 0 {
		return number{}, r.failAt(start, "the number after the slash is 0")
	}
	return number{numerator: numerator, denominator: denominator}, nil
}

func (r *reader) vulgarFraction() (number, bool) {
	f, ok := vulgarOf(r.peek())
	if ok {
		r.next()
	}
	return number{numerator: f[0], denominator: f[1]}, ok
}
