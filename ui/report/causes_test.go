package report_test

import (
	"slices"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/worksheets"
)

// A width of 13 typed 133: the list begins with the question, and nobody is sent for a
// gusset of 114 in. The verdict asks the same, and the stops stay stops.
func TestTheQuestionComesBeforeWhatFollowsFromIt(t *testing.T) {
	r := blouse(t, map[worksheets.Key]string{worksheets.SleeveWidth: "133"})
	if f := r.Findings[0]; f.Level != calc.Warn || f.Key != "sleeve.width" || !strings.HasPrefix(f.Text, "Is the sleeve width 13 in? 133 in ") {
		t.Errorf("first: %+v", f)
	}
	stops := 0
	for i, f := range r.Findings {
		if f.Level != calc.Stop {
			continue
		}
		if stops++; len(f.Ways) > 0 || f.Accept != "" || !strings.HasPrefix(f.Text, "Is the sleeve width 13 in? ") || f.Guess == nil || f.Guess.Text != "13" {
			t.Errorf("finding %d: %+v", i, f)
		}
	}
	if v := r.Verdict(); stops < 2 || r.Whole() || !strings.HasPrefix(v.Line(), "Do not cut: is the sleeve width 13 in? ") || v.Short() != "stop" {
		t.Errorf("%d stops, %q, %q", stops, v.Line(), v.Short())
	}
	r = blouse(t, map[worksheets.Key]string{worksheets.EaseBicep: "17 3/4"})
	if f := r.Findings[0]; f.Key != "ease.bicep" || f.Guess != nil || !slices.ContainsFunc(r.Findings, func(f report.Finding) bool {
		return f.Code == calc.SlideFar && strings.HasPrefix(f.Text, "Is the ease at the bicep right? The slide is ")
	}) {
		t.Errorf("%+v", r.Findings)
	}
}

// 141/2 in a file is 70 1/2, and asked about; a fraction that no ruler has is not offered.
func TestAFractionRunTogetherIsAskedAbout(t *testing.T) {
	r := blouse(t, map[worksheets.Key]string{worksheets.Bicep: "141/2"})
	if g := r.GuessFor(worksheets.Bicep); g == nil || g.Text != "14 1/2" || g.Question(&r.Sheet) != "14 1/2 in?" {
		t.Errorf("%+v", g)
	}
}

// What is taken for granted of a sleeve is said, and goes once it was told.
func TestALengthThatNobodyToldIsANote(t *testing.T) {
	assumed := func(length string) bool {
		r := blouse(t, map[worksheets.Key]string{worksheets.SleeveLength: length})
		return slices.ContainsFunc(r.Findings, func(f report.Finding) bool {
			return f.Level == calc.Note && f.Text == "The sleeve is taken as short: say so if it is long." && f.Short() == "sleeve taken as short"
		})
	}
	if !assumed("") || assumed("short") || assumed("long") {
		t.Error(assumed(""), assumed("short"), assumed("long"))
	}
}

// An amount that the ruler shows as nothing is not said.
func TestNobodyMarksNothing(t *testing.T) {
	r := blouse(t, map[worksheets.Key]string{worksheets.Armhole: "keep", worksheets.EaseBicep: "1.27", worksheets.BicepOther: "", worksheets.CapFront: ""})
	for _, f := range r.Findings {
		if strings.Contains(f.WayWords(), "~0 in") {
			t.Errorf("%s", f.Line())
		}
	}
}
