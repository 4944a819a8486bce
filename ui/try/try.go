// Package try prints what changes would do to a worksheet, without touching its file.
package try

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/ui/compare"
	"capscye/ui/console"
	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/show"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// trial is a sheet with some answers changed.
type trial struct {
	value string // the value of the range, "" where there is none
	doc   worksheets.Document
}

// mostTrials bounds a range.
const mostTrials = 1000

// trials are the sheets that KEY=VALUE arguments ask for: one, or one for each
// value of a range start..end/step, of which there may be one.
func trials(d *worksheets.Document, args []string) ([]trial, error) {
	list := []trial{{doc: *d}}
	for _, arg := range args {
		path, text, ok := strings.Cut(arg, "=")
		k, known := worksheets.KeyNamed(strings.TrimSpace(path))
		switch {
		case !ok:
			return nil, fmt.Errorf("%q is no change; a change is written as ease.bicep=2", arg)
		case !known:
			return nil, fmt.Errorf("%q is no key of the worksheet; keys are those of its file, such as ease.bicep or method.slide", path)
		}
		values, err := rangeOf(k, text, &list[0].doc.Sheet)
		switch {
		case err != nil:
			return nil, err
		case values == nil:
			values = []string{text}
		case len(list) > 1:
			return nil, errors.New("only one range can be tried at a time")
		}
		if list, err = spread(list, k, values, len(values) > 1 || isRange(k, text)); err != nil {
			return nil, err
		}
	}
	return list, nil
}

// spread makes a trial of every value for every trial so far.
func spread(list []trial, k worksheets.Key, values []string, named bool) ([]trial, error) {
	var out []trial
	for _, t := range list {
		for _, v := range values {
			one := t
			if named {
				one.value = v
			}
			if err := change(&one.doc.Sheet, k, v); err != nil {
				return nil, fmt.Errorf("%s: %w", k, err)
			}
			out = append(out, one)
		}
	}
	return out, nil
}

// change changes an answer of a sheet. Another size in hand is another measured size of
// the pattern, with all that was measured of it.
func change(s *worksheets.Sheet, k worksheets.Key, text string) error {
	name := strings.TrimSpace(text)
	if k != worksheets.PatternSize || name == s.Text(k) {
		return s.Set(k, text)
	}
	i, ok := s.SizeNamed(name)
	if ok {
		*s = s.TakeInHand(i)
		return nil
	}
	if len(s.Sizes) == 0 {
		return fmt.Errorf("no other size of this pattern was measured, so %q cannot be tried", name)
	}
	var measured []string
	for _, z := range s.Sizes {
		measured = append(measured, z.Name())
	}
	return fmt.Errorf("no size %q was measured; choose %s", name, typeset.OrList(measured))
}

// rangeOf are the values of start..end/step, for a key that is a length; nil
// where the text is no range.
func rangeOf(k worksheets.Key, text string, s *worksheets.Sheet) ([]string, error) {
	if !isRange(k, text) {
		return nil, nil
	}
	from, rest, _ := strings.Cut(text, "..")
	to, by, ok := strings.Cut(rest, "/")
	if !ok {
		return nil, fmt.Errorf("%s=%s: a range is written as start..end/step, of lengths: ease.bicep=1..3/0.5", k, text)
	}
	if end, step, found := lastSlash(rest, s.Unit()); found { // the end may be a fraction
		to, by = end, step
	}
	var bounds [3]units.Length
	for i, part := range []string{from, to, by} {
		l, err := units.Parse(part, s.Unit())
		if err != nil {
			return nil, fmt.Errorf("%s=%s: %w", k, text, err)
		}
		bounds[i] = l
	}
	low, high, step := bounds[0], bounds[1], bounds[2]
	if step <= 0 || high < low || (high-low)/step >= mostTrials {
		return nil, fmt.Errorf("%s=%s: a range goes up, by a step above nothing, and has at most %d values", k, text, mostTrials)
	}
	var values []string
	for l := low; l <= high; l += step {
		values = append(values, forms.Exactly(l, s.Scale()))
	}
	return values, nil
}

