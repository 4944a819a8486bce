package calc_test

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"strconv"
	"testing"

	"capscye/calc"
	"capscye/units"
)

// Every finding is worked out a second time, slowly: for each code a function says
// when it must be there, on what and with which amounts, and for each way out when
// it is offered. They are written from the rules of the trade and of the method,
// stand on the sums in fractions (oracle_test.go) and on the pattern laid out on the
// table (findings_paper_test.go), and are held against the plan over random sheets.

// slowSheet is a worksheet with all that was worked out about it slowly.
type slowSheet struct {
	calc.Input
	plan   calc.Plan // the sums
	seams  [4]slowSeam
	marked [4]slowSeam  // by the marks
	pieces [2]slowPiece // sleeve, bodice
	found  []calc.Finding
}

// slowPiece is a sleeve or a bodice: what is asked of it, and what becomes of it.
type slowPiece struct {
	of       calc.Subject
	sides    []calc.SidePlan
	seams    []slowSeam
	subjects [2]calc.Subject // of the sides
	girth    calc.Girth      // of the plan, without what comes out
	copies   units.Length    // how often each side goes around the body
	limit    units.Length
	cut      bool // a bodice that is already cut
}

func newSlowSheet(in calc.Input) *slowSheet {
	s := &slowSheet{Input: in, plan: oraclePlan(in)}
	if in.Unread { // nobody knows what would be left out
		s.plan.Open, s.plan.Sides = true, [4]calc.SidePlan{}
	}
	s.seams, s.marked = laid(in, s.plan, false), laid(in, s.plan, true)
	s.pieces = [2]slowPiece{
		{calc.OfSleeve, s.plan.Sides[:2], s.seams[:2], [2]calc.Subject{calc.OfSleeveFront, calc.OfSleeveBack}, s.plan.Sleeve, 1, in.Method.LimitSleeve, false},
		{calc.OfBust, s.plan.Sides[2:], s.seams[2:], [2]calc.Subject{calc.OfBodiceFront, calc.OfBodiceBack}, s.plan.Bust, 2, in.Method.LimitBodice, in.Method.Armhole == calc.KeepArmhole},
	}
	return s
}

func (s *slowSheet) say(f calc.Finding) { s.found = append(s.found, f) }

// findings is all that has to be said.
func (s *slowSheet) findings() []calc.Finding {
	for _, says := range slices.Concat(slowDoubts(), slowAnswers(), slowSplits(), slowOutlines(), slowPeople()) {
		says(s)
	}
	s.layAtDoubts()
	for i := range s.found {
		f := &s.found[i]
		if f.Bound != nil { // a doubt is the way out
			continue
		}
		for way, offered := range slowWays() {
			if offered(s, *f) {
				f.Ways = append(f.Ways, way)
			}
		}
		slices.Sort(f.Ways)
	}
	return s.found
}

// findingName tells findings of one plan apart.
func findingName(f calc.Finding) string {
	return fmt.Sprintf("%s of %d, answer %d, place %d", f.Code, f.About, f.Answer, f.At)
}

// readOffPaper are the findings whose amounts are measured on the table, and
// therefore agree to a few counts only.
var readOffPaper = []calc.Code{
	calc.ShortAtLine, calc.NarrowerAtCorners, calc.GrowthsDiffer, calc.BindsBelow, calc.SharpBend, calc.TighterThanBody, calc.LeanImpossible,
	calc.CapImpossible,
}

// sameFinding compares all that two findings say.
func sameFinding(a, b calc.Finding) bool {
	close := units.Length(0)
	if slices.Contains(readOffPaper, a.Code) {
		close = 4
	}
	for _, d := range []units.Length{a.Amount - b.Amount, a.Other - b.Other, a.Third - b.Third} {
		if d.Abs() > close {
			return false
		}
	}
	if (a.Bound == nil) != (b.Bound == nil) || a.Bound != nil && *a.Bound != *b.Bound || a.Guess != b.Guess || a.Doubt.Text != b.Doubt.Text {
		return false
	}
	return a.Level == b.Level && a.Causes == b.Causes && math.Abs(a.Degrees-b.Degrees) < 1e-3 &&
		slices.Equal(inOrder(a.Missing), inOrder(b.Missing)) && slices.Equal(inOrder(a.Slips), inOrder(b.Slips)) && slices.Equal(inOrder(a.Ways), inOrder(b.Ways))
}

func inOrder[T ~uint8](all []T) []T { return slices.Sorted(slices.Values(all)) }

