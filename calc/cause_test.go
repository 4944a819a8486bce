package calc_test

import (
	"slices"
	"testing"

	"capscye/calc"
	"capscye/calc/internal/byhand"
	"capscye/units"
)

func found(p calc.Plan, code calc.Code) (f calc.Finding, at int) {
	at = slices.IndexFunc(p.Findings, func(f calc.Finding) bool { return f.Code == code })
	if at >= 0 {
		f = p.Findings[at]
	}
	return f, at
}

// A sleeve of 13 typed 133: the width is heard before the stops that follow from it, and
// they know no other way out. Its level stays: it is a check.
func TestADoubtIsHeardBeforeTheStopsThatFollow(t *testing.T) {
	input := byhand.Needing("3", "2")
	input.Sleeve.Width = byhand.Known("133")
	input.Typed = &calc.Typed{Unit: units.Inches}
	input.Typed.Texts[calc.SleeveWidth] = "133"
	p := calc.Compute(input)
	if f := p.Findings[0]; f.Answer != calc.SleeveWidth || f.Level != calc.Warn || !f.Causes || f.Guess != byhand.Inches("13") {
		t.Errorf("heard first: %+v", f)
	}
	stops := 0
	for i, f := range p.Findings {
		if f.Level != calc.Stop {
			continue
		}
		if stops++; len(f.Ways) > 0 || f.Answer != calc.SleeveWidth || f.Guess != byhand.Inches("13") || p.Accepted(input, f).Known {
			t.Errorf("finding %d is no way out: %+v", i, f)
		}
	}
	if stops < 2 {
		t.Errorf("%d stops: %+v", stops, p.Findings)
	}
}

// The same without a guess: nobody has an ease of 17 3/4 in, whatever was meant.
func TestADoubtWithoutAGuessIsHeardFirstToo(t *testing.T) {
	input := byhand.Needing("3", "2")
	input.BicepEase = byhand.Known("17 3/4")
	input.Typed = &calc.Typed{Unit: units.Inches}
	input.Typed.Texts[calc.BicepEase] = "17 3/4"
	p := calc.Compute(input)
	f := p.Findings[0]
	if stop, at := found(p, calc.SlideFar); f.Answer != calc.BicepEase || len(f.Slips) > 0 || at < 1 || len(stop.Ways) > 0 || stop.Bound != f.Bound {
		t.Errorf("%+v", p.Findings)
	}
}

// What the sums do not use stops nothing: a waist that nobody has comes after, and the stop
// keeps its ways out.
func TestADoubtOfSomethingElseComesAfter(t *testing.T) {
	input := byhand.Needing("3", "")
	input.Waist, input.Method.Armhole = byhand.Known("100"), calc.KeepArmhole
	input.BicepEase, input.Bicep = byhand.Known("2"), byhand.Known("14")
	p := calc.Compute(input)
	doubt, at := found(p, calc.GirthUnusual)
	if stop, first := found(p, calc.CannotReach); at < first || doubt.Causes || len(stop.Ways) == 0 {
		t.Errorf("%+v", p.Findings)
	}
}

