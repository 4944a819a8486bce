package calc_test

import (
	"slices"
	"strconv"
	"testing"

	"capscye/calc"
	"capscye/units"
)

func unusual(p calc.Plan) (answers []calc.Answer, slips []calc.Slip) {
	for _, f := range p.Findings {
		if f.Code == calc.GirthUnusual {
			answers, slips = append(answers, f.Answer), append(slips, f.Slips...)
		}
	}
	return answers, slips
}

// No adult of the open survey is called unusual: 2012 Anthropometric Survey of
// U.S. Army Personnel, Gordon et al., NATICK/TR-15/007 (2014).
func TestNobodyOfTheSurveyIsUnusual(t *testing.T) {
	small := 0
	rows := testRows(t, "ansur2-girths.csv")
	for _, row := range rows {
		mm := func(column int) units.Reading {
			n, err := strconv.ParseInt(row[column], 10, 64)
			if err != nil {
				t.Fatal(err)
			}
			return units.Known(units.Length(n) * units.Millimetre)
		}
		p := calc.Compute(calc.Input{
			Method: calc.UsualMethod(), Bust: mm(1), Waist: mm(2), Hip: mm(3), Bicep: mm(4), Wrist: mm(6),
		})
		for _, f := range p.Findings {
			if slices.Contains([]calc.Code{calc.GirthUnusual, calc.ArmForBust}, f.Code) {
				t.Fatalf("%v: %s", row, f.Code)
			}
			if f.Code == calc.ChildsNightwear {
				small++
			}
		}
	}
	if small > 6068/200 { // a caution for the smallest adults does no harm
		t.Errorf("%d of 6,068 adults are taken for children", small)
	}
}

// The arms of every age group, first to ninety-ninth percentile, are nobody's
// mistake: NHANES 2013-2014, National Center for Health Statistics, through a
// third-party copy, for plausibility only.
func TestArmsOfEveryAge(t *testing.T) {
	rows := testRows(t, "nhanes-2013-2014-arm.csv")
	for _, row := range rows {
		for _, text := range row[2:7] {
			l, err := units.Parse(text, units.Centimetres)
			if err != nil {
				t.Fatal(err)
			}
			p := calc.Compute(calc.Input{Method: calc.UsualMethod(), Bicep: units.Known(l)})
			if answers, _ := unusual(p); len(answers) > 0 {
				t.Errorf("an arm of %s cm at age %s is called unusual", text, row[0])
			}
		}
	}
}

func TestSlipsAreGuessed(t *testing.T) {
	cm := func(text string) units.Reading {
		l, err := units.Parse(text, units.Centimetres)
		if err != nil {
			t.Fatal(err)
		}
		return units.Known(l)
	}
	for _, c := range []struct {
		what  string
		input calc.Input
		want  calc.Slip
	}{
		{"34.9 typed into a sheet in inches", calc.Input{Bicep: known("34.9"), Bust: cm("100")}, calc.CentimetresAsInches},
		{"a bust of 39.5 typed into a sheet in centimetres", calc.Input{Bust: cm("39.5")}, calc.InchesAsCentimetres},
		{"half a bust", calc.Input{Bust: cm("50")}, calc.HalfAGirth},
		{"a bust in the arm's place", calc.Input{Bicep: cm("100")}, calc.ArmAsBust},
	} {
		c.input.Method = calc.UsualMethod()
		if _, slips := unusual(calc.Compute(c.input)); !slices.Contains(slips, c.want) {
			t.Errorf("%s: guessed %v", c.what, slips)
		}
	}
	checkHas(t, calc.Compute(calc.Input{Method: calc.UsualMethod(), Bust: cm("60"), Bicep: cm("40")}), calc.ArmForBust, calc.OfSheet)
	// Exchanged, they fit: then that is said, and nothing else.
	p := calc.Compute(calc.Input{Method: calc.UsualMethod(), Bust: cm("35"), Bicep: cm("100")})
	checkHas(t, p, calc.ArmForBust, calc.OfSheet)
	if answers, _ := unusual(p); len(answers) > 0 {
		t.Errorf("said besides: %v", answers)
	}
	// Inches in a sheet in centimetres look like a child's girths.
	for _, f := range calc.Compute(calc.Input{Method: calc.UsualMethod(), Bust: cm("39,5"), Bicep: cm("13,75")}).Findings {
		if f.Code == calc.ChildsNightwear && !slices.Contains(f.Slips, calc.InchesAsCentimetres) {
			t.Errorf("%+v", f)
		}
	}
}

// A full bust 2 in or more over the high bust: choose the size by the high
// bust (Texas Agricultural Extension Service, E-372). By ASTM D5585-11e1, table
// 1, that is so at size 20 and not before.
func TestSizeByTheHighBust(t *testing.T) {
	for size, girths := range map[int][2]string{
		8: {"36 1/4", "35 7/8"}, 12: {"38 3/4", "38"}, 16: {"42 1/8", "40 5/8"}, 20: {"46", "43 7/8"},
	} {
		p := calc.Compute(calc.Input{Method: calc.UsualMethod(), Bust: known(girths[0]), HighBust: known(girths[1])})
		said := slices.ContainsFunc(p.Findings, func(f calc.Finding) bool { return f.Code == calc.SizeByHighBust })
		if said != (size == 20) {
			t.Errorf("size %d: said %v", size, said)
		}
	}
}

// Every finished upper arm that the federal code allows for tight-fitting
// children's nightwear (16 CFR 1615.1(o), 1616.2(m)) is a child's arm, and the
// caution comes with it.
func TestNightwearCaution(t *testing.T) {
	rows := testRows(t, "us-16cfr-tight-fitting-upper-arm.csv")
	for _, row := range rows {
		p := calc.Compute(calc.Input{Method: calc.UsualMethod(), Bicep: known(row[2])})
		checkHas(t, p, calc.ChildsNightwear, calc.OfSheet)
	}
	// A 28 in bust is a child's pattern in Hand-Sewing Lessons, Drafting
	// Children's Garments.
	checkHas(t, calc.Compute(calc.Input{Method: calc.UsualMethod(), Bust: known("28"), Bicep: known("8")}), calc.ChildsNightwear, calc.OfSheet)
	checkHas(t, calc.Compute(calc.Input{Method: calc.UsualMethod(), Bust: known("28")}), calc.ChildsNightwear, calc.OfSheet)
	for _, f := range calc.Compute(workedByHand()).Findings {
		if f.Code == calc.ChildsNightwear {
			t.Error("13 3/4 in is no child's arm")
		}
	}
}

func TestStartFromALargerSize(t *testing.T) {
	p := calc.Compute(flat("5", "9")) // limits allow 2 and 4
	for _, f := range p.Findings {
		if f.Code == calc.StartLarger {
			if f.Amount != in("5") || f.Other != in("3") {
				t.Errorf("%+v", f)
			}
			return
		}
	}
	t.Errorf("nothing said: %+v", p.Findings)
}

func TestMeasuredLongAgo(t *testing.T) {
	input := workedByHand()
	input.MeasuredLongAgo = true
	checkHas(t, calc.Compute(input), calc.MeasuredLongAgo, calc.OfSheet)
}
