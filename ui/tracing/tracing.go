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
	case s.Piece != calc.SleevePiece || s.Action == calc.Lay || s.Action == calc.LayBack || s.Action == calc.True || s.Action == calc.Unreachable:
		return name
	}
	half := wording.SubjectWords[s.Side.Half().Subject()]
	if s.Both {
		half = "front first"
	}
	return name + ", " + half
}

// pieceParts are the words for the parts of a piece.
type pieceParts struct{ line, point, top, curve, half, end, level string }

func partsOf(s calc.TraceStep) pieceParts {
	if s.Piece == calc.SleevePiece {
		return pieceParts{"underarm seam line", "shoulder dot", "shoulder dot, on the seam line", "cap", "half-cap", "hem", "bicep line"}
	}
	return pieceParts{"side seam line", "shoulder point", "shoulder point", "armhole", "half-armhole", "waist", "level line"}
}

// Sentence is what to do in a step, in the marks of the ruler that is held. All of it
// comes from the step, so that a step whose words change is not done any more.
func Sentence(s calc.TraceStep, sc units.Scale) string {
	parts := partsOf(s)
	switch s.Action {
	case calc.Lay:
		return layText(s, sc)
	case calc.Mark:
		return markText(s, sc, parts.level)
	case calc.Pin:
		return "Put the pin in the " + parts.top + "."
	case calc.TurnTo:
		return turnText(s, parts)
	case calc.TraceCurve:
		return curveText(s, parts)
	case calc.SlideOut:
		return slideStepText(s, sc, parts)
	case calc.Extend:
		return extendText(s, sc)
	case calc.Taper:
		return taperText(s, sc, parts)
	case calc.SameAgain:
		return sameAgainText(s, sc, parts)
	case calc.LayBack:
		return layBack + "."
	case calc.TraceAsIs:
		return fmt.Sprintf("The %s stays as it is: trace its cap along the seam line, from the shoulder dot to the underarm point, and its underarm seam line to the hem line.",
			wording.SubjectWords[s.Side.Half().Subject()])
	case calc.Unreachable:
		return fmt.Sprintf("The %s cannot be altered so: nothing is marked, pinned or turned on it.", wording.PieceNames[s.Piece])
	case calc.True:
		return trueText(s, sc, parts)
	case calc.Leave:
		return "The bodice is already cut: leave it alone."
	}
	return garmentText(s, sc)
}

// layBack is how a pattern comes back to where it lay: no old outline is traced.
const layBack = "Lay the pattern back, grain line on grain line and dot on dot"

// layText marks the points that all the rest is measured from, and says by which
// edge: the seam lines, or as well the cut edges.
func layText(s calc.TraceStep, sc units.Scale) string {
	in := "one seam allowance"
	if s.Allowance.Known {
		in = sc.Format(s.Allowance.Length)
	}
	text := ""
	if s.Piece == calc.SleevePiece {
		text = "Lay the sleeve pattern on fresh paper. Mark both underarm points, where the seam lines of cap and underarm seam cross, " + in + " from both edges. " +
			"Draw the grain line, and the bicep line through both underarm points and well past them. Trace the shoulder dot and the hem line, from corner to corner."
	} else {
		outline := []string{"the neck", "the shoulder", "the centre", "the side seam line"}
		switch s.Dart {
		case calc.AnyDart:
			outline = append(outline, "any dart")
		case calc.SideDart, calc.WaistDart, calc.ShoulderDart, calc.ArmholeDart:
			outline = append(outline, "the dart")
		}
		end := "the waist"
		if s.Hip {
			end = "the hem"
		}
		text = fmt.Sprintf("Lay the %s on fresh paper. Mark the shoulder point, where the seam lines of shoulder and armhole cross, and the underarm point, "+
			"where those of armhole and side seam cross, each %s from both edges. Draw a level line through the underarm point and well past it, square to the centre. "+
			"Trace %s and %s: the old outline.", wording.PieceNames[s.Piece], in, strings.Join(outline, ", "), end)
		if s.LineDown.Known {
			text += fmt.Sprintf(" Draw the bust line, level, %s below the underarm point along the side seam line.", sc.Format(s.LineDown.Length))
		}
	}
	return text
}

