package calc_test

import (
	"slices"
	"testing"

	"capscye/calc"
	"capscye/calc/internal/byhand"
	"capscye/units"
)

// Between what the tape lay is never assumed: 13 in between cut edges is 11 3/4 between
// seam lines of 5/8 in, and 13 in otherwise. By hand; common practice, no source.
func TestNobodyAssumesHowAWidthWasMeasured(t *testing.T) {
	missing := func(in calc.Input) (list []calc.Answer) {
		for _, f := range calc.Compute(in).Findings {
			if f.Code == calc.AnswerMissing {
				list = append(list, f.Answer)
			}
		}
		return list
	}
	input := byhand.WorkedByHand()
	input.Sleeve.Measured, input.Bodice.Measured = calc.NotTold, calc.NotTold
	p := calc.Compute(input)
	if p.Sleeve.Need.Known || p.Bust.Need.Known || p.Sleeve.Flat.Known || p.Bust.Flat.Known || !p.Open {
		t.Errorf("needs %v and %v, flat %v and %v", p.Sleeve.Need, p.Bust.Need, p.Sleeve.Flat, p.Bust.Flat)
	}
	if got := missing(input); !slices.Equal(got, []calc.Answer{calc.SleeveMeasured, calc.BodiceMeasured}) {
		t.Errorf("missing %v", got)
	}
	input.Bodice.FinishedBust = known("40") // printed: nothing of it was measured
	if got := missing(input); !slices.Equal(got, []calc.Answer{calc.SleeveMeasured}) {
		t.Errorf("with a printed bust missing %v", got)
	}
	input.Bicep = units.Reading{} // a width that nobody asks about
	if got := missing(input); len(got) != 0 {
		t.Errorf("without an arm missing %v", got)
	}
}

// Two papers of one pattern are measured in one way: another way, and another allowance
// that comes off, is worth a look; what was taken from the sleeve is said.
func TestPiecesMeasuredInTwoWays(t *testing.T) {
	for what, c := range map[string]struct {
		change func(*calc.Input)
		want   []calc.Code
	}{
		"seam and seam":                   {func(in *calc.Input) {}, nil},
		"seam and seam, other allowances": {func(in *calc.Input) { in.Sleeve.Allowance, in.Bodice.Allowance = known("1/2"), known("5/8") }, nil},
		"edge and seam":                   {func(in *calc.Input) { in.Sleeve.Measured, in.Sleeve.Allowance = calc.EdgeToEdge, known("1/2") }, []calc.Code{calc.MeasuredDifferently}},
		"edges, one allowance":            {edges("5/8", "5/8"), nil},
		"edges, two allowances":           {edges("1/2", "5/8"), []calc.Code{calc.MeasuredDifferently}},
		"edges, no seam crossed":          {func(in *calc.Input) { edges("1/2", "5/8")(in); in.Bodice.Crossings = 0 }, nil},
		"taken from the sleeve":           {func(in *calc.Input) { in.Bodice.LikeSleeve = true }, []calc.Code{calc.BodiceAsSleeve}},
		"a printed bust": {func(in *calc.Input) {
			edges("1/2", "5/8")(in)
			in.Bodice.LikeSleeve, in.Bodice.FinishedBust = true, known("40")
		}, nil},
		"no bodice": {func(in *calc.Input) {
			in.Bodice.LikeSleeve, in.Bodice.Front, in.Bodice.Back = true, units.Reading{}, units.Reading{}
		}, nil},
		"no sleeve": {func(in *calc.Input) {
			edges("1/2", "5/8")(in)
			in.Bicep, in.Sleeve.Width = units.Reading{}, units.Reading{}
		}, nil},
		"a sleeve that is not told": {func(in *calc.Input) { in.Sleeve.Measured = calc.NotTold }, nil},
	} {
		input := byhand.WorkedByHand()
		c.change(&input)
		var got []calc.Code
		for _, f := range calc.Compute(input).Findings {
			if f.Code == calc.MeasuredDifferently || f.Code == calc.BodiceAsSleeve {
				got = append(got, f.Code)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", what, got, c.want)
		}
	}
}

// edges measures both pieces between cut edges.
func edges(sleeve, bodice string) func(*calc.Input) {
	return func(in *calc.Input) {
		in.Sleeve.Measured, in.Bodice.Measured, in.Bodice.Crossings = calc.EdgeToEdge, calc.EdgeToEdge, 1
		in.Sleeve.Allowance, in.Bodice.Allowance = known(sleeve), known(bodice)
	}
}
