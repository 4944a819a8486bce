package screen

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/desk"
	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/ui/sizes"
	"capscye/worksheets"
)

// sizesPage has the sizes of the pattern as columns and what differs by size as rows,
// typed in place by the rules of the form; below is what each size costs. Behind the
// last size is a column for another one.
type sizesPage struct {
	desk   *desk.Desk
	styles parts.Styles
	all    []sizes.Size
	keys   []worksheets.Key // the rows
	row    int              // into keys
	col    int              // into all, or one beyond
	wide   int              // cells of a column
	typing parts.Typing
}

func newSizesPage(d *desk.Desk, st parts.Styles) *sizesPage {
	p := &sizesPage{desk: d, styles: st, typing: parts.NewTyping(st)}
	p.refresh()
	return p
}

// refresh brings the page up to what lies on the desk, and reaches the cell at hand.
func (p *sizesPage) refresh() {
	p.all = sizes.Of(p.desk.Rep, p.all...)
	p.wide = min(sizes.CellWidth(sizes.Rows(p.all), sizeCell), sizeMost)
	p.col = min(p.col, p.columns()-1)
	p.keys = p.rows()
	p.row = min(p.row, len(p.keys)-1)
	p.reach()
}

// rows are what differs by size, but for what nothing follows from.
func (p *sizesPage) rows() []worksheets.Key {
	sheet := p.desk.Sheet()
	return slices.DeleteFunc(worksheets.SizeKeys(), func(k worksheets.Key) bool {
		if forms.WhyIdle(sheet, k) == "" || sheet.Text(k) != "" {
			return false
		}
		return !slices.ContainsFunc(sheet.Sizes, func(z worksheets.Size) bool { return z.Text(k) != "" })
	})
}

// at is the answer that the hands are on.
func (p *sizesPage) at() worksheets.Key { return p.keys[p.row] }

// columns is how many there are, with the one for another size.
func (p *sizesPage) columns() int {
	if len(p.all) <= worksheets.MostSizes {
		return len(p.all) + 1
	}
	return len(p.all)
}

// onNew tells that the hands are on the column for another size.
func (p *sizesPage) onNew() bool { return p.col == len(p.all) }

// takeInHand makes the size of the column the one in hand.
func (p *sizesPage) takeInHand() parts.Wish {
	d := p.desk
	switch {
	case p.onNew():
		d.Message = "Type the name of another size here."
		return nil
	case p.col == 0:
		d.Message = "This size is in hand; enter on another takes that one."
		return nil
	}
	chosen := p.all[p.col].Title()
	sheet := d.Sheet().TakeInHand(p.col - 1)
	w, done := p.change(sheet, "size "+chosen+" in hand")
	if done {
		p.col = 0
		p.reach()
	}
	if done && d.Message == "" {
		d.Message = fmt.Sprintf("Size %s is in hand now. ^z undoes that.", chosen)
	}
	return w
}

// remove takes the size of the column out of the sheet.
func (p *sizesPage) remove() parts.Wish {
	d := p.desk
	switch {
	case p.onNew():
		d.Message = "There is no size here to remove."
		return nil
	case p.col == 0:
		d.Message = "This size is in hand: take another in hand first."
		return nil
	}
	name := p.all[p.col].Title()
	w, done := p.change(d.Sheet().WithoutSize(p.col-1), "size "+name+" removed")
	if done && d.Message == "" {
		d.Message = fmt.Sprintf("Size %s is removed; ^z brings it back.", name)
	}
	return w
}

// move goes to another cell.
func (p *sizesPage) move(rows, cols int) parts.Wish {
	w, stays := p.commit()
	if stays {
		return w
	}
	p.row = max(0, min(p.row+rows, len(p.keys)-1))
	p.col = max(0, min(p.col+cols, p.columns()-1))
	p.reach()
	return w
}

// enter takes the size in hand from its name, takes what is offered, or keeps and goes on.
func (p *sizesPage) enter() parts.Wish {
	waits := p.waits()
	if p.row == 0 && !p.typing.Changed() && !waits {
		return p.takeInHand()
	}
	sheet, err := p.typed()
	meant, doubted := desk.MeantBy(err)
	switch {
	case doubted:
		p.typing.Put(meant)
	case err == nil && waits: // a crash came while it was typed
		w, done := p.change(sheet, p.what())
		if done {
			p.move(1, 0)
		}
		return w
	}
	return p.move(1, 0)
}

// esc brings back what was there, then goes back to the worksheet.
func (p *sizesPage) esc() parts.Wish {
	k := p.at()
	name, kept := p.draftName(p.col)
	switch {
	case p.typing.Changed():
		p.typing.GiveBack()
		p.desk.Message = "As it was. Esc again goes back."
		return nil
	case kept && p.draft(p.col, k) != "":
		p.putDraft(name, "")
		p.desk.Message = "As it was; ^z brings back what you typed."
		return nil
	}
	return parts.ToGoBack{}
}

func (p *sizesPage) Key(msg tea.KeyMsg) parts.Wish {
	p.desk.Message = ""
	if !msg.Paste {
		if do, ok := p.pressed(msg.String()); ok {
			w := do()
			if own, asks := w.(desk.ToOwn); asks {
				if again, is := own.Try.(toPressAgain); is {
					again.key = msg
					own.Try = again
				}
				return own
			}
			return w
		}
	}
	p.take(msg)
	return nil
}

// take takes a key that is typed.
func (p *sizesPage) take(msg tea.KeyMsg) {
	d := p.desk
	_, named := p.draftName(p.col)
	switch {
	case msg.Alt && msg.Type == tea.KeyRunes:
		return
	case p.row > 0 && (p.onNew() || !named) && !d.Shut():
		d.Message = "Give the size its name first."
		return
	}
	if d.Message = d.Refuses(msg, p.at(), &p.typing); d.Message == "" {
		p.typing.Take(msg)
	}
}

// leave takes what is being typed before the program ends; a name that no size can have
// waits for the next start.
func (p *sizesPage) leave() {
	if _, stays := p.commit(); stays && p.onNew() {
		p.putDraft(worksheets.AnotherSize, strings.TrimSpace(p.typing.Text()))
	}
}

// halfTyped is what stands in the cell under the hands; for a size that has no name yet
// there is nothing to keep it by.
func (p *sizesPage) halfTyped() (one worksheets.Draft, ok bool) {
	name, named := p.draftName(p.col)
	if !named {
		return one, false
	}
	return p.desk.Half(&p.typing, p.at(), name)
}

// follow takes up what lies on the desk now.
func (p *sizesPage) follow() { p.refresh() }

func (p *sizesPage) Complain(text string) { p.desk.Message = text }

// reportOf is the report of a column; ok is false for the one for another size.
func (p *sizesPage) reportOf(col int) (r report.Report, ok bool) {
	if col == len(p.all) {
		return r, false
	}
	return p.all[col].Report, true
}
