package ask

import (
	"fmt"
	"strings"

	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/units"
	"capscye/worksheets"
)

// What was probably meant, which yes takes. It is asked beside the questions, not in the
// place of one: a doubted answer is taken, so that lines from a pipe keep their questions.

// takesOffer takes a line as the answer to what was offered. Any other word than yes and no
// is for the question at hand.
func (a *asking) takesOffer(word string) bool {
	take := a.offered
	a.offered = nil
	if take == nil || word != "yes" && word != "no" {
		return false
	}
	if word == "yes" {
		take()
	}
	return true
}

// runTogether asks about a length whose parts were typed without the space between them:
// nobody has 70 1/2 on the tape who types 141/2. Nothing is taken before that is answered.
func (a *asking) runTogether(k worksheets.Key, text string, take func(meant string)) bool {
	if !k.IsLength() || forms.KindOf(k) == forms.ChoiceField {
		return false
	}
	meant := units.RunTogether(text)
	switch len(meant) {
	case 0:
		return false
	case 1:
		a.say("%s", a.didYouMean(meant[0]))
		a.offered = func() { take(meant[0]) }
	default:
		a.say("That can be %s. Type it again, with the space.", typeset.OrList(meant))
	}
	return true
}

func (a *asking) didYouMean(text string) string {
	return fmt.Sprintf("Did you mean %s? Answer yes, or type it again.", typeset.Plain(worksheets.WithUnit(text, a.doc.Sheet.Unit())))
}

// offerGuess says what may have been meant by an answer that is doubted.
func (a *asking) offerGuess(g *report.Guess, asked *worksheets.Sheet, take func()) {
	if g == nil {
		return
	}
	a.say("Did you mean %s Answer yes to take that.", typeset.Spoken(g.Question(asked)))
	a.offered = take
}

// The texts that a screen left in its fields, unfinished.

// sayDrafts lists them.
func (a *asking) sayDrafts() {
	var list []string
	for _, d := range a.doc.Sheet.Drafts.Texts {
		words := forms.Fields[d.Key].Words
		if d.Size != "" {
			words = "size " + typeset.Plain(d.Size) + ", " + words
		}
		list = append(list, fmt.Sprintf("%s %q", words, typeset.Plain(d.Text)))
	}
	if len(list) > 0 {
		a.say("Typed on the screen and not finished: %s.", strings.Join(list, "; "))
	}
	if a.doc.Sheet.Drafts.Note != "" {
		a.say("A note of a fitting is not finished; add it on the screen, step 6.")
	}
}

// draftWords say what waits at a question.
func (a *asking) draftWords(k worksheets.Key) string {
	draft := a.doc.Sheet.Drafts.Of(k)
	if draft == "" {
		return ""
	}
	words := fmt.Sprintf(" Typed on the screen and not finished: %q.", typeset.Plain(draft))
	if meant := units.RunTogether(draft); k.IsLength() && len(meant) == 1 {
		words += " " + a.didYouMean(meant[0])
	}
	return words
}

// offerDraft lets yes take what was probably meant by what waits at a question.
func (a *asking) offerDraft(draft string, take func(meant string)) {
	if meant := units.RunTogether(draft); len(meant) == 1 && a.offered == nil {
		a.offered = func() { take(meant[0]) }
	}
}
