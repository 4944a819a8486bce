// Package try prints what changes would do to a worksheet, without touching its file.
package try

import (
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
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
	"capscye/worksheets"
)

// options say how it is printed; none is as text.
type options struct{ json, sentences bool }

// try prints what changes would do, without touching the file.
func try(s *console.Session, file string, changes []string, o options) error {
	d, err := show.Opened(s, file)
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
		if o.json {
			shown = 0
		}
		afters[i] = report.Reckon(&list[i].doc, s.Today, shown)
		if !afters[i].Whole() {
			s.Worse(console.ExitUnfinished)
		}
	}
	var out []byte
	switch {
	case o.json:
		out, err = trialsJSON(before, afters, len(list) > 1 || list[0].value != "")
	case o.sentences:
		said := sentences(before, list, afters)
		out = []byte(said.Text())
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
	out.Hanging("", after.Verdict().Line())
	out.Hanging("", before.Name()+", in "+wording.UnitWords(before.Scale.System))
	rows := compare.Sheets(before, after)
	changes := compare.Findings(before, after)
	if len(rows) == 0 && !slices.ContainsFunc(changes, func(c compare.Changed) bool { return c.How != compare.Still }) {
		out.Line("Nothing changes.")
	}
	for _, row := range rows {
		out.Line("  %-28s %14s  ->  %s", row.What, row.Cells[0], row.Cells[1])
	}
	for _, c := range changes {
		text := c.Finding.Leveled()
		if c.How == compare.New {
			text = c.Finding.Asks() + ": " + c.Finding.Line()
		}
		out.Hanging(fmt.Sprintf("  %-7s", c.How+":"), text)
	}
	return out.Text()
}

// words are what a range is of, said is the value as people read it.
func (t trial) words() string { return typeset.Capitalised(forms.Fields[t.key].Words) }
func (t trial) said() string  { return forms.Said(t.key, t.value) }

// rangeVerdict says which values of a range come to what, and why: "Ready to trace from 1 to
// 2 1/2; check from 3 to 4: the bust comes out 1 in larger than asked." The reason is that of
// the first of them.
func rangeVerdict(list []trial, afters []report.Report) string {
	var parts []string
	for from := 0; from < len(list); {
		verdict, to := afters[from].Verdict(), from
		for to+1 < len(list) && afters[to+1].Verdict().State == verdict.State {
			to++
		}
		where := " at " + list[from].said()
		if to > from {
			where = " from " + list[from].said() + " to " + list[to].said()
		}
		words := verdict.State.Words() + where
		if verdict.Why != "" {
			words += ": " + verdict.Why
		}
		parts = append(parts, words)
		from = to + 1
	}
	text := typeset.Plain(typeset.Capitalised(strings.Join(parts, "; ")))
	if strings.HasSuffix(text, "?") {
		return text
	}
	return text + "."
}

// column is one of the table of a range.
type column struct {
	head string
	cell func(i int) string
}

// trialTable is a row of outcomes for each value of a range, and below it what is not as
// in the row above. A column that says nothing is left out; where the marks make it too
// wide for paper, they have a line of their own.
func trialTable(before report.Report, list []trial, afters []report.Report) string {
	of := func(words func(report.Report) string) func(int) string {
		return func(i int) string { return words(afters[i]) }
	}
	marksOf := func(front calc.Side) func(int) string {
		return func(i int) string { return marksOfPiece(afters[i], front) }
	}
	value := column{"value", func(i int) string { return typeset.Plain(list[i].said()) }}
	girths := []column{{"bicep", of(compare.BicepAfter.Words)}, {"bust", of(compare.BustAfter.Words)}}
	marks := []column{{"sleeve marks", marksOf(calc.SleeveFront)}, {"bodice marks", marksOf(calc.BodiceFront)}}
	rest := []column{{"cap ease", of(compare.CapEase.Words)}, {"cap height", of(compare.CapHeight.Words)}}
	state := column{"", of(func(r report.Report) string { return r.Verdict().Short() })}

	lines := columns(slices.Concat([]column{value}, girths, marks, rest, []column{state}), len(list))
	apart := slices.ContainsFunc(lines, func(l string) bool { return len(l) > typeset.PrintWidth })
	if apart {
		lines = columns(slices.Concat([]column{value}, girths, rest, []column{state}), len(list))
	}
	var out typeset.Printout
	out.Hanging("", rangeVerdict(list, afters))
	out.Hanging("", before.Name()+", in "+wording.UnitWords(before.Scale.System))
	out.Line("Marks are pivot + slide on each side; front / back where they differ.")
	out.Line("%s", lines[0])
	for i, r := range afters {
		out.Line("%s", lines[i+1])
		if apart {
			out.Hanging("        ", "sleeve "+marks[0].cell(i)+"; bodice "+marks[1].cell(i))
		}
		var above report.Report // of the first row nothing
		if i > 0 {
			above = afters[i-1]
		}
		came, went := newsWords(above, r)
		if came != "" {
			out.Hanging("        new: ", came)
		}
		if went != "" {
			out.Hanging("        gone: ", went)
		}
	}
	return out.Text()
}

// columns are the lines of a table under its head, its last column on the left.
func columns(list []column, rows int) []string {
	lines := make([]string, rows+1)
	for at, c := range list {
		cells, width, some := []string{c.head}, len(c.head), false
		for i := range rows {
			cell := c.cell(i)
			cells, width, some = append(cells, cell), max(width, len(cell)), some || cell != "-"
		}
		if !some {
			continue
		}
		for i, cell := range cells {
			if at == len(list)-1 {
				lines[i] = strings.TrimRight(lines[i]+"  "+cell, " ")
			} else {
				lines[i] += typeset.PadLeft(cell, width+2)
			}
		}
	}
	return lines
}

// newsWords are the findings that came since another sheet, and those that went, in a few
// words each. Of the first row, where there is nothing to compare with, it is what asks for
// something.
func newsWords(above, r report.Report) (came, went string) {
	var news, gone []string
	for _, c := range compare.Findings(above, r) {
		switch {
		case c.How == compare.New && (len(above.Findings) > 0 || c.Finding.Level > calc.Note):
			news = append(news, c.Finding.Short())
		case c.How == compare.Gone:
			gone = append(gone, c.Finding.Short())
		}
	}
	return strings.Join(news, ", "), strings.Join(gone, ", ")
}

// marksOfPiece is what is marked on a piece, "1 + 1/4", or front and back.
func marksOfPiece(r report.Report, front calc.Side) string {
	one, other := compare.MarksOfSide.Words(r, r.Plan.Sides[front]), compare.MarksOfSide.Words(r, r.Plan.Sides[front+1])
	if one == other {
		return one
	}
	return one + " / " + other
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
			if !reflect.DeepEqual(was[path], is[path]) {
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

// leaves are the values of a sheet's JSON by their paths; a list, such as an outline, is one
// value. Findings are compared as a whole, by code and subject.
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
			out[path] = v
			if path == "findings" {
				out[path] = codes(v)
			}
		default:
			out[path] = v
		}
	}
	walk("", tree)
	return out, nil
}

// codes are findings without their words, which may change where nothing else does.
func codes(findings []any) []string {
	list := []string{}
	for _, f := range findings {
		if m, ok := f.(map[string]any); ok {
			list = append(list, fmt.Sprint(m["level"], " ", m["code"], " ", m["about"]))
		}
	}
	slices.Sort(list)
	return list
}
