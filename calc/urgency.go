package calc

import "cmp"

// urgency lists every code of a finding in the order in which a person should hear
// of it among those of its level: first what makes the rest meaningless.
var urgency = [][]Code{
	{ValueUnreadable, AnswerMissing, NothingAsked}, // nothing follows without it
	{ArmForBust, GirthUnusual, AnswerDoubted, SizesFall, EaseUnusual, MeasuredDifferently, BodiceAsSleeve, LengthAssumed, BodyChanged, PatternChanged, MeasuredLongAgo, ChildsNightwear}, // what follows may follow from a slip
	{WidthImpossible, CapImpossible, ArmholeImpossible, LeanImpossible, BustLineImpossible},                                                                                              // no such pattern
	{OutOfReach, SlideFar, CannotReach, StartLarger, SizeByHighBust},                                                                                                                     // what cannot be reached
	{TighterThanBody, TooFarIn, ExtraEase, FollowsUnasked, ShortAtLine, BindsBelow},                                                                                                      // how it fits
	{CapEaseLow, CapEaseHigh, CapTakesSlide, PivotsBack, LimitWide},                                                                                                                      // how it sews
	{SlideMoved, ComesIn, PivotAndSlide, PivotOnly, SlideOnly, FitsAlready},                                                                                                              // what is done
	{GrowthsDiffer, SharpBend, NarrowerAtCorners},                                                                                                                                        // what follows from that
	{ArmsDiffer, BustLineAssumed, OutlineUnknown},                                                                                                                                        // good to know
	{UnknownKey, NotWritten}, // of the file
}

var placeOf = func() map[Code]int {
	places := map[Code]int{}
	for i, codes := range urgency {
		for _, c := range codes {
			places[c] = i + 1
		}
	}
	return places
}()

// Urgency is the place of a code among those of its level, from 1 on, which it may
// share; 0 for a code that has none.
func Urgency(c Code) int { return placeOf[c] }

// Rank is what decides how soon a finding is heard.
type Rank struct {
	Level  Level
	Code   Code
	Causes bool // a stop may follow from what it doubts
}

// Rank is that of a finding.
func (f *Finding) Rank() Rank { return Rank{f.Level, f.Code, f.Causes} }

// heardAs is the level with which it is heard: a doubt with the stops that may follow from
// it.
func (r Rank) heardAs() Level {
	if r.Causes {
		return Stop
	}
	return r.Level
}

// ByUrgency compares two findings: the graver first, but a doubt before the stops that may
// follow from it, and of the same level the one that makes the other meaningless. It is for
// a stable sort, in which those of one place keep their order: the sleeve before the bodice,
// front before back.
func ByUrgency(a, b Rank) int {
	return cmp.Or(cmp.Compare(b.heardAs(), a.heardAs()), cmp.Compare(Urgency(a.Code), Urgency(b.Code)))
}
