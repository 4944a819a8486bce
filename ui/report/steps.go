package report

import (
	"slices"

	"capscye/calc/trace"
	"capscye/worksheets"
)

// AsMarked is the report by the marks, for everything that is looked at or
// measured at the table.
func (r Report) AsMarked() Report {
	r.Plan = r.Plan.AsMarked(r.Input)
	r.Derived = r.Derive()
	return r
}

// Done tells that a step was ticked off, by the words that it has now.
func (r Report) Done(s trace.Step) bool { return slices.Contains(r.Sheet.Done, s.ID()) }

// DoneOtherwise tells that a step was ticked off by other words: with other amounts,
// or by way of other points.
func (r Report) DoneOtherwise(s trace.Step) bool {
	return !r.Done(s) && slices.ContainsFunc(r.Sheet.Done, func(id string) bool { return trace.StepName(id) == s.Name && !worksheets.OfOtherSize(id) })
}

// NothingToTrace says why there are no steps.
func (r Report) NothingToTrace() string {
	switch {
	case r.Plan.Open:
		return "No amounts yet: answers are missing."
	case r.Plan.TooFar():
		return "No steps: nobody alters a pattern so far. Check the measurements, or start from another size."
	case !r.Plan.Whole():
		return "No girth yet: measure the upper arm, the bust, or both."
	}
	return "Nothing has to be altered."
}
