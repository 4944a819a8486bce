package screen

import (
	"cmp"
	"errors"
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/desk"
	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/typeset"
	"capscye/units"
	"capscye/worksheets"
)

// The cell of the page of sizes that the hands are on: what stands there, and what becomes
// of what is typed into it.

// text is an answer of a column as it was typed, draft what waits there.
func (p *sizesPage) text(col int, k worksheets.Key) string {
	if col == len(p.all) {
		return ""
	}
	return p.all[col].Report.Sheet.Text(k)
}

func (p *sizesPage) draft(col int, k worksheets.Key) string {
	name, ok := p.draftName(col)
	if !ok {
		return ""
	}
	return p.desk.Sheet().Drafts.OfSize(name, k)
}

// waits tells that a draft stands in the cell under the hands as it was left.
func (p *sizesPage) waits() bool { return !p.typing.Changed() && p.draft(p.col, p.at()) != "" }

// draftName is the size that drafts of a column are kept for; there is none for a size of the
// file that has no name.
func (p *sizesPage) draftName(col int) (name string, ok bool) {
	switch {
	case col == 0:
		return "", true
	case col == len(p.all):
		return worksheets.AnotherSize, true
	}
	return p.all[col].Name, p.all[col].Name != ""
}

// reach prepares the line of input for the cell that the hands came to.
func (p *sizesPage) reach() {
	k := p.at()
	p.typing.Begin(p.desk.ToType(k, p.text(p.col, k), p.draft(p.col, k)), true)
}

// typed is the sheet with what stands in the line of input.
func (p *sizesPage) typed() (worksheets.Sheet, error) {
	k := p.at()
	text, err := p.desk.AsTyped(k, &p.typing, p.draft(p.col, k))
	if err != nil {
		return worksheets.Sheet{}, err
	}
	sheet := *p.desk.Sheet()
	if p.col == 0 {
		sheet.Drafts = sheet.Drafts.With(k, "")
		return sheet, sheet.Set(k, text)
	}
	i, z := p.col-1, worksheets.Size{}
	if p.onNew() {
		sheet.Drafts = sheet.Drafts.WithSize(worksheets.AnotherSize, worksheets.PatternSize, "")
	} else {
		z = sheet.Sizes[i]
		sheet.Drafts = sheet.Drafts.WithSize(z.Name(), k, "")
	}
	if k == worksheets.PatternSize && text == "" {
		return sheet, errNoName
	}
	sheet = sheet.WithSize(i, z.With(k, text))
	return sheet, sheet.CheckSize(i, k)
}

var errNoName = errors.New("a size needs a name; ^x removes the size")

// commit takes what was typed as the answer, or lets it wait where it cannot be. stays
// tells that it is neither, and that the hands stay with it.
func (p *sizesPage) commit() (w parts.Wish, stays bool) {
	if !p.typing.Changed() {
		return nil, false
	}
	sheet, err := p.typed()
	name, kept := p.draftName(p.col)
	switch {
	case p.onNew() && p.typing.Text() == "":
		p.putDraft(name, "")
		return nil, false
	case strings.TrimSpace(p.typing.Text()) == "" && kept && p.draft(p.col, p.at()) != "": // what was taken away is the draft
		p.putDraft(name, "")
		value := cmp.Or(p.all[p.col].Report.Value(p.at()), "empty")
		p.desk.Message = fmt.Sprintf("%s stays %s; empty it again to clear it.", typeset.Capitalised(p.what()), value)
		return nil, false
	case err == nil:
		w, done := p.change(sheet, p.what())
		if own, asks := w.(desk.ToOwn); asks {
			own.First = p.answer()
			return own, true
		}
		return w, !done
	case errors.Is(err, errNoName):
		p.desk.Message = typeset.Capitalised(err.Error()) + "."
		p.typing.GiveBack()
		return nil, true
	case !kept || p.onNew():
		p.desk.Message = refusal(err, p.meanwhile())
		return nil, true
	}
	p.putDraft(name, strings.TrimSpace(p.typing.Text()))
	p.desk.Message = refusal(err, p.meanwhile())
	return nil, false
}

// answer is what was typed, for a worksheet of one's own.
func (p *sizesPage) answer() *desk.TypedAnswer {
	a := desk.TypedAnswer{Key: p.at(), Text: strings.TrimSpace(p.typing.Text())}
	switch {
	case p.col == 0:
	case a.Key == worksheets.PatternSize:
		a.Size = a.Text
	default:
		a.Size = p.all[p.col].Name
	}
	return &a
}

// putDraft lets a text wait in the cell under the hands; "" takes it away.
func (p *sizesPage) putDraft(size, text string) {
	sheet := *p.desk.Sheet()
	sheet.Drafts = sheet.Drafts.WithSize(size, p.at(), text)
	p.desk.LetWait(sheet, p.what())
	p.refresh()
}

// refusal says why a text cannot be taken, so short that it fits a line, and what becomes
// of it; then what would be right, where the line has room.
func refusal(err error, then string) string {
	short := func(text string) string { return `"` + typeset.Cut(typeset.Plain(text), 20) + `"` }
	wrong, want := typeset.Capitalised(typeset.Plain(err.Error())), ""
	var value *worksheets.ValueError
	var length *units.ParseError
	switch {
	case errors.As(err, &value):
		wrong, want = short(value.Input)+" "+value.Reason, " "+value.Want+"."
	case errors.As(err, &length):
		wrong, want = short(length.Input)+" is not a "+length.Kind, " "+length.Want+"."
		if more := wrong + ": " + length.Reason; length.Reason != "" && typeset.Width(more) <= 57 { // with the rest a line of 80
			wrong = more
		}
	}
	return wrong + "; " + then + "." + want
}

// what names the cell at hand: "sleeve width of size 16".
func (p *sizesPage) what() string {
	words := forms.Fields[p.at()].Words
	if p.onNew() {
		return "another size"
	}
	return desk.SizeWords(p.all[p.col].Name, words)
}

// change lays a changed sheet on the desk, reckons, and asks for it to be saved; done
// tells that it lies there. An example stays as it is: a copy of it is changed, for those
// who want that and no worksheet of their own.
func (p *sizesPage) change(sheet worksheets.Sheet, what string) (w parts.Wish, done bool) {
	d := p.desk
	example := d.IsExample() && d.Hand == 0
	switch {
	case d.Shut():
		d.Message = d.ReadOnly()
		p.reach()
		return nil, false
	case example && d.AsksOwn(): // in a copy of an example nobody is asked
		return desk.ToOwn{Try: toPressAgain{page: p}}, false
	case d.Full():
		d.Message = fmt.Sprintf("The example stays as it is, and has %d copies: esc, then ^x drops one.", desk.MostCopies)
		return nil, false
	}
	w = d.Change(sheet, what)
	d.TryHere()
	if example {
		d.Message = "You are in a copy; the example stays as it is. Esc, then ^x drops the copy."
	}
	p.refresh()
	return w, true
}

// toPressAgain wants the key pressed again that an example asked about, to only try what
// it does.
type toPressAgain struct {
	parts.Wanted
	page *sizesPage
	key  tea.KeyMsg
}

func (w toPressAgain) grant(m *root) tea.Cmd {
	m.uncover()
	m.desk.TryHere()
	return m.grant(w.page.Key(w.key))
}
