package units_test

import (
	"errors"
	"math/big"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"capscye/units"
)

// thirteenThreeQuarters is 13 3/4 in counted by hand: 13.75 x 25.4 = 349.25 mm.
const thirteenThreeQuarters = 349_25 * units.Millimetre / 100

// Every way of writing one length, by people's habit.
func TestParseReadsEveryHabit(t *testing.T) {
	for _, text := range []string{
		"13 3/4", "13-3/4", "13.75", "13,75", "13¾", "13 ¾", "13-¾", "13 6/8", "13 24/32",
		"13 3/4 in", `13 3/4"`, `13.75"`, "13 3/4″", "13 3/4”", "13 3/4''", "13 3/4 inches", "13 3/4IN",
		"13 3⁄4", "13 3∕4", "13 3 / 4", "13–3/4", "13‑3/4", "55/4",
		"13\u00a03/4", "13\u202f3/4", "13\u20093/4", "  13\t3/4  ", "+13 3/4",
		"349.25 mm", "349,25mm", "34.925 cm", "34,925 centimetres", "34.925 CM",
	} {
		got, err := units.Parse(text, units.Inches)
		if err != nil || got != thirteenThreeQuarters {
			t.Errorf("Parse(%q) = %v, %v; want %v", text, got, err, thirteenThreeQuarters)
		}
	}
}

