package ui

import (
	"errors"
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"capscye/worksheets"
)

// desk is a worksheet being worked on: the steps, the field under the hands and
// what is being typed into it.
type desk struct {
	doc    *worksheets.Document
	rep    report
	styles styles

	step   step
	at     [stepCount]int // the field under the hands, per step, as an index into its form
	scroll int            // of a page without fields
	entry  textinput.Model
	fresh  bool // nothing was typed since the field was reached: typing replaces

	message  string // what just happened
	conflict bool   // the file was changed by something else and not yet decided
}

func newDesk(d *worksheets.Document, st styles) *desk {
	k := &desk{doc: d, styles: st, entry: newEntry(st)}
	k.reckon()
	for s := range stepCount {
		k.at[s] = nextField(forms[s], -1, 1)
	}
	if d.ReadOnly != "" {
		k.message = "Read-only: " + d.ReadOnly + "."
	}
	k.reach()
	return k
}

// newEntry is a line of input that never blinks: a timer would cost processor
// time while nothing happens. Suggestions stay off; they can panic on Tab at
// the version in use.
func newEntry(st styles) textinput.Model {
	e := textinput.New()
	e.Prompt = ""
	e.CharLimit = 200
	e.Cursor.SetMode(cursor.CursorStatic)
	e.Cursor.Style = st.here
	e.Focus()
	return e
}

// reckon computes what follows from the sheet. It is done once for a change.
func (d *desk) reckon() { d.rep = reckon(d.doc) }

// focused is the answer under the hands; ok is false on a page.
func (d *desk) focused() (k worksheets.Key, ok bool) {
	f := forms[d.step]
	if len(f) == 0 {
		return 0, false
	}
	return f[d.at[d.step]].key, true
}

// fieldKind tells fields by how keys work in them.
type fieldKind uint8

const (
	lengthField fieldKind = iota // typed, nudged by ruler marks
	textField                    // typed
	choiceField                  // chosen with left and right
	slideField                   // pushed with left and right, or typed
)

func kindOf(k worksheets.Key) fieldKind {
	switch k.Kind() {
	case worksheets.Girth, worksheets.Amount, worksheets.Signed:
		return lengthField
	case worksheets.Choice, worksheets.Scale:
		return choiceField
	case worksheets.Slid:
		return slideField
	}
	return textField
}

func (d *desk) on(kind fieldKind) bool {
	k, ok := d.focused()
	return ok && kindOf(k) == kind
}

// reach prepares the line of input for the field that the hands came to.
func (d *desk) reach() {
	k, ok := d.focused()
	if !ok {
		return
	}
	d.entry.SetValue(d.doc.Sheet.Text(k))
	d.entry.CursorEnd()
	d.fresh = k.Kind() != worksheets.Text || d.doc.Sheet.Text(k) == ""
}

// key takes one key of the terminal.
func (d *desk) key(msg tea.KeyMsg) wish {
	d.message = ""
	name := msg.String()
	if !msg.Paste {
		if b, ok := d.find(name); ok {
			return d.do(b.act, name)
		}
	}
	return d.typed(msg)
}

// do is what the bindings come to.
func (d *desk) do(a action, name string) wish {
	switch a {
	case actNextField, actPrevField, actEnter:
		return d.moveField(a)
	case actTurn, actStep:
		return d.moveStep(a, name)
	case actUp:
		return d.vertical(name == "up")
	case actSideways:
		return d.horizontal(name == "left")
	case actLeast:
		return d.set(worksheets.Slide, "least")
	case actEven:
		return d.set(worksheets.Slide, "even")
	case actUnit:
		return d.switchUnit()
	case actSave:
		d.commit()
		return wish{kind: wishSave, over: d.conflict}
	case actList:
		d.commit()
		return wish{kind: wishList}
	case actKeys:
		return wish{kind: wishKeys}
	case actQuit:
		d.commit()
		return wish{kind: wishQuit}
	}
	return wish{}
}

// typed puts what no binding took into the field.
func (d *desk) typed(msg tea.KeyMsg) wish {
	k, ok := d.focused()
	switch {
	case msg.Type == tea.KeyEsc:
		return d.commit()
	case !ok || kindOf(k) == choiceField || msg.Alt && msg.Type == tea.KeyRunes: // alt+a would type "a"
		d.message = d.whyNot(msg.String())
		return wish{}
	case d.doc.ReadOnly != "":
		d.message = "Read-only: " + d.doc.ReadOnly + "."
		return wish{}
	case msg.Paste && strings.ContainsAny(string(msg.Runes), "\r\n") && k.Kind() != worksheets.Text:
		d.message = "A pasted text with a line break is not one length; nothing was changed."
		return wish{}
	}
	if most := d.entry.CharLimit; len(msg.Runes) > most { // a pasted megabyte would take minutes
		msg.Runes = msg.Runes[:most]
	}
	if d.fresh && (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace) && k.Kind() != worksheets.Text {
		d.entry.SetValue("")
	}
	d.fresh = false
	d.entry, _ = d.entry.Update(msg)
	return wish{}
}

