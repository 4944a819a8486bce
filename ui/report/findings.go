package report

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
)

// The findings in words. What each code means is said in calc; here it becomes
// a sentence that a person would say at the table.

// PieceWords names the piece that a subject belongs to, its seam, the piece and
// seam that it is sewn to, the seam below the underarm, where that ends, the girth and the
// line where it is measured, and what of its seam a pivot takes from.
type PieceWords struct{ Name, Seam, otherName, otherSeam, Below, end, girth, line, Height string }

// WordsOfPiece are the words of the piece that a subject belongs to.
func WordsOfPiece(s calc.Subject) PieceWords {
	switch s {
	case calc.OfSleeve, calc.OfSleeveFront, calc.OfSleeveBack:
		return PieceWords{"sleeve", "cap", "bodice", "armhole", "underarm seam", "hem", "bicep", "bicep line", "height"}
	}
	return PieceWords{"bodice", "armhole", "sleeve", "cap", "side seam", "waist", "bust", "bust line", "depth"}
}

// findingText is the sentence of a finding.
func findingText(f calc.Finding, in calc.Input, sc units.Scale) string {
	amount, other := amountWords(f, sc), sc.Format(f.Other)
	p := WordsOfPiece(f.About)
	about := wording.SubjectWords[f.About]
	switch f.Code {
	case calc.NothingAsked:
		return "No girth is entered yet: measure the upper arm, the bust, or both."
	case calc.AnswerMissing:
		return missingText(f.Answer)
	case calc.WidthImpossible:
		return fmt.Sprintf("After allowances and take-off, %s is left of the %s pattern: a measurement must be wrong.",
			sc.Format(f.Amount), p.Name)
	case calc.ArmsDiffer:
		return fmt.Sprintf("The arms differ by %s; the larger one counts.", amount)
	case calc.BodiceAsSleeve:
		return fmt.Sprintf("The bodice is taken as measured like the sleeve: %s. If it was not, say so at the bodice.", measuredWords(in.Bodice.Measured, in.Bodice.Allowance, sc))
	case calc.LengthAssumed:
		return "The sleeve is taken as short: say so if it is long."
	case calc.MeasuredDifferently:
		return fmt.Sprintf("The sleeve was measured %s, the bodice %s: make sure that both are right.",
			measuredWords(in.Sleeve.Measured, in.Sleeve.Allowance, sc), measuredWords(in.Bodice.Measured, in.Bodice.Allowance, sc))
	case calc.FitsAlready:
		return fmt.Sprintf("The %s has the girth and the ease asked for: nothing to alter.", p.Name)
	case calc.ComesIn:
		return fmt.Sprintf("The %s pattern is %s larger than asked, so it comes in.", p.Name, amount)
	case calc.PivotOnly:
		return fmt.Sprintf("The %s pivots and does not slide: the %s keeps its length.", p.Name, p.Seam)
	case calc.PivotAndSlide, calc.SlideOnly:
		return slideText(f, p, amount, in.Method.Armhole == calc.KeepArmhole)
	case calc.SlideFar:
		inward := ""
		if f.Amount < 0 {
			inward = " inward"
		}
		text := fmt.Sprintf("The slide is %s%s a side, over %s (our bound): ", amount, inward, other)
		if f.Level == calc.Stop {
			return text + "do not alter so far."
		}
		return text + "another pattern size is easier."
	case calc.SlideMoved:
		return fmt.Sprintf("A slide of %s is outside the %s range, so it was moved to %s.", sc.Format(f.Amount), about, other)
	case calc.FollowsUnasked:
		return fmt.Sprintf("No %s is given, but the %s %s by %s: its %s has to match the %s.",
			p.girth, p.Name, grows(f.Amount), amount, p.Seam, p.otherSeam) + turnedInstead(f, sc)
	case calc.ExtraEase:
		return fmt.Sprintf("The %s comes out %s larger than asked.", about, amount) + because(f, p)
	case calc.TooFarIn:
		return fmt.Sprintf("The %s comes out %s smaller than asked: it matches the %s.", about, amount, p.otherName)
	case calc.PivotsBack:
		return fmt.Sprintf("To keep its width the %s pivots the other way by up to %s; its %s still changes by the slide. Few books do this.",
			p.Name, amount, p.Seam)
	case calc.CapTakesSlide:
		usual := calc.UsualCapEase(in.Sleeve.Style, in.Fabric)
		text := fmt.Sprintf("The armhole is kept, so the cap gets %s longer, to be eased in.", amount)
		if usual.Bounded {
			text += " Usually a cap of this style takes at most " + wording.UsualOne(usual.High, sc) + " in all."
		}
		return text
	case calc.CannotReach:
		return missedText(f, about, amount, in.Method.Armhole == calc.KeepArmhole)
	case calc.GrowthsDiffer:
		return fmt.Sprintf("Front and back %ss gain different lengths (%s apart): true them at the %s.", p.Below, amount, p.end)
	case calc.OutlineUnknown:
		return fmt.Sprintf("What the %s measures at the %s is not known without these: %s.", p.Name, p.line, missingWords(f.Missing))
	case calc.BustLineAssumed:
		return "The bust line is taken at the underarm: measure how far below the underarm corner it lies."
	case calc.BustLineImpossible:
		return fmt.Sprintf("A bust line %s below the underarm does not lie on a side seam of %s; it is taken at the underarm.", amount, other)
	case calc.NarrowerAtCorners:
		return cornersText(f, sc)
	case calc.SharpBend:
		return fmt.Sprintf("The new %s bends by %.0f degrees, over 15 (our bound): smooth it with care.", p.Below, f.Degrees)
	case calc.CapEaseLow, calc.CapEaseHigh:
		return capEaseText(f, sc)
	case calc.CapImpossible, calc.ArmholeImpossible:
		return impossibleText(f, p, about, sc)
	case calc.LeanImpossible:
		return fmt.Sprintf("%s: a seam of %s cannot lean in by %s; one of these widths or the seam must be wrong.",
			typeset.Capitalised(about), amount, other)
	case calc.OutOfReach:
		if f.Other != 0 {
			return fmt.Sprintf("No %s is short enough for a slide of %s inward: the straight way from the pin to the new underarm corner is longer.", p.Seam, other)
		}
		return fmt.Sprintf("No turn about the pin reaches a pivot of %s on the %s: the corner never comes there.",
			sc.Format(f.Amount), p.Name)
	case calc.MeasuredLongAgo:
		return "Measured more than six months ago: measure again."
	case calc.SizeByHighBust:
		return fmt.Sprintf("The bust is %s larger than the high bust: choose the smaller pattern size, by the high bust, and widen "+
			"at the bust.", amount)
	case calc.StartLarger:
		return fmt.Sprintf("Both pieces need far more than the limits allow: start from a size about %s larger at the bust and %s at the sleeve.",
			amount, other)
	case calc.ChildsNightwear:
		return "These can be a child's girths. Nightwear that is lawful because it fits tightly (in the United States 16 CFR 1615 and 1616) " +
			"may not be so once widened; other countries have their own rules. Ask the local ones." + grownUpText(f.Slips)
	case calc.LimitWide:
		return fmt.Sprintf("A %s side pivots by more than %s, the usual limit; yours is %s. A wide turn lowers the %s.",
			p.Name, wording.UsualOne(f.Other, sc), sc.Format(f.Amount), p.Seam)
	case calc.TighterThanBody:
		return fmt.Sprintf("The %s comes out %s smaller than the body, and woven cloth does not stretch.", about, amount)
	}
	return string(f.Code)
}

