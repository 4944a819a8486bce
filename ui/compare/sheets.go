// Package compare lays sheets side by side, and finds the smallest change that would
// make one work, with its price. That takes thousands of plans and some milliseconds, so
// it is done when somebody asks, and not for JSON.
package compare

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

// Row is one thing that is not the same in all of several sheets, with
// what each says.
type Row struct {
	What  string
	Cells []string // one for each sheet
}

// Sheets lists what differs between sheets side by side, in words: the answers
// first, then what follows from them, in the order of the work, and what to mark.
// Lengths are exact, but for those of a turn, so that no difference is hidden by
// rounding and none is made by it. Front and back are one row where they say the
// same.
func Sheets(sheets ...report.Report) []Row {
	var rows []Row
	add := func(what string, cells []string) {
		if slices.ContainsFunc(cells, func(c string) bool { return c != cells[0] }) {
			rows = append(rows, Row{what, cells})
		}
	}
	for _, k := range worksheets.Keys() {
		if f, ok := forms.Fields[k]; ok && slices.ContainsFunc(sheets, func(r report.Report) bool { return r.Sheet.Text(k) != sheets[0].Sheet.Text(k) }) {
			rows = append(rows, Row{f.Words, inEach(sheets, func(r report.Report) string { return answerExactly(r, k) })})
		}
	}
	for _, c := range needFigures {
		add(c.what, inEach(sheets, c.Words))
	}
	for _, piece := range []calc.Side{calc.SleeveFront, calc.BodiceFront} {
		for _, f := range sideFigures {
			for _, row := range bothSides(piece, f, sheets) {
				add(row.What, row.Cells)
			}
		}
	}
	for _, c := range consequences {
		add(c.what, inEach(sheets, c.Words))
	}
	return rows
}

// bothSides is a figure of front and back of a piece, in one row where they are
// the same in every sheet.
func bothSides(front calc.Side, f SideFigure, sheets []report.Report) []Row {
	of := func(s calc.Side) []string {
		return inEach(sheets, func(r report.Report) string { return f.Words(r, r.Plan.Sides[s]) })
	}
	one, other := of(front), of(front+1)
	if slices.Equal(one, other) {
		return []Row{{report.WordsOfPiece(front.Subject()).Name + " " + f.what + ", each side", one}}
	}
	return []Row{
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

// CameAndWent are the findings that only one of two sheets has.
func CameAndWent(before, after report.Report) (came, went []report.Finding) {
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

// AnswerText is an answer as the sheet shows it, "" where none was given.
func AnswerText(r report.Report, k worksheets.Key) string {
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
	return cmp.Or(AnswerText(r, k), "-")
}

// Consequence is one figure that people compare.
type Consequence struct {
	what  string
	Words func(report.Report) string
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

var needFigures = []Consequence{
	{"sleeve need", exactFigure(func(p calc.Plan) units.Reading { return p.Sleeve.Need })},
	{"bust need", exactFigure(func(p calc.Plan) units.Reading { return p.Bust.Need })},
}

// SideFigure is a figure of a side that people compare.
type SideFigure struct {
	what  string
	Words func(report.Report, calc.SidePlan) string
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

var sideFigures = []SideFigure{
	{"pivot", exactOf(func(p calc.SidePlan) units.Length { return p.Pivot })},
	{"slide", exactOf(func(p calc.SidePlan) units.Length { return p.Slide })},
	{"left over", exactOf(func(p calc.SidePlan) units.Length { return p.LeftOver })},
	MarksOfSide,
}

// MarksOfSide is what is marked on the paper, pivot + slide, in the ruler's unit.
var MarksOfSide = SideFigure{"marks", func(r report.Report, p calc.SidePlan) string {
	if r.Plan.Open {
		return "-"
	}
	return report.BareMarks(p.PivotMark, p.SlideMark, r.Scale)
}}

// The figures that a change is judged by.
var (
	CapHeight    = Consequence{"cap height", heightAfter(calc.SleeveFront)}
	armholeDepth = Consequence{"armhole depth", heightAfter(calc.BodiceFront)}
	CapEase      = Consequence{"cap ease", exactFigure(func(p calc.Plan) units.Reading { return p.Seams.CapEaseAfter })}
	BicepAfter   = Consequence{"finished bicep", exactFigure(func(p calc.Plan) units.Reading { return p.Sleeve.Finished })}
	BustAfter    = Consequence{"finished bust", exactFigure(func(p calc.Plan) units.Reading { return p.Bust.Finished })}
	consequences = []Consequence{CapHeight, armholeDepth, CapEase, BicepAfter, BustAfter}
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
