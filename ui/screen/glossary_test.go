package screen

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"capscye/ui/forms"
	"capscye/ui/tracing"
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
		for _, change := range []string{"", "method.follow=hold", "method.armhole=keep", "body.bicep=40 in", "body.bicep=8 in"} {
			r := sitWithExample(t, name, 220, 400)
			if path, text, ok := strings.Cut(change, "="); ok {
				k, _ := worksheets.KeyNamed(path)
				rootOf(r).desk.Set(k, text)
			}
			for s := range forms.StepCount {
				r.Press(fmt.Sprintf("f%d", s+1))
				read[s] += r.Screen()
			}
			for _, step := range rootOf(r).desk.Rep.TraceSteps() {
				read[forms.Trace] += wording.Verbs[step.Action] + " " + tracing.Sentence(step, rootOf(r).desk.Rep.Scale) + "\n"
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
		if w.Where() == "Used in ." {
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
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("ctrl+e").Fits()
	r.Sees("Words   any other key goes back", "> bicep: The fullest part of the upper arm.").DoesNotSee("armhole:")
	r.Press("esc", "f4", "ctrl+e").Sees("> slide: The width a side gains when the pattern is moved straight out")
	r.Press("esc", "f5", "ctrl+e").Sees("> cap ease:").Press("esc", "f6", "down", "ctrl+e").Sees("> mark:")
	r.Press("esc", "f1", "tab", "tab").Types("39 1/4").Press("ctrl+e").Sees("> bust:").Press("x").Sees("[39 1/4") // what is half typed stays
	sitWithExample(t, "choir-blouse", 60, 16).Press("ctrl+e", "end").Fits().Sees("woven: Cloth of crossed threads")
}
