package screen

import (
	"fmt"
	"slices"

	"capscye/worksheets"
)

// trials are copies of a sheet, laid beside it to try something. They are a value; the
// copies are never changed in place.
type trials struct {
	copies []worksheets.Sheet
	hand   int // what the hands are on: 0 is the sheet, n the nth copy
}

// add lays a copy beside the others, and takes it up.
func (t *trials) add(s worksheets.Sheet) {
	t.copies = append(slices.Clone(t.copies), s)
	t.hand = len(t.copies)
}

// change puts a changed version in the place of the copy at hand.
func (t *trials) change(s worksheets.Sheet) {
	t.copies = slices.Clone(t.copies)
	t.copies[t.hand-1] = s
}

// drop puts the copy at hand away.
func (t *trials) drop() {
	t.copies = slices.Delete(slices.Clone(t.copies), t.hand-1, t.hand)
	t.hand = min(t.hand, len(t.copies))
}

// pass moves the hands from the sheet to the copies, one after the other, and back.
func (t *trials) pass(by int) {
	all := len(t.copies) + 1
	t.hand = (t.hand + by + all) % all
}

// focusCopy is the copy at hand, or the latest while the hands are on the sheet.
func (t *trials) focusCopy() int {
	if t.hand > 0 {
		return t.hand
	}
	return len(t.copies)
}

// inSight are the sheet and the copy in focus, and as many more as have room,
// in their order.
func (t *trials) inSight(room int) []int {
	shown := []int{0, t.focusCopy()}
	for n := 1; n <= len(t.copies) && len(shown) < room; n++ {
		if n != shown[1] {
			shown = append(shown, n)
		}
	}
	slices.Sort(shown)
	return shown
}

// laid is what lies on the desk: the sheet of the file, and copies of it.
type laid struct {
	sheet worksheets.Sheet
	trials
}

// at is the sheet, for 0, or a copy.
func (l *laid) at(n int) *worksheets.Sheet {
	if n == 0 {
		return &l.sheet
	}
	return &l.copies[n-1]
}

func (l laid) equal(other laid) bool {
	return l.sheet.Same(other.sheet) && l.hand == other.hand &&
		slices.EqualFunc(l.copies, other.copies, worksheets.Sheet.Same)
}

// laid is what lies on the desk now.
func (d *desk) laid() laid { return laid{d.doc.Sheet, d.trials} }

// sheet is the sheet or the copy that the hands are on, to be read only.
func (d *desk) sheet() *worksheets.Sheet {
	if d.hand == 0 {
		return &d.doc.Sheet
	}
	return &d.copies[d.hand-1]
}

// lay takes a change of what the hands are on. An example stays as it is: a copy is
// laid beside it.
func (d *desk) lay(s worksheets.Sheet) {
	switch {
	case d.hand > 0 || !d.isExample():
		d.put(s)
	case len(d.copies) < MostCopies:
		d.trials.add(s)
		d.message = "The example stays as it is; this is a what-if. ^g switches, ^x drops it."
	default:
		d.message = fmt.Sprintf("The example stays as it is, and %d copies are the most: ^x drops one.", MostCopies)
	}
}

// put puts a changed version in the place of what the hands are on. A copy is what it
// changes: where the sheet changes and a copy does not differ from it, the copy follows.
func (d *desk) put(s worksheets.Sheet) {
	if d.hand > 0 {
		d.trials.change(s)
		return
	}
	d.copies = following(d.copies, d.doc.Sheet, s)
	d.doc.Sheet = s
}

// change lays a changed sheet, remembers that, and takes it up; what is in words.
func (d *desk) change(s worksheets.Sheet, what string) {
	before := d.laid()
	d.lay(s)
	d.remember(before, what)
	d.takeUp()
}

// letWait puts a sheet whose drafts are others in the place of what the hands are on,
// remembers that, and takes it up.
func (d *desk) letWait(s worksheets.Sheet, what string) {
	before := d.laid()
	d.put(s)
	d.remember(before, "what was typed for "+what)
	d.takeUp()
}

// following are copies of a sheet as copies of what became of it.
func following(copies []worksheets.Sheet, before, after worksheets.Sheet) []worksheets.Sheet {
	follow := slices.Clone(copies)
	for i, c := range copies {
		follow[i] = after.Since(before, c)
	}
	return follow
}

// reckon brings the reports up to date.
func (d *desk) reckon() {
	laid := make([]*worksheets.Document, len(d.copies)+1)
	for n := range laid {
		laid[n] = d.document(n)
	}
	d.reports.bring(laid, d.hand)
}

// foresee computes the preview of what is being typed; while that cannot be
// read, the last that could stays.
func (d *desk) foresee() {
	k, ok := d.focused()
	if !ok || !d.typing.changed() {
		d.preview = nil
		return
	}
	if sheet, err := d.typed(k); err == nil {
		typed := d.document(d.hand)
		typed.Sheet = sheet
		d.reports.foresee(typed)
	}
}

// document is the sheet or a copy as if it were what the file held.
func (d *desk) document(n int) *worksheets.Document {
	l, doc := d.laid(), *d.doc
	doc.Sheet = *l.at(n)
	return &doc
}

// shut tells that what the hands are on cannot be changed: the sheet of a
// file that is not written. A copy of it can.
func (d *desk) shut() bool { return d.doc.ReadOnly != "" && d.hand == 0 }
