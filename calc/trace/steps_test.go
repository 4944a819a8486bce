package trace_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/calc/internal/byhand"
	"capscye/calc/trace"
	"capscye/units"
)

// The work at the table as data: which steps there are, what they say, and what unticks
// them. The words are tested where they are made.

// traced are the steps of a sheet by their names.
func traced(input calc.Input) map[string]trace.Step {
	steps := map[string]trace.Step{}
	for _, s := range trace.Steps(input, calc.Compute(input)) {
		steps[s.Name] = s
	}
	return steps
}

// hasSteps tells which steps are there, and which are not.
func hasSteps(t *testing.T, input calc.Input, there []string, notThere ...string) {
	t.Helper()
	steps := traced(input)
	for _, name := range there {
		if _, ok := steps[name]; !ok {
			t.Errorf("%s is missing", name)
		}
	}
	for _, name := range notThere {
		if _, ok := steps[name]; ok {
			t.Errorf("%s is there", name)
		}
	}
}

// unlike is a sheet whose front and back are told apart: the sleeve needs 2 1/2 and the
// bust as much, and each front takes 3/5, so 1 1/2 and 1 at the sleeve, 3/4 and 1/2 at
// the bodice. The front slides by 1/2, the back not at all.
func unlike() calc.Input {
	input := byhand.Geometry()
	input.Method.ShareSleeve, input.Method.ShareBust = units.Share{Numerator: 3, Denominator: 5}, units.Share{Numerator: 3, Denominator: 5}
	return input
}

// ticks compares what was done with a sheet as it is now.
func ticks(t *testing.T, before, after calc.Input, stay, untick []string) {
	t.Helper()
	was, is := traced(before), traced(after)
	for _, name := range stay {
		if was[name].Name == "" || was[name].ID() != is[name].ID() {
			t.Errorf("%s was done and is not any more: %s, now %s", name, was[name].ID(), is[name].ID())
		}
	}
	for _, name := range untick {
		if was[name].Name == "" || was[name].ID() == is[name].ID() {
			t.Errorf("%s is done still: %s", name, is[name].ID())
		}
	}
}

var (
	bodiceFrontSteps = []string{"bodice-front-lay", "bodice-front-mark", "bodice-front-pin", "bodice-front-turn", "bodice-front-trace",
		"bodice-front-slide", "bodice-front-taper", "bodice-front-true"}
	sleeveFrontSteps = []string{"sleeve-front-mark", "sleeve-front-pin", "sleeve-front-turn", "sleeve-front-trace", "sleeve-front-slide", "sleeve-front-extend"}
	garmentSteps     = []string{"notches", "check-cap-and-armhole", "check-widths", "check-side-seams", "alter-too", "test-garment"}
)

// What was done to the front stays done when only the back changes; what concerns both
// does not.
func TestOnlyWhatChangesIsUnticked(t *testing.T) {
	before := unlike()
	// The bust needs 3 1/4, half of it 1 5/8: 3/4 in front as before, and 7/8 behind.
	bodice := before
	bodice.BustEase, bodice.Method.ShareBust = byhand.Known("3 3/4"), units.Share{Numerator: 6, Denominator: 13}
	ticks(t, before, bodice, slices.Concat(bodiceFrontSteps, sleeveFrontSteps, []string{"sleeve-true"}),
		append([]string{"bodice-back-mark", "bodice-back-turn", "bodice-back-true"}, garmentSteps...))
	// The sleeve needs 2 3/4: 1 1/2 in front as before, and 1 1/4 behind.
	sleeve := before
	sleeve.BicepEase, sleeve.Method.ShareSleeve = byhand.Known("2"), units.Share{Numerator: 6, Denominator: 11}
	ticks(t, before, sleeve, slices.Concat(bodiceFrontSteps, sleeveFrontSteps),
		append([]string{"sleeve-back-mark", "sleeve-true", "bodice-back-mark", "bodice-back-true"}, garmentSteps...))
	// A long sleeve keeps its hem, so smoothing it says nothing of that; it goes by the
	// amounts of both sides.
	for _, in := range []*calc.Input{&before, &sleeve} {
		in.Sleeve.Long, in.Sleeve.UnderarmSeam, in.Sleeve.HemWidth = true, byhand.Known("17"), byhand.Known("9")
	}
	ticks(t, before, sleeve, []string{"sleeve-front-mark"}, []string{"sleeve-true"})
	// The same amounts, drawn another way: only what says so.
	corner := before
	corner.Method.TaperFrom = calc.FromCorner
	ticks(t, before, corner, []string{"sleeve-front-mark", "sleeve-front-pin", "sleeve-front-turn"}, []string{"sleeve-front-taper", "bodice-front-taper"})
}

