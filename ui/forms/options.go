package forms

import (
	"cmp"
	"slices"
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

// Option is one answer to a choice: the word of the file, and the one that people read.
type Option struct{ Answer, Said string }

// said are the words that people read where the file has others.
var said = map[worksheets.Key]map[string]string{
	worksheets.Follow:         {"let out": "widen to match", "hold": "keep its width"},
	worksheets.SleeveMeasured: {"seam": "seam to seam", "edge": "edge to edge"},
	worksheets.BodiceMeasured: {"seam": "seam to seam", "edge": "edge to edge"},
}

// Said is the word that people read for an answer; most answers are their own.
func Said(k worksheets.Key, answer string) string { return cmp.Or(said[k][answer], answer) }

// OptionsOf are the answers that a field can be set to, and which one it has or has by
// another answer; -1 for none.
func OptionsOf(s *worksheets.Sheet, k worksheets.Key) (options []Option, now int) {
	words, current := k.Options(), s.Choice(k)
	if k.Kind() == worksheets.Scale {
		for _, r := range units.Rulers() {
			words = append(words, r.String())
		}
		current = s.Ruler().String()
	}
	for _, w := range words {
		options = append(options, Option{w, Said(k, w)})
	}
	return options, slices.Index(words, current)
}

// SaidOf are the words that people read for the options.
func SaidOf(options []Option) []string {
	words := make([]string, len(options))
	for i, o := range options {
		words[i] = o.Said
	}
	return words
}
