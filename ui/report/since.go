package report

import (
	"cmp"
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// Measurements that come along: a sheet takes its body or its pattern from another
// one of the folder, remembers which, and says what has changed there since.

// SinceFindings say what has changed in the sheets that measurements were taken
// from. What is newer here is a note.
func (r Report) SinceFindings(origins []worksheets.Origin) (list []Finding) {
	for _, o := range origins {
		changed := o.Since(r.Sheet)
		if len(changed) == 0 || !o.IsOf(r.Sheet) {
			continue
		}
		f := Finding{Code: calc.BodyChanged, Level: calc.Warn, About: "sheet", Ways: []Way{
			{Of: "take-it-again", Words: "take what is there (w in step 5)"}, {Of: "leave-it", Words: "leave it as it is"},
		}}
		if o.Section == worksheets.PatternSection {
			f.Code = calc.PatternChanged
		}
		there, here := o.Sheet.Text(worksheets.MeasuredOn), r.Sheet.Text(worksheets.MeasuredOn)
		if o.Section == worksheets.BodySection && there < here { // days are written so that they sort
			f.Level = calc.Note
		}
		f.Text = fmt.Sprintf("The %s was taken from %s, which now says: %s.", wording.SectionWords[o.Section], typeset.Plain(o.File), r.sinceWords(o, changed))
		if o.Section == worksheets.BodySection && there != here {
			f.Text += fmt.Sprintf(" Measured there on %s, here on %s.", typeset.Plain(cmp.Or(there, "a day not given")), typeset.Plain(cmp.Or(here, "a day not given")))
		}
		list = append(list, f)
	}
	return list
}

// sinceWords lists what an origin has otherwise: "bicep 14 in (here 13 3/4 in)".
func (r Report) sinceWords(o worksheets.Origin, changed []worksheets.Key) string {
	there := Report{Sheet: o.Sheet, Scale: r.Scale}
	words := make([]string, len(changed))
	for i, k := range changed {
		words[i] = fmt.Sprintf("%s %s (here %s)", forms.Fields[k].Words, there.ValueOrDash(k), r.ValueOrDash(k))
	}
	return strings.Join(words, ", ")
}
