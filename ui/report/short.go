package report

import (
	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// shortWords are findings where there is room for a few words, behind what they are about;
// those that doubt an answer and those of [Finding.Short] say it by that. Codes are for
// programs.
var shortWords = map[calc.Code]string{
	calc.ValueUnreadable: "cannot be read", calc.UnknownKey: "unknown key", calc.NotWritten: "read-only",
	calc.BodyChanged: "body measured again elsewhere", calc.PatternChanged: "pattern measured again elsewhere",
	calc.NothingAsked: "no girth yet", calc.SizesFall: "sizes contradict each other", calc.AnswerMissing: "answer missing", calc.WidthImpossible: "width impossible",
	calc.BodiceAsSleeve: "bodice measured like the sleeve", calc.LengthAssumed: "taken as short", calc.MeasuredDifferently: "sleeve and bodice measured in two ways",
	calc.MeasuredLongAgo: "measured long ago", calc.ArmsDiffer: "arms differ", calc.SizeByHighBust: "size by the high bust", calc.ChildsNightwear: "perhaps a child's",
	calc.FitsAlready: "fits already", calc.ComesIn: "comes in", calc.PivotOnly: "pivots only", calc.PivotAndSlide: "pivots and slides",
	calc.SlideOnly: "slides only", calc.SlideMoved: "slide moved", calc.FollowsUnasked: "changes to match", calc.ExtraEase: "larger than asked",
	calc.TooFarIn: "smaller than asked", calc.PivotsBack: "pivots back", calc.CapTakesSlide: "cap takes the slide",
	calc.ShortAtLine: "narrower at the line", calc.OutlineUnknown: "width at the line not known", calc.BustLineAssumed: "bust line not measured",
	calc.BustLineImpossible: "bust line impossible", calc.NarrowerAtCorners: "narrower at the underarm", calc.SharpBend: "seam bends sharply",
	calc.CapImpossible: "cap impossible", calc.ArmholeImpossible: "armhole impossible", calc.LeanImpossible: "seam leans too far", calc.OutOfReach: "out of reach",
	calc.CapEaseLow: "cap ease low", calc.CapEaseHigh: "cap ease high",
	calc.GrowthsDiffer: "seams gain different lengths", calc.TighterThanBody: "tighter than the body", calc.LimitWide: "wide pivot limit", calc.StartLarger: "start from a larger size", calc.SlideFar: "slide too far",
}

// aboutNothing are subjects that go without saying in a few words.
var aboutNothing = map[string]bool{"": true, wording.SubjectWords[calc.OfSheet]: true}

// Short is the finding in two or three words: "elbow short", "front slide moved".
func (f Finding) Short() string {
	words, about := shortWords[f.Code], typeset.Plain(f.About) // a path of the file names its sizes
	if f.Doubts() {
		return forms.Fields[forms.KeyOf[f.from.Answer]].Words + " doubted"
	}
	switch f.Code {
	case calc.BindsBelow:
		return wording.PlaceWords[f.from.At] + " short"
	case calc.ShortAtLine:
		if f.from.Amount < 0 {
			words = "wider at the line"
		}
	case calc.CannotReach:
		words = "too small"
		if f.from.Amount < 0 {
			words = "too large"
		}
	case calc.CapTakesSlide, calc.CapEaseLow, calc.CapEaseHigh, calc.CapImpossible, calc.ArmholeImpossible, calc.ArmsDiffer,
		calc.BustLineAssumed, calc.BustLineImpossible, calc.SizeByHighBust, calc.BodiceAsSleeve:
		about = ""
	case calc.PivotOnly, calc.PivotAndSlide, calc.SlideOnly, calc.FollowsUnasked, calc.PivotsBack, calc.ComesIn, calc.GrowthsDiffer, calc.SharpBend, calc.OutOfReach:
		if about == wording.SubjectWords[calc.OfBust] { // it is done to the piece
			about = WordsOfPiece(calc.OfBust).Name
		}
	}
	if aboutNothing[about] {
		return words
	}
	return about + " " + words
}
