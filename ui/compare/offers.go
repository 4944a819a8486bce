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
// remove it, each with its cost.

// Trouble is a finding, and what would remove it.
type Trouble struct {
	Finding report.Finding
	Offers  []Offer
}

// Offer is a changed sheet, in words: what is changed, and what that costs.
type Offer struct {
	Change string
	Asked  string // the change to be heard, as it would be asked of somebody: "set the ease at the bust to 2 in"
	Price  []string
	Said   []string // the price to be heard, a sentence each
	Try    string   // KEY=VALUE, as the try command takes it; "" for more than one answer
	Sheet  worksheets.Sheet
}

// Troubles finds the offers for a sheet. It tries many plans, so it is done when
// somebody asks.
func Troubles(r report.Report) []Trouble {
	var list []Trouble
	asked := false // what was meant, which is the same for all that follow from it
	for _, f := range remedy.Troubles(r.Plan) {
		t := Trouble{Finding: r.Worded(f)}
		if f.Bound != nil { // nothing else is worth a change while the answer is doubted
			if g := t.Finding.Guess; g != nil {
				t.Offers = append(t.Offers, meant(r, g))
			}
			if !asked {
				list = append(list, t)
			}
			asked = true
			continue
		}
		changes := remedy.Of(r.Input, f)
		slices.SortStableFunc(changes, func(a, b remedy.Change) int { // those that bring no other trouble come first
			return cmp.Compare(len(remedy.Troubles(a.After)), len(remedy.Troubles(b.After)))
		})
		for _, c := range changes {
			t.Offers = append(t.Offers, priced(r, c))
		}
		t.Offers = append(t.Offers, sizeOffers(r, f)...)
		list = append(list, t)
	}
	for _, f := range r.Plan.Findings {
		if f.Code == calc.StartLarger {
			if sizes := sizeOffers(r, f); len(sizes) > 0 {
				list = append(list, Trouble{r.Worded(f), sizes})
			}
		}
	}
	for _, f := range r.Plan.Findings { // no trouble, and worth a try all the same
		if shares := remedy.FrontShares(r.Input, r.Plan, f); len(shares) > 0 {
			t := Trouble{Finding: r.Worded(f)}
			for _, c := range shares {
				t.Offers = append(t.Offers, priced(r, c))
			}
			list = append(list, t)
		}
	}
	return list
}

// priced words a change and finds its price.
func priced(r report.Report, c remedy.Change) Offer {
	k, text := forms.KeyOf[c.Answer], changeText(c, r.Sheet.Scale())
	o := Offer{Sheet: r.Sheet, Try: tryText(k, text)}
	if err := o.Sheet.Set(k, text); err != nil { // our own words are always readable
		panic(err)
	}
	after := r.With(o.Sheet)
	between := " instead of "
	if forms.KindOf(k) == forms.ChoiceField { // of which one does the thing or does not
		between = ", not "
	}
	o.Change = forms.Fields[k].Words + ": " + after.ValueOrDash(k) + between + r.ValueOrDash(k)
	o.Asked = "set " + setTo(k, r, after)
	if k == worksheets.Follow {
		o.Asked = "let what slides too far " + map[calc.Follow]string{calc.Hold: "keep its width", calc.LetOut: "be widened to match"}[c.Input.Method.Follow]
	}
	o.Price, o.Said = Price(r, after), PriceSaid(r, after)
	return o
}

// tryText is a change as a shell takes it behind try; "" where no quotes keep the text whole.
// A sign would be taken for more or less of the answer that is there, were there not
// another = before it.
func tryText(k worksheets.Key, text string) string {
	is := k.Path() + "="
	if strings.HasPrefix(text, "-") || strings.HasPrefix(text, "+") || strings.HasPrefix(text, "=") {
		is += "="
	}
	switch {
	case strings.ContainsFunc(text, func(c rune) bool { return strings.ContainsRune("'\"\\$&;|<>()*?!#~`", c) }):
		return ""
	case strings.Contains(text, " "):
		return fmt.Sprintf("%s'%s'", is, text)
	}
	return is + text
}

// setTo is a changed answer to be heard: "the ease at the bust to 2 in, instead of 3 in".
func setTo(k worksheets.Key, r, after report.Report) string {
	return fmt.Sprintf("the %s to %s, instead of %s", forms.Fields[k].Words, after.ValueOrDash(k), cmp.Or(r.Value(k), "nothing"))
}

