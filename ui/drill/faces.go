package drill

import (
	"fmt"

	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// The drill line by line is printed, as wide as paper, or heard: a thought a line, with no
// signs that a reader spells out.
type face interface {
	opening(l *Lesson) []string
	problem(l *Lesson) []string // the one at hand
	again(l *Lesson) []string   // and what is done of it
	question(words string) []string
	reply(r Reply) []string
	score(l *Lesson) []string
}

const how = "Answer with a length; ? shows the working, again repeats the problem, quit ends."

func faceFor(sentences bool) face {
	if sentences {
		return heard{}
	}
	return printed{}
}

type printed struct{}

func (printed) opening(l *Lesson) []string {
	return []string{fmt.Sprintf("%s, seed %d", l.head(), l.Seed), how}
}

func (printed) problem(l *Lesson) []string {
	return append([]string{""}, l.ProblemLines(l.At, typeset.PrintWidth)...)
}

func (printed) again(l *Lesson) []string {
	lines := l.ProblemLines(l.At, typeset.PrintWidth)
	if done := l.DoneWords(); done != "" {
		lines = append(lines, typeset.Hanging("  Done: ", done, typeset.PrintWidth)...)
	}
	return lines
}

func (printed) question(words string) []string { return []string{"- " + words} }

func (printed) reply(r Reply) []string {
	words, working := r.Lines(typeset.PrintWidth)
	return append(words, working...)
}

func (printed) score(l *Lesson) []string {
	return append([]string{""}, l.ScoreLines(typeset.PrintWidth)...)
}

type heard struct{}

func (heard) opening(l *Lesson) []string {
	var s typeset.Speech
	s.Say("%s, seed %d", l.head(), l.Seed)
	s.SayEach(how)
	return s.Lines()
}

func (heard) problem(l *Lesson) []string {
	var s typeset.Speech
	p := l.problems[l.At]
	s.Say("Problem %d of %d", l.At+1, len(l.problems))
	s.Say("%s for %s, in %s, with a ruler in %s", typeset.Capitalised(garments[p.Garment]), wearers[p.Wearer], wording.UnitWords(p.System), p.Input.Ruler)
	for _, words := range problemWords(p) {
		s.SayEach(words)
	}
	return s.Lines()
}

func (h heard) again(l *Lesson) []string {
	var s typeset.Speech
	if done := l.DoneWords(); done != "" {
		s.Say("Done: %s", done)
	}
	return append(h.problem(l), s.Lines()...)
}

func (heard) question(words string) []string {
	var s typeset.Speech
	s.SayEach(words)
	return s.Lines()
}

func (heard) reply(r Reply) []string {
	var s typeset.Speech
	s.SayEach(r.Words)
	for _, l := range r.working {
		s.Say("%s", typeset.Capitalised(l))
	}
	return s.Lines()
}

func (heard) score(l *Lesson) []string {
	var s typeset.Speech
	for _, line := range l.ScoreSentences() {
		s.SayEach(line)
	}
	return s.Lines()
}
