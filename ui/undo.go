package ui

import (
	"cmp"
	"fmt"

	"capscye/worksheets"
)

// change is one change of the sheet. A sheet is a value of texts, so the past can
// hold as many as were made.
type change struct {
	before, after worksheets.Sheet
	what          string // in words, "ease at the bicep"
}

// remember keeps a change that was made; what had been taken back before it
// cannot be done again.
func (d *desk) remember(before worksheets.Sheet, what string) {
	if before.Equal(d.doc.Sheet) {
		return
	}
	d.past, d.future = append(d.past, change{before, d.doc.Sheet, what}), nil
}

// undo takes the latest change back. What is being typed is kept first, and is
// then the latest.
func (d *desk) undo() wish {
	w := d.commit()
	if len(d.past) == 0 {
		return d.nothing(w, "There is nothing to undo.")
	}
	c := d.past[len(d.past)-1]
	d.past, d.future = d.past[:len(d.past)-1], append(d.future, c)
	return d.travel(c.after, c.before, "Taken back", c.what)
}

// redo makes the latest change again that was taken back.
func (d *desk) redo() wish {
	w := d.commit()
	if len(d.future) == 0 {
		return d.nothing(w, "There is nothing to do again.")
	}
	c := d.future[len(d.future)-1]
	d.future, d.past = d.future[:len(d.future)-1], append(d.past, c)
	return d.travel(c.before, c.after, "Done again", c.what)
}

// nothing says that there is nothing to do, unless what was typed had something
// to say; what it wants is granted all the same.
func (d *desk) nothing(w wish, message string) wish {
	if d.message == "" {
		d.message = message
	}
	return w
}

// travel lays the difference between two sheets over the one on the desk, and
// says what it is. A sheet that is read-only has no past to travel to.
func (d *desk) travel(from, to worksheets.Sheet, verb, what string) wish {
	d.doc.Sheet = d.doc.Sheet.Since(from, to)
	d.reckon()
	d.reach()
	d.trace = d.traceAt(d.trace)
	d.message = fmt.Sprintf("%s: %s.", verb, what)
	for _, k := range worksheets.Keys() {
		if from.Text(k) != to.Text(k) {
			if words, ok := fields[k]; ok {
				d.message = fmt.Sprintf("%s: %s is %s.", verb, words.words, cmp.Or(answerText(d.rep, k), "empty"))
			}
			break
		}
	}
	return d.keep()
}
