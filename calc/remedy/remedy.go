// Package remedy finds, by trying, the smallest change of one answer that would make a
// sheet work.
package remedy

import (
	"cmp"
	"iter"
	"slices"

	"capscye/calc"
	"capscye/units"
)

// Change is of one answer, and removes a trouble: the smallest of its kind that does.
type Change struct {
	Answer calc.Answer // what is changed
	Input  calc.Input  // with that change, and no other
	After  calc.Plan
}

// FrontShares are what a finding may offer that is no trouble: to give the front three
// quarters of what the bust needs, or all of it, where the back has less to mark then than
// in the plan before. A
// pattern chosen by the high bust fits the back (common practice, no source).
func FrontShares(in calc.Input, before calc.Plan, f calc.Finding) []Change {
	if !slices.Contains(f.Ways, calc.FrontTakesMore) {
		return nil
	}
	var list []Change
	back := before.Sides[calc.BodiceBack].Marked()
	for _, share := range []units.Share{{Numerator: 3, Denominator: 4}, {Numerator: 1, Denominator: 1}} {
		now, changed := in.Method.ShareBust, in
		if share.Numerator*now.Denominator <= now.Numerator*share.Denominator {
			continue
		}
		changed.Method.ShareBust = share
		if after := calc.Compute(changed); after.Sides[calc.BodiceBack].Marked() < back {
			list = append(list, Change{calc.ShareBust, changed, after})
		}
	}
	return list
}

// LeastPercent and MostPercent are the shares that a remedy goes to. The bound is ours.
const LeastPercent, MostPercent = 25, 75

// Troubles are the findings that a change of ease, share, limit, custom or slide
// may remove: pivots and slides that cannot do what is asked, and a girth that
// changes although nobody asked for it.
func Troubles(p calc.Plan) []calc.Finding {
	var list []calc.Finding
	for _, f := range p.Findings {
		switch f.Code {
		case calc.CannotReach, calc.OutOfReach, calc.FollowsUnasked, calc.ExtraEase, calc.TooFarIn:
			if f.Level > calc.Note && !slices.ContainsFunc(list, sameAs(f)) {
				list = append(list, f)
			}
		}
	}
	return list
}

// sameAs tells the findings that say the same of a piece as one; front and back are
// one trouble.
func sameAs(f calc.Finding) func(calc.Finding) bool {
	return func(other calc.Finding) bool { return f.Code == other.Code && pieceOf(f.About) == pieceOf(other.About) }
}

// pieceOf is the piece that a subject belongs to.
func pieceOf(s calc.Subject) calc.Subject {
	switch s {
	case calc.OfSleeveFront, calc.OfSleeveBack:
		return calc.OfSleeve
	case calc.OfBodiceFront, calc.OfBodiceBack:
		return calc.OfBust
	}
	return s
}

// Of are the changes of one answer each that remove a trouble from the
// plan of an input and bring none as grave that was not there: less or more ease
// by ruler marks, another front share by hundredths, a limit wider by marks up to
// [calc.MostLimit], the other custom of following, another rule for the slide. Each
// is found by trying one value after the other, from the present one on, so there
// is no smaller change of that answer that would do.
func Of(in calc.Input, trouble calc.Finding) []Change {
	before := calc.Compute(in)
	var list []Change
	for _, l := range levers {
		for changed := range l.values(in) {
			if after := calc.Compute(changed); removes(before, after, trouble) {
				list = append(list, Change{l.answer, changed, after})
				break
			}
		}
	}
	return list
}

// removes tells that a plan is without a trouble of another, and has none as
// grave that the other had not.
func removes(before, after calc.Plan, trouble calc.Finding) bool {
	if after.Open {
		return false
	}
	had := Troubles(before)
	for _, f := range Troubles(after) {
		isNew := !slices.ContainsFunc(had, sameAs(f))
		if sameAs(trouble)(f) || isNew && f.Level >= trouble.Level {
			return false
		}
	}
	return true
}

// lever is an answer that can be changed, and the inputs that it makes, from the
// nearest to the present one on.
type lever struct {
	answer calc.Answer
	values func(calc.Input) iter.Seq[calc.Input]
}

