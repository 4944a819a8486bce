package calc

import (
	"math"
	"slices"
	"sort"

	"capscye/units"
)

// Way is a way out of a finding.
type Way uint8

// The ways out.
const (
	OtherSize Way = iota
	OtherShare
	WiderLimit
	Gusset
	SlashAndSpread
	LessEase
	MoreEase
	LessEaseThere // at the piece that pushes
	MoreEaseThere
	FoldOut
	WidenBelow   // do not taper all the way back
	TaperTheLine // taper from the line of the girth, not from the corner
	NarrowerLimit
	OtherStyle
	MeasureAgain
	TryTheSeam // sew the cap into the armhole in a test first
	AlterTheBodice
	LetItOut
	HoldIt
	MeasureTheSeams
	MeasureTheGirth
	FrontTakesMore // of the bust's need, up to all of it
)

// String is the way as other programs read it, in kebab-case.
func (w Way) String() string {
	return [...]string{
		"other-size", "other-share", "wider-limit", "gusset", "slash-and-spread", "less-ease", "more-ease", "less-ease-there", "more-ease-there",
		"fold-out", "widen-below", "taper-from-line", "narrower-limit", "other-style", "measure-again", "try-the-seam", "alter-the-bodice",
		"let-out", "hold", "measure-the-seams", "measure-the-girth", "front-takes-more",
	}[w]
}

// waysOut are the ways out where a side misses its need: too small asks for
// more paper, too large for less; a limit is only worth widening where a little
// is missing; another share only takes from one side what it gives to the other, so
// it is none where both miss the same way. Less ease is one while there is as much as is
// usual; else what comes out can only be accepted.
func (c *computation) waysOut(p piece, side units.Length, halves []Half) []Way {
	var ways []Way
	add := func(when bool, w ...Way) {
		if when {
			ways = append(ways, w...)
		}
	}
	keep, small := c.in.Method.Armhole == KeepArmhole, side > 0
	ease := c.in.easeThatFits(p, halves)
	add(!keep, OtherSize)
	add(!p.kept && !sameWay(p.front.LeftOver, p.back.LeftOver), OtherShare)
	add(small && ease.Known, LessEase)
	add(!small && ease.Known, MoreEase)
	add(keep && !p.kept && small && !c.plan.Seams.CapEaseBefore.Known, MeasureTheSeams)
	add(keep, AlterTheBodice)
	add(!p.kept && c.plan.turnsWider(c.in, p, halves), WiderLimit)
	marked := side.Abs().Round(c.in.mark()) != 0 // nobody sews in what the ruler does not show
	add(small && marked && p.lacks() <= MostPiecedIn, Gusset)
	add(small && marked && !p.kept && c.plan.spreads(c.in, p, halves), SlashAndSpread)
	add(!small && marked && !p.kept && p.exceeds() <= MostPiecedIn, FoldOut)
	add(c.in.Method.Follow == Hold && !keep && !slices.ContainsFunc(halves, c.opposed), LetItOut)
	return ways
}

// MostPiecedIn is the widest gusset, and the most that is folded out, at one underarm: 4 in.
// Beyond that it is another garment. Common practice knows no such bound; it is ours.
const MostPiecedIn = 4 * units.Inch

// lacks is what a piece is short by at one underarm, front and back together; exceeds is
// what is too much there.
func (p piece) lacks() units.Length { return max(p.front.LeftOver, 0) + max(p.back.LeftOver, 0) }

func (p piece) exceeds() units.Length { return -min(p.front.LeftOver, 0) - min(p.back.LeftOver, 0) }

// waysOfReach are the ways out where no hands can alter a side as planned: what is too
// much is folded out while that is no more than a fold takes.
func (c *computation) waysOfReach(s Side, slide bool) []Way {
	of := OfSleeve
	if !s.OfSleeve() {
		of = OfBust
	}
	ways := []Way{OtherSize}
	if p := c.plan.pieceOf(c.in, of); -p.front.Total-p.back.Total <= MostPiecedIn {
		ways = append(ways, FoldOut)
	}
	if !slide {
		ways = append(ways, NarrowerLimit)
	}
	return append(ways, MeasureAgain)
}