// Front and back are one job where all is alike, two where anything is not, be it a dart.
func TestFrontAndBackToldApart(t *testing.T) {
	hasSteps(t, byhand.Geometry(), []string{"sleeve-back-same", "bodice-back-same"}, "sleeve-lay-back", "sleeve-back-mark", "bodice-back-mark")
	hasSteps(t, unlike(), []string{"sleeve-front-mark", "sleeve-lay-back", "sleeve-back-mark", "bodice-back-mark"}, "sleeve-back-same", "bodice-back-same")
	dart := byhand.Geometry()
	dart.Bodice.Front, dart.Bodice.TakeOffFront, dart.Bodice.DartFront = byhand.Known("10 3/4"), byhand.Known("1/2"), calc.SideDart
	dart.Bodice.Back, dart.Bodice.TakeOffBack, dart.Bodice.DartBack = byhand.Known("10 1/4"), byhand.Known("1/2"), calc.WaistDart
	hasSteps(t, dart, []string{"bodice-front-mark", "bodice-back-mark", "sleeve-back-same"}, "bodice-back-same")
	steps := traced(dart)
	if f, b := steps["bodice-front-taper"].Dart, steps["bodice-back-lay"].Dart; f != calc.SideDart || b != calc.WaistDart {
		t.Errorf("darts %v and %v", f, b)
	}
	if d := steps["bodice-back-taper"].Dart; d != calc.NoDart {
		t.Errorf("a waist dart changes nothing at the side seam: %v", d)
	}
	dart.Bodice.TakeOffBack, dart.Bodice.DartBack = byhand.Known("0"), calc.AnyDart // measured, and nothing: there is no dart
	if b := traced(dart)["bodice-back-lay"].Dart; b != calc.NoDart {
		t.Errorf("nothing taken off is dart %v", b)
	}
	half := comingIn("8 1/2")
	half.Sleeve.CapBack = units.Reading{} // of one curve the length is told that is left, of the other not
	hasSteps(t, half, []string{"sleeve-front-slide", "sleeve-lay-back", "sleeve-back-slide"}, "sleeve-back-same")
	last := trace.Steps(byhand.Geometry(), calc.Compute(byhand.Geometry()))
	for s, stage := range last[len(last)-1].Stages {
		if stage != trace.Altered {
			t.Errorf("in the end side %d is as it was at stage %d", s, stage)
		}
	}
}

// A dart is what was told, whether the tape lay over it or not; any, where only something
// was taken off; and none where nobody told and nothing was.
func TestADartIsAsItWasTold(t *testing.T) {
	for _, c := range []struct {
		takeOff    string
		told, want calc.Dart
	}{
		{"1/2", calc.AnyDart, calc.AnyDart}, {"1/2", calc.SideDart, calc.SideDart}, {"1/2", calc.NoDart, calc.NoDart},
		{"", calc.AnyDart, calc.NoDart}, {"", calc.SideDart, calc.SideDart}, {"0", calc.ArmholeDart, calc.ArmholeDart}, {"0", calc.AnyDart, calc.NoDart},
	} {
		input := byhand.Geometry()
		if c.takeOff != "" {
			input.Bodice.TakeOffFront = byhand.Known(c.takeOff)
		}
		input.Bodice.DartFront = c.told
		if got := traced(input)["bodice-front-lay"].Dart; got != c.want {
			t.Errorf("take-off %q, told %v: %v, want %v", c.takeOff, c.told, got, c.want)
		}
	}
}

// A bodice that is cut is left alone, aloud; a sleeve alone has its width checked.
func TestWhatStaysIsSaid(t *testing.T) {
	kept := byhand.Geometry()
	kept.Method.Armhole = calc.KeepArmhole
	hasSteps(t, kept, []string{"bodice-leave", "sleeve-front-mark"}, "bodice-front-lay")
	steps := traced(kept)
	if d := steps["check-cap-and-armhole"].Detail; !d.Kept || d.Cap != byhand.Known("18 3/4") || d.Armhole != byhand.Known("17 1/2") || d.CapEase != byhand.Known("1 1/4") {
		t.Errorf("1/4 in a side to ease in: %+v", d)
	}
	if d := steps["check-widths"].Detail; d.Sleeve != byhand.Known("15 1/2") || d.Bust.Known {
		t.Errorf("of the sleeve alone: %+v", d)
	}
}

