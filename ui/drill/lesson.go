// Package drill asks the sums of the trade, with invented wearers, line by line or on
// paper.
package drill

import (
	"fmt"
	"strings"

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

var outcomeWords = [outcomes]string{"right", "after a try", "shown"}

// tallied counts steps by their outcome.
type tallied [outcomes]int

// UsualCount is how many problems of a level fit a lesson.
func UsualCount(level int) int { return drill.UsualCount(level) }

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

// Finished tells that every step of the problem at hand is done, and nobody went on
// to the next; then there is no question.
func (l *Lesson) Finished() bool { return !l.Ended() && len(l.Past) == len(l.problems[l.At].Questions) }

// GoOn leaves a finished problem for the next.
func (l *Lesson) GoOn() {
	if l.Finished() {
		l.At, l.Past = l.At+1, nil
	}
}

// DoneWords list what is done of the problem at hand; "" where nothing is.
func (l *Lesson) DoneWords() string {
	if l.Ended() || len(l.Past) == 0 {
		return ""
	}
	p := l.problems[l.At]
	var done []string
	for i := range l.Past {
		done = append(done, figureWords(p.Questions[i].Figure, p.Alike())+" "+Scale(p).Exact(p.Questions[i].Right))
	}
	return strings.Join(done, "; ") + "."
}

// Reply is what came of an answer: what is said of it, and lines of working
// where they were asked for.
type Reply struct {
	Words   string
	working []string // a line each
	scale   units.Scale
	Unread  bool // the answer could not be read
}

// ShowsWorking tells that it brought the working of a step.
func (r Reply) ShowsWorking() bool { return len(r.working) > 0 }

// Lines are the reply for a width, its words before the working.
func (r Reply) Lines(width int) (words, working []string) {
	for _, l := range r.working {
		working = append(working, report.WorkingRows(l, width)...)
	}
	return typeset.Wrap(r.Words, width), working
}

// Answer takes an answer to the question at hand. An empty one and what cannot be read
// count for nothing; a wrong answer is said to look like a slip where it is what that
// slip gives, and gives nothing else away.
func (l *Lesson) Answer(text string) Reply {
	p, q := l.Now()
	r := Reply{scale: Scale(p)}
	text = strings.TrimSpace(text)
	given, err := units.Parse(text, p.System)
	right := "Right: " + wording.Exact(q.Right, r.scale) + "."
	switch {
	case text == "":
		r.Unread, r.Words = true, "Type a length; ? shows the working."
	case strings.Trim(text, "?") == "":
		r.Words, r.working = strings.TrimSpace(whyWords(p, q)+" The working:"), workingLines(p, q)
		l.done(q, givenAway)
	case err != nil:
		r.Unread, r.Words = true, typeset.Capitalised(typeset.Plain(err.Error()))+". This does not count as an answer."
	case given == q.Right:
		r.Words = right
		l.right(q)
	case isRoundedDecimal(text, given, p, q):
		r.Words = strings.TrimSuffix(right, ".") + "; " + typeset.Plain(text) + " is close enough."
		l.right(q)
	default:
		r.Words = l.wrong(q, given)
	}
	return r
}

// isRoundedDecimal tells an answer off a pocket calculator, in inches, that is meant
// for the right one: less than half a mark from it, and what no known slip gives, to the
// digits that were typed. Centimetres are decimals already, and exact.
func isRoundedDecimal(text string, given units.Length, p drill.Problem, q drill.Question) bool {
	point := strings.LastIndexAny(text, ".,")
	if p.System != units.Inches || point < 0 || 2*(given-q.Right).Abs() >= p.Input.Ruler.Mark() {
		return false
	}
	lastDigit := units.Inch
	for _, c := range text[point+1:] {
		if '0' <= c && c <= '9' {
			lastDigit /= 10
		}
	}
	near := func(l units.Length) bool { return 2*(given-l).Abs() <= lastDigit }
	for _, m := range q.Missteps {
		if near(m.Value) && !near(q.Right) {
			return false
		}
	}
	return true
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
		return "Not right. Try again, or type ? for the working."
	}
	return "Not right. It looks as if " + strings.Join(looks, "; or as if ") + "."
}

// right goes on after a right answer.
func (l *Lesson) right(q drill.Question) {
	if l.missed {
		l.done(q, afterTry)
		return
	}
	l.done(q, atOnce)
}

// done goes on to the next question; a finished problem stays until [Lesson.GoOn].
func (l *Lesson) done(q drill.Question, o outcome) {
	l.score[kindOfStep(q.Figure)][o]++
	l.Past, l.missed = append(l.Past, o), false
	if l.At == len(l.problems)-1 {
		l.GoOn() // behind the last there is only the score
	}
}

// Begun tells that any step was done or tried.
func (l *Lesson) Begun() bool { return l.At > 0 || len(l.Past) > 0 || l.missed }

// tally is the score of all kinds of steps, how many are done, and how many there are.
func (l *Lesson) tally() (all tallied, done, steps int) {
	for _, t := range l.score {
		for o, n := range t {
			all[o], done = all[o]+n, done+n
		}
	}
	for _, p := range l.problems {
		steps += len(p.Questions)
	}
	return all, done, steps
}

// ScoreLines are the score so far by kind of step, and the slips that were seen.
func (l *Lesson) ScoreLines(width int) []string {
	all, done, steps := l.tally()
	out := typeset.Wrap(fmt.Sprintf("Level %d, seed %d: %s.", l.Level, l.Seed, scoreWords(all, done)), width)
	if done < steps {
		out = append(out, fmt.Sprintf("Still to do: %d of %d.", steps-done, steps))
	}
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

// scoreWords are a score as it is said: "2 of 3 right, 1 after a try".
func scoreWords(t tallied, of int) string {
	if of == 0 {
		return "no step done"
	}
	words := fmt.Sprintf("%d of %d right", t[atOnce], of)
	for o := afterTry; int(o) < outcomes; o++ {
		if t[o] > 0 {
			words += fmt.Sprintf(", %d %s", t[o], outcomeWords[o])
		}
	}
	return words
}

// ScoreSentences are the same to be heard, a thought a line.
func (l *Lesson) ScoreSentences() []string {
	all, done, steps := l.tally()
	out := []string{fmt.Sprintf("Level %d, seed %d: %s.", l.Level, l.Seed, scoreWords(all, done))}
	if done < steps {
		out = append(out, fmt.Sprintf("Still to do: %d of %d.", steps-done, steps))
	}
	for k, t := range l.score {
		if n := t[atOnce] + t[afterTry] + t[givenAway]; n > 0 {
			out = append(out, fmt.Sprintf("%s: %s.", typeset.Capitalised(stepKindWords[k]), scoreWords(t, n)))
		}
	}
	for m, n := range l.slips {
		times := fmt.Sprintf("%d times", n)
		if n == 1 {
			times = "Once"
		}
		if n > 0 {
			out = append(out, times+" it looked as if "+misstepWords[m]+".")
		}
	}
	return out
}
