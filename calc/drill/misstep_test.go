package drill_test

import (
	"slices"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/calc/drill"
	"capscye/units"
)

// The sheets of the examples below. Each is worked by hand in its comment.

// readings reads lengths.
func readings(t *testing.T, sys units.System, texts ...string) []units.Reading {
	t.Helper()
	list := make([]units.Reading, len(texts))
	for i, text := range texts {
		l, err := units.Parse(text, sys)
		if err != nil {
			t.Fatal(err)
		}
		list[i] = units.Known(l)
	}
	return list
}

// edgeSheet, in inches, measured between cut edges, one edge of each bodice piece
// crossed, a ruler of 1/2:
//
//	sleeve  14 3/4 - 2 x 5/8 = 13 1/2; need 13 3/4 + 2 - 13 1/2 = 2 1/4; a side 1 1/8
//	front   11 3/4 - 1/2 - dart 3/4 = 10 1/2; back 9 1/2 - 1/2 = 9; around 2 x 19 1/2 = 39
//	bust    need 38 + 3 - 39 = 2; a side 1/2
//	slide   sleeve 1 1/8 - 1 = 1/8, bodice 1/2 - 1/4 = 1/4: 1/4; pivots 7/8 and 1/4
//	marks   slide 1/2 (half way goes up); sleeve total 1 1/8, marked 1, so pivot 1/2;
//	        bodice total 1/2, so pivot 0
//	out     sleeve 13 1/2 + 2 x 1 = 15 1/2, by the exact amounts 15 3/4; bust 39 + 4 x 1/2 = 41
func edgeSheet(t *testing.T) calc.Input {
	r := readings(t, units.Inches, "13 3/4", "13 1/2", "2", "14 3/4", "5/8", "38", "3", "11 3/4", "9 1/2", "1/2", "3/4", "1", "1/4")
	in := calc.Input{Ruler: units.HalfInch, Method: calc.UsualMethod()}
	in.Bicep, in.BicepOther, in.BicepEase = r[0], r[1], r[2]
	in.Sleeve.Width, in.Sleeve.Allowance, in.Sleeve.Measured = r[3], r[4], calc.EdgeToEdge
	in.Bust, in.BustEase, in.Bodice.Front, in.Bodice.Back, in.Bodice.Allowance = r[5], r[6], r[7], r[8], r[9]
	in.Bodice.Measured, in.Bodice.Crossings, in.Bodice.TakeOffFront = calc.EdgeToEdge, 1, r[10]
	in.Method.LimitSleeve, in.Method.LimitBodice = r[11].Length, r[12].Length
	return in
}

// centreSeamSheet is the front of 12 with two edges crossed: 12 - 2 x 1/2 = 11.
func centreSeamSheet(t *testing.T) calc.Input {
	in := edgeSheet(t)
	r := readings(t, units.Inches, "12")
	in.Bodice.Front, in.Bodice.Crossings, in.Bodice.TakeOffFront = r[0], 2, units.Reading{}
	return in
}

// lowSheet needs no slide: sleeve 13 + 2 - 13 1/2 = 1 1/2, a side 3/4, less the limit
// 1 is -1/4; bust 38 + 3 - 39 = 2, a side 1/2, less the limit 1 is -1/2.
func lowSheet(t *testing.T) calc.Input {
	in := edgeSheet(t)
	r := readings(t, units.Inches, "13", "1")
	in.Bicep, in.BicepOther, in.Method.LimitBodice = r[0], units.Reading{}, r[1].Length
	return in
}

