package screen

import (
	"strings"

	"capscye/ui/desk"
	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/ui/sizes"
	"capscye/ui/typeset"
)

// What the page of sizes says between the measurements and the costs.

// messageLines say what just happened, or what there is to say of the cell under the hands;
// on one line, or in a tall window on two.
func (p *sizesPage) messageLines(width int, tall bool) []string {
	d, most := p.desk, 1
	if tall {
		most = 2
	}
	if d.Message != "" {
		return parts.Bold(inLines("> "+d.Message, width, most), p.styles)
	}
	lines := inLines("-- "+p.hint(tall), width, most)
	last := &lines[len(lines)-1]
	*last = typeset.Cut(*last+" "+strings.Repeat("-", max(0, width-typeset.Width(*last)-1)), width)
	return lines
}

// inLines is a text on so many lines: on one, as many of its sentences as that takes.
func inLines(text string, width, most int) []string {
	if most == 1 {
		return []string{inLine(text, width)}
	}
	lines := typeset.Wrap(text, width)
	if len(lines) > most {
		lines = append(lines[:most-1], typeset.Cut(strings.Join(lines[most-1:], " "), width))
	}
	return lines
}

// inLine is as many sentences of a text as a line takes.
func inLine(text string, width int) string {
	for typeset.Width(text) > width {
		end := max(strings.LastIndex(text, ". "), strings.LastIndex(text, "? "))
		if end < 0 {
			break
		}
		text = text[:end+1]
	}
	return typeset.Cut(text, width)
}

// hint says how what is typed reads; else what is asked of the cell, what its size comes to
// while that is not well, or what the row is. compared tells that the sentences about all
// sizes are in sight.
func (p *sizesPage) hint(compared bool) string {
	k := p.at()
	if p.typing.Changed() || p.waits() {
		if words := p.reads(); words != "" {
			return words
		}
	}
	switch {
	case p.onNew() && p.row == 0:
		return "type the name of another size that you measured"
	case p.onNew():
		return forms.Fields[k].Hint
	}
	if words := p.asked(); words != "" {
		return words
	}
	size := p.all[p.col]
	v, empty := size.Report.Verdict(), p.text(p.col, k) == ""
	switch {
	case v.State == report.Stopped || v.State == report.ToCheck, v.State < report.Ready && !empty, p.row == 0 && compared:
		return size.Gravest()
	case p.row == 0:
		return sizes.ByTheBody(p.all)
	}
	return forms.Fields[k].Hint // an empty cell is to be measured
}

// reads says how what stands in the line of input reads, or why it does not.
func (p *sizesPage) reads() string {
	k := p.at()
	sheet, err := p.typed()
	meant, doubted := desk.MeantBy(err)
	switch {
	case doubted:
		return meant + "? enter takes it"
	case err != nil:
		return refusal(err, p.meanwhile())
	case k.IsLength() && p.col > 0:
		sheet = sheet.SizeAlone(p.col - 1)
	}
	notTaken := ""
	if p.waits() {
		notTaken = "no answer yet: enter takes it"
	}
	if l := sheet.Reading(k); k.IsLength() && l.Known {
		return strings.TrimSuffix("= "+p.desk.Rep.Scale.Both(l.Length)+", "+notTaken, ", ")
	}
	return notTaken
}

// meanwhile is what becomes of a text that cannot be taken.
func (p *sizesPage) meanwhile() string {
	if _, kept := p.draftName(p.col); kept && !p.onNew() {
		return "the answer stays"
	}
	return "esc drops it"
}

// asked is what is to be asked of the answer under the hands, or else of another one of its
// size; "" for nothing.
func (p *sizesPage) asked() string {
	k, r := p.at(), p.all[p.col].Report
	if err := p.check(); err != nil {
		return refusal(err, "type it again")
	}
	if g := r.GuessFor(k); g != nil {
		return g.Question(&r.Sheet) + " ^a takes it"
	}
	if r.DoubtOf(k) != "" {
		for _, f := range r.Findings {
			if f.Key == k.String() {
				return f.Text
			}
		}
	}
	if g := p.guess(); g != nil {
		return forms.Fields[g.Key].Label + ": " + g.Question(&r.Sheet) + " ^a takes it"
	}
	return ""
}

// check says why the answer under the hands cannot be read, if it cannot.
func (p *sizesPage) check() error {
	if p.col == 0 {
		return p.desk.Sheet().Check(p.at())
	}
	return p.desk.Sheet().CheckSize(p.col-1, p.at())
}

// guess is what may have been meant by the answer under the hands, else by the first of its
// size that is doubted; nil for none.
func (p *sizesPage) guess() *report.Guess {
	r, ok := p.reportOf(p.col)
	if !ok {
		return nil
	}
	if g := r.GuessFor(p.at()); g != nil {
		return g
	}
	for _, f := range r.Findings {
		if f.Guess != nil && f.Guess.Key.IsOfSize() {
			return f.Guess
		}
	}
	return nil
}

// takeGuess puts the guess in the place of what was typed, as one change.
func (p *sizesPage) takeGuess() parts.Wish {
	d, g := p.desk, p.guess()
	if g == nil { // what was being typed mended it
		return nil
	}
	sheet := *d.Sheet()
	if i := p.col - 1; i < 0 {
		sheet = g.In(sheet)
	} else {
		z, mended := sheet.Sizes[i], g.In(sheet.SizeAlone(i))
		for _, k := range g.Keys() {
			z = z.With(k, mended.Text(k))
			sheet.Drafts = sheet.Drafts.WithSize(z.Name(), k, "")
		}
		sheet = sheet.WithSize(i, z)
	}
	what := desk.SizeWords(p.all[p.col].Name, forms.Fields[g.Key].Words)
	w, done := p.change(sheet, what)
	if done && d.Message == "" {
		d.Message = typeset.Capitalised(what) + " is now " + p.all[p.col].Report.ValueOrDash(g.Key) + ". ^z undoes that."
	}
	return w
}
