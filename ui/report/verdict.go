package report

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// State is how far a worksheet is on its way to the cloth.
type State uint8

// The states. While nothing says stop, ticked steps count for more than a check, for
// whoever traces has been told.
const (
	NotBegun State = iota // no girth is entered
	Unreadable
	AnswersMissing
	Stopped
	ToCheck
	Ready
	Tracing
	Traced
	Fits // there is nothing to mark
)

// StateNames are the states as other programs read them.
var StateNames = [...]string{
	NotBegun: "not begun", Unreadable: "unreadable", AnswersMissing: "answers missing", Stopped: "stop", ToCheck: "check", Ready: "ready",
	Tracing: "tracing", Traced: "done", Fits: "fits as it is",
}

// Words are the state as it is said of several worksheets or values: "do not cut".
func (s State) Words() string {
	switch s {
	case Stopped, Unreadable:
		return "do not cut"
	case Ready:
		return "ready to trace"
	case Fits:
		return "nothing to alter"
	}
	return StateNames[s]
}

// Verdict is what a worksheet comes to, in one line that every face begins with.
type Verdict struct {
	State       State
	Done, Steps int    // at the table; 0 of 0 where none is ticked
	Missing     int    // answers
	Why         string // in a few words, without a full stop; "" where there is nothing to add
	more        int    // findings of the same level
	follow      bool   // those are stops, and what is named is a doubt that they may follow from
}

// Verdict decides what a worksheet comes to.
func (r Report) Verdict() Verdict {
	v := Verdict{State: Ready}
	worst, _ := r.Gravest()
	stop := worst.Level == calc.Stop
	switch missing := r.missing(); {
	case stop && r.Input.Unread:
		v.State, v.Why = Unreadable, r.unreadWords()
	case stop:
		v.State = Stopped
		v.Why, v.more, v.follow = r.why(calc.Stop)
	case !r.Plan.Sleeve.Body.Known && !r.Plan.Bust.Body.Known && !r.measured():
		v.State, v.Why = NotBegun, "measure the upper arm, the bust, or both"
	case !r.Plan.Sleeve.Body.Known && !r.Plan.Bust.Body.Known:
		v.State, v.Missing, v.Why = AnswersMissing, 1, "bicep or bust"
	case len(missing) > 0 || !r.Plan.Whole():
		v.State, v.Missing, v.Why = AnswersMissing, len(missing), strings.Join(missing, ", ")
	case worst.Level == calc.Warn:
		v.State = ToCheck
		v.Why, v.more, _ = r.why(calc.Warn)
	}
	if v.State >= ToCheck && len(r.Sheet.Done) > 0 {
		v.progress(r)
	}
	if v.State == Ready && r.fits() {
		v.State = Fits
	}
	return v
}

// measured tells that anything was.
func (r Report) measured() bool {
	for _, k := range worksheets.Keys() {
		if k.Kind() == worksheets.Girth && r.Sheet.Text(k) != "" {
			return true
		}
	}
	return false
}

// progress counts the steps that are ticked.
func (v *Verdict) progress(r Report) {
	for _, s := range r.TraceSteps() {
		v.Steps++
		if r.Done(s) {
			v.Done++
		}
	}
	switch {
	case v.Done == 0:
		v.Steps = 0
	case v.Done < v.Steps:
		v.State = Tracing
	default:
		v.State = Traced
	}
}

// fits tells that there is nothing to mark.
func (r Report) fits() bool {
	for _, s := range r.Plan.Sides {
		if s.Altered() {
			return false
		}
	}
	return true
}

// why is the first finding of a level in a few words, and how many more there are; follow
// tells that what is named is not one of them, but a doubt that they may follow from. A
// slip that may be behind a stop is heard before it: whoever reads of a bust that is 30 in
// too large should look at the width that was typed, not for another pattern.
func (r Report) why(l calc.Level) (words string, more int, follow bool) {
	for _, f := range r.Findings {
		switch {
		case f.Level != l && !f.from.Causes:
		case words == "":
			words, follow = f.Few(), f.Level != l
		case f.Level == l:
			more++
		}
	}
	return words, more, follow
}

