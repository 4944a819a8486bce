package drill

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/calc/drill"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
)

// The words of the drill: invented wearers, what is known about them, what is
// asked, and what a wrong answer looks like.

var wearers = [drill.Wearers]string{
	"Amparo", "Brid", "Casimir", "Dagny", "Eluned", "Ferhat", "Gudrun", "Hyacinth",
	"Ilmari", "Jorinde", "Kavi", "Lubov", "Maelle", "Nnedi", "Oisin", "Pilvi",
}

var garments = [drill.Garments]string{
	"choir blouse", "archive coat", "beekeeper's tunic", "allotment shirt", "lantern walk jacket", "bell ringer's smock",
	"ferry steward's blouse", "puppeteer's jacket", "seed library dress", "night watch shirt", "printmaker's smock", "reading room cardigan",
}

// Scale is how the lengths of a problem are written.
func Scale(p drill.Problem) units.Scale {
	return units.Scale{System: p.System, Ruler: p.Input.Ruler}
}

// problemTitle is who it is for, and how lengths are written.
func problemTitle(p drill.Problem) string {
	return fmt.Sprintf("%s for %s, in %s, ruler %s", typeset.Capitalised(garments[p.Garment]), wearers[p.Wearer],
		wording.UnitWords(p.System), p.Input.Ruler)
}

// problemWords is what is known, a sentence or two for each thing that is
// measured; levels that do not use a thing do not speak of it.
func problemWords(p drill.Problem) []string {
	in, num := p.Input, Scale(p).Exact
	var lines []string
	if p.Level > 1 && in.Bicep.Known {
		girth := "Bicep " + num(in.Bicep.Length)
		if in.BicepOther.Known {
			girth += " on one arm, " + num(in.BicepOther.Length) + " on the other"
		}
		lines = append(lines, girth+", ease wanted "+num(in.BicepEase.Length)+".")
	}
	if p.Level > 1 && in.Bust.Known {
		lines = append(lines, "Bust "+num(in.Bust.Length)+", ease wanted "+num(in.BustEase.Length)+".")
	}
	if s := in.Sleeve; in.Bicep.Known {
		lines = append(lines, fmt.Sprintf("The sleeve, laid flat, is %s wide at the bicep line, %s.",
			num(s.Width.Length), betweenWords(s.Measured, s.Allowance, num)))
	}
	if in.Bust.Known {
		lines = append(lines, bodiceWords(in.Bodice, num))
	}
	if in.Method.Armhole == calc.KeepArmhole {
		lines = append(lines, keptWords(in, num))
	}
	if p.Level > 2 {
		lines = append(lines, limitWords(in.Method, num))
	}
	if p.Level > 1 {
		lines = append(lines, shareWords(in.Method))
	}
	if p.Level == drill.Levels && in.Method.Armhole != calc.KeepArmhole { // whether it does is not told
		lines = append(lines, "What comes in is written with a minus.")
	}
	return lines
}

func betweenWords(m calc.Measured, allowance units.Reading, num func(units.Length) string) string {
	if m == calc.EdgeToEdge {
		return "measured from cut edge to cut edge; the seam allowance is " + num(allowance.Length)
	}
	return "measured from seam line to seam line; the seam allowance is " + num(allowance.Length)
}

func bodiceWords(b calc.BodiceInput, num func(units.Length) string) string {
	from := "from the fold to the side"
	if b.Crossings == 2 {
		from = "from the centre seam to the side"
	}
	words := fmt.Sprintf("The bodice, laid flat, %s: front %s, back %s, %s.",
		from, num(b.Front.Length), num(b.Back.Length), betweenWords(b.Measured, b.Allowance, num))
	dart, pleat := "", ""
	if b.TakeOffFront.Known {
		dart = fmt.Sprintf("a dart of %s on the front", num(b.TakeOffFront.Length))
	}
	if b.TakeOffBack.Known {
		pleat = fmt.Sprintf("a pleat of %s on the back", num(b.TakeOffBack.Length))
	}
	switch {
	case dart != "" && pleat != "":
		words += " The tape crossed " + dart + " and " + pleat + "."
	case dart+pleat != "":
		words += " The tape crossed " + dart + pleat + "."
	}
	return words
}

