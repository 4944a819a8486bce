package desk

import (
	"fmt"
	"strings"

	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// filled tells whether a step has its answers, or its page something to say.
func filled(s forms.Step, r report.Report) bool {
	given := func(k worksheets.Key) bool { return r.Sheet.Text(k) != "" }
	switch s {
	case forms.Body:
		return given(worksheets.Bicep) || given(worksheets.BicepOther) || given(worksheets.Bust)
	case forms.Ease: // a new sheet has the usual ease in it; that answers nothing yet
		return filled(forms.Body, r) && (r.Plan.Sleeve.Wanted().Known || r.Plan.Bust.Wanted().Known)
	case forms.Pattern:
		return r.Plan.Sleeve.Flat.Known || r.Plan.Bust.Flat.Known
	}
	return r.Plan.Sleeve.Asked() || r.Plan.Bust.Asked()
}

// tape shows the steps as lengths of a tape measure, marked in single marks:
// doubled where they are answered, in brackets where the hands are.
//
//	|==1 Body===|==2 Ease===|[3 Pattern]|--4 Split--|--5 Match--|--6 Trace--|
func tape(at forms.Step, r report.Report, st parts.Styles, width int) string {
	each := max((width-1)/int(forms.StepCount)-1, 3)
	var b strings.Builder
	b.WriteByte('|')
	for s := range forms.StepCount {
		mark := "-"
		if filled(s, r) {
			mark = "="
		}
		name := fmt.Sprintf("%d %s", s+1, forms.StepNames[s])
		if short := len(forms.StepNames[s]) - 3; len(name)+2 > each && short > 0 { // so that the marks are still seen
			name = name[:len(name)-short]
		}
		if s == at {
			name = "[" + name + "]"
		}
		name = typeset.Cut(name, each)
		left := (each - typeset.Width(name)) / 2
		segment := strings.Repeat(mark, left) + name + strings.Repeat(mark, each-left-typeset.Width(name))
		if s == at {
			segment = st.Answer.Render(segment)
		}
		b.WriteString(segment + "|")
	}
	return typeset.Cut(b.String(), width)
}
