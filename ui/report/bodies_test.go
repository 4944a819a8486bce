package report_test

import (
	"strconv"
	"testing"

	"capscye/calc"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/units"
	"capscye/worksheets"
)

// Every one of them on each example pattern gets a whole, consistent plan: no
// answer missing, the two sides of a seam sliding alike, marks that add up, and
// the girth that was asked for, but for what the findings say.
func TestEveryBodyOnEveryPattern(t *testing.T) {
	people := props.SomeBodies(t)
	for _, name := range worksheets.Examples() {
		d, err := worksheets.Example(name)
		if err != nil {
			t.Fatal(err)
		}
		base := d.Sheet
		for k, text := range map[worksheets.Key]string{worksheets.EaseBicep: "2 in", worksheets.EaseBust: "3 in"} {
			if base.Text(k) == "" {
				base.Set(k, text)
			}
		}
		asAsked, following, missed := 0, 0, 0
		for i, body := range people {
			sheet := base
			sheet.Set(worksheets.Bicep, body["biceps_flexed_mm"]+" mm")
			sheet.Set(worksheets.BicepOther, "")
			sheet.Set(worksheets.Bust, body["chest_mm"]+" mm")
			plan := calc.Compute(report.Input(&sheet, props.SomeDay))
			checkPlan(t, name, i, plan, sheet.Ruler().Mark())
			for _, f := range plan.Findings {
				if !told(f.Code, f.Level) {
					t.Fatalf("%s, body %d: %s with level %v is not told", name, i, f.Code, f.Level)
				}
			}
			for about, g := range map[calc.Subject]calc.Girth{calc.OfSleeve: plan.Sleeve, calc.OfBust: plan.Bust} {
				mm := body[map[calc.Subject]string{calc.OfSleeve: "biceps_flexed_mm", calc.OfBust: "chest_mm"}[about]]
				girth, err := strconv.ParseInt(mm, 10, 64)
				if err != nil || g.Body != units.Known(units.Length(girth)*units.Millimetre) {
					t.Fatalf("%s, body %d: girth %v, %v", name, i, g.Body, err)
				}
				switch off := g.Finished.Length - g.Body.Length - g.Ease.Length; {
				case off.Abs() <= 1: // half of an odd need is rounded
					asAsked++
				case off == said(plan, about, calc.ExtraEase, calc.TooFarIn):
					following++
				case off == said(plan, about, calc.CannotReach):
					missed++
				default:
					t.Fatalf("%s, body %d, subject %d: off by %v, and no finding says so", name, i, about, off)
				}
			}
		}
		t.Logf("%-16s %5d girths as asked, %5d larger or smaller because the piece follows, %d missed", name, asAsked, following, missed)
		if asAsked == 0 || following == 0 {
			t.Errorf("%s: %d as asked, %d following: the survey should show both", name, asAsked, following)
		}
	}
}

func checkPlan(t *testing.T, name string, i int, p calc.Plan, mark units.Length) {
	t.Helper()
	if !p.Whole() || !p.Sleeve.Asked() || !p.Bust.Asked() {
		t.Fatalf("%s, body %d: the plan is not whole: %+v", name, i, p.Findings)
	}
	for _, h := range calc.Halves() {
		if s, b := p.Sides[h.Sleeve()], p.Sides[h.Bodice()]; s.Slide != b.Slide || s.SlideMark != b.SlideMark {
			t.Fatalf("%s, body %d: cap and armhole differ: %+v, %+v", name, i, s, b)
		}
	}
	for _, s := range p.Sides {
		if s.Total != s.Pivot+s.Slide || s.Marked() != s.Total.Round(mark) || s.Pivot.Abs() > units.Inch {
			t.Fatalf("%s, body %d: side %+v", name, i, s)
		}
	}
}

// said is by how much the findings say that a girth differs from what was
// asked.
func said(p calc.Plan, about calc.Subject, codes ...calc.Code) units.Length {
	var sum units.Length
	copies := map[calc.Subject]units.Length{about: 1}
	if about == calc.OfSleeve {
		copies[calc.OfSleeveFront], copies[calc.OfSleeveBack] = 1, 1
	} else {
		copies[calc.OfBodiceFront], copies[calc.OfBodiceBack] = 2, 2
	}
	for _, f := range p.Findings {
		for _, c := range codes {
			if f.Code != c {
				continue
			}
			amount := copies[f.About] * f.Amount
			if c == calc.CannotReach || c == calc.TooFarIn {
				amount = -amount
			}
			sum += amount
		}
	}
	return sum
}
