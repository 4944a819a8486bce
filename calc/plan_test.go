package calc_test

import (
	"testing"

	"capscye/calc"
	"capscye/calc/internal/byhand"
	"capscye/units"
)

// Sheets whose sums are easy by hand.
var in, known, flat = byhand.Inches, byhand.Known, byhand.Needing

// A row says what the four sides do, in inches: pivot and slide of a sleeve
// side and of a bodice side, front and back alike.
type row struct{ sleevePivot, sleeveSlide, bodicePivot, bodiceSlide string }

func checkSides(t *testing.T, p calc.Plan, want row) {
	t.Helper()
	for _, s := range calc.Sides() {
		pivot, slide := want.sleevePivot, want.sleeveSlide
		if !s.OfSleeve() {
			pivot, slide = want.bodicePivot, want.bodiceSlide
		}
		got := p.Sides[s]
		if got.Pivot != in(pivot) || got.Slide != in(slide) || got.Total != in(pivot)+in(slide) || got.LeftOver != 0 {
			t.Errorf("side %d: pivot %v, slide %v, total %v, left over %v; want %s and %s in",
				s, got.Pivot, got.Slide, got.Total, got.LeftOver, pivot, slide)
		}
	}
}

// The sums below are published rules with inputs of ours: the total is divided
// by the number of seam edges (Robinson, costume construction text, Central
// Washington University, ch. 17).
func TestTotalDividedByTheNumberOfSeams(t *testing.T) {
	t.Run("2 in over a sleeve's two edges is 1 in each", func(t *testing.T) {
		checkSides(t, calc.Compute(flat("2", "")), row{"1", "0", "0", "0"})
	})
	t.Run("1 in over a sleeve's two edges is 1/2 in each", func(t *testing.T) {
		checkSides(t, calc.Compute(flat("1", "")), row{"1/2", "0", "0", "0"})
	})
	t.Run("2 in over a bodice's four edges is 1/2 in each", func(t *testing.T) {
		checkSides(t, calc.Compute(flat("", "2")), row{"0", "0", "1/2", "0"})
	})
}

// Widths at the base of the cap and at the elbow from published rules: armhole
// 16 gives a sleeve 17 wide (School Sewing, one-piece foundation sleeve), and
// an elbow of 11 one of 12 (Ingalls, Text-Book on Domestic Art). What a pattern
// of another width needs is the difference.
func TestNeedIsGirthPlusEaseLessWidth(t *testing.T) {
	input := seamToSeam(calc.Input{Ruler: units.EighthInch, Method: calc.UsualMethod()})
	input.Bicep, input.BicepEase, input.Sleeve.Width = known("15"), known("2"), known("16")
	p := calc.Compute(input)
	if p.Sleeve.Need != known("1") || p.Sleeve.Finished != known("17") {
		t.Errorf("need %v, finished %v", p.Sleeve.Need, p.Sleeve.Finished)
	}
	input.Bicep, input.BicepEase, input.Sleeve.Width = known("11"), known("1"), known("11 1/2")
	if p = calc.Compute(input); p.Sleeve.Finished != known("12") {
		t.Errorf("finished %v", p.Sleeve.Finished)
	}
}

