package ask

import (
	"slices"
	"strings"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// The other sizes of the pattern: as many as are given, each with what differs by size.

// otherSize stands among the questions for another size.
const otherSize = worksheets.PatternSize

const sizeHelp = "Where a pattern prints several sizes, capscye sizes shows what each would cost. Answer yes to measure one, " +
	"or to change one that is measured; Enter or no goes on."

// askSize asks for another size, and measures it; not ok once nobody answers any more.
func (a *asking) askSize(q questionOf) (ok bool) {
	a.say("Another size of this pattern? %s", a.sizesMeasured())
	h, ok := a.listen()
	if !ok {
		return false
	}
	text := strings.TrimSpace(h.Text)
	if a.takesOffer(strings.ToLower(text)) {
		return true
	}
	switch word := strings.ToLower(text); word {
	case "no", "n", "":
		a.at++
		return true
	case "back", "next", "quit":
		a.hear(q, h)
		return true
	case "empty":
		a.say("Nothing is removed here; remove a size on the screen or in the file.")
		return true
	case "yes", "y":
	default:
		if strings.HasPrefix(word, "?") {
			a.explainWord(word, sizeHelp)
		} else {
			a.say("Answer yes or no.")
		}
		return true
	}
	if a.doc.Sheet.Text(worksheets.PatternSize) == "" && !a.nameFirst() {
		return a.heard.Status == 0 && a.broken == nil
	}
	sheet, i, ok := a.named()
	if !ok {
		return a.heard.Status == 0 && a.broken == nil
	}
	a.put(sheet)
	keys := slices.DeleteFunc(worksheets.SizeKeys(), func(k worksheets.Key) bool {
		alone := sheet.SizeAlone(i)
		return k == worksheets.PatternSize || alone.Text(k) == "" && forms.WorthOf(&alone, k) == forms.Idle
	})
	return a.measure(i, keys)
}

// nameFirst asks for the name of the size that is in hand, and what the chart gives for it.
func (a *asking) nameFirst() (ok bool) {
	text, ok := a.line("What does the pattern call the size that you measured before? Such as 14.")
	if !ok {
		return false
	}
	sheet := a.doc.Sheet
	if err := sheet.Set(worksheets.PatternSize, text); err != nil {
		a.refuse(err)
		return false
	}
	a.put(sheet)
	return a.measure(inHand, []worksheets.Key{worksheets.ChartBust, worksheets.ChartHighBust}) && !a.quit
}

// inHand stands for the place of the size in hand.
const inHand = -1

// sizesMeasured lists the sizes that there are.
func (a *asking) sizesMeasured() string {
	var names []string
	for _, z := range a.doc.Sheet.Sizes {
		names = append(names, typeset.Plain(z.Name()))
	}
	if len(names) == 0 {
		return "None yet."
	}
	return "Measured: " + strings.Join(names, ", ") + "."
}

// named asks for the name of another size: it is the sheet with that size, and its place.
// It is not ok where none is given, or it cannot be taken.
func (a *asking) named() (sheet worksheets.Sheet, i int, ok bool) {
	sheet = a.doc.Sheet
	name, ok := a.line("What does it call the other size? Such as 16.")
	if !ok {
		return sheet, 0, false
	}
	if i, ok := sheet.SizeNamed(name); ok {
		return sheet, i, true
	}
	i = len(sheet.Sizes)
	if i >= worksheets.MostSizes {
		a.say("There are %d other sizes already, which is the most.", worksheets.MostSizes)
		return sheet, 0, false
	}
	sheet = sheet.WithSize(i, worksheets.Size{}.With(worksheets.PatternSize, name))
	if err := sheet.CheckSize(i, worksheets.PatternSize); err != nil {
		a.refuse(err)
		return sheet, 0, false
	}
	return sheet, i, true
}

// line asks for a text; nothing, back and quit give none.
func (a *asking) line(question string) (text string, ok bool) {
	a.say("%s", question)
	h, ok := a.listen()
	text = strings.TrimSpace(h.Text)
	switch word := strings.ToLower(text); {
	case h.TooLong || len([]rune(text)) > forms.LongestAnswer:
		a.tooLong()
		return "", false
	case word == "quit":
		a.quit = true
		return "", false
	case word == "" || word == "back" || word == "next" || word == "empty":
		return "", false
	}
	return strings.TrimPrefix(text, "="), ok
}

// measure asks for answers of a size; not ok once nobody answers.
func (a *asking) measure(i int, keys []worksheets.Key) (ok bool) {
	a.say("%d questions about size %s; next skips the rest.", len(keys), a.sizeName(i))
	at := 0 // what was offered before takes its answer here
	for at < len(keys) {
		k := keys[at]
		one := a.alone(i)
		a.say("Size %s: %s", a.sizeName(i), typeset.Uncapitalised(one.question(k)))
		take := func(meant string) {
			if a.takeOfSize(i, k, meant) {
				at++
			}
		}
		a.offerDraft(one.doc.Sheet.Drafts.Of(k), take)
		h, ok := a.listen()
		if !ok {
			return false
		}
		text := strings.TrimSpace(h.Text)
		switch word := strings.ToLower(text); {
		case a.takesOffer(word):
		case h.TooLong || len([]rune(text)) > forms.LongestAnswer:
			a.tooLong()
		case word == "":
			at++
		case word == "back" && at == 0:
			return true
		case word == "back":
			at--
		case word == "next":
			return true
		case word == "quit":
			a.quit = true
			return true
		case strings.HasPrefix(word, "?"):
			a.explainWord(word, one.explanation(k)...)
		case word == "empty":
			take("")
		case !a.runTogether(k, text, take):
			take(strings.TrimPrefix(text, "="))
		}
	}
	return true
}

// takeOfSize takes an answer of a size, and says what is wrong with one that cannot be read.
func (a *asking) takeOfSize(i int, k worksheets.Key, text string) (ok bool) {
	text, err := readAnswer(&a.alone(i).doc.Sheet, k, text)
	sheet := a.withAnswer(i, k, text)
	switch {
	case err != nil:
	case i == inHand:
		err = sheet.Check(k)
	default:
		err = sheet.CheckSize(i, k)
	}
	if err != nil {
		a.refuse(err)
		return false
	}
	a.putOfSize(i, k, sheet)
	one := a.alone(i)
	g := one.rep.GuessFor(k)
	if g != nil && g.Slip == calc.Exchanged && i != inHand { // two answers; the why was said
		return true
	}
	a.offerGuess(g, &one.doc.Sheet, func() { a.putOfSize(i, k, a.withAnswer(i, k, g.Text)) })
	return true
}

// putOfSize puts a changed size in the place of the one before, and reads the answer back.
func (a *asking) putOfSize(i int, k worksheets.Key, sheet worksheets.Sheet) {
	if i == inHand {
		a.put(sheet, k)
		return
	}
	before := a.alone(i).rep
	sheet.Drafts = sheet.Drafts.WithSize(sheet.Sizes[i].Name(), k, "")
	a.put(sheet)
	one := a.alone(i)
	a.say("Size %s, %s: %s", a.sizeName(i), forms.Fields[k].Words, one.readBack(k))
	doubts, _ := slips(before, one.rep, []worksheets.Key{k})
	for _, text := range doubts {
		a.say("%s", typeset.Spoken(text))
	}
}

// withAnswer is the sheet with another answer of a size.
func (a *asking) withAnswer(i int, k worksheets.Key, text string) worksheets.Sheet {
	sheet := a.doc.Sheet
	if i == inHand {
		_ = sheet.Set(k, text) // whoever takes it checks it
		return sheet
	}
	return sheet.WithSize(i, sheet.Sizes[i].With(k, text))
}

func (a *asking) sizeName(i int) string {
	return typeset.Plain(a.alone(i).doc.Sheet.Text(worksheets.PatternSize))
}

// alone asks about a sheet that has the i-th size alone.
func (a *asking) alone(i int) *asking {
	if i == inHand {
		return a
	}
	one := *a
	one.doc = &worksheets.Document{Sheet: a.doc.Sheet.SizeAlone(i)}
	one.doc.Sheet.Drafts = worksheets.Drafts{}
	for _, d := range a.doc.Sheet.Drafts.Texts {
		if d.Size == a.doc.Sheet.Sizes[i].Name() {
			one.doc.Sheet.Drafts = one.doc.Sheet.Drafts.With(d.Key, d.Text)
		}
	}
	one.rep = a.rep.With(one.doc.Sheet)
	return &one
}
