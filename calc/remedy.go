package calc

import (
	"cmp"
	"iter"
	"slices"

	"capscye/units"
)

// Remedy is a change of one answer that removes a trouble: the smallest of its
// kind that does.
type Remedy struct {
	Answer Answer // what is changed
	Input  Input  // with that change, and no other
	After  Plan
}

// MostLimit is how far a remedy widens a pivot limit: half as much again as the
// usual inch. Common practice knows no such bound; it is ours, for a wider turn
// lowers the cap by more than it gains.
const MostLimit = 3 * UsualLimit / 2

// The shares that a remedy goes to: from a quarter to three quarters. The bound
// is ours.
const leastPercent, mostPercent = 25, 75

// Troubles are the findings that a change of ease, share, limit, custom or slide
// may remove: pivots and slides that cannot do what is asked, and a girth that
// changes although nobody asked for it.
func Troubles(p Plan) []Finding {
	var list []Finding
	for _, f := range p.Findings {
		switch f.Code {
		case CannotReach, OutOfReach, FollowsUnasked, ExtraEase, TooFarIn:
			if f.Level > Note && !slices.ContainsFunc(list, sameAs(f)) {
				list = append(list, f)
			}
		}
	}
	return list
}

// sameAs tells the findings that say the same of a piece as one; front and back are
// one trouble.
func sameAs(f Finding) func(Finding) bool {
	return func(other Finding) bool { return f.Code == other.Code && pieceOf(f.About) == pieceOf(other.About) }
}

// pieceOf is the piece that a subject belongs to.
func pieceOf(s Subject) Subject {
	switch s {
	case OfSleeveFront, OfSleeveBack:
		return OfSleeve
	case OfBodiceFront, OfBodiceBack:
		return OfBust
	}
	return s
}

// Remedies are the changes of one answer each that remove a trouble from the
// plan of an input and bring none as grave that was not there: less or more ease
// by ruler marks, another front share by hundredths, a limit wider by marks up to
// [MostLimit], the other custom of following, another rule for the slide. Each
// is found by trying one value after the other, from the present one on, so there
// is no smaller change of that answer that would do.
func Remedies(in Input, trouble Finding) []Remedy {
	before := Compute(in)
	var list []Remedy
	for _, l := range levers {
		for changed := range l.values(in) {
			if after := Compute(changed); removes(before, after, trouble) {
				list = append(list, Remedy{l.answer, changed, after})
				break
			}
		}
	}
	return list
}

// removes tells that a plan is without a trouble of another, and has none as
// grave that the other had not.
func removes(before, after Plan, trouble Finding) bool {
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
	answer Answer
	values func(Input) iter.Seq[Input]
}

var levers = []lever{
	{BicepEase, eases(func(in *Input) *units.Reading { return &in.BicepEase })},
	{BustEase, eases(func(in *Input) *units.Reading { return &in.BustEase })},
	{ShareSleeve, shares(func(in *Input) *units.Share { return &in.Method.ShareSleeve })},
	{ShareBust, shares(func(in *Input) *units.Share { return &in.Method.ShareBust })},
	{LimitSleeve, limits(func(in *Input) *units.Length { return &in.Method.LimitSleeve })},
	{LimitBodice, limits(func(in *Input) *units.Length { return &in.Method.LimitBodice })},
	{FollowCustom, customs},
	{SlideLength, slideRules},
}

// farthestEase is as much as a remedy changes an ease, far more than anybody would.
const farthestEase = 24 * units.Inch

// eases changes an ease mark by mark, both ways: not below nothing, or below
// what is usual for a knit, nor beyond twice the present one and four inches.
func eases(of func(*Input) *units.Reading) func(Input) iter.Seq[Input] {
	return func(in Input) iter.Seq[Input] {
		return func(yield func(Input) bool) {
			now, mark := *of(&in), in.Ruler.Mark()
			least, most := min(leastEase(in.Fabric), now.Length), max(2*now.Length, 0)+4*units.Inch
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

// leastEase is the least that a remedy leaves: what is usual for a knit, and
// nothing for woven cloth, which does not stretch.
func leastEase(fabric Fabric) units.Length {
	least := units.Length(0)
	if fabric == Knit {
		for _, r := range UsualEase(AtBust, fabric) {
			least = min(least, r.Low)
		}
	}
	return least
}

// shares moves a front share by hundredths, both ways, to the nearest first.
func shares(of func(*Input) *units.Share) func(Input) iter.Seq[Input] {
	return func(in Input) iter.Seq[Input] {
		return func(yield func(Input) bool) {
			now := *of(&in)
			if now.Denominator == 0 {
				return
			}
			distance := func(percent int64) int64 { // in parts of 100 x the denominator
				return max(percent*now.Denominator-100*now.Numerator, 100*now.Numerator-percent*now.Denominator)
			}
			var list []int64
			for percent := int64(leastPercent); percent <= mostPercent; percent++ {
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
func limits(of func(*Input) *units.Length) func(Input) iter.Seq[Input] {
	return func(in Input) iter.Seq[Input] {
		return func(yield func(Input) bool) {
			mark := in.Ruler.Mark()
			for limit := *of(&in) + mark; mark > 0 && limit <= MostLimit; limit += mark {
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
func customs(in Input) iter.Seq[Input] {
	return func(yield func(Input) bool) {
		in.Method.Follow = LetOut + Hold - in.Method.Follow
		yield(in)
	}
}

// slideRules are the rules for the slide but the present one.
func slideRules(in Input) iter.Seq[Input] {
	return func(yield func(Input) bool) {
		for _, rule := range []SlideChoice{SlideLeast, SlideEven} {
			changed := in
			changed.Method.Slide = rule
			if rule != in.Method.Slide && !yield(changed) {
				return
			}
		}
	}
}
