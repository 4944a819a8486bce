package compare

import (
	"slices"
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

// sized is the smock with some answers changed.
func sized(t *testing.T, changes map[worksheets.Key]string) report.Report {
	t.Helper()
	d, err := worksheets.Example("market-smock")
	if err != nil {
		t.Fatal(err)
	}
	for k, text := range changes {
		if err := d.Sheet.Set(k, text); err != nil {
			t.Fatal(err)
		}
	}
	return report.Reckon(d, props.SomeDay, 0)
}

// A trouble that the size in hand has and another measured size has not is removed by that
// size, and trying it as the offer says gives the sheet of the offer. By hand: an arm of
// 17 in makes the sleeve of size 20 slide 1/4 in a side, where its bodice needs 1/8; the
// bodices of 18 and 16 need more than their sleeves slide.
func TestAMeasuredSizeIsOffered(t *testing.T) {
	r := sized(t, map[worksheets.Key]string{worksheets.Bicep: "17"})
	offered := func(r report.Report) (list []string) {
		for _, trouble := range Troubles(r) {
			for _, o := range trouble.Offers {
				name, is := strings.CutPrefix(o.Try, "pattern.size=")
				if !is {
					continue
				}
				list = append(list, o.Change)
				if i, ok := r.Sheet.SizeNamed(name); !ok || !o.Sheet.Equal(r.Sheet.TakeInHand(i)) || len(o.Price) == 0 {
					t.Errorf("%+v", o)
				}
			}
		}
		return list
	}
	if got := offered(r); !slices.Equal(got, []string{"size 18 of the pattern instead of 20", "size 16 of the pattern instead of 20"}) {
		t.Errorf("%q", got)
	}
	kept := r.Sheet
	kept.Set(worksheets.Armhole, "keep")
	if got := offered(r.With(kept)); len(got) != 0 {
		t.Errorf("a bodice that is cut is offered in another size: %q", got)
	}
}

// Where both pieces need more than twice what the limits allow, the sizes that do not are
// named, and offered.
func TestLargerSizesAreNamed(t *testing.T) {
	r := sized(t, map[worksheets.Key]string{worksheets.Bicep: "17", worksheets.Bust: "48"})
	small := r.With(r.Sheet.TakeInHand(1))
	sheet := small.Sheet // size 16: the sleeve needs 3 1/2, the bust 6 1/2; 20: 2 1/2 and 2 1/2
	sheet.Set(worksheets.PivotLimitSleeve, "3/4")
	sheet.Set(worksheets.PivotLimitBodice, "3/4") // so that more than 3 and more than 6 are too much
	r = small.With(sheet)
	ways := func(r report.Report) (ways []string) {
		for _, f := range r.Findings {
			if f.Code == "start-larger" {
				for _, w := range f.Ways {
					ways = append(ways, w.Words)
				}
			}
		}
		return ways
	}
	if got := ways(r); !slices.Equal(got, []string{"start from size 20 or 18"}) && !slices.Equal(got, []string{"start from size 18 or 20"}) {
		t.Errorf("%q in %+v", got, r.Findings)
	}
	found := false
	for _, trouble := range Troubles(r) {
		found = found || trouble.Finding.Code == "start-larger" && len(trouble.Offers) == 2
	}
	if !found {
		t.Error("they are not offered")
	}
	sheet = sheet.WithoutSize(0).WithoutSize(0)
	if got := ways(r.With(sheet)); len(got) != 1 || got[0] != "start from another pattern size" {
		t.Errorf("where no other is measured: %q", got)
	}
}
