package parts

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/forms"
	"capscye/ui/typeset"
)

// Typing is a line of input, and what is being typed into it.
type Typing struct {
	entry   textinput.Model
	reached string // what it held when it was reached
	whole   bool   // as long as nothing is typed, the value is one: a letter replaces it, left and right change it
	fresh   bool   // nothing was typed since it was reached
	locked  bool   // the text has lines or signs that a line of input would lose
	given   string // what esc took out of it, for the next esc
}

// NewTyping is an empty line of input.
func NewTyping(st Styles) Typing { return Typing{entry: newEntry(st)} }

// newEntry is a line of input that never blinks: a timer would cost processor
// time while nothing happens. Suggestions stay off; they can panic on Tab at
// the version in use.
func newEntry(st Styles) textinput.Model {
	e := textinput.New()
	e.Prompt = ""
	e.CharLimit = forms.LongestAnswer
	e.Cursor.SetMode(cursor.CursorStatic)
	e.Cursor.Style = st.Here
	e.Focus()
	return e
}

// Begin puts the text of a field into the line of input. whole tells that the first
// letter replaces it.
func (t *Typing) Begin(text string, whole bool) {
	t.entry.SetValue(text)
	t.entry.CursorEnd()
	t.reached, t.whole, t.fresh, t.given = t.entry.Value(), whole, true, ""
	t.locked = t.reached != text || strings.ContainsFunc(text, typeset.Unprintable)
}

// Text is what stands there.
func (t *Typing) Text() string { return t.entry.Value() }

// Changed tells that what stands there is not what it was reached with.
func (t *Typing) Changed() bool { return t.Text() != t.reached }

// Locked tells that the text has lines or signs that a line of input would lose.
func (t *Typing) Locked() bool { return t.locked }

// Put types a text in the place of what stands there.
func (t *Typing) Put(text string) {
	t.entry.SetValue(text)
	t.entry.CursorEnd()
	t.fresh = false
}

// CanTypeAgain tells that something was given back that can be typed again.
func (t *Typing) CanTypeAgain() bool { return t.given != "" }

// Refuses says why a key, or what was pasted, does not go into the line; "" where it does.
func (t *Typing) Refuses(msg tea.KeyMsg) string {
	switch {
	case msg.Paste && strings.ContainsAny(string(msg.Runes), "\r\n"):
		return "The paste has a line break; nothing was changed."
	case len(msg.Runes) > t.entry.CharLimit-len([]rune(t.Text())): // a pasted megabyte would take minutes
		return fmt.Sprintf("Too long: at most %d characters; nothing was changed.", t.entry.CharLimit)
	}
	return ""
}

// Untouched tells that the value was just reached, and is taken as one.
func (t *Typing) Untouched() bool { return t.fresh && t.whole }

// Take takes a key, which does away with a value that was just reached where it types
// or takes away.
func (t *Typing) Take(msg tea.KeyMsg) {
	if msg.Alt && msg.Type == tea.KeyRunes { // alt+a would type "a"
		return
	}
	if t.Untouched() && replaces(msg) {
		t.entry.SetValue("")
	}
	t.fresh = false
	t.entry, _ = t.entry.Update(msg)
}

// GiveBack brings back what the field was reached with.
func (t *Typing) GiveBack() {
	given := t.Text()
	t.Begin(t.reached, t.whole)
	t.given = given
}

// TypeAgain types what was there before that, if anything was.
func (t *Typing) TypeAgain() {
	if t.given != "" {
		t.Put(t.given)
		t.given = ""
	}
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

// Render is the line of input in a box of fixed width: the library's own grows by a
// cell when typing starts.
func (t *Typing) Render(room int, st Styles) string {
	if t.Untouched() && t.Text() != "" {
		return typeset.Pad(st.Here.Render(typeset.Cut(typeset.Plain(t.Text()), room)), room)
	}
	if strings.ContainsFunc(t.Text(), typeset.Unprintable) { // shown, not obeyed
		return typeset.Pad(typeset.Plain(t.Text()), room)
	}
	e := t.entry
	e.Width = room - 1
	e.SetCursor(e.Position()) // lets it find the part that is seen, at this width
	return typeset.Pad(e.View(), room)
}
