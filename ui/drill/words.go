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
	body := func(lead string, girth, ease units.Length, other units.Reading) {
		words := lead + " " + num(girth)
		if other.Known {
			words += " on one arm, " + num(other.Length) + " on the other"
		}
		lines = append(lines, words+"; ease to be "+num(ease)+".")
	}
	if p.Level > 1 && in.Bicep.Known {
		body("Bicep", in.Bicep.Length, in.BicepEase.Length, in.BicepOther)
	}
	if p.Level > 1 && in.Bust.Known {
		body("Bust", in.Bust.Length, in.BustEase.Length, units.Reading{})
	}
	if s := in.Sleeve; in.Bicep.Known {
		lines = append(lines, fmt.Sprintf("Sleeve laid flat: %s across at the bicep line, %s; seam allowance %s.",
			num(s.Width.Length), betweenWords(s.EdgeToEdge), num(s.Allowance.Length)))
	}
	if in.Bust.Known {
		lines = append(lines, bodiceWords(in.Bodice, num))
	}
	if p.Level > 2 {
		lines = append(lines, limitWords(in.Method, num))
	}
	if p.Level > 1 {
		lines = append(lines, shareWords(in.Method))
	}
	return lines
}

func betweenWords(edges bool) string {
	if edges {
		return "measured between cut edges"
	}
	return "measured between seam lines"
}

func bodiceWords(b calc.BodiceInput, num func(units.Length) string) string {
	words := fmt.Sprintf("Bodice laid flat, from the fold to the side: front %s, back %s, %s; seam allowance %s.",
		num(b.Front.Length), num(b.Back.Length), betweenWords(b.EdgeToEdge), num(b.Allowance.Length))
	if b.Crossings == 2 {
		words = strings.Replace(words, "from the fold to the side", "from a centre seam to the side", 1)
	}
	if b.TakeOffFront.Known {
		words += fmt.Sprintf(" The tape lay over a dart of the front that takes %s.", num(b.TakeOffFront.Length))
	}
	if b.TakeOffBack.Known {
		words += fmt.Sprintf(" It lay over a pleat of the back that takes %s.", num(b.TakeOffBack.Length))
	}
	return words
}

func limitWords(m calc.Method, num func(units.Length) string) string {
	if m.LimitSleeve == m.LimitBodice {
		return fmt.Sprintf("A side may pivot by %s; the slide is to be the least.", num(m.LimitSleeve))
	}
	return fmt.Sprintf("A sleeve side may pivot by %s, a bodice side by %s; the slide is to be the least.", num(m.LimitSleeve), num(m.LimitBodice))
}

func shareWords(m calc.Method) string {
	switch {
	case m.ShareSleeve == units.Half && m.ShareBust == units.Half:
		return "Front and back take the same."
	case m.ShareSleeve == m.ShareBust:
		return fmt.Sprintf("The fronts take %s of each need, the backs the rest.", m.ShareSleeve)
	}
	return fmt.Sprintf("The front takes %s of the sleeve's need and %s of the bust's, the back the rest.", m.ShareSleeve, m.ShareBust)
}

// AskedFigure names what is asked: "each sleeve side's need".
func AskedFigure(q drill.Question) string {
	of := wording.SubjectWords[q.Figure.Of]
	switch {
	case q.Figure.Quantity == calc.SlideMark && q.Alike:
		of = "cap and armhole"
	case q.Figure.Quantity == calc.SlideMark:
		of = wording.SubjectWords[calc.Side(q.Figure.Of-calc.OfSleeveFront).Half().Subject()] + " cap and armhole"
	case q.Alike && q.Figure.Of == calc.OfFront:
		of = "front and back"
	case q.Alike && q.Figure.Of == calc.OfSleeveFront:
		of = "each sleeve side's"
	case q.Alike:
		of = "each bodice side's"
	}
	return of + " " + wording.QuantityWords[q.Figure.Quantity]
}

// AskWords is the figure as a line of a form has it, with a few words on what it
// is: "Sleeve flat width, between its seam lines".
func AskWords(q drill.Question) string {
	words, gloss := typeset.Capitalised(AskedFigure(q)), askGloss[q.Figure.Quantity]
	switch {
	case q.Figure == calc.Figure{Of: calc.OfSleeve, Quantity: calc.FlatWidth}:
		words += ", between its seam lines"
	case gloss != "":
		words += ", " + gloss
	}
	return words
}

