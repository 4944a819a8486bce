package worksheets_test

import (
	"strings"
	"testing"

	"capscye/units"
	"capscye/worksheets"
)

// filled has a readable answer to every key, each length written in another of
// the ways that people write one.
var filled = map[worksheets.Key]string{
	worksheets.Title: "Rehearsal blouse", worksheets.Wearer: "Tamsel", worksheets.Unit: "in", worksheets.Ruler: "1/16",
	worksheets.Fabric: "knit", worksheets.Notes: "3 buttons, 5/8 wide", worksheets.BodyFrom: "choir-blouse.toml", worksheets.PatternFrom: "costume tunic.toml",
	worksheets.MeasuredOn: "2026-10-03", worksheets.Bicep: "13 3/4", worksheets.BicepOther: "13-1/2", worksheets.Bust: "39½",
	worksheets.HighBust: "97.5 cm", worksheets.Waist: "31,25", worksheets.Hip: "1010 mm", worksheets.Elbow: "12 ⅓", worksheets.Wrist: "6.75",
	worksheets.EaseBicep: "+1 3/4", worksheets.EaseBust: "-1/2", worksheets.EaseWaist: "0", worksheets.EaseHip: "− 1 1/8",
	worksheets.EaseElbow: "2 in", worksheets.EaseWrist: ".5",
	worksheets.PatternSize: "14", worksheets.ChartBust: "36", worksheets.ChartHighBust: "34 1/2",
	worksheets.SleeveLength: "long", worksheets.SleeveStyle: "shirt", worksheets.SleeveWidth: "14 5/64", worksheets.SleeveMeasured: "edge",
	worksheets.SleeveAllowance: "5/8", worksheets.CapHeight: "5 1⁄4", worksheets.CapFront: "9", worksheets.CapBack: "9 1/4\"",
	worksheets.UnderarmSeam: "17", worksheets.HemWidth: "9 7/32", worksheets.ElbowWidth: "13 2/3",
	worksheets.BodiceFront: "10 1/4", worksheets.BodiceBack: "9 3/4 inches", worksheets.BodiceMeasured: "edge", worksheets.BodiceAllowance: "0",
	worksheets.Crossings: "2", worksheets.TakeOffFront: "3/4", worksheets.TakeOffBack: "1/3", worksheets.DartFront: "side", worksheets.DartBack: "armhole", worksheets.FinishedBust: "43",
	worksheets.ArmholeFront: "8 5/8", worksheets.ArmholeBack: "8 7/8", worksheets.CornerOutFront: "-1/4", worksheets.CornerDownFront: "7",
	worksheets.CornerOutBack: "1 3/4", worksheets.CornerDownBack: "7 1/4", worksheets.BustDown: "1 7/8", worksheets.SideSeam: "8", worksheets.WaistFront: "9", worksheets.WaistBack: "8 1/2",
	worksheets.HipFront: "11 3/8", worksheets.HipBack: "28 cm",
	worksheets.PivotLimitSleeve: "7/8", worksheets.PivotLimitBodice: "2,5 cm", worksheets.FrontShareSleeve: "0,45", worksheets.FrontShareBust: "55 %",
	worksheets.Slide: "3/8", worksheets.Follow: "hold", worksheets.Armhole: "keep", worksheets.TaperFrom: "corner",
}

// filledSheet is a sheet with every answer of filled.
func filledSheet(t testing.TB) worksheets.Sheet {
	t.Helper()
	var s worksheets.Sheet
	for _, k := range worksheets.Keys() {
		text, ok := filled[k]
		if !ok {
			t.Fatalf("%v has no answer in the filled sheet", k)
		}
		if err := s.Set(k, text); err != nil {
			t.Fatalf("%v: %v", k, err)
		}
	}
	return s
}

