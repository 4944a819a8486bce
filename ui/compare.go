package ui

import (
	"cmp"
	"slices"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// comparedRow is one thing that is not the same in all of several sheets, with
// what each says.
type comparedRow struct {
	what  string
	cells []string // one for each sheet
}

// compare lists what differs between sheets side by side, in words: the answers
// first, then what follows from them, in the order of the work. Front and back
// are one row where they say the same.
func compare(sheets ...report) []comparedRow {
	var rows []comparedRow
	add := func(what string, cells []string) {
		if slices.ContainsFunc(cells, func(c string) bool { return c != cells[0] }) {
			rows = append(rows, comparedRow{what, cells})
		}
	}
	for _, k := range worksheets.Keys() {
		if f, ok := fields[k]; ok && slices.ContainsFunc(sheets, func(r report) bool { return r.sheet.Text(k) != sheets[0].sheet.Text(k) }) {
			rows = append(rows, comparedRow{f.words, inEach(sheets, func(r report) string { return cmp.Or(answerText(r, k), "-") })})
		}
	}
	for _, c := range needConsequences {
		add(c.what, inEach(sheets, c.words))
	}
	for _, front := range []calc.Side{calc.SleeveFront, calc.BodiceFront} {
		back := front + 1
		for _, f := range sideFigures {
			of := func(s calc.Side) []string {
				return inEach(sheets, func(r report) string { return r.planned(f.of(r.plan.Sides[s])) })
			}
			if both := of(front); slices.Equal(both, of(back)) {
				add(wordsOfPiece(front.Subject()).name+" "+f.what+", each side", both)
				continue
			}
			add(subjectWords[front.Subject()]+" "+f.what, of(front))
			add(subjectWords[back.Subject()]+" "+f.what, of(back))
		}
	}
	for _, c := range consequences {
		add(c.what, inEach(sheets, c.words))
	}
	return rows
}

func inEach(sheets []report, words func(report) string) []string {
	cells := make([]string, len(sheets))
	for i, r := range sheets {
		cells[i] = words(r)
	}
	return cells
}

// cameAndWent are the findings that only one of two sheets has.
func cameAndWent(before, after report) (came, went []finding) {
	only := func(in, notIn []finding) (list []finding) {
		for _, f := range in {
			if !slices.ContainsFunc(notIn, f.same) {
				list = append(list, f)
			}
		}
		return list
	}
	return only(after.findings, before.findings), only(before.findings, after.findings)
}

// same tells that two findings say the same of the same, whatever the amounts.
func (f finding) same(other finding) bool {
	return f.code == other.code && f.about == other.about && f.level == other.level
}

// answerText is an answer as the sheet shows it, "" where none was given.
func answerText(r report, k worksheets.Key) string {
	text := plain(r.sheet.Text(k))
	if l := r.sheet.Reading(k); l.Known && text != "" {
		return r.scale.Format(l.Length)
	}
	return text
}

// consequence is one figure that people compare.
type consequence struct {
	what  string
	words func(report) string
}

var needConsequences = []consequence{
	{"sleeve need", func(r report) string { return orDash(r.plan.Sleeve.Need, r.scale) }},
	{"bust need", func(r report) string { return orDash(r.plan.Bust.Need, r.scale) }},
}

// sideFigures are the figures of a side that people compare.
var sideFigures = []struct {
	what string
	of   func(calc.SidePlan) units.Length
}{
	{"pivot", func(p calc.SidePlan) units.Length { return p.Pivot }},
	{"slide", func(p calc.SidePlan) units.Length { return p.Slide }},
	{"left over", func(p calc.SidePlan) units.Length { return p.LeftOver }},
}

// The figures that a change is judged by.
var (
	capHeight    = consequence{"cap height", heightAfter(calc.SleeveFront)}
	armholeDepth = consequence{"armhole depth", heightAfter(calc.BodiceFront)}
	capEase      = consequence{"cap ease", func(r report) string { return orDash(r.plan.Seams.CapEaseAfter, r.scale) }}
	bicepAfter   = consequence{"finished bicep", func(r report) string { return orDash(r.plan.Sleeve.Finished, r.scale) }}
	bustAfter    = consequence{"finished bust", func(r report) string { return orDash(r.plan.Bust.Finished, r.scale) }}
	consequences = []consequence{capHeight, armholeDepth, capEase, bicepAfter, bustAfter}
)

// heightAfter is the height that is left of a piece, the lower of its sides.
func heightAfter(front calc.Side) func(report) string {
	return func(r report) string {
		f, b := r.plan.Turns[front], r.plan.Turns[front+1]
		if !f.Known || !b.Known {
			return "-"
		}
		return r.millimetres(min(f.HeightAfter, b.HeightAfter))
	}
}
