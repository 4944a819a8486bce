package ui

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/worksheets"
)

// whatIsRead is all that a person reads in each step: the labels and hints of
// its form, and the screens of every example, as it is and with other choices.
func whatIsRead(t *testing.T) (read [stepCount]string) {
	t.Helper()
	for s := range stepCount {
		for _, it := range forms[s] {
			f := fields[it.key]
			if it.heading != "" {
				f = field{}
			}
			read[s] += strings.Join([]string{it.heading, f.label, f.words, f.hint, strings.Join(it.key.Options(), " ")}, "\n")
		}
	}
	for _, name := range worksheets.Examples() {
		for _, change := range []string{"", "method.follow=hold", "method.armhole=keep", "body.bicep=40 in"} {
			r := sitWithExample(t, name, 220, 400)
			if path, text, ok := strings.Cut(change, "="); ok {
				k, _ := worksheets.KeyNamed(path)
				rootOf(r).desk.set(k, text)
			}
			for s := range stepCount {
				r.press(fmt.Sprintf("f%d", s+1))
				read[s] += r.screen()
			}
			for _, step := range rootOf(r).desk.rep.traceSteps() {
				read[stepTrace] += verbs[step.Action] + " " + stepText(step, rootOf(r).desk.rep) + "\n"
			}
		}
	}
	for s := range read {
		read[s] = strings.ToLower(read[s])
	}
	return read
}

// Every word of the glossary is read where the glossary says that it is.
func TestEveryWordOfTheGlossaryIsUsed(t *testing.T) {
	read := whatIsRead(t)
	worked := strings.ToLower(strings.Join(slices.Collect(maps.Values(quantityWords)), "\n"))
	for _, w := range glossary {
		if w.where() == "In ." {
			t.Errorf("%s is used nowhere", w.word)
		}
		for _, s := range w.seen {
			if !strings.Contains(read[s], w.word) {
				t.Errorf("%q is not to be read in step %d", w.word, s+1)
			}
		}
		for _, k := range w.keys {
			f := fields[k]
			said := strings.ToLower(strings.Join([]string{headingOver(k), f.label, f.words, f.hint}, "\n"))
			if !strings.Contains(said, w.word) && !strings.HasPrefix(f.hint, "The same on the ") {
				t.Errorf("%q is not said of %s", w.word, k)
			}
		}
		if len(w.acts) > 0 && !strings.Contains(read[stepTrace], w.word) {
			t.Errorf("%q is in no step at the table", w.word)
		}
		if w.worked && !strings.Contains(worked, w.word) {
			t.Errorf("%q is in no line of working", w.word)
		}
	}
}

// headingOver is the heading that a field stands under.
func headingOver(k worksheets.Key) (last string) {
	for s := range stepCount {
		for _, it := range forms[s] {
			switch {
			case it.heading != "":
				last = it.heading
			case it.key == k:
				return last
			}
		}
	}
	return ""
}

// Each word has one sentence, the words are in order, and what is at hand has
// one word at the most.
func TestGlossaryIsInOrder(t *testing.T) {
	answers, actions := map[worksheets.Key]string{}, map[calc.Action]string{}
	for i, w := range glossary {
		if i > 0 && w.word <= glossary[i-1].word {
			t.Errorf("%q stands behind %q", w.word, glossary[i-1].word)
		}
		if !strings.HasSuffix(w.says, ".") || strings.Count(w.says, ". ") > 0 || strings.ToUpper(w.says[:1]) != w.says[:1] {
			t.Errorf("%q: %q is not one sentence", w.word, w.says)
		}
		for _, k := range w.keys {
			if other := answers[k]; other != "" {
				t.Errorf("%s has both %q and %q", k, other, w.word)
			}
			answers[k] = w.word
		}
		for _, a := range w.acts {
			if other := actions[a]; other != "" {
				t.Errorf("%s has both %q and %q", verbs[a], other, w.word)
			}
			actions[a] = w.word
		}
	}
}