// amountWords is the amount of a finding, never as none.
func amountWords(f calc.Finding, sc units.Scale) string {
	amount := sc.Format(f.Amount.Abs())
	if wording.ShownAsNothing(amount) && f.Amount != 0 {
		amount = wording.Exact(f.Amount.Abs(), sc)
	}
	return amount
}

// missingText names the answer that an asked girth lacks. Worksheets from before this
// was asked have widths and do not say how they were measured.
func missingText(a calc.Answer) string {
	switch a {
	case calc.SleeveMeasured:
		return "Say whether the sleeve width was measured from seam line to seam line or from edge to edge; until then it makes no amount."
	case calc.BodiceMeasured:
		return "Say whether the bodice widths were measured from seam line to seam line or from edge to edge; until then they make no amount."
	}
	return typeset.Capitalised(theAnswer(a)) + " is missing."
}

// measuredWords say between what the tape lay, and what comes off for it.
func measuredWords(m calc.Measured, allowance units.Reading, sc units.Scale) string {
	switch {
	case m != calc.EdgeToEdge:
		return "from seam line to seam line"
	case !allowance.Known:
		return "from edge to edge"
	}
	return "from edge to edge with a seam allowance of " + wording.MarkedOff(allowance.Length, sc)
}

// turnedInstead says what turning a bodice that only follows would do, instead of
// sliding it: the same bust, and an armhole that does not match.
func turnedInstead(f calc.Finding, sc units.Scale) string {
	if f.About != calc.OfBust || f.Other == 0 {
		return ""
	}
	change := "shorter"
	if f.Other < 0 {
		change = "longer"
	}
	return fmt.Sprintf(" Turning the bodice instead of sliding it would give the same bust, but an armhole %s %s than the cap.", sc.Format(f.Other.Abs()), change)
}

// missingWords lists answers that were not given.
func missingWords(answers []calc.Answer) string {
	words := make([]string, len(answers))
	for i, a := range answers {
		words[i] = forms.Fields[forms.KeyOf[a]].Words
	}
	return strings.Join(words, ", ")
}