// keptWords are the seams of a cap whose armhole is cut already. How much a set-in cap
// takes is [calc.UsualCapEase].
func keptWords(in calc.Input, num func(units.Length) string) string {
	return fmt.Sprintf("The bodice is cut: keep its armhole. Along the seam lines the cap is %s in front and %s in back, the armhole %s and %s. "+
		"A set-in cap takes at most %s of ease.",
		num(in.Sleeve.CapFront.Length), num(in.Sleeve.CapBack.Length), num(in.Bodice.ArmholeFront.Length), num(in.Bodice.ArmholeBack.Length),
		num(calc.UsualCapEase(in.Sleeve.Style, in.Fabric).High))
}

func limitWords(m calc.Method, num func(units.Length) string) string {
	slide := "use the least slide"
	if m.Slide == calc.SlideEven {
		slide = "slide half of what a sleeve side needs"
	}
	if m.LimitSleeve == m.LimitBodice || m.Armhole == calc.KeepArmhole {
		return fmt.Sprintf("Pivot at most %s a side; %s.", num(m.LimitSleeve), slide)
	}
	return fmt.Sprintf("Pivot at most %s a sleeve side and %s a bodice side; %s.", num(m.LimitSleeve), num(m.LimitBodice), slide)
}

func shareWords(m calc.Method) string {
	switch {
	case m.ShareSleeve == units.Half && m.ShareBust == units.Half:
		return "Front and back share each need equally."
	case m.ShareSleeve == m.ShareBust:
		return fmt.Sprintf("The fronts take %s of each need, the backs the rest.", m.ShareSleeve)
	}
	return fmt.Sprintf("The front takes %s of the sleeve's need and %s of the bust's, the back the rest.", m.ShareSleeve, m.ShareBust)
}

// whose says whose figure is asked for: "each sleeve side", "the front of the bodice",
// "front and back".
func whose(q drill.Question) string {
	switch {
	case q.Alike && q.Figure.Of == calc.OfFront:
		return "front and back"
	case q.Alike && q.Figure.Of == calc.OfSleeveFront:
		return "each sleeve side"
	case q.Alike:
		return "each bodice side"
	}
	return "the " + wording.SubjectWords[q.Figure.Of]
}

// AskWords asks for a figure, as one person asks another.
func AskWords(q drill.Question, p drill.Problem) string {
	piece := map[calc.Subject]string{calc.OfSleeve: "sleeve", calc.OfBust: "bodice"}[q.Figure.Of]
	from := "fold to side seam"
	if p.Input.Bodice.Crossings == 2 {
		from = "centre seam to side seam"
	}
	switch q.Figure.Quantity {
	case calc.FrontWidth:
		return "How wide is the front, from " + from + ", between seam lines?"
	case calc.BackWidth:
		return "How wide is the back, from " + from + ", between seam lines?"
	case calc.FlatWidth:
		if q.Figure.Of == calc.OfBust {
			return "How wide is the bodice around the whole body, between seam lines?"
		}
		return "How wide is the sleeve, between seam lines?"
	case calc.Need:
		if piece != "" {
			return "How much must the " + piece + " gain in all?"
		}
		return "How much must " + whose(q) + " gain?"
	case calc.CapSeam:
		return "How long is the cap, front and back together?"
	case calc.ArmholeSeam:
		return "How long is the armhole, front and back together?"
	case calc.CapEase:
		return "What is the cap ease?"
	case calc.CapRoom:
		return "How much more can the cap take, front and back each?"
	case calc.EvenSlide:
		return "What is half of a sleeve side's need?"
	case calc.Slide:
		return "What is the " + slideKind(p.Input.Method) + " slide, " + strings.TrimPrefix(whose(q), "the ") + "?"
	case calc.Pivot:
		return "How much does " + whose(q) + " pivot?"
	case calc.SlideMark:
		return fmt.Sprintf("What slide do you mark%s, to the nearest %s? (Halves go up.)", ofHalf(q), p.Input.Ruler)
	case calc.PivotMark:
		return "What pivot do you mark on " + whose(q) + "? (Rounded total less marked slide.)"
	case calc.Finished, calc.FinishedMarked:
		if piece == "bodice" {
			return "How wide is the finished bodice around the whole body" + byMarks(q) + "?"
		}
		return "How wide is the finished sleeve" + byMarks(q) + "?"
	case calc.CapEaseAfter:
		return "What is the cap ease after the slide?"
	}
	return typeset.Capitalised(wording.FigureWords(q.Figure)) + "?"
}

