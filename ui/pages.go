package ui

import (
	"fmt"
	"strings"

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
	if r.mendable() {
		out = append(out, st.key.Render("w")+" shows what would make it work.")
	}
	for _, table := range [][]string{seamsTable(r), turnTable(r), widthsTable(r)} {
		if len(table) > 0 {
			out = append(append(out, ""), headed(table, st, width)...)
		}
	}
	if lines := fittingLines(r); len(lines) > 0 {
		out = append(out, "", st.heading.Render("Fittings"))
		for _, l := range lines {
			out = append(out, wrap(l, width)...)
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

// fittingLines are what test garments showed, day by day.
func fittingLines(r report) []string {
	var lines []string
	for _, f := range r.sheet.Fittings {
		lines = append(lines, strings.TrimSpace(plain(f.Date)+"  "+plain(f.Note)))
	}
	return lines
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
