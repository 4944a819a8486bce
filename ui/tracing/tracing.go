// Package tracing says what to do at the table, step by step, in sentences.
package tracing

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
)

// About is the piece and the side of a step, "sleeve, front".
func About(s calc.TraceStep) string {
	name := wording.PieceNames[s.Piece]
	switch {
	case s.Action == calc.Leave:
		return "bodice"
	case s.Piece != calc.SleevePiece || s.Action == calc.Lay || s.Action == calc.LayBack || s.Action == calc.True || s.Action == calc.Notch:
		return name
	}
	half := wording.SubjectWords[s.Side.Half().Subject()]
	if s.Both {
		half = "front first"
	}
	return name + ", " + half
}

// outward says which way an amount goes.
func outward(l units.Length) string {
	if l < 0 {
		return "inward"
	}
	return "outward"
}

// pieceParts are the words for the parts of a piece.
type pieceParts struct{ line, pin, top, curve, end, level string }

func partsOf(s calc.TraceStep) pieceParts {
	if s.Piece == calc.SleevePiece {
		return pieceParts{"underarm seam", "in the shoulder dot, on the seam line", "shoulder dot", "cap", "hem", "bicep line"}
	}
	return pieceParts{"side seam", "where the seam lines of shoulder and armhole cross", "shoulder", "armhole", "waist", "level line"}
}

// Sentence is what to do in a step. The amounts are the step's own; what is to be
// measured afterwards goes by the marks.
func Sentence(s calc.TraceStep, r report.Report) string {
	parts := partsOf(s)
	switch s.Action {
	case calc.Lay:
		if s.Piece == calc.SleevePiece {
			return "Lay the sleeve pattern on fresh paper. Draw its grain line and its bicep line, past both underarm corners, and trace the shoulder dot and the hem."
		}
		return "Lay the " + wording.PieceNames[s.Piece] + " on fresh paper. Draw a level line through the underarm corner, past it; trace the neck, the shoulder, the centre and the waist, which stay."
	case calc.Mark:
		return markText(s, r, parts.level)
	case calc.Pin:
		return "Set the pin " + parts.pin + ", one allowance in from the edge."
	case calc.TurnTo:
		return turnText(s, r, parts)
	case calc.TraceCurve:
		return curveText(s, r, parts)
	case calc.SlideOut:
		return slideStepText(s, r, parts)
	case calc.Extend:
		return "Lay the pattern on its grain line again, moved over so that its seam line lies on the last mark, and trace the underarm seam from there to the hem. The hem line stays where it was."
	case calc.Taper:
		return fmt.Sprintf("Put the pattern back on its old outline. Draw a straight line from the new underarm corner to the old %s corner.", parts.end) + bindsText(s, r)
	case calc.SameAgain:
		return sameAgainText(s, r)
	case calc.LayBack:
		return "Lay the pattern back on its old outline, grain line on grain line."
	case calc.TraceAsIs:
		return fmt.Sprintf("The %s stays as it is: trace its cap, shoulder dot to underarm, and its underarm seam to the hem.", wording.SubjectWords[s.Side.Half().Subject()])
	case calc.True:
		return fmt.Sprintf("True the %s: draw it smooth through the %s and through the underarm corner, without a point or a dip.", parts.curve, parts.top)
	case calc.Notch:
		return fmt.Sprintf("Lay the %s on the seam that it is sewn to: the notches must meet. Move what has drifted along the seam line.", parts.curve)
	case calc.Leave:
		return "The bodice is already cut: leave it alone."
	}
	return garmentText(s, r.AsMarked())
}

// turnText: inward, the corner comes to lie below the mark, and it is the line
// of the seam, drawn on upward, that meets it.
func turnText(s calc.TraceStep, r report.Report, parts pieceParts) string {
	mark := "the mark"
	if s.Slide != 0 {
		mark = "the first mark"
	}
	if s.Pivot < 0 {
		return fmt.Sprintf("Draw the %s line on the pattern a little past the corner, upward. Turn the pattern about the pin, inward, until that line runs through %s, %s from the corner.",
			parts.line, mark, r.Scale.OnRuler(-s.Pivot))
	}
	return fmt.Sprintf("Turn the pattern about the pin, outward, until its %s line runs through %s, %s from the corner.", parts.line, mark, r.Scale.OnRuler(s.Pivot))
}

func curveText(s calc.TraceStep, r report.Report, parts pieceParts) string {
	switch {
	case s.Pivot == 0:
		return fmt.Sprintf("Trace the %s as it lies, with its notches, from the %s to the underarm corner. Nothing below that.", parts.curve, parts.top)
	case s.Slide != 0:
		return fmt.Sprintf("Trace the %s, with its notches, from the pin to the underarm corner. Nothing below that.", parts.curve)
	}
	return fmt.Sprintf("Trace the %s, with its notches, from the pin to the underarm corner, and about an inch (2.5 cm) of the %s, as far as the mark at least.", parts.curve, parts.line)
}

func slideStepText(s calc.TraceStep, r report.Report, parts pieceParts) string {
	lead := "Take the pin out. "
	if s.Pivot == 0 {
		lead = ""
	}
	return lead + fmt.Sprintf("Move the pattern straight %s by %s, without turning it. Trace the underarm corner and about an inch (2.5 cm) of the %s, "+
		"as far as the last mark at least, and join the two corners with a level line.", outward(s.Slide), r.Scale.OnRuler(s.Slide.Abs()), parts.line)
}

