package report

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// Doubted measurements in words, and what was meant instead.

// Guess is what may have been meant by a doubted answer.
type Guess struct {
	Key  worksheets.Key
	Text string // as it would be typed; "" where the answer belongs to another field altogether
	Slip calc.Slip
	with worksheets.Key // the answer that the slip has a part in too
	then string         // the text of that
}

// Keys are the answers that the guess is about.
func (g Guess) Keys() []worksheets.Key {
	if g.Slip.TakesPartner() {
		return []worksheets.Key{g.Key, g.with}
	}
	return []worksheets.Key{g.Key}
}

// In is a sheet with the guess in the place of what was typed.
func (g Guess) In(s worksheets.Sheet) worksheets.Sheet {
	mended := s
	err := mended.Set(g.Key, g.Text)
	if err == nil && g.Slip.TakesPartner() {
		err = mended.Set(g.with, g.then)
	}
	if err != nil { // of another sheet than this one
		return s
	}
	return mended
}

// GuessFor is the guess for an answer, nil for none.
func (r Report) GuessFor(k worksheets.Key) *Guess {
	for _, f := range r.Findings {
		if f.Guess != nil && f.Guess.Key == k {
			return f.Guess
		}
	}
	return nil
}

// DoubtOf is what to ask about an answer, in a few words; "" where nothing speaks against
// it.
func (r Report) DoubtOf(k worksheets.Key) string {
	for _, f := range r.Findings {
		switch {
		case f.Key != k.String() || !f.Doubts():
		case f.Guess != nil:
			return f.Guess.Question(&r.Sheet)
		default:
			return "check this"
		}
	}
	return ""
}

// Question is the guess as a person asks it beside the field, "36.5 cm?".
func (g Guess) Question(s *worksheets.Sheet) string {
	text := typeset.Plain(worksheets.WithUnit(g.Text, s.Unit()))
	switch g.Slip {
	case calc.Exchanged:
		return fmt.Sprintf("%s and %s the other way round?", forms.Fields[g.Key].Words, forms.Fields[g.with].Words)
	case calc.BothWhole:
		return fmt.Sprintf("%s and %s, halved?", typeset.Plain(g.Text), typeset.Plain(worksheets.WithUnit(g.then, s.Unit())))
	case calc.WholeForHalf:
		return text + ", half of it?"
	case calc.HalfAGirth:
		return text + ", twice that?"
	}
	return text + "?"
}

// guessOf is the guess that comes with a finding, if there is one.
func (r *Report) guessOf(f calc.Finding) *Guess {
	if f.Bound == nil || len(f.Slips) == 0 {
		return nil
	}
	k := forms.KeyOf[f.Answer]
	g := Guess{Key: k, Text: f.Doubt.Text, Slip: f.Slips[0]}
	if r.Sheet.Unit() == units.Inches { // where nobody writes tenths
		g.Text = strings.TrimSuffix(strings.TrimSuffix(g.Text, ".0"), ",0")
	}
	if g.Slip.TakesPartner() {
		g.with = forms.KeyOf[calc.PartnerOf(f.Answer)]
	}
	switch {
	case g.Slip == calc.Exchanged:
		g.Text, g.then = r.Sheet.Text(g.with), r.Sheet.Text(k)
	case g.Slip == calc.BothWhole:
		g.Text, g.then = r.typedLength(f.Guess), r.typedLength(r.Sheet.Reading(g.with).Length.Half())
	case g.Text == "":
		g.Text = r.typedLength(f.Guess)
	}
	return &g
}

// typedLength is a length as it would be typed.
func (r Report) typedLength(l units.Length) string {
	if text := r.Sheet.Scale().Exact(l); !strings.HasPrefix(text, units.OffMark) {
		return text
	}
	return forms.Exactly(l, r.Sheet.Scale())
}

