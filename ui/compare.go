package ui

import (
	"cmp"
	"slices"

	"capscye/calc"
	"capscye/worksheets"
)

// difference is one thing that is not the same in two sheets, in words.
type difference struct {
	what          string
	before, after string
}

// differences lists what differs between two sheets: the answers first, then
// what follows from them, then the findings that came or went.
func differences(before, after report) []difference {
	var list []difference
	add := func(what, was, is string) {
		if was != is {
			list = append(list, difference{what, was, is})
		}
	}
	for _, k := range worksheets.Keys() {
		if f, ok := fields[k]; ok && before.sheet.Text(k) != after.sheet.Text(k) {
			list = append(list, difference{f.words, cmp.Or(answerText(before, k), "-"), cmp.Or(answerText(after, k), "-")})
		}
	}
	for _, c := range consequences {
		add(c.what, c.words(before), c.words(after))
	}
	for _, f := range after.findings {
		if !slices.ContainsFunc(before.findings, f.same) {
			list = append(list, difference{"finding", "", f.level.String() + ": " + f.text})
		}
	}
	for _, f := range before.findings {
		if !slices.ContainsFunc(after.findings, f.same) {
			list = append(list, difference{"finding", f.level.String() + ": " + f.text, ""})
		}
	}
	return list
}

// same tells that two findings say the same of the same, whatever the amounts.
func (f finding) same(other finding) bool {
	return f.code == other.code && f.about == other.about && f.level == other.level
}

// answerText is an answer as the sheet shows it, "" where none was given.
func answerText(r report, k worksheets.Key) string {
	text := plain(r.sheet.Text(k))
	if l := r.sheet.Reading(k); l.Known && text != "" {
		return r.scale.Format(l.Length)
	}
	return text
}

// consequence is one figure that people compare.
type consequence struct {
	what, short string
	words       func(report) string
}

// consequences are the figures that a change is judged by, in the order of the
// work.
var consequences = func() []consequence {
	list := []consequence{
		{"sleeve need", "sleeve", func(r report) string { return orDash(r.plan.Sleeve.Need, r.scale) }},
		{"bust need", "bust", func(r report) string { return orDash(r.plan.Bust.Need, r.scale) }},
	}
	for _, s := range calc.Sides() {
		name := subjectWords[s.Subject()]
		list = append(list,
			consequence{name + " pivot", "", func(r report) string { return r.planned(r.plan.Sides[s].Pivot) }},
			consequence{name + " slide", "", func(r report) string { return r.planned(r.plan.Sides[s].Slide) }},
			consequence{name + " left over", "", func(r report) string { return r.planned(r.plan.Sides[s].LeftOver) }})
	}
	height := func(front calc.Side) func(report) string {
		return func(r report) string {
			f, b := r.plan.Turns[front], r.plan.Turns[front+1]
			if !f.Known || !b.Known {
				return "-"
			}
			return r.millimetres(min(f.HeightAfter, b.HeightAfter))
		}
	}
	return append(list,
		consequence{"cap height", "cap height", height(calc.SleeveFront)},
		consequence{"armhole depth", "", height(calc.BodiceFront)},
		consequence{"cap ease", "cap ease", func(r report) string { return orDash(r.plan.Seams.CapEaseAfter, r.scale) }},
		consequence{"finished bicep", "bicep", func(r report) string { return orDash(r.plan.Sleeve.Finished, r.scale) }},
		consequence{"finished bust", "bust", func(r report) string { return orDash(r.plan.Bust.Finished, r.scale) }})
}()
