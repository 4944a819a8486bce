package ui

import (
	"slices"
	"sync"
	"sync/atomic"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
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
func (d *desk) reckoned(n int, system units.System, known []report) report {
	doc := d.document(n)
	for _, r := range known {
		if r.holds(&doc.Sheet, system) {
			return r
		}
	}
	return reckon(doc, d.today, system)
}

// holds tells that a report is still the report of a sheet, which lies on the
// same desk, so that all else that reports are made from is the same. A finding
// that names a line of the file does not hold, for saving moves lines.
func (r report) holds(s *worksheets.Sheet, system units.System) bool {
	return r.steps != nil && r.scale.System == system && r.sheet.Equal(*s) &&
		!slices.ContainsFunc(r.findings, func(f finding) bool { return f.code == valueUnreadable || f.code == unknownKey })
}

// foresee computes the preview of what is being typed; while that cannot be
// read, the last that could stays.
func (d *desk) foresee() {
	k, ok := d.focused()
	if !ok || d.entry.Value() == d.reached {
		d.preview = nil
		return
	}
	if sheet, err := d.typed(k); err == nil {
		typed := d.document(d.hand)
		typed.Sheet = sheet
		ahead := reckon(typed, d.today, d.shown)
		d.preview = &ahead
	}
}

// derived is what can be made from a report, made when it is first asked for and
// not again: a frame is drawn for every key, and most keys change nothing that
// these come from.
type derived struct {
	steps          func() []calc.TraceStep
	sleeve, bodice func() calc.Drawing // altered; of the bodice the front
	working        func() []workedLine
}

// derive prepares what follows from the plan of a report.
func (r report) derive() derived {
	in, plan := r.input, r.plan
	return derived{
		steps: sync.OnceValue(func() []calc.TraceStep {
			made.steps.Add(1)
			return calc.TraceSteps(in, plan)
		}),
		sleeve: sync.OnceValue(func() calc.Drawing {
			made.drawings.Add(1)
			return calc.SleeveDrawing(in, plan, calc.AllAltered)
		}),
		bodice: sync.OnceValue(func() calc.Drawing {
			made.drawings.Add(1)
			return calc.BodiceDrawing(in, plan, calc.Front, calc.AllAltered)
		}),
		working: sync.OnceValue(func() []workedLine {
			made.workings.Add(1)
			return r.worked()
		}),
	}
}

// made counts what takes work, for the test that holds every key to doing it
// once.
var made struct {
	plans    atomic.Int64
	steps    atomic.Int64 // lists of steps at the table
	workings atomic.Int64
	drawings atomic.Int64 // pieces as curves; fitting a curve is most of a picture
	pictures atomic.Int64 // pieces as dots
}
