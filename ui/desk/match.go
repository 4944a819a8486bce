package desk

import (
	"fmt"

	"capscye/calc"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// matchLines is step 5: what comes out beside what was asked, and every finding
// with its reason and its ways out.
func matchLines(r report.Report, st parts.Styles, width int) []string {
	out := headed(report.FinishedTable(r), st, width)
	out = append(out, "", st.Heading.Render("Notes and checks"))
	if len(r.Findings) == 0 {
		out = append(out, "Nothing to point out.")
	}
	for _, f := range r.Findings {
		out = append(out, findingLines(f, st, width, true)...)
	}
	if mendable(r) {
		shows := " shows what would make it work."
		if r.Verdict().State == report.Ready {
			shows = " shows what you could try."
		}
		out = append(out, st.Key.Render("w")+shows)
	}
	for _, table := range [][]string{report.SeamsTable(r), report.TurnTable(r), report.WidthsTable(r)} {
		if len(table) > 0 {
			out = append(append(out, ""), headed(table, st, width)...)
		}
	}
	if lines := report.FittingLines(r); len(lines) > 0 {
		out = append(out, "", st.Heading.Render("Fittings"))
		for _, l := range lines {
			out = append(out, typeset.Wrap(l, width)...)
		}
	}
	out = append(out, "")
	for _, h := range calc.Halves() {
		if !r.Plan.Open {
			out = append(out, typeset.Cut(sewnTogether(r, h), width))
		}
	}
	return out
}

// sewnTogether says what to mark on cap and armhole of a half: the same on both,
// unless the armhole is kept.
func sewnTogether(r report.Report, h calc.Half) string {
	cap, armhole := r.Plan.Sides[h.Sleeve()].SlideMark, r.Plan.Sides[h.Bodice()].SlideMark
	name := typeset.Capitalised(wording.SubjectWords[h.Subject()])
	switch {
	case cap != armhole:
		return fmt.Sprintf("%s: the cap slides %s, and the armhole is kept.", name, wording.InOrOut(cap, r.Scale))
	case cap == 0:
		return fmt.Sprintf("%s: cap and armhole keep their length.", name)
	}
	return fmt.Sprintf("%s: cap and armhole both slide %s.", name, wording.InOrOut(cap, r.Scale))
}

// headed sets the first row of a table off, and keeps all rows to a width.
func headed(table []string, st parts.Styles, width int) []string {
	for i, row := range table {
		table[i] = typeset.Cut(row, width)
	}
	table[0] = st.Heading.Render(table[0])
	return table
}