func TestALengthIsReadAsItsKindAllows(t *testing.T) {
	const in, mm = units.Inch, units.Millimetre
	known := units.Known
	for _, c := range []struct {
		key  worksheets.Key
		text string
		want units.Reading
		err  string // a part of the reason, "" for none
	}{
		{worksheets.Bicep, "13 3/4", known(13*in + in*3/4), ""},
		{worksheets.Bicep, "13¾ in", known(13*in + in*3/4), ""},
		{worksheets.Bicep, "34.9 cm", known(349 * mm), ""},
		{worksheets.Bicep, "34,9cm", known(349 * mm), ""},
		{worksheets.Bicep, "349 mm", known(349 * mm), ""},
		{worksheets.Bicep, "141/2", known(141 * in / 2), ""}, // which the screen and ask would ask about
		{worksheets.Bicep, "", units.Reading{}, ""},
		{worksheets.Bicep, "0", units.Reading{}, "must be more than 0"},
		{worksheets.Bicep, "-13", units.Reading{}, "must be more than 0"},
		{worksheets.Bicep, "about 13", units.Reading{}, "is not a length. Write it like"},
		{worksheets.Bicep, "13 feet", units.Reading{}, "feet are not used here"},
		{worksheets.SleeveAllowance, "5/8", known(in * 5 / 8), ""},
		{worksheets.SleeveAllowance, "0", known(0), ""},
		{worksheets.SleeveAllowance, "", units.Reading{}, ""},
		{worksheets.SleeveAllowance, "-1/8", units.Reading{}, "is below 0"},
		{worksheets.EaseBust, "-2", known(-2 * in), ""},
		{worksheets.EaseBust, "−2 cm", known(-20 * mm), ""},
		{worksheets.EaseBust, "0", known(0), ""},
		{worksheets.EaseBust, "", units.Reading{}, ""},
		{worksheets.Slide, "least", units.Reading{}, ""},
		{worksheets.Slide, "even", units.Reading{}, ""},
		{worksheets.Slide, "", units.Reading{}, ""},
		{worksheets.Slide, "-1/4", known(-in / 4), ""},
		{worksheets.Slide, "most", units.Reading{}, "is not a slide. Write it like least, even or"},
		{worksheets.PivotLimitSleeve, "", known(in), ""},
		{worksheets.PivotLimitBodice, "", known(in), ""},
		{worksheets.PivotLimitBodice, "0", known(0), ""},
		{worksheets.Notes, "13", units.Reading{}, ""},
		{worksheets.Crossings, "2", units.Reading{}, ""},
		{worksheets.FrontShareBust, "1/2", units.Reading{}, ""},
	} {
		var s worksheets.Sheet
		set := s.Set(c.key, c.text)
		got, err := s.Length(c.key)
		if got != c.want || (err == nil) != (c.err == "") {
			t.Errorf("%v = %q reads %v, %v; want %v, %q", c.key, c.text, got, err, c.want, c.err)
		}
		for _, err := range []error{set, err, s.Check(c.key)} {
			if c.err != "" && (err == nil || !strings.Contains(err.Error(), c.err)) {
				t.Errorf("%v = %q: error %v, want one with %q", c.key, c.text, err, c.err)
			}
			if c.err == "" && err != nil {
				t.Errorf("%v = %q: %v", c.key, c.text, err)
			}
		}
	}
}

func TestAMissingLengthIsNotZero(t *testing.T) {
	for _, k := range worksheets.Keys() {
		if usual := k == worksheets.PivotLimitSleeve || k == worksheets.PivotLimitBodice; !k.IsLength() || usual {
			continue
		}
		var s worksheets.Sheet
		if r := s.Reading(k); r.Known {
			t.Errorf("%v without an answer reads %v", k, r)
		}
		s.Set(k, "unreadable")
		if r := s.Reading(k); r.Known {
			t.Errorf("%v with an unreadable answer reads %v", k, r)
		}
		s.Set(k, "  ")
		if r, err := s.Length(k); r.Known || err != nil || s.Text(k) != "" {
			t.Errorf("%v with blanks for an answer reads %v, %v and is kept as %q", k, r, err, s.Text(k))
		}
	}
}

func TestAnUnreadableLimitCountsAsTheUsualInch(t *testing.T) {
	for _, unit := range []string{"in", "cm"} {
		var s worksheets.Sheet
		s.Set(worksheets.Unit, unit)
		for _, text := range []string{"", "wide", "-1"} {
			s.Set(worksheets.PivotLimitSleeve, text)
			if r := s.Reading(worksheets.PivotLimitSleeve); r != units.Known(units.Inch) {
				t.Errorf("in %s, limit %q reads %v", unit, text, r)
			}
		}
	}
}

func TestASharesUnreadableAnswerCountsAsOneHalf(t *testing.T) {
	for text, want := range map[string]units.Share{
		"": units.Half, "1/2": units.Half, "0.45": {Numerator: 9, Denominator: 20}, "0,45": {Numerator: 9, Denominator: 20}, "55 %": {Numerator: 11, Denominator: 20},
		"0": {Numerator: 0, Denominator: 1}, "1": {Numerator: 1, Denominator: 1}, "3/5": {Numerator: 3, Denominator: 5},
	} {
		var s worksheets.Sheet
		if err := s.Set(worksheets.FrontShareBust, text); err != nil || s.Share(worksheets.FrontShareBust) != want {
			t.Errorf("share %q reads %v, %v; want %v", text, s.Share(worksheets.FrontShareBust), err, want)
		}
	}
	for _, text := range []string{"3/2", "-1/4", "120 %", "half", "1/2 in"} {
		var s worksheets.Sheet
		if err := s.Set(worksheets.FrontShareBust, text); err == nil || s.Share(worksheets.FrontShareBust) != units.Half {
			t.Errorf("share %q reads %v, %v; want an error and one half", text, s.Share(worksheets.FrontShareBust), err)
		}
	}
}