var levers = []lever{
	{calc.BicepEase, eases(calc.AtBicep, func(in *calc.Input) *units.Reading { return &in.BicepEase })},
	{calc.BustEase, eases(calc.AtBust, func(in *calc.Input) *units.Reading { return &in.BustEase })},
	{calc.ShareSleeve, shares(func(in *calc.Input) *units.Share { return &in.Method.ShareSleeve })},
	{calc.ShareBust, shares(func(in *calc.Input) *units.Share { return &in.Method.ShareBust })},
	{calc.LimitSleeve, limits(func(in *calc.Input) *units.Length { return &in.Method.LimitSleeve })},
	{calc.LimitBodice, limits(func(in *calc.Input) *units.Length { return &in.Method.LimitBodice })},
	{calc.FollowCustom, customs},
	{calc.SlideLength, slideRules},
}

// farthestEase is as much as a remedy changes an ease, far more than anybody would.
const farthestEase = 24 * units.Inch

// eases changes an ease mark by mark, both ways: not to less than any source gives for the
// place and the cloth, for a garment that nobody can wear is no remedy, nor beyond twice the
// present one and four inches.
func eases(at calc.Place, of func(*calc.Input) *units.Reading) func(calc.Input) iter.Seq[calc.Input] {
	return func(in calc.Input) iter.Seq[calc.Input] {
		return func(yield func(calc.Input) bool) {
			now, mark := *of(&in), in.Ruler.Mark()
			least, _ := calc.EaseSpan(at, in.Fabric)
			most := max(2*now.Length, 0) + 4*units.Inch
			if !now.Known || mark <= 0 {
				return
			}
			for by := mark; by <= farthestEase && (now.Length-by >= least || now.Length+by <= most); by += mark {
				for _, ease := range []units.Length{now.Length - by, now.Length + by} {
					changed := in
					of(&changed).Length = ease
					if ease >= least && ease <= most && !yield(changed) {
						return
					}
				}
			}
		}
	}
}

// shares moves a front share by hundredths, both ways, to the nearest first.
func shares(of func(*calc.Input) *units.Share) func(calc.Input) iter.Seq[calc.Input] {
	return func(in calc.Input) iter.Seq[calc.Input] {
		return func(yield func(calc.Input) bool) {
			now := *of(&in)
			if now.Denominator == 0 {
				return
			}
			distance := func(percent int64) int64 { // in parts of 100 x the denominator
				return max(percent*now.Denominator-100*now.Numerator, 100*now.Numerator-percent*now.Denominator)
			}
			var list []int64
			for percent := int64(LeastPercent); percent <= MostPercent; percent++ {
				if distance(percent) > 0 {
					list = append(list, percent)
				}
			}
			slices.SortStableFunc(list, func(a, b int64) int { return cmp.Compare(distance(a), distance(b)) })
			for _, percent := range list {
				changed := in
				*of(&changed) = units.Share{Numerator: percent, Denominator: 100}
				if !yield(changed) {
					return
				}
			}
		}
	}
}

// limits widens a limit mark by mark.
func limits(of func(*calc.Input) *units.Length) func(calc.Input) iter.Seq[calc.Input] {
	return func(in calc.Input) iter.Seq[calc.Input] {
		return func(yield func(calc.Input) bool) {
			mark := in.Ruler.Mark()
			for limit := *of(&in) + mark; mark > 0 && limit <= calc.MostLimit; limit += mark {
				changed := in
				*of(&changed) = limit
				if !yield(changed) {
					return
				}
			}
		}
	}
}

// customs is the other custom of following.
func customs(in calc.Input) iter.Seq[calc.Input] {
	return func(yield func(calc.Input) bool) {
		in.Method.Follow = calc.LetOut + calc.Hold - in.Method.Follow
		yield(in)
	}
}

// slideRules are the rules for the slide but the present one.
func slideRules(in calc.Input) iter.Seq[calc.Input] {
	return func(yield func(calc.Input) bool) {
		for _, rule := range []calc.SlideChoice{calc.SlideLeast, calc.SlideEven} {
			changed := in
			changed.Method.Slide = rule
			if rule != in.Method.Slide && !yield(changed) {
				return
			}
		}
	}
}
