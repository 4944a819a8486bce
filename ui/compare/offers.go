package compare

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/calc/remedy"
	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// What would make it work: for each trouble the smallest single changes that
// remove it, each with its price.

// Trouble is a finding, and what would remove it.
type Trouble struct {
	Finding report.Finding
	Offers  []Offer
}

// Offer is a changed sheet, in words: what is changed, and what that costs.
type Offer struct {
	Change string
	Price  []string
	Sheet  worksheets.Sheet
}

// Troubles finds the offers for a sheet. It tries many plans, so it is done when
// somebody asks.
func Troubles(r report.Report) []Trouble {
	var list []Trouble
	for _, f := range remedy.Troubles(r.Plan) {
		t := Trouble{Finding: r.Worded(f)}
		changes := remedy.Of(r.Input, f)
		slices.SortStableFunc(changes, func(a, b remedy.Change) int { // those that bring no other trouble come first
			return cmp.Compare(len(remedy.Troubles(a.After)), len(remedy.Troubles(b.After)))
		})
		for _, c := range changes {
			t.Offers = append(t.Offers, priced(r, c))
		}
		list = append(list, t)
	}
	return list
}

// priced words a change and finds its price.
func priced(r report.Report, c remedy.Change) Offer {
	k := forms.KeyOf[c.Answer]
	o := Offer{Sheet: r.Sheet}
	if err := o.Sheet.Set(k, changeText(c, r.Sheet.Scale())); err != nil { // our own words are always readable
		panic(err)
	}
	after := r.With(o.Sheet)
	o.Change = fmt.Sprintf("%s: %s instead of %s", forms.Fields[k].Words, after.ValueOrDash(k), r.ValueOrDash(k))
	o.Price = Price(r, after, k)
	return o
}

// changeText is the changed answer as the sheet takes it.
func changeText(c remedy.Change, sc units.Scale) string {
	in := c.Input
	switch c.Answer {
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
		for _, row := range bothSides(piece, MarksOfSide, both) {
			add(row.What, row.Cells)
		}
	}
	for _, c := range consequences {
		add(c.what, inEach(both, c.Words))
	}
	if place, ok := forms.PlaceOf[k]; ok {
		low, high := calc.EaseSpan(place, r.Input.Fabric)
		if ease := after.Sheet.Reading(k); ease.Known && ease.Length < low {
			list = append(list, "less than the usual "+wording.Span(low, high, r.Scale)+
				", and wearing ease is not to be used up instead of altering (Robinson, ch. 16 and 17)")
		}
	}
	for _, c := range Findings(r, after) {
		if c.How == New && c.Finding.Level > calc.Note {
			list = append(list, c.Finding.Leveled())
		}
	}
	return list
}

// lines are the offer as it is printed, n being its number.
func (o Offer) lines(n int, width int) []string {
	price := "nothing else that is marked or measured changes"
	if len(o.Price) > 0 {
		price = strings.TrimSuffix(strings.Join(o.Price, "; "), ".")
	}
	return append(typeset.Hanging(fmt.Sprintf("%2d  ", n), typeset.Capitalised(o.Change)+".", width), typeset.Hanging("    price: ", price+".", width)...)
}

// Lines are all troubles with their offers, numbered through; at tells in
// which line each offer begins.
func Lines(list []Trouble, width int) (out []string, at []int) {
	for i, t := range list {
		if i > 0 {
			out = append(out, "")
		}
		out = append(out, typeset.Hanging(fmt.Sprintf("%-6s", t.Finding.Asks()), t.Finding.Text, width)...)
		if len(t.Offers) == 0 {
			out = append(out, typeset.Hanging("    ", "No single change of ease, share, limit, custom or slide within reason removes it. Ways out: "+
				cmp.Or(strings.Join(t.Finding.Ways, "; "), "none known")+".", width)...)
		}
		for _, o := range t.Offers {
			at = append(at, len(out))
			out = append(out, o.lines(len(at), width)...)
		}
	}
	return out, at
}