// glossed are the words of the glossary that questions are about.
var glossed = map[calc.Quantity]string{
	calc.FrontWidth: "seam line", calc.BackWidth: "seam line", calc.FlatWidth: "flat width", calc.Need: "need",
	calc.CapSeam: "cap", calc.ArmholeSeam: "armhole", calc.CapEase: "cap ease", calc.CapRoom: "cap ease", calc.CapEaseAfter: "cap ease",
	calc.EvenSlide: "even", calc.Slide: "slide", calc.Pivot: "pivot", calc.SlideMark: "mark", calc.PivotMark: "mark",
	calc.Finished: "finished", calc.FinishedMarked: "finished",
}

// Word is the word of the glossary that the question at hand is about; "" where none is
// asked.
func (l *Lesson) Word() string {
	if l.Ended() || l.Finished() {
		return ""
	}
	_, q := l.Now()
	return glossed[q.Figure.Quantity]
}

func slideKind(m calc.Method) string {
	if m.Slide == calc.SlideEven {
		return "even"
	}
	return "least"
}

func byMarks(q drill.Question) string {
	if q.Figure.Quantity == calc.FinishedMarked {
		return ", by the marks"
	}
	return ""
}

// ofHalf names the half of a slide to mark where front and back differ.
func ofHalf(q drill.Question) string {
	if q.Alike {
		return ""
	}
	return " at the " + wording.SubjectWords[calc.Side(q.Figure.Of-calc.OfSleeveFront).Half().Subject()]
}

// stepKind is a kind of step, by which the score is kept.
type stepKind uint8

const (
	stepWidth stepKind = iota
	stepNeed
	stepShare
	stepSeams
	stepSlide
	stepPivot
	stepMarks
	stepOutcome
	stepKinds = iota
)

var stepKindWords = [stepKinds]string{"flat widths", "need", "each side's need", "cap and armhole", "slide", "pivot", "marks", "what comes out"}

func kindOfStep(f calc.Figure) stepKind {
	switch f.Quantity {
	case calc.FrontWidth, calc.BackWidth, calc.FlatWidth:
		return stepWidth
	case calc.CapSeam, calc.ArmholeSeam, calc.CapEase, calc.CapRoom, calc.CapEaseAfter:
		return stepSeams
	case calc.EvenSlide, calc.Slide:
		return stepSlide
	case calc.Pivot:
		return stepPivot
	case calc.SlideMark, calc.PivotMark:
		return stepMarks
	case calc.Finished, calc.FinishedMarked:
		return stepOutcome
	}
	if f.Of == calc.OfSleeve || f.Of == calc.OfBust {
		return stepNeed
	}
	return stepShare
}

