package ask

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// question is one line: what is asked, in which unit or of which choices, and
// the answer that there is.
func (a *asking) question(k worksheets.Key) string {
	text := typeset.Capitalised(forms.Fields[k].Words)
	switch unit := wording.UnitWords(a.rep.Scale.System); k.Kind() {
	case worksheets.Girth, worksheets.Amount, worksheets.Signed:
		text += ", in " + unit
	case worksheets.Slid:
		text += ": least, even, or a length in " + unit
	case worksheets.Choice, worksheets.Scale:
		options, _ := forms.OptionsOf(&a.doc.Sheet, k)
		text += ": " + typeset.OrList(forms.SaidOf(options))
	case worksheets.Date:
		text += ", such as 2026-10-03"
	case worksheets.Part:
		text += ", such as 1/2 or 55 %"
	case worksheets.Count:
		text += ", from 0 to 4"
	}
	now := a.now(k)
	if forms.Awaited(&a.doc.Sheet, k) {
		now = strings.Replace(now, empty[:len(empty)-1], "Empty, needed", 1)
	}
	return text + "? " + now + a.draftWords(k)
}

// now says the answer that there is: what was typed, for that is what would be
// replaced.
func (a *asking) now(k worksheets.Key) string {
	const most = 200
	s := &a.doc.Sheet
	text := typeset.Cut(typeset.Plain(worksheets.WithUnit(s.Text(k), s.Unit())), most)
	switch {
	case !k.IsLength():
		text = typeset.Cut(typeset.Plain(forms.Said(k, s.Text(k))), most)
	case k.Kind() == worksheets.Scale:
		text = s.Ruler().String()
	}
	switch value := a.rep.Value(k); {
	case s.Check(k) != nil:
		return "Now " + typeset.Cut(typeset.Plain(s.Text(k)), most) + ", which cannot be read; ? says why."
	case text != "":
		return "Now " + text + "."
	case value != "":
		if _, inherited := s.Inherits(k); inherited {
			return "Now " + typeset.Spoken(value) + ", as the sleeve."
		}
		if k == worksheets.SleeveLength { // nobody has a usual one
			return "Empty; " + typeset.Spoken(value) + " is taken until you answer."
		}
		return "Now " + typeset.Spoken(value) + ", the usual."
	}
	return empty
}

const empty = "Empty."

// explanation is how to measure or choose, what can be written, and what else
// can be said.
func (a *asking) explanation(k worksheets.Key) []string {
	lines := []string{typeset.Spoken(a.rep.Hint(k))}
	for _, source := range a.rep.Sources(k) {
		lines = append(lines, typeset.Spoken(source))
	}
	if err := a.doc.Sheet.Check(k); err != nil {
		lines = append(lines, typeset.Capitalised(typeset.Plain(err.Error()))+".")
	}
	switch k.Kind() {
	case worksheets.Girth, worksheets.Amount:
		lines = append(lines, "A length is written as "+units.Want+".")
	case worksheets.Signed:
		lines = append(lines, "A length is written as "+units.Want+"; it may be negative.")
	case worksheets.Slid:
		lines = append(lines, "The least is the slide nearest to nothing, the even one is nearest to half of the need.")
		for _, h := range calc.Halves() {
			lines = append(lines, typeset.Spoken(typeset.Capitalised(wording.SubjectWords[h.Subject()])+" slide: "+a.rep.BandWords(h)+"."))
		}
	case worksheets.Text:
		lines = append(lines, "To answer with a word such as back, put = before it: =back.")
	}
	return lines
}

// readBack is an answer as it was understood: as it was typed, and in the unit of the
// worksheet where it names another.
func (a *asking) readBack(k worksheets.Key) string {
	now := strings.TrimSuffix(strings.TrimPrefix(a.now(k), "Now "), ".")
	if l := a.doc.Sheet.Reading(k); l.Known && a.doc.Sheet.Text(k) != "" {
		if own, named, err := units.ParseNamed(a.doc.Sheet.Text(k), a.doc.Sheet.Unit()); err == nil && named && own == l.Length {
			if shown := typeset.Spoken(a.rep.Scale.Format(l.Length)); !strings.HasSuffix(now, shown) {
				now += ", which is " + shown
			}
		}
	}
	if a.doc.Sheet.Text(k) == "" && strings.HasPrefix(now, "Empty") {
		now = typeset.Uncapitalised(now)
	}
	return now + "."
}

// readAnswer is the text that an answer comes to: choices can be said by their
// beginning.
func readAnswer(s *worksheets.Sheet, k worksheets.Key, text string) (string, error) {
	text = strings.TrimSpace(strings.ReplaceAll(text, "\t", " "))
	switch {
	case !utf8.ValidString(text) || strings.ContainsFunc(text, unicode.IsControl):
		return "", errors.New("there are keys in it that are no text, such as an arrow; type it again")
	case strings.ContainsAny(s.Text(k), "\r\n"):
		return "", errors.New("the text that is there has several lines; edit it in the file")
	case forms.KindOf(k) == forms.ChoiceField:
		return readChoice(s, k, text)

	case k.Kind() == worksheets.Slid:
		if word, err := chosen(text, []forms.Option{{Answer: "least", Said: "least"}, {Answer: "even", Said: "even"}}); err == nil {
			return word, nil
		}
	}
	return text, nil
}

// readChoice is the option that is meant.
func readChoice(s *worksheets.Sheet, k worksheets.Key, text string) (string, error) {
	options, now := forms.OptionsOf(s, k)
	ruler, err := units.ParseRuler(text, s.Unit())
	switch {
	case text == "" && k.Open():
		return "", nil
	case text == "":
		return "", fmt.Errorf("this always has an answer, now %s; it can be %s", options[now].Said, typeset.OrList(forms.SaidOf(options)))
	case k == worksheets.Unit:
		sys, err := unitNamed(text)
		return sys.String(), err
	case k.Kind() == worksheets.Scale && err == nil:
		return ruler.String(), nil
	}
	return chosen(text, options)
}

// chosen is the one option that begins so, in the words that are read or in those of the
// file, whatever its capitals, spaces and hyphens.
func chosen(text string, options []forms.Option) (string, error) {
	bare := strings.NewReplacer(" ", "", "-", "")
	word := bare.Replace(strings.ToLower(text))
	var found []forms.Option
	for _, o := range options {
		said, answer := bare.Replace(o.Said), bare.Replace(o.Answer)
		if said == word || answer == word {
			return o.Answer, nil
		}
		if strings.HasPrefix(said, word) || strings.HasPrefix(answer, word) {
			found = append(found, o)
		}
	}
	switch {
	case word != "" && len(found) == 1:
		return found[0].Answer, nil
	case word != "" && len(found) > 1:
		return "", &worksheets.ValueError{Input: text, Reason: "could be " + typeset.OrList(forms.SaidOf(found)), Want: "Type more of the word"}
	}
	return "", &worksheets.ValueError{Input: text, Reason: "is not a choice", Want: "Choose " + typeset.OrList(forms.SaidOf(options))}
}
