package report

import (
	"fmt"
	"slices"

	"capscye/calc"
	"capscye/ui/wording"
)

// What is said of the seams below the underarm goes by what the steps draw.

// taperText says what a taper from the corners does to the girth at its line and, where
// the steps draw the seam out further down, what it comes to by that.
func (r *Report) taperText(f calc.Finding) string {
	p, girth := WordsOfPiece(f.About), r.Plan.Sleeve
	if f.About == calc.OfBust {
		girth = r.Plan.Bust
	}
	is, than, drawn := "is", "narrower", ""
	if f.Amount < 0 {
		than = "wider"
	}
	if girth.DrawnMarked != girth.Marked {
		is, drawn = "would be", fmt.Sprintf("; drawn out to fit further down, it measures %s there by the marks", r.Scale.Format(girth.DrawnMarked.Length))
	}
	return fmt.Sprintf("Tapered from its underarm corners, the %s %s %s %s at the %s than its sides pivot and slide%s.", p.Name, is, amountWords(f, r.Scale), than, p.line, drawn)
}

// bindsText says where a piece is too tight, and to which points the steps draw its sides.
func (r *Report) bindsText(f calc.Finding) string {
	p := WordsOfPiece(f.About)
	text := fmt.Sprintf("At the %s the %s would be short by %s", wording.PlaceWords[f.At], p.Name, amountWords(f, r.Scale))
	if slices.ContainsFunc(r.Plan.Widths, func(w calc.Width) bool { return w.At == f.At && w.Lacks() <= 0 }) {
		text += " by the marks"
	}
	front := calc.SleeveFront
	if f.About == calc.OfBust {
		front = calc.BodiceFront
	}
	stuck := func(s calc.Side) bool { // nobody can draw it
		sleeve := r.Plan.Turns[calc.SleeveFront].OutOfReach || r.Plan.Turns[calc.SleeveBack].OutOfReach
		return r.Plan.Turns[s].OutOfReach || s.OfSleeve() && sleeve
	}
	var sides, names []string
	for _, s := range []calc.Side{front, front + 1} {
		if r.Plan.Sides[s].Altered() && !stuck(s) {
			sides, names = append(sides, r.drawnTo(s, f.At)), append(names, wording.SubjectWords[s.Half().Subject()])
		}
	}
	switch {
	case len(sides) == 0: // no seam is drawn anew
		return fmt.Sprintf("%s: it must go out by %s more on each side there.", text, r.Scale.Format(f.Other))
	case len(sides) == 1:
		return fmt.Sprintf("%s: the steps draw the %s %s there.", text, names[0], sides[0])
	case sides[0] == sides[1]:
		return fmt.Sprintf("%s: the steps draw each side %s there.", text, sides[0])
	}
	return fmt.Sprintf("%s: the steps draw the front %s there, the back %s.", text, sides[0], sides[1])
}

// drawnTo is the point that a side is drawn to at a level, by the old seam, as in the step.
func (r *Report) drawnTo(s calc.Side, at calc.Place) string {
	fit := r.Plan.Fits[s]
	mm := fit.EndOut
	switch at {
	case calc.AtElbow:
		mm = fit.ElbowOut
	case calc.AtHip:
		mm = fit.HipOut
	}
	switch out := (calc.Approx{MM: mm, Known: true}).Length().Length; {
	case out == 0:
		return "to the old seam"
	case out < 0:
		return "to " + r.Scale.OnRuler(-out) + " inside the old seam"
	default:
		return "to " + r.Scale.OnRuler(out) + " outside the old seam"
	}
}
