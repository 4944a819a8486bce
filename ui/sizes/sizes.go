// Package sizes lays the sizes of a pattern side by side: what each costs, and which one
// the high bust says. It never says which to take.
//
// A pattern is bought in one size and printed in several, nested; which of them is least
// trouble to alter nobody compares by hand, for each comparison is the whole worksheet
// again. Common practice chooses by what is hardest to alter, shoulders and neck: so by
// the high bust where the bust is fuller by 2 in or more, and alters the widths.
package sizes

import (
	"slices"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// Size is a size of the pattern with all that follows from it.
type Size struct {
	Name   string // as the pattern calls it; "" where the one in hand has no name
	InHand bool
	Report report.Report
}

// Of are the sizes of a worksheet, the one in hand first, then in the order of the file.
// Each is the report of a worksheet that has this size alone. Those in known are not
// reckoned again where they are the same still.
func Of(r report.Report, known ...Size) []Size {
	all := []Size{{r.Sheet.Text(worksheets.PatternSize), true, r}}
	for i, z := range r.Sheet.Sizes {
		if i == worksheets.MostSizes {
			break
		}
		alone := worksheets.Document{Sheet: r.Sheet.SizeAlone(i)}
		one, at := Size{Name: z.Name()}, -1
		for n := range known {
			if k := &known[n]; !k.InHand && k.Name == one.Name && k.Report.Holds(&alone, r.Scale.System) {
				at = n
			}
		}
		if at >= 0 {
			one.Report = known[at].Report
		} else {
			one.Report = r.With(alone.Sheet)
		}
		all = append(all, one)
	}
	return all
}

// Title is the name of the size where it stands alone.
func (z Size) Title() string {
	if z.Name == "" {
		return worksheets.Unnamed
	}
	return typeset.Plain(z.Name)
}

// Row is one thing that is said of every size.
type Row struct {
	Label string
	Cells []string // one for each size
}

// Heads name the sizes, and mark the one in hand and the one that the body says.
func Heads(all []Size) []Row {
	names, hand, said := Row{Label: "Size"}, Row{}, Row{}
	choice := Choice(all)
	says := map[calc.Answer]string{calc.HighBust: "by high bust", calc.Bust: "by the bust"}[choice.By]
	mark := func(is bool, words string) string {
		if is {
			return words
		}
		return ""
	}
	for i, z := range all {
		names.Cells = append(names.Cells, z.Title())
		hand.Cells = append(hand.Cells, mark(z.InHand, "in hand"))
		said.Cells = append(said.Cells, mark(slices.Contains(choice.Nearest, i), says))
	}
	if len(all) == 1 || len(choice.Nearest) == 0 {
		return []Row{names, hand}
	}
	return []Row{names, hand, said}
}

// Rows are what the sizes cost, in the order of the work: needs, marks, what cap and bust
// come to, and how the chart's body compares with the wearer's. All but the marks are in
// the unit that the sheet is shown in.
func Rows(all []Size) []Row {
	var rows []Row
	add := func(label string, cell func(r report.Report) string) {
		row := Row{Label: label}
		for _, z := range all {
			row.Cells = append(row.Cells, cell(z.Report))
		}
		rows = append(rows, row)
	}
	add("Sleeve needs", func(r report.Report) string { return wording.OrDash(r.Plan.Sleeve.Need, r.Scale) })
	add("Bust needs", func(r report.Report) string { return wording.OrDash(r.Plan.Bust.Need, r.Scale) })
	for _, front := range []calc.Side{calc.SleeveFront, calc.BodiceFront} {
		add(typeset.Capitalised(wording.SubjectWords[front.Subject()]), func(r report.Report) string { return marks(r, front) })
		add(typeset.Capitalised(wording.SubjectWords[(front+1).Subject()]), func(r report.Report) string { return marks(r, front+1) })
		if last := len(rows) - 1; slices.Equal(rows[last].Cells, rows[last-1].Cells) { // front and back alike
			rows = rows[:last]
			rows[last-1].Label = typeset.Capitalised(report.WordsOfPiece(front.Subject()).Name) + ", each side"
		}
	}
	add("Cap height lost", func(r report.Report) string {
		if lost := r.Plan.CapLost(); lost.Known {
			return r.Millimetres(lost.MM)
		}
		return "-"
	})
	add("Cap ease after", func(r report.Report) string { return wording.OrDash(r.Plan.Seams.CapEaseAfter, r.Scale) })
	add("Bust comes to", func(r report.Report) string { return wording.OrDash(r.Plan.Bust.Drawn, r.Scale) })
	add("more than asked", func(r report.Report) string { return wording.OrDash(r.Plan.Bust.Unasked(), r.Scale) })
	add("Chart, high bust", func(r report.Report) string {
		return beside(r, worksheets.ChartHighBust, r.Input.HighBust)
	})
	add("Chart, bust", func(r report.Report) string { return beside(r, worksheets.ChartBust, r.Input.Bust) })
	return rows
}

// CellWidth is how wide a column has to be for rows of amounts, of which none is cut; and
// at least so wide.
func CellWidth(rows []Row, least int) int {
	for _, row := range rows {
		for _, c := range row.Cells {
			least = max(least, typeset.Width(c)+1)
		}
	}
	return least
}

// marks are what to mark on a side, pivot + slide.
func marks(r report.Report, s calc.Side) string {
	side := r.Plan.Sides[s]
	switch {
	case r.Plan.Open:
		return "-"
	case side.PivotMark == 0 && side.SlideMark == 0:
		return "nothing"
	}
	return report.BareMarks(side.PivotMark, side.SlideMark, r.Scale)
}

// beside says how the chart's body lies to the wearer's.
func beside(r report.Report, k worksheets.Key, body units.Reading) string {
	printed := r.Sheet.Reading(k)
	if !printed.Known || !body.Known {
		return "-"
	}
	return difference(printed.Length-body.Length, r.Scale.Number)
}

// difference is "1/2 less".
func difference(l units.Length, number func(units.Length) string) string {
	switch {
	case l < 0:
		return number(-l) + " less"
	case l > 0:
		return number(l) + " more"
	}
	return "the same"
}

// charts are what the pattern's chart says of each size.
func charts(all []Size) []calc.Charted {
	charts := make([]calc.Charted, len(all))
	for i, z := range all {
		charts[i] = calc.Charted{Bust: z.Report.Sheet.Reading(worksheets.ChartBust), HighBust: z.Report.Sheet.Reading(worksheets.ChartHighBust)}
	}
	return charts
}

// Choice is what the wearer's body says of the sizes.
func Choice(all []Size) calc.SizeChoice {
	in := all[0].Report.Input
	return calc.ChooseSize(in.Bust, in.HighBust, charts(all))
}
