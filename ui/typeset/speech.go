package typeset

import (
	"fmt"
	"regexp"
	"strings"
)

// Speech is what a face says to the ear: sentences, one thought a line, with no sign
// that would be spelled out and no columns. Whatever is said into it comes out so, the
// words of a file too.
type Speech struct{ lines []string }

// Say says one sentence.
func (s *Speech) Say(format string, args ...any) { s.line(fmt.Sprintf(format, args...)) }

// SayEach says every sentence of a text on a line of its own.
func (s *Speech) SayEach(text string) {
	for text != "" {
		end := len(text)
		if at := sentenceEnd.FindStringIndex(text); at != nil {
			end = at[1] - 1 // what the next one begins with
		}
		s.line(text[:end])
		text = text[end:]
	}
}

// line keeps a sentence; one that says nothing is left out.
func (s *Speech) line(text string) {
	const marks = " .?!:;,"
	text = strings.Join(strings.Fields(aloud(Plain(strings.Join(strings.Fields(text), " ")))), " ")
	end := "."
	if strings.HasSuffix(strings.TrimRight(text, " ."), "?") {
		end = "?"
	}
	text = strings.TrimRight(text, marks)
	if strings.HasPrefix(text, "(") && strings.IndexByte(text, ')') == len(text)-1 { // a remark is a sentence like any other
		text = strings.TrimRight(text[1:len(text)-1], marks)
	}
	if text != "" {
		s.lines = append(s.lines, text+end)
	}
}

// Lines are the sentences.
func (s *Speech) Lines() []string { return s.lines }

// Text is the whole, a line for each sentence.
func (s *Speech) Text() string {
	if len(s.lines) == 0 {
		return ""
	}
	return strings.Join(s.lines, "\n") + "\n"
}

// sentenceEnd is where a sentence ends and another begins; neither a decimal point
// nor the ending of a file name is one. Behind a question one may begin with a figure.
var sentenceEnd = regexp.MustCompile(`[.?!]\)? +[A-Z(]|\? +[0-9]`)

// aloud says in words what signs say to the eye.
func aloud(text string) string {
	if sum := strings.SplitN(text, " = ", 3); len(sum) == 3 { // what, from what, how much
		text = sum[0] + ": " + sum[1] + ", that is " + sum[2]
	}
	text = times.ReplaceAllString(Spoken(text), "$1 times ")
	if !strings.ContainsAny(text, "~+-[]{}=|") {
		return text
	}
	return lessThanNothing.ReplaceAllString(signs.Replace(text), "${1}minus $2")
}

// times is the sign between a number or a share and what it is of.
var times = regexp.MustCompile(`([0-9%)]) x `)

// lessThanNothing is the sign of a negative number, which no letter or figure stands before.
var lessThanNothing = regexp.MustCompile(`(^|[^\pL\pN)])-([0-9])`)

// signs are read out, or left out where they only set something off.
var signs = strings.NewReplacer("->", " to ", " - ", " minus ", "~", " about ", "+", " plus ", "=", " is ",
	"[", " ", "]", " ", "{", " ", "}", " ", "|", " ")
