// Package ui is every face that the program shows: the screen, the printed
// sheet, the JSON, the command line. It joins the sheet and the sums in one
// place and puts the answer into words; it adds no arithmetic of its own.
//
// The screen is one root model that routes messages to parts. A part is a plain
// struct that renders itself for a given size and answers a key with what it
// wants, a small value; the root alone turns wishes into commands. All input
// and output of the screen is in commands.go, all messages are in messages.go.
package ui

import (
	"cmp"
	"slices"
	"time"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// report is a sheet with everything that follows from it, ready to be shown in
// any face.
type report struct {
	sheet    worksheets.Sheet
	today    time.Time
	scale    units.Scale
	input    calc.Input
	plan     calc.Plan
	findings []finding
	problems []worksheets.Problem // values that cannot be read
	derived
}

// Codes of findings about the file itself; the sums do not know of it.
const (
	valueUnreadable calc.Code = "value-unreadable" // a value is there and cannot be read
	unknownKey      calc.Code = "unknown-key"      // a key that no answer has; it is kept
	notWritten      calc.Code = "not-written"      // the file is opened read-only
)

// reckon computes the report of a document on a day. shown is the system that
// lengths are shown in, or none for the sheet's own.
func reckon(d *worksheets.Document, today time.Time, shown units.System) report {
	made.plans.Add(1)
	r := report{sheet: d.Sheet, today: today, scale: d.Sheet.Scale(), input: input(&d.Sheet, today), problems: d.Problems()}
	if shown != 0 {
		r.scale.System = shown
	}
	for _, p := range r.problems {
		f := finding{code: valueUnreadable, level: calc.Warn, about: p.Path, text: plain(p.Error())}
		if k, ok := worksheets.KeyNamed(p.Path); ok && feeds(k) {
			f.level, r.input.Unread = calc.Stop, true
		}
		r.findings = append(r.findings, f)
	}
	r.plan = calc.Compute(r.input)
	r.derived = r.derive()
	for _, f := range r.plan.Findings {
		r.findings = append(r.findings, r.worded(f))
	}
	for _, p := range d.Unknown() {
		r.findings = append(r.findings, finding{code: unknownKey, about: p.Path, text: plain(p.Error())})
	}
	r.findings = append(r.findings, r.sinceFindings(d.Origins)...)
	slices.SortStableFunc(r.findings, func(a, b finding) int { return cmp.Compare(b.level, a.level) })
	if d.ReadOnly != "" {
		r.findings = append(r.findings, finding{code: notWritten, about: "sheet", text: "The file is not written: " + d.ReadOnly + "."})
	}
	return r
}

// with is the report of another sheet on the same day, in the same unit.
func (r report) with(s worksheets.Sheet) report {
	return reckon(&worksheets.Document{Sheet: s}, r.today, r.scale.System)
}

// worded is a finding of the sums, ready to be shown.
func (r report) worded(f calc.Finding) finding {
	return finding{f.Code, f.Level, subjectWords[f.About], findingText(f, r.input, r.scale), waysOut(f.Ways)}
}

// whole tells that nothing required is missing and nothing says stop.
func (r report) whole() bool {
	for _, f := range r.findings {
		if f.level == calc.Stop {
			return false
		}
	}
	return r.plan.Whole()
}

// gravest is the first of the findings of the highest level.
func (r report) gravest() (worst finding, ok bool) {
	for i, f := range r.findings {
		if i == 0 || f.level > worst.level {
			worst = f
		}
	}
	return worst, len(r.findings) > 0
}

// againstCutting are the findings that stand against cutting: every stop, and
// what is still to be answered.
func (r report) againstCutting() []finding {
	var list []finding
	for _, f := range r.findings {
		if f.level == calc.Stop || f.code == calc.AnswerMissing {
			list = append(list, f)
		}
	}
	return list
}

// name is what the sheet is called on screens and paper.
func (r report) name() string {
	if name := plain(r.sheet.Name()); name != "" {
		return name
	}
	return "Untitled sheet"
}