// seamSheet, in centimetres, measured between seam lines, two edges of each bodice
// piece crossed, the front takes 2/5, a ruler of 5 mm:
//
//	sleeve  need 30 + 5 - 28 = 7; front 2.8, back 4.2
//	front   25 - dart 2 = 23; back 21; around 2 x 44 = 88
//	bust    need 90 + 8 - 88 = 10, half of it 5; front 2, back 3
//	slide   front 2.8 - 2.5 = 0.3 (bodice 2 - 2.5 below nothing); back 1.7 (bodice 0.5)
//	pivots  sleeve 2.5 and 2.5; bodice 1.7 and 1.3
//	marks   slides 0.5 and 1.5; sleeve totals 3.0 and 4.0, bodice 2.0 and 3.0
//	out     sleeve 28 + 3 + 4 = 35; bust 88 + 2 x (2 + 3) = 98
func seamSheet(t *testing.T) calc.Input {
	r := readings(t, units.Centimetres, "30", "5", "28", "1.5", "90", "8", "25", "21", "2", "2.5")
	in := calc.Input{Ruler: units.FiveMillimetres, Method: calc.UsualMethod()}
	in.Sleeve.Measured, in.Bodice.Measured = calc.SeamToSeam, calc.SeamToSeam
	in.Bicep, in.BicepEase, in.Sleeve.Width, in.Sleeve.Allowance = r[0], r[1], r[2], r[3]
	in.Bust, in.BustEase, in.Bodice.Front, in.Bodice.Back, in.Bodice.Allowance = r[4], r[5], r[6], r[7], r[3]
	in.Bodice.Crossings, in.Bodice.TakeOffFront = 2, r[8]
	in.Method.LimitSleeve, in.Method.LimitBodice = r[9].Length, r[9].Length
	in.Method.ShareSleeve, in.Method.ShareBust = units.Share{Numerator: 2, Denominator: 5}, units.Share{Numerator: 2, Denominator: 5}
	return in
}

// inwardSheet comes in: sleeve 13 + 2 - 16 = -1, a side -1/2; bust 38 + 3 - 44 = -3, a
// side -3/4; limits of 1 are enough, nothing slides.
func inwardSheet(t *testing.T) calc.Input {
	r := readings(t, units.Inches, "13", "2", "16", "38", "3", "11", "11")
	return shortSheet(r)
}

// shortSheet has bicep, ease, sleeve width, bust, ease, front and back, between seam lines.
func shortSheet(r []units.Reading) calc.Input {
	in := calc.Input{Ruler: units.EighthInch, Method: calc.UsualMethod()}
	in.Sleeve.Measured, in.Bodice.Measured = calc.SeamToSeam, calc.SeamToSeam
	in.Bicep, in.BicepEase, in.Sleeve.Width = r[0], r[1], r[2]
	in.Bust, in.BustEase, in.Bodice.Front, in.Bodice.Back = r[3], r[4], r[5], r[6]
	in.Bodice.Crossings = 1
	return in
}

// evenSheet slides evenly: sleeve 13 + 2 - 12 = 3, a side 1 1/2; bust 38 + 3 - 40 = 1, a
// side 1/4; limits of 1 leave 1/2 of the sleeve side; half of 1 1/2 is 3/4.
func evenSheet(t *testing.T) calc.Input {
	in := shortSheet(readings(t, units.Inches, "13", "2", "12", "38", "3", "10", "10"))
	in.Method.Slide = calc.SlideEven
	return in
}

// keptSheet keeps the armhole: cap 9 1/8 + 9 1/8 = 18 1/4, armhole 8 3/4 + 9 = 17 3/4, cap
// ease 1/2, of 1 1/2 at most, so 1 to spare, 1/2 at each half; sleeve 13 + 2 - 12 1/4 =
// 2 3/4, a side 1 3/8, beyond the limit of 1 by 3/8, which slides; cap ease after 1 1/4.
func keptSheet(t *testing.T) calc.Input {
	r := readings(t, units.Inches, "13", "2", "12 1/4", "9 1/8", "9 1/8", "8 3/4", "9")
	in := calc.Input{Ruler: units.EighthInch, Method: calc.UsualMethod()}
	in.Sleeve.Measured = calc.SeamToSeam
	in.Bicep, in.BicepEase, in.Sleeve.Width = r[0], r[1], r[2]
	in.Sleeve.CapFront, in.Sleeve.CapBack, in.Bodice.ArmholeFront, in.Bodice.ArmholeBack = r[3], r[4], r[5], r[6]
	in.Method.Armhole = calc.KeepArmhole
	return in
}

// handWorked is what wrong turns give, worked by hand from the sheets above.
type handWorked struct {
	figure   calc.Figure
	missteps []drill.Misstep
	answers  string // that look like these missteps, and no others
}

func one(of calc.Subject, q calc.Quantity, answers string, m ...drill.Misstep) handWorked {
	return handWorked{calc.Figure{Of: of, Quantity: q}, m, answers}
}

