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
// that other programs read, and are listed in the README.
type Code string

// The codes. Amount and Other of a [Finding] mean what is said here.
const (
	NothingAsked    Code = "nothing-asked"    // neither a bicep nor a bust was entered
	AnswerMissing   Code = "answer-missing"   // a girth was asked, and Answer is needed for it
	WidthImpossible Code = "width-impossible" // after allowances and take-off Amount is left of the pattern
	ArmsDiffer      Code = "arms-differ"      // by Amount; the larger decides

	FitsAlready   Code = "fits-already"    // the need is nothing
	ComesIn       Code = "comes-in"        // the pattern is larger than asked by Amount
	PivotOnly     Code = "pivot-only"      // cap and armhole keep their length
	PivotAndSlide Code = "pivot-and-slide" // they get longer by Amount in all
	SlideOnly     Code = "slide-only"      // the same, without any pivot

	SlideMoved     Code = "slide-moved"     // the slide Amount lay outside the band and became Other
	FollowsUnasked Code = "follows-unasked" // the girth was not asked and changes by Amount
	ExtraEase      Code = "extra-ease"      // it comes out larger than asked by Amount
	TooFarIn       Code = "too-far-in"      // it comes out smaller than asked by Amount
	PivotsBack     Code = "pivots-back"     // hold: a side turns the other way, Amount at the most
	CapTakesSlide  Code = "cap-takes-slide" // the kept armhole stays shorter by Amount; the cap eases it in
	CannotReach    Code = "cannot-reach"    // what is asked for is missed by Amount around the body

	LimitWide       Code = "limit-wide"        // the pivot limit Amount is more than the usual Other, and used
	TighterThanBody Code = "tighter-than-body" // a woven garment comes out smaller than the body by Amount
)

// Finding is one thing that the person should know.
type Finding struct {
	Code   Code
	Level  Level
	About  Subject
	Amount units.Length
	Other  units.Length
	Answer Answer
	Ways   []Way
}

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
	AlterTheBodice
	LetItOut
	HoldIt
	MeasureTheSeams
	MeasureTheGirth
)

// Whole tells that every answer is there that the asked girths need.
func (p Plan) Whole() bool {
	for _, f := range p.Findings {
		if f.Code == AnswerMissing || f.Code == NothingAsked {
			return false
		}
	}
	return true
}

// Highest is the gravest level among the findings, and whether there are any.
func (p Plan) Highest() (highest Level, any bool) {
	for _, f := range p.Findings {
		highest, any = max(highest, f.Level), true
	}
	return highest, any
}
