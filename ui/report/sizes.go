package report

import (
	"slices"
	"strings"

	"capscye/calc"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// SizeWords names the size in hand, "" where it has no name.
func (r Report) SizeWords() string {
	name := r.Sheet.Text(worksheets.PatternSize)
	if name == "" {
		return ""
	}
	return "Size " + SizeName(name) + "."
}

// SizeName is the name of a size, harmless to show.
func SizeName(name string) string { return typeset.Plain(name) }

// largeEnough says which measured sizes of the pattern are large enough where the one in
// hand is not; "" for none. It names all of them, for which to take is not for us to say.
func (r Report) largeEnough() string {
	var names []string
	for i, z := range r.Sheet.Sizes[:min(len(r.Sheet.Sizes), worksheets.MostSizes)] {
		alone := r.Sheet.SizeAlone(i)
		p := calc.Compute(Input(&alone, r.by.Today))
		if p.Sleeve.Asked() && p.Bust.Asked() && !slices.ContainsFunc(p.Findings, func(f calc.Finding) bool { return f.Code == calc.StartLarger }) {
			names = append(names, typeset.Plain(z.Name()))
		}
	}
	switch len(names) {
	case 0:
		return ""
	case 1:
		return " Size " + names[0] + ", which is measured, is large enough."
	}
	last := len(names) - 1
	return " Of the measured sizes " + strings.Join(names[:last], ", ") + " and " + names[last] + " are large enough."
}
