package report

import (
	"fmt"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// SizeWords names the size in hand, "" where it has no name.
func (r Report) SizeWords() string {
	name := r.Sheet.Text(worksheets.PatternSize)
	if name == "" {
		return ""
	}
	return "Size " + typeset.Plain(name) + "."
}

// widthsOfSizes are the widths that rise with the sizes; what is taken off one comes off
// before it is held against another.
var widthsOfSizes = []struct{ of, less worksheets.Key }{
	{of: worksheets.SleeveWidth}, {of: worksheets.HemWidth}, {of: worksheets.ElbowWidth},
	{worksheets.BodiceFront, worksheets.TakeOffFront}, {worksheets.BodiceBack, worksheets.TakeOffBack}, {of: worksheets.FinishedBust},
	{of: worksheets.WaistFront}, {of: worksheets.WaistBack}, {of: worksheets.HipFront}, {of: worksheets.HipBack},
}

// sizesFall doubts every width that is smaller in a larger size. Which of the two is
// wrong nothing tells.
func (r Report) sizesFall() (list []Finding) {
	if len(r.Sheet.Sizes) == 0 {
		return nil
	}
	sheets := []worksheets.Sheet{r.Sheet}
	for i := range r.Sheet.Sizes[:min(len(r.Sheet.Sizes), worksheets.MostSizes)] {
		sheets = append(sheets, r.Sheet.SizeAlone(i))
	}
	names, charts := make([]string, len(sheets)), make([]calc.Charted, len(sheets))
	for i := range sheets {
		names[i], charts[i] = sheets[i].Text(worksheets.PatternSize), calc.Charted{Bust: sheets[i].Reading(worksheets.ChartBust)}
	}
	order, ok := calc.Rising(names, charts)
	if !ok {
		return nil
	}
	for _, k := range widthsOfSizes {
		widths := make([]units.Reading, len(sheets))
		for i := range sheets {
			if widths[i] = sheets[i].Reading(k.of); k.less != 0 {
				widths[i].Length -= sheets[i].Reading(k.less).Length
			}
		}
		for _, pair := range calc.Falls(order, widths) {
			small, large := pair[0], pair[1]
			list = append(list, Finding{Code: calc.SizesFall, Level: calc.Warn, About: wording.SubjectWords[calc.OfSheet], Text: fmt.Sprintf(
				"The %s of size %s is less than that of size %s, the smaller: %s and %s; measure both again.", forms.Fields[k.of].Words,
				typeset.Plain(names[large]), typeset.Plain(names[small]), r.Scale.Number(widths[large].Length), r.Scale.Format(widths[small].Length))})
		}
	}
	return list
}
