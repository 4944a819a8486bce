// Package compare lays sheets side by side, and finds the smallest change that would
// make one work, with its price. That takes thousands of plans and some milliseconds, so
// it is done when somebody asks, and not for JSON.
package compare

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

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
	Said  []string // the same to be heard: each length with its unit
}

// Sheets lists what differs between sheets side by side, in words: the answers
// first, then what comes out, what to mark, and what cap and armhole come to, and last the
// arithmetic.
// Lengths are exact, but for those of a turn, so that no difference is hidden by
// rounding and none is made by it. Front and back are one row where they say the
// same.
func Sheets(sheets ...report.Report) []Row {
	var rows []Row
	add := func(row Row) {
		if row.differs() {
			rows = append(rows, row)
		}
	}
	for _, k := range worksheets.Keys() {
		if f, ok := forms.Fields[k]; ok && slices.ContainsFunc(sheets, func(r report.Report) bool { return answeredOtherwise(sheets[0], r, k) }) {
			cells := inEach(sheets, func(r report.Report) string { return answerExactly(r, k) })
			rows = append(rows, Row{f.Words, cells, inEach(sheets, func(r report.Report) string { return said(answerExactly(r, k), "") })})
		}
	}
	rows = append(rows, sizeRows(sheets)...)
	for _, c := range kept {
		add(c.row(sheets))
	}
	figures := func(list []Consequence) {
		for _, c := range list {
			add(c.row(sheets))
		}
	}
	sides := func(list []SideFigure) {
		for _, piece := range []calc.Side{calc.SleeveFront, calc.BodiceFront} {
			for _, f := range list {
				for _, row := range bothSides(piece, f, sheets) {
					add(row)
				}
			}
		}
	}
	figures(outcomes)
	sides([]SideFigure{MarksOfSide})
	figures(capFigures)
	figures(needFigures)
	sides(sideFigures)
	return rows
}

// answeredOtherwise tells that two sheets answer something otherwise. A length that is only
// written in another unit is no other answer.
func answeredOtherwise(one, other report.Report, k worksheets.Key) bool {
	if one.Sheet.Text(k) == other.Sheet.Text(k) {
		return false
	}
	a, b := one.Sheet.Reading(k), other.Sheet.Reading(k)
	return !a.Known || a != b
}

// bothSides is a figure of front and back of a piece, in one row where they are
// the same in every sheet.
func bothSides(front calc.Side, f SideFigure, sheets []report.Report) []Row {
	of := func(what string, s calc.Side) Row {
		return Row{what + " " + f.what, inEach(sheets, func(r report.Report) string { return f.Words(r, r.Plan.Sides[s]) }),
			inEach(sheets, func(r report.Report) string { return f.said(r, r.Plan.Sides[s]) })}
	}
	one, other := of(wording.SubjectWords[front.Subject()], front), of(wording.SubjectWords[(front+1).Subject()], front+1)
	if slices.Equal(one.Cells, other.Cells) {
		one.What = report.WordsOfPiece(front.Subject()).Name + " " + f.what + ", each side"
		return []Row{one}
	}
	return []Row{one, other}
}

// differs tells that the sheets do not all say the same.
func (r Row) differs() bool {
	return slices.ContainsFunc(r.Cells, func(c string) bool { return c != r.Cells[0] })
}

// Sentence is a row of two sheets, the second in the place of the first, to be heard.
func (r Row) Sentence() string {
	return typeset.Capitalised(r.What) + ": " + r.Said[1] + " instead of " + r.Said[0]
}

// said is a cell to be heard: a dash stands for nothing.
func said(cell, unit string) string {
	switch {
	case cell == "-":
		return "none"
	case unit == "":
		return cell
	}
	return cell + " " + unit
}

func inEach(sheets []report.Report, words func(report.Report) string) []string {
	cells := make([]string, len(sheets))
	for i, r := range sheets {
		cells[i] = words(r)
	}
	return cells
}

// How a finding stands in a changed sheet beside the one before.
const (
	New   = "new"
	Gone  = "gone"
	Still = "still" // and asks for something; a note that stays says nothing
)

// Changed is a finding, and how it stands.
type Changed struct {
	How     string
	Finding report.Finding
}

// Findings are those that only one of two sheets has, and those that stay wrong: what is
// new first, then what is still wrong, then what is gone.
func Findings(before, after report.Report) (list []Changed) {
	for _, f := range after.Findings {
		if !slices.ContainsFunc(before.Findings, f.Same) {
			list = append(list, Changed{New, f})
		}
	}
	for _, f := range after.Findings {
		if f.Level > calc.Note && slices.ContainsFunc(before.Findings, f.Same) {
			list = append(list, Changed{Still, f})
		}
	}
	for _, f := range before.Findings {
		if !slices.ContainsFunc(after.Findings, f.Same) {
			list = append(list, Changed{Gone, f})
		}
	}
	return list
}