// byName lists findings by name; one that is said twice is a fault of its own.
func byName(findings []calc.Finding, complain func(name string)) map[string]calc.Finding {
	named := map[string]calc.Finding{}
	for _, f := range findings {
		if _, twice := named[findingName(f)]; twice {
			complain(findingName(f))
		}
		named[findingName(f)] = f
	}
	return named
}

func TestFindingsAgainstTheSlowOnes(t *testing.T) {
	inputs := 3_000
	if os.Getenv("CAPSCYE_TEST_ALL") != "" {
		inputs = 8_000
	}
	if n, err := strconv.Atoi(os.Getenv("CAPSCYE_TEST_SHEETS")); err == nil {
		inputs = max(inputs, n) // the slow doubts try every slip in every answer
	}
	dice := findingsDice{oracleDice{rand.New(rand.NewPCG(254, 1280))}}
	visits, ways, wrong := map[calc.Code]int{}, map[calc.Way]int{}, map[calc.Code]int{}
	for n := range inputs {
		in := dice.input()
		plan := calc.Compute(in)
		complain := func(code calc.Code, format string, args ...any) {
			if wrong[code]++; wrong[code] <= 2 {
				t.Errorf("sheet %d: "+format+"\n\t%v", append(append([]any{n}, args...), oracleLines("", reflect.ValueOf(in)))...)
			}
		}
		got := byName(plan.Findings, func(name string) { complain("", "said twice: %s", name) })
		want := byName(newSlowSheet(in).findings(), func(name string) { complain("", "slowly said twice: %s", name) })
		for name, f := range got {
			if w, ok := want[name]; !ok {
				complain(f.Code, "%s is said and should not be: %+v", name, f)
			} else if !sameFinding(f, w) {
				complain(f.Code, "%s\n\tsays   %+v\n\tshould %+v", name, f, w)
			}
			visits[f.Code]++
			for _, w := range f.Ways {
				ways[w]++
			}
		}
		for name, f := range want {
			if _, ok := got[name]; !ok {
				complain(f.Code, "%s is not said: %+v", name, f)
			}
		}
		if !slices.IsSortedFunc(plan.Findings, slowlyByUrgency) {
			complain("", "the most urgent is not said first")
		}
	}
	enough(t, visits, everyCode, 15)
	enough(t, ways, everyWay(), 15)
	if len(wrong) > 0 {
		t.Log(wrong)
	}
}

// enough fails where something was visited too rarely for the agreement to mean
// anything.
func enough[K ~string | ~uint8](t *testing.T, visits map[K]int, all []K, least int) {
	t.Helper()
	for _, k := range all {
		if t.Logf("%6d %v", visits[k], k); visits[k] < least {
			t.Errorf("%v came up %d times only", k, visits[k])
		}
	}
	for _, k := range slices.Sorted(maps.Keys(visits)) {
		if !slices.Contains(all, k) {
			t.Errorf("%v is not in the list", k)
		}
	}
}

// everyCode lists what the sums may say.
var everyCode = []calc.Code{
	calc.NothingAsked, calc.AnswerMissing, calc.WidthImpossible, calc.ArmsDiffer, calc.FitsAlready, calc.ComesIn, calc.PivotOnly,
	calc.PivotAndSlide, calc.SlideOnly, calc.SlideMoved, calc.FollowsUnasked, calc.ExtraEase, calc.TooFarIn, calc.PivotsBack,
	calc.CapTakesSlide, calc.CannotReach, calc.ShortAtLine, calc.OutlineUnknown, calc.BustLineAssumed, calc.BustLineImpossible,
	calc.NarrowerAtCorners, calc.SharpBend, calc.GrowthsDiffer, calc.BindsBelow, calc.CapEaseLow, calc.CapEaseHigh, calc.CapImpossible,
	calc.ArmholeImpossible, calc.LeanImpossible, calc.OutOfReach, calc.GirthUnusual, calc.ArmForBust, calc.AnswerDoubted, calc.EaseUnusual, calc.SlideFar, calc.MeasuredLongAgo,
	calc.SizeByHighBust, calc.StartLarger, calc.ChildsNightwear, calc.LimitWide, calc.TighterThanBody, calc.BodiceAsSleeve, calc.MeasuredDifferently, calc.LengthAssumed,
}

// everyWay lists the ways out.
func everyWay() (all []calc.Way) {
	for w := calc.OtherSize; w <= calc.FrontTakesMore; w++ {
		all = append(all, w)
	}
	return all
}