// Doubts tells that the finding is about what was typed.
func (f Finding) Doubts() bool { return f.Code.Doubts() }

// unreadWords names the first answer that the sums need and cannot read.
func (r Report) unreadWords() string {
	for _, p := range r.Problems {
		if k, ok := worksheets.KeyNamed(p.Path); !ok || !feeds(k) {
			continue
		}
		if p.Line > 0 {
			return fmt.Sprintf("%s in line %d cannot be read", typeset.Plain(p.Path), p.Line)
		}
		return typeset.Plain(p.Path) + " cannot be read"
	}
	return "an answer cannot be read"
}

// Line is the verdict as a sentence.
func (v Verdict) Line() string {
	why, between, stop := v.Why, ";", "."
	if strings.HasSuffix(why, "?") {
		between, stop = "", ""
	}
	if v.more > 0 {
		why, stop = fmt.Sprintf("%s%s %s", why, between, v.moreWords()), "."
	}
	switch v.State {
	case NotBegun:
		return "Not begun: " + why + stop
	case AnswersMissing:
		if why == "" {
			return "Answers are missing."
		}
		return "Answers missing: " + why + stop
	case Unreadable, Stopped:
		return "Do not cut: " + why + stop
	case ToCheck:
		return "Check this first: " + why + stop
	case Ready:
		return "Ready to trace."
	case Fits:
		return "Nothing to alter: the pattern fits as it is."
	}
	line := "All steps are done."
	if v.State == Tracing {
		line = fmt.Sprintf("Traced %d of %d steps.", v.Done, v.Steps)
	}
	if why != "" {
		line += " Check: " + why + stop
	}
	return line
}

// moreWords are how many others ask for the same, "1 more check", or how many may follow.
func (v Verdict) moreWords() string {
	what := "check"
	if v.State == Stopped {
		what = "stop"
	}
	if v.more > 1 {
		what += "s"
	}
	if v.follow {
		return fmt.Sprintf("%d %s may follow", v.more, what)
	}
	return fmt.Sprintf("%d more %s", v.more, what)
}

// Short is the state in a column of a table, at most [ShortWidth] cells.
func (v Verdict) Short() string {
	switch {
	case v.State == AnswersMissing && v.Missing > 0:
		return fmt.Sprintf("%d missing", v.Missing)
	case v.State == Tracing:
		return fmt.Sprintf("tracing %d/%d", v.Done, v.Steps)
	}
	return StateNames[v.State]
}

// ShortWidth is the width of [Verdict.Short].
const ShortWidth = 13

// StateWords is the state with what belongs to it, as other programs read it: "2 answers
// missing: sleeve width, ease at the bust".
func (v Verdict) StateWords() string {
	switch {
	case v.State == AnswersMissing && v.Missing > 0:
		words := "answers"
		if v.Missing == 1 {
			words = "answer"
		}
		return fmt.Sprintf("%d %s missing: %s", v.Missing, words, v.Why)
	case v.State == Tracing:
		return fmt.Sprintf("%s %d of %d", StateNames[v.State], v.Done, v.Steps)
	case v.State == Unreadable && v.Why != "":
		return StateNames[v.State] + ": " + v.Why
	}
	return v.Short()
}

// Few is the finding in a few words: its first sentence as far as it says what is wrong,
// or what it asks.
func (f Finding) Few() string {
	text, _, _ := strings.Cut(strings.TrimRight(f.Text, "."), ". ")
	if question, _, asks := strings.Cut(text, "? "); asks {
		text = question + "?"
	}
	for _, mark := range []string{" (", "; ", ": "} {
		if head, _, cut := strings.Cut(text, mark); cut && strings.Count(head, " ") >= fewest {
			text = head
		}
	}
	return uncapitalised(text)
}

// fewest is as many words, less one, as say something.
const fewest = 4

// uncapitalised is a sentence as it goes on behind a colon; it may begin with an abbreviation.
func uncapitalised(text string) string {
	if text == "" || len(text) > 1 && 'A' <= text[1] && text[1] <= 'Z' {
		return text
	}
	return typeset.Uncapitalised(text)
}
