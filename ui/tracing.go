package ui

import (
	"fmt"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/units"
)

// The work at the table in words for a person who holds pins.

// pieceNames are the pieces as the steps call them.
var pieceNames = map[calc.Piece]string{
	calc.SleevePiece: "sleeve", calc.BodiceFrontPiece: "bodice front", calc.BodiceBackPiece: "bodice back", calc.Garment: "garment",
}

// verbs are the actions in a word or two, for reading across a table.
var verbs = map[calc.Action]string{
	calc.Lay: "Lay", calc.Mark: "Mark", calc.Pin: "Pin", calc.TurnTo: "Turn", calc.TraceCurve: "Trace", calc.SlideOut: "Slide",
	calc.Extend: "Extend", calc.Taper: "Taper", calc.SameAgain: "The same again", calc.True: "True", calc.Notch: "Notches",
	calc.Leave: "Leave", calc.CheckSeams: "Check", calc.CheckSides: "Check", calc.AlterToo: "Alter too", calc.TestGarment: "Test garment",
}

// traceSteps are the steps of a report.
func (r report) traceSteps() []calc.TraceStep { return calc.TraceSteps(r.input, r.plan) }

// done tells that a step was ticked off.
func (r report) done(s calc.TraceStep) bool { return slices.Contains(r.sheet.Done, s.ID) }

// about is the piece and the side of a step, "sleeve, front".
func about(s calc.TraceStep) string {
	name := pieceNames[s.Piece]
	if s.Piece != calc.SleevePiece || s.Action == calc.Lay || s.Action == calc.True || s.Action == calc.Notch {
		return name
	}
	half := subjectWords[s.Side.Half().Subject()]
	if s.Both {
		half = "front first"
	}
	return name + ", " + half
}

// stepAmount is the amount of a step to be read across a table, or "".
func stepAmount(s calc.TraceStep, sc units.Scale) string {
	switch s.Action {
	case calc.Mark, calc.SameAgain:
		switch {
		case s.Slide == 0:
			return sc.OnRuler(s.Pivot)
		case s.Pivot == 0:
			return sc.OnRuler(s.Slide)
		}
		pivot, _, _ := strings.Cut(sc.OnRuler(s.Pivot), " "+sc.Ruler.System().String())
		return pivot + " + " + sc.OnRuler(s.Slide)
	case calc.TurnTo:
		return sc.OnRuler(s.Pivot)
	case calc.SlideOut:
		return sc.OnRuler(s.Slide)
	}
	return ""
}

// outward says which way an amount goes.
func outward(l units.Length) string {
	if l < 0 {
		return "inward"
	}
	return "outward"
}

// stepText is what to do in a step.
func stepText(s calc.TraceStep, r report) string {
	sleeve := s.Piece == calc.SleevePiece
	line, pin, curve, end, level := "side seam", "where the seam lines of shoulder and armhole cross", "armhole", "waist", "bust"
	if sleeve {
		line, pin, curve, end, level = "underarm seam", "in the shoulder dot, on the seam line", "cap", "hem", "bicep"
	}
	switch s.Action {
	case calc.Lay:
		if sleeve {
			return "Lay the sleeve pattern on fresh paper. Draw its grain line and its bicep line, past both underarm corners, and trace the shoulder dot and the hem."
		}
		return "Lay the " + pieceNames[s.Piece] + " on fresh paper. Draw a level line through the underarm corner, past it; trace the neck, the shoulder, the centre and the waist, which stay."
	case calc.Mark:
		return markText(s, r, level)
	case calc.Pin:
		return "Set the pin " + pin + ", one allowance in from the edge."
	case calc.TurnTo:
		return fmt.Sprintf("Turn the pattern about the pin, %s, until its %s line runs through the first mark, %s from the corner.",
			outward(s.Pivot), line, r.scale.OnRuler(s.Pivot.Abs()))
	case calc.TraceCurve:
		if s.Pivot == 0 {
			return fmt.Sprintf("Trace the %s as it lies, from its top to the underarm corner, and about an inch (2.5 cm) down the %s.", curve, line)
		}
		return fmt.Sprintf("Trace the %s from the pin to the underarm corner, and about an inch (2.5 cm) down the %s. Nothing below that.", curve, line)
	case calc.SlideOut:
		lead := "Take the pin out. "
		if s.Pivot == 0 {
			lead = ""
		}
		return lead + fmt.Sprintf("Move the pattern straight %s by %s, without turning it, and trace the underarm corner again; join the two with a level line.",
			outward(s.Slide), r.scale.OnRuler(s.Slide.Abs()))
	case calc.Extend:
		return "Lay the pattern back on its grain line, moved over so that the seam lies on the last mark, and trace the underarm seam down to the hem. The hem line stays where it was."
	case calc.Taper:
		return fmt.Sprintf("Put the pattern back on its old outline. Draw a straight line from the new underarm corner to the old %s corner.", end)
	case calc.SameAgain:
		return sameAgainText(s, r)
	case calc.True:
		return fmt.Sprintf("True the %s: draw it smooth through the pin and through the underarm corner, without a point or a dip.", curve)
	case calc.Notch:
		return fmt.Sprintf("Move the notches of the %s along with the line that they were on, so that they still meet those of the piece it is sewn to.", curve)
	case calc.Leave:
		return "The bodice is already cut: leave it alone."
	}
	return garmentText(s, r)
}

