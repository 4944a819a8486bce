package ui

import (
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/worksheets"
)

// Measurements that come along: a sheet takes its body or its pattern from another
// one of the folder, remembers which, and says what has changed there since.

// Codes of findings about the sheet that measurements were taken from.
const (
	bodyChanged    calc.Code = "body-changed-since"    // the body is measured otherwise there now
	patternChanged calc.Code = "pattern-changed-since" // the pattern is
)

// taking is a wish to take a section of another sheet of the folder, for the sheet
// on the desk or for a new one at path.
type taking struct {
	section worksheets.Section
	path    string // of the new sheet; "" for the one on the desk
	from    string // the file to take it from, once it is chosen
}

// sectionWords names the sections.
var sectionWords = map[worksheets.Section]string{worksheets.BodySection: "body", worksheets.PatternSection: "pattern"}

// takeHere asks for the sheet to take from: the body, or in step 3 the pattern.
func (d *desk) takeHere() wish {
	if d.shut() {
		d.message = d.readOnly()
		return wish{}
	}
	d.commit()
	t := taking{section: worksheets.BodySection}
	if d.step == stepPattern {
		t.section = worksheets.PatternSection
	}
	return wish{kind: wishPick, taking: &t}
}

// newPicker lists the sheets of the folder to take a section from, but for the one
// that takes it.
func newPicker(found []rosterRow, t taking, own string, st styles) *list {
	l := &list{styles: st, canBack: true, head: "Take the " + sectionWords[t.section] + " of which worksheet?"}
	for i := range found {
		f := &found[i]
		if f.failure == "" && filepath.Base(f.path) != filepath.Base(own) {
			one := t
			one.from = f.path
			l.rows = append(l.rows, sheetRow(f, wish{kind: wishTake, taking: &one}))
		}
	}
	if len(l.rows) == 0 {
		l.rows = []listRow{{text: "There is no other worksheet in this folder.", wish: wish{kind: wishBack}}}
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
	what := fmt.Sprintf("%s of %s", sectionWords[msg.section], plain(filepath.Base(msg.from.Path())))
	d.remember(before, what)
	d.takeUp()
	d.message = "Taken: the " + what + ". ^z takes it back."
	return d.keep()
}

// sinceFindings say what has changed in the sheets that measurements were taken
// from. What is newer here is a note.
func (r report) sinceFindings(origins []worksheets.Origin) (list []finding) {
	for _, o := range origins {
		changed := o.Since(r.sheet)
		if len(changed) == 0 || !o.IsOf(r.sheet) {
			continue
		}
		f := finding{code: bodyChanged, level: calc.Warn, about: "sheet", ways: []string{"take what is there (w in step 5)", "leave it as it is"}}
		if o.Section == worksheets.PatternSection {
			f.code = patternChanged
		}
		there, here := o.Sheet.Text(worksheets.MeasuredOn), r.sheet.Text(worksheets.MeasuredOn)
		if o.Section == worksheets.BodySection && there < here { // days are written so that they sort
			f.level = calc.Note
		}
		f.text = fmt.Sprintf("The %s was taken from %s, which now says: %s.", sectionWords[o.Section], plain(o.File), r.sinceWords(o, changed))
		if o.Section == worksheets.BodySection && there != here {
			f.text += fmt.Sprintf(" Measured there on %s, here on %s.", plain(cmp.Or(there, "a day not given")), plain(cmp.Or(here, "a day not given")))
		}
		list = append(list, f)
	}
	return list
}

// sinceWords lists what an origin has otherwise: "bicep 14 in (here 13 3/4 in)".
func (r report) sinceWords(o worksheets.Origin, changed []worksheets.Key) string {
	there := report{sheet: o.Sheet, scale: r.scale}
	words := make([]string, len(changed))
	for i, k := range changed {
		words[i] = fmt.Sprintf("%s %s (here %s)", fields[k].words, there.valueOrDash(k), r.valueOrDash(k))
	}
	return strings.Join(words, ", ")
}

// sinceOffers offers to take again what has changed in an origin.
func (r report) sinceOffers(origins []worksheets.Origin) (list []trouble) {
	for _, o := range origins {
		findings := r.sinceFindings([]worksheets.Origin{o})
		if len(findings) == 0 {
			continue
		}
		t := offer{change: fmt.Sprintf("take the %s of %s again", sectionWords[o.Section], plain(o.File)), sheet: r.sheet}
		t.sheet.Take(o.Section, o.Sheet, o.File)
		t.price = r.price(r.with(t.sheet), worksheets.BodyFrom)
		list = append(list, trouble{findings[0], []offer{t}})
	}
	return list
}

// mendable tells that there is something for the page of offers.
func (r report) mendable() bool {
	return len(calc.Troubles(r.plan)) > 0 || slices.ContainsFunc(r.findings, func(f finding) bool {
		return f.code == bodyChanged || f.code == patternChanged
	})
}
