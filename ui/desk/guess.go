package desk

import (
	"strings"

	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// What may have been meant by an answer that is doubted.

// guess is that of the field under the hands, else the most urgent one; nil for none.
func (d *Desk) guess() *report.Guess {
	k, at := d.Focused()
	if g := d.Rep.GuessFor(k); at && g != nil {
		return g
	}
	for _, f := range d.Rep.Findings {
		if f.Guess != nil {
			return f.Guess
		}
	}
	return nil
}

func hasGuess(d *Desk) (bool, string) { return d.guess() != nil, "" }

// takeGuess puts the guess in the place of what was typed: one change, which can be
// undone.
func (d *Desk) takeGuess() parts.Wish {
	w, asks := d.typedTaken()
	if asks {
		return w
	}
	g := d.guess()
	switch {
	case g == nil: // what was being typed mended it
		return w
	case d.Closed() != "":
		d.Message = d.Closed()
		return nil
	}
	d.Message = ""
	w = d.Change(g.In(*d.Sheet()), forms.Fields[g.Key].Words)
	if d.Message == "" {
		words, is := "", " is now "
		for _, k := range g.Keys() { // both on a line of 80 columns
			words, is = words+forms.Fields[k].Words+is+d.answerWords(k)+", ", " "
		}
		d.Message = typeset.Capitalised(strings.TrimSuffix(words, ", ")) + ". ^z undoes that."
	}
	return w
}

// guessed is what the field under the hands asks, while nothing was typed over it.
func (d *Desk) guessed(k worksheets.Key) (text string, ok bool) {
	g := d.Rep.GuessFor(k)
	if g == nil || !d.typing.Untouched() {
		return "", false
	}
	return g.Question(d.Sheet()) + " ^a takes it", true
}