// comingIn is a sleeve of 12 with a cap 5 high that needs 2.6 less: 1.3 a side, of which
// the ruler in halves makes a pivot of 1 and a slide of 1/2. Turned inward its corner
// comes from 6 to 5 out, and to 6 down, for 5^2 + 6^2 = 6^2 + 5^2.
func comingIn(halfCap string) calc.Input {
	input := byhand.Needing("-2.6", "")
	input.Ruler = units.HalfInch
	input.Sleeve.CapHeight, input.Sleeve.Allowance = byhand.Known("5"), byhand.Known("5/8")
	if halfCap != "" {
		input.Sleeve.CapFront, input.Sleeve.CapBack = byhand.Known(halfCap), byhand.Known(halfCap)
	}
	return input
}

// A side that comes in is marked, pinned, turned and slid like any other, from the
// crossing of its seam lines; its curve is drawn anew, 1/2 in shorter.
func TestComingInAtTheTable(t *testing.T) {
	input := comingIn("8 1/2")
	hasSteps(t, input, []string{"sleeve-front-mark", "sleeve-front-pin", "sleeve-front-turn", "sleeve-front-slide", "sleeve-front-extend"})
	steps := traced(input)
	if s := steps["sleeve-front-slide"]; s.Pivot != byhand.Inches("-1") || s.Slide != byhand.Inches("-1/2") || s.Curve != byhand.Known("8") {
		t.Errorf("%+v", s)
	}
	if d := steps["check-widths"].Detail; d.Sleeve != byhand.Known("9") || !d.LowSleeve {
		t.Errorf("12 less 2 x 1 1/2, at the corners: %+v", d)
	}
	one := comingIn("8 1/2")
	one.BicepEase = byhand.Known("1") // 1 less, all in front
	one.Method.ShareSleeve = units.Share{Numerator: 1, Denominator: 1}
	if d := traced(one)["check-widths"].Detail; d.Sleeve != byhand.Known("11") || !d.LowSleeve {
		t.Errorf("one side alone: %+v", d)
	}
}

// Held beside it, a bodice that nobody asked for slides in by as much and turns out again.
func TestHeldBesideASleeveThatComesIn(t *testing.T) {
	input := byhand.Geometry()
	input.Bust, input.BicepEase, input.Bodice.Allowance = units.Reading{}, byhand.Known("-3 3/4"), byhand.Known("5/8") // 1 1/2 less a side
	input.Method.Follow = calc.Hold
	steps := traced(input)
	if s := steps["bodice-front-mark"]; s.Pivot != byhand.Inches("1/2") || s.Slide != byhand.Inches("-1/2") {
		t.Errorf("%+v", s)
	}
}

// What no hands can do is no job, though it be by the marks alone: with a half-cap of
// 7.95 a slide of 0.3 still reaches the corner at hypot(4.7, 6) = 7.62, one of 1/2
// does not reach hypot(4.5, 6) = 7.5. And one side is enough.
func TestNoJobThatCannotBeDone(t *testing.T) {
	input := comingIn("7.95")
	if !isFound(calc.Compute(input), calc.OutOfReach, calc.OfSleeve) { // a stop, and said
		t.Error("it is not found out of reach")
	}
	hasSteps(t, input, []string{"sleeve-unreachable"}, "sleeve-lay", "sleeve-front-mark")
	input.Sleeve.CapFront = byhand.Known("8 1/2")
	hasSteps(t, input, []string{"sleeve-unreachable"}, "sleeve-lay", "sleeve-front-mark", "sleeve-back-mark")
	if d := traced(input)["check-widths"].Detail; d.Sleeve.Known {
		t.Errorf("nothing was traced that could be measured: %+v", d)
	}
}

// A slide of more than 4 in a side (TestBoundsOfTheSlide) is no job at all: a need of 10 1/4
// leaves 4 1/8 of each side to it, one of 10 just 4.
func TestNoJobThatIsTooFar(t *testing.T) {
	for need, job := range map[string]bool{"10": true, "10 1/4": false} {
		input := byhand.Needing(need, "")
		if steps := trace.Steps(input, calc.Compute(input)); (len(steps) > 0) != job {
			t.Errorf("a need of %s gives %d steps", need, len(steps))
		}
	}
}

// What a finished step is remembered by leads back to its name, whatever it goes by.
func TestTheNameOfAStepThatWasDone(t *testing.T) {
	input := unlike()
	input.Sleeve.Allowance = byhand.Known("5/8")
	kinds := map[string]bool{}
	for _, s := range trace.Steps(input, calc.Compute(input)) {
		rest := strings.TrimPrefix(s.ID(), s.Name)
		if kinds[rest[:min(len(rest), 1)]] = true; trace.StepName(s.ID()) != s.Name {
			t.Errorf("%s leads to %s, want %s", s.ID(), trace.StepName(s.ID()), s.Name)
		}
	}
	if !kinds["@"] || !kinds["#"] { // by its amounts, by its words alone
		t.Errorf("steps go by %v", kinds)
	}
}

