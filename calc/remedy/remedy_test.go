package remedy_test

import (
	"fmt"
	"testing"

	"capscye/calc"
	"capscye/calc/internal/byhand"
	"capscye/calc/remedy"
	"capscye/units"
)

// offered are the remedies of the first trouble of a sheet, as a person would
// write them.
func offered(t *testing.T, input calc.Input) map[calc.Answer]string {
	t.Helper()
	troubles := remedy.Troubles(calc.Compute(input))
	if len(troubles) == 0 {
		t.Fatal("there is no trouble")
	}
	inch := units.Scale{System: units.Inches, Ruler: units.EighthInch}
	list := map[calc.Answer]string{}
	for _, r := range remedy.Of(input, troubles[0]) {
		m := r.Input.Method
		list[r.Answer] = map[calc.Answer]string{
			calc.BicepEase: inch.Number(r.Input.BicepEase.Length), calc.BustEase: inch.Number(r.Input.BustEase.Length),
			calc.ShareSleeve: m.ShareSleeve.String(), calc.ShareBust: m.ShareBust.String(),
			calc.LimitSleeve: inch.Number(m.LimitSleeve), calc.LimitBodice: inch.Number(m.LimitBodice),
			calc.FollowCustom: []string{"let out", "hold"}[m.Follow], calc.SlideLength: []string{"least", "even"}[m.Slide],
		}[r.Answer]
	}
	return list
}

// Sums by hand, in inches; each side may pivot by 1.
func TestRemediesByHand(t *testing.T) {
	for _, c := range []struct {
		name  string
		input calc.Input
		want  map[calc.Answer]string
	}{
		{
			// The sleeve needs 3, 1 1/2 a side, so it slides by 1/2, and a bust
			// that nobody asked grows by 4 x 1/2. It stays as it is with 1 in less at
			// the bicep (ease 5, now 4: 1 a side, all pivoted), with a limit of 1 1/2, or
			// held: each bodice side pivots back by the 1/2 that it slides.
			"a bust that grows unasked", byhand.Needing("3", ""),
			map[calc.Answer]string{calc.BicepEase: "4", calc.LimitSleeve: "1 1/2", calc.FollowCustom: "hold"},
		},
		{
			// 1/4 more a side: a limit of 1 3/4 is beyond reason, and ease 5 1/2 - 1 1/2.
			"too much for a wider limit", byhand.Needing("3 1/2", ""),
			map[calc.Answer]string{calc.BicepEase: "4", calc.FollowCustom: "hold"},
		},
		{
			// The sleeve needs 2 1/4 a side and slides at least by 1 1/4; the bust comes
			// in by 1/2 a side, so it may slide by 1/2 at most: 3/4 is missing. The bust's need
			// must not be below 0 (4 x 1/2 more ease: 3), or the sleeve's at most 1 1/2 a
			// side (1 1/2 less ease: 5). A limit of 1 3/4 would be needed.
			"opposite needs", byhand.Needing("4 1/2", "-2"),
			map[calc.Answer]string{calc.BicepEase: "5", calc.BustEase: "3"},
		},
		{
			// Held, the sleeve slides by 1 1/4 at least, a bust that needs nothing by 1
			// at most: a quarter is missing. Either limit 1/4 wider, 1/2 less at
			// the bicep (6 1/2 - 1/2), 4 x 1/4 more at the bust, or let out.
			"held", func() calc.Input {
				input := byhand.Needing("4 1/2", "0")
				input.Method.Follow = calc.Hold
				return input
			}(),
			map[calc.Answer]string{calc.BicepEase: "6", calc.BustEase: "4", calc.LimitSleeve: "1 1/4", calc.LimitBodice: "1 1/4",
				calc.FollowCustom: "let out"},
		},
		{
			// The front takes 3/4 of 2, 1 1/2, and slides by 1/2; the bust grows by 2 x 1/2.
			// Shared evenly all is pivoted. Else 3/4 of the need must be within 1: 1 1/3
			// of 2 in, so 3/4 less at the bicep by a ruler in eighths (ease 4 - 3/4).
			"another share", func() calc.Input {
				input := byhand.Needing("2", "")
				input.Method.ShareSleeve = units.Share{Numerator: 3, Denominator: 4}
				return input
			}(),
			map[calc.Answer]string{calc.BicepEase: "3 1/4", calc.ShareSleeve: "1/2", calc.LimitSleeve: "1 1/2", calc.FollowCustom: "hold"},
		},
		{
			// 2/3 of 0.505 x 2 to the front is 0.6733 a side; with the armhole kept and a limit
			// of 2/3 in, 0.6667, the front may take 66 hundredths of it, 0.6666. The next
			// mark of ease is 1/8: 2/3 of 0.885 is 0.59.
			"a share between the hundredths", func() calc.Input {
				input := byhand.Needing("1 1/100", "")
				input.Method.Armhole, input.Method.ShareSleeve = calc.KeepArmhole, units.Share{Numerator: 2, Denominator: 3}
				input.Method.LimitSleeve = byhand.Inches("2/3")
				return input
			}(),
			map[calc.Answer]string{calc.BicepEase: "~2 7/8", calc.ShareSleeve: "33/50", calc.LimitSleeve: "~3/4"},
		},
		{
			// The even slide is half of each need, 1/2 a side: the bust grows by 2,
			// and with the least slide not at all. All of the need would have to go (ease 4 - 2), or
			// the bodice is held.
			"an even slide", func() calc.Input {
				input := byhand.Needing("2", "")
				input.Method.Slide = calc.SlideEven
				return input
			}(),
			map[calc.Answer]string{calc.BicepEase: "2", calc.FollowCustom: "hold", calc.SlideLength: "least"},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := offered(t, c.input); fmt.Sprint(got) != fmt.Sprint(c.want) {
				t.Errorf("offered %v, want %v", got, c.want)
			}
		})
	}
}

