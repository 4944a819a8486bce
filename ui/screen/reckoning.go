package screen

import (
	"slices"

	"capscye/ui/report"
	"capscye/units"
)

// Work is done once: a key that changes nothing reckons nothing, and a frame
// draws what is known already.

// reckon brings the reports of what lies on the desk up to date, all in the unit
// of the one at hand, so that they can be compared. What has not changed keeps
// its report, and what was foreseen while it was typed is there already.
func (d *desk) reckon() {
	known := append(slices.Clone(d.beside), d.rep)
	if d.preview != nil {
		known = append(known, *d.preview)
	}
	system := d.shown
	if system == 0 {
		system = d.sheet().Unit()
	}
	d.rep, d.preview, d.beside = d.reckoned(d.hand, system, known), nil, nil
	if len(d.copies) == 0 {
		return
	}
	known = append(known, d.rep)
	for n := range len(d.copies) + 1 {
		d.beside = append(d.beside, d.reckoned(n, system, known))
	}
}

// reckoned is the report of the sheet or of a copy: one of those known, if it is
// of the same answers, or a new one.
func (d *desk) reckoned(n int, system units.System, known []report.Report) report.Report {
	doc := d.document(n)
	for _, r := range known {
		if r.Holds(&doc.Sheet, system) {
			return r
		}
	}
	return report.Reckon(doc, d.today, system)
}

// foresee computes the preview of what is being typed; while that cannot be
// read, the last that could stays.
func (d *desk) foresee() {
	k, ok := d.focused()
	if !ok || !d.typing.changed() {
		d.preview = nil
		return
	}
	if sheet, err := d.typed(k); err == nil {
		typed := d.document(d.hand)
		typed.Sheet = sheet
		ahead := report.Reckon(typed, d.today, d.shown)
		d.preview = &ahead
	}
}
