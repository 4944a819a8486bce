package desk

import (
	"errors"
	"fmt"
	"strings"

	"capscye/ui/console"
	"capscye/ui/parts"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// Outcome says how a save went. Doc is the copy that was saved, as the file has it now;
// Sheet is what it said when the save began.
type Outcome struct {
	Doc    *worksheets.Document
	Sheet  worksheets.Sheet
	Named  bool                 // it was the first save under a name that was just given
	Place  *worksheets.Recovery // of that name
	Backup string               // where the earlier content was put aside, if it had to be
	Err    error
}

// standing is how a sheet and its file stand to each other.
type standing struct {
	Doc      *worksheets.Document
	Conflict bool // the file was changed by something else and not yet decided
	Failed   bool // the last save did not succeed
	mayLose  bool // the person agreed that the file's comments go
	trying   bool // the person chose to type into copies of an example
}

// ReadOnly says why its file is not written.
func (s *standing) ReadOnly() string { return "Read-only: " + s.Doc.ReadOnly + "." }

// Due tells that something was changed which its file can take at once. What has no
// file, or one that something else changed, waits in memory for the person to decide.
func (s *standing) Due() bool { return !s.Conflict && s.Doc.Path() != "" && !s.Doc.Saved() }

// loose tells that the sheet was changed and is in no file.
func (s *standing) loose() bool {
	return s.Doc.Changed() && !s.Doc.Saved() && s.Doc.ReadOnly == "" && !s.IsExample()
}

// tried takes the outcome of a save, and says what there is to say of it.
func (s *standing) tried(err error, backup string) (message string) {
	s.Failed = err != nil
	switch {
	case errors.Is(err, worksheets.ErrChanged):
		s.Conflict = true
		return "Not saved: another program changed the file. ^s asks what to do."
	case err != nil:
		return "Not saved: " + typeset.Cut(typeset.Plain(console.Reason(err)), longestReason) + ". ^s tries again."
	}
	s.Conflict = false
	if backup == "" {
		return ""
	}
	return "The old file is saved as " + typeset.Plain(backup) + "."
}

// longestReason leaves room on 80 columns for what to do about it.
const longestReason = 25

// state says in a word where the sheet is saved.
func (s *standing) state() string {
	switch {
	case s.Doc.ReadOnly != "":
		return "read-only"
	case s.IsExample():
		return "example, not saved"
	case s.Doc.Saved():
		return "saved"
	}
	return "not saved"
}

// save asks for what was changed to be saved, where it can be.
func (d *Desk) save() parts.Wish {
	if !d.Due() {
		return nil
	}
	return ToSave{}
}

// AskSave asks for what is at hand to be saved, whatever has to be asked first.
func (d *Desk) AskSave() parts.Wish {
	switch w := d.Commit(); {
	case d.IsExample() && w != nil:
		return w
	case d.IsExample() && d.Hand == 0:
		return ToOwn{}
	case d.IsExample():
		d.sayToo("This copy of an example is not saved: ^x gives it a file of its own.")
		return nil
	case d.Hand > 0:
		d.sayToo("The worksheet is saved, not this copy: ^x keeps it or gives it its own file.")
	}
	return ToSave{Ask: true}
}

// Saved takes the outcome of a save. leaving tells that the person is about to leave.
func (d *Desk) Saved(s Outcome, leaving bool) {
	if s.Err == nil {
		d.adopt(s)
	}
	if said := d.standing.tried(s.Err, s.Backup); said != "" {
		d.Message = said
	}
	if d.Failed && !d.Conflict {
		again := ""
		if leaving {
			again = "again "
		}
		d.Message = strings.TrimSuffix(d.Message, ".") + ", ^c " + again + d.Leaving() + "."
	}
}

// adopt takes the document as it was written, with what was changed here since.
func (d *Desk) adopt(s Outcome) {
	now, origins, typing := d.Doc.Sheet, d.Doc.Origins, d.typing.Changed()
	d.Doc = s.Doc
	d.Doc.Origins = origins // others may have been taken since
	if s.Place != nil {
		d.guard = guard{place: s.Place, writing: d.guard.writing, unsafe: d.guard.unsafe}
	}
	d.Doc.Sheet = s.Doc.Sheet.Since(s.Sheet, now)
	d.Doc.Sheet.Drafts = now.Drafts // the file has none
	d.Copies = Following(d.Copies, now, d.Doc.Sheet)
	if d.Doc.Sheet.Equal(now) && !s.Named { // a worksheet without a title goes by its file
		return
	}
	d.reckon()
	if !typing {
		d.reach()
	}
}

// state says in a word where what is at hand is saved.
func (d *Desk) state() string {
	if d.Hand > 0 {
		return fmt.Sprintf("copy %d of %d, not saved", d.Hand, len(d.Copies))
	}
	return d.standing.state()
}

// IsExample tells that what lies on the desk is a built-in example: it has no file.
func (s *standing) IsExample() bool { return s.Doc.Path() == "" }

// TryHere tells that the person types into copies of an example, and is not asked for a
// worksheet of their own any more. Of another sheet it says nothing.
func (s *standing) TryHere() { s.trying = true }

// AgreeToLose tells that the comments of the file may go.
func (s *standing) AgreeToLose() { s.mayLose = true }

// AsksToLose tells that comments of the file would go, and that nobody agreed to that yet.
func (s *standing) AsksToLose() bool { return !s.mayLose && s.Doc.LosesComments() }

// HasTried tells that copies lie beside the sheet that nobody drops unasked: all, but
// beside an example only those that somebody typed into.
func (d *Desk) HasTried() bool { return len(d.Copies) > 0 && (!d.IsExample() || d.trying) }

// AsksOwn tells that a typed answer asks for a worksheet of one's own first.
func (d *Desk) AsksOwn() bool { return d.IsExample() && !d.trying }