// waysOfTight are the ways out of a garment that is smaller than the body: more ease, but
// not of a piece that cannot have what is asked as it is.
func waysOfTight(p piece) []Way {
	if p.front.LeftOver > 0 || p.back.LeftOver > 0 {
		return nil
	}
	return []Way{MoreEase}
}

// waysOfExtra are the ways out where a piece is pushed out farther than it was asked: the
// one that pushes may ask for less ease while it has more than is usual at least.
func (c *computation) waysOfExtra(p piece) []Way {
	if ease := c.in.easeAt(p.otherPlace()); ease.Known && ease.Length > c.in.leastEase(p.otherPlace()) {
		return []Way{HoldIt, LessEaseThere, OtherSize}
	}
	return []Way{HoldIt, OtherSize}
}

// sameWay tells that both are too little, or both too much.
func sameWay(a, b units.Length) bool { return a > 0 && b > 0 || a < 0 && b < 0 }

// opposed tells that one piece has to grow and the other to shrink at a half; then
// nothing follows there that could be let out.
func (c *computation) opposed(h Half) bool {
	sleeve, bodice := c.plan.Sides[h.Sleeve()].Need.Or(0), c.plan.Sides[h.Bodice()].Need.Or(0)
	return sleeve != 0 && bodice != 0 && !sameWay(sleeve, bodice)
}

// Numbers are what a way out comes to; what is not known, or has no meaning for that
// way, is absent.
type Numbers struct {
	// Amount is the new limit or ease; how wide a gusset is at the underarm; how far a
	// slash is spread or a fold taken, around the body.
	Amount   units.Reading
	EachSide units.Reading // what of it falls to one side
	Adds     units.Reading // what a gusset adds around the other piece, where it runs on into its seam
	Lowers   units.Reading // what the cap height, or the depth of the armhole, loses by it
}

// Numbers are what a way out of one of the plan's findings comes to, the plan being
// that of the input.
//
//   - A wider limit is the least, by marks of the ruler, with which the sides reach their
//     needs; it lowers the cap by what the corner rises more in the longer pivot.
//   - A gusset is sewn between front and back underarm or side seam. At the underarm it is
//     as wide as the two are short together: half of it falls to each where both are short
//     alike. Run on past the underarm it is as wide in the seam of the other piece: a sleeve's
//     gusset gives a bust twice that, left and right, a bodice's gives the sleeve as much.
//     Common practice, no source.
//   - Slash and spread, of a sleeve: slashed from the hem to the shoulder dot, and at the
//     bicep line, the lower pieces are moved apart by what is short, half each way; the upper
//     ones go with them at the underarm corners and swing about the dot, so the cap keeps its
//     length and its height falls, see [Spread]. Of a bodice: front and back are slashed from
//     hem to shoulder, and each is spread at the bust line by what its side is short; the
//     armhole stays. Slashing and spreading is one of the three ways to alter in NMSU Guide
//     C-228; where to slash is common practice, no source.
//   - A fold takes out around the body, and at each side, what is too much.
//   - Less or more ease is the nearest by marks of the ruler with which the sides reach their
//     needs; of the piece that pushes, the least that is usual.
func (p Plan) Numbers(in Input, f Finding, w Way) Numbers {
	known := units.Known
	piece, halves := p.pieceOf(in, f.About), halvesOf(f.About)
	missed := f.Code == CannotReach
	switch {
	case w == WiderLimit && missed:
		return p.widerLimit(in, piece, halves)
	case w == Gusset:
		wide := piece.lacks()
		n := Numbers{Amount: known(wide), Adds: known(2 / piece.copies * wide)}
		if len(halves) == 2 {
			n.EachSide = known(piece.front.LeftOver)
		}
		return n
	case w == SlashAndSpread:
		return Numbers{Amount: known(f.Amount), EachSide: known(piece.side(halves[0]).LeftOver), Lowers: p.spreadLowers(piece, halves)}
	case w == FoldOut && missed:
		return Numbers{Amount: known(-f.Amount), EachSide: known(-piece.side(halves[0]).LeftOver)}
	case (w == LessEase || w == MoreEase) && missed:
		return Numbers{Amount: in.easeThatFits(piece, halves)}
	case w == LessEase: // binds below
		return Numbers{Amount: known(in.easeAt(f.At).Length - ceil(f.Amount, in.mark()))}
	case w == MoreEase: // tighter than the body
		return Numbers{Amount: known(in.leastEase(piece.place()))}
	case w == LessEaseThere:
		return Numbers{Amount: known(in.leastEase(piece.otherPlace()))}
	case w == NarrowerLimit && f.Code == LimitWide:
		return Numbers{Amount: known(UsualLimit)}
	}
	return Numbers{}
}

