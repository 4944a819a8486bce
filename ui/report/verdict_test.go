package report_test

import (
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

// What a person would say of a worksheet before anything else. Of a sleeve 15 1/2 in wide
// the blouse needs no more: 13 3/4 and 1 3/4.
func TestTheVerdict(t *testing.T) {
	none := map[worksheets.Key]string{worksheets.Bicep: "", worksheets.BicepOther: "", worksheets.Bust: ""}
	for _, c := range []struct {
		answers      map[worksheets.Key]string
		short, words string
	}{
		{nil, "ready", "Ready to trace."},
		{none, "1 missing", "Answers missing: bicep or bust."},
		{map[worksheets.Key]string{worksheets.SleeveWidth: "", worksheets.EaseBust: ""}, "2 missing", "Answers missing: sleeve width, ease at the bust."},
		{map[worksheets.Key]string{worksheets.Armhole: "keep"}, "stop", "Do not cut: "},
		// Whole widths for halves: the slip is named, not that the bust is 40 in too large.
		{map[worksheets.Key]string{worksheets.BodiceFront: "20", worksheets.BodiceBack: "19 1/2"}, "stop", "Do not cut: are front and back width 10 and 9 3/4 in, halved? 1 stop may follow."},
		{map[worksheets.Key]string{worksheets.BodiceFront: "20"}, "stop", "Do not cut: is the bodice front width 10 in, half as much? 1 stop may follow."},
		{map[worksheets.Key]string{worksheets.EaseBicep: "17 3/4"}, "stop", "Do not cut: is the ease at the bicep right? "},
		{map[worksheets.Key]string{worksheets.EaseBicep: "3"}, "check", "Check this first: the bust comes out 1 in larger than asked."},
		{map[worksheets.Key]string{worksheets.SleeveWidth: "15 1/2", worksheets.Bust: "", worksheets.CapFront: "", worksheets.CapBack: ""}, "fits as it is", "Nothing to alter: the pattern fits as it is."},
	} {
		v := blouse(t, c.answers).Verdict()
		if v.Short() != c.short || !strings.HasPrefix(v.Line(), c.words) {
			t.Errorf("%v: %q, %q", c.answers, v.Short(), v.Line())
		}
	}
	r := props.ReportOf(t, "choir-blouse")
	r.Sheet = worksheets.Sheet{}
	if v := r.With(r.Sheet).Verdict(); v.Line() != "Not begun: measure the upper arm, the bust, or both." {
		t.Errorf("of nothing: %s", v.Line())
	}
	r = blouse(t, nil)
	_ = r.Sheet.Set(worksheets.Bicep, "thirty")
	if v := r.With(r.Sheet).Verdict(); v.State != report.Unreadable || v.Line() != "Do not cut: body.bicep cannot be read." {
		t.Errorf("of what cannot be read: %s", v.Line())
	}
}

// Of the steps those count that are ticked by the words that they have now.
func TestTheVerdictCountsSteps(t *testing.T) {
	r := blouse(t, nil)
	steps := r.TraceSteps()
	r.Sheet.Done = []string{steps[0].ID(), steps[1].ID(), "sleeve-gone"}
	if v := r.With(r.Sheet).Verdict(); v.Short() != "tracing 2/24" || v.Line() != "Traced 2 of 24 steps." {
		t.Errorf("two of them: %q, %q", v.Short(), v.Line())
	}
	for _, s := range steps {
		r.Sheet.Done = append(r.Sheet.Done, s.ID())
	}
	if v := r.With(r.Sheet).Verdict(); v.State != report.Traced || v.Line() != "All steps are done." {
		t.Errorf("all of them: %q", v.Line())
	}
	_ = r.Sheet.Set(worksheets.Armhole, "keep") // whatever was traced, it must not be cut
	if v := r.With(r.Sheet).Verdict(); v.State != report.Stopped {
		t.Errorf("a stop: %q", v.Line())
	}
}

// What is left out of a brief report is not missed: verdict, few words and the gravest
// finding are those of the whole.
func TestABriefReportComesToTheSame(t *testing.T) {
	rnd := rand.New(rand.NewPCG(20261126, 2))
	same := func(d *worksheets.Document) {
		t.Helper()
		whole, brief := report.Reckon(d, props.SomeDay, 0), report.Reckoner{Today: props.SomeDay, Brief: true}.Reckon(d, 0)
		if !reflect.DeepEqual(whole.Verdict(), brief.Verdict()) || whole.Whole() != brief.Whole() || len(whole.Findings) != len(brief.Findings) {
			t.Fatalf("%+v, whole %+v", brief.Verdict(), whole.Verdict())
		}
		for i, f := range whole.Findings {
			g := brief.Findings[i]
			if !f.Same(g) || f.Short() != g.Short() || f.Key != g.Key || f.Level != calc.Note && f.Text != g.Text {
				t.Fatalf("%+v, whole %+v", g, f)
			}
		}
	}
	for _, name := range worksheets.Examples() {
		d, err := worksheets.Example(name)
		if err != nil {
			t.Fatal(err)
		}
		same(d)
	}
	for range props.OfMany(300, 1000) {
		same(props.RandomDocument(rnd))
	}
}
