package calc_test

import (
	"slices"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/units"
)

// For each way out, when it is offered. A way that cannot help is worse than none.

// Other programs read ways and slips by these names, so none is called anything else.
func TestWaysAndSlipsKeepTheirNames(t *testing.T) {
	var ways, slips []string
	for _, w := range everyWay() {
		ways = append(ways, w.String())
	}
	for s := calc.NoSlip + 1; s.String() != ""; s++ {
		slips = append(slips, s.String())
	}
	if got, want := strings.Join(ways, " "), "other-size other-share wider-limit gusset slash-and-spread less-ease more-ease less-ease-there more-ease-there fold-out "+
		"widen-below taper-from-line narrower-limit other-style measure-again try-the-seam alter-the-bodice let-out hold measure-the-seams measure-the-girth front-takes-more"; got != want {
		t.Errorf("ways are called\n%s, want\n%s", got, want)
	}
	if got, want := strings.Join(slips, " "), "centimetres inches whole-for-half exchanged digit-twice point-lost millimetres half-for-whole digits-swapped whole-for-half space-lost"; got != want {
		t.Errorf("slips are called\n%s, want\n%s", got, want)
	}
}

func slowWays() map[calc.Way]func(*slowSheet, calc.Finding) bool {
	return map[calc.Way]func(*slowSheet, calc.Finding) bool{
		calc.OtherSize: offersOtherSize, calc.OtherShare: offersOtherShare, calc.WiderLimit: offersWiderLimit, calc.Gusset: offersGusset,
		calc.SlashAndSpread: offersSlashAndSpread, calc.LessEase: offersLessEase, calc.MoreEase: offersMoreEase,
		calc.LessEaseThere: offersLessEaseThere, calc.MoreEaseThere: offersMoreEaseThere, calc.FoldOut: offersFoldOut,
		calc.WidenBelow: offersWidenBelow, calc.TaperTheLine: only(calc.ShortAtLine, calc.OutlineUnknown), calc.NarrowerLimit: offersNarrowerLimit,
		calc.OtherStyle: only(calc.CapEaseLow, calc.CapEaseHigh), calc.MeasureAgain: offersMeasureAgain, calc.TryTheSeam: only(calc.CapTakesSlide),
		calc.AlterTheBodice: offersAlterTheBodice, calc.LetItOut: offersLetItOut, calc.HoldIt: offersHoldIt,
		calc.MeasureTheSeams: offersMeasureTheSeams, calc.MeasureTheGirth: only(calc.FollowsUnasked),
		calc.FrontTakesMore: offersFrontTakesMore,
	}
}

func only(codes ...calc.Code) func(*slowSheet, calc.Finding) bool {
	return func(_ *slowSheet, f calc.Finding) bool { return slices.Contains(codes, f.Code) }
}

func short(f calc.Finding) bool   { return f.Code == calc.CannotReach && f.Amount > 0 }
func tooWide(f calc.Finding) bool { return f.Code == calc.CannotReach && f.Amount < 0 }

// cutAbout tells that a finding is about a bodice that is already cut.
func (s *slowSheet) cutAbout(f calc.Finding) bool {
	return f.About != calc.OfSheet && s.pieceOf(f).cut
}

// pieceOf is the piece that a finding is about.
func (s *slowSheet) pieceOf(f calc.Finding) slowPiece {
	if slices.Contains([]calc.Subject{calc.OfSleeve, calc.OfSleeveFront, calc.OfSleeveBack}, f.About) {
		return s.pieces[0]
	}
	return s.pieces[1]
}

// marked tells that the piece is altered at the table.
func (p slowPiece) marked() bool {
	return slices.ContainsFunc(p.sides, func(s calc.SidePlan) bool { return s.PivotMark != 0 || s.SlideMark != 0 })
}

// Another size of the pattern, where this one cannot be made to fit or fits badly. With
// the bodice cut its size is given, and that of the sleeve that goes into it.
func offersOtherSize(s *slowSheet, f calc.Finding) bool {
	switch f.Code {
	case calc.CannotReach, calc.SlideFar:
		return s.Method.Armhole == calc.AlterArmhole
	case calc.ExtraEase:
		return f.Level == calc.Warn
	case calc.BindsBelow:
		return !s.cutAbout(f)
	}
	return slices.Contains([]calc.Code{calc.StartLarger, calc.TooFarIn, calc.OutOfReach}, f.Code)
}

