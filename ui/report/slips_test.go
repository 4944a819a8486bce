package report_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/units"
	"capscye/worksheets"
)

// Every single slip of a hand in every measurement of the examples: is it doubted, and
// is the guess what was meant?

// slipped is one slip: the answers that it makes of those that were meant.
type slipped struct {
	kind  string
	wrong map[worksheets.Key]string
}

// measured are the answers that a tape gives, and the eases.
func measured(s *worksheets.Sheet) (keys []worksheets.Key) {
	for _, k := range worksheets.Keys() {
		switch kind := k.Kind(); {
		case s.Text(k) == "" || strings.HasPrefix(k.Path(), "method.") || strings.HasPrefix(k.Path(), "pattern."): // no amount follows from a size chart
		case kind == worksheets.Girth || kind == worksheets.Amount || kind == worksheets.Signed:
			keys = append(keys, k)
		}
	}
	return keys
}

// slipsIn are the single slips that can happen to an answer.
func slipsIn(s *worksheets.Sheet, k worksheets.Key) (list []slipped) {
	text, l := s.Text(k), s.Reading(k).Length
	add := func(kind, wrong string) {
		if w, err := units.Parse(wrong, s.Unit()); err == nil && w != l {
			list = append(list, slipped{kind, map[worksheets.Key]string{k: wrong}})
		}
	}
	inches := strconv.FormatFloat(float64(l)/float64(units.Inch), 'f', -1, 64)
	if decimal := strings.NewReplacer(",", ".").Replace(text); strings.Contains(decimal, ".") {
		add("point lost", strings.Replace(decimal, ".", "", 1))
	} else if s.Unit() == units.Inches && len(inches) < 9 {
		add("point lost", strings.Replace(inches, ".", "", 1))
	}
	if s.Unit() == units.Inches {
		add("centimetres for inches", fmt.Sprintf("%.1f", float64(l.Round(units.Millimetre))/float64(units.Centimetre)))
		add("millimetres", fmt.Sprintf("%d", l.Round(units.Millimetre)/units.Millimetre))
	} else {
		add("inches for centimetres", units.Scale{System: units.Inches, Ruler: units.EighthInch}.Number(l.Round(units.EighthInch.Mark())))
		add("millimetres", fmt.Sprintf("%d", l.Round(units.Millimetre)/units.Millimetre))
	}
	for i := range text {
		if '0' <= text[i] && text[i] <= '9' {
			add("a digit doubled", text[:i+1]+text[i:])
			if i+1 < len(text) && '0' <= text[i+1] && text[i+1] <= '9' {
				add("digits swapped", text[:i]+text[i+1:i+2]+text[i:i+1]+text[i+2:])
			}
		}
	}
	if strings.HasSuffix(k.Path(), "front") || strings.HasSuffix(k.Path(), "back") {
		switch k {
		case worksheets.BodiceFront, worksheets.BodiceBack, worksheets.WaistFront, worksheets.WaistBack, worksheets.HipFront, worksheets.HipBack:
			add("whole for half", fmt.Sprintf("%d mm", 2*l/units.Millimetre))
		}
		if back, ok := worksheets.KeyNamed(strings.Replace(k.Path(), "front", "back", 1)); ok && back != k && s.Text(back) != "" && s.Reading(back).Length != l {
			switch k {
			case worksheets.BodiceFront, worksheets.WaistFront, worksheets.HipFront:
				whole := func(l units.Length) string { return fmt.Sprintf("%d mm", 2*l/units.Millimetre) }
				list = append(list, slipped{"wholes for both halves", map[worksheets.Key]string{k: whole(l), back: whole(s.Reading(back).Length)}})
			}
			list = append(list, slipped{"front for back", map[worksheets.Key]string{k: s.Text(back), back: text}})
		}
	}
	if k == worksheets.Bust && s.Text(worksheets.Bicep) != "" {
		list = append(list, slipped{"arm for bust, exchanged", map[worksheets.Key]string{k: s.Text(worksheets.Bicep), worksheets.Bicep: text}})
		add("arm for bust, twice the arm", s.Text(worksheets.Bicep))
	}
	if k == worksheets.Bicep && s.Text(worksheets.Bust) != "" {
		add("arm for bust, twice the bust", s.Text(worksheets.Bust))
	}
	return list
}

