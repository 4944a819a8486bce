package forms_test

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

// What is needed, read aloud from an empty worksheet on: a girth first, then how the
// pattern was measured, once, then what that girth asks for. Common practice, no source.
func TestWhatIsNeededComesFirst(t *testing.T) {
	var s worksheets.Sheet
	awaited := func() (list []worksheets.Key) {
		for step := range forms.StepCount {
			for _, it := range forms.Items[step] {
				if it.Heading == "" && forms.Awaited(&s, it.Key) {
					list = append(list, it.Key)
				}
			}
		}
		return list
	}
	for _, turn := range []struct {
		key  worksheets.Key
		text string
		want []worksheets.Key
	}{
		{worksheets.Title, "Smock", []worksheets.Key{worksheets.Bicep, worksheets.Bust}},
		{worksheets.Bicep, "13 3/4", []worksheets.Key{worksheets.EaseBicep, worksheets.SleeveLength, worksheets.SleeveMeasured, worksheets.SleeveWidth}},
		{worksheets.SleeveLength, "long", []worksheets.Key{worksheets.EaseBicep, worksheets.SleeveMeasured, worksheets.SleeveWidth}},
		{worksheets.SleeveMeasured, "edge", []worksheets.Key{worksheets.EaseBicep, worksheets.SleeveAllowance, worksheets.SleeveWidth}},
		{worksheets.SleeveAllowance, "5/8", []worksheets.Key{worksheets.EaseBicep, worksheets.SleeveWidth}},
		{worksheets.SleeveWidth, "14 1/4", []worksheets.Key{worksheets.EaseBicep}},
		{worksheets.EaseBicep, "2", nil},
		{worksheets.Bust, "39 1/2", []worksheets.Key{worksheets.EaseBust, worksheets.BodiceFront, worksheets.BodiceBack}},
		{worksheets.FinishedBust, "44", []worksheets.Key{worksheets.EaseBust}},
		{worksheets.Bicep, "", []worksheets.Key{worksheets.EaseBust}},
	} {
		s.Set(turn.key, turn.text)
		if got := awaited(); !slices.Equal(got, turn.want) {
			t.Errorf("after %v = %q needed are %v, want %v", turn.key, turn.text, got, turn.want)
		}
	}
}

// Where a dart starts matters with nothing taken off too: an answer is never idle.
func TestADartThatWasToldIsNotIdle(t *testing.T) {
	var s worksheets.Sheet
	if forms.WhyIdle(&s, worksheets.DartBack) == "" {
		t.Error("nothing was taken off and nobody told of a dart, and it is asked for")
	}
	s.Set(worksheets.DartBack, "any")
	if forms.WhyIdle(&s, worksheets.DartBack) == "" {
		t.Error("any says no more than nothing does")
	}
	s.Set(worksheets.DartBack, "side")
	if why := forms.WhyIdle(&s, worksheets.DartBack); why != "" {
		t.Errorf("the dart was told: %q", why)
	}
}

// Over examples with answers taken out: what the sums miss is awaited, by the field that
// asks for it, and once all that is awaited is there they miss nothing.
func TestTheSumsMissNothingThatIsNotAwaited(t *testing.T) {
	dice := rand.New(rand.NewPCG(14, 2))
	wholes := map[string]report.Report{}
	for _, name := range worksheets.Examples() {
		wholes[name] = props.ReportOf(t, name)
	}
	for range 4000 {
		name := worksheets.Examples()[dice.IntN(len(worksheets.Examples()))]
		whole := wholes[name]
		s := whole.Sheet
		s.Set(worksheets.SleeveMeasured, []string{"seam", "edge"}[dice.IntN(2)])
		s.Set(worksheets.SleeveAllowance, "1 cm")
		full := s
		for _, k := range worksheets.Keys() {
			if dice.IntN(3) == 0 && k != worksheets.Unit {
				s.Set(k, "")
			}
		}
		for _, f := range whole.With(s).Plan.Findings {
			if k := forms.AskedAt(&s, forms.KeyOf[f.Answer]); f.Code == calc.AnswerMissing && !forms.Awaited(&s, k) {
				t.Fatalf("%s: %v is missing and not awaited", name, k)
			}
		}
		for range 5 { // an answer can ask for another
			for _, k := range worksheets.Keys() {
				if forms.Awaited(&s, k) {
					s.Set(k, full.Text(k))
					if s.Text(k) == "" {
						s.Set(k, map[worksheets.Kind]string{worksheets.Choice: "short", worksheets.Signed: "1"}[k.Kind()])
					}
					if s.Text(k) == "" {
						s.Set(k, "40 cm")
					}
				}
			}
		}
		for _, f := range whole.With(s).Plan.Findings {
			if f.Code == calc.AnswerMissing {
				t.Fatalf("%s: all that is awaited is there, and missing is %v", name, forms.KeyOf[f.Answer])
			}
		}
	}
}

// What is not asked cannot matter: another answer there changes no amount.
func TestNoAmountFollowsFromAnIdleAnswer(t *testing.T) {
	seen := map[worksheets.Key]int{}
	for _, name := range worksheets.Examples() {
		for _, answers := range []map[worksheets.Key]string{
			{}, {worksheets.SleeveLength: "short", worksheets.TakeOffFront: "", worksheets.TakeOffBack: "", worksheets.DartFront: "", worksheets.DartBack: ""},
			{worksheets.SleeveMeasured: "seam", worksheets.BodiceMeasured: ""}, {worksheets.BodiceMeasured: "seam", worksheets.FinishedBust: ""},
		} {
			r := props.ReportOf(t, name)
			s := r.Sheet
			for k, text := range answers {
				s.Set(k, text)
			}
			plan := r.With(s).Plan
			for _, k := range worksheets.Keys() {
				if forms.WorthOf(&s, k) != forms.Idle {
					continue
				}
				other := s
				if err := other.Set(k, map[worksheets.Kind]string{worksheets.Choice: "side", worksheets.Count: "2"}[k.Kind()]); err != nil || other.Text(k) == "" {
					other.Set(k, "30 cm")
				}
				seen[k]++
				changed := r.With(other).Plan
				changed.Findings, plan.Findings = nil, nil
				if !reflect.DeepEqual(changed, plan) {
					t.Errorf("%s with %v: %v = %q changes the plan", name, answers, k, other.Text(k))
				}
			}
		}
	}
	if len(seen) != 10 {
		t.Errorf("of these nothing was asked: %v", seen)
	}
}
