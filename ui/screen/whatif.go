package screen

import (
	"fmt"

	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// What if: copies of the sheet laid beside it, changed like any sheet, seen with
// what differs, and chosen or dropped. Nothing of them reaches the file before.

// MostCopies is how many copies can lie beside a sheet.
const MostCopies = 3

// layCopy lays a copy of what the hands are on beside the sheet, and takes it up.
func (d *desk) layCopy() wish {
	w := d.commit()
	d.layTrial(*d.sheet())
	return w
}

// layTrial lays a sheet beside the one of the file as a copy of it, and takes it up.
func (d *desk) layTrial(s worksheets.Sheet) {
	if len(d.copies) >= MostCopies {
		d.message = fmt.Sprintf("%d copies are the most; ^x drops one.", MostCopies)
		return
	}
	before := d.laid()
	s.Drafts.Note = "" // a fitting is of the sheet itself
	d.trials.add(s)
	d.remember(before, "copy made")
	d.takeUp()
	d.message = "You are in a copy. ^g switches, ^x keeps or drops it."
}

// takeUp shows what the hands have come to.
func (d *desk) takeUp() {
	d.reckon()
	d.reach()
	if d.step == forms.Trace {
		d.trace = d.traceAt(d.trace)
	}
}

// nextLaid moves the hands from the sheet to the copies, one after the other, and
// back.
func (d *desk) nextLaid(by int) wish {
	w := d.commit()
	if len(d.copies) == 0 {
		d.message = "No copy yet: ^l makes one."
		return w
	}
	d.trials.pass(by)
	d.takeUp()
	d.message = fmt.Sprintf("Now in %s.", d.laidWords(d.hand))
	return w
}

func (d *desk) nextCopy() wish { return d.nextLaid(1) }

// chooseHand makes what the hands are on the sheet, and drops the copies.
func (d *desk) chooseHand() wish {
	if d.doc.ReadOnly != "" && d.hand > 0 {
		d.message = d.readOnly() + " A copy can be saved as its own file."
		return nil
	}
	before, chosen := d.laid(), d.laidWords(d.hand)
	note := d.doc.Sheet.Drafts.Note
	d.doc.Sheet, d.trials = *d.sheet(), trials{}
	d.doc.Sheet.Drafts.Note = note
	d.remember(before, "kept "+chosen)
	d.takeUp()
	d.message = typeset.Capitalised(chosen) + " is now the worksheet; ^z undoes that."
	if before.hand == 0 {
		d.message = "The copies are dropped; ^z brings them back."
	}
	return d.save()
}

// handAlone is the copy at hand as a document of its own.
func (d *desk) handAlone() *worksheets.Document {
	alone := d.document(d.hand)
	if title := d.doc.Sheet.Text(worksheets.Title); d.isExample() && title == alone.Sheet.Text(worksheets.Title) { // which is the example's
		_ = alone.Sheet.Set(worksheets.Title, "")
	}
	return alone
}

// dropHand puts the copy at hand away. why says what became of it.
func (d *desk) dropHand(why string) {
	before := d.laid()
	d.trials.drop()
	d.remember(before, "copy dropped")
	d.takeUp()
	d.message = why
}

// dropCopies puts all copies away.
func (d *desk) dropCopies() {
	before := d.laid()
	d.trials = trials{}
	d.remember(before, "copies dropped")
	d.takeUp()
}

// onCopy says that what is to be done needs the sheet itself, where the hands are
// on a copy: nobody cuts, tries on or prints a what-if.
func (d *desk) onCopy() bool {
	if d.hand > 0 {
		d.message = "This is a copy: keep it first (^x), or go to the worksheet (^g)."
	}
	return d.hand > 0
}
