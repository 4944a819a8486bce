package units_test

import (
	"encoding/csv"
	"errors"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"capscye/units"
)

func TestFormatOnTheRuler(t *testing.T) {
	in := func(r units.Ruler) units.Scale { return units.Scale{System: units.Inches, Ruler: r} }
	cm := units.Scale{System: units.Centimetres, Ruler: units.OneMillimetre}
	eighth := units.Inch / 8
	for _, c := range []struct {
		scale  units.Scale
		length units.Length
		want   string
	}{
		{in(units.EighthInch), 0, "0 in"},
		{in(units.EighthInch), 110 * eighth, "13 3/4 in"},
		{in(units.EighthInch), 5 * eighth, "5/8 in"},
		{in(units.EighthInch), -4 * eighth, "-1/2 in"},
		{in(units.EighthInch), -12 * eighth, "-1 1/2 in"},
		{in(units.SixtyFourthInch), units.Inch / 64, "1/64 in"},
		{in(units.EighthInch), units.Inch / 64, "~0 in"},
		// Rounded first, split after: 15/16 and a half goes to a whole inch.
		{in(units.EighthInch), 15 * units.Inch / 16, "~1 in"},
		{in(units.SixteenthInch), 13*units.Inch + 127*units.Inch/128, "~14 in"},
		{in(units.OneMillimetre), 349 * units.Millimetre, "~13 3/4 in"},
		{in(units.OneMillimetre), units.Inch / 16, "1/16 in"},
		{units.Scale{System: units.Inches}, 3 * units.Inch / 16, "3/16 in"},
		{cm, 349 * units.Millimetre, "34.9 cm"},
		{cm, 350 * units.Millimetre, "35.0 cm"},
		{cm, thirteenThreeQuarters, "~34.9 cm"},
		{cm, -5 * units.Millimetre, "-0.5 cm"},
		{cm, units.Millimetre / 2, "~0.1 cm"},
		{units.Scale{}, 10 * units.Millimetre, "1.0 cm"},
	} {
		if got := c.scale.Format(c.length); got != c.want {
			t.Errorf("%v in 1/1280 mm at %v: %q, want %q", int64(c.length), c.scale, got, c.want)
		}
	}
}

func TestBothSystemsAndTheRulerHeld(t *testing.T) {
	sc := units.Scale{System: units.Inches, Ruler: units.EighthInch}
	if got := sc.Both(thirteenThreeQuarters); got != "13 3/4 in = ~34.9 cm" {
		t.Errorf("Both: %q", got)
	}
	metric := units.Scale{System: units.Centimetres, Ruler: units.EighthInch}
	if got := metric.Both(thirteenThreeQuarters + units.Inch/16); got != "~35.1 cm = ~13 7/8 in" { // on the ruler that is there
		t.Errorf("Both: %q", got)
	}
	if got := metric.OnRuler(units.Inch / 4); got != "1/4 in" {
		t.Errorf("OnRuler: %q", got)
	}
	if got := (units.Scale{System: units.Centimetres}).OnRuler(units.Centimetre); got != "1.0 cm" {
		t.Errorf("OnRuler without a ruler: %q", got)
	}
}

// Exact lengths add up as they are written.
func TestExact(t *testing.T) {
	inches, metric := units.Scale{System: units.Inches}, units.Scale{System: units.Centimetres}
	for _, c := range []struct {
		scale  units.Scale
		length units.Length
		want   string
	}{
		{inches, 237 * units.Inch / 16, "14 13/16"}, {inches, -units.Inch / 256, "-1/256"}, {inches, 2 * units.Inch, "2"},
		{inches, units.Centimetre, "~0.394"}, {metric, 252 * units.Millimetre / 10, "2.52"}, {metric, -5 * units.Millimetre, "-0.5"},
		{metric, units.Inch, "2.54"}, {metric, 174 * units.Millimetre / 10, "1.74"}, {metric, 349 * units.Millimetre, "34.9"},
		{metric, -units.Inch / 3, "~-0.847"}, {metric, 0, "0"}, {inches, units.Inch / 3, "~0.333"}, {metric, 100 * units.Centimetre, "100"},
	} {
		if got := c.scale.Exact(c.length); got != c.want {
			t.Errorf("%v: %q, want %q", c.length, got, c.want)
		}
	}
}

