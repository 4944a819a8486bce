package wording

import (
	"slices"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/units"
)

// needing is a sheet whose sleeve and bust need so much, in inches: of the sleeve a side
// gets a half, of the bust a quarter. "" is a girth that is not asked.
func needing(t *testing.T, sleeve, bust string) calc.Input {
	t.Helper()
	in := calc.Input{Ruler: units.EighthInch, Method: calc.UsualMethod()}
	in.Sleeve.Measured, in.Bodice.Measured = calc.SeamToSeam, calc.SeamToSeam
	known := func(text string) units.Reading {
		l, err := units.Parse(text, units.Inches)
		if err != nil {
			t.Fatal(err)
		}
		return units.Known(l)
	}
	in.Sleeve.Width, in.Bodice.FinishedBust = known("12"), known("40")
	if sleeve != "" {
		in.Bicep, in.BicepEase = known("10"), units.Known(known("2").Length+known(sleeve).Length)
	}
	if bust != "" {
		in.Bust, in.BustEase = known("37"), units.Known(known("3").Length+known(bust).Length)
	}
	return in
}

var inEighths = units.Scale{System: units.Inches, Ruler: units.EighthInch}

// lineOf is the line of the working of a sheet about a figure.
func lineOf(t *testing.T, in calc.Input, of calc.Subject, q calc.Quantity) string {
	t.Helper()
	lines := calc.Working(in)
	i := slices.IndexFunc(lines, func(l calc.Line) bool { return l.Figure == calc.Figure{Of: of, Quantity: q} })
	if i < 0 {
		t.Fatalf("the working has no %v of %v", q, of)
	}
	return WorkingLine(lines[i], inEighths)
}

// The limit holds a pivot on its way in as on its way out, and is no length below nothing.
func TestALimitIsSaidWithoutASign(t *testing.T) {
	held := needing(t, "1", "1")
	held.Method.Follow = calc.Hold
	for want, in := range map[string]calc.Input{
		"sleeve front pivot = sleeve front need after the slide 1/2, but at least 0 and at most pivot limit of a sleeve side 1 = 1/2 in":               needing(t, "1", "1"),
		"sleeve front pivot = sleeve front need after the slide (-1/2), but at most 0 and no further in than pivot limit of a sleeve side 1 = -1/2 in": needing(t, "-1", "-1"),
		"sleeve front pivot = sleeve front need after the slide 0, but what needs nothing does not pivot = 0 in":                                       needing(t, "0", "1"),
		"sleeve front pivot = sleeve front need after the slide 1/2, but no further in or out than pivot limit of a sleeve side 1 = 1/2 in":            held,
	} {
		if got := lineOf(t, in, calc.OfSleeveFront, calc.Pivot); got != want {
			t.Errorf("%s\nwant\n%s", got, want)
		}
	}
}

// What a side needs less its limit may be less than nothing, and what it needs plus its
// limit is no two things: both are called what they are.
func TestNeedAndLimitAreAddedUpByName(t *testing.T) {
	for want, in := range map[string]calc.Input{
		"sleeve front need less the limit = sleeve front need 1/2 - pivot limit of a sleeve side 1 = -1/2 in":   needing(t, "1", "1"),
		"sleeve front need plus the limit = sleeve front need (-1/2) + pivot limit of a sleeve side 1 = 1/2 in": needing(t, "-1", "-1"),
	} {
		q := calc.LeastSlide
		if strings.Contains(want, "plus") {
			q = calc.MostSlide
		}
		if got := lineOf(t, in, calc.OfSleeveFront, q); got != want {
			t.Errorf("%s\nwant\n%s", got, want)
		}
	}
}
