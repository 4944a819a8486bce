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
// The waist: a span that refuses no adult of either source.
func TestBoundsOfArmsAndWaist(t *testing.T) {
	for _, c := range []struct {
		of        calc.Answer
		who       calc.Wearing
		low, high float64
	}{
		{calc.Bicep, calc.GrownUp, 178, 594}, {calc.BicepOther, calc.GrownUp, 178, 594}, {calc.Bicep, calc.Anyone, 104, 594}, {calc.Waist, calc.GrownUp, 500, 1900},
	} {
		if b := boundOf(t, c.of, calc.NoAnswer, c.who); b.Low.Millimetres() != c.low || b.High.Millimetres() != c.high {
			t.Errorf("%d: %v to %v", c.of, b.Low, b.High)
		}
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
	if check, stop := calc.SlideBounds(units.EighthInch); check != in("2") || stop != in("4") {
		t.Error(check, stop)
	}
	if check, stop := calc.SlideBounds(units.OneMillimetre); check != 50*units.Millimetre || stop != 100*units.Millimetre {
		t.Error(check, stop)
	}
}
