package calc_test

import (
	"slices"
	"strconv"
	"testing"

	"capscye/calc"
	"capscye/calc/internal/byhand"
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
	if len(rows) != 6068 {
		t.Fatalf("%d people", len(rows))
	}
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
	typed := func(unit units.System, bicep, bust string) calc.Input {
		in := calc.Input{Method: calc.UsualMethod(), Typed: &calc.Typed{Unit: unit}}
		for a, text := range map[calc.Answer]string{calc.Bicep: bicep, calc.Bust: bust} {
			if l, err := units.Parse(text, unit); err == nil {
				in.Typed.Texts[a] = text
				*where[a](&in) = units.Known(l)
			}
		}
		return in
	}
	early := typed(units.Inches, "14 1/2", "")
	early.BicepOther, early.Typed.Texts[calc.BicepOther] = known("38 1/2"), "38 1/2"
	for _, c := range []struct {
		what   string
		input  calc.Input
		answer calc.Answer
		want   calc.Slip
		meant  string
	}{
		{"34.9 typed into a sheet in inches", typed(units.Inches, "34.9", "39 1/2"), calc.Bicep, calc.CentimetresAsInches, "34.9 cm"},
		{"a bust of 39.5 typed into a sheet in centimetres", typed(units.Centimetres, "", "39.5"), calc.Bust, calc.InchesAsCentimetres, "39.5 in"},
		{"half a bust", typed(units.Centimetres, "32", "50"), calc.Bust, calc.HalfAGirth, ""},
		{"a bust in the arm's place", typed(units.Centimetres, "100", ""), calc.Bicep, calc.Exchanged, ""},
		{"arm and bust exchanged", typed(units.Centimetres, "100", "35"), calc.Bicep, calc.Exchanged, ""},
		{"an arm without its point", typed(units.Centimetres, "365", "104.5"), calc.Bicep, calc.PointLost, "36.5"},
		{"an arm in millimetres", typed(units.Inches, "349", "39 1/2"), calc.Bicep, calc.Millimetres, "349 mm"},
		{"a digit twice", typed(units.Inches, "133 3/4", "39 1/2"), calc.Bicep, calc.DigitTwice, "13 3/4"},
		{"two digits swapped", typed(units.Inches, "31 3/4", "39 1/2"), calc.Bicep, calc.DigitsSwapped, "13 3/4"},
		{"a bust typed one field too soon", early, calc.BicepOther, calc.Exchanged, ""},
	} {
		p := calc.Compute(c.input)
		var doubts []calc.Finding
		for _, f := range p.Findings {
			if f.Bound != nil {
				doubts = append(doubts, f)
			}
		}
		if len(doubts) != 1 || doubts[0].Answer != c.answer || !slices.Equal(doubts[0].Slips, []calc.Slip{c.want}) || doubts[0].Text != c.meant {
			t.Errorf("%s: %+v", c.what, doubts)
		}
	}
	// No slip makes these two one person's: the smaller is doubted without a guess.
	checkHas(t, calc.Compute(typed(units.Centimetres, "20", "90")), calc.ArmForBust, calc.OfSheet)
	// Inches in a sheet in centimetres look like a child's girths.
	p := calc.Compute(calc.Input{Method: calc.UsualMethod(), Bust: cm("39,5"), Bicep: cm("13,75")})
	if !slices.ContainsFunc(p.Findings, func(f calc.Finding) bool {
		return f.Code == calc.ChildsNightwear && slices.Contains(f.Slips, calc.InchesAsCentimetres)
	}) {
		t.Errorf("inches as centimetres: %+v", p.Findings)
	}
}

// A full bust 2 in or more over the high bust: choose the size by the high
// bust (Texas Agricultural Extension Service, E-372). By ASTM D5585-11e1, table
// 1, that is so at size 20 and not before.
func TestSizeByTheHighBust(t *testing.T) {
	for _, s := range astm {
		p := calc.Compute(calc.Input{Method: calc.UsualMethod(), Bust: known(s.bust), HighBust: known(s.upperChest)})
		said := slices.ContainsFunc(p.Findings, func(f calc.Finding) bool { return f.Code == calc.SizeByHighBust })
		if said != (s.size == "20") {
			t.Errorf("size %s: said %v", s.size, said)
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
	for _, f := range calc.Compute(byhand.WorkedByHand()).Findings {
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
	input := byhand.WorkedByHand()
	input.MeasuredLongAgo = true
	checkHas(t, calc.Compute(input), calc.MeasuredLongAgo, calc.OfSheet)
}
