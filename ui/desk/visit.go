package desk

import (
	"fmt"

	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// visit is what a field had when the hands came to it. What a key then pushes goes
// into the file at once, and esc brings back what was there.
type visit struct {
	key     worksheets.Key
	hand    int // on the sheet or a copy
	was     worksheets.Sheet
	is      worksheets.Sheet  // what was pushed since; was, where nothing was
	given   *worksheets.Sheet // what esc took away, for the next esc
	said    string            // the answer that was there, in words
	started bool
	letters string // that a choice was asked for
}

// come remembers what a field has, unless the hands are there already and nothing else
// has changed it since.
func (d *Desk) come(k worksheets.Key) {
	v := &d.visit
	if v.started && v.key == k && v.hand == d.Hand && v.is.Same(*d.Sheet()) {
		return
	}
	*v = visit{key: k, hand: d.Hand, was: *d.Sheet(), is: *d.Sheet(), said: d.saidOf(k), started: true}
}

// saidOf is an answer in words; of a choice, what is meant where none was made.
func (d *Desk) saidOf(k worksheets.Key) string {
	if forms.KindOf(k) == forms.ChoiceField {
		if options, now := d.optionsOf(k); now >= 0 {
			return options[now].Said
		}
	}
	return d.answerWords(k)
}

// push changes an answer that was just reached, and says how to have the old one back.
func (d *Desk) push(k worksheets.Key, text string) parts.Wish {
	v := d.visit
	empties := text == "" && d.Sheet().Text(k) != ""
	closed := d.Closed() != ""
	w := d.Set(k, text)
	if closed {
		return w
	}
	v.hand, v.is, v.given = d.Hand, *d.Sheet(), nil // in an example it is a copy now
	d.visit = v
	if d.Message == "" || empties {
		d.Message = v.says(d)
	}
	return w
}

// pushed tells that the field under the hands has not what it had when they came, and
// could have it again.
func (v *visit) pushed() bool {
	return v.started && v.is.Text(v.key) != v.was.Text(v.key) && v.was.Check(v.key) == nil
}

// name is the answer as the subject of a sentence.
func (v *visit) name() string {
	switch v.key {
	case worksheets.Slide:
		return "The slide"
	case worksheets.SleeveMeasured, worksheets.BodiceMeasured, worksheets.Follow, worksheets.TaperFrom: // their words are no thing
		return "It"
	}
	return typeset.Capitalised(forms.Fields[v.key].Words)
}

// says is what was there, as long as it is not there any more.
func (v *visit) says(d *Desk) string {
	words := v.name()
	switch {
	case !v.pushed():
		return ""
	case v.was.Text(v.key) == "" && v.said == emptyWord:
		return words + " was empty; esc empties it again."
	case v.is.Text(v.key) == "":
		return fmt.Sprintf("%s is empty now; esc brings back %s.", words, v.said)
	}
	return fmt.Sprintf("%s was %s; esc brings it back.", words, v.said)
}

// bringBack brings back what the field had, and after that what it was changed to: one
// change each, which can be undone. It says nothing where there is nothing to bring.
func (d *Desk) bringBack() parts.Wish {
	v := d.visit
	switch {
	case v.pushed():
		now, changed := *d.Sheet(), d.saidOf(v.key)
		back := now.Since(v.is, v.was)
		v.is, v.given = back, &now
		w := d.swap(v)
		d.Message = fmt.Sprintf("%s is %s again. Esc again brings back %s.", v.name(), v.said, changed)
		return w
	case v.given != nil:
		v.is, v.given = *v.given, nil
		w := d.swap(v)
		d.Message = v.says(d)
		return w
	}
	return nil
}

// swap lays what a visit says now, under the hands that stay where they are.
func (d *Desk) swap(v visit) parts.Wish {
	before := d.laid()
	d.put(v.is)
	d.remember(before, forms.Fields[v.key].Words)
	d.reckon()
	d.reach()
	d.visit = v
	return d.save()
}