// Facts of the trade, common practice, no source.
func TestFactsOfTheTrade(t *testing.T) {
	t.Run("a sleeve that needs 4 in pivots 1 and slides 1 on each side, and the bodice goes out 1", func(t *testing.T) {
		p := calc.Compute(flat("4", ""))
		checkSides(t, p, row{"1", "1", "0", "1"})
		if p.Bust.Finished != known("44") {
			t.Errorf("four sides by 1 in: the bust comes to %v", p.Bust.Finished)
		}
	})
	t.Run("with a bust that needs 6 in the bodice slides 1 and pivots 1/2", func(t *testing.T) {
		p := calc.Compute(flat("4", "6"))
		checkSides(t, p, row{"1", "1", "1/2", "1"})
		if p.Bust.Finished != known("46") {
			t.Errorf("4 x 1/2 + 4 x 1 = 6: the bust comes to %v", p.Bust.Finished)
		}
	})
	t.Run("a bodice pivots 4 in with its four sides and the armhole stays", func(t *testing.T) {
		checkSides(t, calc.Compute(flat("", "4")), row{"0", "0", "1", "0"})
	})
	t.Run("a bust that grows by more than 4 in changes the armhole, and the sleeve must follow", func(t *testing.T) {
		p := calc.Compute(flat("", "5"))
		checkSides(t, p, row{"0", "1/4", "1", "1/4"})
		checkCodes(t, p, "follows-unasked sleeve", "pivot-and-slide bust")
	})
	t.Run("5/8 in allowances leave 11 3/4 of 13 in", func(t *testing.T) {
		input := flat("0", "")
		input.Sleeve.Width, input.Sleeve.Allowance, input.Sleeve.Measured = known("13"), known("5/8"), calc.EdgeToEdge
		if p := calc.Compute(input); p.Sleeve.Flat != known("11 3/4") {
			t.Errorf("flat %v", p.Sleeve.Flat)
		}
	})
}

// seamToSeam is a sheet whose widths were all measured between seam lines.
func seamToSeam(input calc.Input) calc.Input {
	input.Sleeve.Measured, input.Bodice.Measured = calc.SeamToSeam, calc.SeamToSeam
	return input
}

func TestWorkedByHand(t *testing.T) {
	input := byhand.WorkedByHand()
	p := calc.Compute(input)
	checkSides(t, p, row{"1", "1/4", "3/8", "1/4"})
	for _, h := range calc.Halves() {
		if p.Bands[h] != (calc.Band{Low: in("1/4"), High: in("1 1/4")}) {
			t.Errorf("band %v", p.Bands[h])
		}
	}
	if p.Sleeve.Finished != known("15 1/2") || p.Bust.Finished != known("42 1/2") {
		t.Errorf("finished %v and %v", p.Sleeve.Finished, p.Bust.Finished)
	}
	if p.Sleeve.EaseAfter != known("1 3/4") || p.Bust.EaseAfter != known("3") {
		t.Errorf("ease %v and %v", p.Sleeve.EaseAfter, p.Bust.EaseAfter)
	}
	checkCodes(t, p, "pivot-and-slide sleeve", "pivot-and-slide bust")

	input.Method.Slide = calc.SlideEven
	checkSides(t, calc.Compute(input), row{"5/8", "5/8", "0", "5/8"})
}

// A slide outside the band is moved into it, and said so.
func TestChosenSlide(t *testing.T) {
	input := byhand.WorkedByHand()
	input.Method.Slide = calc.SlideChosen
	for text, want := range map[string]string{"1/2": "1/2", "1/8": "1/4", "3": "1 1/4", "-1": "1/4"} {
		input.Method.SlideLength = in(text)
		p := calc.Compute(input)
		if got := p.Sides[calc.SleeveFront].Slide; got != in(want) {
			t.Errorf("%s became %v, want %s", text, got, want)
		}
		moved := false
		for _, f := range p.Findings {
			moved = moved || f.Code == calc.SlideMoved && f.Amount == in(text) && f.Other == in(want)
		}
		if moved != (text != want) {
			t.Errorf("%s: moved is said: %v", text, moved)
		}
	}
}

// Where the slide is more than the bust needs: let out gives extra ease, hold
// turns the bodice back so that its width stays.
func TestFollowing(t *testing.T) {
	letOut := flat("4", "2")
	p := calc.Compute(letOut)
	checkSides(t, p, row{"1", "1", "0", "1"})
	checkCodes(t, p, "extra-ease bust", "pivot-and-slide sleeve", "slide-only bust")
	if p.Bust.Finished != known("44") {
		t.Errorf("let out: bust %v", p.Bust.Finished)
	}

	hold := letOut
	hold.Method.Follow = calc.Hold
	p = calc.Compute(hold)
	checkSides(t, p, row{"1", "1", "-1/2", "1"})
	checkCodes(t, p, "pivots-back bust", "pivot-and-slide sleeve", "pivot-and-slide bust")
	if p.Bust.Finished != known("42") {
		t.Errorf("hold: bust %v", p.Bust.Finished)
	}
}

