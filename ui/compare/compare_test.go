package compare_test

import (
	"slices"
	"strings"
	"testing"

	"capscye/calc/remedy"
	"capscye/ui/compare"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

// changed is the report of an example with other answers.
func changed(t *testing.T, example string, answers map[worksheets.Key]string) report.Report {
	t.Helper()
	r := props.ReportOf(t, example)
	for k, text := range answers {
		if err := r.Sheet.Set(k, text); err != nil {
			t.Fatal(err)
		}
	}
	return r.With(r.Sheet)
}

// Front and back have a row each where they differ in any of the sheets. The sleeve of
// the blouse needs 2 1/2 in: 1 1/4 a side, or 1 and 1 1/2 where the front takes 2/5.
func TestFrontAndBackAreToldApartWhereAnySheetDoes(t *testing.T) {
	before, after := props.ReportOf(t, "choir-blouse"), changed(t, "choir-blouse", map[worksheets.Key]string{worksheets.FrontShareSleeve: "2/5"})
	for _, sheets := range [][]report.Report{{before, after}, {after, before}} {
		rows := compare.Sheets(sheets...)
		for what, want := range map[string][]string{"sleeve front slide": {"1/4", "0"}, "sleeve back slide": {"1/4", "1/2"}} {
			if sheets[0].Sheet.Equal(after.Sheet) {
				slices.Reverse(want)
			}
			if !slices.ContainsFunc(rows, func(r compare.Row) bool { return r.What == what && slices.Equal(r.Cells, want) }) {
				t.Errorf("%s %v is not in %v", what, want, rows)
			}
		}
	}
}

// Another unit is no other answer: nothing that was measured changes, and a ruler keeps its
// own unit.
func TestAnotherUnitIsNoOtherAnswer(t *testing.T) {
	before, after := props.ReportOf(t, "choir-blouse"), changed(t, "choir-blouse", map[worksheets.Key]string{worksheets.Unit: "cm"})
	for _, row := range compare.Sheets(before, after) {
		if row.What != "unit" {
			t.Errorf("%s: %q", row.What, row.Cells)
		}
	}
	after = changed(t, "choir-blouse", map[worksheets.Key]string{worksheets.Ruler: "1 mm"})
	if rows := compare.Sheets(before, after); rows[0].What != "ruler mark" || !slices.Equal(rows[0].Cells, []string{"1/8 in", "1 mm"}) {
		t.Errorf("%+v", rows[0])
	}
}

// What no ruler shows is not said to be lost, and a price is one sentence.
func TestAPriceIsWhatARulerShows(t *testing.T) {
	for _, name := range worksheets.Examples() {
		for _, trouble := range compare.Troubles(props.ReportOf(t, name)) {
			for _, o := range trouble.Offers {
				if strings.Contains(o.Cost(), "~0 ") || strings.Contains(o.Cost(), " 0 in more") || strings.Contains(o.Cost(), ".;") {
					t.Errorf("%s, %s: %s", name, o.Change, o.Cost())
				}
			}
		}
	}
}

// Of several offers those that bring no other trouble come first. An ease of 4 in
// needs more than a bodice that is held can follow; letting it out makes a bust larger that
// nobody asked for.
func TestOffersThatBringNoOtherTroubleComeFirst(t *testing.T) {
	r := changed(t, "choir-blouse", map[worksheets.Key]string{worksheets.EaseBicep: "4", worksheets.Bust: "", worksheets.Follow: "hold"})
	troubles := compare.Troubles(r)
	if len(troubles) != 1 {
		t.Fatalf("troubles: %v", troubles)
	}
	var left []int
	for _, o := range troubles[0].Offers {
		left = append(left, len(remedy.Troubles(r.With(o.Sheet).Plan)))
	}
	if want := []int{0, 0, 0, 1}; !slices.Equal(left, want) {
		t.Errorf("the offers leave %v troubles, want %v", left, want)
	}
}