func TestParseReadsEveryEighthAndThird(t *testing.T) {
	for eighths, text := range map[units.Length]string{
		1: "⅛", 2: "¼", 3: "⅜", 4: "½", 5: "⅝", 6: "¾", 7: "⅞",
	} {
		got, err := units.Parse(text, units.Inches)
		if want := eighths * units.Inch / 8; err != nil || got != want {
			t.Errorf("Parse(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
	for thirds, text := range map[units.Length]string{1: "⅓", 2: "⅔"} {
		got, err := units.Parse(text+" mm", units.Inches)
		if want := (thirds*2*units.Millimetre + 3) / 6; err != nil || got != want { // to the nearest
			t.Errorf("Parse(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
}

// -1/2 and 1-1/2 must never read alike.
func TestParseTellsMinusFromHyphen(t *testing.T) {
	for text, want := range map[string]units.Length{
		"-1/2": -units.Inch / 2, "−1/2": -units.Inch / 2, "- 1/2": -units.Inch / 2,
		"1-1/2": 3 * units.Inch / 2, "-1-1/2": -3 * units.Inch / 2, "−1 ½": -3 * units.Inch / 2,
		"-0": 0, ".5": units.Inch / 2, ",5": units.Inch / 2,
	} {
		got, err := units.Parse(text, units.Inches)
		if err != nil || got != want {
			t.Errorf("Parse(%q) = %v, %v; want %v", text, got, err, want)
		}
	}
}

func TestParseTakesTheBareUnitFromTheSheet(t *testing.T) {
	for _, c := range []struct {
		text  string
		sys   units.System
		want  units.Length
		named bool
	}{
		{"2.5", units.Centimetres, 25 * units.Millimetre, false},
		{"2 1/2", units.Centimetres, 25 * units.Millimetre, false},
		{"2.5", units.Inches, 5 * units.Inch / 2, false},
		{"2.5 in", units.Centimetres, 5 * units.Inch / 2, true},
		{"25 mm", units.Inches, 25 * units.Millimetre, true},
	} {
		got, named, err := units.ParseNamed(c.text, c.sys)
		if err != nil || got != c.want || named != c.named {
			t.Errorf("ParseNamed(%q, %v) = %v, %v, %v; want %v, %v", c.text, c.sys, got, named, err, c.want, c.named)
		}
	}
}

// What cannot be read says so word for word, and points at the place:
//
//	13 1/2 1/2
//	       ^ a second number
func TestParseErrors(t *testing.T) {
	for _, c := range []struct {
		text   string
		column int
		reason string
	}{
		{"", 0, "nothing is written"},
		{"  ", 2, "nothing is written"},
		{"1/0", 2, "the number after the slash is 0"},
		{"3/2/1", 3, "a slash too many, or no number before it"},
		{"13 1/2 1/2", 7, "there are two numbers"},
		{"13 14", 3, "there are two numbers"},
		{"13.5 1/2", 5, "there are two numbers"},
		{"1.2.3", 3, "a point or comma too many"},
		{"13..5", 3, "no digit after the point"},
		{"13.", 3, "no digit after the point"},
		{"13 .5", 3, "a point or comma too many"},
		{"1,234.5", 5, "a point or comma too many"},
		{"--1", 1, ""},
		{"13 - 3/4", 3, "a hyphen joins whole and fraction without spaces"},
		{"13-", 3, "no fraction after the hyphen"},
		{"13-14", 3, "there are two numbers"},
		{"13 8/8", 3, "the fraction after a whole number must be below 1"},
		{"13 9/8", 3, "the fraction after a whole number must be below 1"},
		{"1e3", 1, `"e3" is no unit here`},
		{"0x10", 1, `"x10" is no unit here`},
		{"13 yd", 3, `"yd" is no unit here`},
		{"5 ft", 2, "feet are not used here"},
		{"5'", 1, "feet are not used here"},
		{"5' 3\"", 1, "feet are not used here"},
		{"13 in 3/4", 6, "there is more after the unit"},
		{"13/", 3, "no number after the slash"},
		{"1/½", 2, "no number after the slash"},
		{"½½", 1, "there are two numbers"},
		{"36\n1/2", 2, "a character does not belong here"},
		{"abc", 0, ""},
		{"１３", 0, ""},
		{strings.Repeat("1", 40), 6, "more than 6 digits"},
		{"0." + strings.Repeat("3", 40), 10, "more than 8 digits"},
		{"999999 cm", 0, "longer than 100 m"},
		{"inf", 0, ""},
		{"1\x1b[31m", 1, "a character does not belong here"},
	} {
		_, err := units.Parse(c.text, units.Inches)
		var bad *units.ParseError
		if !errors.As(err, &bad) {
			t.Errorf("Parse(%q): %v, want a ParseError", c.text, err)
			continue
		}
		column := utf8.RuneCountInString(c.text[:bad.Offset])
		if column != c.column || bad.Reason != c.reason || bad.Input != c.text || bad.Want != units.Example || bad.Kind != "length" {
			t.Errorf("Parse(%q): column %d, %q; want %d, %q", c.text, column, bad.Reason, c.column, c.reason)
		}
		if strings.ContainsAny(err.Error(), "\x1b\n") {
			t.Errorf("Parse(%q): the message holds raw control characters: %q", c.text, err)
		}
	}
}

// A line break that was pasted between two numbers does not make one length of them.
func TestNoLineBreakIsASpace(t *testing.T) {
	for _, b := range []string{"\n", "\r\n", "\r", "\v", "\f", "\u0085", "\u2028", "\u2029"} {
		if got, err := units.Parse("13"+b+"3/4", units.Inches); err == nil {
			t.Errorf("with %q it is %v", b, got)
		}
	}
}

// What was pasted is shown as far as a line has room, counted in characters.
func TestALongTextIsShownShortened(t *testing.T) {
	for text, want := range map[string]string{
		strings.Repeat("é", 60): strings.Repeat("é", 60), strings.Repeat("é", 61): strings.Repeat("é", 60) + "...", strings.Repeat("é", 31): strings.Repeat("é", 31),
	} {
		if _, err := units.Parse(text, units.Inches); err == nil || !strings.HasPrefix(err.Error(), `"`+want+`" is not a length`) {
			t.Errorf("%v, want %s", err, want)
		}
	}
}

func TestParseErrorIsOneWholeSentence(t *testing.T) {
	_, err := units.Parse("13 1/2 1/2", units.Inches)
	want := `"13 1/2 1/2" is not a length: there are two numbers. Write it like 13 3/4, 13.75 or 34,9 cm`
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}

// slowGrammar is the grammar of a length as one regular expression, with letters for the
// classes.
const slowGrammar = `^S*([-+−])?S*(?:` +
	`(?P<w1>D{0,6})[.,](?P<dec>D{1,8})|` +
	`(?P<n1>D{1,6})S*[/⁄∕]S*(?P<d1>D{1,6})|` +
	`(?:(?P<w2>D{1,6})(?:S*|H))?(?P<v>[⅛¼⅓⅜½⅝⅔¾⅞])|` +
	`(?P<w3>D{1,6})(?:S+|H)(?P<n3>D{1,6})S*[/⁄∕]S*(?P<d3>D{1,6})|` +
	`(?P<w4>D{1,6})` +
	`)S*(?P<u>in\.?|inch|inches|"|″|”|''|[cm]m\.?|centimet(?:re|er)s?|millimet(?:re|er)s?)?S*$`

// slowParse reads the same grammar another way, into millimetres: by that expression, and
// in rational numbers without bounds.
func slowParse(text string, bare units.System) (*big.Rat, bool) {
	// ToLower would fold the Kelvin sign and the long s into letters of ours.
	lower := strings.Map(func(r rune) rune {
		if 'A' <= r && r <= 'Z' {
			return r + 'a' - 'A'
		}
		return r
	}, text)
	m := slowRegexp.FindStringSubmatch(lower)
	if m == nil {
		return nil, false
	}
	group := func(name string) string { return m[slowRegexp.SubexpIndex(name)] }
	rat := func(s string) *big.Rat {
		if s == "" {
			return new(big.Rat)
		}
		r, _ := new(big.Rat).SetString(s)
		return r
	}
	value := new(big.Rat)
	quotient := func(n, d string) bool {
		if rat(d).Sign() == 0 {
			return false
		}
		value.Quo(rat(n), rat(d))
		return true
	}
	switch {
	case group("dec") != "":
		value = rat("0" + group("w1") + "." + group("dec"))
	case group("d1") != "":
		if !quotient(group("n1"), group("d1")) {
			return nil, false
		}
	case group("v") != "":
		value.Add(rat(group("w2")), map[string]*big.Rat{
			"⅛": big.NewRat(1, 8), "¼": big.NewRat(1, 4), "⅓": big.NewRat(1, 3), "⅜": big.NewRat(3, 8),
			"½": big.NewRat(1, 2), "⅝": big.NewRat(5, 8), "⅔": big.NewRat(2, 3), "¾": big.NewRat(3, 4),
			"⅞": big.NewRat(7, 8),
		}[group("v")])
	case group("d3") != "":
		if !quotient(group("n3"), group("d3")) || value.Cmp(big.NewRat(1, 1)) >= 0 {
			return nil, false
		}
		value.Add(value, rat(group("w3")))
	default:
		value = rat(group("w4"))
	}
	switch u := group("u"); {
	case strings.HasPrefix(u, "c"), u == "" && bare == units.Centimetres:
		value.Mul(value, big.NewRat(10, 1))
	case u == "mm" || u == "mm." || strings.HasPrefix(u, "mi"):
	default:
		value.Mul(value, big.NewRat(254, 10))
	}
	if value.Cmp(big.NewRat(100_000, 1)) > 0 {
		return nil, false
	}
	if m[1] == "-" || m[1] == "−" {
		value.Neg(value)
	}
	return value, true
}

var slowRegexp = regexp.MustCompile(strings.NewReplacer(
	"S", `[\t\x{20}\x{a0}\x{1680}\x{2000}-\x{200a}\x{202f}\x{205f}\x{3000}]`,
	"D", `[0-9]`,
	"H", `[-‐‑–−]`,
).Replace(slowGrammar))

// FuzzParse holds the reader against the slow one, and a length that was read
// against being written and read again.
func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"13 3/4", "13-3/4", "13.75", "13,75", "13¾", "13 ¾", `13 3/4"`, "34,9 cm", "349mm", "1⁄2", "13 6/8",
		"-1/2", "1-1/2", "−½ in", "1/0", "3/2/1", "13 1/2 1/2", "1.2.3", "13..5", "--1", "1e3", "0x10", "5/8",
		"1/1008", "0000000000000000000000000000000000000001", "13\u00a03/4 in.", "9\u20284", "100000 mm", "13 3/4 \u212a",
	} {
		f.Add(s, true)
		f.Add(s, false)
	}
	f.Fuzz(func(t *testing.T, text string, inches bool) {
		sys := units.Centimetres
		if inches {
			sys = units.Inches
		}
		got, err := units.Parse(text, sys)
		slow, ok := slowParse(text, sys)
		if ok != (err == nil) {
			t.Fatalf("Parse(%q) = %v, %v; the slow reader: %v, %v", text, got, err, slow, ok)
		}
		if err != nil {
			var bad *units.ParseError
			if !errors.As(err, &bad) || bad.Offset > len(text) {
				t.Fatalf("Parse(%q): a damaged error: %#v", text, err)
			}
			return
		}
		// The nearest count is at most half a count away, and farther from zero
		// where it is exactly half.
		exact := new(big.Rat).Mul(slow, big.NewRat(1280, 1))
		off := new(big.Rat).Sub(new(big.Rat).Abs(big.NewRat(int64(got), 1)), exact.Abs(exact))
		if off.Cmp(big.NewRat(1, 2)) > 0 || off.Cmp(big.NewRat(-1, 2)) <= 0 {
			t.Fatalf("Parse(%q) = %v counts, %v away from the exact %v", text, int64(got), off, exact)
		}
		again, err := units.Parse(got.String(), sys)
		if err != nil || again != got {
			t.Fatalf("%q reads as %v, writes as %q, reads as %v, %v", text, int64(got), got, int64(again), err)
		}
	})
}

// slowShare reads a share as a number of centimetres, of which the sign of a hundredth
// takes the place.
func slowShare(text string) (*big.Rat, bool) {
	ofOne := strings.Replace(text, "%", "cm", 1)
	parts := big.NewRat(1000, 1)
	if ofOne == text {
		ofOne, parts = text+"cm", big.NewRat(10, 1)
	}
	if strings.Contains(ofOne, "cm.") { // which is short for a unit; a sign is short for nothing
		return nil, false
	}
	mm, ok := slowParse(ofOne, units.Centimetres)
	if !ok {
		return nil, false
	}
	share := new(big.Rat).Quo(mm, parts)
	fine := share.Denom().Cmp(big.NewInt(1_000_000_000)) <= 0
	return share, fine && share.Sign() >= 0 && share.Cmp(big.NewRat(1, 1)) <= 0
}

// FuzzParseShare holds the reader of shares against the slow one, and its part of the
// longest length, to the nearest count.
func FuzzParseShare(f *testing.F) {
	for _, s := range []string{
		"1/2", "0.55", "55 %", "½", "3/2", "-1/2", "0", "1", "100%", "1 1/2", "0.33333333%", "33,3 %", "999998/999999", "-0", "½ cm", "5%5", "%",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := units.ParseShare(text)
		slow, ok := slowShare(text)
		if ok != (err == nil) {
			t.Fatalf("ParseShare(%q) = %v, %v; the slow reader: %v, %v", text, s, err, slow, ok)
		}
		if err != nil {
			var bad *units.ParseError
			if !errors.As(err, &bad) || bad.Offset > len(text) {
				t.Fatalf("ParseShare(%q): a damaged error: %#v", text, err)
			}
			return
		}
		if slow.Cmp(big.NewRat(s.Numerator, s.Denominator)) != 0 {
			t.Fatalf("ParseShare(%q) = %v, the slow reader: %v", text, s, slow)
		}
		part := new(big.Rat).Mul(slow, big.NewRat(int64(units.Max), 1))
		if off := part.Sub(part, big.NewRat(int64(s.Of(units.Max)), 1)); off.Abs(off).Cmp(big.NewRat(1, 2)) > 0 {
			t.Fatalf("%v of 100 m is %v, %v counts off", s, s.Of(units.Max), off)
		}
		if again, err := units.ParseShare(s.String()); s.Denominator <= 999_999 && (err != nil || again != s) {
			t.Fatalf("%q reads as %v, writes as %q, reads as %v, %v", text, s, s, again, err)
		}
	})
}
