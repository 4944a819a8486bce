package screen

import (
	"strings"

	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// What may have been meant by an answer that is doubted.

// guess is that of the field under the hands, else the most urgent one; nil for none.
func (d *desk) guess() *report.Guess {
	k, at := d.focused()
	if g := d.rep.GuessFor(k); at && g != nil {
		return g
	}
	for _, f := range d.rep.Findings {
		if f.Guess != nil {
			return f.Guess
		}
	}
	return nil
}

func hasGuess(d *desk) (bool, string) { return d.guess() != nil, "" }

// takeGuess puts the guess in the place of what was typed: one change, which can be
// undone.
func (d *desk) takeGuess() wish {
	w := d.commit()
	g := d.guess()
	switch {
	case g == nil: // what was being typed mended it
		return w
	case d.shut():
		d.message = d.readOnly()
		return nil
	}
	d.message = ""
	d.change(g.In(*d.sheet()), forms.Fields[g.Key].Words)
	if d.message == "" {
		words, is := "", " is now "
		for _, k := range g.Keys() { // both on a line of 80 columns
			words, is = words+forms.Fields[k].Words+is+d.answerWords(k)+", ", " "
		}
		d.message = typeset.Capitalised(strings.TrimSuffix(words, ", ")) + ". ^z undoes that."
	}
	return d.save()
}

// guessed is what the field under the hands asks, while nothing was typed over it.
func (d *desk) guessed(k worksheets.Key) (text string, ok bool) {
	g := d.rep.GuessFor(k)
	if g == nil || !d.typing.untouched() {
		return "", false
	}
	return g.Question(d.sheet()) + " ^a takes it", true
}
