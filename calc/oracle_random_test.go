package calc_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"testing"

	"capscye/calc"
	"capscye/units"
)

// The random sheets that the slow sums are held against, and the comparison.

// oracleDice makes inputs. The seed is fixed, so that a failure can be seen
// again.
type oracleDice struct{ *rand.Rand }

func (d oracleDice) chance(percent int) bool { return d.IntN(100) < percent }

// measured is between what the tape lay; seldom it was not told.
func (d oracleDice) measured() calc.Measured {
	switch n := d.IntN(100); {
	case n < 4:
		return calc.NotTold
	case n < 32:
		return calc.EdgeToEdge
	}
	return calc.SeamToSeam
}

// length lies between the two, on a mark of 1/8 in, of 1 mm, or on no mark.
func (d oracleDice) length(low, high units.Length) units.Length {
	step := []units.Length{units.Inch / 8, units.Millimetre, 1}[d.IntN(3)]
	return min(low+units.Length(d.Int64N(int64((high-low)/step)+1))*step, high)
}

// maybe is a length that may not have been taken. One that was not taken still
// carries a number, which nobody may use.
func (d oracleDice) maybe(percent int, l units.Length) units.Reading {
	return units.Reading{Length: l, Known: d.chance(percent)}
}

// need is about as large as pivots are, often small, sometimes nothing, and
// seldom so large that a sum done in a small integer would overflow.
func (d oracleDice) need(usual units.Length) units.Length {
	switch n := d.IntN(100); {
	case n < 8:
		return 0
	case n < 35:
		return d.length(-usual/6, usual/6)
	case n < 37:
		return d.length(0, units.Max/2)
	}
	return d.length(-usual, usual)
}

func (d oracleDice) allowance() units.Length {
	if d.chance(4) {
		return d.length(4*units.Inch, 20*units.Inch) // leaves no width at all
	}
	return d.length(0, units.Inch)
}

func (d oracleDice) limit() units.Length {
	other := d.length(0, 3*units.Inch)
	return []units.Length{0, calc.UsualLimit, calc.UsualLimit, other, other}[d.IntN(5)]
}

func (d oracleDice) share() units.Share {
	numerators := []int64{1, 1, 0, 1, 15, 2, 123_456_789, 7}
	denominators := []int64{2, 2, 1, 1, 28, 4, 1_000_000_000, 8 + d.Int64N(200)}
	n := d.IntN(len(numerators))
	return units.Share{Numerator: numerators[n], Denominator: denominators[n]}
}

func (d oracleDice) method() calc.Method {
	return calc.Method{
		LimitSleeve: d.limit(), LimitBodice: d.limit(), ShareSleeve: d.share(), ShareBust: d.share(),
		Slide: calc.SlideChoice(d.IntN(3)), SlideLength: d.length(-2*units.Inch, 4*units.Inch),
		Follow: calc.Follow(d.IntN(2)), Armhole: calc.Armhole(d.IntN(2)),
	}
}

// input is a garment. Girths are made from the widths, or else hardly any need
// would be as small as a pivot.
func (d oracleDice) input() calc.Input {
	const in = units.Inch
	width, front, back := d.length(8*in, 20*in), d.length(7*in, 14*in), d.length(7*in, 14*in)
	bicepEase, bustEase := d.length(-2*in, 4*in), d.length(-2*in, 6*in)
	bicep := width - bicepEase + d.need(6*in)
	capFront, capBack := d.length(7*in, 13*in), d.length(7*in, 13*in)
	finished := 2 * (front + back)
	if d.chance(10) {
		finished = d.length(-in, 0) // not a girth
	}
	return calc.Input{
		Fabric: calc.Fabric(d.IntN(2)), Ruler: units.Rulers()[d.IntN(len(units.Rulers()))],
		Bicep: d.maybe(80, bicep), BicepOther: d.maybe(30, bicep+d.length(-in, in)),
		Bust:      d.maybe(85, 2*(front+back)-bustEase+d.need(12*in)),
		BicepEase: d.maybe(92, bicepEase), BustEase: d.maybe(92, bustEase),
		Sleeve: calc.SleeveInput{
			Style: calc.SleeveStyle(d.IntN(3)),
			Width: d.maybe(94, width), Measured: d.measured(), Allowance: d.maybe(90, d.allowance()),
			CapFront: d.maybe(95, capFront), CapBack: d.maybe(95, capBack),
		},
		Bodice: calc.BodiceInput{
			Front: d.maybe(94, front), Back: d.maybe(94, back),
			Measured: d.measured(), Allowance: d.maybe(85, d.allowance()), Crossings: d.IntN(3),
			TakeOffFront: d.maybe(30, d.length(0, 2*in)), TakeOffBack: d.maybe(30, d.length(0, 2*in)),
			FinishedBust: d.maybe(30, finished),
			ArmholeFront: d.maybe(95, capFront+d.length(-in, 2*in)),
			ArmholeBack:  d.maybe(95, capBack+d.length(-in, 2*in)),
		},
		Method: d.method(),
	}
}