// Accepted is the ease that comes out if one of the plan's findings is accepted as it is.
// Nobody calls that a way out: it is less than is usual, or than the body. It is absent
// where that is no choice, because less ease is a way out, the steps draw the seam out or a
// doubt may be why.
func (p Plan) Accepted(in Input, f Finding) units.Reading {
	switch {
	case slices.Contains(f.Ways, LessEase) || f.Bound != nil:
	case f.Code == CannotReach && f.Amount > 0:
		return p.pieceOf(in, f.About).girth.EaseAfter
	case f.Code == BindsBelow && !slices.Contains(f.Ways, WidenBelow):
		return units.Known(in.easeAt(f.At).Length - f.Amount)
	}
	return units.Reading{}
}

// pieceOf is the piece that a finding is about.
func (p Plan) pieceOf(in Input, s Subject) piece {
	switch s {
	case OfBust, OfBodiceFront, OfBodiceBack:
		return piece{OfBust, p.Bust, p.Sides[BodiceFront], p.Sides[BodiceBack], 2, in.Method.Armhole == KeepArmhole}
	}
	return piece{OfSleeve, p.Sleeve, p.Sides[SleeveFront], p.Sides[SleeveBack], 1, false}
}

// halvesOf are the halves that a finding is about.
func halvesOf(s Subject) []Half {
	switch s {
	case OfSleeveFront, OfBodiceFront:
		return []Half{Front}
	case OfSleeveBack, OfBodiceBack:
		return []Half{Back}
	}
	return []Half{Front, Back}
}

// side is the front or the back of a piece.
func (p piece) side(h Half) SidePlan {
	if h == Back {
		return p.back
	}
	return p.front
}

// edge is where a half of the piece is measured in the plan.
func (p piece) edge(h Half) Side {
	if p.of == OfBust {
		return h.Bodice()
	}
	return h.Sleeve()
}

// place is where the piece takes ease, otherPlace where the other one does.
func (p piece) place() Place {
	if p.of == OfBust {
		return AtBust
	}
	return AtBicep
}

func (p piece) otherPlace() Place { return AtBicep + AtBust - p.place() }

// pivotLimit is the limit of the piece's sides.
func (in Input) pivotLimit(p piece) units.Length {
	if p.of == OfBust {
		return in.Method.LimitBodice
	}
	return in.Method.LimitSleeve
}

func (in Input) leastEase(at Place) units.Length {
	low, _ := EaseSpan(at, in.Fabric)
	return low
}

// easeAt is the ease that was asked for at a place.
func (in *Input) easeAt(at Place) units.Reading { return *in.answer(at.Ease()) }

// mark is the ruler's finest mark.
func (in Input) mark() units.Length { return max(in.Ruler.Mark(), 1) }

// widened is the limit with which the halves of a piece reach their needs.
func (in Input) widened(p piece, halves []Half) units.Length {
	var missed units.Length
	for _, h := range halves {
		missed = max(missed, p.side(h).LeftOver.Abs())
	}
	return ceil(in.pivotLimit(p)+missed, in.mark())
}

// turnsWider tells whether a wider limit is a way out: one within [MostLimit] that no
// corner keeps the hands from reaching.
func (p Plan) turnsWider(in Input, of piece, halves []Half) bool {
	if in.widened(of, halves) > MostLimit {
		return false
	}
	for _, h := range halves {
		s := of.edge(h)
		if side := of.side(h); turned(p.Edges[s], in.HalfSeams()[s], side.Pivot+side.LeftOver, side.Slide, Fit{}).OutOfReach {
			return false
		}
	}
	return true
}

