package report

import (
	"slices"
	"sync"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// Holds tells that a report is still the report of a sheet, which lies on the
// same desk, so that all else that reports are made from is the same. A finding
// that names a line of the file does not hold, for saving moves lines.
func (r Report) Holds(d *worksheets.Document, system units.System) bool {
	return r.steps != nil && r.Scale.System == system && r.Sheet.Equal(d.Sheet) && r.file == fileName(d) &&
		!slices.ContainsFunc(r.Findings, func(f Finding) bool { return f.Code == calc.ValueUnreadable || f.Code == calc.UnknownKey })
}

// Derived is what can be made from a report, made when it is first asked for and
// not again: a frame is drawn for every key, and most keys change nothing that
// these come from.
type Derived struct {
	steps          func() []calc.TraceStep
	Sleeve, Bodice func() calc.Drawing // altered; of the bodice the front
	Working        func() []WorkedLine
}

// Derive prepares what follows from the plan of a report.
func (r Report) Derive() Derived {
	from := &r // one copy for all four: a report is large, and a folder has many
	return Derived{
		steps: sync.OnceValue(func() []calc.TraceStep {
			from.Did(ListedSteps)
			return calc.TraceSteps(from.Input, from.Plan)
		}),
		Sleeve: sync.OnceValue(func() calc.Drawing {
			from.Did(DrewCurves)
			return calc.SleeveDrawing(from.Input, from.Plan, calc.AllAltered)
		}),
		Bodice: sync.OnceValue(func() calc.Drawing {
			from.Did(DrewCurves)
			return calc.BodiceDrawing(from.Input, from.Plan, calc.Front, calc.AllAltered)
		}),
		Working: sync.OnceValue(func() []WorkedLine {
			from.Did(ListedWorking)
			return from.Worked()
		}),
	}
}
