package paper

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// The corner templates are true to scale on either paper: read back from the PDF, the
// dots of each template lie as far from its pin hole, across and down, as the plan's
// points by the marks, turned by a quarter where the template lies sideways. The points
// are worked out here from the marks and the turn alone.
func TestCornerTemplatesAreTrueToScale(t *testing.T) {
	var without []string
	long := "bust_down = \"2\"\nside_seam"
	for name, change := range map[string][2]string{"choir-blouse": {"side_seam", long}, "archive-coat": {}, "inward": {`bicep       = "13 3/4"`, `bicep       = "10 1/2"`}} {
		example := name
		if name == "inward" {
			example = "choir-blouse"
		}
		r := sheetWith(t, example, change)
		for _, paperName := range []string{"a4", "letter"} {
			reader := readBack(t, r, paperName)
			gauge, _ := gaugePage(t, reader)
			dots := map[string]bool{}
			for i := gauge + 1; i <= reader.NumPage(); i++ {
				var at [][2]float64
				for _, rect := range reader.Page(i).Content().Rect {
					at = append(at, [2]float64{(rect.Min.X + rect.Max.X) / 2 * props.MillimetresPerPoint, (rect.Min.Y + rect.Max.Y) / 2 * props.MillimetresPerPoint})
				}
				for _, pin := range at {
					for _, p := range at {
						dots[tenths(p[0]-pin[0], p[1]-pin[1])] = true
						dots[tenths(pin[1]-p[1], p[0]-pin[0])] = true // sideways: outward lies down the page
					}
				}
			}
			found, said := 0, allText(t, reader)
			for _, s := range calc.Sides() {
				e, side := r.Plan.Edges[s], r.Plan.Sides[s]
				turn := r.Plan.AsMarked(r.Input).Turns[s]
				if !e.Known || side.PivotMark == 0 && side.SlideMark == 0 {
					continue
				}
				if strings.Contains(said, typeset.Capitalised(wording.SubjectWords[s.Subject()])+": no room") {
					without = append(without, fmt.Sprintf("%s %s %d", name, paperName, s))
					continue
				}
				x, y := calc.Turned(e.W, -e.H, turn.Angle)
				for what, want := range map[string][2]float64{
					"old corner": {e.W, -e.H}, "new corner": {x + side.SlideMark.Millimetres(), y},
					"last mark": {e.W + side.Marked().Millimetres(), -e.H},
				} {
					if !nearDot(dots, want) {
						t.Errorf("%s on %s, side %d: no %s at %v from the pin", name, paperName, s, what, want)
					}
					found++
				}
			}
			if found < 6 {
				t.Errorf("%s: only %d points were looked for", name, found)
			}
		}
	}
	// 24 cm down to its bust line, and Letter is 279 mm high.
	if !slices.Equal(slices.Sorted(slices.Values(without)), []string{"archive-coat letter 2", "archive-coat letter 3"}) {
		t.Errorf("without a template: %v", without)
	}
}

// tenths is a place in tenths of a millimetre, without a minus before nothing.
func tenths(x, y float64) string {
	return fmt.Sprintf("%.1f %.1f", math.Round(x*10)/10+0, math.Round(y*10)/10+0)
}

// nearDot tells that a place is among the dots, to a twentieth of a millimetre or the
// rounding of a tenth.
func nearDot(dots map[string]bool, at [2]float64) bool {
	for _, dx := range []float64{-0.05, 0, 0.05} {
		for _, dy := range []float64{-0.05, 0, 0.05} {
			if dots[tenths(at[0]+dx, at[1]+dy)] {
				return true
			}
		}
	}
	return false
}

// sheetWith is the report of an example with one text replaced.
func sheetWith(t *testing.T, example string, change [2]string) report.Report {
	t.Helper()
	props.Lay(t, example)
	text := props.Read(t, "sheet.toml")
	if change[0] != "" {
		if !strings.Contains(text, change[0]) {
			t.Fatalf("%q is not in the example", change[0])
		}
		text = strings.Replace(text, change[0], change[1], 1)
	}
	d, err := worksheets.Decode("sheet.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return report.Reckon(d, props.SomeDay, 0)
}

// A corner that no paper holds is said, not drawn too small.
func TestACornerWithNoRoomIsSaid(t *testing.T) {
	r := sheetWith(t, "choir-blouse", [2]string{`width         = "13"`, `width         = "44"`})
	r = r.With(mustSet(t, mustSet(t, r.Sheet, worksheets.HemWidth, "44"), worksheets.Bicep, "46"))
	if text := allText(t, readBack(t, r, "a4")); !strings.Contains(text, "no room for it on this paper") {
		t.Error("nothing is said")
	}
}

func mustSet(t *testing.T, s worksheets.Sheet, k worksheets.Key, text string) worksheets.Sheet {
	t.Helper()
	if err := s.Set(k, text); err != nil {
		t.Fatal(err)
	}
	return s
}
