package ui

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// whatIsRead is all that a person reads in each step: the labels and hints of
// its form, and the screens of every example, as it is and with other choices.
func whatIsRead(t *testing.T) (read [forms.StepCount]string) {
	t.Helper()
	for s := range forms.StepCount {
		for _, it := range forms.Items[s] {
			f := forms.Fields[it.Key]
			if it.Heading != "" {
				f = forms.Field{}
			}
			read[s] += strings.Join([]string{it.Heading, f.Label, f.Words, f.Hint, strings.Join(it.Key.Options(), " ")}, "\n")
		}
	}
	for _, name := range worksheets.Examples() {
		for _, change := range []string{"", "method.follow=hold", "method.armhole=keep", "body.bicep=40 in"} {
			r := sitWithExample(t, name, 220, 400)
			if path, text, ok := strings.Cut(change, "="); ok {
				k, _ := worksheets.KeyNamed(path)
				rootOf(r).desk.set(k, text)
			}
			for s := range forms.StepCount {
				r.press(fmt.Sprintf("f%d", s+1))
				read[s] += r.screen()
			}
			for _, step := range rootOf(r).desk.rep.TraceSteps() {
				read[forms.Trace] += wording.Verbs[step.Action] + " " + stepText(step, rootOf(r).desk.rep) + "\n"
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
	worked := strings.ToLower(strings.Join(slices.Collect(maps.Values(wording.QuantityWords)), "\n"))
	for _, w := range wording.Glossary {
		if w.Where() == "In ." {
			t.Errorf("%s is used nowhere", w.Word)
		}
		for _, s := range w.Seen {
			if !strings.Contains(read[s], w.Word) {
				t.Errorf("%q is not to be read in step %d", w.Word, s+1)
			}
		}
		for _, k := range w.Keys {
			f := forms.Fields[k]
			said := strings.ToLower(strings.Join([]string{headingOver(k), f.Label, f.Words, f.Hint}, "\n"))
			if !strings.Contains(said, w.Word) && !strings.HasPrefix(f.Hint, "The same on the ") {
				t.Errorf("%q is not said of %s", w.Word, k)
			}
		}
		if len(w.Acts) > 0 && !strings.Contains(read[forms.Trace], w.Word) {
			t.Errorf("%q is in no step at the table", w.Word)
		}
		if w.Worked && !strings.Contains(worked, w.Word) {
			t.Errorf("%q is in no line of working", w.Word)
		}
	}
}

// headingOver is the heading that a field stands under.
func headingOver(k worksheets.Key) (last string) {
	for s := range forms.StepCount {
		for _, it := range forms.Items[s] {
			switch {
			case it.Heading != "":
				last = it.Heading
			case it.Key == k:
				return last
			}
		}
	}
	return ""
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
		if len(l) > typeset.PrintWidth {
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
