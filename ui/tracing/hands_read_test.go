package tracing_test

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
)

// Reading what trace prints. The grammar below is all the language that the hands have.
// What does not fit it, they do not understand, and say so.

// step is a step as it is printed: under which heading, and what it says.
type step struct {
	piece, text string
}

var (
	headings  = regexp.MustCompile(`^(Sleeve|Bodice front|Bodice back|Bodice|Garment)$`)
	stepStart = regexp.MustCompile(`^\[[ x]\] +\d+  (.*)$`)
)

// readSteps finds the steps in what trace prints, and takes their lines together.
func readSteps(printed string) (steps []step) {
	piece := ""
	for _, l := range strings.Split(printed, "\n") {
		if headings.MatchString(l) {
			piece = l
		} else if m := stepStart.FindStringSubmatch(l); m != nil && piece != "" {
			steps = append(steps, step{piece, m[1]})
		} else if strings.HasPrefix(l, "        ") && len(steps) > 0 {
			text := &steps[len(steps)-1].text
			if !strings.HasSuffix(*text, "-") { // else a word with a hyphen goes on
				*text += " "
			}
			*text += strings.TrimSpace(l)
		}
	}
	return steps
}

// sentences are the sentences of a step. Each ends with a full stop and a space, or at
// the end.
func sentences(text string) (list []string) {
	for _, s := range strings.SplitAfter(text, ". ") {
		if s = strings.TrimSuffix(strings.TrimSpace(s), "."); s != "" {
			list = append(list, s)
		}
	}
	return list
}

// words are what stood in the places of a sentence.
type words []string

// rule is a sentence that the hands understand.
type rule struct {
	text string
	form *regexp.Regexp
	do   func(h *hands, w words) error
}

// as is a rule. In its form <AMOUNT> stands for a length, <POINT> for the words for a
// point, and {this|that} for one of several; each is a place that the words come from.
// What stands in [ ] may be missing, and <ANY> is not looked at.
func as(form string, do func(h *hands, w words) error) rule {
	pattern := strings.NewReplacer(
		"(", `\(`, ")", `\)`, "{", "(", "}", ")", "[", "(?:", "]", ")?", "<AMOUNT>", amountForm, "<POINT>", "(.+?)", "<ANY>", "(?:.*)",
	).Replace(form)
	return rule{form, regexp.MustCompile("^" + pattern + "$"), do}
}

const amountForm = `(~?\d+(?: \d+/\d+|/\d+|\.\d+)? (?:in|cm))`

// amount reads an amount; rough says that it was rounded to be shown.
func amount(text string) (mm float64, rough bool, err error) {
	exact := strings.TrimPrefix(text, "~")
	mm, err = readLength(exact, "")
	return mm, exact != text, err
}

// exactly is an amount that hands can mark, which is on a mark of their ruler.
func exactly(text string) (float64, error) {
	mm, rough, err := amount(text)
	if rough {
		err = fmt.Errorf("nobody can mark %s", text)
	}
	return mm, err
}

// out is an amount with the way it goes.
func out(text, way string) (float64, error) {
	mm, err := exactly(text)
	if way == "in" || way == "inward" || way == " inward" {
		mm = -mm
	}
	return mm, err
}

// obey carries out every step.
func (h *hands) obey(steps []step) error {
	for n, s := range steps {
		h.heading(s.piece)
		for _, sentence := range sentences(s.text) {
			if err := h.understand(sentence); err != nil {
				return fmt.Errorf("step %d, %q: %w", n+1, sentence, err)
			}
		}
		if err := h.doAgain(); err != nil {
			return fmt.Errorf("step %d, %q: %w", n+1, s.text, err)
		}
	}
	return nil
}

func (h *hands) understand(sentence string) error {
	for _, r := range grammar {
		if m := r.form.FindStringSubmatch(sentence); m != nil {
			h.understood[r.text] = true
			return r.do(h, m[1:])
		}
	}
	return errors.New("the hands do not understand it")
}
