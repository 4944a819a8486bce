package report

import "time"

// Work is one thing that takes work, and is to be done once.
type Work uint8

// The things that take work.
const (
	ReckonedPlan  Work = iota
	ListedSteps        // at the table
	ListedWorking      // every line of the arithmetic
	DrewCurves         // of a piece; fitting a curve is most of a picture
	DrewPicture        // a piece in dots
)

// Reckoner makes reports on a day. Where somebody wants to know of the work that they
// and what is made from them take, Did is told, on whatever goroutine does it.
type Reckoner struct {
	Today time.Time
	Did   func(Work) // nil for nobody
	// Brief leaves out of the findings what a list of many worksheets has no room for: the
	// ways out, and of a note the sentence. Verdict and few words are the same.
	Brief bool
}

// Did tells whoever wants to know that work was done for a report.
func (r Report) Did(w Work) {
	if r.by.Did != nil {
		r.by.Did(w)
	}
}