func TestNothingToRemedy(t *testing.T) {
	for _, input := range []calc.Input{{}, byhand.Needing("2", ""), byhand.Needing("2", "2"), byhand.Needing("", "")} {
		if list := remedy.Troubles(calc.Compute(input)); len(list) != 0 {
			t.Errorf("%v", list)
		}
	}
}

// An ease goes below nothing for a knit, which stretches, and not for woven cloth. A
// sleeve that needs 2 1/4 with an ease of 0 slides by 1/8 a side, and an arm 1/4 in
// tighter does without.
func TestEaseBelowNothingIsForKnits(t *testing.T) {
	for fabric, want := range map[calc.Fabric]string{calc.Woven: "", calc.Knit: "-1/4"} {
		input := byhand.Needing("2 1/4", "")
		input.Bicep, input.BicepEase = byhand.Known("14 1/4"), byhand.Known("0")
		input.Fabric = fabric
		if got := offered(t, input)[calc.BicepEase]; got != want {
			t.Errorf("fabric %d: an ease of %q is offered, want %q", fabric, got, want)
		}
	}
}

// Where the size was chosen by the high bust the front may take three quarters of what the
// bust needs, or all of it (common practice, no source): never less than it has, nothing of a
// bust that needs none, and not of a bodice that is cut.
func TestTheFrontMayTakeMore(t *testing.T) {
	for _, c := range []struct {
		name, need, high string
		share            units.Share
		armhole          calc.Armhole
		want             string
	}{
		{"half", "2", "35", units.Half, calc.AlterArmhole, "[3/4 1]"},
		{"three quarters already", "2", "35", units.Share{Numerator: 3, Denominator: 4}, calc.AlterArmhole, "[1]"},
		{"all already", "2", "35", units.Share{Numerator: 1, Denominator: 1}, calc.AlterArmhole, "[]"},
		{"less than 2 in", "2", "35 1/8", units.Half, calc.AlterArmhole, "[]"},
		{"no need", "-1", "35", units.Half, calc.AlterArmhole, "[]"},
		{"cut", "2", "35", units.Half, calc.KeepArmhole, "[]"},
	} {
		input := byhand.Needing("", c.need)
		input.HighBust, input.Method.ShareBust, input.Method.Armhole = byhand.Known(c.high), c.share, c.armhole
		shares := []string{}
		plan := calc.Compute(input)
		for _, f := range plan.Findings {
			for _, r := range remedy.FrontShares(input, plan, f) {
				shares = append(shares, r.Input.Method.ShareBust.String())
				if s := r.After.Sides[calc.BodiceFront]; s.Need.Length != r.Input.Method.ShareBust.Of(byhand.Inches("1")) || s.Total != s.Need.Length {
					t.Errorf("%s: with %v the front needs %v and gains %v", c.name, r.Input.Method.ShareBust, s.Need, s.Total)
				}
			}
		}
		if fmt.Sprint(shares) != c.want {
			t.Errorf("%s: offered %v, want %v", c.name, shares, c.want)
		}
	}
}

// A sleeve that needs 3 does without a slide with 1 in less of ease. At the upper arm 2 in are
// usual (common practice), so of 3 in that is offered, and of less it is not.
func TestNoEaseIsOfferedThatNobodyCanWear(t *testing.T) {
	input := byhand.Needing("3", "")
	for ease, want := range map[string]string{"3": "2", "2 7/8": ""} {
		input.Bicep, input.BicepEase = units.Known(byhand.Inches("15")-byhand.Inches(ease)), byhand.Known(ease)
		if got := offered(t, input)[calc.BicepEase]; got != want {
			t.Errorf("of an ease of %s, %q is offered, want %q", ease, got, want)
		}
	}
}
