package compare

import (
	"cmp"
	"slices"

	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// What differs between sheets in the sizes of the pattern that are not in hand.

// sizeID tells a size from the others of its sheet: by its name and, where a file has that
// twice, by which of them it is.
type sizeID struct {
	name string
	nth  int
}

// sizesOf are the sizes of a sheet, those besides the one in hand first; inHand is the
// last of them.
func sizesOf(s *worksheets.Sheet) (ids []sizeID, sizes []worksheets.Size, inHand sizeID) {
	seen := map[string]int{}
	add := func(name string, z worksheets.Size) {
		ids, sizes = append(ids, sizeID{name, seen[name]}), append(sizes, z)
		seen[name]++
	}
	for _, z := range s.Sizes[:min(len(s.Sizes), worksheets.MostSizes)] {
		add(z.Name(), z)
	}
	add(cmp.Or(s.Text(worksheets.PatternSize), worksheets.Unnamed), s.SizeInHand()) // as it is called once another is in hand
	return ids, sizes, ids[len(ids)-1]
}

// sizeRows are the answers of other sizes that differ between sheets, and the sizes that
// only some of them have, in the order of the file. What differs in the size in hand are
// answers of the sheet.
func sizeRows(sheets []report.Report) (rows []Row) {
	if !slices.ContainsFunc(sheets, func(r report.Report) bool { return !slices.Equal(r.Sheet.Sizes, sheets[0].Sheet.Sizes) }) {
		return nil
	}
	var order []sizeID
	has := make([]map[sizeID]worksheets.Size, len(sheets))
	hand := map[sizeID]int{} // in how many sheets it is in hand
	for i := range sheets {
		ids, sizes, inHand := sizesOf(&sheets[i].Sheet)
		has[i] = map[sizeID]worksheets.Size{}
		hand[inHand]++
		for n, id := range ids {
			if has[i][id] = sizes[n]; !slices.Contains(order, id) {
				order = append(order, id)
			}
		}
	}
	for _, id := range order {
		if hand[id] < len(sheets) {
			rows = append(rows, rowsOfSize(sheets, id, has, hand[id] > 0)...)
		}
	}
	return rows
}

// rowsOfSize are the rows of one size. One that was taken in hand, or renamed there, is not
// called new or gone: the size in hand is an answer too.
func rowsOfSize(sheets []report.Report, id sizeID, has []map[sizeID]worksheets.Size, inHand bool) (rows []Row) {
	name := typeset.Plain(cmp.Or(id.name, worksheets.Unnamed))
	add := func(what string, cell func(i int, z worksheets.Size) string) {
		row := Row{What: what}
		for i := range sheets {
			text := "-"
			if z, ok := has[i][id]; ok {
				text = cell(i, z)
			}
			row.Cells, row.Said = append(row.Cells, text), append(row.Said, said(text, ""))
		}
		if row.differs() {
			rows = append(rows, row)
		}
	}
	if !inHand {
		add("size "+name, func(int, worksheets.Size) string { return measured })
	}
	for _, k := range worksheets.SizeKeys() {
		f, ok := forms.Fields[k]
		if !ok || k == worksheets.PatternSize || !answersDiffer(has, id, k) {
			continue
		}
		add(f.Words+" of size "+name, func(i int, z worksheets.Size) string {
			one := sheets[i]
			one.Sheet = one.Sheet.WithSize(len(one.Sheet.Sizes), z)
			one.Sheet = one.Sheet.SizeAlone(len(one.Sheet.Sizes) - 1)
			return answerExactly(one, k)
		})
	}
	return rows
}

// answersDiffer tells that those sheets that have a size do not all have the same answer of
// it. What a new size brings is not told answer by answer.
func answersDiffer(has []map[sizeID]worksheets.Size, id sizeID, k worksheets.Key) bool {
	var first *worksheets.Size
	for _, sizes := range has {
		switch z, ok := sizes[id]; {
		case !ok:
		case first == nil:
			first = &z
		case z.Text(k) != first.Text(k):
			return true
		}
	}
	return false
}

// SizeChanges say what differs in the other sizes of a changed sheet, in the words of the
// sizes: "sleeve width of size 18: 17 in", "size 22 removed".
func SizeChanges(before, after report.Report) (list []string) {
	for _, row := range sizeRows([]report.Report{before, after}) {
		switch was, is := row.Cells[0], row.Cells[1]; {
		case is == measured:
			list = append(list, row.What+" added")
		case was == measured:
			list = append(list, row.What+" removed")
		case is == "-":
			list = append(list, row.What+" empty")
		default:
			list = append(list, row.What+": "+is)
		}
	}
	return list
}

// measured stands where a sheet has a size that another one lacks.
const measured = "measured"
