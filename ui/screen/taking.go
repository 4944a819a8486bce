package screen

import (
	"fmt"
	"path/filepath"
	"slices"

	"capscye/calc"
	"capscye/calc/remedy"
	"capscye/ui/compare"
	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/roster"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// takeHere asks for the sheet to take from: the body, or in step 3 the pattern.
func (d *desk) takeHere() wish {
	if d.shut() {
		d.message = d.readOnly()
		return nil
	}
	if own := d.commit(); d.asksOwn() && own != nil {
		return own
	}
	t := taking{section: worksheets.BodySection}
	if d.step == forms.Pattern {
		t.section = worksheets.PatternSection
	}
	return toPick{t: t}
}

// newPicker lists the sheets of the folder to take a section from, but for the one
// that takes it.
func newPicker(found []roster.Row, t taking, own string, st styles) *list {
	l := &list{styles: st, canBack: true, head: "Choose the worksheet to take the " + wording.SectionWords[t.section] + " from."}
	for i := range found {
		f := &found[i]
		if f.Failure == "" && filepath.Base(f.Path) != filepath.Base(own) {
			one := t
			one.from = f.Path
			l.rows = append(l.rows, sheetRow(f, toTake{t: one}))
		}
	}
	if len(l.rows) == 0 {
		l.rows = []listRow{{text: "There is no other worksheet in this folder.", wish: toGoBack{}}}
	}
	l.find("")
	return l
}

// take puts a section of another sheet in the place of what is at hand.
func (d *desk) take(msg takenMsg) wish {
	before, sheet := d.laid(), *d.sheet()
	sheet.Take(msg.section, msg.from.Sheet, msg.from.Path())
	d.lay(sheet)
	d.doc.Origins = append(slices.Clone(d.doc.Origins), worksheets.Origin{Section: msg.section, File: filepath.Base(msg.from.Path()), Sheet: msg.from.Sheet})
	what := fmt.Sprintf("%s of %s", wording.SectionWords[msg.section], typeset.Plain(filepath.Base(msg.from.Path())))
	d.remember(before, what)
	d.takeUp()
	d.message = "Took the " + what + ". ^z undoes that."
	return d.save()
}

// sinceOffers offers to take again what has changed in an origin.
func sinceOffers(r report.Report, origins []worksheets.Origin) (list []compare.Trouble) {
	for _, o := range origins {
		findings := r.SinceFindings([]worksheets.Origin{o})
		if len(findings) == 0 {
			continue
		}
		t := compare.Offer{Change: fmt.Sprintf("take the %s of %s again", wording.SectionWords[o.Section], typeset.Plain(o.File)), Sheet: r.Sheet}
		t.Sheet.Take(o.Section, o.Sheet, o.File)
		t.Price = compare.Price(r, r.With(t.Sheet))
		list = append(list, compare.Trouble{Finding: findings[0], Offers: []compare.Offer{t}})
	}
	return list
}

// mendable tells that there is something for the page of offers.
func mendable(r report.Report) bool {
	return len(remedy.Troubles(r.Plan)) > 0 || slices.ContainsFunc(r.Findings, func(f report.Finding) bool {
		return f.Code == calc.BodyChanged || f.Code == calc.PatternChanged || f.Code == calc.SizeByHighBust && len(f.Ways) > 0
	})
}
