package report

import (
	"fmt"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/wording"
	"capscye/units"
)

// The answer in words that a person would say at the table.

// PieceAnswer is a girth and the two sides that make it.
type PieceAnswer struct {
	Name, place string // "Sleeve" and "bicep"
	Girth       calc.Girth
	Front, Back calc.SidePlan
	unread      bool
	Open        bool // the plan is
	tooFar      bool // no hand would do it
}

// Pieces are the sleeve and the bodice.
func (r Report) Pieces() [2]PieceAnswer {
	s, tooFar := r.Plan.Sides, r.Plan.TooFar()
	return [2]PieceAnswer{
		{"Sleeve", "bicep", r.Plan.Sleeve, s[calc.SleeveFront], s[calc.SleeveBack], r.Input.Unread, r.Plan.Open, tooFar},
		{"Bodice", "bust", r.Plan.Bust, s[calc.BodiceFront], s[calc.BodiceBack], r.Input.Unread, r.Plan.Open, tooFar},
	}
}

// NeedWords says what a girth needs, or why that is not known.
func (p PieceAnswer) NeedWords(sc units.Scale) string {
	switch {
	case p.unread:
		return p.Name + ": an answer cannot be read"
	case !p.Girth.Body.Known:
		return p.Name + ": no " + p.place + " yet"
	case !p.Girth.Asked():
		return p.Name + ": an answer is missing"
	case p.Girth.Need.Length == 0:
		return p.Name + " needs nothing"
	case p.Girth.Need.Length < 0:
		return p.Name + " comes in by " + sc.Format(-p.Girth.Need.Length)
	}
	return p.Name + " needs " + sc.Format(p.Girth.Need.Length)
}

// SidesWords says what to mark on the sides, one sentence where front and back
// are alike. It is empty where nothing is done, or nothing that a hand would do.
func (p PieceAnswer) SidesWords(sc units.Scale) []string {
	if p.Open || p.tooFar {
		return nil
	}
	f, b := p.Front, p.Back
	if f.Marked() == b.Marked() && f.SlideMark == b.SlideMark {
		if words := SideWords(f, sc); words != "" {
			return []string{"each side: " + words}
		}
		return nil
	}
	var lines []string
	for i, s := range []calc.SidePlan{f, b} {
		words := SideWords(s, sc)
		if words == "" {
			words = "stays"
		}
		lines = append(lines, [...]string{"front: ", "back: "}[i]+words)
	}
	return lines
}

// SideWords is "pivot 1 in, slide 1/4 in", in marks of the ruler that is held.
func SideWords(s calc.SidePlan, sc units.Scale) string {
	var parts []string
	if s.PivotMark != 0 {
		parts = append(parts, "pivot "+wording.InOrOut(s.PivotMark, sc))
	}
	if s.SlideMark != 0 {
		parts = append(parts, "slide "+wording.InOrOut(s.SlideMark, sc))
	}
	return strings.Join(parts, ", ")
}

// FinishedWords says what comes out: "15 1/2 in around, 1 3/4 in of ease".
func (p PieceAnswer) FinishedWords(sc units.Scale) string {
	g := p.Girth
	if !g.Drawn.Known || p.tooFar {
		return ""
	}
	words := sc.Format(g.Drawn.Length) + " around"
	switch ease := g.EaseDrawn; {
	case !ease.Known:
	case ease.Length < 0:
		words += ", " + sc.Format(-ease.Length) + " less than the body"
	default:
		words += ", " + sc.Format(ease.Length) + " of ease"
	}
	if g.DrawnMarked != g.Drawn {
		words += "; by the marks " + sc.Format(g.DrawnMarked.Length)
	}
	return words
}

// FinishedShort is the same where there is little room: "bicep 15 1/2 in, ease 1 3/4".
func (p PieceAnswer) FinishedShort(sc units.Scale) string {
	words := p.GirthShort(sc)
	if words != "" && p.Girth.EaseDrawn.Known {
		words += ", ease " + sc.Number(p.Girth.EaseDrawn.Length)
	}
	return words
}

// GirthShort is what comes out alone: "bicep 15 1/2 in", and what the marks make of it where
// that is another length.
func (p PieceAnswer) GirthShort(sc units.Scale) string {
	if !p.Girth.Drawn.Known || p.tooFar {
		return ""
	}
	words := p.place + " " + sc.Format(p.Girth.Drawn.Length)
	if marked := sc.Format(p.Girth.DrawnMarked.Length); marked != sc.Format(p.Girth.Drawn.Length) {
		words += ", by the marks " + marked
	}
	return words
}

// missing are the answers that are still to be given, in words.
func (r Report) missing() (words []string) {
	for _, f := range r.Plan.Findings {
		if f.Code != calc.AnswerMissing {
			continue
		}
		if word := forms.Fields[forms.AskedAt(&r.Sheet, forms.KeyOf[f.Answer])].Words; !slices.Contains(words, word) {
			words = append(words, word)
		}
	}
	return words
}

// Tally counts the findings in words: "1 stop, 2 checks, 3 notes". Answers
// that are still to be given are no findings to be counted at somebody who is
// on the way there.
func (r Report) Tally() string {
	var parts []string
	for _, l := range []struct {
		level     calc.Level
		one, many string
	}{{calc.Stop, "stop", "stops"}, {calc.Warn, "check", "checks"}, {calc.Note, "note", "notes"}} {
		n := 0
		for _, f := range r.Findings {
			if f.Level == l.level && f.Code != calc.AnswerMissing {
				n++
			}
		}
		switch {
		case n == 1:
			parts = append(parts, "1 "+l.one)
		case n > 1:
			parts = append(parts, fmt.Sprintf("%d %s", n, l.many))
		}
	}
	return strings.Join(parts, ", ")
}
