package screen

import (
	"fmt"

	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// desk is a worksheet being worked on. Each of its parts is about one thing and has
// the methods that need no other; what is read on every page is embedded.
type desk struct {
	standing // the sheet, and how its file stands to it
	trials   // copies beside it
	reports  // what follows from all of them
	place    // where the hands are
	typing   typing
	visit    visit
	history  history
	guard    guard

	styles        styles
	width, height int
	message       string // what just happened
}

func newDesk(d *worksheets.Document, copies []worksheets.Sheet, st styles, by report.Reckoner) *desk {
	k := &desk{standing: standing{doc: d}, trials: trials{copies: copies}, reports: reports{by: by},
		place: beginning(), typing: newTyping(st), styles: st}
	k.land()
	k.reckon()
	if d.ReadOnly != "" {
		k.message = k.readOnly()
	}
	k.reach()
	return k
}

// resize is told the window, so that scrolling ends where the page does.
func (d *desk) resize(width, height int) {
	d.width, d.height = width, height
	d.scrollBy(0)
}

// reach prepares the line of input for the field that the hands came to, with what
// waits there, or the answer.
func (d *desk) reach() {
	k, ok := d.focused()
	if !ok {
		return
	}
	text := d.toType(k, d.sheet().Text(k), d.draft())
	d.typing.begin(text, k.Kind() != worksheets.Text || text == "")
	d.preview = nil
	d.come(k)
}

// set changes an answer, reckons, and asks for the sheet to be saved.
func (d *desk) set(k worksheets.Key, text string) wish {
	if d.shut() {
		d.message = d.readOnly()
		d.reach()
		return nil
	}
	sheet, was := *d.sheet(), d.answerWords(k)
	emptied := text == "" && sheet.Text(k) != ""
	if err := sheet.Set(k, text); err != nil {
		d.message = forms.Fields[k].Label + ": " + typeset.Plain(err.Error())
	}
	d.change(sheet, forms.Fields[k].Words)
	if k == worksheets.Unit && d.message == "" {
		d.message = fmt.Sprintf("The ruler stays %s: it is a field below.", d.sheet().Ruler())
	}
	if emptied {
		d.message = fmt.Sprintf("%s is empty now; ^z brings back %s.", typeset.Capitalised(forms.Fields[k].Words), was)
	}
	return d.save()
}