// askGloss says in a few words what a figure is.
var askGloss = map[calc.Quantity]string{
	calc.FrontWidth: "half a front on its seam lines", calc.BackWidth: "half a back on its seam lines",
	calc.FlatWidth: "around the body on the seam lines",
	calc.Slide:     "the least", calc.Pivot: "what is left for the turn",
	calc.SlideMark: "half way goes up", calc.PivotMark: "what is left of the total",
	calc.Finished: "what comes out",
}

// stepKind is a kind of step, by which the score is kept.
type stepKind uint8

const (
	stepWidth stepKind = iota
	stepNeed
	stepShare
	stepSlide
	stepPivot
	stepMarks
	stepOutcome
	stepKinds = iota
)

var stepKindWords = [stepKinds]string{"flat widths", "need", "each side's need", "slide", "pivot", "marks", "what comes out"}

func kindOfStep(f calc.Figure) stepKind {
	switch f.Quantity {
	case calc.FrontWidth, calc.BackWidth, calc.FlatWidth:
		return stepWidth
	case calc.Slide:
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
	drill.AllowanceLeftOn:    "the allowances were left on",
	drill.AllowanceOnce:      "the allowance was taken off once instead of twice: the tape crossed two edges",
	drill.AllowanceTwice:     "the allowance was taken off twice instead of once: a fold has none",
	drill.AllowanceAdded:     "the allowances were added instead of taken off",
	drill.AllowanceNotInside: "allowances were taken off that are not inside: it was measured between seam lines",
	drill.TakeOffLeftIn:      "the dart or pleat inside the tape was left in",
	drill.TakeOffAdded:       "the dart or pleat was added instead of taken off",
	drill.NotDoubled:         "front + back was not doubled: they are half a body",
	drill.OneDoubled:         "only one of front and back was doubled",
	drill.EaseForgotten:      "the ease was forgotten",
	drill.EaseTakenOff:       "the ease was taken off instead of added",
	drill.OtherWayRound:      "it was taken off the other way round: the pattern comes off girth and ease",
	drill.WidthAsMeasured:    "the width was taken as measured, with what has to come off it",
	drill.HalfTheBody:        "half a body's width was taken off a whole body's girth",
	drill.SmallerArm:         "the smaller arm was taken: the larger decides",
	drill.NotDivided:         "one side got the whole need",
	drill.DividedByTwo:       "the need was divided by two instead of four: a bodice has four sides",
	drill.ShareOfWhole:       "the share was taken of the whole need: a bodice has each side twice",
	drill.HalvedTwice:        "it was halved once too often",
	drill.ShareExchanged:     "front and back got each other's share",
	drill.EvenShare:          "front and back got the same, though their shares differ",
	drill.LimitIgnored:       "the limit was ignored, and everything pivoted",
	drill.OnlySleeveMatched:  "only the sleeve was matched: the bodice slides as far, and needs more",
	drill.OnlyBodiceMatched:  "only the bodice was matched: the sleeve slides as far, and needs more",
	drill.NothingPivoted:     "the whole need of a side slid, and nothing pivoted",
	drill.LimitOffWholeNeed:  "the limit came off the whole need: it is the limit of one side",
	drill.LimitForSlide:      "the limit was given: that is what may pivot, and not what slides",
	drill.BelowNothing:       "the slide was taken below nothing: where the limit is enough, nothing slides",
	drill.OtherHalf:          "the figure of the other half was given: front and back differ",
	drill.SlideForgotten:     "the slide was not taken off the need",
	drill.SlideAdded:         "the slide was added to the need instead of taken off",
	drill.OtherPiece:         "the figure of the other piece was given: sleeve and bodice share the slide, not the pivot",
	drill.LimitForPivot:      "it pivots to the limit, though less is needed",
	drill.NotRounded:         "it was not rounded to a mark of the ruler",
	drill.RoundedOtherWay:    "it was rounded the wrong way: the nearest mark, and half way goes up",
	drill.RoundedAlone:       "the pivot was rounded by itself: it is the rounded total less the slide's mark",
	drill.TotalForPivot:      "the whole total was given: the slide's mark comes off it",
	drill.OneSideCounted:     "the gain of one side only was counted",
	drill.CountedOnce:        "each side was counted once: around the body there are two of each",
	drill.CountedTwice:       "each side was counted twice: a sleeve has one front and one back",
	drill.SlideNotCounted:    "only the pivots were counted, and not the slides",
	drill.AddedToBody:        "the gains were added to the body: they are added to the pattern",
	drill.ExactForMarks:      "the exact amounts were counted instead of the marks",
}
