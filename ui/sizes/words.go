package sizes

import (
	"fmt"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// Comparison are the sentences under the sizes: which have no stop, which needs the least
// pivot, which one the high bust says; each only where it is known. It ends with the
// practice, and leaves the choice.
func Comparison(all []Size) []string {
	if len(all) == 1 {
		return []string{"No other size of this pattern is measured yet."}
	}
	lines := []string{withoutStop(all)}
	if words := leastPivot(all); words != "" {
		lines = append(lines, words)
	}
	return append(lines, ByTheBody(all), practice)
}

// practice is how the size is commonly chosen.
const practice = "Common practice: choose the size by shoulders and neck, which are hardest to alter, so by the high bust where the bust " +
	"is 2 in (5 cm) or more larger; then alter the widths."

func withoutStop(all []Size) string {
	var whole []string
	for _, z := range all {
		if z.Report.Whole() {
			whole = append(whole, z.Title())
		}
	}
	switch len(whole) {
	case 0:
		return "Every size has a stop, or an answer is missing."
	case len(all):
		return "No size has a stop."
	case 1:
		return fmt.Sprintf("Only size %s has every answer and no stop.", whole[0])
	}
	return fmt.Sprintf("Sizes %s have every answer and no stop.", typeset.AndList(whole))
}

// leastPivot names the sizes whose largest pivot is the smallest, of those that may be cut;
// of several that pivot alike, those that slide least.
func leastPivot(all []Size) string {
	var names []string
	var pivot, slide units.Length
	count, tied := 0, false // tied: one that pivots alike slides more
	for _, z := range all {
		if !z.Report.Whole() {
			continue
		}
		count++
		p, s := z.Report.Plan.MostPivot().Length, z.Report.Plan.MostSlide().Length
		switch {
		case len(names) == 0 || p < pivot:
			names, pivot, slide, tied = []string{z.Title()}, p, s, false
		case p == pivot && s < slide:
			names, slide, tied = []string{z.Title()}, s, true
		case p == pivot && s == slide:
			names = append(names, z.Title())
		case p == pivot:
			tied = true
		}
	}
	onRuler, needs := all[0].Report.Scale.OnRuler, sizesDo(names, "needs", "need")
	least, less := "no pivot", "the least slide, at most "+onRuler(slide)
	if pivot > 0 {
		least, less = "the least pivot, at most "+onRuler(pivot)+" a side,", "of those "+less
	}
	if slide == 0 {
		less = "no slide"
	}
	switch {
	case count < 2: // one alone is the least of nothing
		return ""
	case tied:
		return needs + " " + least + " and " + less + "."
	case pivot > 0:
		return needs + " the least pivot: at most " + onRuler(pivot) + " a side."
	}
	return needs + " no pivot."
}

// ByTheBody says which size the high bust says, or what is missing to know it.
func ByTheBody(all []Size) string {
	in, c := all[0].Report.Input, Choice(all)
	switch {
	case !in.HighBust.Known && !in.Bust.Known:
		return "Measure bust and high bust: they say which size fits the shoulders."
	case !in.HighBust.Known:
		return "Measure the high bust too: it says which size fits the shoulders."
	case !in.Bust.Known:
		return "Measure the bust too: beside the high bust it says which size fits."
	case len(c.Nearest) == 0:
		return "Copy the bust and high bust of each size from the pattern's chart: then the high bust says a size."
	}
	var names []string
	for _, i := range c.Nearest {
		names = append(names, all[i].Title())
	}
	words := "The high bust says size " + typeset.OrList(names)
	if c.By == calc.Bust {
		words = "The bust is less than 2 in (5 cm) larger than the high bust, so it says size " + typeset.OrList(names)
	}
	lacking := toCopy(all, c)
	if lacking != "" {
		words += " so far"
	}
	key, column := worksheets.ChartBust, "bust"
	if c.Against == calc.HighBust {
		key, column = worksheets.ChartHighBust, "high bust"
	}
	printed := all[c.Nearest[0]].Report.Sheet.Reading(key)
	return fmt.Sprintf("%s: its chart gives a %s of %s.%s", words, column, all[0].Report.Scale.Format(printed.Length), lacking)
}

// toCopy asks for what the chart of some sizes lacks in the column that the body is to be
// held against.
func toCopy(all []Size, c calc.SizeChoice) string {
	column := "bust"
	if c.Column == calc.HighBust {
		column = "high bust"
	}
	var names []string
	for i, of := range charts(all) {
		if !of.In(c.Column).Known {
			names = append(names, all[i].Title())
		}
	}
	switch len(names) {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf(" Copy the %s of size %s from the chart too.", column, names[0])
	}
	return fmt.Sprintf(" Copy the %s of sizes %s from the chart too.", column, typeset.AndList(names))
}

// sizesDo is "Size 14 needs" or "Sizes 14 and 16 need".
func sizesDo(names []string, one, many string) string {
	if len(names) == 1 {
		return "Size " + names[0] + " " + one
	}
	return "Sizes " + typeset.AndList(names) + " " + many
}

// Gravest is what a size comes to, and the gravest finding in words. That the bust is
// fuller than the high bust is the same for every size, and said of all of them.
func (z Size) Gravest() string {
	v := z.Report.Verdict()
	words := v.Line()
	if v.State != report.Ready && v.State != report.Fits {
		return words
	}
	for _, f := range z.Report.Findings {
		if f.Code != calc.SizeByHighBust {
			return words + " " + f.Text
		}
	}
	return words
}

// States are how far each size is, in a word or two.
func States(all []Size) Row {
	row := Row{Label: "Before cutting"}
	for _, z := range all {
		row.Cells = append(row.Cells, z.Report.Verdict().Short())
	}
	return row
}

// sentences are all that is known of the sizes, for the ear.
func sentences(all []Size) typeset.Speech {
	var s typeset.Speech
	first := all[0].Report
	s.Say("%s", first.Name())
	s.Say("Lengths are in %s, amounts to mark are for a ruler in %s", wording.UnitWords(first.Scale.System), first.Scale.Ruler)
	for _, z := range all {
		z.say(&s)
	}
	for _, words := range Comparison(all) {
		s.SayEach(words)
	}
	for _, c := range wording.Cautions {
		s.SayEach(c)
	}
	return s
}

// say says what a size costs.
func (z Size) say(s *typeset.Speech) {
	r := z.Report
	if z.InHand {
		s.Say("Size %s, the size in hand", z.Title())
	} else {
		s.Say("Size %s", z.Title())
	}
	s.SayEach(z.Gravest())
	for _, p := range r.Pieces() {
		s.Say("%s", p.NeedWords(r.Scale))
		for _, words := range p.SidesWords(r.Scale) {
			s.Say("%s, %s", p.Name, words)
		}
	}
	if lost := r.Plan.CapLost(); lost.Known && lost.Length().Length > 0 {
		s.Say("The cap gets %s lower", r.Scale.Format(lost.Length().Length))
	}
	if ease := r.Plan.Seams.CapEaseAfter; ease.Known {
		s.Say("The cap ease comes to %s", r.Scale.Format(ease.Length))
	}
	if bust := r.Plan.Bust; bust.Drawn.Known {
		s.Say("The bust comes to %s", r.Scale.Format(bust.Drawn.Length))
		if extra := bust.Unasked(); extra.Known && extra.Length > 0 {
			s.Say("That is %s more than asked", r.Scale.Format(extra.Length))
		}
	}
	for _, c := range []struct {
		key  worksheets.Key
		body units.Reading
		what string
	}{{worksheets.ChartHighBust, r.Input.HighBust, "high bust"}, {worksheets.ChartBust, r.Input.Bust, "bust"}} {
		if printed := r.Sheet.Reading(c.key); printed.Known && c.body.Known {
			s.Say("The %s in the chart is %s", c.what, differenceWords(printed.Length-c.body.Length, r.Scale))
		}
	}
}

// differenceWords is "1/2 in less than the wearer's".
func differenceWords(l units.Length, sc units.Scale) string {
	if l == 0 {
		return "the same as the wearer's"
	}
	return difference(l, sc.Format) + " than the wearer's"
}