// isRange tells a range from a value: there may be points in a title.
func isRange(k worksheets.Key, text string) bool { return k.IsLength() && strings.Contains(text, "..") }

// lastSlash splits end/step at the one slash where both parts read as lengths,
// for either can be a fraction: 2 1/2/1/4 is 2 1/2 by 1/4.
func lastSlash(text string, sys units.System) (end, step string, ok bool) {
	for i, c := range text {
		if c != '/' {
			continue
		}
		_, errEnd := units.Parse(text[:i], sys)
		_, errStep := units.Parse(text[i+1:], sys)
		if errEnd == nil && errStep == nil {
			if ok && strings.Count(text, "/") == 2 { // 2/1/4 could be 2/1 by 4: the whole number is meant
				continue
			}
			end, step, ok = text[:i], text[i+1:], true
		}
	}
	return end, step, ok
}

// try prints what changes would do, without touching the file.
func try(s *console.Session, file string, changes []string, asJSON bool) error {
	d, err := show.Opened(s, file, false)
	if err != nil {
		s.Worse(console.ExitUnread)
		s.Complain(err)
		return nil
	}
	list, err := trials(d, changes)
	if err != nil {
		return err
	}
	before := report.Reckon(d, s.Today, 0)
	afters := make([]report.Report, len(list))
	for i := range list {
		shown := before.Scale.System // in words both are in one unit, to be compared
		if asJSON {
			shown = 0
		}
		afters[i] = report.Reckon(&list[i].doc, s.Today, shown)
		if !afters[i].Whole() {
			s.Worse(console.ExitUnfinished)
		}
	}
	var out []byte
	switch {
	case asJSON:
		out, err = trialsJSON(before, afters, len(list) > 1 || list[0].value != "")
	case len(list) > 1:
		out = []byte(trialTable(before, list, afters))
	default:
		out = []byte(differenceText(before, afters[0]))
	}
	if err == nil {
		_, err = s.Out.Write(out)
	}
	return err
}

// differenceText is the comparison of two sheets in words.
func differenceText(before, after report.Report) string {
	var out typeset.Printout
	out.Line("%s, in %s", before.Name(), wording.UnitWords(before.Scale.System))
	rows := compare.Sheets(before, after)
	came, went := compare.CameAndWent(before, after)
	if len(rows)+len(came)+len(went) == 0 {
		out.Line("Nothing changes.")
	}
	for _, row := range rows {
		out.Line("  %-28s %14s  ->  %s", row.What, row.Cells[0], row.Cells[1])
	}
	for _, f := range came {
		out.Hanging("  came  ", f.Leveled())
	}
	for _, f := range went {
		out.Hanging("  went  ", f.Leveled())
	}
	return out.Text()
}

// trialTable is a row of outcomes for each value of a range.
func trialTable(before report.Report, list []trial, afters []report.Report) string {
	table := [][]string{{"value", "sleeve marks", "bodice marks", "cap height", "cap ease", "bicep", "bust", "finding"}}
	for i, r := range afters {
		table = append(table, []string{typeset.Plain(list[i].value), marksOfPiece(r, calc.SleeveFront), marksOfPiece(r, calc.BodiceFront),
			compare.CapHeight.Words(r), compare.CapEase.Words(r), compare.BicepAfter.Words(r), compare.BustAfter.Words(r), worst(r)})
	}
	widths := make([]int, len(table[0]))
	for _, row := range table {
		for i, cell := range row {
			widths[i] = max(widths[i], len(cell))
		}
	}
	var out typeset.Printout
	out.Line("%s, in %s", before.Name(), wording.UnitWords(before.Scale.System))
	out.Line("Marks are pivot + slide on each side; front / back where they differ.")
	for _, row := range table {
		line := ""
		for i, cell := range row[:len(row)-1] {
			line += typeset.PadLeft(cell, widths[i]+2)
		}
		out.Line("%s", strings.TrimRight(line+"  "+row[len(row)-1], " "))
	}
	return out.Text()
}