// commit takes what was typed as the answer, readable or not.
func (d *desk) commit() wish {
	k, ok := d.focused()
	if !ok || kindOf(k) == choiceField || d.entry.Value() == d.doc.Sheet.Text(k) {
		return wish{}
	}
	return d.set(k, d.entry.Value())
}

// set changes an answer, reckons, and asks for the sheet to be saved.
func (d *desk) set(k worksheets.Key, text string) wish {
	if d.doc.ReadOnly != "" {
		d.message = "Read-only: " + d.doc.ReadOnly + "."
		d.reach()
		return wish{}
	}
	if err := d.doc.Sheet.Set(k, text); err != nil {
		d.message = fields[k].label + ": " + plain(err.Error())
	}
	d.reckon()
	d.reach()
	if d.conflict || d.doc.Path() == "" {
		return wish{} // kept in memory until the person decides
	}
	return wish{kind: wishSave}
}

// moveField goes to the next or the field before; Enter on the last field goes
// on to the next step.
func (d *desk) moveField(a action) wish {
	w := d.commit()
	f, by := forms[d.step], 1
	if a == actPrevField {
		by = -1
	}
	next := nextField(f, d.at[d.step], by)
	if a == actEnter && next <= d.at[d.step] {
		d.goTo(d.step + 1)
		return w
	}
	d.at[d.step] = next
	d.reach()
	return w
}

// nextField is the index of the field before or after one, going round.
func nextField(f []item, from, by int) int {
	for i := from + by; len(f) > 0 && i != from; i += by {
		i = (i + len(f)) % len(f)
		if f[i].heading == "" {
			return i
		}
	}
	return max(from, 0)
}

func (d *desk) moveStep(a action, name string) wish {
	w := d.commit()
	switch {
	case a == actStep:
		d.goTo(step(name[len(name)-1] - '1'))
	case name == "pgup" || name == "ctrl+p":
		d.goTo(d.step - 1)
	default:
		d.goTo(d.step + 1)
	}
	return w
}

func (d *desk) goTo(s step) {
	d.step = max(0, min(s, stepCount-1))
	d.scroll = 0
	d.reach()
}

func (d *desk) switchUnit() wish {
	w := d.commit()
	was := d.doc.Sheet.Unit()
	if set := d.set(worksheets.Unit, was.Other().String()); set.kind != wishNothing {
		w = set
	}
	if d.doc.Sheet.Unit() != was {
		d.message = fmt.Sprintf("Shown in %s; nothing measured changes. The ruler stays %s: see step 1.",
			unitWords(d.doc.Sheet.Unit()), d.doc.Sheet.Ruler())
	}
	return w
}

// saved takes the outcome of a save.
func (d *desk) saved(msg savedMsg) {
	switch {
	case errors.Is(msg.err, worksheets.ErrChanged):
		d.conflict = true
		d.message = "Not saved: another program changed the file. ^s asks what to do."
	case msg.err != nil:
		d.message = "Not saved: " + plain(fileWords(msg.err)) + ". It is kept here; ^s tries again."
	default:
		d.adopt(msg)
		d.conflict = false
		if msg.backup != "" {
			d.message = "What the file held before is kept in " + plain(msg.backup) + "."
		}
	}
}

// adopt takes the document as it was written, with what was changed here since.
func (d *desk) adopt(msg savedMsg) {
	k, _ := d.focused()
	now, typing := d.doc.Sheet, d.entry.Value() != d.doc.Sheet.Text(k)
	d.doc = msg.doc
	if !now.Equal(msg.sheet) {
		d.doc.Sheet = now
	}
	if d.doc.Sheet.Equal(now) {
		return
	}
	d.reckon() // a new file says in words what was left to the usual
	if !typing {
		d.reach()
	}
}

// state says in a word where the sheet is kept.
func (d *desk) state() string {
	switch {
	case d.doc.ReadOnly != "":
		return "read-only"
	case d.doc.Path() == "":
		return "example, not kept"
	case d.doc.Saved():
		return "saved"
	}
	return "not saved"
}
