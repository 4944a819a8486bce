package desk

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"capscye/ui/console"
	"capscye/ui/forms"
	"capscye/ui/parts"
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

// Unsaved is what is in no file: the sheet, where it was changed since, and the
// copies beside it.
func (d *Desk) Unsaved() []worksheets.Sheet {
	if d.loose() {
		return append([]worksheets.Sheet{d.Doc.Sheet}, d.Copies...)
	}
	return d.Copies
}

// unguarded is what would be lost now: what is unsaved, but for a sheet that is being
// saved.
func (d *Desk) unguarded(saving bool) []worksheets.Sheet {
	if saving && !d.Conflict && !d.Failed {
		return d.Copies
	}
	return d.Unsaved()
}

// GuardedBy is the place where what is not saved is guarded.
func (d *Desk) GuardedBy() *worksheets.Recovery { return d.guard.place }

// GuardIn begins to guard what is not saved in a place. before is what lay on the desk
// before, nil for nothing: it may be the same sheet, as somebody else wrote it.
func (d *Desk) GuardIn(place *worksheets.Recovery, before *Desk) {
	if before != nil && before.guard.place == place {
		d.guard.held = before.guard.held
	}
	d.guard.place = place
}

// ToGuard is what has to be put into that place now, where anything has; saving tells that
// the sheet is on its way to its file, and typing is what stands in a line of input and was
// not left yet. The outcome is to be told to GuardWrote.
func (d *Desk) ToGuard(saving bool, typing func() (worksheets.Draft, bool)) (list []worksheets.Sheet, wants bool) {
	left := d.left(d.unguarded(saving), typing)
	d.guard.place.Typed(left.Drafts)
	if !d.guard.wants(left) {
		return nil, false
	}
	d.guard.held, d.guard.writing = left, true
	return left.Versions, true
}

// GuardWrote takes the outcome. news tells that nothing can be guarded, and that this was
// not said yet.
func (d *Desk) GuardWrote(err error) (news bool) {
	g := &d.guard
	g.writing = false
	if err == nil {
		g.unsafe = false
		return false
	}
	news = !g.unsafe
	g.held, g.unsafe = worksheets.Leftover{}, true // tried again with the next message
	return news
}

// Leave is the end of the work on it: what is not saved is kept for the next start, or
// dropped where the person agreed to that. What is half typed stays in any case.
func (d *Desk) Leave(stopped bool, typing func() (worksheets.Draft, bool)) error {
	place := d.guard.place
	if place == nil {
		return nil
	}
	defer place.Close()
	left := d.left(d.Unsaved(), typing)
	place.Typed(left.Drafts)
	if d.KeepsAside(stopped) {
		return place.Keep(worksheets.Leftover{At: time.Now(), Versions: left.Versions})
	}
	return place.Drop()
}

// left is what there is to keep of a list of sheets, with what is half typed.
func (d *Desk) left(list []worksheets.Sheet, typing func() (worksheets.Draft, bool)) worksheets.Leftover {
	left := worksheets.Leftover{Versions: list, Drafts: d.Doc.Sheet.Drafts}
	if one, ok := typing(); ok {
		d.addHalfTyped(&left, one)
	}
	return left
}

// KeepsAside tells that something is kept for the next start: what the file could not
// take, and where the program was stopped the copies too.
func (d *Desk) KeepsAside(stopped bool) bool { return d.loose() || stopped && len(d.Copies) > 0 }

// HalfTyped is what stands in the line of input of the form and was not left yet; ok is
// false where nothing does.
func (d *Desk) HalfTyped() (one worksheets.Draft, ok bool) {
	k, at := d.Focused()
	if !at || forms.KindOf(k) == forms.ChoiceField {
		return one, false
	}
	return d.Half(&d.typing, k, "")
}

// Half is what is typed in a line and not left yet as a draft for an answer of a size; ok is
// false while nothing is.
func (d *Desk) Half(in *parts.Typing, k worksheets.Key, size string) (one worksheets.Draft, ok bool) {
	text := d.forFile(k, in.Text())
	return worksheets.Draft{Key: k, Size: size, Text: text}, in.Changed() && text != ""
}

// addHalfTyped adds what is half typed to the drafts of the sheet that it is typed into.
func (d *Desk) addHalfTyped(l *worksheets.Leftover, typed worksheets.Draft) {
	if d.Hand == 0 {
		l.Drafts = l.Drafts.WithSize(typed.Size, typed.Key, typed.Text)
		return
	}
	l.Versions = slices.Clone(l.Versions) // the copies stand at their end
	one := &l.Versions[len(l.Versions)-len(d.Copies)+d.Hand-1]
	one.Drafts = one.Drafts.WithSize(typed.Size, typed.Key, typed.Text)
}

// LayLeftover lays what earlier runs did not save beside the sheet, to be looked at, and
// what was half typed into its fields. What the file says already is no news, where
// nothing else is half typed.
func (d *Desk) LayLeftover(l worksheets.Leftover) {
	if len(l.Unreadable) > 0 {
		d.Message = "Unsaved work of an earlier run cannot be read; it is in " + typeset.Plain(strings.Join(l.Unreadable, ", ")) + "."
	}
	if l.Empty() {
		return
	}
	d.guard.held = l
	if !l.Drafts.Empty() {
		d.Doc.Sheet.Drafts = l.Drafts
		d.Message = "Typed before and not finished: " + draftWords(l.Drafts) + "."
	}
	news := slices.DeleteFunc(slices.Clone(l.Versions), func(s worksheets.Sheet) bool {
		return s.Equal(d.Doc.Sheet) && (s.Drafts.Empty() || s.Drafts.Equal(l.Drafts))
	})
	if len(news) > 0 {
		d.Copies, d.trying = append(news, d.Copies...), true
		d.Message = fmt.Sprintf("Unsaved work of %s is open as a copy; ^x shows it.", console.DayAndTime(l.At))
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
		list = append(list, SizeWords(one.Size, forms.Fields[one.Key].Words)+" "+parts.Quoted(one.Text))
	}
	return strings.Join(list, ", ")
}

// Leaving says what becomes of what is not saved when the program is left.
func (d *Desk) Leaving() string {
	if d.guard.place.Path() == "" || d.guard.unsafe {
		return "loses it"
	}
	return "keeps it aside"
}