// marksOfPiece is what is marked on a piece, "1 + 1/4", or front and back.
func marksOfPiece(r report.Report, front calc.Side) string {
	one, other := compare.MarksOfSide.Words(r, r.Plan.Sides[front]), compare.MarksOfSide.Words(r, r.Plan.Sides[front+1])
	if one == other {
		return one
	}
	return one + " / " + other
}

// worst is the level of the gravest finding above a note, and its code.
func worst(r report.Report) string {
	worst, _ := r.Gravest()
	if worst.Level == calc.Note {
		return ""
	}
	return worst.Level.String() + " " + string(worst.Code)
}

// trialJSON is one comparison; changed lists every path of the two objects
// whose value differs, and the answers that were changed.
type trialJSON struct {
	Before  show.Sheet    `json:"before"`
	After   show.Sheet    `json:"after"`
	Changed []changedJSON `json:"changed"`
}

type changedJSON struct {
	What   string `json:"what"`
	Before any    `json:"before"`
	After  any    `json:"after"`
}

// JSONKeys are the keys of a comparison.
func JSONKeys() []show.JSONKey {
	return show.JSONKeys(trialJSON{}, map[string]string{
		"before":           "The worksheet as it is, as in show --json.",
		"after":            "The worksheet as it would be.",
		"changed":          "What differs: the changed answers first, then everything that follows from them.",
		"changed[].what":   "The key of the answer in the file, or the path in before and after.",
		"changed[].before": "Its value before.",
		"changed[].after":  "Its value after. Findings differ as a list of level, code and about.",
	}, show.Sheet{})
}

func trialsJSON(before report.Report, afters []report.Report, array bool) ([]byte, error) {
	list := make([]trialJSON, len(afters))
	old := show.SheetOf(before, false)
	was, err := leaves(old)
	if err != nil {
		return nil, err
	}
	for i, after := range afters {
		one := trialJSON{Before: old, After: show.SheetOf(after, false), Changed: []changedJSON{}}
		for _, k := range worksheets.Keys() {
			if typed, now := before.Sheet.Text(k), after.Sheet.Text(k); typed != now {
				one.Changed = append(one.Changed, changedJSON{k.Path(), typed, now})
			}
		}
		is, err := leaves(one.After)
		if err != nil {
			return nil, err
		}
		all := maps.Clone(was)
		maps.Copy(all, is)
		for _, path := range slices.Sorted(maps.Keys(all)) {
			if fmt.Sprint(was[path]) != fmt.Sprint(is[path]) {
				one.Changed = append(one.Changed, changedJSON{path, was[path], is[path]})
			}
		}
		list[i] = one
	}
	if array {
		return show.Encode(list)
	}
	return show.Encode(list[0])
}

// leaves are the values of a sheet's JSON by their paths. Findings are compared
// as a whole, by code and subject.
func leaves(s show.Sheet) (map[string]any, error) {
	raw, err := json.Marshal(s)
	if err != nil {
		return nil, err
	}
	var tree map[string]any
	if err := json.Unmarshal(raw, &tree); err != nil {
		return nil, err
	}
	out := map[string]any{}
	var walk func(path string, v any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for name, child := range v {
				walk(strings.TrimPrefix(path+"."+name, "."), child)
			}
		case []any:
			var codes []string
			for _, f := range v {
				if m, ok := f.(map[string]any); ok {
					codes = append(codes, fmt.Sprint(m["level"], " ", m["code"], " ", m["about"]))
				}
			}
			slices.Sort(codes)
			out[path] = codes
		default:
			out[path] = v
		}
	}
	walk("", tree)
	return out, nil
}
