package screen

import (
	"errors"
	"fmt"

	"capscye/ui/console"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// How the sheet on the desk and its file stand to each other.

// keep asks for what was changed to be saved, or leaves it in memory until the
// person decides where it goes.
func (d *desk) keep() wish {
	if d.conflict || d.doc.Path() == "" || d.doc.Saved() {
		return wish{}
	}
	return wish{kind: wishSave}
}

// saved takes the outcome of a save.
func (d *desk) saved(msg savedMsg) {
	d.failed = msg.err != nil
	switch {
	case errors.Is(msg.err, worksheets.ErrChanged):
		d.conflict = true
		d.message = "Not saved: another program changed the file. ^s asks what to do."
	case msg.err != nil:
		d.message = "Not saved: " + typeset.Plain(console.FileWords(msg.err)) + ". It is kept here; ^s tries again."
	default:
		d.adopt(msg)
		d.conflict = false
		if msg.backup != "" {
			d.message = "What the file held before is kept in " + typeset.Plain(msg.backup) + "."
		}
	}
}

// adopt takes the document as it was written, with what was changed here since.
func (d *desk) adopt(msg savedMsg) {
	now, typing := d.doc.Sheet, d.typing.changed()
	d.doc = msg.doc
	if msg.place != nil {
		d.recovery, d.kept = msg.place, nil
	}
	d.doc.Sheet = msg.doc.Sheet.Since(msg.sheet, now)
	d.copies = following(d.copies, now, d.doc.Sheet)
	if d.doc.Sheet.Equal(now) {
		return
	}
	d.reckon()
	if !typing {
		d.reach()
	}
}

// state says in a word where the sheet is kept.
func (d *desk) state() string {
	switch {
	case d.hand > 0:
		return fmt.Sprintf("copy %d of %d, not kept", d.hand, len(d.copies))
	case d.doc.ReadOnly != "":
		return "read-only"
	case d.doc.Path() == "":
		return "example, not kept"
	case d.doc.Saved():
		return "saved"
	}
	return "not saved"
}
