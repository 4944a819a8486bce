package drill_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/calc/drill"
	"capscye/units"
)

// drilled are 2,000 problems over all levels.
func drilled() []drill.Problem {
	var list []drill.Problem
	for seed := range uint64(80) {
		for level := 1; level <= drill.Levels; level++ {
			list = append(list, drill.Problems(seed, level, 5)...)
		}
	}
	return list
}

// What is asked can be written exactly, on a mark or in lowest terms, and what is
// given lies on the marks of the ruler and is such as people and patterns are.
func TestDrillLooksLikeTheTable(t *testing.T) {
	inches := func(low, high units.Length, r units.Reading) bool {
		return !r.Known || low*units.Inch <= r.Length && r.Length <= high*units.Inch
	}
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
		// Ease at the bicep: Armstrong by way of the README, 2 in, and some for looks;
		// at the bust: from Robinson's 1 1/2 in to NMSU's 4 in.
		if !inches(9, 18, in.Bicep) || !inches(28, 57, in.Bust) || !inches(1, 3, in.BicepEase) || !inches(1, 4, in.BustEase) {
			t.Errorf("level %d: %+v", p.Level, in)
		}
		for _, f := range plan.Findings {
			if f.Level != calc.Note {
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
		slid := front.Slide > 0 && back.Slide > 0
		switch {
		case len(p.Questions) == 0 || both != (p.Level > 2) || slid != (p.Level > 3):
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
