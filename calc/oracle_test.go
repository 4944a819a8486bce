package calc_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/units"
)

// This file does the sums a second time, slowly and in fractions, written from
// the rules of the method and not from the code that it checks. A mistake has
// to be made twice, in two shapes, to pass. Nothing here is shared with
// [calc.Compute] but the types of its input and its answer.

// exact is a length in counts as a fraction; without r it is not known. A sum
// with a part that is not known is not known, which is the very rule for needs.
type exact struct{ r *big.Rat }

func exactly(n int64) exact { return exact{big.NewRat(n, 1)} }

func exactLength(l units.Length) exact { return exactly(int64(l)) }

func exactReading(r units.Reading) exact {
	if !r.Known {
		return exact{}
	}
	return exactLength(r.Length)
}

var nought = exactly(0)

func (a exact) known() bool { return a.r != nil }

func (a exact) join(b exact, op func(z, x, y *big.Rat) *big.Rat) exact {
	if !a.known() || !b.known() {
		return exact{}
	}
	return exact{op(new(big.Rat), a.r, b.r)}
}

func (a exact) plus(b exact) exact  { return a.join(b, (*big.Rat).Add) }
func (a exact) minus(b exact) exact { return a.join(b, (*big.Rat).Sub) }
func (a exact) times(b exact) exact { return a.join(b, (*big.Rat).Mul) }
func (a exact) over(b exact) exact  { return a.join(b, (*big.Rat).Quo) }

func (a exact) less(b exact) bool { return a.r.Cmp(b.r) < 0 }

func (a exact) or(instead exact) exact {
	if a.known() {
		return a
	}
	return instead
}

// ifPositive forgets a width that no cloth can have.
func (a exact) ifPositive() exact {
	if a.known() && a.r.Sign() <= 0 {
		return exact{}
	}
	return a
}

// rounded is the nearest whole, halves away from zero: the whole part of
// |a| + 1/2 with the sign of a.
func (a exact) rounded() exact {
	if !a.known() {
		return a
	}
	up := new(big.Rat).Add(new(big.Rat).Abs(a.r), big.NewRat(1, 2))
	whole := new(big.Int).Quo(up.Num(), up.Denom())
	if a.r.Sign() < 0 {
		whole.Neg(whole)
	}
	return exact{new(big.Rat).SetInt(whole)}
}

func (a exact) half() exact { return a.over(exactly(2)).rounded() }

func (a exact) toMark(r units.Ruler) exact {
	mark := exactLength(r.Mark())
	return a.over(mark).rounded().times(mark)
}

// length hands the figure back. A fraction of a count here would be a rounding
// that was forgotten, so it must not be swallowed.
func (a exact) length() units.Length {
	if !a.r.IsInt() || !a.r.Num().IsInt64() {
		panic("not a whole number of counts: " + a.r.String())
	}
	return units.Length(a.r.Num().Int64())
}

func (a exact) reading() units.Reading {
	if !a.known() {
		return units.Reading{}
	}
	return units.Known(a.length())
}

func largest(all ...exact) exact {
	best := all[0]
	for _, a := range all {
		if best.less(a) {
			best = a
		}
	}
	return best
}

func smallest(all ...exact) exact {
	best := all[0]
	for _, a := range all {
		if a.less(best) {
			best = a
		}
	}
	return best
}

// exactSpan is every length from low to high, or none.
type exactSpan struct{ low, high exact }

func (s exactSpan) empty() bool           { return s.high.less(s.low) }
func (s exactSpan) nearest(a exact) exact { return smallest(largest(a, s.low), s.high) }

// oracleSleeveFlat is the sleeve's width without the allowances of its two
// seamed edges.
func oracleSleeveFlat(s calc.SleeveInput) exact {
	flat := exactReading(s.Width)
	if s.EdgeToEdge {
		flat = flat.minus(exactReading(s.Allowance).times(exactly(2)))
	}
	return flat.ifPositive()
}

