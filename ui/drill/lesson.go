// Package drill asks the sums of the trade, with invented wearers, line by line or on
// paper.
package drill

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/calc/drill"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
)

// What a drill is made of where nobody says otherwise, and how far it goes.
const (
	Levels     = drill.Levels
	UsualLevel = 1
	UsualCount = 5
	mostCount  = 100
)

// Lesson is a drill under way: it takes answers and says what came of them. The
// command line and the screen are its two faces.
type Lesson struct {
	Seed     uint64
	Level    int
	problems []drill.Problem
	At       int                     // the problem at hand, past the last at the end
	Past     []outcome               // of the steps of the problem at hand that are done
	missed   bool                    // the step at hand was answered wrong before
	score    [stepKinds]tallied      // of all steps that are done
	slips    [drill.MisstepCount]int // how often an answer looked like each
}

// outcome is how a step was done.
type outcome uint8

const (
	atOnce outcome = iota
	afterTry
	givenAway
	outcomes = iota
)

var outcomeWords = [outcomes]string{"right at once", "after a try", "shown"}

// tallied counts steps by their outcome.
type tallied [outcomes]int

// NewLesson is a lesson of so many problems of a level, the same for the same seed
// everywhere.
func NewLesson(seed uint64, level, count int) *Lesson {
	return &Lesson{Seed: seed, Level: level, problems: drill.Problems(seed, level, count)}
}

// Ended tells that every step is done.
func (l *Lesson) Ended() bool { return l.At == len(l.problems) }

// Now is the problem at hand and its question.
func (l *Lesson) Now() (drill.Problem, drill.Question) {
	p := l.problems[l.At]
	return p, p.Questions[len(l.Past)]
}

// Reply is what came of an answer: what is said of it, and lines of working
// where they were asked for.
type Reply struct {
	Words   string
	working []calc.Line
	scale   units.Scale
	Unread  bool // the answer could not be read
}

// Lines are the reply for a width, its words before the working.
func (r Reply) Lines(width int) (words, working []string) {
	for _, l := range r.working {
		working = append(working, report.WorkingRows(wording.WorkingLine(l, r.scale), width)...)
	}
	return typeset.Wrap(r.Words, width), working
}

// asksForWorking tells the answers that are none, but ask how it is done.
func asksForWorking(text string) bool { return strings.Trim(strings.TrimSpace(text), "?") == "" }

// Answer takes an answer to the question at hand. What cannot be read counts for
// nothing; a wrong answer is said to look like a slip where it is what that slip
// gives, and gives nothing else away.
func (l *Lesson) Answer(text string) Reply {
	p, q := l.Now()
	r := Reply{scale: Scale(p)}
	given, err := units.Parse(strings.TrimSpace(text), p.System)
	switch {
	case asksForWorking(text):
		r.Words, r.working = "It goes like this:", q.Lines
		l.done(q, givenAway)
	case err != nil:
		r.Unread, r.Words = true, typeset.Capitalised(typeset.Plain(err.Error()))+". This does not count as an answer."
	case given == q.Right && l.missed:
		r.Words = "Right: " + wording.Exact(q.Right, r.scale) + "."
		l.done(q, afterTry)
	case given == q.Right:
		r.Words = "Right: " + wording.Exact(q.Right, r.scale) + "."
		l.done(q, atOnce)
	default:
		r.Words = l.wrong(q, given)
	}
	return r
}

// wrong is what is said of a wrong answer.
func (l *Lesson) wrong(q drill.Question, given units.Length) string {
	l.missed = true
	var looks []string
	for _, m := range q.Misled(given) {
		l.slips[m]++
		looks = append(looks, misstepWords[m])
	}
	if looks == nil {
		return "Not right. Once more; ? shows the working."
	}
	return "Not right. It looks as if " + strings.Join(looks, "; or as if ") + "."
}

// done goes on to the next question.
func (l *Lesson) done(q drill.Question, o outcome) {
	l.score[kindOfStep(q.Figure)][o]++
	l.Past, l.missed = append(l.Past, o), false
	if len(l.Past) == len(l.problems[l.At].Questions) {
		l.At, l.Past = l.At+1, nil
	}
}

// Begun tells that any step was done or tried.
func (l *Lesson) Begun() bool { return l.At > 0 || len(l.Past) > 0 || l.missed }

// ScoreLines are the score so far by kind of step, and the slips that were seen.
func (l *Lesson) ScoreLines(width int) []string {
	var all tallied
	done, steps := 0, 0
	for _, t := range l.score {
		for o, n := range t {
			all[o], done = all[o]+n, done+n
		}
	}
	for _, p := range l.problems {
		steps += len(p.Questions)
	}
	out := []string{fmt.Sprintf("Score, level %d, seed %d: %d of %d steps done.", l.Level, l.Seed, done, steps)}
	row := func(name string, t tallied) string {
		return strings.TrimRight(fmt.Sprintf("%-22s%14d%13d%7d", name, t[atOnce], t[afterTry], t[givenAway]), " ")
	}
	out = append(out, fmt.Sprintf("%-22s%14s%13s%7s", "", outcomeWords[atOnce], outcomeWords[afterTry], outcomeWords[givenAway]))
	for k, t := range l.score {
		if t != (tallied{}) {
			out = append(out, row(stepKindWords[k], t))
		}
	}
	out = append(out, row("all", all))
	for m, n := range l.slips {
		switch {
		case n == 1:
			out = append(out, typeset.Hanging("  once     ", misstepWords[m], width)...)
		case n > 1:
			out = append(out, typeset.Hanging(fmt.Sprintf("  %-2d times ", n), misstepWords[m], width)...)
		}
	}
	for i := range out {
		out[i] = typeset.Cut(out[i], width)
	}
	return out
}
