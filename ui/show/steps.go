package show

import (
	"strings"

	"capscye/calc/trace"
	"capscye/ui/report"
	"capscye/ui/tracing"
	"capscye/ui/wording"
)

// Step is a step at the table for other programs. The keys are a contract.
type Step struct {
	ID     string  `json:"id"`
	Piece  string  `json:"piece"`
	Side   *string `json:"side"` // null where a step is about no single side
	Action string  `json:"action"`
	Text   string  `json:"text"`
	Pivot  float64 `json:"pivot_mm"` // the marks
	Slide  float64 `json:"slide_mm"`
	Done   bool    `json:"done"`
}

// actionNames are the actions as JSON has them.
var actionNames = map[trace.Action]string{
	trace.Lay: "lay", trace.Mark: "mark", trace.Pin: "pin", trace.TurnTo: "turn", trace.TraceCurve: "trace", trace.SlideOut: "slide",
	trace.Extend: "extend", trace.Taper: "taper", trace.SameAgain: "same-again", trace.LayBack: "lay-back", trace.TraceAsIs: "trace-as-is",
	trace.True: "true", trace.Leave: "leave", trace.Unreachable: "unreachable", trace.Notch: "notches", trace.CheckSeams: "check-seams",
	trace.CheckWidths: "check-widths", trace.CheckSides: "check-sides", trace.AlterToo: "alter-too", trace.TestGarment: "test-garment",
}

// stepsOf is every step in its order; an empty array where there is nothing to do.
func stepsOf(r report.Report) []Step {
	steps := []Step{}
	for _, s := range r.TraceSteps() {
		step := Step{
			ID: s.ID(), Piece: strings.ReplaceAll(wording.PieceNames[s.Piece], " ", "_"), Action: actionNames[s.Action], Text: tracing.Sentence(s, r.Scale),
			Pivot: s.Pivot.Millimetres(), Slide: s.Slide.Millimetres(), Done: r.Done(s),
		}
		if ofOneSide(s) {
			side := Underscored(wording.SubjectWords[s.Side.Subject()])
			step.Side = &side
		}
		steps = append(steps, step)
	}
	return steps
}

// ofOneSide tells the steps that are about one side from those about a piece, or the
// garment.
func ofOneSide(s trace.Step) bool {
	switch s.Action {
	case trace.Lay, trace.LayBack, trace.True, trace.Leave, trace.Unreachable:
		return s.Piece != trace.SleevePiece && s.Action != trace.Leave
	}
	return s.Piece != trace.Garment
}
