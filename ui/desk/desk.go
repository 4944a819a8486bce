// Package desk is a worksheet being worked on: what is typed, tried and undone in it, the
// six steps as they are drawn, and the keys that work in them.
//
// What lies on the desk is the sheet of the file and up to three copies; the hands are on
// one of them. Only the first is ever saved. A copy is what it changes: a change of the
// sheet reaches the copies that do not differ there. Undo remembers the whole of it.
//
// What is typed and is no answer is a draft of its sheet (draft.go): it is in no file and in
// no plan, and it outlives the program as what is unsaved does.
//
// A desk reads and writes no file, but for the end of its guard against a crash: what it
// needs beyond itself it wants (wishes.go), and is told what came of it. Keys are a table,
// which also makes the bottom line, the page of keys and the manual.
package desk

import (
	"fmt"

	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// Desk is a worksheet being worked on: the sheet of a file or of an example, and what lies
// beside it. Each of its parts is about one thing and has the methods that need no other;
// what is read on every page is embedded.
type Desk struct {
	standing // the sheet, and how its file stands to it
	trials   // copies beside it
	reports  // what follows from all of them
	place    // where the hands are
	typing   parts.Typing
	visit    visit
	history  history
	guard    guard

	styles        parts.Styles
	width, height int
	Message       string // what just happened
}

// New lays a worksheet on the desk, with copies beside it.
func New(d *worksheets.Document, copies []worksheets.Sheet, st parts.Styles, by report.Reckoner) *Desk {
	k := &Desk{standing: standing{Doc: d}, trials: trials{Copies: copies}, reports: reports{by: by},
		place: beginning(), typing: parts.NewTyping(st), styles: st}
	k.land()
	k.reckon()
	if d.ReadOnly != "" {
		k.Message = k.ReadOnly()
	}
	k.reach()
	return k
}

// Resize is told the window, so that scrolling ends where the page does.
func (d *Desk) Resize(width, height int) {
	d.width, d.height = width, height
	d.scrollBy(0)
}

// reach prepares the line of input for the field that the hands came to, with what
// waits there, or the answer.
func (d *Desk) reach() {
	k, ok := d.Focused()
	if !ok {
		return
	}
	text := d.ToType(k, d.Sheet().Text(k), d.draft())
	d.typing.Begin(text, k.Kind() != worksheets.Text || text == "")
	d.preview = nil
	d.come(k)
}

// Set changes an answer, reckons, and asks for the sheet to be saved.
func (d *Desk) Set(k worksheets.Key, text string) parts.Wish {
	if why := d.Closed(); why != "" {
		d.Message = why
		d.reach()
		return nil
	}
	sheet, was := *d.Sheet(), d.answerWords(k)
	emptied := text == "" && sheet.Text(k) != ""
	if err := sheet.Set(k, text); err != nil {
		d.Message = forms.Fields[k].Label + ": " + typeset.Plain(err.Error())
	}
	w := d.Change(sheet, forms.Fields[k].Words)
	if k == worksheets.Unit && d.Message == "" {
		d.Message = fmt.Sprintf("The ruler stays %s: it is a field below.", d.Sheet().Ruler())
	}
	if emptied {
		d.Message = fmt.Sprintf("%s is empty now; ^z brings back %s.", typeset.Capitalised(forms.Fields[k].Words), was)
	}
	return w
}
