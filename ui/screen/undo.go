package screen

import (
	"cmp"
	"fmt"
	"slices"

	"capscye/ui/compare"
	"capscye/ui/forms"
	"capscye/worksheets"
)

// change is one change of what lies on the desk. A sheet is a value of texts, so
// the past can hold as many as were made.
type change struct {
	before, after laid
	what          string // in words, "ease at the bicep"
}

// remember keeps a change that was made; what had been taken back before it
// cannot be done again.
func (d *desk) remember(before laid, what string) {
	if before.equal(d.laid()) {
		return
	}
	d.past, d.future = append(d.past, change{before, d.laid(), what}), nil
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

// travel lays the difference between two sheets over the one on the desk, with
// the copies as they were, and says what it is. A sheet that is read-only has no
// past to travel to.
func (d *desk) travel(from, to laid, verb, what string) wish {
	d.doc.Sheet = d.doc.Sheet.Since(from.sheet, to.sheet)
	d.copies, d.hand = to.copies, to.hand
	d.takeUp()
	d.message = fmt.Sprintf("%s: %s.", verb, what)
	if len(from.copies) != len(to.copies) {
		return d.keep()
	}
	was, is := from.at(to.hand), to.at(to.hand)
	changed := slices.DeleteFunc(worksheets.Keys(), func(k worksheets.Key) bool { return was.Text(k) == is.Text(k) })
	if len(changed) == 1 {
		d.message = fmt.Sprintf("%s: %s is %s.", verb, forms.Fields[changed[0]].Words, cmp.Or(compare.AnswerText(d.rep, changed[0]), "empty"))
	}
	return d.keep()
}