// way is the direction of an amount.
func way(l units.Length) string {
	if l < 0 {
		return "inward"
	}
	return "out"
}

func markText(s calc.TraceStep, sc units.Scale, level string) string {
	text := "On the " + level + ", mark"
	if s.Piece == calc.SleevePiece {
		text = typeset.Capitalised(wording.SubjectWords[s.Side.Half().Subject()]) + ": on the " + level + ", mark"
	}
	first := func(name string, l units.Length) string {
		return fmt.Sprintf(" the %s %s %s from the underarm point", name, sc.OnRuler(l.Abs()), way(l))
	}
	switch {
	case s.Slide == 0:
		text += first("pivot", s.Pivot) + "."
	case s.Pivot == 0:
		text += first("slide", s.Slide) + "."
	default:
		beyond := "beyond it"
		if (s.Pivot < 0) != (s.Slide < 0) {
			beyond = "back from it"
		}
		text += fmt.Sprintf("%s and the slide %s %s.", first("pivot", s.Pivot), sc.OnRuler(s.Slide.Abs()), beyond)
	}
	if s.Via && s.LineOut != 0 {
		text += fmt.Sprintf(" On the bust line, mark %s %s from the old side seam line: the bust-line mark.", sc.OnRuler(s.LineOut.Abs()), way(s.LineOut))
	}
	if s.Pivot < 0 || s.Slide < 0 {
		text += " An inward mark lies under the pattern: prick it through."
	}
	return text
}

// marks are the names of the first and the last mark on the level.
func marks(s calc.TraceStep) (first, last string) {
	if s.Pivot != 0 && s.Slide != 0 {
		return "first mark", "last mark"
	}
	return "mark", "mark"
}

// turnText: outward the seam line comes to the mark; inward the underarm point comes
// straight below it, for the seam line would leave the piece narrower than asked.
func turnText(s calc.TraceStep, parts pieceParts) string {
	first, _ := marks(s)
	if s.Pivot < 0 {
		return fmt.Sprintf("Pivot: turn the pattern about the pin, inward, until its underarm point lies straight below the %s, square to the %s.", first, parts.level)
	}
	return fmt.Sprintf("Pivot: turn the pattern about the pin, outward, until its %s passes through the %s.", parts.line, first)
}

func curveText(s calc.TraceStep, parts pieceParts) string {
	text := fmt.Sprintf("Trace the %s along its seam line, with its notches, from the %s to the underarm point", parts.curve, parts.point)
	if s.Pivot > 0 && s.Slide == 0 && !s.FromCorner {
		return text + fmt.Sprintf(", and on down the %s to the mark.", parts.line)
	}
	return text + ". Stop there."
}

func slideStepText(s calc.TraceStep, sc units.Scale, parts pieceParts) string {
	text := ""
	if s.Pivot != 0 {
		text = "Take the pin out. "
	}
	direction := "out"
	if s.Slide < 0 {
		direction = "in"
	}
	_, last := marks(s)
	reaches := "underarm point lies on the " + last
	switch {
	case s.Pivot > 0:
		reaches = parts.line + " passes through the " + last
	case s.Pivot < 0:
		reaches = "underarm point lies straight below the " + last
	}
	text += fmt.Sprintf("Slide the pattern straight %s by %s, without turning it, until its %s. Mark its underarm point there", direction, sc.OnRuler(s.Slide.Abs()), reaches)
	trace := fmt.Sprintf("trace the %s from it to the %s", parts.line, last)
	const join = "join the two underarm points with a level line"
	traced := s.Pivot > 0 && !s.FromCorner
	switch {
	case s.Slide > 0 && traced:
		return text + ", " + trace + ", and " + join + "."
	case s.Slide > 0:
		return text + ", and " + join + "."
	case traced:
		text += ", and " + trace
	}
	length := ""
	if s.Curve.Known {
		length = sc.Format(s.Curve.Length) + " long, "
	}
	return text + fmt.Sprintf(". Draw the end of the %s anew: leave the traced curve where a straight line from it to the new underarm point makes the %s %s%s shorter than it was.",
		parts.curve, parts.half, length, sc.OnRuler(-s.Slide))
}

