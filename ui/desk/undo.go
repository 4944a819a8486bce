package desk

import (
	"cmp"
	"fmt"
	"slices"

	"capscye/ui/compare"
	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/worksheets"
)

// change is one change of what lies on the desk. A sheet is a value of texts, so
// the past can hold as many as were made.
type change struct {
	before, after laid
	what          string // in words, "ease at the bicep"
}

// history is what was changed since the sheet came to the desk.
type history struct {
	past   []change // what can be taken back, the latest last
	future []change // what was taken back
}

// add puts a change behind the others; what had been taken back before it cannot
// be done again.
func (h *history) add(c change) { h.past, h.future = append(h.past, c), nil }

// back is what takes the latest change back, which is from now on what was taken back; not
// ok where there is none.
func (h *history) back() (c change, ok bool) {
	c, ok = pass(&h.past, &h.future)
	c.before, c.after = c.after, c.before
	return c, ok
}

// forth is the change that was taken back last, which is from now on the latest.
func (h *history) forth() (c change, ok bool) { return pass(&h.future, &h.past) }

// pass moves the last change of one list to the end of another.
func pass(from, to *[]change) (c change, ok bool) {
	last := len(*from) - 1
	if last < 0 {
		return change{}, false
	}
	c = (*from)[last]
	*from, *to = (*from)[:last], append(*to, c)
	return c, true
}

// remember adds a change that was made to the history.
func (d *Desk) remember(before laid, what string) {
	if after := d.laid(); !before.equal(after) {
		d.history.add(change{before, after, what})
	}
}

// Undo takes the latest change back. What is being typed is taken first, and is
// then the latest.
func (d *Desk) Undo() parts.Wish {
	return d.travelBy(d.history.back, "Undone", "Nothing to undo.")
}

// Redo makes the latest change again that was taken back.
func (d *Desk) Redo() parts.Wish {
	return d.travelBy(d.history.forth, "Redone", "Nothing to redo.")
}

// travelBy makes the change that a step through the history gives. Where it gives none,
// what what was typed wants is granted all the same.
func (d *Desk) travelBy(step func() (change, bool), verb, none string) parts.Wish {
	w, asks := d.typedTaken()
	if asks {
		return w
	}
	c, ok := step()
	if !ok {
		d.sayToo(none)
		return w
	}
	return d.travel(c, verb)
}

// sayToo says something, unless what was typed had something to say, such as that it
// cannot be read.
func (d *Desk) sayToo(message string) {
	if d.Message == "" {
		d.Message = message
	}
}

// travel lays the difference that a change makes over the sheet on the desk, with the copies
// as they are after it, and says what it is. A sheet that is read-only has no past to travel
// to.
func (d *Desk) travel(c change, verb string) parts.Wish {
	from, to := c.before, c.after
	note := d.Doc.Sheet.Drafts.Note
	d.Doc.Sheet = d.Doc.Sheet.Since(from.sheet, to.sheet)
	if note != from.sheet.Drafts.Note { // another one is being typed
		d.Doc.Sheet.Drafts.Note = note
	}
	d.trials = to.trials
	d.takeUp()
	d.Message = fmt.Sprintf("%s: %s.", verb, c.what)
	if len(from.Copies) != len(to.Copies) {
		return d.save()
	}
	was, is := from.at(to.Hand), to.at(to.Hand)
	changed := slices.DeleteFunc(worksheets.Keys(), func(k worksheets.Key) bool { return was.Text(k) == is.Text(k) })
	if len(changed) == 1 {
		d.Message = fmt.Sprintf("%s: %s, now %s.", verb, forms.Fields[changed[0]].Words, cmp.Or(compare.AnswerText(d.Rep, changed[0]), "empty"))
	}
	return d.save()
}