// plainWords need no explanation.
var plainWords = strings.Fields(`
	a after again already alter and arm at back between body by check chosen corner crossed cut day does down each elbow
	extend fabric finest flat for from front garment gets half height in is kept laid larger lay leave left length limit
	long loses marks measured measuring most notes of off on other out over pattern piece printed room ruler same sheet
	short spare style take than that the this title to too unit waist wearer what where width wrist`)

// A word of the trade on a label, in a heading, a line of working or a step at
// the table is in the glossary.
func TestWordsOfTheTradeAreInTheGlossary(t *testing.T) {
	var said []string
	for s := range stepCount {
		for _, it := range forms[s] {
			said = append(said, it.heading)
		}
	}
	for _, f := range fields {
		said = append(said, f.label, f.words)
	}
	said = append(said, slices.Collect(maps.Values(quantityWords))...)
	said = append(said, slices.Collect(maps.Values(subjectWords))...)
	said = append(said, slices.Collect(maps.Values(placeWords))...)
	said = append(said, slices.Collect(maps.Values(verbs))...)
	said = append(said, slices.Collect(maps.Values(pieceNames))...)
	for _, k := range worksheets.Keys() {
		if k != worksheets.Unit {
			said = append(said, k.Options()...)
		}
	}
	known := map[string]bool{}
	for _, w := range plainWords {
		known[w] = true
		if !regexp.MustCompile(`\b` + w + `\b`).MatchString(strings.ToLower(strings.Join(said, "\n"))) {
			t.Errorf("%q is said nowhere", w)
		}
	}
	for _, w := range glossary {
		for _, part := range strings.Fields(w.word) {
			known[part], known[part+"s"], known[part+"es"] = true, true, true
		}
	}
	for _, w := range regexp.MustCompile(`[a-z][a-z'-]*`).FindAllString(strings.ToLower(strings.Join(said, "\n")), -1) {
		if !known[w] {
			t.Errorf("%q is neither plain nor in the glossary", w)
			known[w] = true
		}
	}
}

// The page of words opens at the word that the hands are at.
func TestPageOfWordsOpensAtTheWordAtHand(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).press("ctrl+e").fits()
	r.sees("Words   any other key goes back", "> bicep: The fullest part of the upper arm.").doesNotSee("armhole:")
	r.press("esc", "f4", "ctrl+e").sees("> slide: What a side gains by moving straight out")
	r.press("esc", "f5", "ctrl+e").sees("> cap ease:").press("esc", "f6", "down", "ctrl+e").sees("> mark:")
	r.press("esc", "f1", "tab", "tab").types("39 1/4").press("ctrl+e").sees("> bust:").press("x").sees("[39 1/4") // what is half typed stays
	sitWithExample(t, "choir-blouse", 60, 16).press("ctrl+e", "end").fits().sees("woven: Cloth of crossed threads")
}

// A word is found by its beginning, in any case; a wrong one says what there is.
func TestWordsOnTheCommandLine(t *testing.T) {
	status, out, errs := run("", "words")
	if status != 0 || errs != "" || !strings.Contains(out, "armhole: ") || !strings.Contains(out, "woven: ") {
		t.Errorf("status %d, %s\n%s", status, errs, out)
	}
	for _, l := range strings.Split(out, "\n") {
		if len(l) > printWidth {
			t.Errorf("%d columns: %q", len(l), l)
		}
	}
	if _, out, _ := run("", "words", "SLAsh"); !strings.HasPrefix(out, "slash and spread: ") || strings.Count(out, "\n") > 3 {
		t.Errorf("by its beginning: %q", out)
	}
	if _, out, _ := run("", "words", "Cap", "Ease"); !strings.HasPrefix(out, "cap ease: ") {
		t.Errorf("of two words: %q", out)
	}
	if _, out, _ := run("", "words", "cap"); !strings.HasPrefix(out, "cap: ") || strings.Contains(out, "cap ease:") {
		t.Errorf("in full: %q", out)
	}
	status, out, errs = run("", "words", "zip\x1b[31m")
	if status != 2 || out != "" || !strings.Contains(errs, "no word here begins with") || !strings.Contains(errs, "capscye words lists all") || strings.Contains(errs, "\x1b") {
		t.Errorf("status %d, %q, %q", status, out, errs)
	}
}