// oracleBustFlat goes around the body: front and back are half of it. A printed
// finished bust makes the widths superfluous.
func oracleBustFlat(b calc.BodiceInput) exact {
	if b.FinishedBust.Known {
		return exactReading(b.FinishedBust).ifPositive()
	}
	front, back := oraclePiece(b, b.Front, b.TakeOffFront), oraclePiece(b, b.Back, b.TakeOffBack)
	return front.plus(back).times(exactly(2)).ifPositive()
}

func oraclePiece(b calc.BodiceInput, width, takeOff units.Reading) exact {
	flat := exactReading(width).minus(exactReading(takeOff).or(nought))
	if b.EdgeToEdge && b.Crossings > 0 {
		flat = flat.minus(exactReading(b.Allowance).times(exactly(int64(b.Crossings))))
	}
	return flat
}

// oracleLarger is the larger of two arms, or the one that was measured.
func oracleLarger(a, b exact) exact {
	if !a.known() || !b.known() {
		return a.or(b)
	}
	return largest(a, b)
}

// oracleSplit gives the front its share and the back what is left, so that
// rounding loses nothing. The result is indexed by half.
func oracleSplit(need exact, s units.Share) [2]exact {
	share := exactly(s.Numerator).over(exactly(s.Denominator))
	front := need.times(share).rounded()
	return [2]exact{front, need.minus(front)}
}

// oracleRoom is what each side of a kept bodice's cap may still slide: half of
// what the cap ease now falls short of the most that the style takes. Seams
// that were not measured leave no room; gathers take any amount.
func oracleRoom(in calc.Input) exact {
	ease := exactReading(in.Sleeve.CapFront).plus(exactReading(in.Sleeve.CapBack)).
		minus(exactReading(in.Bodice.ArmholeFront)).minus(exactReading(in.Bodice.ArmholeBack))
	if !ease.known() {
		return nought
	}
	highest := exactLength(units.Inch * 3 / 2)
	switch {
	case in.Sleeve.Style == calc.Gathered:
		return exactLength(units.Max)
	case in.Sleeve.Style == calc.Shirt || in.Fabric == calc.Knit:
		highest = exactLength(units.Inch * 3 / 4)
	}
	return largest(nought, highest.minus(ease)).half()
}

// oracleEdge is a side before it is decided what it does. Without a need it is
// not asked for anything.
type oracleEdge struct{ need, limit exact }

// reach is every slide from which the side's pivot can do the rest.
func (e oracleEdge) reach() exactSpan {
	need := e.need.or(nought)
	return exactSpan{need.minus(e.limit), need.plus(e.limit)}
}

// oracleSeam is the sleeve's and the bodice's edge that are sewn together, and
// so have to slide alike.
type oracleSeam struct {
	calc.Method
	sleeve, bodice oracleEdge
	room           exact
}

func (s oracleSeam) kept() bool { return s.Armhole == calc.KeepArmhole }

// serving is every slide that serves these edges. Where a piece that needs less
// may be let out, a slide may go up to the largest need when all grow (down to
// the smallest when all shrink); otherwise each edge has to reach its own need.
func (s oracleSeam) serving(edges ...oracleEdge) exactSpan {
	var needs, lows, highs []exact
	growing, shrinking := true, true
	for _, e := range edges {
		if !e.need.known() && s.Follow == calc.LetOut {
			continue
		}
		need := e.need.or(nought)
		growing = growing && !need.less(nought)
		shrinking = shrinking && !nought.less(need)
		needs, lows, highs = append(needs, need), append(lows, e.reach().low), append(highs, e.reach().high)
	}
	switch {
	case s.Follow == calc.LetOut && growing:
		return exactSpan{largest(lows...), largest(needs...)}
	case s.Follow == calc.LetOut && shrinking:
		return exactSpan{smallest(needs...), smallest(highs...)}
	}
	return exactSpan{largest(lows...), smallest(highs...)}
}

// band is every slide that works. A bodice that is already cut allows only the
// room in its armhole, and has no say of its own.
func (s oracleSeam) band() exactSpan {
	asked := s.sleeve.need.known() || s.bodice.need.known() && !s.kept()
	if !asked {
		return exactSpan{nought, nought}
	}
	if s.kept() {
		own := s.serving(s.sleeve)
		return exactSpan{largest(own.low, nought), smallest(own.high, s.room)}
	}
	return s.serving(s.sleeve, s.bodice)
}

