package report

import "capscye/calc"

// CodeWords is a code of a finding, with the levels that it comes with and what it
// says.
type CodeWords struct {
	Code   calc.Code
	Levels []calc.Level
	Says   string // one sentence
}

// LevelMeanings say what each level asks of the reader.
var LevelMeanings = map[calc.Level]string{calc.Note: "good to know", calc.Warn: "check before cutting", calc.Stop: "do not cut"}

var (
	note       = []calc.Level{calc.Note}
	warn       = []calc.Level{calc.Warn}
	stop       = []calc.Level{calc.Stop}
	warnOrNote = []calc.Level{calc.Warn, calc.Note}
)

// Codes are all the codes, the gravest first, then in the order in which they come up.
var Codes = []CodeWords{
	{calc.ValueUnreadable, []calc.Level{calc.Stop, calc.Warn}, "A value of the file cannot be read; stop where the amounts need it."},
	{calc.WidthImpossible, stop, "Allowances and take-off leave nothing of the pattern."},
	{calc.CannotReach, stop, "Pivot and slide alone cannot give what is asked; it says how much is missing, and the ways out, or the doubted answer that may be why."},
	{calc.OutOfReach, stop, "No turn about the pin gives the pivot, or no curve is short enough for the slide."},

	{calc.AnswerMissing, warn, "A girth is given, and an answer that it needs is missing."},
	{calc.MeasuredDifferently, warn, "Sleeve and bodice are said to be measured in two ways, or with two seam allowances."},
	{calc.SlideFar, []calc.Level{calc.Stop, calc.Warn}, "A slide is over 2 in (5 cm) a side, or over 4 in (10 cm), which stops; both bounds are ours."},
	{calc.GirthUnusual, warn, "A girth is outside what was measured on adults (NHANES 2013-2014, ANSUR II); it guesses at the slip."},
	{calc.ArmForBust, warn, "Arm and bust are out of proportion, beyond 6,068 people (ANSUR II); it guesses at the slip."},
	{calc.AnswerDoubted, warn, "A measurement does not go with another one, or is outside a bound of ours; it guesses at the slip."},
	{calc.SizesFall, warn, "A width is smaller in a larger size of the pattern than in a smaller one."},
	{calc.EaseUnusual, warn, "An ease is less than half the least or more than twice the most that is usual; the bounds are ours."},
	{calc.CapEaseLow, warn, "The cap ease comes out below the usual range of the sleeve style."},
	{calc.CapEaseHigh, warn, "The cap ease comes out above the usual range of the sleeve style."},
	{calc.BindsBelow, warn, "Elbow, wrist, waist or hip is too tight where the seam tapers back; it says how much each side must go out there."},
	{calc.CapImpossible, warn, "A measured half of the cap cannot reach from the underarm to the shoulder dot."},
	{calc.ArmholeImpossible, warn, "A measured half of the armhole cannot reach from the pin to the underarm corner."},
	{calc.LeanImpossible, warn, "A seam cannot lean in as far as its widths say."},
	{calc.BustLineImpossible, warn, "The bust line cannot lie so far down the side seam; it is taken at the underarm."},
	{calc.StartLarger, warn, "Both pieces need more than twice what the limits allow: start from a larger size."},
	{calc.FollowsUnasked, warn, "A girth that was not given changes, because its seam has to match the other piece."},
	{calc.TooFarIn, warn, "A piece that comes in matches the other, and comes out smaller than asked."},
	{calc.PivotsBack, warn, "To keep its width, a side pivots against its need."},
	{calc.CapTakesSlide, warn, "The armhole is kept, and the cap has more to ease in."},
	{calc.LimitWide, warn, "A side pivots by more than the usual limit."},
	{calc.TighterThanBody, warn, "The garment is woven, and comes out smaller than the body."},
	{calc.ShortAtLine, warnOrNote, "Tapered from its corners, a piece is narrower at the line of its girth than asked, or wider where it comes in; a note below one ruler mark."},
	{calc.ExtraEase, warnOrNote, "A piece comes out larger than asked: it matches the other, or it is already cut, which is a note."},
	{calc.BodyChanged, warnOrNote, "The worksheet that the body was taken from has other measurements now; a note where the body was measured later here."},
	{calc.PatternChanged, warn, "The worksheet that the pattern was taken from has other measurements now."},

	{calc.NothingAsked, note, "Neither bicep nor bust is given yet."},
	{calc.ArmsDiffer, note, "The arms differ, and the larger one counts."},
	{calc.BodiceAsSleeve, note, "How the bodice was measured, or its seam allowance, is not given; it is taken as the sleeve's."},
	{calc.LengthAssumed, note, "Nobody said whether the sleeve is long or short; it is altered as a short one."},
	{calc.FitsAlready, note, "There is nothing to alter."},
	{calc.ComesIn, note, "The pattern is larger than asked, so it comes in."},
	{calc.PivotOnly, note, "The piece pivots only: cap and armhole keep their length."},
	{calc.PivotAndSlide, note, "The piece pivots and slides: cap and armhole change by the slide."},
	{calc.SlideOnly, note, "The piece slides only: cap and armhole change by the slide, and nothing turns."},
	{calc.SlideMoved, note, "The chosen slide is outside the range of slides that work, and was moved into it."},
	{calc.OutlineUnknown, note, "What the piece measures at the line of its girth is not known; it says which measurements would tell."},
	{calc.BustLineAssumed, note, "How far the bust line lies below the underarm is not given; it is taken at the underarm."},
	{calc.NarrowerAtCorners, note, "What the sleeve measures across its new underarm corners, above the bicep line."},
	{calc.SharpBend, note, "The seam below the underarm bends by more than 15 degrees (our bound)."},
	{calc.GrowthsDiffer, note, "The seams below the underarm gain different lengths, front and back: true them at the end."},
	{calc.MeasuredLongAgo, note, "The body was measured more than six months ago (Texas Agricultural Extension Service, E-372)."},
	{calc.SizeByHighBust, note, "The bust is larger than the high bust by 2 in or more: choose the pattern size by the high bust (the same E-372)."},
	{calc.ChildsNightwear, note, "The girths can be a child's: mind the caution about nightwear."},
	{calc.UnknownKey, note, "The file has a key that the program does not know; it is left in the file."},
	{calc.NotWritten, note, "The file is opened for reading only; it says why."},
}