// unlike tells that a slip changes an answer by more than a quarter, or an ease by more
// than double and half. With less the wrong answer is one that another person or
// another pattern of the same trade may well have: of the 6,068 people of ANSUR II arm
// over chest lies between 0.258 and 0.423, a quarter from the middle either way. The
// border is ours.
func (w slipped) unlike(s *worksheets.Sheet) bool {
	for k, text := range w.wrong {
		wrong, _ := units.Parse(text, s.Unit())
		ratio := math.Abs(math.Log(math.Abs(float64(wrong)) / math.Abs(float64(s.Reading(k).Length))))
		most := math.Log(1.25)
		if k.Kind() == worksheets.Signed {
			most = math.Log(2)
		}
		if ratio > most || wrong < 0 != (s.Reading(k).Length < 0) {
			return true
		}
	}
	return false
}

// score counts the slips of a kind.
type score struct{ rightly, unguessed, wrongly, missed, alike int }

// least is what must be guessed rightly of the slips of a kind that can be seen, a bit
// below what was measured, in hundredths. A digit doubled in a whole number of
// centimetres may as well be a decimal without its point, which is commoner: 37 becomes
// 377, and the guess is 37.7. Where one figure stands in both places the other is gone:
// the answer is named, and no guess is made.
var least = map[string]int{
	"point lost": 95, "centimetres for inches": 92, "inches for centimetres": 65, "millimetres": 97, "a digit doubled": 72, "digits swapped": 70,
	"whole for half": 99, "wholes for both halves": 99, "arm for bust, exchanged": 99,
}

func (s score) total() int { return s.rightly + s.unguessed + s.wrongly + s.missed }

// judge counts what the program says of a sheet with a slip: the first doubt is heard.
func (s *score) judge(meant worksheets.Sheet, w slipped) {
	sheet := meant
	for k, text := range w.wrong {
		if err := sheet.Set(k, text); err != nil {
			panic(err)
		}
	}
	r := report.Reckon(&worksheets.Document{Sheet: sheet}, props.SomeDay, 0)
	for _, f := range r.Findings {
		k, _ := worksheets.KeyNamed(f.Key)
		if _, slips := w.wrong[k]; f.Key == "" || f.Code == calc.AnswerMissing {
			continue
		} else if !slips {
			s.wrongly++
			return
		}
		if f.Guess == nil {
			s.unguessed++
			return
		}
		mended := f.Guess.In(sheet)
		for k := range w.wrong {
			// Inches are typed to 1/8, centimetres to the millimetre.
			if (mended.Reading(k).Length - meant.Reading(k).Length).Abs() > units.Inch/16 {
				s.wrongly++
				return
			}
		}
		s.rightly++
		return
	}
	if !w.unlike(&meant) {
		s.alike++
		return
	}
	s.missed++
}

func TestEverySlipOfAHand(t *testing.T) {
	scores := map[string]*score{}
	var order []string
	for _, name := range worksheets.Examples() {
		d, err := worksheets.Example(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, k := range measured(&d.Sheet) {
			for _, w := range slipsIn(&d.Sheet, k) {
				if scores[w.kind] == nil {
					scores[w.kind] = &score{}
					order = append(order, w.kind)
				}
				scores[w.kind].judge(d.Sheet, w)
			}
		}
	}
	for kind := range least {
		if s := scores[kind]; s == nil || s.total() == 0 {
			t.Errorf("%s: no such slip was made", kind)
		}
	}
	t.Logf("%-30s %7s %7s %9s %7s %6s %5s", "slip", "in all", "rightly", "no guess", "wrongly", "missed", "alike")
	for _, kind := range order {
		s := scores[kind]
		t.Logf("%-30s %7d %7d %9d %7d %6d %5d", kind, s.total(), s.rightly, s.unguessed, s.wrongly, s.missed, s.alike)
		if 100*s.rightly < least[kind]*s.total() {
			t.Errorf("%s: %d of %d named rightly", kind, s.rightly, s.total())
		}
		if strings.Contains(kind, "twice") && s.unguessed != s.total() {
			t.Errorf("%s: %+v", kind, *s)
		}
	}
}
