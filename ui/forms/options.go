package forms

import (
	"strings"

	"capscye/units"
	"capscye/worksheets"
)

// Exactly writes a length so that it reads back as the very same: in the
// sheet's unit where it is on a mark, else in the ruler's, else in millimetres.
func Exactly(l units.Length, sc units.Scale) string {
	for _, text := range []string{sc.Number(l), sc.OnRuler(l)} {
		if !strings.HasPrefix(text, units.OffMark) {
			return text
		}
	}
	return l.String()
}

// OptionsOf are the words that a field can be set to, and which one it has or has by
// another answer; -1 for none.
func OptionsOf(s *worksheets.Sheet, k worksheets.Key) (options []string, now int) {
	options, now = k.Options(), -1
	current := ""
	if k.Kind() == worksheets.Scale {
		for _, r := range units.Rulers() {
			options = append(options, r.String())
		}
		current = s.Ruler().String()
	} else {
		current = s.Choice(k)
	}
	for i, o := range options {
		if o == current {
			now = i
		}
	}
	return options, now
}