func TestCrossingsAreAWholeNumberFromNoneToFour(t *testing.T) {
	for text, want := range map[string]int{"": 1, "0": 0, "1": 1, "2": 2, "3": 3, "4": 4} {
		var s worksheets.Sheet
		if err := s.Set(worksheets.Crossings, text); err != nil || s.Count(worksheets.Crossings) != want {
			t.Errorf("crossings %q read %d, %v; want %d", text, s.Count(worksheets.Crossings), err, want)
		}
	}
	for _, text := range []string{"5", "-1", "1.5", "one", "1 in", "99999999999999999999"} {
		var s worksheets.Sheet
		if err := s.Set(worksheets.Crossings, text); err == nil || s.Count(worksheets.Crossings) != 1 {
			t.Errorf("crossings %q read %d, %v; want an error and the usual 1", text, s.Count(worksheets.Crossings), err)
		}
	}
}

func TestAChoiceIsOneOfItsWordsOrTheFirst(t *testing.T) {
	for _, k := range worksheets.Keys() {
		if k.Kind() != worksheets.Choice {
			continue
		}
		for _, word := range k.Options() {
			var s worksheets.Sheet
			if err := s.Set(k, " "+word+" "); err != nil || s.Choice(k) != word {
				t.Errorf("%v = %q is %q, %v", k, word, s.Choice(k), err)
			}
		}
		for _, text := range []string{"", "neither", strings.ToUpper(k.Options()[1])} {
			var s worksheets.Sheet
			err := s.Set(k, text)
			want := k.Options()[0]
			if k == worksheets.SleeveMeasured || k == worksheets.BodiceMeasured { // either guess would be wrong by every allowance
				want = ""
			}
			if s.Choice(k) != want || (err == nil) != (text == "") {
				t.Errorf("%v = %q is %q, %v; want %q", k, text, s.Choice(k), err, want)
			}
		}
	}
}

func TestADayIsADayOfTheCalendar(t *testing.T) {
	for text, readable := range map[string]bool{
		"": true, "2026-10-03": true, "2028-02-29": true, "2026-02-29": false, "2026-13-01": false,
		"2026-1-3": false, "3 October": false, "03.10.2026": false, "2026-10-03T10:00:00Z": false,
	} {
		var s worksheets.Sheet
		if err := s.Set(worksheets.MeasuredOn, text); (err == nil) != readable {
			t.Errorf("day %q: %v", text, err)
		}
	}
}

func TestTheRulerIsTheOneNamedOrTheUsualOne(t *testing.T) {
	for _, c := range []struct {
		unit, text string
		want       units.Ruler
		readable   bool
	}{
		{"in", "", units.EighthInch, true}, {"cm", "", units.OneMillimetre, true},
		{"in", "1/16", units.SixteenthInch, true}, {"cm", "1/16 in", units.SixteenthInch, true},
		{"in", "5 mm", units.FiveMillimetres, true}, {"cm", "0,5", units.FiveMillimetres, true}, {"cm", "0.1", units.OneMillimetre, true},
		{"in", "1/7 in", units.EighthInch, false}, {"cm", "2 mm", units.OneMillimetre, false}, {"in", "fine", units.EighthInch, false},
	} {
		var s worksheets.Sheet
		s.Set(worksheets.Unit, c.unit)
		err := s.Set(worksheets.Ruler, c.text)
		if s.Ruler() != c.want || (err == nil) != c.readable {
			t.Errorf("ruler %q in %s is %v, %v; want %v", c.text, c.unit, s.Ruler(), err, c.want)
		}
		if want := (units.Scale{System: s.Unit(), Ruler: c.want}); s.Scale() != want {
			t.Errorf("ruler %q in %s gives the scale %v, want %v", c.text, c.unit, s.Scale(), want)
		}
	}
}

func TestWhatIsTypedIsKeptLetterByLetterReadableOrNot(t *testing.T) {
	for _, k := range worksheets.Keys() {
		for _, text := range []string{"13-3/4", "thirteen", "", "13  3/4", "½ \u202eodd\x1b[31m", `"quoted" \ 'twice'`, "ЁЖ 猫 😀", "01", "+1"} {
			s := filledSheet(t)
			s.Set(k, "\t "+text+" \n")
			if got := s.Text(k); got != text {
				t.Errorf("%v: %q was typed, %q is kept", k, text, got)
			}
		}
	}
}