// extendText moves the old seam of a short sleeve out by all that the side gains.
func extendText(s calc.TraceStep, sc units.Scale) string {
	total := s.Pivot + s.Slide
	direction := "out"
	if total < 0 {
		direction = "in"
	}
	moved := ""
	if total != 0 {
		moved = fmt.Sprintf(", then move it straight %s by %s", direction, sc.OnRuler(total.Abs()))
	}
	if s.Pivot < 0 {
		return layBack + moved + ". Mark its hem corner on the hem line. In a second colour, draw a straight line from the new underarm point to that hem corner."
	}
	if moved != "" {
		_, last := marks(s)
		moved += ", until its underarm point lies on the " + last
	}
	return layBack + moved + ". Trace the underarm seam line from there to the hem line."
}

// taperText draws the new seam back to the old end, through the points where the
// garment has its full width, and out to those where it would bind.
func taperText(s calc.TraceStep, sc units.Scale, parts pieceParts) string {
	_, last := marks(s)
	from := "the " + last
	if s.FromCorner || s.Pivot < 0 {
		from = "the new underarm point"
	}
	var by []string
	bends := []string{}
	if s.AtMark {
		bends = append(bends, "the "+last)
	}
	if s.Via && s.LineOut != 0 {
		mark := "the bust-line mark"
		if s.IfBelow {
			mark += ", if that lies below it"
		}
		by = append(by, mark)
	} else if s.Via {
		by = append(by, "the old side seam line at the bust line")
	}
	if s.AtLineBends {
		bends = append(bends, "the bust-line mark")
	}
	if s.Elbow {
		where := "at the elbow, where its width was measured"
		if s.ElbowDown.Known {
			where = sc.Format(s.ElbowDown.Length) + " down it from the old underarm point (the elbow)"
		}
		by = append(by, fmt.Sprintf("a point %s %s from the old %s, %s", sc.OnRuler(s.ElbowOut.Abs()), way(s.ElbowOut), parts.line, where))
	}
	end := fmt.Sprintf("the old %s corner", parts.end)
	if s.EndOut != 0 {
		end = fmt.Sprintf("a point %s out from the old %s corner", sc.OnRuler(s.EndOut), parts.end)
	}
	text := ""
	if s.Dart == calc.SideDart {
		text = "Fold the traced dart shut. "
	}
	if len(by) == 0 {
		text += fmt.Sprintf("In a second colour, draw a straight line from %s to %s.", from, end)
	} else {
		text += fmt.Sprintf("In a second colour, draw straight lines from %s to %s, then to %s.", from, strings.Join(by, ", then to "), end)
	}
	text += hipText(s, sc)
	if len(bends) > 0 {
		text += fmt.Sprintf(" Smooth the bend at %s over about 2 in (5 cm) each way, on the outside, so that no width is lost.", strings.Join(bends, " and at "))
	}
	if s.Dart == calc.SideDart {
		text += " Open the dart and draw its legs on to the new side seam line."
	}
	return text
}

// hipText goes on below the waist of a piece that reaches the hip.
func hipText(s calc.TraceStep, sc units.Scale) string {
	switch {
	case !s.Hip:
		return ""
	case s.HipOut != 0:
		return fmt.Sprintf(" Then draw on to a point %s out from the old side seam line at the hip line, and from there to the hem, %s outside the old side seam line.",
			sc.OnRuler(s.HipOut), sc.OnRuler(s.HipOut))
	case s.EndOut != 0:
		return " Then draw on to the old side seam line at the hip line, and follow it to the hem."
	}
	return " From there follow the old side seam line to the hem."
}

func sameAgainText(s calc.TraceStep, sc units.Scale, parts pieceParts) string {
	amounts := report.SideWords(calc.SidePlan{PivotMark: s.Pivot, SlideMark: s.Slide}, sc)
	text := "Do the same with the bodice back: " + amounts + "."
	if s.Piece == calc.SleevePiece {
		text = layBack + ". Do the same on the back: " + amounts + "."
	}
	if s.Curve.Known {
		text += fmt.Sprintf(" The %s of the back is then %s long.", parts.half, sc.Format(s.Curve.Length))
	}
	return text
}