func markText(s calc.TraceStep, r report, level string) string {
	whose := ""
	switch {
	case s.Both && s.Piece == calc.SleevePiece:
		whose = ", on the front first"
	case s.Piece == calc.SleevePiece:
		whose = ", on the " + subjectWords[s.Side.Half().Subject()]
	}
	switch {
	case s.Slide == 0:
		return fmt.Sprintf("On the %s line mark %s %s from the underarm corner%s.", level, r.scale.OnRuler(s.Pivot.Abs()), outward(s.Pivot), whose)
	case s.Pivot == 0:
		return fmt.Sprintf("On the %s line mark the slide: %s %s from the underarm corner%s.", level, r.scale.OnRuler(s.Slide.Abs()), outward(s.Slide), whose)
	}
	return fmt.Sprintf("On the %s line mark the pivot, %s %s from the underarm corner, and from there the slide, %s %s%s.", level,
		r.scale.OnRuler(s.Pivot.Abs()), outward(s.Pivot), r.scale.OnRuler(s.Slide.Abs()), outward(s.Slide), whose)
}

func sameAgainText(s calc.TraceStep, r report) string {
	amounts := sideWords(calc.SidePlan{PivotMark: s.Pivot, SlideMark: s.Slide}, r.scale)
	if s.Piece == calc.SleevePiece {
		return "Lay the pattern back on its old outline, and do the same on the back: " + amounts + "."
	}
	return "Do the same with the bodice back: " + amounts + "."
}

// garmentText words the steps that concern more than one piece.
func garmentText(s calc.TraceStep, r report) string {
	switch s.Action {
	case calc.CheckSeams:
		seams := r.plan.Seams
		if seams.CapAfter.Known && seams.ArmholeAfter.Known {
			return fmt.Sprintf("Walk the cap along the armhole, seam line on seam line. The cap should measure %s, the armhole %s: %s to ease in.",
				r.scale.Format(seams.CapAfter.Length), r.scale.Format(seams.ArmholeAfter.Length), r.scale.Format(seams.CapEaseAfter.Length))
		}
		return "Walk the cap along the armhole, seam line on seam line: both must have changed by the same amount, front and back."
	case calc.CheckSides:
		return "Lay the underarm seam of the front on that of the back, and the side seams of the bodice too: true at the hem what differs." + growthText(r)
	case calc.AlterToo:
		return "Alter in the same way what else lies on these seams: lining, armhole facing, sleeve band or cuff. Never the undercollar."
	}
	return strings.Join(cautions[:2], " ") + " Cut and sew the test garment, wear it, and write down what it shows."
}

// growthText says how much longer the seams below the underarm should be.
func growthText(r report) string {
	text := ""
	for _, g := range []struct {
		name  string
		front calc.Side
	}{{"underarm seam", calc.SleeveFront}, {"side seam", calc.BodiceFront}} {
		f, b := r.plan.Turns[g.front].Growth, r.plan.Turns[g.front+1].Growth
		if f.Known && b.Known {
			front, back := longerWords(f, r.scale), longerWords(b, r.scale)
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

// traceText is every step as plain text, for the command line.
func traceText(r report) string {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("%s", r.name())
	line("At the table, with a ruler in %s.", r.scale.Ruler)
	for _, f := range r.findings {
		if f.level == calc.Stop || f.code == calc.AnswerMissing {
			printHanging(line, "  STOP  ", f.line())
		}
	}
	piece := calc.Piece(255)
	for i, s := range r.traceSteps() {
		if s.Piece != piece {
			piece = s.Piece
			line("")
			line("%s", capitalised(pieceNames[piece]))
		}
		box := "[ ]"
		if r.done(s) {
			box = "[x]"
		}
		printHanging(line, fmt.Sprintf("%s %2d  ", box, i+1), stepText(s, r))
	}
	if len(r.traceSteps()) == 0 {
		line("")
		line("%s", r.nothingToTrace())
	}
	line("")
	for _, c := range cautions {
		printHanging(line, "", c)
	}
	if note := offMarkNote(b.String()); note != "" {
		line("%s", note)
	}
	return b.String()
}

// nothingToTrace says why there are no steps.
func (r report) nothingToTrace() string {
	switch {
	case r.plan.Open:
		return "Nothing is planned until every answer is there."
	case !r.plan.Whole():
		return "Nothing is asked yet."
	}
	return "Nothing has to be altered."
}
