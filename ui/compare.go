package ui

import (
	"cmp"
	"slices"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
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
func compare(sheets ...report.Report) []comparedRow {
	var rows []comparedRow
	add := func(what string, cells []string) {
		if slices.ContainsFunc(cells, func(c string) bool { return c != cells[0] }) {
			rows = append(rows, comparedRow{what, cells})
		}
	}
	for _, k := range worksheets.Keys() {
		if f, ok := forms.Fields[k]; ok && slices.ContainsFunc(sheets, func(r report.Report) bool { return r.Sheet.Text(k) != sheets[0].Sheet.Text(k) }) {
			rows = append(rows, comparedRow{f.Words, inEach(sheets, func(r report.Report) string { return answerExactly(r, k) })})
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
func bothSides(front calc.Side, f sideFigure, sheets []report.Report) []comparedRow {
	of := func(s calc.Side) []string {
		return inEach(sheets, func(r report.Report) string { return f.words(r, r.Plan.Sides[s]) })
	}
	one, other := of(front), of(front+1)
	if slices.Equal(one, other) {
		return []comparedRow{{report.WordsOfPiece(front.Subject()).Name + " " + f.what + ", each side", one}}
	}
	return []comparedRow{
		{wording.SubjectWords[front.Subject()] + " " + f.what, one},
		{wording.SubjectWords[(front+1).Subject()] + " " + f.what, other},
	}
}

func inEach(sheets []report.Report, words func(report.Report) string) []string {
	cells := make([]string, len(sheets))
	for i, r := range sheets {
		cells[i] = words(r)
	}
	return cells
}

// cameAndWent are the findings that only one of two sheets has.
func cameAndWent(before, after report.Report) (came, went []report.Finding) {
	only := func(in, notIn []report.Finding) (list []report.Finding) {
		for _, f := range in {
			if !slices.ContainsFunc(notIn, f.Same) {
				list = append(list, f)
			}
		}
		return list
	}
	return only(after.Findings, before.Findings), only(before.Findings, after.Findings)
}

// answerText is an answer as the sheet shows it, "" where none was given.
func answerText(r report.Report, k worksheets.Key) string {
	text := typeset.Plain(r.Sheet.Text(k))
	if l := r.Sheet.Reading(k); l.Known && text != "" {
		return r.Scale.Format(l.Length)
	}
	return text
}

// answerExactly is an answer in the unit of the comparison, a dash for none.
func answerExactly(r report.Report, k worksheets.Key) string {
	if l := r.Sheet.Reading(k); l.Known && r.Sheet.Text(k) != "" {
		return wording.Exact(l.Length, r.Scale)
	}
	return cmp.Or(answerText(r, k), "-")
}

// consequence is one figure that people compare.
type consequence struct {
	what  string
	words func(report.Report) string
}

// exactFigure is a figure of the plan that is known as it is.
func exactFigure(of func(calc.Plan) units.Reading) func(report.Report) string {
	return func(r report.Report) string {
		l := of(r.Plan)
		if !l.Known {
			return "-"
		}
		return r.Scale.Exact(l.Length)
	}
}

var needFigures = []consequence{
	{"sleeve need", exactFigure(func(p calc.Plan) units.Reading { return p.Sleeve.Need })},
	{"bust need", exactFigure(func(p calc.Plan) units.Reading { return p.Bust.Need })},
}

// sideFigure is a figure of a side that people compare.
type sideFigure struct {
	what  string
	words func(report.Report, calc.SidePlan) string
}

// exactOf is a figure of a side as it is.
func exactOf(of func(calc.SidePlan) units.Length) func(report.Report, calc.SidePlan) string {
	return func(r report.Report, p calc.SidePlan) string {
		if r.Plan.Open {
			return "-"
		}
		return r.Scale.Exact(of(p))
	}
}

var sideFigures = []sideFigure{
	{"pivot", exactOf(func(p calc.SidePlan) units.Length { return p.Pivot })},
	{"slide", exactOf(func(p calc.SidePlan) units.Length { return p.Slide })},
	{"left over", exactOf(func(p calc.SidePlan) units.Length { return p.LeftOver })},
	marksOfSide,
}

// marksOfSide is what is marked on the paper, pivot + slide, in the ruler's unit.
var marksOfSide = sideFigure{"marks", func(r report.Report, p calc.SidePlan) string {
	if r.Plan.Open {
		return "-"
	}
	return report.BareMarks(p.PivotMark, p.SlideMark, r.Scale)
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
func heightAfter(front calc.Side) func(report.Report) string {
	return func(r report.Report) string {
		f, b := r.Plan.Turns[front], r.Plan.Turns[front+1]
		if !f.Known || !b.Known {
			return "-"
		}
		return r.Millimetres(min(f.HeightAfter, b.HeightAfter))
	}
}