// A sleeve that comes in by 3 in takes its armhole with it; a bodice that needed
// less comes in too far.
func TestShrinking(t *testing.T) {
	checkSides(t, calc.Compute(flat("-1", "-2")), row{"-1/2", "0", "-1/2", "0"})
	p := calc.Compute(flat("-3", "-1"))
	checkSides(t, p, row{"-1", "-1/2", "0", "-1/2"})
	checkCodes(t, p, "tighter-than-body sleeve", "too-far-in bust", "comes-in sleeve", "pivot-and-slide sleeve", "comes-in bust", "slide-only bust")
}

func TestNeedsOfOppositeSign(t *testing.T) {
	p := calc.Compute(flat("1", "-2"))
	checkSides(t, p, row{"1/2", "0", "-1/2", "0"})
	// From max(2 - 1, -1 - 1) = 1 to min(2 + 1, -1 + 1) = 0: no slide serves both.
	p = calc.Compute(flat("4", "-4"))
	if !p.Bands[calc.Front].Empty() || p.Bands[calc.Front] != (calc.Band{Low: in("1"), High: 0}) {
		t.Errorf("band %v", p.Bands[calc.Front])
	}
	sleeve, bodice := p.Sides[calc.SleeveFront], p.Sides[calc.BodiceFront]
	if sleeve.Pivot != in("1") || sleeve.Slide != in("1") || sleeve.LeftOver != 0 {
		t.Errorf("sleeve %+v", sleeve)
	}
	if bodice.Pivot != in("-1") || bodice.LeftOver != in("-1") {
		t.Errorf("bodice %+v", bodice)
	}
	checkCodes(t, p, "cannot-reach bust", "pivot-and-slide sleeve", "comes-in bust", "pivot-and-slide bust")
}

// With the bodice already cut, the sleeve pivots and nothing slides, but for
// what the cap can still ease in: (1 1/2 - 3/4)/2 = 3/8 a side for a set-in cap.
func TestKeptArmhole(t *testing.T) {
	input := flat("2 1/2", "1")
	input.Method.Armhole = calc.KeepArmhole
	p := calc.Compute(input)
	sleeve := p.Sides[calc.SleeveFront]
	if sleeve.Pivot != in("1") || sleeve.Slide != 0 || sleeve.LeftOver != in("1/4") {
		t.Errorf("seams not measured: %+v", sleeve)
	}
	if b := p.Sides[calc.BodiceFront]; b.Pivot != 0 || b.Slide != 0 || b.Total != 0 || b.LeftOver != in("1/4") {
		t.Errorf("bodice %+v", b)
	}
	checkCodes(t, p, "cannot-reach sleeve", "cannot-reach bust", "pivot-only sleeve")

	input.Bust = units.Reading{}
	input.Sleeve.CapFront, input.Sleeve.CapBack = known("9"), known("9 1/4")
	input.Bodice.ArmholeFront, input.Bodice.ArmholeBack = known("8 5/8"), known("8 7/8")
	p = calc.Compute(input)
	if s := p.Sides[calc.SleeveFront]; s.Pivot != in("1") || s.Slide != in("1/4") || s.LeftOver != 0 {
		t.Errorf("seams measured: %+v", s)
	}
	checkCodes(t, p, "cap-takes-slide sleeve", "pivot-and-slide sleeve")

	input.Sleeve.Style = calc.Shirt // 0 to 3/4 in: this cap has it all already
	if s := calc.Compute(input).Sides[calc.SleeveFront]; s.Slide != 0 || s.LeftOver != in("1/4") {
		t.Errorf("shirt cap: %+v", s)
	}
	input.Sleeve.Style = calc.Gathered
	if s := calc.Compute(input).Sides[calc.SleeveFront]; s.Slide != in("1/4") {
		t.Errorf("gathered cap: %+v", s)
	}
}