// keyOf is the path of the answer that a finding is about, "" where it is about none.
func keyOf(f calc.Finding) string {
	if f.Answer == calc.NoAnswer || f.Answer == calc.AnyGirth {
		return ""
	}
	return forms.KeyOf[f.Answer].String()
}

// doubtText is the guess, and then why.
func (r *Report) doubtText(f calc.Finding) string {
	return r.doubtWords(f) + " " + r.whyDoubted(f, besideOf(f))
}

// besideOf is the answer that the doubted one is held against.
func besideOf(f calc.Finding) calc.Answer {
	if f.Bound.Of == f.Answer {
		return f.Bound.Beside
	}
	return f.Bound.Of
}

// doubtWords ask whether the guess is meant, or where there is none, whether the answer is
// right. It is a whole question, for it stands behind what asks for it: "Check: Is ...".
func (r *Report) doubtWords(f calc.Finding) string {
	words := func(a calc.Answer) string { return forms.Fields[forms.KeyOf[a]].Words }
	g := r.guessOf(f)
	switch {
	case g == nil && f.Bound.Beside != calc.NoAnswer:
		return "Are the " + words(f.Answer) + " and the " + words(besideOf(f)) + " right?"
	case g == nil:
		return "Is the " + words(f.Answer) + " right?"
	case g.Slip == calc.Exchanged:
		return "Are " + g.Question(&r.Sheet)
	}
	meant := typeset.Plain(worksheets.WithUnit(g.Text, r.Sheet.Unit()))
	switch g.Slip {
	case calc.BothWhole: // "front and back width", which no sleeve has
		both := strings.NewReplacer("front", "front and back", "back", "back and front").Replace(strings.TrimPrefix(words(f.Answer), "bodice "))
		return fmt.Sprintf("Are %s %s and %s, halved?", both, typeset.Plain(g.Text), typeset.Plain(worksheets.WithUnit(g.then, r.Sheet.Unit())))
	case calc.WholeForHalf:
		meant += ", half as much"
	case calc.HalfAGirth:
		meant += ", twice as much"
	}
	return fmt.Sprintf("Is the %s %s?", words(f.Answer), meant)
}

// whyDoubted says what an answer does not go with.
func (r *Report) whyDoubted(f calc.Finding, other calc.Answer) string {
	typed := r.asTyped(f.Answer, f.Amount)
	switch {
	case f.Bound.Beside != calc.NoAnswer:
		return fmt.Sprintf("%s does not go with the %s, %s%s.", typed, forms.Fields[forms.KeyOf[other]].Words, r.asTyped(other, f.Other), whose(f))
	case f.Bound.Code == calc.EaseUnusual:
		return fmt.Sprintf("%s is far from the usual ease, %s.", typed, r.easeSpan(forms.KeyOf[f.Answer]))
	case f.Bound.Code == calc.GirthUnusual:
		return fmt.Sprintf("%s is not what people measure, %s%s.", typed, r.between(f.Bound, units.HalfInch), whose(f))
	}
	return fmt.Sprintf("%s is outside %s%s.", typed, r.between(f.Bound, units.EighthInch), whose(f))
}

// between are the ends of a bound, on marks that a person would name.
func (r *Report) between(b *calc.Bound, inches units.Ruler) string {
	mark := inches.Mark()
	return wording.Usual(b.Low.Round(mark), b.High.Round(mark), units.Scale{System: r.Scale.System, Ruler: inches})
}

// whose says of a bound of ours that it is.
func whose(f calc.Finding) string {
	if strings.Contains(f.Bound.Source, calc.Ours) {
		return " (" + calc.Ours + ")"
	}
	return ""
}

// asTyped is an answer as it was typed, with its unit, or its length where that is shown
// in another.
func (r *Report) asTyped(a calc.Answer, l units.Length) string {
	text := r.Sheet.Text(forms.KeyOf[a])
	if text == "" || r.Scale.System != r.Sheet.Unit() {
		return r.Scale.Format(l)
	}
	return typeset.Plain(worksheets.WithUnit(text, r.Sheet.Unit()))
}
