package report

import (
	"slices"
	"sync"

	"capscye/calc"
	"capscye/calc/trace"
	"capscye/units"
	"capscye/worksheets"
)

// Holds tells that a report is still the report of a sheet, which lies on the
// same desk, so that all else that reports are made from is the same. A finding
// that names a line of the file does not hold, for saving moves lines.
func (r Report) Holds(d *worksheets.Document, system units.System) bool {
	return r.made != nil && r.Scale.System == system && r.Sheet.Equal(d.Sheet) && r.file == fileName(d) &&
		!slices.ContainsFunc(r.Findings, func(f Finding) bool { return f.Code == calc.ValueUnreadable || f.Code == calc.UnknownKey })
}

// Derived is what can be made from a report, made when it is first asked for and
// not again: a frame is drawn for every key, and most keys change nothing that
// these come from. Copies of a report share it.
type Derived struct{ made *made }

// made holds what was made. A folder has many reports of which none of it is asked, so
// it is small and knows of no report until it is.
type made struct {
	steps          once[[]trace.Step]
	sleeve, bodice once[trace.Drawing]
	working        once[[]WorkedLine]
}

// Derive prepares what follows from the plan of a report.
func (r Report) Derive() Derived { return Derived{new(made)} }

// TraceSteps are the steps at the table.
func (r Report) TraceSteps() []trace.Step {
	return r.made.steps.get(func() []trace.Step {
		r.Did(ListedSteps)
		return trace.Steps(r.Input, r.Plan)
	})
}

// Sleeve is the sleeve altered.
func (r Report) Sleeve() trace.Drawing {
	return r.made.sleeve.get(func() trace.Drawing {
		r.Did(DrewCurves)
		return trace.SleeveDrawing(r.Input, r.Plan, trace.AllAltered)
	})
}

// Bodice is the front of the bodice altered.
func (r Report) Bodice() trace.Drawing {
	return r.made.bodice.get(func() trace.Drawing {
		r.Did(DrewCurves)
		return trace.BodiceDrawing(r.Input, r.Plan, calc.Front, trace.AllAltered)
	})
}

// Working is every line of the working.
func (r Report) Working() []WorkedLine {
	return r.made.working.get(func() []WorkedLine {
		r.Did(ListedWorking)
		return r.Worked()
	})
}

// once is a value that is made when it is first asked for.
type once[T any] struct {
	sync.Once
	value T
}

func (o *once[T]) get(make func() T) T {
	o.Do(func() { o.value = make() })
	return o.value
}