// AnswerText is an answer as the sheet shows it, "" where none was given.
func AnswerText(r report.Report, k worksheets.Key) string {
	text := typeset.Plain(forms.Said(k, r.Sheet.Text(k)))
	if l := r.Sheet.Reading(k); l.Known && text != "" {
		return r.Scale.Format(l.Length)
	}
	return text
}

// answerExactly is an answer in the unit of the comparison, a dash for none.
func answerExactly(r report.Report, k worksheets.Key) string {
	if k.Kind() == worksheets.Scale { // a ruler has its own unit
		return r.Sheet.Ruler().String()
	}
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

// row is the figure of all sheets.
func (c Consequence) row(sheets []report.Report) Row {
	return Row{c.what, inEach(sheets, c.Words), inEach(sheets, func(r report.Report) string { return said(c.Words(r), r.Scale.System.String()) })}
}

// exactFigure is a figure of the plan that is known as it is; one that was read off an
// outline is rounded, as it is everywhere.
func exactFigure(of func(calc.Plan) units.Reading) func(report.Report) string {
	return func(r report.Report) string {
		l := of(r.Plan)
		if !l.Known {
			return "-"
		}
		if exact := r.Scale.Exact(l.Length); !strings.HasPrefix(exact, units.OffMark) {
			return exact
		}
		return r.Scale.Number(l.Length)
	}
}

// kept is what a worksheet has besides answers: what a fitting showed, and what is ticked.
var kept = []Consequence{
	{"notes of fittings", func(r report.Report) string { return fmt.Sprint(len(r.Sheet.Fittings)) }},
	{"steps ticked off", func(r report.Report) string { return fmt.Sprint(len(r.Sheet.Done)) }},
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

// said is the figure to be heard.
func (f SideFigure) said(r report.Report, p calc.SidePlan) string {
	if f.what != marks || r.Plan.Open {
		return said(f.Words(r, p), r.Scale.System.String())
	}
	return cmp.Or(strings.ReplaceAll(report.SideWords(p, r.Scale), ", ", " and "), "nothing")
}

const marks = "marks"

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
	{"short by", exactOf(func(p calc.SidePlan) units.Length { return max(0, p.LeftOver) })},
	{"too large by", exactOf(func(p calc.SidePlan) units.Length { return max(0, -p.LeftOver) })},
}

// MarksOfSide is what is marked on the paper, pivot + slide, in the ruler's unit.
var MarksOfSide = SideFigure{marks, func(r report.Report, p calc.SidePlan) string {
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
	BicepAfter   = Consequence{"finished bicep", exactFigure(func(p calc.Plan) units.Reading { return p.Sleeve.Drawn })}
	bicepEase    = Consequence{"ease at the bicep, finished", exactFigure(func(p calc.Plan) units.Reading { return p.Sleeve.EaseDrawn })}
	bustEase     = Consequence{"ease at the bust, finished", exactFigure(func(p calc.Plan) units.Reading { return p.Bust.EaseDrawn })}
	BustAfter    = Consequence{"finished bust", exactFigure(func(p calc.Plan) units.Reading { return p.Bust.Drawn })}
	outcomes     = []Consequence{BicepAfter, bicepEase, BustAfter, bustEase, widthAfter(calc.AtElbow), widthAfter(calc.AtWrist), widthAfter(calc.AtWaist), widthAfter(calc.AtHip)}
	capFigures   = []Consequence{CapEase, CapHeight, armholeDepth}
)

// widthAfter is what a level below the underarm measures around.
func widthAfter(at calc.Place) Consequence {
	return Consequence{"finished " + wording.PlaceWords[at], exactFigure(func(p calc.Plan) (l units.Reading) {
		for _, w := range p.Widths {
			if w.At == at {
				l = units.Known(w.Around)
			}
		}
		return l
	})}
}

// heightAfter is the height that is left of a piece, the lower of its sides.
func heightAfter(front calc.Side) func(report.Report) string {
	return func(r report.Report) string {
		height, known := heightOf(r.Plan, front)
		if !known {
			return "-"
		}
		return r.Millimetres(height)
	}
}

func heightOf(p calc.Plan, front calc.Side) (mm float64, known bool) {
	f, b := p.Turns[front], p.Turns[front+1]
	return min(f.HeightAfter, b.HeightAfter), f.Known && b.Known
}
