package ui

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"capscye/units"
	"capscye/worksheets"
)

// desk is a worksheet being worked on: the steps, the field under the hands and
// what is being typed into it.
type desk struct {
	doc    *worksheets.Document
	rep    report
	styles styles
	today  time.Time

	// preview is the report with what is being typed, while that can be read.
	// Only pictures show it: what is half typed changes no answer.
	preview *report

	width  int
	height int
	shown  units.System // lengths are shown in it; none for the sheet's own

	step    step
	at      [stepCount]int // the field under the hands, per step, as an index into its form
	scroll  int            // of the page of step 5
	trace   int            // the step at the table, in step 6
	entry   textinput.Model
	reached string // what the line of input held when the field was reached
	fresh   bool   // nothing was typed since: typing replaces
	locked  bool   // the text has lines or signs that a line of input would lose

	copies []worksheets.Sheet // laid beside the sheet to try something; see laid
	hand   int                // what the hands are on: 0 the sheet, n the nth copy
	beside []report           // of the sheet and every copy, while there are any

	recovery *worksheets.Recovery // where what is not saved is kept against a crash
	kept     []worksheets.Sheet   // what is kept there, or about to be
	keeping  bool                 // something is being put there
	unsafe   bool                 // it was said that nothing can be

	past     []change // what can be taken back, the latest last
	future   []change // what was taken back
	message  string   // what just happened
	conflict bool     // the file was changed by something else and not yet decided
	failed   bool     // the last save did not succeed
	mayLose  bool     // the person agreed that the file's comments go
}

func newDesk(d *worksheets.Document, copies []worksheets.Sheet, st styles, today time.Time) *desk {
	k := &desk{doc: d, copies: copies, styles: st, today: today, entry: newEntry(st)}
	k.reckon()
	for s := range stepCount {
		k.at[s] = nextField(forms[s], -1, 1)
	}
	if d.ReadOnly != "" {
		k.message = k.readOnly()
	}
	k.reach()
	return k
}

func (d *desk) readOnly() string { return "Read-only: " + d.doc.ReadOnly + "." }

// newEntry is a line of input that never blinks: a timer would cost processor
// time while nothing happens. Suggestions stay off; they can panic on Tab at
// the version in use.
func newEntry(st styles) textinput.Model {
	e := textinput.New()
	e.Prompt = ""
	e.CharLimit = longestAnswer
	e.Cursor.SetMode(cursor.CursorStatic)
	e.Cursor.Style = st.here
	e.Focus()
	return e
}

// pictured is the report that pictures show.
func (d *desk) pictured() report {
	if d.preview != nil {
		return *d.preview
	}
	return d.rep
}

// panelPictures are the pictures beside a form, for the room that is left.
func (d *desk) panelPictures(width, height int) []string {
	if d.preview == nil {
		return pictures(d.rep, "", width, height)
	}
	return pictures(d.pictured(), " as typed", width, height)
}

// resize is told the window, so that scrolling ends where the page does.
func (d *desk) resize(width, height int) {
	d.width, d.height = width, height
	d.scrollBy(0)
}

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
	text := d.sheet().Text(k)
	if k.IsLength() && d.shown != 0 { // a bare number would read as the other unit here
		text = worksheets.WithUnit(text, d.sheet().Unit())
	}
	d.entry.SetValue(text)
	d.entry.CursorEnd()
	d.reached, d.preview = d.entry.Value(), nil
	d.fresh = k.Kind() != worksheets.Text || text == ""
	d.locked = d.reached != text || strings.ContainsFunc(text, unprintable)
}

// typed is the sheet as it would be with what stands in the line of input.
func (d *desk) typed(k worksheets.Key) (worksheets.Sheet, error) {
	sheet, text := *d.sheet(), d.entry.Value()
	if k.IsLength() && d.shown != 0 {
		text = worksheets.WithUnit(text, d.shown)
	}
	err := sheet.Set(k, text)
	return sheet, err
}

// key takes one key of the terminal.
func (d *desk) key(msg tea.KeyMsg) wish {
	d.message = ""
	name := msg.String()
	if !msg.Paste {
		if b, ok := d.find(name); ok {
			return d.do(b.act, name)
		}
		if why := d.whyNot(name); why != "" && strings.HasPrefix(name, "ctrl+") { // a line of input has uses of its own for some
			d.message = why
			return wish{}
		}
	}
	return d.enter(msg)
}