func (s oracleSeam) slide() exact {
	band := s.band()
	if band.empty() {
		return s.compromise()
	}
	switch s.Slide {
	case calc.SlideEven:
		return band.nearest(s.sleeve.need.or(s.bodice.need).or(nought).half())
	case calc.SlideChosen:
		return band.nearest(exactLength(s.SlideLength))
	}
	return band.nearest(nought)
}

// compromise is the slide where none serves. With a kept bodice it goes as far
// towards the sleeve as there is room; otherwise the sleeve gets what it needs,
// with its pivot at the limit on the bodice's side.
func (s oracleSeam) compromise() exact {
	if s.kept() {
		if s.room.less(s.serving(s.sleeve).low) {
			return s.room
		}
		return nought
	}
	sleeve, bodice := s.sleeve.reach(), s.bodice.reach()
	if sleeve.high.less(bodice.low) {
		return sleeve.high
	}
	return sleeve.low
}

// pivot is how much the edge turns after the slide, and what it then still
// lacks. A piece that is let out turns only in the direction of its need: where
// that stops it, it comes out wider than asked and lacks nothing.
func (s oracleSeam) pivot(e oracleEdge, slide exact) (pivot, lacking exact) {
	need := e.need.or(nought)
	rest := need.minus(slide)
	if s.Follow == calc.LetOut && rest.r.Sign()*need.r.Sign() <= 0 {
		return nought, nought
	}
	pivot = exactSpan{nought.minus(e.limit), e.limit}.nearest(rest)
	return pivot, rest.minus(pivot)
}

func (s oracleSeam) side(e oracleEdge, ruler units.Ruler) calc.SidePlan {
	slide := s.slide()
	pivot, lacking := s.pivot(e, slide)
	total := pivot.plus(slide)
	slideMark := slide.toMark(ruler)
	return calc.SidePlan{
		Need:  e.need.reading(),
		Pivot: pivot.length(), Slide: slide.length(), Total: total.length(), LeftOver: lacking.length(),
		PivotMark: total.toMark(ruler).minus(slideMark).length(), SlideMark: slideMark.length(),
	}
}

// oraclePlan is the reference: all of a plan but its findings.
func oraclePlan(in calc.Input) calc.Plan {
	arm, bust := oracleLarger(exactReading(in.Bicep), exactReading(in.BicepOther)), exactReading(in.Bust)
	sleeveFlat, bustFlat := oracleSleeveFlat(in.Sleeve), oracleBustFlat(in.Bodice)
	armNeed := arm.plus(exactReading(in.BicepEase)).minus(sleeveFlat)
	bustNeed := bust.plus(exactReading(in.BustEase)).minus(bustFlat)

	m, room := in.Method, oracleRoom(in)
	sleeve, bodice := oracleSplit(armNeed, m.ShareSleeve), oracleSplit(bustNeed.half(), m.ShareBust)
	var p calc.Plan
	for h := range 2 {
		seam := oracleSeam{
			Method: m, room: room,
			sleeve: oracleEdge{sleeve[h], exactLength(m.LimitSleeve)},
			bodice: oracleEdge{bodice[h], exactLength(m.LimitBodice)},
		}
		band := seam.band()
		p.Bands[h] = calc.Band{Low: band.low.length(), High: band.high.length()}
		p.Sides[h] = seam.side(seam.sleeve, in.Ruler)
		p.Sides[2+h] = seam.side(seam.bodice, in.Ruler)
		if seam.kept() { // nothing is done to it, so it lacks all that it needs
			p.Sides[2+h] = calc.SidePlan{
				Need: bodice[h].reading(), LeftOver: bodice[h].or(nought).length(),
			}
		}
	}
	p.Sleeve = oracleGirth(arm, in.BicepEase, sleeveFlat, armNeed, 1, p.Sides[0], p.Sides[1])
	p.Bust = oracleGirth(bust, in.BustEase, bustFlat, bustNeed, 2, p.Sides[2], p.Sides[3])
	return p
}