// oracleRegions tells in which parts of the rules a seam of a plan lies. Random
// inputs could miss some, and their agreement would say nothing about those.
func oracleRegions(m calc.Method, band calc.Band, sleeve, bodice calc.SidePlan) map[string]bool {
	keep, hold := m.Armhole == calc.KeepArmhole, m.Follow == calc.Hold
	t, b := exactReading(sleeve.Need).or(nought).sign(), exactReading(bodice.Need).or(nought).sign()
	either, one := sleeve.Need.Known || bodice.Need.Known, sleeve.Need.Known != bodice.Need.Known
	inBand, chosen := either && !band.Empty(), m.Slide == calc.SlideChosen
	wider := func(s calc.SidePlan) bool { return s.Need.Known && s.LeftOver == 0 && s.Total > s.Need.Length }
	return map[string]bool{
		"nothing asked":                     !either,
		"both grow":                         !keep && t > 0 && b > 0,
		"both shrink":                       !keep && t < 0 && b < 0,
		"mixed signs":                       !keep && t*b < 0,
		"mixed signs, let out, with a band": !keep && t*b < 0 && !hold && inBand,
		"empty band":                        !keep && band.Empty(),
		"empty band, needs alike":           !keep && band.Empty() && t*b > 0,
		"let out, one side asked":           !keep && !hold && one,
		"hold, one side asked":              !keep && hold && one,
		"hold, lacking where not asked":     !bodice.Need.Known && bodice.LeftOver != 0,
		"hold, turned back":                 hold && t > 0 && sleeve.Pivot < 0,
		"surplus":                           wider(sleeve) || wider(bodice),
		"kept with room":                    keep && sleeve.Need.Known && band.High > 0,
		"kept, room used":                   keep && sleeve.Slide > 0,
		"kept, room too small":              keep && band.Empty() && sleeve.LeftOver > 0,
		"kept, sleeve too wide":             keep && band.Empty() && sleeve.LeftOver < 0,
		"chosen slide taken":                inBand && chosen && sleeve.Slide == m.SlideLength,
		"chosen slide moved":                inBand && chosen && sleeve.Slide != m.SlideLength,
		"even slide inside the band":        m.Slide == calc.SlideEven && band.Low < sleeve.Slide && sleeve.Slide < band.High,
	}
}

// oracleLines lists every figure behind its path, whatever fields there are, so
// that a field added later is compared too. What is zero or not measured is left
// out, and so are lists, which are the findings.
func oracleLines(path string, v reflect.Value) (lines []string) {
	if r, ok := reflect.TypeAssert[units.Reading](v); ok {
		if r.Known {
			lines = append(lines, fmt.Sprintf("%s=%v", path, r.Length))
		}
		return lines
	}
	switch v.Kind() {
	case reflect.Slice:
	case reflect.Struct:
		for i := range v.NumField() {
			if !v.Type().Field(i).IsExported() { // the points of an outline; no corner is measured here
				continue
			}
			lines = append(lines, oracleLines(path+"."+v.Type().Field(i).Name, v.Field(i))...)
		}
	case reflect.Array:
		for i := range v.Len() {
			lines = append(lines, oracleLines(fmt.Sprintf("%s[%d]", path, i), v.Index(i))...)
		}
	default:
		if !v.IsZero() {
			lines = append(lines, fmt.Sprintf("%s=%v", path, v.Interface()))
		}
	}
	return lines
}

// oracleDiffer lists the figures in which two plans differ. The quick look comes
// first because nearly all are equal; the slow one forgives a number left in a
// reading that is not known.
func oracleDiffer(got, want calc.Plan) string {
	got.Findings = nil
	if reflect.DeepEqual(got, want) {
		return ""
	}
	gots, wants := oracleLines("", reflect.ValueOf(got)), oracleLines("", reflect.ValueOf(want))
	if slices.Equal(gots, wants) {
		return ""
	}
	only := func(here, there []string) []string {
		return slices.DeleteFunc(slices.Clone(here), func(line string) bool { return slices.Contains(there, line) })
	}
	return fmt.Sprintf("\n\tgot  %v\n\twant %v", only(gots, wants), only(wants, gots))
}

func TestOracle(t *testing.T) {
	const enough = 5
	inputs := 3_000
	if os.Getenv("CAPSCYE_TEST_ALL") != "" {
		inputs = 8_000
	}
	dice := oracleDice{rand.New(rand.NewPCG(1280, 254))}
	visits, disagreements := map[string]int{}, 0
	for n := range inputs {
		in := dice.input()
		want := oraclePlan(in)
		if differ := oracleDiffer(calc.Compute(in), want); differ != "" {
			t.Errorf("input %d: %v%s", n, oracleLines("", reflect.ValueOf(in)), differ)
			if disagreements++; disagreements == enough {
				t.Fatal("stopped here; there may be more")
			}
		}
		for h := range 2 {
			for name, inside := range oracleRegions(in.Method, want.Bands[h], want.Sides[h], want.Sides[2+h]) {
				visits[name] += map[bool]int{true: 1}[inside] // the name is noted in any case
			}
		}
	}
	for _, name := range slices.Sorted(maps.Keys(visits)) {
		t.Logf("%6d of %d seams: %s", visits[name], 2*inputs, name)
		if visits[name] == 0 {
			t.Errorf("no input came to: %s", name)
		}
	}
}
