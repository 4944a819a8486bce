package try

import (
	"capscye/ui/compare"
	"capscye/ui/report"
	"capscye/ui/show"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// What would differ, to be heard.

// sentences say what differs; of a range what to mark with one value after the other, and
// which findings came and went since the one before it.
func sentences(before report.Report, list []trial, afters []report.Report) (s typeset.Speech) {
	if len(list) == 1 {
		s.SayEach(afters[0].Verdict().Line())
	} else {
		verdict := rangeVerdict(list, afters)
		s.SayEach(list[0].words() + ": " + typeset.Uncapitalised(verdict))
	}
	s.Say("%s, in %s", before.Name(), wording.UnitWords(before.Scale.System))
	for i, after := range afters {
		if list[i].value == "" {
			sayDifferences(&s, before, after)
			break // there is but one
		}
		s.Say("%s: %s", list[i].words(), worksheets.WithUnit(list[i].said(), list[i].doc.Sheet.Unit()))
		s.SayEach(after.Verdict().Line())
		sayPlanned(&s, after)
		sayChanges(&s, before, after)
		before = after
	}
	return s
}

// sayDifferences says how a changed sheet differs from another: what becomes of each
// figure, and which findings are new, still there or gone.
func sayDifferences(s *typeset.Speech, before, after report.Report) {
	rows := compare.Sheets(before, after)
	for _, row := range rows {
		s.Say("%s", row.Sentence())
	}
	if sayChanges(s, before, after) == 0 && len(rows) == 0 {
		s.Say("Nothing changes")
	}
}

// sayChanges says which findings are new, still there or gone in a changed sheet, and how
// many they are.
func sayChanges(s *typeset.Speech, before, after report.Report) int {
	changes := compare.Findings(before, after)
	for _, c := range changes {
		show.SayFinding(s, typeset.Capitalised(c.How)+", "+c.Finding.Asks(), c.Finding)
	}
	return len(changes)
}

// sayPlanned says what to mark, and what that gives around the body.
func sayPlanned(s *typeset.Speech, r report.Report) {
	show.SayAmounts(s, r)
	show.SayFinished(s, r)
}