// oracleGirth says what becomes of a girth that has each of these sides so many
// times.
func oracleGirth(body exact, ease units.Reading, flat, need exact, times int64, a, b calc.SidePlan) calc.Girth {
	grown := func(a, b units.Length) exact {
		return flat.plus(exactLength(a).plus(exactLength(b)).times(exactly(times)))
	}
	finished := grown(a.Total, b.Total)
	return calc.Girth{
		Body: body.reading(), Ease: ease, Flat: flat.reading(), Need: need.reading(),
		Finished:  finished.reading(),
		Marked:    grown(a.PivotMark+a.SlideMark, b.PivotMark+b.SlideMark).reading(),
		EaseAfter: finished.minus(body).reading(),
	}
}

// oracleDice makes inputs. The seed is fixed, so that a failure can be seen
// again.
type oracleDice struct{ *rand.Rand }

func (d oracleDice) chance(percent int) bool { return d.IntN(100) < percent }

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
	switch n := d.IntN(10); {
	case n < 3:
		return calc.UsualLimit
	case n < 4:
		return 0
	}
	return d.length(0, 3*units.Inch)
}

func (d oracleDice) share() units.Share {
	kinds := []units.Share{
		units.Half, units.Half, {Numerator: 0, Denominator: 1}, {Numerator: 1, Denominator: 1},
		{Numerator: 15, Denominator: 28}, {Numerator: 11, Denominator: 20}, {Numerator: 2, Denominator: 4},
		{Numerator: 1, Denominator: 3}, {Numerator: 123_456_789, Denominator: 1_000_000_000},
	}
	if n := d.IntN(len(kinds) + 2); n < len(kinds) {
		return kinds[n]
	}
	denominator := 1 + d.Int64N(200)
	return units.Share{Numerator: d.Int64N(denominator + 1), Denominator: denominator}
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
			Width: d.maybe(94, width), EdgeToEdge: d.chance(30), Allowance: d.maybe(90, d.allowance()),
			CapFront: d.maybe(95, capFront), CapBack: d.maybe(95, capBack),
		},
		Bodice: calc.BodiceInput{
			Front: d.maybe(94, front), Back: d.maybe(94, back),
			EdgeToEdge: d.chance(30), Allowance: d.maybe(85, d.allowance()), Crossings: d.IntN(3),
			TakeOffFront: d.maybe(30, d.length(0, 2*in)), TakeOffBack: d.maybe(30, d.length(0, 2*in)),
			FinishedBust: d.maybe(30, finished),
			ArmholeFront: d.maybe(95, capFront+d.length(-in, 2*in)),
			ArmholeBack:  d.maybe(95, capBack+d.length(-in, 2*in)),
		},
		Method: d.method(),
	}
}

// oracleCase is one seam of an input and its plan by the reference.
type oracleCase struct {
	calc.Method
	band           calc.Band
	sleeve, bodice calc.SidePlan
	room           exact
}

func (c oracleCase) kept() bool { return c.Armhole == calc.KeepArmhole }

func (c oracleCase) asked() int {
	n := 0
	for _, s := range []calc.SidePlan{c.sleeve, c.bodice} {
		if s.Need.Known {
			n++
		}
	}
	return n
}

// signs is the product of the signs of two needs, or zero.
func (c oracleCase) signs() int {
	return exactReading(c.sleeve.Need).or(nought).r.Sign() * exactReading(c.bodice.Need).or(nought).r.Sign()
}

// oracleSurplus tells a side that comes out wider than it was asked to be.
func oracleSurplus(s calc.SidePlan) bool {
	return s.Need.Known && s.LeftOver == 0 && s.Total > s.Need.Length
}