// Halves go away from zero, on either side of it.
func TestRound(t *testing.T) {
	for _, c := range []struct{ l, mark, want units.Length }{
		{5, 10, 10}, {-5, 10, -10}, {4, 10, 0}, {-4, 10, 0}, {15, 10, 20}, {7, 0, 7},
	} {
		if got := c.l.Round(c.mark); got != c.want {
			t.Errorf("%d to %d: %d, want %d", c.l, c.mark, got, c.want)
		}
	}
	for l, want := range map[units.Length]units.Length{5: 3, -5: -3, 4: 2, -4: -2, 0: 0} {
		if got := l.Half(); got != want {
			t.Errorf("half of %d: %d, want %d", l, got, want)
		}
	}
}

// The fifteen distinct upper-arm limits of 16 CFR 1615.1(o) and 1616.2(m) are
// printed both in inches and in centimetres at one decimal: a check of the
// conversion, and of the rounding to the nearest, from outside the project. None
// of them lies half way.
func TestPrintedConversionsOfTheFederalCode(t *testing.T) {
	file, err := os.Open("../testdata/us-16cfr-tight-fitting-upper-arm.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	cm := units.Scale{System: units.Centimetres}
	checked := map[string]bool{}
	for _, row := range rows[1:] {
		l, err := units.Parse(row[2], units.Inches)
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.TrimPrefix(cm.Number(l), units.OffMark); got != row[1] {
			t.Errorf("size %s: %s in is %s cm here and %s in print", row[0], row[2], got, row[1])
		}
		checked[row[2]] = true
	}
	if len(checked) != 15 {
		t.Errorf("%d distinct limits checked, want 15", len(checked))
	}
}

// 1 in is 25.4 mm: NBS Circular 572, addendum (1960). 5/8 in is given as
// 1.59 cm by the Association of Sewing and Design Professionals, Standards of
// Quality, sleeves.
func TestPublishedLengths(t *testing.T) {
	if units.Inch*36 != 9144*units.Millimetre/10 {
		t.Error("a yard is 0.9144 m")
	}
	l, _ := units.Parse("5/8 in", units.Centimetres)
	if got := l.Round(units.Millimetre / 10); got != 159*units.Millimetre/10 {
		t.Errorf("5/8 in is %v", got)
	}
}

// Nothing drifts, however often it is written and read: a length on a mark of
// both rulers (5 in is 127 mm) goes through both systems a thousand times, and
// any length at all through its exact text.
func TestNoDriftBetweenSystems(t *testing.T) {
	scales := []units.Scale{
		{System: units.Inches, Ruler: units.EighthInch}, {System: units.Centimetres, Ruler: units.OneMillimetre},
	}
	for n := range units.Length(40) {
		start := n * 127 * units.Millimetre
		moved := start
		for i := range 1000 {
			read, err := units.Parse(scales[i%2].Format(moved), units.Inches)
			if err != nil {
				t.Fatal(err)
			}
			moved = read
		}
		if moved != start {
			t.Fatalf("%v became %v", start, moved)
		}
	}
	for l := units.Length(0); l < 3*units.Inch; l += 997 {
		if read, err := units.Parse(l.String(), units.Inches); err != nil || read != l {
			t.Fatalf("%d became %d, %v", l, read, err)
		}
	}
}

// On a ruler's marks the shown text reads back as the very length, and off
// them it says so.
func TestFormatReadsBackOnMarks(t *testing.T) {
	for _, ruler := range units.Rulers() {
		sc := units.Scale{System: ruler.System(), Ruler: ruler}
		for n := units.Length(-300); n < 300; n++ {
			l := n * ruler.Mark()
			text := sc.Format(l)
			if got, err := units.Parse(text, sc.System); err != nil || got != l {
				t.Fatalf("%v marks of %v: %q reads as %v, %v", n, ruler, text, got, err)
			}
			if !strings.HasPrefix(sc.Format(l+1), units.OffMark) {
				t.Fatalf("%q does not say that it is rounded", sc.Format(l+1))
			}
		}
	}
}

func TestRulers(t *testing.T) {
	for _, r := range units.Rulers() {
		if got, err := units.ParseRuler(r.String(), units.Centimetres); err != nil || got != r {
			t.Errorf("%v reads as %v, %v", r, got, err)
		}
	}
	if r, err := units.ParseRuler("1/8", units.Inches); err != nil || r != units.EighthInch {
		t.Errorf("1/8: %v, %v", r, err)
	}
	if _, err := units.ParseRuler("1/3 in", units.Inches); err == nil {
		t.Error("no ruler is divided in thirds of an inch")
	}
}

func TestShare(t *testing.T) {
	for text, want := range map[string]units.Share{
		"1/2": units.Half, "0.55": {11, 20}, "0,55": {11, 20}, "55 %": {11, 20}, "55%": {11, 20}, "½": units.Half,
		"0": {0, 1}, "1": {1, 1}, "100%": {1, 1}, "15/28": {15, 28}, "-0": {0, 1},
	} {
		if got, err := units.ParseShare(text); err != nil || got != want {
			t.Errorf("%q: %v, %v; want %v", text, got, err, want)
		}
	}
	for _, c := range []struct {
		text   string
		column int
		reason string
	}{
		{"", 0, "nothing is written"}, {"half", 0, ""}, {"½ in", 2, "there is more after the number"}, {"1/0", 2, "the number after the slash is 0"},
		{"3/2", 0, "it goes from 0 to 1"}, {"-1/2", 0, "it goes from 0 to 1"}, {"101 %", 0, "it goes from 0 to 1"},
		{"0.123456789", 10, "more than 8 digits"}, {"0.33333333 %", 0, "too many digits"},
	} {
		got, err := units.ParseShare(c.text)
		var bad *units.ParseError
		if !errors.As(err, &bad) || utf8.RuneCountInString(c.text[:bad.Offset]) != c.column || bad.Reason != c.reason || bad.Kind != "share" {
			t.Errorf("%q reads as %v, %v; want %q at %d", c.text, got, err, c.reason, c.column)
		}
	}
	third := units.Share{Numerator: 1, Denominator: 3}
	if got := third.Of(100); got != 33 {
		t.Errorf("a third of 100: %d", got)
	}
	if got := third.Rest().Of(100); got != 67 {
		t.Errorf("the rest of 100: %d", got)
	}
	for share, want := range map[units.Share]string{{}: "", {Numerator: 0, Denominator: 5}: "0", {Numerator: 5, Denominator: 5}: "1", {Numerator: 6, Denominator: 8}: "3/4"} {
		if got := share.String(); got != want {
			t.Errorf("%#v is %q, want %q", share, got, want)
		}
	}
	if got := (units.Share{}).Of(100); got != 0 {
		t.Errorf("no share of 100: %d", got)
	}
}

// Nothing that was measured is a length, and no reason for another.
func TestALengthOfNothingIsNotMissing(t *testing.T) {
	if got := units.Known(0).Or(units.Inch); got != 0 {
		t.Errorf("it is %v", got)
	}
	if got := (units.Reading{}).Or(units.Inch); got != units.Inch {
		t.Errorf("what is missing is %v", got)
	}
}

func BenchmarkParse(b *testing.B) {
	for b.Loop() {
		if _, err := units.Parse("13 3/4 in", units.Inches); err != nil {
			b.Fatal(err)
		}
	}
}
