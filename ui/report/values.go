package report

import (
	"cmp"
	"fmt"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// Value is what an answer comes to, the usual one where it is left to that; ""
// where there is none.
func (r Report) Value(k worksheets.Key) string {
	s := &r.Sheet
	text := s.Text(k)
	switch l := s.Reading(k); {
	case forms.KindOf(k) == forms.ChoiceField:
		if options, now := forms.OptionsOf(s, k); now >= 0 {
			return options[now].Said
		}
		return ""
	case forms.KindOf(k) == forms.SlideField:
		return r.SlideRule()
	case l.Known:
		return r.Scale.Format(l.Length)
	case text == "" && k.Kind() == worksheets.Part:
		return units.Half.String()
	case text == "" && k.Kind() == worksheets.Count:
		return fmt.Sprint(s.Count(k))
	}
	return typeset.Plain(text)
}

// ValueOrDash is [Report.Value], a dash where there is none.
func (r Report) ValueOrDash(k worksheets.Key) string { return cmp.Or(r.Value(k), "-") }

// Hint says how to measure or choose, how much ease is usual, and what a limit costs.
func (r Report) Hint(k worksheets.Key) string {
	text := forms.Fields[k].Hint
	if usual := r.UsualEase(k); usual != "" {
		text += " " + typeset.Capitalised(usual) + "."
	}
	return text + r.costOfLimit(k)
}

// UsualEase is the span of all that is said of the ease at a place, "" for what is no ease.
func (r Report) UsualEase(k worksheets.Key) string {
	if _, ok := forms.PlaceOf[k]; !ok {
		return ""
	}
	return "usual " + r.easeSpan(k)
}

// easeSpan is that span alone.
func (r *Report) easeSpan(k worksheets.Key) string {
	low, high := calc.EaseSpan(forms.PlaceOf[k], r.Input.Fabric)
	return wording.Usual(low, high, r.Scale)
}

// Sources are who says which ease, for whoever asks.
func (r Report) Sources(k worksheets.Key) []string {
	place, ok := forms.PlaceOf[k]
	if !ok {
		return nil
	}
	var list []string
	for _, u := range calc.UsualEase(place, r.Input.Fabric) {
		list = append(list, typeset.Capitalised(u.Source)+": "+wording.Usual(u.Low, u.High, r.Scale)+".")
	}
	return list
}

// ScaleWords says how lengths are shown.
func (r Report) ScaleWords() string {
	return fmt.Sprintf("Lengths in %s; amounts to mark for a ruler in %s.", wording.UnitWords(r.Scale.System), r.Scale.Ruler)
}
