package worksheets_test

import (
	"testing"

	"capscye/units"
	"capscye/worksheets"
)

// lengths are the readable lengths of a sheet, but for the ruler, which has a
// length without being named.
func lengths(t testing.TB, s worksheets.Sheet) map[worksheets.Key]units.Reading {
	t.Helper()
	all := map[worksheets.Key]units.Reading{}
	for _, k := range worksheets.Keys() {
		if !k.IsLength() || k == worksheets.Ruler {
			continue
		}
		r, err := s.Length(k)
		if err != nil {
			t.Errorf("%v = %q: %v", k, s.Text(k), err)
		}
		all[k] = r
	}
	return all
}

func sheets(t testing.TB) map[string]worksheets.Sheet {
	t.Helper()
	all := map[string]worksheets.Sheet{"filled": filledSheet(t), "empty": {}}
	for _, name := range worksheets.Examples() {
		d, err := worksheets.Example(name)
		if err != nil {
			t.Fatal(err)
		}
		all[name] = d.Sheet
	}
	return all
}

func TestSwitchingTheUnitThereAndBackMovesNoLengthAndNoRuler(t *testing.T) {
	for name, s := range sheets(t) {
		before, ruler, was := lengths(t, s), s.Ruler(), s
		for _, unit := range []units.System{s.Unit().Other(), s.Unit(), s.Unit().Other()} {
			if err := s.Set(worksheets.Unit, unit.String()); err != nil || s.Unit() != unit {
				t.Fatalf("%s: %v is not the unit: %v", name, unit, err)
			}
			for k, now := range lengths(t, s) {
				if now != before[k] {
					t.Errorf("%s in %v: %v reads %v, was %v", name, unit, k, now, before[k])
				}
			}
			if s.Ruler() != ruler {
				t.Errorf("%s in %v: the ruler is %v, was %v", name, unit, s.Ruler(), ruler)
			}
			for _, k := range worksheets.Keys() {
				if !k.IsLength() && k != worksheets.Unit && s.Text(k) != was.Text(k) {
					t.Errorf("%s in %v: %v says %q, said %q", name, unit, k, s.Text(k), was.Text(k))
				}
			}
		}
	}
}

func TestSwitchingTheUnitNamesTheUnitOfBareNumbersOnly(t *testing.T) {
	for _, c := range []struct {
		from, to    string
		key         worksheets.Key
		typed, kept string
	}{
		{"in", "cm", worksheets.Bicep, "13 3/4", "13 3/4 in"},
		{"in", "cm", worksheets.Bicep, "13-3/4", "13-3/4 in"},
		{"in", "cm", worksheets.Bicep, "13¾", "13¾ in"},
		{"in", "cm", worksheets.Bicep, "34.9 cm", "34.9 cm"},
		{"in", "cm", worksheets.Bicep, "13 3/4 in", "13 3/4 in"},
		{"in", "cm", worksheets.Bicep, `13"`, `13"`},
		{"in", "cm", worksheets.Bicep, "", ""},
		{"in", "cm", worksheets.Bicep, "about 13", "about 13"},
		{"in", "cm", worksheets.EaseBust, "-1/2", "-1/2 in"},
		{"in", "cm", worksheets.SleeveAllowance, "0", "0 in"},
		{"in", "cm", worksheets.Slide, "least", "least"},
		{"in", "cm", worksheets.Slide, "even", "even"},
		{"in", "cm", worksheets.Slide, "3/8", "3/8 in"},
		{"in", "cm", worksheets.PivotLimitSleeve, "", ""},
		{"in", "cm", worksheets.Ruler, "1/16", "1/16 in"},
		{"in", "cm", worksheets.Ruler, "", "1/8 in"},
		{"in", "cm", worksheets.FrontShareBust, "1/2", "1/2"},
		{"in", "cm", worksheets.Crossings, "2", "2"},
		{"in", "cm", worksheets.Title, "13", "13"},
		{"cm", "in", worksheets.Bicep, "36,4", "36,4 cm"},
		{"cm", "in", worksheets.Bicep, "364 mm", "364 mm"},
		{"cm", "in", worksheets.Ruler, "0.5", "0.5 cm"},
		{"cm", "in", worksheets.Ruler, "", "1 mm"},
		{"cm", "", worksheets.Bicep, "36", "36 cm"}, // no unit at all means inches
		{"", "cm", worksheets.Bicep, "13", "13 in"},
		{"", "in", worksheets.Bicep, "13", "13"},
		{"in", "in", worksheets.Bicep, "13", "13"},
		{"cm", " cm ", worksheets.Ruler, "", ""},
	} {
		var s worksheets.Sheet
		s.Set(worksheets.Unit, c.from)
		s.Set(c.key, c.typed)
		if err := s.Set(worksheets.Unit, c.to); err != nil {
			t.Errorf("from %q to %q: %v", c.from, c.to, err)
		}
		if got := s.Text(c.key); got != c.kept {
			t.Errorf("from %q to %q: %v = %q became %q, want %q", c.from, c.to, c.key, c.typed, got, c.kept)
		}
	}
}

