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
// first, then what follows from them, in the order of the work, and what to mark.
// Lengths are exact, but for those of a turn, so that no difference is hidden by
// rounding and none is made by it. Front and back are one row where they say the
// same.
func compare(sheets ...report) []comparedRow {
	var rows []comparedRow
	add := func(what string, cells []string) {
		if slices.ContainsFunc(cells, func(c string) bool { return c != cells[0] }) {
			rows = append(rows, comparedRow{what, cells})
		}
	}
	for _, k := range worksheets.Keys() {
		if f, ok := fields[k]; ok && slices.ContainsFunc(sheets, func(r report) bool { return r.sheet.Text(k) != sheets[0].sheet.Text(k) }) {
			rows = append(rows, comparedRow{f.words, inEach(sheets, func(r report) string { return r.answerExactly(k) })})
		}
	}
	for _, c := range needFigures {
		add(c.what, inEach(sheets, c.words))
	}
	for _, piece := range []calc.Side{calc.SleeveFront, calc.BodiceFront} {
		for _, f := range sideFigures {
			for _, row := range bothSides(piece, f, sheets) {
				add(row.what, row.cells)
			}
		}
	}
	for _, c := range consequences {
		add(c.what, inEach(sheets, c.words))
	}
	return rows
}

// bothSides is a figure of front and back of a piece, in one row where they are
// the same in every sheet.
func bothSides(front calc.Side, f sideFigure, sheets []report) []comparedRow {
	of := func(s calc.Side) []string {
		return inEach(sheets, func(r report) string { return f.words(r, r.plan.Sides[s]) })
	}
	one, other := of(front), of(front+1)
	if slices.Equal(one, other) {
		return []comparedRow{{wordsOfPiece(front.Subject()).name + " " + f.what + ", each side", one}}
	}
	return []comparedRow{
		{subjectWords[front.Subject()] + " " + f.what, one},
		{subjectWords[(front+1).Subject()] + " " + f.what, other},
	}
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

// answerExactly is an answer in the unit of the comparison, a dash for none.
func (r report) answerExactly(k worksheets.Key) string {
	if l := r.sheet.Reading(k); l.Known && r.sheet.Text(k) != "" {
		return exactWords(l.Length, r.scale)
	}
	return cmp.Or(answerText(r, k), "-")
}

// consequence is one figure that people compare.
type consequence struct {
	what  string
	words func(report) string
}

// exactFigure is a figure of the plan that is known as it is.
func exactFigure(of func(calc.Plan) units.Reading) func(report) string {
	return func(r report) string {
		l := of(r.plan)
		if !l.Known {
			return "-"
		}
		return r.scale.Exact(l.Length)
	}
}

var needFigures = []consequence{
	{"sleeve need", exactFigure(func(p calc.Plan) units.Reading { return p.Sleeve.Need })},
	{"bust need", exactFigure(func(p calc.Plan) units.Reading { return p.Bust.Need })},
}

// sideFigure is a figure of a side that people compare.
type sideFigure struct {
	what  string
	words func(report, calc.SidePlan) string
}

// exactOf is a figure of a side as it is.
func exactOf(of func(calc.SidePlan) units.Length) func(report, calc.SidePlan) string {
	return func(r report, p calc.SidePlan) string {
		if r.plan.Open {
			return "-"
		}
		return r.scale.Exact(of(p))
	}
}

var sideFigures = []sideFigure{
	{"pivot", exactOf(func(p calc.SidePlan) units.Length { return p.Pivot })},
	{"slide", exactOf(func(p calc.SidePlan) units.Length { return p.Slide })},
	{"left over", exactOf(func(p calc.SidePlan) units.Length { return p.LeftOver })},
	marksOfSide,
}

// marksOfSide is what is marked on the paper, pivot + slide, in the ruler's unit.
var marksOfSide = sideFigure{"marks", func(r report, p calc.SidePlan) string {
	if r.plan.Open {
		return "-"
	}
	return bareMarks(p.PivotMark, p.SlideMark, r.scale)
}}

// The figures that a change is judged by.
var (
	capHeight    = consequence{"cap height", heightAfter(calc.SleeveFront)}
	armholeDepth = consequence{"armhole depth", heightAfter(calc.BodiceFront)}
	capEase      = consequence{"cap ease", exactFigure(func(p calc.Plan) units.Reading { return p.Seams.CapEaseAfter })}
	bicepAfter   = consequence{"finished bicep", exactFigure(func(p calc.Plan) units.Reading { return p.Sleeve.Finished })}
	bustAfter    = consequence{"finished bust", exactFigure(func(p calc.Plan) units.Reading { return p.Bust.Finished })}
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
