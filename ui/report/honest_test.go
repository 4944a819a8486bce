package report_test

import (
	"maps"
	"slices"
	"strconv"
	"testing"

	"capscye/calc"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/units"
	"capscye/worksheets"
)

// doubting are the codes of a doubt.
var doubting = []calc.Code{calc.GirthUnusual, calc.ArmForBust, calc.AnswerDoubted, calc.EaseUnusual, calc.SlideFar}

// honest is an example pattern in the size nearest to a bust, on a body measured
// without a slip. Sizes are 2 in (5 cm) apart at the bust (common practice, no source); the size that the example is
// in has the bust that it fits with the example's own ease. All lengths of a pattern
// grow with its bust, but for allowances and darts: rules of grading differ, and none
// is as simple. Elbow and high bust are left out, for the survey lacks them; the ease
// is the middle of the usual, of a knit the example's own.
func honest(base worksheets.Sheet, flat units.Length, body map[string]string) worksheets.Sheet {
	mm := func(name string) units.Length {
		n, _ := strconv.ParseInt(body[name], 10, 64)
		return units.Length(n) * units.Millimetre
	}
	step := 2 * units.Inch
	if base.Unit() == units.Centimetres {
		step = 5 * units.Centimetre
	}
	own := flat - base.Reading(worksheets.EaseBust).Length
	size := own + (mm("chest_mm") - own).Round(step)
	s := base
	for _, k := range measured(&base) {
		switch {
		case k == worksheets.SleeveAllowance, k == worksheets.BodiceAllowance, k == worksheets.TakeOffFront, k == worksheets.TakeOffBack, k.Kind() == worksheets.Signed:
			continue
		}
		s.Set(k, (base.Reading(k).Length * size / own).String())
	}
	for _, k := range []worksheets.Key{worksheets.BicepOther, worksheets.HighBust, worksheets.Elbow} {
		s.Set(k, "")
	}
	for k, name := range map[worksheets.Key]string{
		worksheets.Bicep: "biceps_flexed_mm", worksheets.Bust: "chest_mm", worksheets.Waist: "waist_mm", worksheets.Hip: "buttock_mm", worksheets.Wrist: "wrist_mm",
	} {
		s.Set(k, body[name]+" mm")
	}
	for k, place := range map[worksheets.Key]calc.Place{
		worksheets.EaseBicep: calc.AtBicep, worksheets.EaseBust: calc.AtBust, worksheets.EaseWaist: calc.AtWaist, worksheets.EaseHip: calc.AtHip, worksheets.EaseWrist: calc.AtWrist,
	} {
		if s.Choice(worksheets.Fabric) == "woven" {
			s.Set(k, calc.MiddleEase(place, calc.Woven).String())
		}
	}
	return s
}

// At most one honest worksheet in a hundred is doubted: the people of ANSUR II, each in
// the nearest size of every example pattern.
func TestHonestWorksheetsAreHardlyDoubted(t *testing.T) {
	people := props.SomeBodies(t)
	all, doubted := 0, 0
	for _, name := range worksheets.Examples() {
		d, err := worksheets.Example(name)
		if err != nil {
			t.Fatal(err)
		}
		flat := calc.Compute(report.Input(&d.Sheet, props.SomeDay)).Bust.Flat.Length
		of, codes := 0, map[string]int{}
		for _, body := range people {
			sheet := honest(d.Sheet, flat, body)
			said := false
			for _, f := range calc.Compute(report.Input(&sheet, props.SomeDay)).Findings {
				if slices.Contains(doubting, f.Code) {
					said = true
					r := report.Reckon(&worksheets.Document{Sheet: sheet}, props.SomeDay, 0)
					codes[string(f.Code)+" "+r.Worded(f).Text]++
				}
			}
			if all++; said {
				of++
			}
		}
		doubted += of
		t.Logf("%-16s %4d of %d doubted, %.2f %%", name, of, len(people), 100*float64(of)/float64(len(people)))
		for _, text := range slices.Sorted(maps.Keys(codes)) {
			t.Logf("    %d %s", codes[text], text)
		}
	}
	t.Logf("%d of %d honest worksheets doubted, %.2f %%", doubted, all, 100*float64(doubted)/float64(all))
	if 100*doubted > all {
		t.Error("more than one in a hundred")
	}
}