// oracleRegions are the parts of the rules that random inputs might miss. Each
// has to be visited, or the agreement says nothing about it.
var oracleRegions = []struct {
	name string
	in   func(c oracleCase) bool
}{
	{"nothing asked", func(c oracleCase) bool { return c.asked() == 0 }},
	{"both grow", func(c oracleCase) bool { return !c.kept() && c.signs() > 0 && c.sleeve.Need.Length > 0 }},
	{"both shrink", func(c oracleCase) bool { return !c.kept() && c.signs() > 0 && c.sleeve.Need.Length < 0 }},
	{"mixed signs", func(c oracleCase) bool { return !c.kept() && c.signs() < 0 }},
	{"mixed signs, let out, with a band", func(c oracleCase) bool {
		return !c.kept() && c.signs() < 0 && c.Follow == calc.LetOut && !c.band.Empty()
	}},
	{"empty band", func(c oracleCase) bool { return !c.kept() && c.band.Empty() }},
	{"empty band, needs alike", func(c oracleCase) bool { return !c.kept() && c.band.Empty() && c.signs() > 0 }},
	{"let out, one side asked", func(c oracleCase) bool { return !c.kept() && c.Follow == calc.LetOut && c.asked() == 1 }},
	{"hold, one side asked", func(c oracleCase) bool { return !c.kept() && c.Follow == calc.Hold && c.asked() == 1 }},
	{"hold, lacking where not asked", func(c oracleCase) bool {
		return !c.bodice.Need.Known && c.bodice.LeftOver != 0
	}},
	{"surplus", func(c oracleCase) bool { return oracleSurplus(c.sleeve) || oracleSurplus(c.bodice) }},
	{"kept with room", func(c oracleCase) bool { return c.kept() && c.sleeve.Need.Known && c.room.r.Sign() > 0 }},
	{"kept, room used", func(c oracleCase) bool { return c.kept() && c.sleeve.Slide > 0 }},
	{"kept, room too small", func(c oracleCase) bool { return c.kept() && c.band.Empty() && c.sleeve.LeftOver > 0 }},
	{"kept, sleeve too wide", func(c oracleCase) bool { return c.kept() && c.band.Empty() && c.sleeve.LeftOver < 0 }},
	{"kept, hold, sleeve turned back", func(c oracleCase) bool {
		return c.kept() && c.sleeve.Need.Length > 0 && c.sleeve.Pivot < 0
	}},
	{"chosen slide kept", func(c oracleCase) bool {
		return c.Slide == calc.SlideChosen && c.asked() > 0 && c.sleeve.Slide == c.SlideLength
	}},
	{"chosen slide moved", func(c oracleCase) bool {
		return c.Slide == calc.SlideChosen && c.asked() > 0 && !c.band.Empty() && c.sleeve.Slide != c.SlideLength
	}},
	{"even slide inside the band", func(c oracleCase) bool {
		return c.Slide == calc.SlideEven && c.band.Low < c.sleeve.Slide && c.sleeve.Slide < c.band.High
	}},
}

// oracleLeaf is one figure of an input or a plan.
type oracleLeaf struct {
	path  string
	known bool
	value int64
}

func (l oracleLeaf) String() string {
	if !l.known {
		return "unknown"
	}
	return fmt.Sprint(l.value)
}

// oracleLeaves lists every figure by its path, whatever fields there are, so
// that a field added later is compared too. Lists, which are the findings, are
// left out, and so is the number in a reading that was not taken.
func oracleLeaves(path string, v reflect.Value, all []oracleLeaf) []oracleLeaf {
	if r, ok := reflect.TypeAssert[units.Reading](v); ok {
		if !r.Known {
			return append(all, oracleLeaf{path: path})
		}
		return append(all, oracleLeaf{path, true, int64(r.Length)})
	}
	switch {
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			all = oracleLeaves(path+"."+v.Type().Field(i).Name, v.Field(i), all)
		}
	case v.Kind() == reflect.Array:
		for i := range v.Len() {
			all = oracleLeaves(fmt.Sprintf("%s[%d]", path, i), v.Index(i), all)
		}
	case v.Kind() == reflect.Bool && v.Bool():
		all = append(all, oracleLeaf{path, true, 1})
	case v.CanInt():
		all = append(all, oracleLeaf{path, true, v.Int()})
	case v.CanUint():
		all = append(all, oracleLeaf{path, true, int64(v.Uint())})
	}
	return all
}

