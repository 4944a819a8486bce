package desk

import (
	"fmt"
	"path/filepath"
	"slices"

	"capscye/calc"
	"capscye/calc/remedy"
	"capscye/ui/compare"
	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// takeHere asks for the sheet to take from: the body, or in step 3 the pattern.
func (d *Desk) takeHere() parts.Wish {
	if d.Shut() {
		d.Message = d.ReadOnly()
		return nil
	}
	t := Taking{Section: worksheets.BodySection}
	if d.step == forms.Pattern {
		t.Section = worksheets.PatternSection
	}
	return d.TypedFirst(ToPick{Taking: t})
}

// Take puts a section of another sheet in the place of what is at hand.
func (d *Desk) Take(section worksheets.Section, from *worksheets.Document) parts.Wish {
	sheet := *d.Sheet()
	sheet.Take(section, from.Sheet, from.Path())
	others := slices.DeleteFunc(slices.Clone(d.Doc.Origins), func(o worksheets.Origin) bool { return o.Section == section })
	d.Doc.Origins = append(others, worksheets.Origin{Section: section, File: filepath.Base(from.Path()), Sheet: from.Sheet})
	what := fmt.Sprintf("%s of %s", wording.SectionWords[section], typeset.Plain(filepath.Base(from.Path())))
	w := d.Change(sheet, what)
	d.Message = "Took the " + what + ". ^z undoes that."
	return w
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

// Troubles are those of what is at hand, and what has changed where its
// measurements were taken from.
func (d *Desk) Troubles() []compare.Trouble {
	return append(compare.Troubles(d.Rep), sinceOffers(d.Rep, d.Doc.Origins)...)
}