// meant is what was probably meant by an answer, and its price.
func meant(r report.Report, g *report.Guess) Offer {
	o := Offer{Sheet: g.In(r.Sheet)}
	after := r.With(o.Sheet)
	o.Price, o.Said = Price(r, after), PriceSaid(r, after)
	var changes, asked []string
	for _, k := range g.Keys() {
		changes = append(changes, fmt.Sprintf("%s: %s instead of %s", forms.Fields[k].Words, after.ValueOrDash(k), r.ValueOrDash(k)))
		asked = append(asked, setTo(k, r, after))
	}
	o.Change, o.Asked = strings.Join(changes, ", "), "set "+strings.Join(asked, ", and ")
	if len(changes) == 1 {
		o.Try = tryText(g.Key, typeset.Plain(g.Text))
	}
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

// Price is what a change brings: what is to be marked then, the figures by which it is
// judged, and the checks and stops that come.
func Price(r report.Report, after report.Report) []string {
	return price(r, after, func(row Row) string { return fmt.Sprintf("%s %s instead of %s", row.What, row.Cells[1], row.Cells[0]) },
		report.Finding.Leveled)
}

// PriceSaid is the same to be heard, a sentence each.
func PriceSaid(r report.Report, after report.Report) []string {
	return price(r, after, Row.Sentence, func(f report.Finding) string {
		return "A new " + f.Asks() + ": " + typeset.Uncapitalised(f.Text)
	})
}

func price(r report.Report, after report.Report, figure func(Row) string, finding func(report.Finding) string) []string {
	var list []string
	both := []report.Report{r, after}
	add := func(row Row) {
		if row.differs() {
			list = append(list, figure(row))
		}
	}
	for _, piece := range []calc.Side{calc.SleeveFront, calc.BodiceFront} {
		for _, row := range bothSides(piece, MarksOfSide, both) {
			add(row)
		}
	}
	list = append(list, heightLost(r, after, calc.SleeveFront)...)
	list = append(list, heightLost(r, after, calc.BodiceFront)...)
	for _, c := range []Consequence{CapEase, BicepAfter, BustAfter} {
		add(c.row(both))
	}
	for _, c := range Findings(r, after) {
		if c.How == New && c.Finding.Level > calc.Note {
			list = append(list, finding(c.Finding))
		}
	}
	if len(list) == 0 {
		return stays(after)
	}
	return list
}

// heightLost says what a change takes off the cap's height, or the armhole's depth, beyond
// what it loses now.
func heightLost(r, after report.Report, front calc.Side) []string {
	now, known := heightOf(r.Plan, front)
	then, alsoKnown := heightOf(after.Plan, front)
	p := report.WordsOfPiece(front.Subject())
	less := calc.Approx{MM: now - then, Known: known && alsoKnown}.Length()
	switch {
	case !less.Known || wording.ShownAsNothing(r.Scale.Format(less.Length)):
		return nil
	case less.Length < 0:
		return []string{fmt.Sprintf("the %s keeps %s more of its %s", p.Seam, r.Scale.Format(-less.Length), p.Height)}
	}
	return []string{fmt.Sprintf("the %s loses %s more of its %s", p.Seam, r.Scale.Format(less.Length), p.Height)}
}

// stays is the price of a change that costs nothing.
func stays(r report.Report) []string {
	var list []string
	for _, p := range r.Pieces() {
		if p.Girth.Drawn.Known {
			list = append(list, fmt.Sprintf("the %s stays at %s", strings.ToLower(p.Name), r.Scale.Format(p.Girth.Drawn.Length)))
		}
	}
	return list
}

// single are the ways out that a change of one answer is; where it works it is an offer.
var single = []calc.Way{
	calc.OtherShare, calc.WiderLimit, calc.LessEase, calc.MoreEase, calc.LessEaseThere, calc.MoreEaseThere, calc.LetItOut, calc.HoldIt, calc.FrontTakesMore,
}

// Besides are the ways out of a trouble that are no change of one answer, in words, "" for
// none.
func (t Trouble) Besides() string {
	f := t.Finding
	f.Ways = slices.DeleteFunc(slices.Clone(f.Ways), func(w report.Way) bool {
		return slices.ContainsFunc(single, func(s calc.Way) bool { return s.String() == w.Of })
	})
	return f.WayWords()
}

// lines are the offer as it is printed, n being its number.
func (o Offer) lines(n int, width int) []string {
	out := typeset.Hanging(fmt.Sprintf("%2d  ", n), typeset.Capitalised(o.Change)+".", width)
	if len(o.Price) == 0 {
		return out
	}
	return append(out, typeset.Hanging("    cost: ", o.Cost(), width)...)
}

// Cost is the price in one sentence.
func (o Offer) Cost() string {
	parts := make([]string, len(o.Price))
	for i, p := range o.Price {
		parts[i] = strings.TrimSuffix(p, ".")
	}
	return strings.Join(parts, "; ") + "."
}

// Heading is what stands over the offers: troubles that they solve, or else what is worth a
// try, and what kind of changes they are.
func Heading(list []Trouble) (words, kind string) {
	if slices.ContainsFunc(list, func(t Trouble) bool { return t.Finding.Level > calc.Note }) {
		return "What would make it work", "the smallest single changes"
	}
	return "Worth a try", "single changes"
}

// Lines are all troubles with their offers, numbered through; at tells in which line each
// offer begins. Last is what needs cutting and sewing, and what it means to accept it. With
// commands, each offer says how the try command shows it.
func Lines(list []Trouble, width int, commands bool) (out []string, at []int) {
	for i, t := range list {
		if i > 0 {
			out = append(out, "")
		}
		out = append(out, typeset.Hanging(fmt.Sprintf("%-6s", t.Finding.Asks()), t.Finding.Text, width)...)
		if len(t.Offers) == 0 {
			out = append(out, "    No single change solves this.")
		}
		for _, o := range t.Offers {
			at = append(at, len(out))
			out = append(out, o.lines(len(at), width)...)
			if commands && o.Try != "" {
				out = append(out, typeset.Hanging("    see it: ", "capscye try FILE "+o.Try, width)...)
			}
		}
		if words := t.Besides(); words != "" {
			out = append(out, typeset.Hanging("    ", "Or "+words+".", width)...)
		}
		if t.Finding.Accept != "" {
			out = append(out, typeset.Hanging("    ", "Or "+t.Finding.Accept+".", width)...)
		}
	}
	return out, at
}
