package report

import (
	"slices"
	"sync"
	"sync/atomic"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// Holds tells that a report is still the report of a sheet, which lies on the
// same desk, so that all else that reports are made from is the same. A finding
// that names a line of the file does not hold, for saving moves lines.
func (r Report) Holds(s *worksheets.Sheet, system units.System) bool {
	return r.steps != nil && r.Scale.System == system && r.Sheet.Equal(*s) &&
		!slices.ContainsFunc(r.Findings, func(f Finding) bool { return f.Code == ValueUnreadable || f.Code == UnknownKey })
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
	in, plan := r.Input, r.Plan
	return Derived{
		steps: sync.OnceValue(func() []calc.TraceStep {
			Made.Steps.Add(1)
			return calc.TraceSteps(in, plan)
		}),
		Sleeve: sync.OnceValue(func() calc.Drawing {
			Made.Drawings.Add(1)
			return calc.SleeveDrawing(in, plan, calc.AllAltered)
		}),
		Bodice: sync.OnceValue(func() calc.Drawing {
			Made.Drawings.Add(1)
			return calc.BodiceDrawing(in, plan, calc.Front, calc.AllAltered)
		}),
		Working: sync.OnceValue(func() []WorkedLine {
			Made.Workings.Add(1)
			return r.Worked()
		}),
	}
}

// Made counts what takes work, for the test that holds every key to doing it
// once.
var Made struct {
	Plans    atomic.Int64
	Steps    atomic.Int64 // lists of steps at the table
	Workings atomic.Int64
	Drawings atomic.Int64 // pieces as curves; fitting a curve is most of a picture
	Pictures atomic.Int64 // pieces as dots
}