// oracleShow is the input on a line, in counts, without what is zero or was not
// measured.
func oracleShow(in calc.Input) string {
	var b strings.Builder
	for _, l := range oracleLeaves("", reflect.ValueOf(in), nil) {
		if l.known {
			fmt.Fprintf(&b, "%s=%v ", l.path[1:], l)
		}
	}
	return b.String()
}

// oracleDiffer lists the figures in which two plans differ.
func oracleDiffer(got, want calc.Plan) string {
	var b strings.Builder
	wanted := oracleLeaves("", reflect.ValueOf(want), nil)
	for i, g := range oracleLeaves("", reflect.ValueOf(got), nil) {
		if g != wanted[i] {
			fmt.Fprintf(&b, "\n\t%s = %v, by the reference %v", g.path[1:], g, wanted[i])
		}
	}
	return b.String()
}

func TestOracle(t *testing.T) {
	const inputs, enough = 25_000, 5
	dice := oracleDice{rand.New(rand.NewPCG(1280, 254))}
	visits, disagreements := make([]int, len(oracleRegions)), 0
	for n := range inputs {
		in := dice.input()
		want := oraclePlan(in)
		if differ := oracleDiffer(calc.Compute(in), want); differ != "" {
			t.Errorf("input %d, lengths in counts: %s%s", n, oracleShow(in), differ)
			if disagreements++; disagreements == enough {
				t.Fatal("and perhaps more")
			}
		}
		for h := range 2 {
			c := oracleCase{in.Method, want.Bands[h], want.Sides[h], want.Sides[2+h], oracleRoom(in)}
			for i, region := range oracleRegions {
				if region.in(c) {
					visits[i]++
				}
			}
		}
	}
	for i, region := range oracleRegions {
		t.Logf("%6d of %d seams: %s", visits[i], 2*inputs, region.name)
		if visits[i] == 0 {
			t.Errorf("no input came to: %s", region.name)
		}
	}
}

// The reference itself against sums done by hand, so that the two cannot be
// wrong alike: 13 3/4 + 1 3/4 - 13 asks 1 1/4 of each sleeve side, 39 1/2 + 3 -
// 2 x (10 1/4 + 9 3/4) asks 5/8 of each bodice side.
func TestOracleByHand(t *testing.T) {
	eighths := func(n units.Length) units.Length { return n * units.Inch / 8 }
	known := func(n units.Length) units.Reading { return units.Known(eighths(n)) }
	in := calc.Input{Ruler: units.EighthInch, Method: calc.UsualMethod()}
	in.Bicep, in.BicepEase, in.Sleeve.Width = known(110), known(14), known(104)
	in.Bust, in.BustEase, in.Bodice.Front, in.Bodice.Back = known(316), known(24), known(82), known(78)
	for _, c := range []struct {
		choice                calc.SlideChoice
		slide, sleeve, bodice units.Length // in eighths
	}{
		{calc.SlideLeast, 2, 8, 3},
		{calc.SlideEven, 5, 5, 0},
	} {
		in.Method.Slide = c.choice
		side := func(need, pivot units.Length) calc.SidePlan {
			return calc.SidePlan{
				Need: known(need), Pivot: eighths(pivot), Slide: eighths(c.slide), Total: eighths(need),
				PivotMark: eighths(pivot), SlideMark: eighths(c.slide),
			}
		}
		band := calc.Band{Low: eighths(2), High: eighths(10)}
		sleeve, bodice := side(10, c.sleeve), side(5, c.bodice)
		want := calc.Plan{
			Bands: [2]calc.Band{band, band}, Sides: [4]calc.SidePlan{sleeve, sleeve, bodice, bodice},
			Sleeve: calc.Girth{
				Body: known(110), Ease: known(14), Flat: known(104), Need: known(20),
				Finished: known(124), Marked: known(124), EaseAfter: known(14),
			},
			Bust: calc.Girth{
				Body: known(316), Ease: known(24), Flat: known(320), Need: known(20),
				Finished: known(340), Marked: known(340), EaseAfter: known(24),
			},
		}
		if differ := oracleDiffer(oraclePlan(in), want); differ != "" {
			t.Errorf("slide choice %d: the reference against the hand:%s", c.choice, differ)
		}
	}
}
