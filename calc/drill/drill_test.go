package drill_test

import (
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"

	"capscye/calc"
	"capscye/calc/drill"
	"capscye/units"
)

// drilled are 2,400 problems over all levels, made once for all tests.
var drilled = sync.OnceValue(func() (list []drill.Problem) {
	for seed := range uint64(80) {
		for level := 1; level <= drill.Levels; level++ {
			list = append(list, drill.Problems(seed, level, 5)...)
		}
	}
	return list
})

// What is asked can be written exactly, on a mark or in lowest terms, and what is
// given lies on the marks of the ruler and is such as people and patterns are.
func TestDrillLooksLikeTheTable(t *testing.T) {
	between := func(low, high units.Length, r units.Reading) bool {
		return !r.Known || low <= r.Length && r.Length <= high
	}
	const inch = units.Inch
	for _, p := range drilled() {
		in, plan := p.Input, calc.Compute(p.Input)
		sc := units.Scale{System: p.System, Ruler: in.Ruler}
		for _, q := range p.Questions {
			if strings.HasPrefix(sc.Exact(q.Right), units.OffMark) {
				t.Fatalf("level %d: %v of %v cannot be written", p.Level, q.Right, q.Figure)
			}
		}
		for _, r := range []units.Reading{
			in.Bicep, in.BicepOther, in.Bust, in.BicepEase, in.BustEase, in.Sleeve.Width, in.Sleeve.Allowance,
			in.Bodice.Front, in.Bodice.Back, in.Bodice.Allowance, in.Bodice.TakeOffFront, in.Bodice.TakeOffBack,
		} {
			if r.Length%in.Ruler.Mark() != 0 {
				t.Fatalf("level %d: %v is on no mark of %v", p.Level, r.Length, in.Ruler)
			}
		}
		// Ease at the upper arm: 2 in on a mark of the ruler (Armstrong, at second hand), and
		// some for looks; at the bust: from Robinson's 1 1/2 in to the 4 in of NMSU.
		if !between(9*inch, 18*inch, in.Bicep) || !between(28*inch, 57*inch, in.Bust) ||
			!between((2*inch).Round(in.Ruler.Mark()), 3*inch, in.BicepEase) || !between(3*inch/2, 4*inch, in.BustEase) {
			t.Errorf("level %d: %+v", p.Level, in)
		}
		for _, f := range plan.Findings {
			kept := p.Level == 6 && f.Code == calc.CapTakesSlide // what it is about
			if f.Level != calc.Note && !kept && f.Code != calc.MeasuredDifferently {
				t.Errorf("level %d: %v", p.Level, f)
			}
		}
		if !plan.Whole() {
			t.Errorf("level %d is not whole", p.Level)
		}
	}
}

// Every level asks what it is about.
func TestDrillLevels(t *testing.T) {
	for _, p := range drilled() {
		plan := calc.Compute(p.Input)
		front, back := plan.Sides[calc.SleeveFront], plan.Sides[calc.SleeveBack]
		both := plan.Sleeve.Asked() && plan.Bust.Asked()
		var quantities []calc.Quantity
		for _, q := range p.Questions {
			quantities = append(quantities, q.Figure.Quantity)
		}
		for quantity, from := range map[calc.Quantity]int{
			calc.Need: 2, calc.Slide: 3, calc.Pivot: 3, calc.SlideMark: 4, calc.PivotMark: 4, calc.FinishedMarked: 4,
		} {
			if slices.Contains(quantities, quantity) != (p.Level >= from) {
				t.Errorf("level %d asks %v", p.Level, quantities)
			}
		}
		if p.Level == 6 {
			continue
		}
		slid := front.Slide > 0 && back.Slide > 0
		switch {
		case !both || slid != (p.Level > 3):
			t.Errorf("level %d: %d questions, both pieces %v, slide %v", p.Level, len(p.Questions), both, front.Slide)
		case p.Level == 5 && (p.System != units.Centimetres || front.Total == back.Total || front.Slide == back.Slide):
			t.Errorf("level 5: %v, %+v, %+v", p.System, front, back)
		case p.Level > 3 && front.Slide == front.SlideMark && back.Slide == back.SlideMark:
			t.Errorf("level %d: slides of %v and %v leave nothing to round", p.Level, front.Slide, back.Slide)
		case p.Level < 5 && p.System != units.Inches:
			t.Errorf("level %d: %v", p.Level, p.System)
		}
	}
}

// The last level has pieces that come in, even slides, and armholes that are kept, enough
// of each.
func TestDrillOtherCases(t *testing.T) {
	in, even, kept := 0, 0, 0
	for _, p := range drill.Problems(5, 6, 300) {
		plan := calc.Compute(p.Input)
		front := plan.Sides[calc.SleeveFront]
		switch m := p.Input.Method; {
		case m.Armhole == calc.KeepArmhole:
			kept++
			before, after := plan.Seams.CapEaseBefore, plan.Seams.CapEaseAfter
			if plan.Bust.Asked() || front.Slide <= 0 || after.Length != before.Length+2*front.Slide || after.Length > 3*units.Inch/2 {
				t.Fatalf("kept: %+v, %+v", plan.Seams, front)
			}
		case m.Slide == calc.SlideEven:
			even++
			if low := front.Need.Length - units.Inch; front.Slide <= max(0, low) {
				t.Fatalf("even: a slide of %v, and at least %v", front.Slide, low)
			}
		default:
			in++
			if front.Pivot >= 0 || plan.Sides[calc.BodiceFront].Pivot >= 0 || front.Slide != 0 {
				t.Fatalf("comes in: %+v", plan.Sides)
			}
		}
	}
	if min(in, even, kept) < 50 {
		t.Errorf("%d come in, %d slide evenly, %d keep the armhole", in, even, kept)
	}
}

// No level has more than twice the steps of the one before, by the problem and by a
// lesson of the usual length; no lesson is longer than a class has time for.
func TestDrillStepsGrowEvenly(t *testing.T) {
	var before, lessonBefore float64
	for level := 1; level <= drill.Levels; level++ {
		asked := 0
		for _, p := range drill.Problems(1, level, 200) {
			asked += len(p.Questions)
		}
		steps := float64(asked) / 200
		lesson := steps * float64(drill.UsualCount(level))
		t.Logf("level %d: %.1f steps a problem, %.0f a lesson", level, steps, lesson)
		if level > 1 && (steps > 2*before || lesson > 2*lessonBefore) || lesson > 50 {
			t.Errorf("level %d: %.1f steps a problem after %.1f, %.0f a lesson after %.0f", level, steps, before, lesson, lessonBefore)
		}
		before, lessonBefore = steps, lesson
	}
}

// A longer drill begins with a shorter one, and seeds differ.
func TestDrillSeeds(t *testing.T) {
	five, two := drill.Problems(7, 4, 5), drill.Problems(7, 4, 2)
	if !reflect.DeepEqual(five[:2], two) {
		t.Error("two problems of seed 7 are not the first two of five")
	}
	if reflect.DeepEqual(two, drill.Problems(8, 4, 2)) || reflect.DeepEqual(five[0], five[1]) {
		t.Error("seeds or problems do not differ")
	}
}

// The working behind a question begins where the one before left off: no line is shown
// twice.
func TestDrillShowsALineOnce(t *testing.T) {
	for _, p := range drilled() {
		shown := map[calc.Figure]bool{}
		for _, q := range p.Questions {
			for _, l := range q.Lines {
				if shown[l.Figure] {
					t.Fatalf("level %d: the line of %v comes twice", p.Level, l.Figure)
				}
				shown[l.Figure] = true
			}
		}
	}
}
