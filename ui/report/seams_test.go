package report_test

import (
	"maps"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/worksheets"
)

// longBlouse is a blouse with long sleeves that taper back to 9 in at the wrist, and a bodice
// that tapers to its waist. It needs 2 1/2 in at bicep and bust.
func longBlouse(t *testing.T, answers map[worksheets.Key]string) report.Report {
	t.Helper()
	all := map[worksheets.Key]string{
		worksheets.Ruler: "1/8 in", worksheets.Bicep: "13 3/4", worksheets.BicepOther: "", worksheets.EaseBicep: "1 3/4", worksheets.Bust: "39 1/2", worksheets.EaseBust: "3",
		worksheets.SleeveLength: "long", worksheets.SleeveMeasured: "seam", worksheets.SleeveWidth: "13", worksheets.CapHeight: "5 1/4",
		worksheets.CapFront: "9", worksheets.CapBack: "9 1/4", worksheets.UnderarmSeam: "17", worksheets.HemWidth: "9", worksheets.ElbowWidth: "12",
		worksheets.BodiceFront: "10 1/4", worksheets.BodiceBack: "9 3/4", worksheets.TakeOffFront: "", worksheets.TakeOffBack: "", worksheets.BodiceMeasured: "seam",
		worksheets.ArmholeFront: "8 5/8", worksheets.ArmholeBack: "8 7/8", worksheets.CornerOutFront: "2", worksheets.CornerDownFront: "7",
		worksheets.CornerOutBack: "1 3/4", worksheets.CornerDownBack: "7 1/4", worksheets.BustDown: "2", worksheets.SideSeam: "8",
		worksheets.WaistFront: "9", worksheets.WaistBack: "8 1/2", worksheets.Waist: "", worksheets.Hip: "", worksheets.HipFront: "", worksheets.HipBack: "", worksheets.Slide: "least",
	}
	maps.Copy(all, answers)
	return blouse(t, all)
}

// has holds that the words of a finding hold others.
func has(t *testing.T, r report.Report, code calc.Code, words string) {
	t.Helper()
	if text := textOf(t, r, code); !strings.Contains(text, words) {
		t.Errorf("%s says %q, want %q in it", code, text, words)
	}
}

// Tapered from its corners, a piece that grows is narrower at its line than asked, and one
// that comes in is wider: what lies further out there is the taper either way.
func TestTaperedFromTheCornerWiderOrNarrower(t *testing.T) {
	corner := map[worksheets.Key]string{worksheets.TaperFrom: "corner"}
	has(t, longBlouse(t, corner), calc.ShortAtLine, "~5/8 in narrower at the bicep line than its sides pivot and slide")
	maps.Copy(corner, map[worksheets.Key]string{worksheets.Bicep: "10 1/4", worksheets.Bust: "34 1/2"})
	r := longBlouse(t, corner)
	has(t, r, calc.ShortAtLine, "wider at the bust line than its sides pivot and slide")
	for _, f := range r.Findings {
		if f.Code == calc.ShortAtLine && f.Short() != "bust wider at the line" {
			t.Errorf("in short: %q", f.Short())
		}
	}
}
