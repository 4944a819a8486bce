package desk

import (
	"fmt"

	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// What if: copies of the sheet laid beside it, changed like any sheet, seen with
// what differs, and chosen or dropped. Nothing of them reaches the file before.

// MostCopies is how many copies can lie beside a sheet.
const MostCopies = 3

// layCopy lays a copy of what the hands are on beside the sheet, and takes it up.
func (d *Desk) layCopy() parts.Wish {
	w, asks := d.typedTaken()
	if asks {
		return w
	}
	d.LayTrial(*d.Sheet())
	return w
}

// LayTrial lays a sheet beside the one of the file as a copy of it, and takes it up.
func (d *Desk) LayTrial(s worksheets.Sheet) {
	if len(d.Copies) >= MostCopies {
		d.Message = fmt.Sprintf("%d copies are the most; ^x drops one.", MostCopies)
		return
	}
	before := d.laid()
	s.Drafts.Note = "" // a fitting is of the sheet itself
	d.trials.add(s)
	d.remember(before, "copy made")
	d.takeUp()
	d.Message = "You are in a copy. ^g switches, ^x keeps or drops it."
}

// takeUp shows what the hands have come to.
func (d *Desk) takeUp() {
	d.reckon()
	d.reach()
	if d.step == forms.Trace {
		d.trace = d.traceAt(d.trace)
	}
}

// NextLaid moves the hands from the sheet to the copies, one after the other, and
// back.
func (d *Desk) NextLaid(by int) parts.Wish {
	w, asks := d.typedTaken()
	if asks {
		return w
	}
	if len(d.Copies) == 0 {
		d.sayToo("No copy yet: ^l makes one.")
		return w
	}
	d.trials.pass(by)
	d.takeUp()
	d.sayToo(fmt.Sprintf("Now in %s.", d.LaidWords(d.Hand)))
	return w
}

// NextCopy moves the hands on to the next copy, and from the last to the sheet.
func (d *Desk) NextCopy() parts.Wish { return d.NextLaid(1) }

// ChooseHand makes what the hands are on the sheet, and drops the copies.
func (d *Desk) ChooseHand() parts.Wish {
	if d.Doc.ReadOnly != "" && d.Hand > 0 {
		d.Message = d.ReadOnly() + " A copy can be saved as its own file."
		return nil
	}
	before, chosen := d.laid(), d.LaidWords(d.Hand)
	note := d.Doc.Sheet.Drafts.Note
	d.Doc.Sheet, d.trials = *d.Sheet(), trials{}
	d.Doc.Sheet.Drafts.Note = note
	d.remember(before, "kept "+chosen)
	d.takeUp()
	d.Message = typeset.Capitalised(chosen) + " is now the worksheet; ^z undoes that."
	if before.Hand == 0 {
		d.Message = "The copies are dropped; ^z brings them back."
	}
	return d.save()
}

// HandAlone is the copy at hand as a document of its own.
func (d *Desk) HandAlone() *worksheets.Document {
	alone := d.document(d.Hand)
	if title := d.Doc.Sheet.Text(worksheets.Title); d.IsExample() && title == alone.Sheet.Text(worksheets.Title) { // which is the example's
		_ = alone.Sheet.Set(worksheets.Title, "")
	}
	return alone
}

// DropHand puts the copy at hand away. why says what became of it.
func (d *Desk) DropHand(why string) {
	before := d.laid()
	d.trials.drop()
	d.remember(before, "copy dropped")
	d.takeUp()
	d.Message = why
}

// DropCopies puts all copies away.
func (d *Desk) DropCopies() {
	before := d.laid()
	d.trials = trials{}
	d.remember(before, "copies dropped")
	d.takeUp()
}

// OnCopy says that what is to be done needs the sheet itself, where the hands are
// on a copy: nobody cuts, tries on or prints a what-if.
func (d *Desk) OnCopy() bool {
	if d.Hand > 0 {
		d.Message = "This is a copy: keep it first (^x), or go to the worksheet (^g)."
	}
	return d.Hand > 0
}
