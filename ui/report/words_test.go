package report_test

import (
	"strings"
	"testing"

	"capscye/calc"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/units"
	"capscye/worksheets"
)

// blouse is the report of the choir blouse with other answers. It needs 2 1/2 in at
// the bicep, 1 1/4 a side: a pivot of 1 and a slide of 1/4.
func blouse(t *testing.T, answers map[worksheets.Key]string) report.Report {
	t.Helper()
	r := props.ReportOf(t, "choir-blouse")
	for k, text := range answers {
		if err := r.Sheet.Set(k, text); err != nil {
			t.Fatal(err)
		}
	}
	return r.With(r.Sheet)
}

// textOf is the text of the one finding with the code.
func textOf(t *testing.T, r report.Report, code calc.Code) string {
	t.Helper()
	for _, f := range r.Findings {
		if f.Code == code {
			return f.Text
		}
	}
	t.Fatalf("no %s in %v", code, r.Findings)
	return ""
}

// By the marks of a ruler a sleeve can come out wider or narrower than by the sums;
// both are said, and nothing where they agree.
func TestWhatComesOutByTheMarks(t *testing.T) {
	for ruler, want := range map[string]string{
		"1/8 in": "15 1/2 in around, 1 3/4 in of ease",
		"1/2 in": "15 1/2 in around, 1 3/4 in of ease; by the marks 16 in", // 1 1/4 a side is 1 1/2 on the ruler: 13 + 3
	} {
		if got := blouse(t, map[worksheets.Key]string{worksheets.Ruler: ruler}).Pieces()[0].FinishedWords(inEighths); got != want {
			t.Errorf("on a ruler in %s: %q, want %q", ruler, got, want)
		}
	}
	narrower := blouse(t, map[worksheets.Key]string{worksheets.Ruler: "1/2 in", worksheets.Bicep: "13 5/8", worksheets.BicepOther: ""})
	// 13 5/8 + 1 3/4 - 13 = 2 3/8, 1 3/16 a side, which is 1 on the ruler: 13 + 2
	if got, want := narrower.Pieces()[0].FinishedWords(inEighths), "15 3/8 in around, 1 3/4 in of ease; by the marks 15 in"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

var inEighths = units.Scale{System: units.Inches, Ruler: units.EighthInch}

// Who is still on the way is not told off for what is not answered yet.
func TestTheTallyLeavesOutWhatIsStillToBeAnswered(t *testing.T) {
	whole := blouse(t, nil)
	begun := blouse(t, map[worksheets.Key]string{worksheets.SleeveWidth: "", worksheets.EaseBust: ""})
	if got := begun.Verdict().Why; got != "sleeve width, ease at the bust" {
		t.Errorf("wanted: %q", got)
	}
	if got := begun.Tally(); strings.Contains(got, "check") {
		t.Errorf("two answers are missing, and the tally is %q; of the whole sheet it is %q", got, whole.Tally())
	}
}

// A worksheet from before it was asked says in words what to answer, and makes no amount
// of a width until then; the bodice takes the sleeve's answer, and the note says which.
func TestHowThePatternWasMeasuredIsAskedOnce(t *testing.T) {
	untold := blouse(t, map[worksheets.Key]string{worksheets.SleeveMeasured: "", worksheets.BodiceMeasured: ""})
	if got := untold.Verdict().Why; got != "how the pattern was measured" || untold.Plan.Sleeve.Need.Known || untold.Plan.Bust.Need.Known {
		t.Errorf("wanted: %q; needs %v and %v", got, untold.Plan.Sleeve.Need, untold.Plan.Bust.Need)
	}
	if got, want := textOf(t, untold, calc.AnswerMissing), "Say whether the sleeve width was measured from seam line to seam line or from edge to edge; "+
		"until then it makes no amount."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	once := blouse(t, map[worksheets.Key]string{worksheets.SleeveMeasured: "edge", worksheets.BodiceMeasured: "", worksheets.BodiceAllowance: ""})
	// 2 x (10 1/4 + 9 3/4) less a seam of 5/8 at each of four sides
	if got, want := once.Plan.Bust.Flat, units.Known(units.Inch*75/2); got != want {
		t.Errorf("the bodice is %v around, want %v", got, want)
	}
	if got, want := textOf(t, once, calc.BodiceAsSleeve), "The bodice is taken as measured like the sleeve: from edge to edge with a seam allowance of 5/8 in. "+
		"If it was not, say so at the bodice."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	apart := blouse(t, map[worksheets.Key]string{worksheets.SleeveMeasured: "edge"})
	if got, want := textOf(t, apart, calc.MeasuredDifferently), "The sleeve was measured from edge to edge with a seam allowance of 5/8 in, "+
		"the bodice from seam line to seam line: make sure that both are right."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	own := blouse(t, map[worksheets.Key]string{worksheets.SleeveAllowance: "", worksheets.BodiceMeasured: "edge", worksheets.BodiceAllowance: ""})
	if got := own.Verdict().Why; got != "seam allowance of the bodice" {
		t.Errorf("only the bodice has allowances to take off, and wanted is %q", got)
	}
}

// What a limit costs is what the side that loses more of the armhole loses, be it the
// front or the back.
func TestALimitCostsWhatTheWorseSideLoses(t *testing.T) {
	front := blouse(t, nil).Hint(worksheets.PivotLimitBodice)
	back := blouse(t, map[worksheets.Key]string{
		worksheets.CornerOutFront: "1 3/4", worksheets.CornerDownFront: "7 1/4", worksheets.CornerOutBack: "2", worksheets.CornerDownBack: "7",
	}).Hint(worksheets.PivotLimitBodice)
	if !strings.Contains(front, "lowers the armhole by") || front != back {
		t.Errorf("front and back exchanged:\n%s\n%s", front, back)
	}
}

// A half-cap over 6 1/2 wide and 5 1/4 high is at least 8 3/8 long, straight across, and
// at most 11 3/4, along both: which of the two is wrong is said.
func TestAnImpossibleCapIsTooShortOrTooLong(t *testing.T) {
	for length, want := range map[string]string{"7": "of 7 in cannot reach across", "13": "of 13 in is longer than the way across"} {
		if got := textOf(t, blouse(t, map[worksheets.Key]string{worksheets.CapFront: length}), calc.CapImpossible); !strings.Contains(got, want) {
			t.Errorf("a half-cap of %s: %q", length, got)
		}
	}
}

// What was measured there on an earlier day is older than what stands here; of the same
// day or a later one it is a warning.
func TestWhatWasMeasuredEarlierElsewhereIsANote(t *testing.T) {
	for day, want := range map[string]calc.Level{"2026-10-02": calc.Note, "2026-10-03": calc.Warn, "2026-10-04": calc.Warn} {
		r := blouse(t, map[worksheets.Key]string{worksheets.BodyFrom: "odile.toml"})
		there := r.Sheet
		there.Set(worksheets.Bicep, "14")
		there.Set(worksheets.MeasuredOn, day)
		list := r.SinceFindings([]worksheets.Origin{{Section: worksheets.BodySection, File: "odile.toml", Sheet: there}})
		if len(list) != 1 || list[0].Level != want || !strings.Contains(list[0].Text, "bicep 14 in (here 13 3/4 in)") {
			t.Errorf("measured there on %s, here on 2026-10-03: %+v", day, list)
		}
	}
}

// Of several of the highest level the one that is said first is the gravest: it is what a
// list of sheets shows.
func TestTheGravestIsTheFirstThatIsSaid(t *testing.T) {
	r := blouse(t, map[worksheets.Key]string{worksheets.CapFront: "7", worksheets.ArmholeFront: "5"})
	if r.Findings[0].Level != r.Findings[1].Level || r.Findings[0].Text == r.Findings[1].Text {
		t.Fatalf("these do not tell: %v", r.Findings)
	}
	if worst, ok := r.Gravest(); !ok || worst.Text != r.Findings[0].Text {
		t.Errorf("%s, and said first is %s", worst.Text, r.Findings[0].Text)
	}
}

// Held, a bodice follows by its limit of 1 in at most. A sleeve 13 wide that needs 4 3/4,
// 2 3/8 a side, must slide by 1 3/8; one 13 1/2 wide still by 1 1/8, and one 14 wide by 7/8.
func TestAMeasuredSizeThatWorksIsNamed(t *testing.T) {
	r := blouse(t, map[worksheets.Key]string{worksheets.EaseBicep: "4", worksheets.Bust: "", worksheets.Follow: "hold"})
	for want, widths := range map[string][]string{
		"start from another pattern size": {"13 1/2"}, "start from size B": {"13 1/2", "14"}, "start from size A or C": {"14", "13 1/2", "14 1/2"},
	} {
		sheet := r.Sheet
		sheet.Sizes = nil
		for i, width := range widths {
			z := worksheets.Size{}.With(worksheets.PatternSize, string(rune('A'+i))).With(worksheets.SleeveWidth, width)
			sheet.Sizes = append(sheet.Sizes, z)
		}
		worst, _ := r.With(sheet).Gravest()
		if worst.Code != calc.CannotReach || len(worst.Ways) == 0 || worst.Ways[0].Words != want {
			t.Errorf("sizes of %v: %+v, want %q", widths, worst, want)
		}
	}
}

// An inward slide is a length and a direction, never a length with a sign.
func TestAFarSlideInwardIsSaidInWords(t *testing.T) {
	r := blouse(t, map[worksheets.Key]string{worksheets.Bust: "", worksheets.SleeveWidth: "23"})
	for _, f := range r.Findings {
		if f.Code == calc.SlideFar && strings.Contains(f.Text, "in inward a side, over") && !strings.Contains(f.Text, "-") {
			return
		}
	}
	t.Errorf("%+v", r.Findings)
}
