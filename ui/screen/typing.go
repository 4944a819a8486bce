package screen

import (
	"strings"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/forms"
	"capscye/ui/typeset"
)

// typing is what is being typed into the field under the hands.
type typing struct {
	entry   textinput.Model
	reached string // what the line of input held when the field was reached
	fresh   bool   // nothing was typed since: typing replaces
	locked  bool   // the text has lines or signs that a line of input would lose
}

// newEntry is a line of input that never blinks: a timer would cost processor
// time while nothing happens. Suggestions stay off; they can panic on Tab at
// the version in use.
func newEntry(st styles) textinput.Model {
	e := textinput.New()
	e.Prompt = ""
	e.CharLimit = forms.LongestAnswer
	e.Cursor.SetMode(cursor.CursorStatic)
	e.Cursor.Style = st.here
	e.Focus()
	return e
}

// begin puts the text of a field into the line of input. fresh tells that the first
// letter replaces it.
func (t *typing) begin(text string, fresh bool) {
	t.entry.SetValue(text)
	t.entry.CursorEnd()
	t.reached, t.fresh = t.entry.Value(), fresh
	t.locked = t.reached != text || strings.ContainsFunc(text, typeset.Unprintable)
}

func (t *typing) text() string { return t.entry.Value() }

// changed tells that what stands there is not what the field was reached with.
func (t *typing) changed() bool { return t.text() != t.reached }

// take takes a key; wholly tells that it does away with the value of a field that
// was just reached.
func (t *typing) take(msg tea.KeyMsg, wholly bool) {
	if t.fresh && wholly {
		t.entry.SetValue("")
	}
	t.fresh = false
	t.entry, _ = t.entry.Update(msg)
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

// render is the line of input in a box of fixed width: the library's own grows by a
// cell when typing starts.
func (t *typing) render(room int, st styles) string {
	if t.fresh && t.text() != "" {
		return typeset.Pad(st.here.Render(typeset.Cut(typeset.Plain(t.text()), room)), room)
	}
	if strings.ContainsFunc(t.text(), typeset.Unprintable) { // shown, not obeyed
		return typeset.Pad(typeset.Plain(t.text()), room)
	}
	e := t.entry
	e.Width = room - 1
	e.SetCursor(e.Position()) // lets it find the part that is seen, at this width
	return typeset.Pad(e.View(), room)
}
