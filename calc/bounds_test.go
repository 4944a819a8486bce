package calc_test

import (
	"strconv"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/units"
)

// boundOf is the bound of an answer, alone or beside another, for a kind of sheet.
func boundOf(t *testing.T, of, beside calc.Answer, who calc.Wearing) calc.Bound {
	t.Helper()
	for _, b := range calc.Bounds {
		if b.Of == of && b.Beside == beside && b.For == who {
			return b
		}
	}
	t.Fatalf("%d beside %d has no bound", of, beside)
	return calc.Bound{}
}

// columns of the survey: sex, chest, waist, buttock, biceps flexed, forearm flexed, wrist.
var surveyed = map[calc.Answer]int{calc.Bust: 1, calc.Waist: 2, calc.Hip: 3, calc.Bicep: 4, calc.Wrist: 6}

// What is called the span of the survey is, and what is called wider holds it: 2012
// Anthropometric Survey of U.S. Army Personnel, Gordon et al., NATICK/TR-15/007 (2014).
func TestBoundsOfTheBodyAgainstTheSurvey(t *testing.T) {
	rows := testRows(t, "ansur2-girths.csv")
	span := func(of, beside calc.Answer) (low, high float64) {
		for i, row := range rows {
			n, _ := strconv.ParseFloat(row[surveyed[of]], 64)
			if beside != calc.NoAnswer {
				d, _ := strconv.ParseFloat(row[surveyed[beside]], 64)
				n = 100 * n / d
			}
			if i == 0 {
				low, high = n, n
			}
			low, high = min(low, n), max(high, n)
		}
		return low, high
	}
	for _, of := range []calc.Answer{calc.Bust, calc.Hip, calc.Wrist} {
		low, high := span(of, calc.NoAnswer)
		if b := boundOf(t, of, calc.NoAnswer, calc.GrownUp); b.Low.Millimetres() != low || b.High.Millimetres() != high {
			t.Errorf("%d: %v to %v, and people %v to %v", of, b.Low, b.High, low, high)
		}
	}
	for _, pair := range [][2]calc.Answer{
		{calc.Bicep, calc.Bust}, {calc.Waist, calc.Bust}, {calc.Hip, calc.Bust}, {calc.Hip, calc.Waist}, {calc.Wrist, calc.Bicep},
	} {
		low, high := span(pair[0], pair[1])
		if b := boundOf(t, pair[0], pair[1], calc.Anyone); float64(b.Low) > low || float64(b.High) < high {
			t.Errorf("%v: %d to %d %%, and people %.1f to %.1f", pair, b.Low, b.High, low, high)
		}
	}
}

// The smallest and the largest arm of age 20 and over, and of every age from birth:
// NHANES 2013-2014, National Center for Health Statistics, through a third-party copy.
// The waist has a rounder span, which refuses no adult.
func TestBoundsOfArmsAndWaist(t *testing.T) {
	cm := func(text string) units.Length {
		l, err := units.Parse(text, units.Centimetres)
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	anyone := [2]units.Length{units.Max, 0}
	spans := map[calc.Wearing][2]units.Length{}
	for _, row := range testRows(t, "nhanes-2013-2014-arm.csv") { // age, n, five percentiles, smallest, largest
		anyone = [2]units.Length{min(anyone[0], cm(row[7])), max(anyone[1], cm(row[8]))}
		if spans[calc.Anyone] = anyone; row[0] == "20+" {
			spans[calc.GrownUp] = [2]units.Length{cm(row[7]), cm(row[8])}
		}
	}
	for _, arm := range []calc.Answer{calc.Bicep, calc.BicepOther} {
		for _, who := range []calc.Wearing{calc.GrownUp, calc.Anyone} {
			if b := boundOf(t, arm, calc.NoAnswer, who); [2]units.Length{b.Low, b.High} != spans[who] {
				t.Errorf("%d of %d: %v to %v, and people %v", arm, who, b.Low, b.High, spans[who])
			}
		}
	}
	if b := boundOf(t, calc.Waist, calc.NoAnswer, calc.GrownUp); b.Low != 50*units.Centimetre || b.High != 190*units.Centimetre {
		t.Errorf("waist: %v to %v", b.Low, b.High)
	}
}

// Half of the least and twice the most that the sources give of woven cloth (see
// TestUsualEase): 2 in at the upper arm, 1 1/2 to 4 at the bust, 3/4 to 1 at the waist, 2
// to 2 3/4 at the hip, 1 at elbow and wrist; but where cloth may hang as much as at the
// bust. Of a knit twice the least, -1 in, and as much as of woven cloth. The bounds are
// ours.
func TestBoundsOfEase(t *testing.T) {
	for of, ends := range map[calc.Answer][2]string{
		calc.BicepEase: {"1", "4"}, calc.BustEase: {"3/4", "8"}, calc.WaistEase: {"3/8", "8"}, calc.HipEase: {"1", "8"}, calc.ElbowEase: {"1/2", "8"}, calc.WristEase: {"1/2", "8"},
	} {
		if b := boundOf(t, of, calc.NoAnswer, calc.WovenCloth); b.Low != in(ends[0]) || b.High != in(ends[1]) {
			t.Errorf("%d: %v to %v", of, b.Low, b.High)
		}
		if b := boundOf(t, of, calc.NoAnswer, calc.KnitCloth); b.Low != in("-2") || b.High != in(ends[1]) {
			t.Errorf("%d of a knit: %v to %v", of, b.Low, b.High)
		}
	}
}

// A slide is checked from 2 in on, and no job from 4 in on; 5 and 10 cm by a metric ruler.
// Both are ours.
func TestBoundsOfTheSlide(t *testing.T) {
	if check, stop := calc.SlideBounds(units.EighthInch); check != in("2") || stop != in("4") {
		t.Error(check, stop)
	}
	if check, stop := calc.SlideBounds(units.OneMillimetre); check != 50*units.Millimetre || stop != 100*units.Millimetre {
		t.Error(check, stop)
	}
}

// Every bound says where it is from, and every measurement has one.
func TestEveryMeasurementHasABound(t *testing.T) {
	bounded := map[calc.Answer]bool{}
	for _, b := range calc.Bounds {
		bounded[b.Of], bounded[b.Beside] = true, true
		published := strings.Contains(b.Source, "ANSUR II") || strings.Contains(b.Source, "NHANES")
		if b.Low > b.High || !published && b.Source != calc.Ours || where[b.Of] == nil || calc.Urgency(b.Code) == 0 {
			t.Errorf("%+v", b)
		}
	}
	for a := range where {
		if !bounded[a] {
			t.Errorf("%d has no bound", a)
		}
	}
}
