package screen

import (
	"errors"
	"fmt"
	"strings"

	"capscye/ui/console"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// saved says how a save went. doc is the copy that was saved, as the file has it now;
// sheet is what it said when the save began.
type saved struct {
	doc    *worksheets.Document
	sheet  worksheets.Sheet
	named  bool                 // it was the first save under a name that was just given
	place  *worksheets.Recovery // of that name
	backup string               // where the earlier content was put aside, if it had to be
	err    error
}

// standing is how a sheet and its file stand to each other.
type standing struct {
	doc      *worksheets.Document
	conflict bool // the file was changed by something else and not yet decided
	failed   bool // the last save did not succeed
	mayLose  bool // the person agreed that the file's comments go
	trying   bool // the person chose to type into copies of an example
}

func (s *standing) readOnly() string { return "Read-only: " + s.doc.ReadOnly + "." }

// due tells that something was changed which its file can take at once. What has no
// file, or one that something else changed, waits in memory for the person to decide.
func (s *standing) due() bool { return !s.conflict && s.doc.Path() != "" && !s.doc.Saved() }

// loose tells that the sheet was changed and is in no file.
func (s *standing) loose() bool {
	return s.doc.Changed() && !s.doc.Saved() && s.doc.ReadOnly == "" && !s.isExample()
}

// tried takes the outcome of a save, and says what there is to say of it.
func (s *standing) tried(err error, backup string) (message string) {
	s.failed = err != nil
	switch {
	case errors.Is(err, worksheets.ErrChanged):
		s.conflict = true
		return "Not saved: another program changed the file. ^s asks what to do."
	case err != nil:
		return "Not saved: " + typeset.Cut(typeset.Plain(console.Reason(err)), longestReason) + ". ^s tries again."
	}
	s.conflict = false
	if backup == "" {
		return ""
	}
	return "The old file is saved as " + typeset.Plain(backup) + "."
}

// longestReason leaves room on 80 columns for what to do about it.
const longestReason = 25

// words say in a word where the sheet is saved.
func (s *standing) words() string {
	switch {
	case s.doc.ReadOnly != "":
		return "read-only"
	case s.isExample():
		return "example, not saved"
	case s.doc.Saved():
		return "saved"
	}
	return "not saved"
}

// save asks for what was changed to be saved, where it can be.
func (d *desk) save() wish {
	if !d.due() {
		return nil
	}
	return toSave{}
}

// askSave asks for what is at hand to be saved, whatever has to be asked first.
func (d *desk) askSave() wish {
	switch w := d.commit(); {
	case d.isExample() && w != nil:
		return w
	case d.isExample() && d.hand == 0:
		return toOwn{}
	case d.isExample():
		d.message = "This copy of an example is not saved: ^x gives it a file of its own."
		return nil
	case d.hand > 0:
		d.message = "The worksheet is saved, not this copy: ^x keeps it or gives it its own file."
	}
	return toSave{ask: true}
}

// saved takes the outcome of a save.
func (d *desk) saved(s saved) {
	if s.err == nil {
		d.adopt(s)
	}
	if said := d.standing.tried(s.err, s.backup); said != "" {
		d.message = said
	}
	if d.failed && !d.conflict {
		d.message = strings.TrimSuffix(d.message, ".") + ", ^c " + d.leaving() + "."
	}
}

// adopt takes the document as it was written, with what was changed here since.
func (d *desk) adopt(s saved) {
	now, typing := d.doc.Sheet, d.typing.changed()
	d.doc = s.doc
	if s.place != nil {
		d.guard = guard{place: s.place, writing: d.guard.writing, unsafe: d.guard.unsafe}
	}
	d.doc.Sheet = s.doc.Sheet.Since(s.sheet, now)
	d.doc.Sheet.Drafts = now.Drafts // the file has none
	d.copies = following(d.copies, now, d.doc.Sheet)
	if d.doc.Sheet.Equal(now) && !s.named { // a worksheet without a title goes by its file
		return
	}
	d.reckon()
	if !typing {
		d.reach()
	}
}

// state says in a word where what is at hand is saved.
func (d *desk) state() string {
	if d.hand > 0 {
		return fmt.Sprintf("copy %d of %d, not saved", d.hand, len(d.copies))
	}
	return d.standing.words()
}

// isExample tells that what lies on the desk is a built-in example: it has no file.
func (s *standing) isExample() bool { return s.doc.Path() == "" }

// hasTried tells that copies lie beside the sheet that nobody drops unasked: all, but
// beside an example only those that somebody typed into.
func (d *desk) hasTried() bool { return len(d.copies) > 0 && (!d.isExample() || d.trying) }

// asksOwn tells that a typed answer asks for a worksheet of one's own first.
func (d *desk) asksOwn() bool { return d.isExample() && !d.trying }
