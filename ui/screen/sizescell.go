package screen

import (
	"errors"
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/forms"
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
	return p.desk.sheet().Drafts.OfSize(name, k)
}

// waits tells that a draft stands in the cell under the hands as it was left.
func (p *sizesPage) waits() bool { return !p.typing.changed() && p.draft(p.col, p.at()) != "" }

// draftName is the size that drafts of a column are kept for; there is none for a size
// without a name.
func (p *sizesPage) draftName(col int) (name string, ok bool) {
	switch {
	case col == 0:
		return "", true
	case col == len(p.all):
		return "", false
	}
	return p.all[col].Name, p.all[col].Name != ""
}

// reach prepares the line of input for the cell that the hands came to.
func (p *sizesPage) reach() {
	k := p.at()
	p.typing.begin(p.desk.toType(k, p.text(p.col, k), p.draft(p.col, k)), true)
}

// typed is the sheet with what stands in the line of input.
func (p *sizesPage) typed() (worksheets.Sheet, error) {
	k := p.at()
	text, err := p.desk.asTyped(k, p.typing.text())
	if err != nil {
		return worksheets.Sheet{}, err
	}
	sheet := *p.desk.sheet()
	if p.col == 0 {
		sheet.Drafts = sheet.Drafts.With(k, "")
		return sheet, sheet.Set(k, text)
	}
	i, z := p.col-1, worksheets.Size{}
	if !p.onNew() {
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
func (p *sizesPage) commit() (w wish, stays bool) {
	if !p.typing.changed() {
		return nil, false
	}
	sheet, err := p.typed()
	name, kept := p.draftName(p.col)
	switch {
	case p.onNew() && p.typing.text() == "":
		p.reach()
		return nil, false
	case err == nil:
		w, done := p.change(sheet, p.what())
		if own, asks := w.(toOwn); asks {
			own.first = p.answer()
			return own, true
		}
		return w, !done
	case errors.Is(err, errNoName):
		p.desk.message = typeset.Capitalised(err.Error()) + "."
		p.typing.giveBack()
		return nil, true
	case !kept:
		p.desk.message = refusal(err, "esc drops it")
		return nil, true
	}
	p.putDraft(name, strings.TrimSpace(p.typing.text()))
	p.desk.message = refusal(err, "the answer stays")
	return nil, false
}

// answer is what was typed, for a worksheet of one's own.
func (p *sizesPage) answer() *typedAnswer {
	a := typedAnswer{key: p.at(), text: strings.TrimSpace(p.typing.text())}
	switch {
	case p.col == 0:
	case a.key == worksheets.PatternSize:
		a.size = a.text
	default:
		a.size = p.all[p.col].Name
	}
	return &a
}

// putDraft lets a text wait in the cell under the hands; "" takes it away.
func (p *sizesPage) putDraft(size, text string) {
	sheet := *p.desk.sheet()
	sheet.Drafts = sheet.Drafts.WithSize(size, p.at(), text)
	p.desk.letWait(sheet, p.what())
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
	return sizeWords(p.all[p.col].Name, words)
}

// change lays a changed sheet on the desk, reckons, and asks for it to be saved; done
// tells that it lies there. An example stays as it is: a copy of it is changed, for those
// who want that and no worksheet of their own.
func (p *sizesPage) change(sheet worksheets.Sheet, what string) (w wish, done bool) {
	d := p.desk
	example := d.isExample() && d.hand == 0
	switch {
	case d.shut():
		d.message = d.readOnly()
		p.reach()
		return nil, false
	case example && !d.trying: // in a copy of an example nobody is asked
		return toOwn{try: toPressAgain{page: p}}, false
	case example && len(d.copies) == MostCopies:
		d.message = fmt.Sprintf("The example stays as it is, and has %d copies: esc, then ^x drops one.", MostCopies)
		return nil, false
	}
	d.change(sheet, what)
	d.trying = d.trying || d.isExample()
	if example {
		d.message = "You are in a copy; the example stays as it is. Esc, then ^x drops the copy."
	}
	p.refresh()
	return d.save(), true
}

// toPressAgain wants the key pressed again that an example asked about, to only try what
// it does.
type toPressAgain struct {
	wanted
	page *sizesPage
	key  tea.KeyMsg
}

func (w toPressAgain) grant(m *root) tea.Cmd {
	m.uncover()
	m.desk.trying = true
	return m.grant(w.page.key(w.key))
}