// misstepWords say what went wrong, behind "it looks as if".
var misstepWords = [drill.MisstepCount]string{
	drill.AllowanceLeftOn:    "you left the allowances on",
	drill.AllowanceOnce:      "you took off one allowance: the tape crossed two edges",
	drill.AllowanceTwice:     "you took off two allowances: a fold has none",
	drill.AllowanceAdded:     "you added the allowances; take them off",
	drill.AllowanceNotInside: "you took off allowances, but the width was measured between seam lines",
	drill.TakeOffLeftIn:      "you left the dart or pleat in",
	drill.TakeOffAdded:       "you added the dart or pleat; take it off",
	drill.NotDoubled:         "you did not double: front and back together are half a body",
	drill.OneDoubled:         "you doubled only one of front and back",
	drill.PatternForgotten:   "you gave girth and ease together; take the pattern's width off",
	drill.EaseForgotten:      "you forgot the ease",
	drill.EaseTakenOff:       "you took the ease off; add it",
	drill.OtherWayRound:      "you subtracted the wrong way round",
	drill.WidthAsMeasured:    "you forgot to take off allowances or darts",
	drill.HalfTheBody:        "you took half a body's width from a whole body's girth",
	drill.SmallerArm:         "you used the smaller arm; the larger one counts",
	drill.NotDivided:         "you gave one side the whole need",
	drill.DividedByTwo:       "you divided by two: a bodice has four sides",
	drill.ShareOfWhole:       "you took the share of the whole need; take it of half: there are two fronts and two backs",
	drill.HalvedTwice:        "you halved once too often",
	drill.ShareExchanged:     "you gave front and back each other's share",
	drill.EvenShare:          "you gave front and back the same, though their shares differ",
	drill.LimitIgnored:       "you ignored the limit: a side pivots no further than that, and slides the rest",
	drill.OnlySleeveMatched:  "you matched only the sleeve; the bodice needs a larger slide",
	drill.OnlyBodiceMatched:  "you matched only the bodice; the sleeve needs a larger slide",
	drill.NothingPivoted:     "you slid the whole need of a side; pivot first, up to the limit",
	drill.LimitOffWholeNeed:  "you took the limit off the whole need; it is the limit of one side",
	drill.LimitForSlide:      "that is the limit, how much may pivot; the slide is what the limit leaves over",
	drill.BelowNothing:       "you gave a slide below zero: if the pivot is enough, nothing slides",
	drill.OtherHalf:          "that is the figure of the other half, front or back",
	drill.SlideForgotten:     "you forgot to take the slide off the need",
	drill.SlideAdded:         "you added the slide to the need; take it off",
	drill.OtherPiece:         "that is the figure of the other piece: sleeve and bodice share the slide, not the pivot",
	drill.LimitForPivot:      "you pivoted up to the limit, though less is needed",
	drill.NotRounded:         "you did not round to a mark of the ruler",
	drill.RoundedOtherWay:    "you rounded to the wrong mark: the nearest counts, and halves go up",
	drill.RoundedAlone:       "you rounded the pivot alone; subtract the marked slide from the rounded total",
	drill.MarkOffExact:       "you took the marked slide off the exact total; round the total first",
	drill.TotalForPivot:      "you gave the whole total; take the marked slide off",
	drill.OneSideCounted:     "you counted the gain of one side only",
	drill.CountedOnce:        "you counted each side once: around the body there are two of each",
	drill.CountedTwice:       "you counted each side twice: a sleeve has one front and one back",
	drill.SlideNotCounted:    "you counted the pivots and forgot the slides",
	drill.AddedToBody:        "you added the gains to the body; add them to the pattern",
	drill.SignForgotten:      "you forgot the sign: this side comes in, so it is below zero",
	drill.LeastForEven:       "you gave the least slide; an even one is asked",
	drill.EvenOfPiece:        "you halved what the sleeve needs in all; halve what one side needs",
	drill.OneSeamCompared:    "you compared cap and armhole at the front alone, or at the back",
	drill.SpareNotHalved:     "you gave one half all that the cap can take; front and back share it",
	drill.EaseForRoom:        "you halved the ease that is there; halve what is still free up to the most",
	drill.SlideIntoArmhole:   "you left the cap ease as it was: the cap gets longer, the armhole is kept",
	drill.OneSlideEased:      "you added the slide of one half; front and back both slide",
	drill.ExactForMarks:      "you counted the exact amounts; count the marks",
}