// Another share between front and back, which takes from one what it gives to the other:
// no way out where both are short, or both too wide. A bodice that is cut has its share.
func offersOtherShare(s *slowSheet, f calc.Finding) bool {
	if f.Code != calc.CannotReach || s.cutAbout(f) {
		return false
	}
	front, back := s.pieceOf(f).sides[0].LeftOver, s.pieceOf(f).sides[1].LeftOver
	return front <= 0 && back >= 0 || front >= 0 && back <= 0
}

// A wider limit, where half an inch more than the usual inch is enough (the bound is ours)
// and some turn reaches it.
func offersWiderLimit(s *slowSheet, f calc.Finding) bool {
	if f.Code != calc.CannotReach || s.cutAbout(f) || s.limitThatReaches(f) > units.Inch*3/2 {
		return false
	}
	for _, h := range s.halvesOf(f) {
		if seam := s.turnedOn(f, h); seam.measured && (!seam.reached || s.curveTooShort(f, h, seam)) {
			return false
		}
	}
	return true
}

// A gusset gives what is short, to a piece that is cut as well; up to 4 in wide, which is
// ours, and not less than the ruler shows.
func offersGusset(s *slowSheet, f calc.Finding) bool {
	wide := units.Length(0)
	for _, side := range s.pieceOf(f).sides {
		wide += max(side.LeftOver, 0)
	}
	return short(f) && wide <= 4*units.Inch && s.onRuler(f)
}

// onRuler tells that what a side misses is as much as half a mark.
func (s *slowSheet) onRuler(f calc.Finding) bool {
	return 2*s.pieceOf(f).sides[s.halvesOf(f)[0]].LeftOver.Abs() >= s.Ruler.Mark()
}

// Slash and spread gives what is short, but not to a piece that is cut, nor where a set-in
// cap would be left less high than a fifth of the sleeve's new width, another than a tenth
// (the bounds of a measured cap).
func offersSlashAndSpread(s *slowSheet, f calc.Finding) bool {
	p := s.pieceOf(f)
	if !short(f) || p.cut || !s.onRuler(f) {
		return false
	}
	width, part := mm(p.girth.Flat.Length), 10.0
	if s.Sleeve.Style == calc.SetIn {
		part = 5
	}
	for h, side := range p.sides {
		if width += mm(side.Total); slices.Contains(s.halvesOf(f), h) {
			width += mm(side.LeftOver)
		}
	}
	for _, h := range s.halvesOf(f) {
		seam, by := p.seams[h], mm(p.sides[h].LeftOver)
		if p.of != calc.OfSleeve || !seam.measured || !seam.reached {
			continue
		}
		if left, ok := seam.spread(by); !ok || part*left < width {
			return false
		}
	}
	return true
}

// What is too much is folded out, up to 4 in at one underarm, which is ours; but not of a
// piece that is cut, and not less than the ruler shows.
func offersFoldOut(s *slowSheet, f calc.Finding) bool {
	missed, in := units.Length(0), units.Length(0)
	for _, side := range s.pieceOf(f).sides {
		missed, in = missed-min(side.LeftOver, 0), in-side.Total
	}
	switch {
	case s.cutAbout(f):
		return false
	case f.Code == calc.OutOfReach:
		return in <= 4*units.Inch
	}
	return tooWide(f) && missed <= 4*units.Inch && s.onRuler(f)
}

// Less ease, where what is asked is more than can be had, and what is left is as much as
// is usual at least; not of a girth that nobody asked for.
func offersLessEase(s *slowSheet, f calc.Finding) bool {
	if f.Code == calc.BindsBelow {
		return s.easeLeft(f) >= leastUsual(f.At, s.Fabric)
	}
	if !short(f) {
		return false
	}
	_, ok := s.easeThatReaches(f)
	return ok
}

// More ease, where what is asked is less than can be had, or than the body; not where it
// cannot be had as it is.
func offersMoreEase(s *slowSheet, f calc.Finding) bool {
	if !tooWide(f) {
		misses := func(side calc.SidePlan) bool { return side.LeftOver > 0 }
		return f.Code == calc.TighterThanBody && !slices.ContainsFunc(s.pieceOf(f).sides, misses)
	}
	_, ok := s.easeThatReaches(f)
	return ok
}

