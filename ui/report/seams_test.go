package report_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/calc/trace"
	"capscye/ui/report"
	"capscye/ui/wording"
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

// bound is the long blouse, tight at elbow and waist and tapered from its corners: the
// steps draw its seams out there, and with that it is wider at bicep and bust too.
func bound(t *testing.T, answers map[worksheets.Key]string) report.Report {
	all := map[worksheets.Key]string{
		worksheets.TaperFrom: "corner", worksheets.Elbow: "12", worksheets.EaseElbow: "2", worksheets.Waist: "33", worksheets.EaseWaist: "3",
	}
	maps.Copy(all, answers)
	return longBlouse(t, all)
}

// What binds is said with the very point that the steps draw to. At the waist 36 is wanted
// and 35 is there: 1/4 a side. At the elbow, 12 wide, 14 is wanted: 1 a side.
func TestWhatBindsIsSaidAsItIsDrawn(t *testing.T) {
	r := bound(t, nil)
	var texts []string
	for _, f := range r.Findings {
		if f.Code == calc.BindsBelow {
			texts = append(texts, f.Text)
		}
	}
	for _, want := range []string{
		"At the elbow the sleeve would be short by ~5/8 in: the steps draw each side to 1 in outside the old seam there.",
		"At the waist the bodice would be short by 1 in: the steps draw each side to 1/4 in outside the old seam there.",
	} {
		if !slices.Contains(texts, want) {
			t.Errorf("not %q but %q", want, texts)
		}
	}
	// Front and back that gain unlike are drawn out unlike: 3/5 of 2 1/2 in is 1 1/2 in.
	has(t, bound(t, map[worksheets.Key]string{worksheets.FrontShareSleeve: "3/5"}), calc.BindsBelow, "the steps draw the front to ")
	// A bodice that stays cannot be drawn out.
	has(t, bound(t, map[worksheets.Key]string{worksheets.Armhole: "keep", worksheets.Bust: "", worksheets.Elbow: ""}), calc.BindsBelow, "it must go out by 1/4 in more on each side there.")
}

// What comes out is said as the tape finds it on what is drawn, and nowhere otherwise: at
// the bicep line, with the elbow drawn out, about 15 and not 14 7/8.
func TestWhatComesOutIsWhatIsDrawn(t *testing.T) {
	r := bound(t, nil)
	steps := trace.Steps(r.Input, r.Plan)
	at := slices.IndexFunc(steps, func(s trace.Step) bool { return s.Name == "check-widths" })
	for i, g := range []calc.Girth{r.Plan.Sleeve, r.Plan.Bust} {
		drawn := r.Scale.Format(g.DrawnMarked.Length)
		if r.Scale.Format(g.Marked.Length) == drawn {
			t.Errorf("the points change nothing: %s", drawn)
		}
		if step := [...]string{r.Scale.Format(steps[at].Sleeve.Length), r.Scale.Format(steps[at].Bust.Length)}[i]; step != drawn {
			t.Errorf("the step says %s, the plan %s", step, drawn)
		}
		if words := r.Pieces()[i].FinishedWords(r.Scale); !strings.HasPrefix(words, drawn+" around") { // the marks are the amounts
			t.Errorf("the answer says %q, not %s", words, drawn)
		}
		if row := report.FinishedTable(r)[1+i]; strings.Count(row, strings.TrimSuffix(drawn, " in")) != 2 {
			t.Errorf("the table says %q, not %s", row, drawn)
		}
		if !slices.ContainsFunc(r.Findings, func(f report.Finding) bool {
			return f.Code == calc.ShortAtLine && strings.Contains(f.Text, "would be ") && strings.Contains(f.Text, "; drawn out to fit further down, it measures "+drawn+" there by the marks.")
		}) {
			t.Errorf("no finding says %s: %v", drawn, r.Findings)
		}
	}
}

// How much longer a seam gets is one figure, that of the seam that is drawn: front and back
// side seam with their waist drawn out are as long as each other, to the ruler.
func TestASeamGrowsAsItIsDrawn(t *testing.T) {
	r := bound(t, nil)
	steps := trace.Steps(r.Input, r.Plan)
	at := slices.IndexFunc(steps, func(s trace.Step) bool { return s.Name == "check-side-seams" })
	for _, s := range calc.Sides() {
		grows := steps[at].Growths[s]
		if row := report.TurnTable(r)[1+int(s)]; !grows.Known || !strings.HasSuffix(row, "+"+r.Scale.Number(grows.Length)) {
			t.Errorf("the step says %v, the table %q", grows, row)
		}
	}
	apart := (steps[at].Growths[calc.BodiceFront].Length - steps[at].Growths[calc.BodiceBack].Length).Abs().Round(r.Input.Ruler.Mark()) > 0
	if said := slices.ContainsFunc(r.Findings, func(f report.Finding) bool { return f.Code == calc.GrowthsDiffer && f.About == "bust" }); said != apart {
		t.Errorf("they differ: %v; it is said: %v", apart, said)
	}
}

// The line across a bodice has one name: it is the bust line where that was measured, and
// else the level line that the steps draw through the underarm.
func TestTheLineAcrossTheBodiceHasOneName(t *testing.T) {
	for down, want := range map[string]string{"2": "bust line", "": "level line", "0": "level line"} {
		r := longBlouse(t, map[worksheets.Key]string{worksheets.BustDown: down})
		if got := wording.GirthLine(r.Bodice()); got != want {
			t.Errorf("bust line %q down: the picture says %s", down, got)
		}
		steps := trace.Steps(r.Input, r.Plan)
		at := slices.IndexFunc(steps, func(s trace.Step) bool { return s.Name == "bodice-front-lay" })
		if drawn := steps[at].LineDown.Known; drawn != (want == "bust line") {
			t.Errorf("bust line %q down: the steps draw one: %v", down, drawn)
		}
	}
	has(t, longBlouse(t, map[worksheets.Key]string{worksheets.CornerDownFront: "3"}), calc.SharpBend, "over 15 (our bound)")
}
