package compare

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"capscye/ui/report"
	"capscye/worksheets"
)

// differing are the rows that differ in the sizes of a changed smock, as "what: cells".
func differing(t *testing.T, change func(s worksheets.Sheet) worksheets.Sheet) (rows []string, before, after report.Report) {
	t.Helper()
	before = sized(t, nil)
	after = before.With(change(before.Sheet))
	for _, row := range Sheets(before, after) {
		if strings.Contains(row.What, " of size ") || strings.HasPrefix(row.What, "size ") {
			rows = append(rows, fmt.Sprintf("%s: %s, %s", row.What, row.Cells[0], row.Cells[1]))
			if len(row.Said) != 2 || strings.Contains(row.Sentence(), "-") {
				t.Errorf("to be heard: %q", row.Sentence())
			}
		}
	}
	return rows, before, after
}

// A change of any size of the pattern is a difference, and is named by its size. The smock
// has size 20 in hand, and 18 and 16 beside it.
func TestWhatDiffersInAnotherSizeIsARow(t *testing.T) {
	for name, c := range map[string]struct {
		change  func(s worksheets.Sheet) worksheets.Sheet
		rows    []string
		changes []string
	}{
		"width": {func(s worksheets.Sheet) worksheets.Sheet {
			return s.WithSize(0, s.Sizes[0].With(worksheets.SleeveWidth, "17"))
		}, []string{"sleeve width of size 18: 16 in, 17 in"}, []string{"sleeve width of size 18: 17 in"}},
		"emptied": {func(s worksheets.Sheet) worksheets.Sheet {
			return s.WithSize(0, s.Sizes[0].With(worksheets.CapHeight, "").With(worksheets.BodiceFront, "12 1/4"))
		}, []string{"cap height of size 18: 5 1/2 in, -", "bodice front width of size 18: 12 in, 12 1/4 in"}, []string{"cap height of size 18 empty", "bodice front width of size 18: 12 1/4 in"}},
		"added": {func(s worksheets.Sheet) worksheets.Sheet {
			return s.WithSize(2, s.Sizes[0].With(worksheets.PatternSize, "22 W"))
		}, []string{"size 22 W: -, measured"}, []string{"size 22 W added"}},
		"removed": {func(s worksheets.Sheet) worksheets.Sheet { return s.WithoutSize(1) }, []string{"size 16: measured, -"}, []string{"size 16 removed"}},
		"in hand": {func(s worksheets.Sheet) worksheets.Sheet { return s.TakeInHand(0) }, nil, nil},
		"renamed in hand": {func(s worksheets.Sheet) worksheets.Sheet {
			_ = s.Set(worksheets.PatternSize, "20 W")
			return s.WithSize(1, s.Sizes[1].With(worksheets.SleeveWidth, "15"))
		}, []string{"sleeve width of size 16: 15 1/2 in, 15 in"}, []string{"sleeve width of size 16: 15 in"}},
		"in hand and changed": {func(s worksheets.Sheet) worksheets.Sheet {
			s = s.TakeInHand(0)
			return s.WithSize(0, s.Sizes[0].With(worksheets.SleeveWidth, "17"))
		}, []string{"sleeve width of size 20: 16 1/2 in, 17 in"}, []string{"sleeve width of size 20: 17 in"}},
		"the same length": {func(s worksheets.Sheet) worksheets.Sheet {
			return s.WithSize(1, s.Sizes[1].With(worksheets.SleeveWidth, "15.5 in"))
		}, nil, nil},
	} {
		rows, before, after := differing(t, c.change)
		if !slices.Equal(rows, c.rows) {
			t.Errorf("%s: the rows are %q", name, rows)
		}
		if got := SizeChanges(before, after); !slices.Equal(got, c.changes) {
			t.Errorf("%s: the changes are %q", name, got)
		}
	}
}

// Of three sheets, a size that two have is compared between these.
func TestSizesOfThreeSheets(t *testing.T) {
	one := sized(t, nil)
	two := one.With(one.Sheet.WithSize(2, worksheets.Size{}.With(worksheets.PatternSize, "22").With(worksheets.SleeveWidth, "17")))
	three := one.With(one.Sheet.WithSize(2, worksheets.Size{}.With(worksheets.PatternSize, "22").With(worksheets.SleeveWidth, "18")))
	var got []string
	for _, row := range sizeRows([]report.Report{one, two, three}) {
		got = append(got, row.What+" "+strings.Join(row.Cells, ", "))
	}
	if want := []string{"size 22 -, measured, measured", "sleeve width of size 22 -, 17 in, 18 in"}; !slices.Equal(got, want) {
		t.Errorf("the rows are %q", got)
	}
}

// A size in hand that had no name gets one when another is taken in hand, and is no new size.
func TestTheUnnamedSizeIsNotNew(t *testing.T) {
	before := sized(t, map[worksheets.Key]string{worksheets.PatternSize: ""})
	if got := SizeChanges(before, before.With(before.Sheet.TakeInHand(0))); got != nil {
		t.Errorf("the changes are %q", got)
	}
}