// A stop of the back is a stop, also where only the back's corner was measured: 6 1/2 in
// of armhole less 1/2 does not reach a corner more than 6 in from its pin.
func TestAStopOfTheBackAlone(t *testing.T) {
	input := byhand.Geometry()
	input.Bust, input.BicepEase = units.Reading{}, byhand.Known("-3 3/4") // the sleeve needs 3 less and slides in by 1/2
	input.Bodice.CornerOutFront, input.Bodice.ArmholeBack = units.Reading{}, byhand.Known("7 1/2")
	p := calc.Compute(input)
	if !isFound(p, calc.OutOfReach, calc.OfBust) {
		t.Error("it is not found out of reach")
	}
	if p.Turns[calc.BodiceFront].Known || p.Turns[calc.BodiceFront].OutOfReach {
		t.Errorf("nothing is known of the front: %+v", p.Turns[calc.BodiceFront])
	}
	hasSteps(t, input, []string{"bodice-back-unreachable", "bodice-front-mark"}, "bodice-back-mark")
}

// The bust line is drawn when a piece is laid down, and what the side gains is marked on
// it, pivot and slide together, whether or not the outline below is known.
func TestTheBustLineAtTheTable(t *testing.T) {
	input := byhand.Geometry()
	input.Bodice.BustDown = byhand.Known("2")
	for _, seam := range []units.Reading{input.Bodice.SideSeam, {}} {
		input.Bodice.SideSeam = seam
		steps := traced(input)
		if d := steps["bodice-front-lay"].LineDown; d != byhand.Known("2") {
			t.Errorf("drawn %v down", d)
		}
		if d := steps["bodice-front-mark"].Detail; !d.Via || d.LineOut != byhand.Inches("5/8") { // 3/8 and 1/4
			t.Errorf("side seam %v: %+v", seam, d)
		}
		if d := steps["check-widths"].LineDown; d != byhand.Known("2") {
			t.Errorf("measured %v down", d)
		}
	}
	input.Method.TaperFrom = calc.FromCorner
	if d := traced(input)["bodice-front-mark"].Detail; d.Via {
		t.Errorf("from the corner nothing is marked on it: %+v", d)
	}
}

// Whether the bust line lies below the new underarm point is left to the hands where
// nobody can tell: where the side comes in and the seam below was not measured.
func TestALineThatMayLieAboveTheCorner(t *testing.T) {
	for _, c := range []struct {
		ease string
		seam units.Reading
		want bool
	}{{"3", byhand.Known("8"), false}, {"3", units.Reading{}, false}, {"-1/2", byhand.Known("8"), false}, {"-1/2", units.Reading{}, true}} { // 1 less is 1/4 in at a side
		input := byhand.Geometry()
		input.Bicep, input.BustEase = units.Reading{}, byhand.Known(c.ease)
		input.Bodice.BustDown, input.Bodice.SideSeam = byhand.Known("2"), c.seam
		if d := traced(input)["bodice-front-taper"].Detail; !d.Via || d.IfBelow != c.want {
			t.Errorf("ease %s, seam %v: %+v", c.ease, c.seam, d)
		}
	}
}

// A line is drawn at the hip where a seam that binds leads there, at hip or waist.
func TestTheHipLineAtTheTable(t *testing.T) {
	input := byhand.Geometry()
	input.Bodice.WaistFront, input.Bodice.WaistBack = byhand.Known("8 1/4"), byhand.Known("7 3/4") // 32 around
	input.Bodice.HipFront, input.Bodice.HipBack = byhand.Known("10"), byhand.Known("10")           // 40
	for _, c := range []struct {
		waist, hip string
		want       bool
	}{{"30", "37", false}, {"33", "37", true}, {"30", "40", true}} {
		input.Waist, input.WaistEase, input.Hip, input.HipEase = byhand.Known(c.waist), byhand.Known("1"), byhand.Known(c.hip), byhand.Known("2")
		if d := traced(input)["bodice-front-lay"].Detail; !d.Hip || d.HipLine != c.want {
			t.Errorf("waist %s, hip %s: %+v", c.waist, c.hip, d)
		}
	}
}