func TestASheetIsAValue(t *testing.T) {
	s := filledSheet(t)
	s.Done, s.Fittings = []string{"a"}, []worksheets.Fitting{{Date: "2026-11-20", Note: "tight"}}
	other := s
	if !s.Equal(other) {
		t.Error("a copy says something else")
	}
	other.Set(worksheets.Bicep, "14")
	if s.Text(worksheets.Bicep) != "13 3/4" || s.Equal(other) {
		t.Errorf("a change of the copy reached the sheet: %q", s.Text(worksheets.Bicep))
	}
	for _, change := range []func(*worksheets.Sheet){
		func(s *worksheets.Sheet) { s.Done = []string{"b"} },
		func(s *worksheets.Sheet) { s.Fittings = nil },
		func(s *worksheets.Sheet) { *s = s.WithSize(0, worksheets.Size{}.With(worksheets.SleeveWidth, "13")) },
		func(s *worksheets.Sheet) { s.Set(worksheets.Bust, "39 1/2") }, // the same length in other words
	} {
		other := s
		if change(&other); s.Equal(other) {
			t.Errorf("two sheets count as one: %+v", other)
		}
	}
}

func TestEveryKeyIsFoundByItsPath(t *testing.T) {
	for _, k := range worksheets.Keys() {
		if found, ok := worksheets.KeyNamed(k.Path()); !ok || found != k || k.String() != k.Path() || strings.Count(k.Path(), ".") != 1 {
			t.Errorf("%q leads to %v, %v", k.Path(), found, ok)
		}
	}
	if k, ok := worksheets.KeyNamed("body.Bicep"); ok {
		t.Errorf("body.Bicep leads to %v", k)
	}
}

// How the pattern was measured is asked once: the bodice has the sleeve's answers, until
// it has its own. What cannot be read stands for nothing.
func TestTheBodiceIsMeasuredAsTheSleeve(t *testing.T) {
	var s worksheets.Sheet
	check := func(when, measured string, allowance units.Reading) {
		t.Helper()
		got, err := s.Length(worksheets.BodiceAllowance)
		if m := s.Choice(worksheets.BodiceMeasured); m != measured || got != allowance || s.Reading(worksheets.BodiceAllowance) != allowance || err != nil {
			t.Errorf("%s: measured %q, allowance %v, %v; want %q and %v", when, m, got, err, measured, allowance)
		}
	}
	check("nothing told", "", units.Reading{})
	s.Set(worksheets.SleeveMeasured, "edge")
	s.Set(worksheets.SleeveAllowance, "5/8")
	check("told of the sleeve", "edge", units.Known(units.Inch*5/8))
	s.Set(worksheets.BodiceAllowance, "0")
	check("an allowance of its own", "edge", units.Known(0))
	s.Set(worksheets.BodiceMeasured, "seam")
	check("its own answers", "seam", units.Known(0))
	if s.Set(worksheets.BodiceMeasured, "") != nil || s.Set(worksheets.BodiceAllowance, "") != nil {
		t.Error("an empty answer is no error")
	}
	s.Set(worksheets.SleeveMeasured, "edges")
	s.Set(worksheets.SleeveAllowance, "5/0")
	check("the sleeve's cannot be read", "", units.Reading{})
}

// What people are told about a key is so: its usual answer is what an empty one
// comes to, every kind says what it takes, and what it takes by way of example is read.
func TestKeysAreToldAsTheyAre(t *testing.T) {
	var empty worksheets.Sheet
	examples := map[worksheets.Kind]string{worksheets.Date: "2026-10-03", worksheets.Part: "0.55", worksheets.Count: "4", worksheets.Scale: "1/64 in", worksheets.Slid: "even"}
	for _, k := range worksheets.Keys() {
		if (k.Kind().Takes() == "") != (k.Kind() == worksheets.Choice) {
			t.Errorf("%v says nothing of what it takes", k)
		}
		sheet, usual := empty, k.Usual()
		if err := sheet.Set(k, usual); err != nil {
			t.Errorf("%v: its usual answer %q: %v", k, usual, err)
		}
		if usual != "" && (sheet.Reading(k) != empty.Reading(k) || sheet.Count(k) != empty.Count(k) || k.Kind() == worksheets.Choice && sheet.Choice(k) != empty.Choice(k) ||
			k.Kind() == worksheets.Part && sheet.Share(k) != empty.Share(k)) {
			t.Errorf("%v: %q is not what stands for an empty answer", k, usual)
		}
		if e := examples[k.Kind()]; e != "" && (!strings.Contains(k.Kind().Takes(), e) && k.Kind() != worksheets.Scale || sheet.Set(k, e) != nil) {
			t.Errorf("%v does not take %q, which is told to be taken", k, e)
		}
	}
}
