package tracing

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/calc/trace"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
)

// The words for one side of a piece, from laying the pattern down to drawing the new
// seam.

// layBack is how a pattern comes back to where it lay: no old outline is traced.
const layBack = "Lay the pattern back, grain line on grain line and dot on dot"

// layText marks the points that all the rest is measured from, and says by which
// edge: the seam lines, or as well the cut edges.
func layText(s trace.Step, sc units.Scale) string {
	in := "one seam allowance"
	if s.Allowance.Known {
		in = wording.MarkedOff(s.Allowance.Length, sc)
	}
	text := ""
	if s.Piece == trace.SleevePiece {
		seams := "" // no old outline is needed, but where a point is marked out from one
		if s.Elbow {
			seams = ", both underarm seam lines"
		}
		text = "Lay the sleeve pattern on fresh paper. Mark both underarm points, where the seam lines of cap and underarm seam cross, " + in + " from both edges. " +
			"Draw the grain line, and the bicep line through both underarm points and well past them. Trace the shoulder dot" + seams + " and the hem line, from seam line to seam line."
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
			text += fmt.Sprintf(" Draw the bust line, level, %s below the underarm point along the side seam line.", wording.MarkedOff(s.LineDown.Length, sc))
		}
		if s.Hip { // no corner of the piece
			text += " Mark the waist corner, where the side seam line crosses the waist."
		}
		if s.HipLine {
			text += " Draw the hip line, level, where the hip width was measured."
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

func markText(s trace.Step, sc units.Scale, level string) string {
	text := "On the " + level + ", mark"
	if s.Piece == trace.SleevePiece {
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
func marks(s trace.Step) (first, last string) {
	if s.Pivot != 0 && s.Slide != 0 {
		return "first mark", "last mark"
	}
	return "mark", "mark"
}

// straight is where an underarm point that was turned inward lies from its mark: below
// it, or above, once it has swung past the pin by more than it lay outside.
func straight(s trace.Step) string {
	if s.Above {
		return "straight above"
	}
	return "straight below"
}

// turnText: outward the seam line comes to the mark; inward the underarm point comes
// straight below it, for the seam line would leave the piece narrower than asked.
func turnText(s trace.Step, parts pieceParts) string {
	first, _ := marks(s)
	if s.Pivot < 0 {
		return fmt.Sprintf("Pivot: turn the pattern about the pin, inward, until its underarm point lies %s the %s, square to the %s.", straight(s), first, parts.level)
	}
	return fmt.Sprintf("Pivot: turn the pattern about the pin, outward, until its %s passes through the %s.", parts.line, first)
}

func curveText(s trace.Step, parts pieceParts) string {
	text := fmt.Sprintf("Trace the %s along its seam line, with its notches, from the %s to the underarm point", parts.curve, parts.point)
	if s.Pivot > 0 && s.Slide == 0 && !s.FromCorner {
		return text + fmt.Sprintf(", and on down the %s to the mark.", parts.line)
	}
	return text + ". Stop there."
}

func slideStepText(s trace.Step, sc units.Scale, parts pieceParts) string {
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
		reaches = "underarm point lies " + straight(s) + " the " + last
	}
	text += fmt.Sprintf("Slide the pattern straight %s by %s, without turning it, until its %s. Mark its underarm point there", direction, sc.OnRuler(s.Slide.Abs()), reaches)
	trace := fmt.Sprintf("trace the %s from it to the %s", parts.line, last)
	join := "join it with a level line to the end of the traced " + parts.curve
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
	return text + fmt.Sprintf(". Draw the end of the %s again: leave the traced curve where a straight line from it to the new underarm point makes the %s %s%s shorter than it was.",
		parts.curve, parts.half, length, sc.OnRuler(-s.Slide))
}

// extendText moves the old seam of a short sleeve out by all that the side gains.
func extendText(s trace.Step, sc units.Scale) string {
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
	from := "there"
	if moved == "" {
		from = "the old underarm point"
	}
	return layBack + moved + ". Trace the underarm seam line from " + from + " to the hem line."
}

// taperText draws the new seam back to the old end, through the points where the
// garment has its full width, and out to those where it would bind.
func taperText(s trace.Step, sc units.Scale, parts pieceParts) string {
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
	via, bend := "the bust-line mark", "the bust-line mark"
	if s.LineOut == 0 {
		via, bend = "the old side seam line at the bust line", "the bust line"
	}
	if s.IfBelow {
		via += ", if that lies below it"
	}
	if s.Via {
		by = append(by, via)
	}
	if s.AtLineBends {
		bends = append(bends, bend)
	}
	if s.Elbow {
		where := "at the elbow, where its width was measured"
		if s.ElbowDown.Known {
			where = sc.Format(s.ElbowDown.Length) + " down it from the old underarm point (taken as the elbow)"
		}
		point := fmt.Sprintf("a point %s %s from the old %s", sc.OnRuler(s.ElbowOut.Abs()), way(s.ElbowOut), parts.line)
		if s.ElbowOut == 0 {
			point = "a point on the old " + parts.line
		}
		by, bends = append(by, point+", "+where), append(bends, "the elbow")
	}
	end := fmt.Sprintf("the old %s corner", parts.end)
	if s.EndOut != 0 {
		end = fmt.Sprintf("a point %s out from the old %s corner", sc.OnRuler(s.EndOut), parts.end)
	}
	text, open := "", ""
	switch s.Dart {
	case calc.SideDart:
		text, open = "Fold the traced dart shut. ", " Open the dart and draw its legs on to the new side seam line."
	case calc.AnyDart:
		text, open = "If a dart starts in the side seam, fold it shut first. ", " Open that dart and draw its legs on to the new side seam line."
	}
	if len(by) == 0 {
		text += fmt.Sprintf("In a second colour, draw a straight line from %s to %s.", from, end)
	} else {
		text += fmt.Sprintf("In a second colour, draw straight lines from %s to %s, then to %s.", from, strings.Join(by, ", then to "), end)
	}
	text += hipText(s, sc)
	if s.EndOut != 0 && !s.Hip { // the lower edge ends short of it
		text += fmt.Sprintf(" Draw the %s line on to it.", parts.end)
	}
	if len(bends) > 0 {
		over := "2 in"
		if sc.Ruler.System() == units.Centimetres {
			over = "5 cm"
		}
		text += fmt.Sprintf(" Smooth the bend at %s over about %s each way, on the outside, so that no width is lost.", strings.Join(bends, " and at "), over)
	}
	return text + open
}

// hipText goes on below the waist of a piece that reaches the hip.
func hipText(s trace.Step, sc units.Scale) string {
	switch {
	case !s.Hip:
		return ""
	case s.HipOut != 0:
		return fmt.Sprintf(" Then draw on to a point %s out from the old side seam line at the hip line, and from there to the hem, %s outside the old side seam line. Draw the hem line on to there.",
			sc.OnRuler(s.HipOut), sc.OnRuler(s.HipOut))
	case s.EndOut != 0:
		return " Then draw on to the old side seam line at the hip line, and follow it to the hem."
	}
	return " From there follow the old side seam line to the hem."
}

func sameAgainText(s trace.Step, sc units.Scale, parts pieceParts) string {
	amounts := report.SideWords(calc.SidePlan{PivotMark: s.Pivot, SlideMark: s.Slide}, sc)
	text := "Do the same with the bodice back: " + amounts + "."
	if s.Piece == trace.SleevePiece {
		text = layBack + ". Do the same on the back: " + amounts + "."
	}
	if s.Curve.Known {
		text += fmt.Sprintf(" The %s of the back is then %s long.", parts.half, sc.Format(s.Curve.Length))
	}
	return text
}

func trueText(s trace.Step, sc units.Scale, parts pieceParts) string {
	if s.Piece != trace.SleevePiece {
		fold := ""
		switch s.Dart {
		case calc.ArmholeDart:
			fold = "Fold the dart shut. "
		case calc.AnyDart:
			fold = "If a dart starts in the armhole, fold it shut first. "
		}
		return fold + "Smooth the armhole through the shoulder point and the underarm point, without a point or a dip."
	}
	text := "Smooth the cap through the shoulder dot and the underarm points, without a point or a dip."
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