// Ways out that are none. The armhole is kept, so the sleeve, 12 wide, can have 1 a side.
func TestNoWayOutThatIsNone(t *testing.T) {
	kept := func(needs string) calc.Input {
		input := byhand.Needing("", "")
		input.Method.Armhole = calc.KeepArmhole
		input.BicepEase, input.Bicep = byhand.Known("2"), units.Known(byhand.Inches("10")+byhand.Inches(needs))
		return input
	}
	cap := func(height string) calc.Input {
		input := kept("3 1/2")
		input.Sleeve.CapHeight = byhand.Known(height)
		return input
	}
	wide := kept("0")
	wide.Sleeve.Width = byhand.Known("17") // 5 too wide; 1 a side is pivoted away
	wider := wide
	wider.Sleeve.Width = byhand.Known("18 1/4")
	tight := kept("3")
	tight.Bicep, tight.BicepEase = byhand.Known("14 1/2"), byhand.Known("1 1/2")
	for _, c := range []struct {
		name    string
		input   calc.Input
		code    calc.Code
		way     calc.Way
		offered bool
	}{
		{"a gusset of 4 in", kept("6"), calc.CannotReach, calc.Gusset, true},
		{"a gusset wider than that", kept("6 1/8"), calc.CannotReach, calc.Gusset, false},
		{"a fold of 3 in", wide, calc.CannotReach, calc.FoldOut, true},
		{"a fold wider than 4 in", wider, calc.CannotReach, calc.FoldOut, false},
		{"half a mark a side", kept("2 1/8"), calc.CannotReach, calc.Gusset, true},
		{"less than the ruler shows", kept("2 1/16"), calc.CannotReach, calc.Gusset, false},
		{"less than the ruler shows, spread", kept("2 1/16"), calc.CannotReach, calc.SlashAndSpread, false},
		{"a cap that stays high enough", cap("6"), calc.CannotReach, calc.SlashAndSpread, true},
		{"a cap that is spread flat", cap("4 1/4"), calc.CannotReach, calc.SlashAndSpread, false},
		{"more ease where none can be had", tight, calc.TighterThanBody, calc.MoreEase, false},
	} {
		p := calc.Compute(c.input)
		f, at := found(p, c.code)
		if at < 0 || f.Bound != nil || slices.Contains(f.Ways, c.way) != c.offered {
			t.Errorf("%s: %+v", c.name, p.Findings)
		}
	}
}

// A sleeve that pushes the bodice leaves nothing to the front: its back slides as far
// whatever it is asked for. Of the bust's need of 2 the back has 1/2; the sleeve slides 1.
func TestTheFrontTakesNothingFromABackThatMatches(t *testing.T) {
	for sleeve, offered := range map[string]bool{"2": true, "4": false} {
		input := byhand.Needing(sleeve, "2")
		input.HighBust = byhand.Known("34")
		f, at := found(calc.Compute(input), calc.SizeByHighBust)
		if at < 0 || slices.Contains(f.Ways, calc.FrontTakesMore) != offered {
			t.Errorf("a sleeve need of %s: %+v", sleeve, f)
		}
	}
}

// Nobody said whether the sleeve is long: it is altered as a short one, and that is said
// where there is something to alter.
func TestALengthThatNobodyToldIsSaid(t *testing.T) {
	for _, c := range []struct {
		need          string
		assumed, said bool
	}{{"3", true, true}, {"3", false, false}, {"0", true, false}, {"", true, false}} {
		input := byhand.Needing(c.need, "")
		input.Sleeve.LengthAssumed = c.assumed
		if _, at := found(calc.Compute(input), calc.LengthAssumed); at >= 0 != c.said {
			t.Errorf("%+v: said at %d", c, at)
		}
	}
}

// A fraction that ran into its whole number is guessed at, and no fraction that no ruler
// has: 14 13/16 may have been 141 3/16 with its digits swapped, but nobody means 13/61.
func TestGuessesAreOnTheRuler(t *testing.T) {
	for typed, want := range map[string]string{"141/2": "14 1/2", "133/4": "13 3/4", "1411/16": "14 11/16", "14 13/61": ""} {
		input := byhand.Needing("3", "2")
		l, err := units.Parse(typed, units.Inches)
		if err != nil {
			t.Fatal(err)
		}
		input.Bicep, input.BicepEase = units.Known(l), byhand.Known("2")
		input.Typed = &calc.Typed{Unit: units.Inches}
		input.Typed.Texts[calc.Bicep] = typed
		p := calc.Compute(input)
		guess := ""
		for _, f := range p.Findings {
			if f.Bound != nil && f.Answer == calc.Bicep {
				guess = f.Text
				break
			}
		}
		if guess != want {
			t.Errorf("%q: guessed %q, want %q: %+v", typed, guess, want, p.Findings)
		}
	}
}
