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

// The slide is said as a teacher says it, before any sums: what each side needs, what it may
// pivot, and so what slides. The numbers are worked by hand from the needs in inches.
func TestTheSlideIsSaidInWords(t *testing.T) {
	const alike, apart = true, false
	with := func(in calc.Input, change func(*calc.Input)) calc.Input {
		change(&in)
		return in
	}
	for _, c := range []struct {
		in    calc.Input
		alike bool
		want  string
	}{
		{needing(t, "1 5/8", "2 1/4"), alike, // a side 13/16 and 9/16
			"Each sleeve side needs 13/16 and each bodice side needs 9/16. Both are within the limit of 1, so nothing slides."},
		{with(needing(t, "1", "1"), func(in *calc.Input) { in.Method.LimitBodice = units.Inch / 2 }), apart,
			"The sleeve front needs 1/2 and the bodice front needs 1/4. Both are within their limits of 1 and 1/2, so nothing slides."},
		{needing(t, "-1", "0"), alike, "Each sleeve side must come in 1/2 and each bodice side needs nothing. Both are within the limit of 1, so nothing slides."},
		{needing(t, "1", ""), alike, "Each sleeve side needs 1/2. That is within the limit of 1, so nothing slides."},
		{needing(t, "2 3/8", "1 3/4"), alike, // a side 1 3/16 and 7/16
			"Each sleeve side needs 1 3/16 and may pivot 1, which leaves 3/16. Each bodice side needs 7/16 and may pivot 1, which is enough. They are sewn together, so both slide 3/16."},
		{needing(t, "2 1/4", "5"), apart, // a side 1 1/8 and 1 1/4
			"The sleeve front needs 1 1/8 and may pivot 1, which leaves 1/8. The bodice front needs 1 1/4 and may pivot 1, which leaves 1/4. They are sewn together, so both slide 1/4."},
		{needing(t, "-3", "-1"), alike, // a side -1 1/2 and -1/4
			"Each sleeve side must come in 1 1/2 and may pivot 1, which leaves 1/2. Each bodice side must come in 1/4 and may pivot 1, which is enough. They are sewn together, so both slide in 1/2."},
		{needing(t, "", "6"), alike, "Each bodice side needs 1 1/2 and may pivot 1, which leaves 1/2 to slide."},
		{with(needing(t, "3", ""), func(in *calc.Input) { // cap ease of 1/2, and 1 1/2 at most: 1/2 more at each half
			in.Method.Armhole = calc.KeepArmhole
			for i, r := range []*units.Reading{&in.Sleeve.CapFront, &in.Sleeve.CapBack, &in.Bodice.ArmholeFront, &in.Bodice.ArmholeBack} {
				*r = units.Known([]units.Length{9 * units.Inch, 9 * units.Inch, 9 * units.Inch, 17 * units.Inch / 2}[i])
			}
		}), alike, "Each sleeve side needs 1 1/2 and may pivot 1, which leaves 1/2 to slide. The cap can take that."},
		{with(needing(t, "3", "1"), func(in *calc.Input) { in.Method.Slide = calc.SlideEven }), alike, // 1 1/2 less 1 is 1/2
			"Each sleeve side needs 1 1/2; half of that is 3/4. Slides from 1/2 to 1 1/2 work, so that is the slide."},
		{with(needing(t, "5", "1"), func(in *calc.Input) { in.Method.Slide = calc.SlideEven }), alike, // 2 1/2 less 1 is 1 1/2
			"Each sleeve side needs 2 1/2; half of that is 1 1/4. The smallest slide that works is 1 1/2, so that is the slide."},
		{with(needing(t, "1", "1"), func(in *calc.Input) { in.Method.Slide = calc.SlideChosen }), alike, ""},
	} {
		if got := SlideWords(c.in, calc.Compute(c.in), calc.Front, c.alike, inEighths); got != c.want {
			t.Errorf("%s\nwant\n%s", got, c.want)
		}
	}
}