// Notches are set anew, and cap and armhole compared, where a seam gets longer or both
// pieces are altered; a sleeve that only pivots fits its armhole as before.
func TestWhenCapAndArmholeAreCompared(t *testing.T) {
	compared := []string{"notches", "check-cap-and-armhole"}
	hasSteps(t, byhand.Needing("4", ""), compared)
	hasSteps(t, byhand.Needing("1", "1"), append(compared, "sleeve-front-turn", "bodice-front-turn"), "sleeve-front-slide")
	hasSteps(t, byhand.Needing("1", ""), []string{"sleeve-front-turn", "test-garment"}, compared...)
}

// A seam bends at its last mark where it pivots, and not where it only slides.
func TestWhereTheSeamBends(t *testing.T) {
	input := byhand.Geometry()
	if d := traced(input)["bodice-front-taper"].Detail; !d.AtMark {
		t.Errorf("after a pivot: %+v", d)
	}
	input.Bust = units.Reading{} // it slides along by 1/4
	if d := traced(input)["bodice-front-taper"].Detail; d.AtMark {
		t.Errorf("after a slide alone: %+v", d)
	}
}

// The hem of a straight sleeve is drawn as much wider as both sides go out; and two
// pieces with two allowances have each its own in the end.
func TestHemAndAllowances(t *testing.T) {
	input := unlike()
	input.Sleeve.Allowance, input.Bodice.Allowance = byhand.Known("5/8"), byhand.Known("5/8")
	steps := traced(input)
	if d := steps["sleeve-true"].Detail; d.HemWiden != byhand.Inches("2 1/2") || d.Hem != byhand.Known("15 1/2") {
		t.Errorf("1 1/2 in front and 1 behind: %+v", d)
	}
	if d := steps["test-garment"].Allowance; d != byhand.Known("5/8") {
		t.Errorf("one allowance for all: %v", d)
	}
	long := input
	long.Sleeve.Long, long.Sleeve.UnderarmSeam, long.Sleeve.HemWidth = true, byhand.Known("17"), byhand.Known("9")
	if d := traced(long)["sleeve-true"].Detail; d.HemWiden != 0 || d.Hem.Known {
		t.Errorf("a long sleeve keeps its hem: %+v", d)
	}
	input.Bodice.Allowance = byhand.Known("3/8")
	if d := traced(input)["test-garment"].Allowance; d.Known {
		t.Errorf("5/8 and 3/8 are not one: %v", d)
	}
	for _, c := range [][2]units.Reading{{byhand.Known("5/8"), {}}, {{}, byhand.Known("5/8")}} {
		input.Sleeve.Allowance, input.Bodice.Allowance = c[0], c[1]
		if d := traced(input)["test-garment"].Allowance; d != byhand.Known("5/8") {
			t.Errorf("of one piece alone: %v", d)
		}
	}
}

// What is checked at the table is what was marked, on a ruler in halves: the sleeve
// totals 1 1/4 a side and is marked 1 1/2, so 13 becomes 16; its slide of 1/4 is marked
// 1/2, so the armhole of 17 1/2 becomes 18 1/2.
func TestChecksGoByTheMarks(t *testing.T) {
	input := byhand.Geometry()
	input.Ruler = units.HalfInch
	p := calc.Compute(input)
	steps := traced(input)
	if d := steps["check-widths"].Detail; d.Sleeve != byhand.Known("16") {
		t.Errorf("%+v", d)
	}
	if d := steps["check-cap-and-armhole"].Detail; d.Armhole != byhand.Known("18 1/2") || d.Cap != byhand.Known("19 1/4") || d.CapEase != byhand.Known("3/4") {
		t.Errorf("%+v", d)
	}
	// A bodice side totals 5/8, marked 1/2, all of it slide: a level 1/2 out, and back.
	grows := math.Sqrt(0.25+64) - 8
	if got := steps["check-side-seams"].Growths[calc.BodiceFront].Length.Millimetres() / 25.4; math.Abs(got-grows) > 1e-4 {
		t.Errorf("the side seam grows by %v, by the marks %v, by the exact amounts %v", got, grows, p.Turns[calc.BodiceFront].Growth.MM/25.4)
	}
	// Kept, 1/4 a side is marked 1/2, and the cap has 3/4 + 1 to ease in.
	input.Method.Armhole = calc.KeepArmhole
	if d := traced(input)["check-cap-and-armhole"].Detail; d.CapEase != byhand.Known("1 3/4") {
		t.Errorf("%+v", d)
	}
}

func isFound(p calc.Plan, code calc.Code, about calc.Subject) bool {
	return slices.ContainsFunc(p.Findings, func(f calc.Finding) bool { return f.Code == code && f.About == about })
}
