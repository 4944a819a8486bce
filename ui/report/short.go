package report

import (
	"strings"

	"capscye/calc"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// shortWords are findings where there is room for two or three words, behind what they
// are about. A code that is not here says itself.
var shortWords = map[calc.Code]string{
	calc.ValueUnreadable: "cannot be read", calc.UnknownKey: "unknown key", calc.NotWritten: "read-only",
	calc.BodyChanged: "body measured again elsewhere", calc.PatternChanged: "pattern measured again elsewhere",
	calc.NothingAsked: "no girth yet", calc.SizesFall: "sizes contradict each other", calc.AnswerMissing: "answer missing", calc.WidthImpossible: "width impossible",
	calc.FitsAlready: "fits already", calc.ComesIn: "comes in", calc.PivotOnly: "pivots only", calc.PivotAndSlide: "pivots and slides",
	calc.SlideOnly: "slides only", calc.SlideMoved: "slide moved", calc.FollowsUnasked: "changes unasked", calc.ExtraEase: "larger than asked",
	calc.TooFarIn: "smaller than asked", calc.PivotsBack: "pivots back", calc.CapTakesSlide: "cap takes the slide",
	calc.ShortAtLine: "narrower at the line", calc.CapEaseLow: "cap ease low", calc.CapEaseHigh: "cap ease high",
	calc.GrowthsDiffer: "seams gain different lengths", calc.TighterThanBody: "tighter than the body", calc.LimitWide: "wide pivot limit", calc.StartLarger: "start from a larger size", calc.SlideFar: "slide too far",
}

// aboutNothing are subjects that go without saying in a few words.
var aboutNothing = map[string]bool{"": true, wording.SubjectWords[calc.OfSheet]: true}

// Short is the finding in two or three words: "elbow short", "front slide moved".
func (f Finding) Short() string {
	words, about := shortWords[f.Code], typeset.Plain(f.About) // a path of the file names its sizes
	if words == "" {
		words = strings.ReplaceAll(string(f.Code), "-", " ")
	}
	if f.doubts() {
		return f.doubted + " doubted"
	}
	switch f.Code {
	case calc.BindsBelow:
		return wording.PlaceWords[f.at] + " short"
	case calc.CannotReach:
		words = "too small"
		if f.tooLarge {
			words = "too large"
		}
	case calc.CapTakesSlide, calc.CapEaseLow, calc.CapEaseHigh, calc.CapImpossible, calc.ArmholeImpossible, calc.ArmsDiffer,
		calc.BustLineAssumed, calc.BustLineImpossible, calc.SizeByHighBust:
		about = ""
	}
	if aboutNothing[about] {
		return words
	}
	return about + " " + words
}
