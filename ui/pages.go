package ui

import (
	"fmt"

	"capscye/calc"
)

// matchLines is step 5: what comes out beside what was asked, and every finding
// with its reason and its ways out.
func matchLines(r report, st styles, width int) []string {
	out := headed(finishedTable(r), st, width)
	out = append(out, "", st.heading.Render("Findings"))
	if len(r.findings) == 0 {
		out = append(out, "Nothing to point out.")
	}
	for _, f := range r.findings {
		out = append(out, findingLines(f, st, width, true)...)
	}
	for _, table := range [][]string{seamsTable(r), turnTable(r), widthsTable(r)} {
		if len(table) > 0 {
			out = append(append(out, ""), headed(table, st, width)...)
		}
	}
	out = append(out, "")
	for _, h := range calc.Halves() {
		if !r.plan.Open {
			out = append(out, cut(sewnTogether(r, h), width))
		}
	}
	return out
}

// sewnTogether says what to mark on cap and armhole of a half: the same on both,
// unless the armhole is kept.
func sewnTogether(r report, h calc.Half) string {
	cap, armhole := r.plan.Sides[h.Sleeve()].SlideMark, r.plan.Sides[h.Bodice()].SlideMark
	name := capitalised(subjectWords[h.Subject()])
	switch {
	case cap != armhole:
		return fmt.Sprintf("%s: slide %s on the cap, to the mark; the armhole is kept.", name, inOrOut(cap, r.scale))
	case cap == 0:
		return fmt.Sprintf("%s: cap and armhole keep their length.", name)
	}
	return fmt.Sprintf("%s: slide %s on cap and armhole alike, to the mark.", name, inOrOut(cap, r.scale))
}

// traceLines is step 6: what to mark on each piece, and the pieces drawn where
// that is wanted. What stands against cutting comes first.
func traceLines(r report, st styles, width int, drawn bool) []string {
	var out []string
	for _, f := range r.findings {
		if f.level == calc.Stop || f.code == calc.AnswerMissing {
			out = append(out, findingLines(f, st, width, false)...)
		}
	}
	if len(out) > 0 {
		out = append(append([]string{st.stop.Render("Do not cut yet:")}, out...), "")
	}
	if r.plan.Open {
		return append(out, "Nothing is planned until every answer is there.")
	}
	out = append(out, st.heading.Render(fmt.Sprintf("To mark, with a ruler in %s", r.scale.Ruler)))
	for _, s := range calc.Sides() {
		words := sideWords(r.plan.Sides[s], r.scale)
		if words == "" {
			words = "stays as it is"
		}
		out = append(out, "  "+pad(capitalised(subjectWords[s.Subject()]), 16)+words)
	}
	out = append(out, "")
	for _, t := range []string{
		"Pins stand where the seam lines cross, one allowance in from both edges: in the shoulder dot of the sleeve, " +
			"and where shoulder seam and armhole meet on the bodice.",
		"Mark from the underarm corner outward, the pivot first and the slide from there; what is called inward goes the other way.",
	} {
		out = append(out, wrap(t, width)...)
	}
	out = append(out, "")
	for _, c := range cautions {
		out = append(out, wrap(c, width)...)
	}
	if !drawn {
		return out
	}
	return append(append(out, ""), tracedPictures(r, width)...)
}
