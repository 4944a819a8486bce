package calc

import "capscye/units"

// Level says how much a finding matters.
type Level uint8

// The levels.
const (
	Note Level = iota // good to know
	Warn              // check before cutting
	Stop              // do not cut
)

// String is the level as it is written in files and on screens.
func (l Level) String() string { return [...]string{"note", "warn", "stop"}[l] }

// Code names a kind of finding, in kebab-case. Codes are part of the output
// that other programs read; the manual lists them.
type Code string

// The codes. Amount and Other of a [Finding] mean what is said here.
const (
	NothingAsked    Code = "nothing-asked"    // neither a bicep nor a bust was entered
	AnswerMissing   Code = "answer-missing"   // a girth was asked, and Answer is needed for it
	WidthImpossible Code = "width-impossible" // after allowances and take-off Amount is left of the pattern
	ArmsDiffer      Code = "arms-differ"      // by Amount; the larger decides

	BodiceAsSleeve      Code = "bodice-as-sleeve"     // how the bodice was measured was not told, and is taken from the sleeve
	LengthAssumed       Code = "length-assumed"       // nobody said whether the sleeve is long or short; it counts as short
	MeasuredDifferently Code = "measured-differently" // sleeve and bodice are told to be measured in two ways, or with allowances of Amount and Other

	FitsAlready   Code = "fits-already"    // the need is nothing
	ComesIn       Code = "comes-in"        // the pattern is larger than asked by Amount
	PivotOnly     Code = "pivot-only"      // cap and armhole keep their length
	PivotAndSlide Code = "pivot-and-slide" // they get longer by Amount in all
	SlideOnly     Code = "slide-only"      // the same, without any pivot

	SlideFar       Code = "slide-far"       // the slide Amount is more than Other; it may follow from Answer, where that is doubted
	SlideMoved     Code = "slide-moved"     // the slide Amount lay outside the band and became Other
	FollowsUnasked Code = "follows-unasked" // the girth was not asked and changes by Amount; turned instead of slid, its seam would be shorter than the other piece's by Other
	ExtraEase      Code = "extra-ease"      // it comes out larger than asked by Amount
	TooFarIn       Code = "too-far-in"      // it comes out smaller than asked by Amount
	PivotsBack     Code = "pivots-back"     // hold: a side turns the other way, Amount at the most
	CapTakesSlide  Code = "cap-takes-slide" // the armhole is kept: the cap gets longer by Amount, to be eased in
	CannotReach    Code = "cannot-reach"    // what is asked for is missed by Amount around the body; it may follow from Answer

	ShortAtLine        Code = "short-at-line"        // tapered from the corners, the garment is narrower at the line of its girth by Amount; wider, where negative
	OutlineUnknown     Code = "outline-unknown"      // what it measures there cannot be told without Missing
	BustLineAssumed    Code = "bust-line-assumed"    // the bust line was taken at the underarm
	BustLineImpossible Code = "bust-line-impossible" // a bust line Amount down a side seam of Other
	NarrowerAtCorners  Code = "narrower-at-corners"  // the sleeve is Amount across its new corners, Other (front) and Third (back) above the bicep line
	SharpBend          Code = "sharp-bend"           // the seam below the underarm bends by Degrees

	GrowthsDiffer Code = "growths-differ" // front and back seam below the underarm grow unlike, by Amount
	BindsBelow    Code = "binds-below"    // At that place the garment lacks Amount around, Other on each side
	CapEaseLow    Code = "cap-ease-low"   // the cap is longer than the armhole by Amount, less than the usual Other
	CapEaseHigh   Code = "cap-ease-high"  // ... more than the usual Other

	CapImpossible     Code = "cap-impossible"     // a half-cap of Amount cannot reach over Other wide and Third high
	ArmholeImpossible Code = "armhole-impossible" // the same of an armhole over Other out and Third down
	LeanImpossible    Code = "lean-impossible"    // a seam of Amount cannot lean in by Other
	OutOfReach        Code = "out-of-reach"       // no turn about the pin reaches a pivot of Amount; or an inward slide of Other leaves no curve; it may follow from Answer

	GirthUnusual    Code = "girth-unusual"     // Answer, which is Amount, is outside what was measured on people
	ArmForBust      Code = "arm-for-bust"      // arm and bust are out of proportion: Answer, which is Amount, beside Other
	AnswerDoubted   Code = "answer-doubted"    // Answer, which is Amount, is outside a bound of the pattern, or does not go with the answer that is Other
	SizesFall       Code = "sizes-fall"        // a width of a larger size of the pattern is less than that of a smaller one
	EaseUnusual     Code = "ease-unusual"      // Answer, which is Amount, is far from the usual ease
	MeasuredLongAgo Code = "measured-long-ago" // more than six months
	SizeByHighBust  Code = "size-by-high-bust" // the bust is larger than the high bust by Amount
	StartLarger     Code = "start-larger"      // a size larger by Amount at the bust and Other at the sleeve
	ChildsNightwear Code = "childs-nightwear"  // the girths are a child's

	LimitWide       Code = "limit-wide"        // the pivot limit Amount is more than the usual Other, and used
	TighterThanBody Code = "tighter-than-body" // a woven garment comes out smaller than the body by Amount
)

// Codes of findings about the file itself; the sums do not know of it. They are here
// for their place among the others: see [ByUrgency].
const (
	ValueUnreadable Code = "value-unreadable"      // a value is there and cannot be read
	UnknownKey      Code = "unknown-key"           // a key that no answer has; it is kept
	NotWritten      Code = "not-written"           // the file is opened read-only
	BodyChanged     Code = "body-changed-since"    // the body is measured otherwise in the file that it was taken from
	PatternChanged  Code = "pattern-changed-since" // the pattern is
)

// Finding is one thing that the person should know.
type Finding struct {
	Code   Code
	Level  Level
	About  Subject
	Amount units.Length
	Other  units.Length
	Third  units.Length
	Answer Answer
	// Missing are the answers that would tell what is not known.
	Missing []Answer
	Degrees float64
	At      Place
	Ways    []Way
	Doubt
}

// Whole tells that something is asked, and every answer is there that it needs.
func (p Plan) Whole() bool { return !p.Open && (p.Sleeve.Asked() || p.Bust.Asked()) }