// cornersText says what the sleeve measures across its new corners, and where they
// lie.
func cornersText(f calc.Finding, sc units.Scale) string {
	lies := func(lift units.Length) string {
		if lift < 0 {
			return sc.Format(-lift) + " below"
		}
		return sc.Format(lift) + " above"
	}
	front, back := lies(f.Other), lies(f.Third)
	where := front + " the bicep line"
	if front != back {
		where = "in front " + front + ", in back " + back + " the bicep line"
	}
	return fmt.Sprintf("At the new underarm, %s, the sleeve measures %s.", where, sc.Format(f.Amount))
}

func grows(l units.Length) string {
	if l < 0 {
		return "shrinks"
	}
	return "grows"
}

// because says why a girth is larger than asked: it matches the other, or it is kept.
func because(f calc.Finding, p PieceWords) string {
	if f.Level == calc.Note {
		return " It is already cut."
	}
	return fmt.Sprintf(" It matches the %s.", p.otherName)
}

func slideText(f calc.Finding, p PieceWords, amount string, kept bool) string {
	does := "pivots and slides"
	if f.Code == calc.SlideOnly {
		does = "slides and does not pivot"
	}
	change := "longer"
	if f.Amount < 0 {
		change = "shorter"
	}
	text := fmt.Sprintf("The %s %s: its %s gets %s %s in all", p.Name, does, p.Seam, amount, change)
	if kept {
		return text + ", and the armhole stays as it is."
	}
	return text + ", and so must the " + p.otherSeam + "."
}

func missedText(f calc.Finding, about, amount string, kept bool) string {
	even, by := "Even with pivot and slide", "too small"
	if kept {
		even = "With the armhole kept"
	}
	if f.Amount < 0 {
		by = "too large"
	}
	return fmt.Sprintf("%s, the %s is %s %s.", even, about, amount, by)
}

func capEaseText(f calc.Finding, sc units.Scale) string {
	usual := "usually at least "
	if f.Code == calc.CapEaseHigh {
		usual = "usually at most "
	}
	return "The cap is " + CapBesideArmhole(f.Amount, sc) + "; " + usual + wording.UsualOne(f.Other, sc) + " for this style."
}

// CapBesideArmhole says what a cap ease means: "1/2 in longer than the armhole". A cap can be
// too short, and nobody eases in less than nothing.
func CapBesideArmhole(ease units.Length, sc units.Scale) string {
	switch amount := sc.Format(ease.Abs()); {
	case ease == 0:
		return "as long as the armhole"
	case ease < 0:
		return amount + " shorter than the armhole"
	default:
		return amount + " longer than the armhole"
	}
}

func impossibleText(f calc.Finding, p PieceWords, about string, sc units.Scale) string {
	reaches := "cannot reach"
	if f.Amount > f.Other+f.Third {
		reaches = "is longer than the way"
	}
	return fmt.Sprintf("%s: a half-%s of %s %s across a side %s wide and %s high; one of the three is wrong.",
		typeset.Capitalised(about), p.Seam, sc.Format(f.Amount), reaches, sc.Number(f.Other), sc.Number(f.Third))
}

// slipWords are the slips that make a child's girths of a grown-up's.
var slipWords = map[calc.Slip]string{calc.InchesAsCentimetres: "inches typed as centimetres", calc.HalfAGirth: "half a girth"}

// grownUpText asks whether a grown-up's girths were typed amiss.
func grownUpText(slips []calc.Slip) string {
	if len(slips) == 0 {
		return ""
	}
	return " If the wearer is grown up: " + slipList(slips) + "?"
}

func slipList(slips []calc.Slip) string {
	words := make([]string, len(slips))
	for i, s := range slips {
		words[i] = slipWords[s]
	}
	return strings.Join(words, ", or ")
}

func theAnswer(a calc.Answer) string { return "the " + forms.Fields[forms.KeyOf[a]].Words }

// Finding is a finding ready to be shown.
type Finding struct {
	Code  calc.Code
	Level calc.Level
	About string
	Text  string
	Ways  []Way

	Accept string        // what it means to accept it as it is, which is no way out; "" where that is no choice
	Ease   units.Reading // ... and the ease that comes out then

	Key   string // the path of the answer that it is about, "" for none
	Guess *Guess // what may have been meant by that answer, nil for no guess

	from calc.Finding // of the sums, where it is one
}

// rank is what decides how soon it is heard.
func (f Finding) rank() calc.Rank {
	return calc.Rank{Level: f.Level, Code: f.Code, Causes: f.from.Causes}
}

// Same tells that two findings say the same of the same, whatever the amounts.
func (f Finding) Same(other Finding) bool {
	return f.Code == other.Code && f.About == other.About && f.Level == other.Level
}

// Leveled is the finding behind what it asks, "check: ...".
func (f Finding) Leveled() string { return f.Asks() + ": " + f.Text }

// Asks is what a finding asks of the reader in a word: note, check or stop.
func (f Finding) Asks() string { return strings.ToLower(LevelWords[f.Level]) }

// LevelWords say what a finding asks of the reader; files and programs have the level.
var LevelWords = map[calc.Level]string{calc.Note: "Note", calc.Warn: "Check", calc.Stop: "Stop"}
