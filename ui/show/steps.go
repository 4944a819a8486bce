package show

import (
	"strings"

	"capscye/calc"
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
var actionNames = map[calc.Action]string{
	calc.Lay: "lay", calc.Mark: "mark", calc.Pin: "pin", calc.TurnTo: "turn", calc.TraceCurve: "trace", calc.SlideOut: "slide",
	calc.Extend: "extend", calc.Taper: "taper", calc.SameAgain: "same-again", calc.LayBack: "lay-back", calc.TraceAsIs: "trace-as-is",
	calc.True: "true", calc.Leave: "leave", calc.Unreachable: "unreachable", calc.Notch: "notches", calc.CheckSeams: "check-seams",
	calc.CheckWidths: "check-widths", calc.CheckSides: "check-sides", calc.AlterToo: "alter-too", calc.TestGarment: "test-garment",
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
func ofOneSide(s calc.TraceStep) bool {
	switch s.Action {
	case calc.Lay, calc.LayBack, calc.True, calc.Leave, calc.Unreachable:
		return s.Piece != calc.SleevePiece && s.Action != calc.Leave
	}
	return s.Piece != calc.Garment
}