func (p Plan) widerLimit(in Input, of piece, halves []Half) Numbers {
	n := Numbers{Amount: units.Known(in.widened(of, halves))}
	lowers := 0.0
	for _, h := range halves {
		side, e := of.side(h), p.Edges[of.edge(h)]
		before, after := e.Lift(side.Pivot.Millimetres()), e.Lift((side.Pivot + side.LeftOver).Millimetres())
		if !before.Known || !after.Known {
			return n
		}
		lowers = max(lowers, after.MM-before.MM)
	}
	n.Lowers = units.Known(NearestCount(lowers))
	return n
}

// Spread is the height that is left of a cap, or of anything that hangs from a pin,
// once its underarm corner (out, -height) is drawn out by so much and stays as far from the
// pin as it was; not known where it cannot come so far. By mathematics (Pythagoras): a
// straight-line cap 14 wide and 6 high is sqrt(21) high at a width of 16.
func Spread(out, height, by float64) Approx {
	left := math.Pow(math.Hypot(out, height), 2) - math.Pow(out+by, 2)
	return Approx{math.Sqrt(max(left, 0)), height > 0 && left >= 0}
}

// spreads tells whether a piece can be slashed and spread by what its halves are short:
// what is left of the cap's height must be as much beside the new width as is asked of a cap
// that is measured, see [Bounds].
func (p Plan) spreads(in Input, of piece, halves []Half) bool {
	if of.of != OfSleeve {
		return true
	}
	width := of.girth.Flat.Length + of.front.Total + of.back.Total
	for _, h := range halves {
		width += of.side(h).LeftOver
	}
	for _, h := range halves {
		t := p.Turns[of.edge(h)]
		left := Spread(t.CornerX, t.HeightAfter, of.side(h).LeftOver.Millimetres())
		if t.Known && (!left.Known || 100*left.MM < float64(in.leastCap())*width.Millimetres()) {
			return false
		}
	}
	return true
}

// leastCap is the least height of a cap beside its width, in hundredths.
func (in *Input) leastCap() (least units.Length) {
	h := hold(in)
	for i := range Bounds {
		if b := &Bounds[i]; b.Of == CapHeight && b.Beside == SleeveWidth && h.of[b.For] {
			least = max(least, b.Low)
		}
	}
	return least
}

// spreadLowers is what the cap loses of its height, where its corners are known.
func (p Plan) spreadLowers(of piece, halves []Half) units.Reading {
	most := 0.0
	for _, h := range halves {
		t := p.Turns[of.edge(h)]
		left := Spread(t.CornerX, t.HeightAfter, of.side(h).LeftOver.Millimetres())
		if of.of == OfBust || !t.Known || !left.Known {
			return units.Reading{}
		}
		most = max(most, t.HeightAfter-left.MM)
	}
	return units.Known(NearestCount(most))
}

// farthestEase is as far as an ease is looked for, far more than anybody would change it.
const farthestEase = 24 * units.Inch

// easeThatFits is the ease nearest to the present one, by marks of the ruler, with which
// the halves of a piece no longer miss their needs that way; tried, for a need that changes its
// sign is served otherwise. Less ease ends at what is usual at least, more at twice the most
// that is usual, from where on it is doubted when somebody asks for it; it is absent where
// none does.
func (in Input) easeThatFits(p piece, halves []Half) units.Reading {
	now, mark := in.easeAt(p.place()).Length, in.mark()
	_, high := EaseSpan(p.place(), Woven)
	sign, most := units.Length(1), min(farthestEase, 2*high-now)
	if p.side(halves[0]).LeftOver > 0 {
		sign, most = -1, min(farthestEase, now-in.leastEase(p.place()))
	}
	if !p.girth.Asked() || most < mark {
		return units.Reading{}
	}
	fits := func(marks int) bool {
		tried := computation{tally: &tally{}, in: in}
		*tried.in.answer(p.place().Ease()) = units.Known(now + sign*units.Length(marks)*mark)
		tried.splits()
		return !slices.ContainsFunc(halves, func(h Half) bool { return -sign*tried.plan.Sides[p.edge(h)].LeftOver > 0 })
	}
	marks := int(most / mark)
	if n := sort.Search(marks, func(n int) bool { return fits(n + 1) }); n < marks {
		return units.Known(now + sign*units.Length(n+1)*mark)
	}
	return units.Reading{}
}
