package ui

import (
	"fmt"
	"regexp"
	"strings"

	"capscye/calc"
	"capscye/units"
)

// The answer in words that a person would say at the table.

// pieceAnswer is a girth and the two sides that make it.
type pieceAnswer struct {
	name, place string // "Sleeve" and "bicep"
	girth       calc.Girth
	front, back calc.SidePlan
	unread      bool
	open        bool // the plan is
}

func (r report) pieces() [2]pieceAnswer {
	s := r.plan.Sides
	return [2]pieceAnswer{
		{"Sleeve", "bicep", r.plan.Sleeve, s[calc.SleeveFront], s[calc.SleeveBack], r.input.Unread, r.plan.Open},
		{"Bodice", "bust", r.plan.Bust, s[calc.BodiceFront], s[calc.BodiceBack], r.input.Unread, r.plan.Open},
	}
}

// needWords says what a girth needs, or why that is not known.
func (p pieceAnswer) needWords(sc units.Scale) string {
	switch {
	case p.unread:
		return p.name + ": an answer cannot be read"
	case !p.girth.Body.Known:
		return p.name + " not asked"
	case !p.girth.Asked():
		return p.name + ": an answer is missing"
	case p.girth.Need.Length == 0:
		return p.name + " needs nothing"
	case p.girth.Need.Length < 0:
		return p.name + " comes in by " + sc.Format(-p.girth.Need.Length)
	}
	return p.name + " needs " + sc.Format(p.girth.Need.Length)
}

// sidesWords says what to mark on the sides, one sentence where front and back
// are alike. It is empty where nothing is done.
func (p pieceAnswer) sidesWords(sc units.Scale) []string {
	if p.open {
		return nil
	}
	f, b := p.front, p.back
	if f.Marked() == b.Marked() && f.SlideMark == b.SlideMark {
		if words := sideWords(f, sc); words != "" {
			return []string{"each side: " + words}
		}
		return nil
	}
	var lines []string
	for i, s := range []calc.SidePlan{f, b} {
		words := sideWords(s, sc)
		if words == "" {
			words = "stays"
		}
		lines = append(lines, [...]string{"front: ", "back: "}[i]+words)
	}
	return lines
}

// sideWords is "pivot 1 in, slide 1/4 in", in marks of the ruler that is held.
func sideWords(s calc.SidePlan, sc units.Scale) string {
	var parts []string
	if s.PivotMark != 0 {
		parts = append(parts, "pivot "+inOrOut(s.PivotMark, sc))
	}
	if s.SlideMark != 0 {
		parts = append(parts, "slide "+inOrOut(s.SlideMark, sc))
	}
	return strings.Join(parts, ", ")
}

// inOrOut words a shrinking amount as going in, so that a minus sign that
// somebody overlooks does no harm.
func inOrOut(l units.Length, sc units.Scale) string {
	if l < 0 {
		return sc.OnRuler(-l) + " inward"
	}
	return sc.OnRuler(l)
}

// finishedWords says what comes out beside what was asked.
func (p pieceAnswer) finishedWords(sc units.Scale) string {
	g := p.girth
	if !g.Finished.Known {
		return ""
	}
	words := p.place + " " + sc.Format(g.Finished.Length)
	if g.EaseAfter.Known {
		words += ", ease " + sc.Number(g.EaseAfter.Length)
	}
	if g.Marked != g.Finished {
		words += ", by the marks " + sc.Number(g.Marked.Length)
	}
	return words
}

// wanted lists the answers that are still to be given, in words.
func (r report) wanted() string {
	var words []string
	for _, f := range r.plan.Findings {
		if f.Code == calc.AnswerMissing {
			words = append(words, fields[keyOf[f.Answer]].words)
		}
	}
	return strings.Join(words, ", ")
}

// tally counts the findings in words: "1 stop, 2 warnings, 3 notes". Answers
// that are still to be given are no findings to be counted at somebody who is
// on the way there.
func (r report) tally() string {
	var parts []string
	for _, l := range []struct {
		level     calc.Level
		one, many string
	}{{calc.Stop, "stop", "stops"}, {calc.Warn, "warning", "warnings"}, {calc.Note, "note", "notes"}} {
		n := 0
		for _, f := range r.findings {
			if f.level == l.level && f.code != calc.AnswerMissing {
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

// offMark finds a rounded length; a lone ~ may stand in a title.
var offMark = regexp.MustCompile(units.OffMark + `-?[0-9]`)

// offMarkNote explains the sign before a rounded length, where the text has one.
func offMarkNote(text string) string {
	if !offMark.MatchString(text) {
		return ""
	}
	return units.OffMark + " between two marks, shown at the nearest"
}

// cautions are said wherever somebody goes from the answer to the cloth.
var cautions = []string{
	"Cut a test garment first: no figure replaces a fitting.",
	"Mind pins, blades and hot irons.",
	"A child's nightwear can be lawful only because it fits tightly; ask your local rules before widening it.",
}