// What is left of less ease than is usual at least nobody calls a way out: it can be
// accepted, and what it comes to is said. Nothing is accepted where the steps draw the seam
// out anyway.
func (s *slowSheet) accepted(f calc.Finding) units.Reading {
	p := s.pieceOf(f)
	switch {
	case f.Bound != nil || offersLessEase(s, f): // what a slip may have made is not accepted
	case short(f) && p.asked():
		if gain, ok := p.atLine(); ok {
			return units.Known(p.girth.Flat.Length + p.copies*gain - p.girth.Body.Length)
		}
	case f.Code == calc.BindsBelow && !p.marked():
		return units.Known(s.easeAsked(f.At) - f.Amount)
	}
	return units.Reading{}
}

// Where a piece only follows, less ease at the piece that pushes, as long as there is more
// than is usual at least; or more.
func offersLessEaseThere(s *slowSheet, f calc.Finding) bool {
	there := calc.AtBust
	if f.About == calc.OfBust {
		there = calc.AtBicep
	}
	asked := map[calc.Place]units.Reading{calc.AtBicep: s.BicepEase, calc.AtBust: s.BustEase}[there]
	return f.Code == calc.ExtraEase && f.Level == calc.Warn && asked.Known && asked.Length > leastUsual(there, s.Fabric)
}
func offersMoreEaseThere(s *slowSheet, f calc.Finding) bool { return f.Code == calc.TooFarIn }

// A seam that tapers back may taper less; one of a piece that stays, cut or not, does not
// taper at all.
func offersWidenBelow(s *slowSheet, f calc.Finding) bool {
	return f.Code == calc.BindsBelow && s.pieceOf(f).marked()
}

// A narrower limit, where one turns too far; an inward slide does not turn.
func offersNarrowerLimit(s *slowSheet, f calc.Finding) bool {
	return f.Code == calc.LimitWide || f.Code == calc.OutOfReach && f.Other == 0
}

// Measure again, where measurements contradict each other or the plan. A reading: of a
// half-seam, a width or a girth that cannot be the sentence itself says which are wrong.
func offersMeasureAgain(s *slowSheet, f calc.Finding) bool {
	return slices.Contains([]calc.Code{calc.CapEaseLow, calc.CapEaseHigh, calc.LeanImpossible, calc.BustLineImpossible, calc.OutOfReach}, f.Code)
}

// The bodice that is kept may be altered all the same, where that is the reason.
func offersAlterTheBodice(s *slowSheet, f calc.Finding) bool {
	return s.Method.Armhole == calc.KeepArmhole && f.Code == calc.CannotReach || s.cutAbout(f) && f.Code == calc.BindsBelow
}

// Held, a piece may be let out instead, where that reaches what is missed: tried. With
// the bodice cut nothing follows.
func offersLetItOut(s *slowSheet, f calc.Finding) bool {
	if f.Code != calc.CannotReach {
		return f.Code == calc.PivotsBack
	}
	if s.Method.Follow == calc.LetOut || s.Method.Armhole == calc.KeepArmhole {
		return false
	}
	tried := s.Input
	tried.Method.Follow = calc.LetOut
	for i, side := range newSlowSheet(tried).pieces[s.pieceOf(f).of-calc.OfSleeve].sides {
		if about := s.pieceOf(f); side.LeftOver != 0 && (f.About == about.of || f.About == about.subjects[i]) {
			return false
		}
	}
	return true
}

// Let out, it may be held instead.
func offersHoldIt(s *slowSheet, f calc.Finding) bool {
	return s.Method.Follow == calc.LetOut && (f.Code == calc.ExtraEase && f.Level == calc.Warn || f.Code == calc.TooFarIn || f.Code == calc.FollowsUnasked)
}

// A kept armhole leaves room for a slide where the seams say so; they have to be measured
// for that, and not again.
func offersMeasureTheSeams(s *slowSheet, f calc.Finding) bool {
	return short(f) && !s.cutAbout(f) && s.Method.Armhole == calc.KeepArmhole && !s.plan.Seams.CapEaseBefore.Known
}

// A pattern chosen by the high bust fits the back, so the front may take more of what the
// bust needs (common practice, no source): where it needs any, the bodice is not cut, and
// there is less to mark on the back with all of it at the front: tried.
func offersFrontTakesMore(s *slowSheet, f calc.Finding) bool {
	if f.Code != calc.SizeByHighBust || s.plan.Open || !s.pieces[1].asked() || s.pieces[1].girth.Need.Length <= 0 || s.pieces[1].cut {
		return false
	}
	tried := s.Input
	tried.Method.ShareBust = units.Share{Numerator: 1, Denominator: 1}
	back := func(p calc.Plan) units.Length { return p.Sides[calc.BodiceBack].Total.Round(s.Ruler.Mark()) }
	return back(oraclePlan(tried)) < back(s.plan)
}