// do is what the bindings come to.
func (d *desk) do(a action, name string) wish {
	switch a {
	case actNextField, actPrevField, actEnter:
		return d.moveField(a)
	case actTurn, actStep:
		return d.moveStep(a, name)
	case actNudge:
		return d.nudge(unless(name, "down"))
	case actChoose:
		return d.choose(unless(name, "left", "up"))
	case actPush:
		return d.pushSlide(unless(name, "left", "down"))
	case actScroll:
		if d.step == stepTrace {
			d.trace = d.traceAt(d.trace + unless(name, "up"))
		} else {
			d.scrollBy(unless(name, "up"))
		}
	case actDone:
		return d.tick()
	case actUndone:
		return d.untick()
	case actJump:
		d.jump(name)
	case actUndo:
		return d.undo()
	case actRedo:
		return d.redo()
	case actTake:
		return d.takeHere()
	case actOffers:
		return wish{kind: wishOffers}
	case actCopy:
		return d.layCopy()
	case actOther:
		return d.nextLaid(1)
	case actCopies:
		d.commit()
		return wish{kind: wishCopies}
	case actTable:
		return wish{kind: wishTable}
	case actCard:
		return wish{kind: wishCard}
	case actNote:
		return wish{kind: wishNote}
	case actLeast:
		return d.set(worksheets.Slide, "least")
	case actEven:
		return d.set(worksheets.Slide, "even")
	case actUnit:
		return d.switchUnit()
	case actSave:
		d.commit()
		return wish{kind: wishSave, ask: true}
	case actList:
		d.commit()
		return wish{kind: wishList}
	case actWorking:
		return wish{kind: wishWorking}
	case actDrill:
		return wish{kind: wishDrill}
	case actWords:
		return wish{kind: wishWords}
	case actKeys:
		return wish{kind: wishKeys}
	case actQuit:
		d.commit()
		return wish{kind: wishQuit}
	}
	return wish{}
}

// unless is the way that a key goes: on, unless it is one of those that go back.
func unless(name string, back ...string) int {
	if slices.Contains(back, name) {
		return -1
	}
	return 1
}

// enter puts what no binding took into the field.
func (d *desk) enter(msg tea.KeyMsg) wish {
	k, ok := d.focused()
	switch {
	case msg.Type == tea.KeyEsc:
		return d.commit()
	case !ok || kindOf(k) == choiceField || msg.Alt && msg.Type == tea.KeyRunes: // alt+a would type "a"
		d.message = d.whyNot(msg.String())
		return wish{}
	case d.shut():
		d.message = d.readOnly()
		return wish{}
	case d.locked:
		d.message = "This text has lines or signs that would be lost here: edit it in the file."
		return wish{}
	case msg.Paste && strings.ContainsAny(string(msg.Runes), "\r\n"):
		d.message = "A pasted text with a line break is not taken; nothing was changed."
		return wish{}
	case len(msg.Runes) > d.entry.CharLimit-len([]rune(d.entry.Value())): // a pasted megabyte would take minutes
		d.message = fmt.Sprintf("Too long: at most %d characters; nothing was changed.", d.entry.CharLimit)
		return wish{}
	}
	if d.fresh && k.Kind() != worksheets.Text && replaces(msg) {
		d.entry.SetValue("")
	}
	d.fresh = false
	d.entry, _ = d.entry.Update(msg)
	d.foresee()
	return wish{}
}

// replaces tells the keys that do away with the old value of a field that was
// just reached.
func replaces(msg tea.KeyMsg) bool {
	switch msg.Type {
	case tea.KeyRunes, tea.KeySpace, tea.KeyBackspace, tea.KeyDelete:
		return true
	}
	return false
}

// commit takes what was typed as the answer, readable or not.
func (d *desk) commit() wish {
	k, ok := d.focused()
	if !ok || kindOf(k) == choiceField || d.entry.Value() == d.reached {
		return wish{}
	}
	sheet, _ := d.typed(k)
	return d.set(k, sheet.Text(k))
}

// set changes an answer, reckons, and asks for the sheet to be saved.
func (d *desk) set(k worksheets.Key, text string) wish {
	if d.shut() {
		d.message = d.readOnly()
		d.reach()
		return wish{}
	}
	before, sheet := d.laid(), *d.sheet()
	if err := sheet.Set(k, text); err != nil {
		d.message = fields[k].label + ": " + plain(err.Error())
	}
	d.lay(sheet)
	d.remember(before, fields[k].words)
	if k == worksheets.Unit && d.message == "" {
		d.message = fmt.Sprintf("The ruler stays %s: it is a field below.", d.sheet().Ruler())
	}
	d.reckon()
	d.reach()
	return d.keep()
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
	if d.step == stepTrace {
		d.trace = d.firstUndone()
	}
	d.reach()
}

// switchUnit shows lengths in the other system, and reads bare numbers so.
// Nothing in the sheet changes; the unit that it is kept in is a field of step 1.
func (d *desk) switchUnit() wish {
	w := d.commit()
	if d.shown == 0 {
		d.shown = d.sheet().Unit().Other()
	} else {
		d.shown = 0
	}
	d.reckon()
	d.reach()
	d.message = fmt.Sprintf("Shown and typed in %s; nothing measured changes. Ruler: %s.",
		unitWords(d.rep.scale.System), d.rep.scale.Ruler)
	return w
}
