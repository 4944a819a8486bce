package desk

import (
	"cmp"
	"fmt"
	"slices"

	"capscye/ui/compare"
	"capscye/ui/forms"
	"capscye/ui/picture"
	"capscye/ui/report"
	"capscye/units"
	"capscye/worksheets"
)

// reports are what follows from what lies on the desk. Work is done once: a key that
// changes nothing reckons nothing, and a frame draws what is known already.
type reports struct {
	by     report.Reckoner
	shown  units.System    // lengths are shown in it; none for the sheet's own
	Rep    report.Report   // of what is at hand
	beside []report.Report // of the sheet and every copy, while there are any

	// preview is the report with what is being typed, while that can be read.
	// Only pictures show it: what is half typed changes no answer.
	preview *report.Report
}

// bring brings the reports of what lies on the desk up to date, all in the unit
// of the one at hand, so that they can be compared. What has not changed keeps
// its report, and what was foreseen while it was typed is there already.
func (r *reports) bring(laid []*worksheets.Document, hand int) {
	known := append(slices.Clone(r.beside), r.Rep)
	if r.preview != nil {
		known = append(known, *r.preview)
	}
	system := r.shown
	if system == 0 {
		system = laid[hand].Sheet.Unit()
	}
	r.Rep, r.preview, r.beside = r.reckoned(laid[hand], system, known), nil, nil
	if len(laid) == 1 {
		return
	}
	known = append(known, r.Rep)
	for _, doc := range laid {
		r.beside = append(r.beside, r.reckoned(doc, system, known))
	}
}

// reckoned is the report of the sheet or of a copy: one of those known, if it is
// of the same answers, or a new one.
func (r *reports) reckoned(doc *worksheets.Document, system units.System, known []report.Report) report.Report {
	for _, k := range known {
		if k.Holds(doc, system) {
			return k
		}
	}
	return r.by.Reckon(doc, system)
}

// foresee computes the preview of what is being typed.
func (r *reports) foresee(typed *worksheets.Document) {
	ahead := r.by.Reckon(typed, r.shown)
	r.preview = &ahead
}

// panelPictures are the pictures beside a form, for the room that is left.
func (r *reports) panelPictures(width, height int) []string {
	if r.preview == nil {
		return picture.Both(r.Rep, "", width, height)
	}
	return picture.Both(*r.preview, " as typed", width, height)
}

// traceAt is a step number within the steps.
func (r *reports) traceAt(n int) int { return max(0, min(n, len(r.Rep.TraceSteps())-1)) }

// firstUndone is the first step that is not ticked off, or the last one.
func (r *reports) firstUndone() int {
	steps := r.Rep.TraceSteps()
	for i, s := range steps {
		if !r.Rep.Done(s) {
			return i
		}
	}
	return r.traceAt(len(steps))
}

// LaidWords names the sheet or a copy, by what was changed in it.
func (r *reports) LaidWords(n int) string {
	if n == 0 {
		return "the worksheet as it was"
	}
	return fmt.Sprintf("copy %d (%s)", n, r.changedIn(n))
}

// changedIn says what is changed in a copy: "ease at the bicep 2 in and 1 more".
func (r *reports) changedIn(n int) string {
	sheet, copied := r.beside[0], r.beside[n]
	name, more := "", 0
	for _, k := range worksheets.Keys() {
		f, ok := forms.Fields[k]
		switch {
		case !ok || sheet.Sheet.Text(k) == copied.Sheet.Text(k):
		case k == worksheets.MeasuredOn || k == worksheets.BodyFrom || k == worksheets.PatternFrom: // go with what was measured
			more++
		case name == "":
			name = f.Words + " " + cmp.Or(compare.AnswerText(copied, k), "empty")
		default:
			more++
		}
	}
	for _, words := range compare.SizeChanges(sheet, copied) {
		if name == "" {
			name = words
		} else {
			more++
		}
	}
	for _, kept := range []struct {
		what string
		same bool
	}{
		{"a note of a fitting", slices.Equal(sheet.Sheet.Fittings, copied.Sheet.Fittings)},
		{"steps ticked off", slices.Equal(sheet.Sheet.Done, copied.Sheet.Done)},
	} {
		switch {
		case kept.same:
		case name == "":
			name = kept.what
		default:
			more++
		}
	}
	switch {
	case name == "" && more == 0:
		return "nothing changed yet"
	case name == "":
		return "another day or origin"
	case more > 0:
		return fmt.Sprintf("%s and %d more", name, more)
	}
	return name
}