var handWorkedOn = []struct {
	level  int
	sheet  func(*testing.T) calc.Input
	system units.System
	list   []handWorked
}{
	{4, edgeSheet, units.Inches, []handWorked{
		one(calc.OfSleeve, calc.FlatWidth, "14 3/4", drill.AllowanceLeftOn),
		one(calc.OfSleeve, calc.FlatWidth, "14 1/8", drill.AllowanceOnce), // 14 3/4 - 5/8
		one(calc.OfSleeve, calc.FlatWidth, "16", drill.AllowanceAdded),    // 14 3/4 + 1 1/4
		one(calc.OfBust, calc.FrontWidth, "11", drill.AllowanceLeftOn),    // 11 3/4 - 3/4
		one(calc.OfBust, calc.FrontWidth, "10", drill.AllowanceTwice),     // 11 3/4 - 1 - 3/4
		one(calc.OfBust, calc.FrontWidth, "11 1/2", drill.AllowanceAdded), // 11 3/4 + 1/2 - 3/4
		one(calc.OfBust, calc.FrontWidth, "11 1/4", drill.TakeOffLeftIn),  // 11 3/4 - 1/2
		one(calc.OfBust, calc.FrontWidth, "12", drill.TakeOffAdded),       // 11 3/4 - 1/2 + 3/4
		one(calc.OfBust, calc.FlatWidth, "19 1/2", drill.NotDoubled),      // 10 1/2 + 9
		one(calc.OfBust, calc.FlatWidth, "30; 28 1/2", drill.OneDoubled),  // 21 + 9, 10 1/2 + 18
		one(calc.OfSleeve, calc.Need, "15 3/4", drill.PatternForgotten),   // 13 3/4 + 2
		one(calc.OfSleeve, calc.Need, "1/4", drill.EaseForgotten),         // 13 3/4 - 13 1/2
		one(calc.OfSleeve, calc.Need, "-1 3/4", drill.EaseTakenOff),       // 13 3/4 - 2 - 13 1/2
		one(calc.OfSleeve, calc.Need, "-2 1/4", drill.OtherWayRound),
		one(calc.OfSleeve, calc.Need, "1", drill.WidthAsMeasured),    // 15 3/4 - 14 3/4
		one(calc.OfSleeve, calc.Need, "2", drill.SmallerArm),         // 13 1/2 + 2 - 13 1/2
		one(calc.OfBust, calc.Need, "-1", drill.EaseForgotten),       // 38 - 39
		one(calc.OfBust, calc.Need, "-1 1/2", drill.WidthAsMeasured), // 41 - 2 x 21 1/4
		one(calc.OfBust, calc.Need, "21 1/2", drill.HalfTheBody),     // 41 - 19 1/2
		one(calc.OfSleeveFront, calc.Need, "2 1/4", drill.NotDivided),
		one(calc.OfSleeveFront, calc.Need, "9/16", drill.HalvedTwice), // 2 1/4 / 4
		one(calc.OfBodiceFront, calc.Need, "2", drill.NotDivided),
		one(calc.OfBodiceFront, calc.Need, "1", drill.DividedByTwo),
		one(calc.OfBodiceFront, calc.Need, "1/4", drill.HalvedTwice), // 2 / 8
		one(calc.OfFront, calc.Slide, "0", drill.LimitIgnored),
		one(calc.OfFront, calc.Slide, "1/8", drill.OnlySleeveMatched),
		one(calc.OfFront, calc.Slide, "1 1/8; 1/2", drill.NothingPivoted),
		one(calc.OfFront, calc.Slide, "1 1/4; 1 3/4", drill.LimitOffWholeNeed), // 2 1/4 - 1, 2 - 1/4
		one(calc.OfFront, calc.Slide, "1", drill.LimitForSlide),
		one(calc.OfSleeveFront, calc.Pivot, "1 1/8", drill.SlideForgotten),
		one(calc.OfSleeveFront, calc.Pivot, "1 3/8", drill.SlideAdded), // 1 1/8 + 1/4
		one(calc.OfSleeveFront, calc.Pivot, "1/4", drill.OtherPiece),
		one(calc.OfSleeveFront, calc.Pivot, "1", drill.LimitForPivot),
		one(calc.OfBodiceFront, calc.Pivot, "7/8", drill.OtherPiece),
		one(calc.OfSleeveFront, calc.SlideMark, "1/4", drill.NotRounded),
		one(calc.OfSleeveFront, calc.SlideMark, "0", drill.RoundedOtherWay),
		one(calc.OfSleeveFront, calc.PivotMark, "7/8", drill.NotRounded),
		one(calc.OfSleeveFront, calc.PivotMark, "1", drill.RoundedAlone, drill.TotalForPivot), // 7/8 to 1; 1 marked in all
		one(calc.OfSleeveFront, calc.PivotMark, "5/8", drill.MarkOffExact),                    // 1 1/8 - 1/2
		one(calc.OfBodiceFront, calc.PivotMark, "1/4", drill.NotRounded),
		one(calc.OfSleeve, calc.FinishedMarked, "14 1/2", drill.OneSideCounted, drill.SlideNotCounted), // 13 1/2 + 1; + 2 x 1/2
		one(calc.OfSleeve, calc.FinishedMarked, "17 1/2", drill.CountedTwice),                          // 13 1/2 + 4 x 1
		one(calc.OfSleeve, calc.FinishedMarked, "15 3/4", drill.AddedToBody, drill.ExactForMarks),      // 13 3/4 + 2; 13 1/2 + 2 1/4
		one(calc.OfSleeve, calc.FinishedMarked, "16 3/4", drill.WidthAsMeasured),                       // 14 3/4 + 2
		one(calc.OfBust, calc.FinishedMarked, "39 1/2", drill.OneSideCounted),
		one(calc.OfBust, calc.FinishedMarked, "40", drill.CountedOnce, drill.AddedToBody), // 39 + 1; 38 + 2
		one(calc.OfBust, calc.FinishedMarked, "39", drill.SlideNotCounted),                // pivots of 0
	}},
	{1, centreSeamSheet, units.Inches, []handWorked{
		one(calc.OfBust, calc.FrontWidth, "12", drill.AllowanceLeftOn),
		one(calc.OfBust, calc.FrontWidth, "11 1/2", drill.AllowanceOnce),
		one(calc.OfBust, calc.FrontWidth, "13", drill.AllowanceAdded),
	}},
	{3, lowSheet, units.Inches, []handWorked{
		one(calc.OfFront, calc.Slide, "-1/4; -1/2", drill.BelowNothing),
		one(calc.OfFront, calc.Slide, "3/4; ", drill.NothingPivoted),
		one(calc.OfSleeve, calc.Finished, "14 1/4", drill.OneSideCounted), // 13 1/2 + 3/4
		one(calc.OfSleeve, calc.Finished, "16 1/2", drill.CountedTwice),   // 13 1/2 + 3
	}},
	{6, inwardSheet, units.Inches, []handWorked{
		one(calc.OfSleeveFront, calc.Pivot, "1/2", drill.SignForgotten),
		one(calc.OfBodiceFront, calc.PivotMark, "3/4", drill.SignForgotten),
	}},
	{6, evenSheet, units.Inches, []handWorked{
		one(calc.OfFront, calc.EvenSlide, "1 1/2", drill.EvenOfPiece), // 3 / 2
		one(calc.OfFront, calc.Slide, "1/2", drill.OnlySleeveMatched, drill.LeastForEven),
	}},
	{6, keptSheet, units.Inches, []handWorked{
		one(calc.OfSleeve, calc.CapEase, "-1/2", drill.OtherWayRound),
		one(calc.OfSleeve, calc.CapEase, "3/8; 1/8", drill.OneSeamCompared), // 9 1/8 - 8 3/4, 9 1/8 - 9
		one(calc.OfSleeve, calc.CapRoom, "1", drill.SpareNotHalved),
		one(calc.OfSleeve, calc.CapRoom, "1/4", drill.EaseForRoom),
		one(calc.OfFront, calc.Slide, "1 3/8", drill.NothingPivoted),
		one(calc.OfFront, calc.Slide, "1 3/4", drill.LimitOffWholeNeed),
		one(calc.OfSleeve, calc.CapEaseAfter, "1/2", drill.OneSeamCompared, drill.SlideIntoArmhole), // 9 1/2 - 9
		one(calc.OfSleeve, calc.CapEaseAfter, "3/4", drill.OneSeamCompared),                         // 9 1/2 - 8 3/4
		one(calc.OfSleeve, calc.CapEaseAfter, "7/8", drill.OneSlideEased),                           // 1/2 + 3/8
	}},
	{5, seamSheet, units.Centimetres, []handWorked{
		one(calc.OfBust, calc.FrontWidth, "20", drill.AllowanceNotInside), // 25 - 2 - 2 x 1.5
		one(calc.OfBust, calc.FlatWidth, "76", drill.AllowanceNotInside),  // 88 - 4 x 2 x 1.5
		one(calc.OfSleeve, calc.Need, "10", drill.AllowanceNotInside),     // 35 - (28 - 2 x 1.5)
		one(calc.OfSleeveFront, calc.Need, "4.2", drill.ShareExchanged),
		one(calc.OfSleeveFront, calc.Need, "3.5", drill.EvenShare),
		one(calc.OfBodiceBack, calc.Need, "6", drill.ShareOfWhole), // 3/5 of 10
		one(calc.OfBodiceBack, calc.Need, "5", drill.DividedByTwo), // 10 / 2
		one(calc.OfBodiceBack, calc.Need, "2.5", drill.EvenShare),
		one(calc.OfBodiceBack, calc.Need, "2", drill.ShareExchanged),
		one(calc.OfFront, calc.Slide, "1.7", drill.OtherHalf),
		one(calc.OfFront, calc.Slide, "0", drill.LimitIgnored, drill.OnlyBodiceMatched),
		one(calc.OfBack, calc.Slide, "0.5", drill.OnlyBodiceMatched),
		one(calc.OfBodiceFront, calc.Pivot, "1.3", drill.OtherHalf),
		one(calc.OfSleeveFront, calc.SlideMark, "1.5", drill.OtherHalf),
		one(calc.OfSleeveFront, calc.SlideMark, "0", drill.RoundedOtherWay), // 0.3 is nearer to 0.5
		one(calc.OfSleeveBack, calc.SlideMark, "2", drill.RoundedOtherWay),  // 1.7 is nearer to 1.5
		one(calc.OfBodiceFront, calc.PivotMark, "2.5", drill.OtherPiece),
		one(calc.OfSleeve, calc.FinishedMarked, "31; 32", drill.OneSideCounted),                  // 28 + 3, 28 + 4
		one(calc.OfBust, calc.FinishedMarked, "91; 92", drill.OneSideCounted),                    // 88 + 3, 88 + 2 x 2
		one(calc.OfBust, calc.FinishedMarked, "94", drill.OneSideCounted, drill.SlideNotCounted), // 88 + 2 x 3, and 2 x (1.5 + 1.5)
		one(calc.OfBust, calc.FinishedMarked, "90", drill.OneSideCounted),                        // 88 + 2
	}},
}

