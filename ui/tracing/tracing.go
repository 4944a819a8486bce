// Package tracing says what to do at the table, step by step, in sentences.
package tracing

import (
	"fmt"
	"strings"

	"capscye/calc/trace"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
)

// About is the piece and the side of a step, "sleeve, front".
func About(s trace.Step) string {
	name := wording.PieceNames[s.Piece]
	switch {
	case s.Action == trace.Leave:
		return "bodice"
	case s.Piece != trace.SleevePiece || s.Action == trace.Lay || s.Action == trace.LayBack || s.Action == trace.True || s.Action == trace.Unreachable:
		return name
	}
	half := wording.SubjectWords[s.Side.Half().Subject()]
	if s.Both {
		half = "front first"
	}
	return name + ", " + half
}

// Heading is what the steps of a piece stand under; a bodice that stays is one.
func Heading(s trace.Step) string {
	if s.Action == trace.Leave {
		return typeset.Capitalised(About(s))
	}
	return typeset.Capitalised(wording.PieceNames[s.Piece])
}

// pieceParts are the words for the parts of a piece.
type pieceParts struct{ line, point, top, curve, half, end, level string }

func partsOf(s trace.Step) pieceParts {
	if s.Piece == trace.SleevePiece {
		return pieceParts{"underarm seam line", "shoulder dot", "shoulder dot, on the seam line", "cap", "half-cap", "hem", "bicep line"}
	}
	return pieceParts{"side seam line", "shoulder point", "shoulder point", "armhole", "half-armhole", "waist", "level line"}
}

// Sentence is what to do in a step, in the marks of the ruler that is held. All of it
// comes from the step, so that a step whose words change is not done any more.
func Sentence(s trace.Step, sc units.Scale) string {
	parts := partsOf(s)
	switch s.Action {
	case trace.Lay:
		return layText(s, sc)
	case trace.Mark:
		return markText(s, sc, parts.level)
	case trace.Pin:
		return "Put the pin in the " + parts.top + "."
	case trace.TurnTo:
		return turnText(s, parts)
	case trace.TraceCurve:
		return curveText(s, parts)
	case trace.SlideOut:
		return slideStepText(s, sc, parts)
	case trace.Extend:
		return extendText(s, sc)
	case trace.Taper:
		return taperText(s, sc, parts)
	case trace.SameAgain:
		return sameAgainText(s, sc, parts)
	case trace.LayBack:
		return layBack + "."
	case trace.TraceAsIs:
		return fmt.Sprintf("The %s stays as it is: trace its cap along the seam line, from the shoulder dot to the underarm point, and its underarm seam line to the hem line.",
			wording.SubjectWords[s.Side.Half().Subject()])
	case trace.Unreachable:
		return fmt.Sprintf("The %s cannot be altered so: nothing is marked, pinned or turned on it.", wording.PieceNames[s.Piece])
	case trace.True:
		return trueText(s, sc, parts)
	case trace.Leave:
		return "The bodice is already cut: leave it alone."
	}
	return garmentText(s, sc)
}

// changed is said before a step that was ticked off by other words.
const changed = "(This step has changed: do it again.)"

// Sentences are every step for the ear.
func Sentences(r report.Report) (said typeset.Speech) {
	said.SayEach(r.Verdict().Line())
	said.Say("%s", r.Name())
	said.Say("At the table, with a ruler in %s", r.Scale.Ruler)
	for _, f := range r.AgainstCutting() {
		said.SayEach(report.LevelWords[f.Level] + ": " + f.Line())
	}
	steps := r.TraceSteps()
	for i, s := range steps {
		words := ""
		switch {
		case r.Done(s):
			words = ", done"
		case r.DoneOtherwise(s):
			words = ", which has changed: do it again"
		}
		said.Say("Step %d of %d, %s%s", i+1, len(steps), About(s), words)
		said.SayEach(Sentence(s, r.Scale))
	}
	if len(steps) == 0 {
		said.Say("%s", r.NothingToTrace())
	}
	all := said.Text()
	for _, c := range wording.Cautions {
		if !strings.Contains(all, c) { // the last step has said some
			said.SayEach(c)
		}
	}
	return said
}

// Text is every step as plain text, for the command line.
func Text(r report.Report) string {
	var out typeset.Printout
	out.Hanging("", r.Verdict().Line())
	out.Hanging("", r.Name())
	out.Line("At the table, with a ruler in %s.", r.Scale.Ruler)
	for _, f := range r.AgainstCutting() {
		out.Hanging(fmt.Sprintf("  %-5s ", f.Asks()), f.Line())
	}
	steps, piece := r.TraceSteps(), trace.Piece(255)
	for i, s := range steps {
		if s.Piece != piece {
			piece = s.Piece
			out.Line("")
			out.Line("%s", Heading(s))
		}
		box := "[ ]"
		if r.Done(s) {
			box = "[x]"
		}
		text := Sentence(s, r.Scale)
		if r.DoneOtherwise(s) {
			text = changed + " " + text
		}
		out.Hanging(fmt.Sprintf("%s %2d  ", box, i+1), text)
	}
	if len(steps) == 0 {
		out.Line("")
		out.Line("%s", r.NothingToTrace())
	}
	wording.PrintCautions(&out)
	return out.Text()
}
