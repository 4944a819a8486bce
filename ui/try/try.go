// Package try prints what changes would do to a worksheet, without touching its file.
package try

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/ui/compare"
	"capscye/ui/console"
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

// sentences say what differs, of a range one value after the other, each against the one
// before it.
func sentences(before report.Report, list []trial, afters []report.Report) (s typeset.Speech) {
	if len(list) == 1 {
		s.SayEach(afters[0].Verdict().Line())
	} else {
		s.SayEach(rangeVerdict(list, afters))
	}
	s.Say("%s, in %s", before.Name(), wording.UnitWords(before.Scale.System))
	for i, after := range afters {
		if list[i].value != "" {
			s.Say("With %s", list[i].value)
			s.SayEach(after.Verdict().Line())
		}
		show.SayDifferences(&s, before, after)
		before = after
	}
	return s
}

// rangeVerdict says which values of a range come to what: "Ready from 1 to 2 1/2, check
// from 3 to 4."
func rangeVerdict(list []trial, afters []report.Report) string {
	var parts []string
	for from := 0; from < len(list); {
		state, to := afters[from].Verdict().State, from
		for to+1 < len(list) && afters[to+1].Verdict().State == state {
			to++
		}
		where := "at " + list[from].value
		if to > from {
			where = "from " + list[from].value + " to " + list[to].value
		}
		parts = append(parts, report.StateNames[state]+" "+where)
		from = to + 1
	}
	return typeset.Plain(typeset.Capitalised(strings.Join(parts, ", "))) + "."
}

// trialTable is a row of outcomes for each value of a range, and what is not as in the
// row above.
func trialTable(before report.Report, list []trial, afters []report.Report) string {
	table := [][]string{{"value", "bicep", "bust", "sleeve marks", "bodice marks", "cap ease", "cap height", "", "new since the row above"}}
	for i, r := range afters {
		var above report.Report // of the first row nothing
		if i > 0 {
			above = afters[i-1]
		}
		table = append(table, []string{typeset.Plain(list[i].value), compare.BicepAfter.Words(r), compare.BustAfter.Words(r),
			marksOfPiece(r, calc.SleeveFront), marksOfPiece(r, calc.BodiceFront), compare.CapEase.Words(r), compare.CapHeight.Words(r),
			r.Verdict().Short(), newsWords(above, r)})
	}
	widths := make([]int, len(table[0]))
	for _, row := range table {
		for i, cell := range row {
			widths[i] = max(widths[i], len(cell))
		}
	}
	var out typeset.Printout
	out.Hanging("", rangeVerdict(list, afters))
	out.Hanging("", before.Name()+", in "+wording.UnitWords(before.Scale.System))
	out.Line("Marks are pivot + slide on each side; front / back where they differ.")
	for _, row := range table {
		line := ""
		for i, cell := range row[:len(row)-2] {
			line += typeset.PadLeft(cell, widths[i]+2)
		}
		line += "  " + typeset.Pad(row[len(row)-2], widths[len(row)-2]) + "  " + row[len(row)-1]
		out.Line("%s", strings.TrimRight(line, " "))
	}
	return out.Text()
}

// newsWords are the findings that came since another sheet, in a few words each; of those
// that went, the ones that asked for something. Of the first row, where there is nothing
// to compare with, it is what asks for something.
func newsWords(above, r report.Report) string {
	var words []string
	for _, c := range compare.Findings(above, r) {
		switch {
		case c.How == compare.New && (len(above.Findings) > 0 || c.Finding.Level > calc.Note):
			words = append(words, c.Finding.Short())
		case c.How == compare.Gone && c.Finding.Level > calc.Note:
			words = append(words, "no longer "+c.Finding.Short())
		}
	}
	return strings.Join(words, ", ")
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
