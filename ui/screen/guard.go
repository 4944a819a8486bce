package screen

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"capscye/ui/console"
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// What is not in a sheet's file is guarded elsewhere against a crash, and offered at
// the next start.

// guard is where what is not saved of the sheet on the desk outlives a crash.
type guard struct {
	place   *worksheets.Recovery
	held    worksheets.Leftover // what is guarded there, or about to be
	writing bool                // something is being put there
	unsafe  bool                // it was said that nothing can be
}

// wants tells that something else has to be put there now, one writing at a time.
func (g *guard) wants(l worksheets.Leftover) bool {
	return g.place != nil && !g.writing && !g.held.Same(l)
}

// wrote takes the outcome. news tells that nothing can be guarded, and that this was
// not said yet.
func (g *guard) wrote(err error) (news bool) {
	g.writing = false
	if err == nil {
		g.unsafe = false
		return false
	}
	news = !g.unsafe
	g.held, g.unsafe = worksheets.Leftover{}, true // tried again with the next message
	return news
}

// leave is the end of the work on the sheet, of which list is not saved: that is kept for
// the next start, or dropped where the person agreed to that. What is half typed stays in
// any case.
func (g *guard) leave(keep bool, list []worksheets.Sheet, typed worksheets.Drafts) error {
	if g.place == nil {
		return nil
	}
	defer g.place.Close()
	g.place.Typed(typed)
	if keep {
		return g.place.Keep(worksheets.Leftover{At: time.Now(), Versions: list})
	}
	return g.place.Drop()
}

// unsaved is what is in no file: the sheet, where it was changed since, and the
// copies beside it.
func (d *desk) unsaved() []worksheets.Sheet {
	if d.loose() {
		return append([]worksheets.Sheet{d.doc.Sheet}, d.copies...)
	}
	return d.copies
}

// unguarded is what would be lost now: what is unsaved, but for a sheet that is being
// saved.
func (d *desk) unguarded(saving bool) []worksheets.Sheet {
	if saving && !d.conflict && !d.failed {
		return d.copies
	}
	return d.unsaved()
}

func (d *desk) halfTyped() (one worksheets.Draft, ok bool) {
	k, at := d.focused()
	if !at || forms.KindOf(k) == forms.ChoiceField {
		return one, false
	}
	return d.typing.half(k, "")
}

// addHalfTyped adds what is half typed to the drafts of the sheet that it is typed into.
func (d *desk) addHalfTyped(l *worksheets.Leftover, typed worksheets.Draft) {
	if d.hand == 0 {
		l.Drafts = l.Drafts.WithSize(typed.Size, typed.Key, typed.Text)
		return
	}
	l.Versions = slices.Clone(l.Versions) // the copies stand at their end
	one := &l.Versions[len(l.Versions)-len(d.copies)+d.hand-1]
	one.Drafts = one.Drafts.WithSize(typed.Size, typed.Key, typed.Text)
}

// layLeftover lays what earlier runs did not save beside the sheet, to be looked at, and
// what was half typed into its fields. What the file says already is no news, where
// nothing else is half typed.
func (d *desk) layLeftover(l worksheets.Leftover) {
	if len(l.Unreadable) > 0 {
		d.message = "Unsaved work of an earlier run cannot be read; it is in " + typeset.Plain(strings.Join(l.Unreadable, ", ")) + "."
	}
	if l.Empty() {
		return
	}
	d.guard.held = l
	if !l.Drafts.Empty() {
		d.doc.Sheet.Drafts = l.Drafts
		d.message = "Typed before and not finished: " + draftWords(l.Drafts) + "."
	}
	news := slices.DeleteFunc(slices.Clone(l.Versions), func(s worksheets.Sheet) bool {
		return s.Equal(d.doc.Sheet) && (s.Drafts.Empty() || s.Drafts.Equal(l.Drafts))
	})
	if len(news) > 0 {
		d.copies, d.trying = append(news, d.copies...), true
		d.message = fmt.Sprintf("Unsaved work of %s is open as a copy; ^x shows it.", console.DayAndTime(l.At))
	}
	d.reckon()
	d.reach()
}

// draftWords say what is half typed, and where.
func draftWords(d worksheets.Drafts) string {
	var list []string
	if d.Note != "" {
		list = append(list, "the note of a fitting (step 6, n)")
	}
	for _, one := range d.Texts {
		list = append(list, sizeWords(one.Size, forms.Fields[one.Key].Words)+" "+quoted(one.Text))
	}
	return strings.Join(list, ", ")
}

// leaving says what becomes of what is not saved when the program is left.
func (g *guard) leaving() string {
	if g.place.Path() == "" || g.unsafe {
		return "loses it"
	}
	return "keeps it aside"
}
