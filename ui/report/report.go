// Package report joins a worksheet and its sums, in the one place where they meet, and
// words the answer; it adds no arithmetic of its own.
//
// [Input] is where they meet. A report is made for a changed sheet, once; steps, curves
// and working are made when they are first asked for, and kept with it ([Derived]).
package report

import (
	"cmp"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"capscye/calc"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// Report is a sheet with everything that follows from it, ready to be shown in
// any face.
type Report struct {
	Sheet    worksheets.Sheet
	file     string // the name of its file, "" for none
	by       Reckoner
	Scale    units.Scale
	Input    calc.Input
	Plan     calc.Plan
	Findings []Finding
	Problems []worksheets.Problem // values that cannot be read
	Derived
}

// Reckon computes the report of a document on a day. shown is the system that
// lengths are shown in, or none for the sheet's own.
func Reckon(d *worksheets.Document, today time.Time, shown units.System) Report {
	return Reckoner{Today: today}.Reckon(d, shown)
}

// Reckon is Reckon on the day of a reckoner.
func (k Reckoner) Reckon(d *worksheets.Document, shown units.System) Report {
	r := Report{Sheet: d.Sheet, file: fileName(d), by: k, Scale: d.Sheet.Scale(), Input: numbers(&d.Sheet, k.Today), Problems: d.Problems()}
	r.Did(ReckonedPlan)
	if shown != 0 {
		r.Scale.System = shown
	}
	for _, p := range r.Problems {
		f := Finding{Code: calc.ValueUnreadable, Level: calc.Warn, About: p.Path, Text: typeset.Plain(p.Error()) + "."}
		if k, ok := worksheets.KeyNamed(p.Path); ok && feeds(k) {
			f.Level, r.Input.Unread = calc.Stop, true
		}
		r.Findings = append(r.Findings, f)
	}
	r.Plan = calc.Compute(r.Input)
	r.Derived = r.Derive()
	r.Findings = slices.Grow(r.Findings, len(r.Plan.Findings))
	for _, f := range r.Plan.Findings {
		r.Findings = append(r.Findings, r.Worded(f))
	}
	for _, p := range d.Unknown() {
		r.Findings = append(r.Findings, Finding{Code: calc.UnknownKey, About: p.Path, Text: typeset.Plain(p.Error())})
	}
	r.Findings = append(append(r.Findings, r.SinceFindings(d.Origins)...), r.sizesFall()...)
	slices.SortStableFunc(r.Findings, func(a, b Finding) int { return calc.ByUrgency(a.rank(), b.rank()) })
	if d.ReadOnly != "" {
		r.Findings = append(r.Findings, Finding{Code: calc.NotWritten, About: "sheet", Text: "This file is read-only: " + d.ReadOnly + "."})
	}
	return r
}

// With is the report of another sheet on the same day, in the same unit.
func (r Report) With(s worksheets.Sheet) Report {
	with := r.by.Reckon(&worksheets.Document{Sheet: s}, r.Scale.System)
	with.file = r.file
	return with
}

// Worded is a finding of the sums, ready to be shown.
func (r *Report) Worded(f calc.Finding) Finding {
	out := Finding{
		Code: f.Code, Level: f.Level, About: wording.SubjectWords[f.About], Key: keyOf(f),
		from: f,
	}
	if !r.by.Brief || f.Level != calc.Note {
		out.Text = r.sentence(f)
	}
	if !r.by.Brief {
		out.Ways, out.Guess = r.waysOut(f), r.guessOf(f)
		out.Accept, out.Ease = r.accepted(f)
	}
	return out
}

// sentence is what a finding of the sums says.
func (r *Report) sentence(f calc.Finding) string {
	switch {
	case f.Code == calc.ShortAtLine:
		return r.taperText(f)
	case f.Code == calc.BindsBelow:
		return r.bindsText(f)
	case f.Bound == nil:
		return findingText(f, r.Input, r.Scale)
	case f.Code.Doubts():
		return r.doubtText(f)
	}
	return r.doubtWords(f) + " " + findingText(f, r.Input, r.Scale) // what it follows from comes first
}

// Whole tells that nothing required is missing and nothing says stop.
func (r Report) Whole() bool {
	for _, f := range r.Findings {
		if f.Level == calc.Stop {
			return false
		}
	}
	return r.Plan.Whole()
}

// Gravest is the first of the findings of the highest level.
func (r Report) Gravest() (worst Finding, ok bool) {
	for i, f := range r.Findings {
		if i == 0 || f.Level > worst.Level {
			worst = f
		}
	}
	return worst, len(r.Findings) > 0
}

// AgainstCutting are the findings that stand against cutting: every stop, and
// what is still to be answered.
func (r Report) AgainstCutting() []Finding {
	var list []Finding
	for _, f := range r.Findings {
		if f.Level == calc.Stop || f.Code == calc.AnswerMissing {
			list = append(list, f)
		}
	}
	return list
}

// Name is what the worksheet is called on screens and paper: by its title and its
// wearer; without a title, by its file.
func (r Report) Name() string {
	title, wearer := r.Sheet.Text(worksheets.Title), r.Sheet.Text(worksheets.Wearer)
	name := typeset.Plain(cmp.Or(strings.TrimSpace(title), r.file, "Untitled worksheet"))
	if wearer == "" {
		return name
	}
	return name + ", for " + typeset.Plain(wearer)
}

// fileName is what the file of a document is called, "" where there is none.
func fileName(d *worksheets.Document) string {
	if d.Path() == "" {
		return ""
	}
	return filepath.Base(d.Path())
}