func TestSharesNeedNotBeEqual(t *testing.T) {
	// 28 in of waist as 15 in front and 13 in the back: Hand-Sewing Lessons,
	// chapter Drafting Children's Garments.
	input := flat("", "4")
	input.Method.ShareBust = units.Share{Numerator: 15, Denominator: 28}
	p := calc.Compute(input)
	front, back := p.Sides[calc.BodiceFront], p.Sides[calc.BodiceBack]
	if front.Need.Length+back.Need.Length != in("2") || (28*front.Need.Length-15*in("2")).Abs() > 14 {
		t.Errorf("front %v, back %v", front.Need, back.Need)
	}
	if p.Bust.Finished != known("44") {
		t.Errorf("bust %v", p.Bust.Finished)
	}
}

// What is asked and cannot be planned is open, for both pieces: a bodice that was
// planned without the sleeve it is sewn to would be cut wrong.
func TestAnOpenAnswerLeavesBothPiecesOpen(t *testing.T) {
	whole := byhand.WorkedByHand()
	for what, open := range map[string]func(*calc.Input){
		"sleeve width missing": func(in *calc.Input) { in.Sleeve.Width = units.Reading{} },
		"ease missing":         func(in *calc.Input) { in.BustEase = units.Reading{} },
		"something unreadable": func(in *calc.Input) { in.Unread = true },
	} {
		input := whole
		open(&input)
		p := calc.Compute(input)
		if !p.Open || p.Whole() || p.Sleeve.Finished.Known || p.Bust.Finished.Known || p.Sides[calc.BodiceFront].Total != 0 {
			t.Errorf("%s: %+v", what, p)
		}
	}
	whole.Bicep, whole.Sleeve = units.Reading{}, calc.SleeveInput{} // not asked is not open
	if p := calc.Compute(whole); p.Open || !p.Whole() || p.Sides[calc.BodiceFront].Pivot != in("5/8") {
		t.Errorf("bust alone: %+v", p)
	}
}

// Missing is not zero: what is not asked has no need, and what an asked girth
// lacks is named.
func TestMissingAnswers(t *testing.T) {
	p := calc.Compute(calc.Input{Method: calc.UsualMethod()})
	checkCodes(t, p, "nothing-asked sheet")
	if p.Whole() || p.Sleeve.Need.Known || p.Sides[calc.SleeveFront].Need.Known {
		t.Error("an empty sheet asks for nothing")
	}
	input := calc.Input{Method: calc.UsualMethod(), Bicep: known("13"), Bust: known("40")}
	input.Bodice.Front, input.Bodice.Measured, input.Bodice.Crossings = known("10"), calc.EdgeToEdge, 1
	p = calc.Compute(input)
	var missing []calc.Answer
	for _, f := range p.Findings {
		if f.Code == calc.AnswerMissing {
			missing = append(missing, f.Answer)
		}
	}
	want := []calc.Answer{calc.SleeveWidth, calc.BicepEase, calc.BodiceAllowance, calc.BodiceBackWidth, calc.BustEase}
	if len(missing) != len(want) {
		t.Fatalf("missing %v, want %v", missing, want)
	}
	for i := range want {
		if missing[i] != want[i] {
			t.Errorf("missing %v, want %v", missing, want)
		}
	}
}