func TestWhatIsTypedAfterTheSwitchIsInTheNewUnit(t *testing.T) {
	s := filledSheet(t)
	s.Set(worksheets.Unit, "cm")
	s.Set(worksheets.Bicep, "35")
	if r, err := s.Length(worksheets.Bicep); r != units.Known(35*units.Centimetre) || err != nil || s.Text(worksheets.Bicep) != "35" {
		t.Errorf("35 typed in centimetres reads %v, %v and is kept as %q", r, err, s.Text(worksheets.Bicep))
	}
	s.Set(worksheets.Unit, "in")
	if r, err := s.Length(worksheets.Bicep); r != units.Known(35*units.Centimetre) || err != nil {
		t.Errorf("back in inches it reads %v, %v", r, err)
	}
	s.Set(worksheets.Bicep, "14")
	if r, err := s.Length(worksheets.Bicep); r != units.Known(14*units.Inch) || err != nil {
		t.Errorf("14 typed in inches reads %v, %v", r, err)
	}
}

func TestAnUnreadableUnitIsKeptAndSaidAndChangesNoOtherWord(t *testing.T) {
	was := filledSheet(t)
	for _, text := range []string{"inch", "CM", "fathoms"} {
		s := was
		err := s.Set(worksheets.Unit, text)
		if want := `"` + text + `" is not a choice. Choose in or cm`; err == nil || err.Error() != want {
			t.Errorf("unit %q: error %v, want %s", text, err, want)
		}
		for _, k := range worksheets.Keys() {
			if want := was.Text(k); k != worksheets.Unit && s.Text(k) != want {
				t.Errorf("unit %q: %v says %q, said %q", text, k, s.Text(k), want)
			}
		}
		if s.Text(worksheets.Unit) != text {
			t.Errorf("unit %q is kept as %q", text, s.Text(worksheets.Unit))
		}
	}
}

// Once the unit is taken out, a bare number is in inches, as in the file, and what was
// meant in another is named.
func TestAUnitThatIsTakenOutIsInches(t *testing.T) {
	var s worksheets.Sheet
	for _, unit := range []string{"cm", "c", ""} {
		s.Set(worksheets.Unit, unit)
		if unit == "cm" {
			s.Set(worksheets.Bicep, "36")
		}
	}
	if s.Unit() != units.Inches || s.Text(worksheets.Bicep) != "36 cm" {
		t.Errorf("the unit is %v, and the bicep %q", s.Unit(), s.Text(worksheets.Bicep))
	}
}

func TestASlipInTheUnitMovesNoLengthOnceItIsPutRight(t *testing.T) {
	for _, right := range []string{"cm", "in"} {
		var s worksheets.Sheet
		s.Set(worksheets.Unit, "cm")
		s.Set(worksheets.Bicep, "36")
		s.Set(worksheets.Unit, "c")
		s.Set(worksheets.Unit, right)
		if r, err := s.Length(worksheets.Bicep); r != units.Known(36*units.Centimetre) || err != nil {
			t.Errorf("cm, c, %s: %q reads %v, %v", right, s.Text(worksheets.Bicep), r, err)
		}
	}
}
