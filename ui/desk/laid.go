package desk

import (
	"fmt"
	"slices"

	"capscye/ui/parts"
	"capscye/worksheets"
)

// trials are copies of a sheet, laid beside it to try something. They are a value; the
// copies are never changed in place.
type trials struct {
	Copies []worksheets.Sheet
	Hand   int // what the hands are on: 0 is the sheet, n the nth copy
}

// add lays a copy beside the others, and takes it up.
func (t *trials) add(s worksheets.Sheet) {
	t.Copies = append(slices.Clone(t.Copies), s)
	t.Hand = len(t.Copies)
}

// change puts a changed version in the place of the copy at hand.
func (t *trials) change(s worksheets.Sheet) {
	t.Copies = slices.Clone(t.Copies)
	t.Copies[t.Hand-1] = s
}

// drop puts the copy at hand away.
func (t *trials) drop() {
	t.Copies = slices.Delete(slices.Clone(t.Copies), t.Hand-1, t.Hand)
	t.Hand = min(t.Hand, len(t.Copies))
}

// pass moves the hands from the sheet to the copies, one after the other, and back.
func (t *trials) pass(by int) {
	all := len(t.Copies) + 1
	t.Hand = (t.Hand + by + all) % all
}

// focusCopy is the copy at hand, or the latest while the hands are on the sheet.
func (t *trials) focusCopy() int {
	if t.Hand > 0 {
		return t.Hand
	}
	return len(t.Copies)
}

// inSight are the sheet and the copy in focus, and as many more as have room,
// in their order.
func (t *trials) inSight(room int) []int {
	shown := []int{0, t.focusCopy()}
	for n := 1; n <= len(t.Copies) && len(shown) < room; n++ {
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
	return &l.Copies[n-1]
}

func (l laid) equal(other laid) bool {
	return l.sheet.Same(other.sheet) && l.Hand == other.Hand &&
		slices.EqualFunc(l.Copies, other.Copies, worksheets.Sheet.Same)
}

// laid is what lies on the desk now.
func (d *Desk) laid() laid { return laid{d.Doc.Sheet, d.trials} }

// Sheet is the sheet or the copy that the hands are on, to be read only.
func (d *Desk) Sheet() *worksheets.Sheet {
	if d.Hand == 0 {
		return &d.Doc.Sheet
	}
	return &d.Copies[d.Hand-1]
}

// lay takes a change of what the hands are on. An example stays as it is: a copy is
// laid beside it.
func (d *Desk) lay(s worksheets.Sheet) {
	switch {
	case d.Hand > 0 || !d.IsExample():
		d.put(s)
	case !d.Full():
		d.trials.add(s)
		d.Message = "The example stays as it is; this is a what-if. ^g switches, ^x drops it."
	}
}

// Full tells that what the hands are on cannot be changed, and neither can a copy of it be
// laid beside it: an example, with all its copies.
func (d *Desk) Full() bool { return d.IsExample() && d.Hand == 0 && len(d.Copies) >= MostCopies }

// Closed says why what the hands are on cannot be changed; "" where it can.
func (d *Desk) Closed() string {
	switch {
	case d.Shut():
		return d.ReadOnly()
	case d.Full():
		return fmt.Sprintf("The example stays as it is, and has %d copies: ^x drops one.", MostCopies)
	}
	return ""
}

// put puts a changed version in the place of what the hands are on. A copy is what it
// changes: where the sheet changes and a copy does not differ from it, the copy follows.
func (d *Desk) put(s worksheets.Sheet) {
	if d.Hand > 0 {
		d.trials.change(s)
		return
	}
	d.Copies = Following(d.Copies, d.Doc.Sheet, s)
	d.Doc.Sheet = s
}

// Change lays a changed sheet, remembers that, takes it up, and asks for it to be saved;
// what is in words.
func (d *Desk) Change(s worksheets.Sheet, what string) parts.Wish {
	before := d.laid()
	d.lay(s)
	d.remember(before, what)
	d.takeUp()
	return d.save()
}

// LetWait puts a sheet whose drafts are others in the place of what the hands are on,
// remembers that, and takes it up.
func (d *Desk) LetWait(s worksheets.Sheet, what string) {
	before := d.laid()
	d.put(s)
	d.remember(before, "what was typed for "+what)
	d.takeUp()
}

// Following are copies of a sheet as copies of what became of it.
func Following(copies []worksheets.Sheet, before, after worksheets.Sheet) []worksheets.Sheet {
	follow := slices.Clone(copies)
	for i, c := range copies {
		follow[i] = after.Since(before, c)
	}
	return follow
}

// reckon brings the reports up to date.
func (d *Desk) reckon() {
	laid := make([]*worksheets.Document, len(d.Copies)+1)
	for n := range laid {
		laid[n] = d.document(n)
	}
	d.reports.bring(laid, d.Hand)
}

// foresee computes the preview of what is being typed; while that cannot be
// read, the last that could stays.
func (d *Desk) foresee() {
	k, ok := d.Focused()
	if !ok || !d.typing.Changed() {
		d.preview = nil
		return
	}
	if sheet, err := d.typed(k); err == nil {
		typed := d.document(d.Hand)
		typed.Sheet = sheet
		d.reports.foresee(typed)
	}
}

// document is the sheet or a copy as if it were what the file held.
func (d *Desk) document(n int) *worksheets.Document {
	l, doc := d.laid(), *d.Doc
	doc.Sheet = *l.at(n)
	return &doc
}

// Shut tells that what the hands are on cannot be changed: the sheet of a
// file that is not written. A copy of it can.
func (d *Desk) Shut() bool { return d.Doc.ReadOnly != "" && d.Hand == 0 }
