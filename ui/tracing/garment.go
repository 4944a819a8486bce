package tracing

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/calc/trace"
	"capscye/ui/wording"
	"capscye/units"
)

// The words for the pieces together: what must meet, and what is measured on the new
// lines.

// garmentText words the steps that concern more than one piece.
func garmentText(s trace.Step, sc units.Scale) string {
	switch s.Action {
	case trace.Notch:
		return "Match the notches once, now: lay the cap on the armhole, seam line on seam line, from the underarm up, front and back. " +
			"Move each notch of the sleeve to that of the armhole (one in front, two in the back); the ease stays above them."
	case trace.CheckSeams:
		text := "Walk the cap along the armhole, seam line on seam line"
		switch {
		case s.CapEase.Known:
			return text + fmt.Sprintf(". The cap should measure %s, the armhole %s: %s.", sc.Format(s.Cap.Length), sc.Format(s.Armhole.Length), toEase(s.CapEase.Length, sc))
		case s.Kept:
			return text + ": it must still go in."
		case s.Unchanged:
			return text + ": neither has changed its length, front or back."
		}
		return text + ": both must have changed by the same amount, front and back."
	case trace.CheckWidths:
		return widthsText(s, sc)
	case trace.CheckSides:
		seams := "the underarm seam, then along the side seam"
		switch {
		case !s.OfSleeve:
			seams = "the side seam"
		case !s.OfBodice:
			seams = "the underarm seam"
		}
		return "Lay front and back together along " + seams + "; if their lengths differ, true the lower ends." + growthText(s, sc)
	case trace.AlterToo:
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
		in = "the seam allowance, " + wording.MarkedOff(s.Allowance.Length, sc) + ","
	}
	if s.Allowance.Known && s.Allowance.Length == 0 {
		in = "seam allowances"
	}
	return "The new lines are seam lines: add " + in + " before you cut. " + strings.Join(wording.Cautions[:2], " ") + " Cut and sew the test garment, wear it, and write down what it shows."
}

// toEase says what to do with a cap ease at the machine.
func toEase(ease units.Length, sc units.Scale) string {
	switch amount := sc.Format(ease.Abs()); {
	case ease == 0:
		return "nothing to ease in"
	case ease < 0:
		return "the cap is " + amount + " too short"
	default:
		return amount + " to ease in"
	}
}

// widthsText says what a tape finds on the new outlines.
func widthsText(s trace.Step, sc units.Scale) string {
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
func growthText(s trace.Step, sc units.Scale) string {
	text := ""
	for _, g := range []struct {
		name  string
		front calc.Side
	}{{"underarm seam", calc.SleeveFront}, {"side seam", calc.BodiceFront}} {
		f, b := s.Growths[g.front], s.Growths[g.front+1]
		if f.Known && b.Known {
			front, back := wording.Longer(f.Length, sc), wording.Longer(b.Length, sc)
			if front == back {
				text += fmt.Sprintf(" Each %s %s.", g.name, front)
			} else {
				text += fmt.Sprintf(" The %s of the front %s, that of the back %s.", g.name, front, back)
			}
		}
	}
	return text
}
