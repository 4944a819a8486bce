package ui

import (
	"fmt"
	"strings"

	"capscye/calc"
)

// The answer as sentences, a line each, for whoever hears them.

// spoken says in a word what the sign before a rounded length means.
func spoken(text string) string {
	return offMark.ReplaceAllStringFunc(text, func(found string) string { return "about " + found[1:] })
}

// sentences are the whole answer: what is needed, marked and made, what was
// found, what is still to be answered, and the cautions.
func (r report) sentences() []string {
	var lines []string
	say := func(format string, args ...any) { lines = append(lines, spoken(fmt.Sprintf(format, args...))) }
	for _, p := range r.pieces() {
		say("%s.", p.needWords(r.scale))
		for _, words := range p.sidesWords(r.scale) {
			say("%s, %s.", p.name, words)
		}
		if words := p.finishedWords(r.scale); words != "" {
			say("%s comes out: %s.", p.name, words)
		}
	}
	for _, f := range r.findings {
		if f.code != calc.AnswerMissing {
			say("%s: %s", levelWords[f.level], f.line())
		}
	}
	if wanted := r.wanted(); wanted != "" {
		say("Still to answer: %s. Nothing is planned until every answer is there.", wanted)
	}
	return append(lines, cautions...)
}

var levelWords = map[calc.Level]string{calc.Note: "Note", calc.Warn: "Warning", calc.Stop: "Stop, do not cut"}

// news is a short word of what a change did to a complete answer, and of what it
// says of the change; "" where there is nothing to say.
func news(before, after report) string {
	var said []string
	if before.scale != after.scale { // the same in other figures
		return ""
	}
	add := func(text string) { said = append(said, spoken(text)) }
	was := before.pieces()
	for i, p := range after.pieces() {
		need, sides := p.needWords(after.scale), strings.Join(p.sidesWords(after.scale), ", ")
		switch {
		case p.open || !p.girth.Asked():
		case need != was[i].needWords(before.scale):
			add(need + ".")
		case sides != "" && sides != strings.Join(was[i].sidesWords(before.scale), ", "):
			add(p.name + ", " + sides + ".")
		}
	}
	return strings.Join(append(said, slips(before, after)...), " ")
}

// slips are the findings that came with a change and are worth a word at once:
// those that say stop, and measurements that were perhaps mistyped.
func slips(before, after report) []string {
	var said []string
	known := map[string]bool{}
	for _, f := range before.findings {
		known[f.text] = true
	}
	for _, f := range after.findings {
		if !known[f.text] && (f.level == calc.Stop || f.code == calc.GirthUnusual || f.code == calc.ArmForBust) {
			said = append(said, spoken(f.text))
		}
	}
	return said
}
