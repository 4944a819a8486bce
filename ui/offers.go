package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// What would make it work: for each trouble the smallest single changes that
// remove it, each with its price.

// trouble is a finding, and what would remove it.
type trouble struct {
	finding report.Finding
	offers  []offer
}

// offer is a changed sheet, in words: what is changed, and what that costs.
type offer struct {
	change string
	price  []string
	sheet  worksheets.Sheet
}

// troubles are those of what is at hand, and what has changed where its
// measurements were taken from.
func (d *desk) troubles() []trouble {
	return append(Troubles(d.rep), sinceOffers(d.rep, d.doc.Origins)...)
}

// Troubles finds the offers for a sheet. It tries many plans, so it is done when
// somebody asks.
func Troubles(r report.Report) []trouble {
	var list []trouble
	for _, f := range calc.Troubles(r.Plan) {
		t := trouble{finding: r.Worded(f)}
		remedies := calc.Remedies(r.Input, f)
		slices.SortStableFunc(remedies, func(a, b calc.Remedy) int { // those that bring no other trouble come first
			return cmp.Compare(len(calc.Troubles(a.After)), len(calc.Troubles(b.After)))
		})
		for _, remedy := range remedies {
			t.offers = append(t.offers, priced(r, remedy))
		}
		list = append(list, t)
	}
	return list
}

// priced words a remedy and finds its price.
func priced(r report.Report, remedy calc.Remedy) offer {
	k := forms.KeyOf[remedy.Answer]
	o := offer{sheet: r.Sheet}
	if err := o.sheet.Set(k, remedyText(remedy, r.Sheet.Scale())); err != nil { // our own words are always readable
		panic(err)
	}
	after := r.With(o.sheet)
	o.change = fmt.Sprintf("%s: %s instead of %s", forms.Fields[k].Words, after.ValueOrDash(k), r.ValueOrDash(k))
	o.price = Price(r, after, k)
	return o
}

// remedyText is the changed answer as the sheet takes it.
func remedyText(remedy calc.Remedy, sc units.Scale) string {
	in := remedy.Input
	switch remedy.Answer {
	case calc.BicepEase:
		return forms.Exactly(in.BicepEase.Length, sc)
	case calc.BustEase:
		return forms.Exactly(in.BustEase.Length, sc)
	case calc.ShareSleeve:
		return percentText(in.Method.ShareSleeve)
	case calc.ShareBust:
		return percentText(in.Method.ShareBust)
	case calc.LimitSleeve:
		return forms.Exactly(in.Method.LimitSleeve, sc)
	case calc.LimitBodice:
		return forms.Exactly(in.Method.LimitBodice, sc)
	case calc.FollowCustom:
		return worksheets.Follow.Options()[in.Method.Follow]
	}
	return [...]string{calc.SlideLeast: "least", calc.SlideEven: "even"}[in.Method.Slide]
}

// percentText is a share that is a whole number of hundredths.
func percentText(s units.Share) string { return fmt.Sprintf("%d %%", s.Numerator*100/s.Denominator) }

// Price is what a change of one answer brings: what is to be marked then, the
// figures by which it is judged, the warnings that come, and an ease that is less
// than usual.
func Price(r report.Report, after report.Report, k worksheets.Key) []string {
	var list []string
	both := []report.Report{r, after}
	add := func(what string, cells []string) {
		if cells[0] != cells[1] {
			list = append(list, fmt.Sprintf("%s %s instead of %s", what, cells[1], cells[0]))
		}
	}
	for _, piece := range []calc.Side{calc.SleeveFront, calc.BodiceFront} {
		for _, row := range bothSides(piece, marksOfSide, both) {
			add(row.what, row.cells)
		}
	}
	for _, c := range consequences {
		add(c.what, inEach(both, c.words))
	}
	if place, ok := forms.PlaceOf[k]; ok {
		low, high := report.UsualEase(place, r.Input.Fabric)
		if ease := after.Sheet.Reading(k); ease.Known && ease.Length < low {
			list = append(list, "less than the usual "+wording.Span(low, high, r.Scale)+
				", and wearing ease is not to be used up instead of altering (Robinson, ch. 16 and 17)")
		}
	}
	came, _ := cameAndWent(r, after)
	for _, f := range came {
		if f.Level > calc.Note {
			list = append(list, f.Leveled())
		}
	}
	return list
}

// lines are the offer as it is printed, n being its number.
func (o offer) lines(n int, width int) []string {
	price := "nothing else that is marked or measured changes"
	if len(o.price) > 0 {
		price = strings.TrimSuffix(strings.Join(o.price, "; "), ".")
	}
	return append(typeset.Hanging(fmt.Sprintf("%2d  ", n), typeset.Capitalised(o.change)+".", width), typeset.Hanging("    price: ", price+".", width)...)
}

// troubleLines are all troubles with their offers, numbered through; at tells in
// which line each offer begins.
func troubleLines(list []trouble, width int) (out []string, at []int) {
	for i, t := range list {
		if i > 0 {
			out = append(out, "")
		}
		out = append(out, typeset.Hanging(fmt.Sprintf("%-5s", t.finding.Level), t.finding.Text, width)...)
		if len(t.offers) == 0 {
			out = append(out, typeset.Hanging("    ", "No single change of ease, share, limit, custom or slide within reason removes it. Ways out: "+
				cmp.Or(strings.Join(t.finding.Ways, "; "), "none known")+".", width)...)
		}
		for _, o := range t.offers {
			at = append(at, len(out))
			out = append(out, o.lines(len(at), width)...)
		}
	}
	return out, at
}

// offerPage lists the offers, to open one as a what-if.
type offerPage struct {
	styles   styles
	troubles []trouble
	at       int
}

func (p *offerPage) offers() (list []offer) {
	for _, t := range p.troubles {
		list = append(list, t.offers...)
	}
	return list
}

func (p *offerPage) key(name string) wish {
	list := p.offers()
	switch name {
	case "up", "shift+tab":
		p.at = max(p.at-1, 0)
		return wish{}
	case "down", "tab":
		p.at = max(min(p.at+1, len(list)-1), 0)
		return wish{}
	case "enter":
		if len(list) > 0 {
			return wish{kind: wishTry, sheet: &list[p.at].sheet}
		}
	}
	if n, err := strconv.Atoi(name); err == nil && 1 <= n && n <= len(list) {
		return wish{kind: wishTry, sheet: &list[n-1].sheet}
	}
	return wish{kind: wishBack}
}

func (p *offerPage) render(width, height int) string {
	lines, at := troubleLines(p.troubles, width)
	focus := 0
	if len(at) > 0 {
		focus = at[p.at]
		lines[focus] = p.styles.here.Render(lines[focus])
	}
	seen, below := typeset.Window(lines, min(focus+2, len(lines)-1), height-3) // the price of what is at hand is seen too
	if below > 0 && len(seen) > 1 {
		seen[len(seen)-1] = typeset.Cut(fmt.Sprintf("... and %d lines more below", below+1), width)
	}
	keys := keyLine([]binding{{show: "up/down", does: "choose"}, {show: "enter", does: "open as what if"}, {show: "esc", does: "back"}}, p.styles, width)
	head := []string{p.styles.heading.Render("What would make it work") + "   the smallest single changes", ""}
	return typeset.Block(append(head, seen...), width, height-1) + "\n" + typeset.Cut(keys, width)
}