func TestImpossibleWidthAndUnlikeArms(t *testing.T) {
	input := flat("1", "")
	input.Sleeve.Width, input.Sleeve.Allowance, input.Sleeve.Measured = known("1"), known("5/8"), calc.EdgeToEdge
	p := calc.Compute(input)
	checkCodes(t, p, "width-impossible sleeve")
	if p.Sleeve.Need.Known {
		t.Error("no need can follow from less than no width")
	}
	input = flat("1", "")
	input.BicepOther = known("10 1/2")
	p = calc.Compute(input)
	if p.Sleeve.Need != known("1 1/2") {
		t.Errorf("the larger arm decides: %v", p.Sleeve.Need)
	}
	checkCodes(t, p, "pivot-only sleeve", "arms-differ sleeve")
}

func TestTakeOffAndCrossings(t *testing.T) {
	input := byhand.WorkedByHand()
	input.Bodice.Measured, input.Bodice.Allowance, input.Bodice.Crossings = calc.EdgeToEdge, known("5/8"), 2
	input.Bodice.TakeOffFront = known("1/2")
	// 2 x (10 1/4 - 1 1/4 - 1/2 + 9 3/4 - 1 1/4) = 34
	if p := calc.Compute(input); p.Bust.Flat != known("34") {
		t.Errorf("flat %v", p.Bust.Flat)
	}
	input.Bodice.FinishedBust = known("41")
	if p := calc.Compute(input); p.Bust.Flat != known("41") {
		t.Errorf("a printed finished bust is used instead: %v", p.Bust.Flat)
	}
}

func TestFitsAndTightAndWide(t *testing.T) {
	checkCodes(t, calc.Compute(flat("0", "0")), "fits-already sleeve", "fits-already bust")
	input := flat("-3", "") // 10 in of arm and an ease of -1
	checkCodes(t, calc.Compute(input),
		"tighter-than-body sleeve", "follows-unasked bust", "comes-in sleeve", "pivot-and-slide sleeve")
	input = flat("3", "")
	input.Method.LimitSleeve = in("2")
	checkCodes(t, calc.Compute(input), "limit-wide sleeve", "pivot-only sleeve")
}

// The marks of a side add up to its rounded total, and the seam's two sides
// share one slide mark: 1 in over three edges at 1/16 in is 5/16 each.
func TestMarks(t *testing.T) {
	input := flat("", "")
	input.Ruler = units.SixteenthInch
	input.Bicep, input.BicepEase = known("10"), known("2 2/3")
	p := calc.Compute(input)
	if s := p.Sides[calc.SleeveFront]; s.PivotMark != in("5/16") || s.SlideMark != 0 {
		t.Errorf("a third of an inch: %+v", s)
	}
	input = flat("2.9", "")
	p = calc.Compute(input)
	if s := p.Sides[calc.SleeveFront]; s.SlideMark != in("1/2") || s.Marked() != in("1 1/2") || s.PivotMark != in("1") {
		t.Errorf("total 1.45, slide 0.45: marks %v + %v", s.PivotMark, s.SlideMark)
	}
	if p.Sleeve.Marked != known("15") || p.Sleeve.Finished != known("14.9") {
		t.Errorf("marked %v beside finished %v", p.Sleeve.Marked, p.Sleeve.Finished)
	}
}

var subjects = map[calc.Subject]string{
	calc.OfSheet: "sheet", calc.OfSleeve: "sleeve", calc.OfBust: "bust", calc.OfFront: "front", calc.OfBack: "back",
}

// checkCodes compares the findings, gravest first, as "code subject".
func checkCodes(t *testing.T, p calc.Plan, want ...string) {
	t.Helper()
	var got []string
	for _, f := range p.Findings {
		if f.Code == calc.EaseUnusual || f.Code == calc.AnswerDoubted { // in easy sums the ease is whatever the need asks for
			continue
		}
		got = append(got, string(f.Code)+" "+subjects[f.About])
	}
	if len(got) != len(want) {
		t.Errorf("findings %q, want %q", got, want)
		return
	}
	for i := range got {
		if got[i] != want[i] {
			t.Errorf("findings %q, want %q", got, want)
			return
		}
	}
}
