package ui

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/units"
)

// The findings in words. What each code means is said in calc; here it becomes
// a sentence that a person would say at the table.

// valueUnreadable is the code of an answer that the file has and nobody can
// read: the sums do not know of it, so it is added here.
const valueUnreadable calc.Code = "value-unreadable"

// wayWords are the ways out.
var wayWords = map[calc.Way]string{
	calc.OtherSize: "start from another pattern size", calc.OtherShare: "share the need otherwise between front and back",
	calc.WiderLimit: "allow a wider pivot", calc.Gusset: "set in a gusset", calc.SlashAndSpread: "slash and spread",
	calc.LessEase: "ask for less ease", calc.AlterTheBodice: "alter the bodice too, if it can still be",
	calc.LetItOut: "let the following piece out", calc.HoldIt: "hold the following piece, and see what that turns",
	calc.MeasureTheSeams: "measure cap and armhole: the cap may have room",
	calc.MeasureTheGirth: "measure that girth too, and see whether the change is welcome",
}

func waysOut(ways []calc.Way) []string {
	words := make([]string, len(ways))
	for i, w := range ways {
		words[i] = wayWords[w]
	}
	return words
}

// pieceWords names the piece that a subject belongs to, its seam, and the piece
// and seam that it is sewn to.
type pieceWords struct{ name, seam, otherName, otherSeam string }

func wordsOfPiece(s calc.Subject) pieceWords {
	switch s {
	case calc.OfSleeve, calc.OfSleeveFront, calc.OfSleeveBack:
		return pieceWords{"sleeve", "cap", "bodice", "armhole"}
	}
	return pieceWords{"bodice", "armhole", "sleeve", "cap"}
}

// findingText is the sentence of a finding.
func findingText(f calc.Finding, sc units.Scale) string {
	amount, other := sc.Format(f.Amount.Abs()), sc.Format(f.Other)
	p := wordsOfPiece(f.About)
	about := subjectWords[f.About]
	switch f.Code {
	case calc.NothingAsked:
		return "No girth is entered yet: measure the upper arm, the bust, or both."
	case calc.AnswerMissing:
		return fmt.Sprintf("The %s is asked for, but %s is missing.", about, theAnswer(f.Answer))
	case calc.WidthImpossible:
		return fmt.Sprintf("After allowances and take-off, %s is left of the %s pattern: a measurement must be wrong.",
			sc.Format(f.Amount), p.name)
	case calc.ArmsDiffer:
		return fmt.Sprintf("The arms differ by %s; the larger decides.", amount)
	case calc.FitsAlready:
		return fmt.Sprintf("The %s has the girth and the ease asked for: nothing to alter.", p.name)
	case calc.ComesIn:
		return fmt.Sprintf("The %s pattern is %s larger than asked, so it comes in.", p.name, amount)
	case calc.PivotOnly:
		return fmt.Sprintf("The %s pivots and does not slide: the %s keeps its length.", p.name, p.seam)
	case calc.PivotAndSlide, calc.SlideOnly:
		return slideText(f, p, amount)
	case calc.SlideMoved:
		return fmt.Sprintf("A slide of %s lies outside the %s band and was moved to %s.", sc.Format(f.Amount), about, other)
	case calc.FollowsUnasked:
		return fmt.Sprintf("The %s was not asked, but %s by %s: its %s has to match the %s.",
			about, grows(f.Amount), amount, p.seam, p.otherSeam)
	case calc.ExtraEase:
		return fmt.Sprintf("The %s comes out %s larger than asked.", about, amount) + because(f, p)
	case calc.TooFarIn:
		return fmt.Sprintf("The %s comes out %s smaller than asked: it follows the %s.", about, amount, p.otherName)
	case calc.PivotsBack:
		return fmt.Sprintf("Held: a %s side turns against its need, by %s at the most, while its %s changes by the slide. "+
			"That is geometry, not custom.", p.name, amount, p.seam)
	case calc.CapTakesSlide:
		return fmt.Sprintf("The armhole is kept, so the cap gets %s more cap ease to sew in; sources disagree how much a cap takes.", amount)
	case calc.CannotReach:
		return missedText(f, about, amount)
	case calc.LimitWide:
		return fmt.Sprintf("A %s side pivots by more than %s, the usual limit; yours is %s. A wide turn lowers the %s.",
			p.name, other, sc.Format(f.Amount), p.seam)
	case calc.TighterThanBody:
		return fmt.Sprintf("The %s comes out %s smaller than the body, and woven cloth does not stretch.", about, amount)
	}
	return string(f.Code)
}

func grows(l units.Length) string {
	if l < 0 {
		return "shrinks"
	}
	return "grows"
}

// because says why a girth is larger than asked: it follows, or it is kept.
func because(f calc.Finding, p pieceWords) string {
	if f.Level == calc.Note {
		return " It is already cut."
	}
	return fmt.Sprintf(" It follows the %s.", p.otherName)
}

func slideText(f calc.Finding, p pieceWords, amount string) string {
	does := "pivots and slides"
	if f.Code == calc.SlideOnly {
		does = "slides and does not pivot"
	}
	change := "longer"
	if f.Amount < 0 {
		change = "shorter"
	}
	return fmt.Sprintf("The %s %s: its %s gets %s %s in all, and so must the %s.", p.name, does, p.seam, amount, change, p.otherSeam)
}

func missedText(f calc.Finding, about, amount string) string {
	if f.Amount < 0 {
		return fmt.Sprintf("Pivot and slide leave the %s %s larger than asked.", about, amount)
	}
	return fmt.Sprintf("Pivot and slide leave the %s %s short of what is asked.", about, amount)
}

func theAnswer(a calc.Answer) string { return "the " + fields[keyOf[a]].words }

// finding is a finding ready to be shown.
type finding struct {
	code  calc.Code
	level calc.Level
	about string
	text  string
	ways  []string
}

// line is the finding in one paragraph, ways out behind it.
func (f finding) line() string {
	if len(f.ways) == 0 {
		return f.text
	}
	return f.text + " Ways out: " + strings.Join(f.ways, "; ") + "."
}