// bindsText qualifies a taper that would be too tight on its way.
func bindsText(s calc.TraceStep, r report.Report) string {
	of := calc.OfBust
	if s.Piece == calc.SleevePiece {
		of = calc.OfSleeve
	}
	text := ""
	for _, f := range r.Plan.Findings {
		if f.Code == calc.BindsBelow && f.About == of {
			text += fmt.Sprintf(" But the %s would bind: there the line must lie %s further out.", wording.PlaceWords[f.At], r.Scale.Format(f.Other))
		}
	}
	return text
}

func markText(s calc.TraceStep, r report.Report, level string) string {
	whose := ""
	switch {
	case s.Both && s.Piece == calc.SleevePiece:
		whose = ", on the front first"
	case s.Piece == calc.SleevePiece:
		whose = ", on the " + wording.SubjectWords[s.Side.Half().Subject()]
	}
	prick := ""
	if s.Pivot < 0 || s.Slide < 0 {
		prick = " An inward mark lies under the pattern: prick it through."
	}
	switch {
	case s.Slide == 0:
		return fmt.Sprintf("On the %s mark %s %s from the underarm corner%s.", level, r.Scale.OnRuler(s.Pivot.Abs()), outward(s.Pivot), whose) + prick
	case s.Pivot == 0:
		return fmt.Sprintf("On the %s mark the slide: %s %s from the underarm corner%s.", level, r.Scale.OnRuler(s.Slide.Abs()), outward(s.Slide), whose) + prick
	}
	return fmt.Sprintf("On the %s mark the pivot, %s %s from the underarm corner, and from there the slide, %s %s%s.", level,
		r.Scale.OnRuler(s.Pivot.Abs()), outward(s.Pivot), r.Scale.OnRuler(s.Slide.Abs()), outward(s.Slide), whose) + prick
}

func sameAgainText(s calc.TraceStep, r report.Report) string {
	amounts := report.SideWords(calc.SidePlan{PivotMark: s.Pivot, SlideMark: s.Slide}, r.Scale)
	if s.Piece == calc.SleevePiece {
		return "Lay the pattern back on its old outline, and do the same on the back: " + amounts + "."
	}
	return "Do the same with the bodice back: " + amounts + "."
}

// garmentText words the steps that concern more than one piece; r goes by the
// marks.
func garmentText(s calc.TraceStep, r report.Report) string {
	seams, kept := r.Plan.Seams, r.Input.Method.Armhole == calc.KeepArmhole
	changed := func(front calc.Side) bool { return r.Plan.Sides[front].Total != 0 || r.Plan.Sides[front+1].Total != 0 }
	switch s.Action {
	case calc.CheckSeams:
		text := "Walk the cap along the armhole, seam line on seam line"
		switch {
		case seams.CapEaseAfter.Known:
			return text + fmt.Sprintf(". The cap should measure %s, the armhole %s: %s to ease in.", r.Scale.Format(seams.CapAfter.Length),
				r.Scale.Format(seams.ArmholeAfter.Length), r.Scale.Format(seams.CapEaseAfter.Length))
		case kept:
			return text + ": it must still go in."
		}
		return text + ": both must have changed by the same amount, front and back."
	case calc.CheckSides:
		return "Lay the underarm seam of the front on that of the back, and the side seams of the bodice too: true at the lower end what differs." + growthText(r)
	case calc.AlterToo:
		var also []string
		if changed(calc.SleeveFront) {
			also = append(also, "the lining of the sleeve")
			if !r.Input.Sleeve.Long {
				also = append(also, "its band or hem facing")
			}
		}
		if changed(calc.BodiceFront) {
			also = append(also, "the lining of the bodice", "the armhole facing")
		}
		return "Alter in the same way what lies on the same seams: " + strings.Join(also, ", ") + ". Never the undercollar."
	}
	return strings.Join(wording.Cautions[:2], " ") + " Cut and sew the test garment, wear it, and write down what it shows (n in step 6)."
}

// growthText says how much longer the seams below the underarm should be.
func growthText(r report.Report) string {
	text := ""
	for _, g := range []struct {
		name  string
		front calc.Side
	}{{"underarm seam", calc.SleeveFront}, {"side seam", calc.BodiceFront}} {
		f, b := r.Plan.Turns[g.front].Growth, r.Plan.Turns[g.front+1].Growth
		if f.Known && b.Known {
			front, back := longerWords(f, r.Scale), longerWords(b, r.Scale)
			if front == back {
				text += fmt.Sprintf(" Each %s %s.", g.name, front)
			} else {
				text += fmt.Sprintf(" The %s of the front %s, that of the back %s.", g.name, front, back)
			}
		}
	}
	return text
}

// longerWords says how a length changes.
func longerWords(change calc.Approx, sc units.Scale) string {
	l := change.Length().Length
	switch shown := sc.Format(l.Abs()); {
	case !strings.ContainsAny(shown, "123456789"):
		return "stays as long as it is"
	case l < 0:
		return "gets " + shown + " shorter"
	default:
		return "gets " + shown + " longer"
	}
}

// Text is every step as plain text, for the command line.
func Text(r report.Report) string {
	var out typeset.Printout
	out.Line("%s", r.Name())
	out.Line("At the table, with a ruler in %s.", r.Scale.Ruler)
	for _, f := range r.AgainstCutting() {
		out.Hanging(fmt.Sprintf("  %-5s ", f.Level), f.Line())
	}
	steps, piece := r.TraceSteps(), calc.Piece(255)
	for i, s := range steps {
		if s.Piece != piece {
			piece = s.Piece
			out.Line("")
			name := wording.PieceNames[piece]
			if s.Action == calc.Leave {
				name = "bodice"
			}
			out.Line("%s", typeset.Capitalised(name))
		}
		box := "[ ]"
		if r.Done(s) {
			box = "[x]"
		}
		text := Sentence(s, r)
		if r.DoneOtherwise(s) {
			text = "(Done with other amounts: do it again.) " + text
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