func trueText(s calc.TraceStep, sc units.Scale, parts pieceParts) string {
	if s.Piece != calc.SleevePiece {
		fold := ""
		if s.Dart == calc.ArmholeDart {
			fold = "Fold the dart shut. "
		}
		return fold + "Smooth the armhole through the shoulder point and the underarm point, without a point or a dip."
	}
	text := "Smooth the cap through the shoulder dot and both underarm points, without a point or a dip."
	if !s.Straight {
		return text
	}
	text += " Draw the hem line from seam to seam"
	switch {
	case s.Hem.Known:
		text += ": the hem is now " + sc.Format(s.Hem.Length) + " wide"
	case s.HemWiden > 0:
		text += ": the hem is now " + sc.Format(s.HemWiden) + " wider than it was"
	case s.HemWiden < 0:
		text += ": the hem is now " + sc.Format(-s.HemWiden) + " narrower than it was"
	}
	return text + "."
}

// garmentText words the steps that concern more than one piece.
func garmentText(s calc.TraceStep, sc units.Scale) string {
	switch s.Action {
	case calc.Notch:
		return "Match the notches once, now: lay the cap on the armhole, seam line on seam line, from the underarm up, front and back. " +
			"Move each notch of the sleeve to that of the armhole (one in front, two in the back); the ease stays above them."
	case calc.CheckSeams:
		text := "Walk the cap along the armhole, seam line on seam line"
		switch {
		case s.CapEase.Known:
			return text + fmt.Sprintf(". The cap should measure %s, the armhole %s: %s to ease in.", sc.Format(s.Cap.Length), sc.Format(s.Armhole.Length), sc.Format(s.CapEase.Length))
		case s.Kept:
			return text + ": it must still go in."
		}
		return text + ": both must have changed by the same amount, front and back."
	case calc.CheckWidths:
		return widthsText(s, sc)
	case calc.CheckSides:
		return "Lay front and back together along the underarm seam, then along the side seam; if their lengths differ, true the lower ends." + growthText(s, sc)
	case calc.AlterToo:
		var also []string
		if s.OfSleeve {
			also = append(also, "the lining of the sleeve")
			if s.Straight {
				also = append(also, "its band or hem facing")
			}
		}
		if s.OfBodice {
			also = append(also, "the lining of the bodice", "the armhole facing")
		}
		return "Alter the pieces on the same seams too: " + strings.Join(also, ", ") + "."
	}
	in := "your seam allowances"
	if s.Allowance.Known {
		in = "the seam allowance, " + sc.Format(s.Allowance.Length) + ","
	}
	if s.Allowance.Known && s.Allowance.Length == 0 {
		in = "seam allowances"
	}
	return "The new lines are seam lines: add " + in + " before you cut. " + strings.Join(wording.Cautions[:2], " ") + " Cut and sew the test garment, wear it, and write down what it shows."
}

// widthsText says what a tape finds on the new outlines.
func widthsText(s calc.TraceStep, sc units.Scale) string {
	text := "Measure from seam line to seam line."
	if s.Sleeve.Known {
		at := "along the bicep line"
		if s.LowSleeve {
			at = "along the bicep line, where a side came in at its new underarm point"
		}
		text += fmt.Sprintf(" The sleeve, %s: %s around.", at, sc.Format(s.Sleeve.Length))
	}
	if s.Bust.Known {
		at := "along the level line"
		switch {
		case s.LineDown.Known && s.LowBust:
			at = "at the bust line, where a side came in at its new underarm point"
		case s.LineDown.Known:
			at = "at the bust line"
		case s.LowBust:
			at = "along the level line, where a side came in at its new underarm point"
		}
		text += fmt.Sprintf(" The bodice, %s, less darts: %s around.", at, sc.Format(s.Bust.Length))
	}
	return text
}

// growthText says how much longer the seams below the underarm should be.
func growthText(s calc.TraceStep, sc units.Scale) string {
	text := ""
	for _, g := range []struct {
		name  string
		front calc.Side
	}{{"underarm seam", calc.SleeveFront}, {"side seam", calc.BodiceFront}} {
		f, b := s.Growths[g.front], s.Growths[g.front+1]
		if f.Known && b.Known {
			front, back := longerWords(f.Length, sc), longerWords(b.Length, sc)
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
func longerWords(l units.Length, sc units.Scale) string {
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
		text := Sentence(s, r.Scale)
		if r.DoneOtherwise(s) {
			text = "(This step has changed: do it again.) " + text
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