func TestMisstepsByHand(t *testing.T) {
	seen := map[drill.Misstep]bool{}
	for _, sheet := range handWorkedOn {
		questions := drill.Questions(sheet.level, sheet.sheet(t))
		for _, h := range sheet.list {
			i := slices.IndexFunc(questions, func(q drill.Question) bool { return q.Figure == h.figure })
			if i < 0 {
				t.Fatalf("level %d does not ask for %v", sheet.level, h.figure)
			}
			for _, text := range strings.Split(strings.TrimSuffix(h.answers, "; "), "; ") {
				answer := readings(t, sheet.system, text)[0].Length
				if got := questions[i].Misled(answer); !slices.Equal(got, h.missteps) {
					t.Errorf("level %d, %v: %s looks like %v, want %v", sheet.level, h.figure, text, got, h.missteps)
				}
			}
			for _, m := range h.missteps {
				seen[m] = true
			}
		}
	}
	for m := drill.Misstep(0); m < drill.MisstepCount; m++ {
		if !seen[m] {
			t.Errorf("misstep %d has no example", m)
		}
	}
}

// No wrong turn leads to the right answer, no two to the same but by one entry,
// and each is met with in practice.
func TestMisstepsAreWrong(t *testing.T) {
	met := map[drill.Misstep]int{}
	for _, p := range drilled() {
		for _, q := range p.Questions {
			values := map[units.Length]bool{q.Right: true}
			for _, v := range q.Missteps {
				if values[v.Value] || len(v.Missteps) == 0 {
					t.Fatalf("level %d, %v: %v stands twice or is right", p.Level, q.Figure, v.Value)
				}
				values[v.Value] = true
				for _, m := range v.Missteps {
					met[m]++
				}
			}
			if q.Misled(q.Right) != nil {
				t.Fatal("a right answer looks like a misstep")
			}
		}
	}
	for m := drill.Misstep(0); m < drill.MisstepCount; m++ {
		if met[m] == 0 {
			t.Errorf("misstep %d is never met with", m)
		}
	}
}
