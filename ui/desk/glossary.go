package desk

import (
	"slices"

	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// GlossaryText is the page of words; from is the one about what is at hand,
// which is pointed out, with the sources of the answer there.
func (d *Desk) GlossaryText(width int) (out []string, from int) {
	var sources []string
	if k, ok := d.Focused(); ok {
		sources = d.Rep.Sources(k)
	}
	return GlossaryLines(d.wordAtHand(), sources, d.styles, width)
}

// GlossaryLines are the words of the trade in a width. The one at hand, "" for none, begins
// at line from; it is pointed out, and sources stand below it.
func GlossaryLines(atHand string, sources []string, st parts.Styles, width int) (out []string, from int) {
	for _, t := range wording.Glossary {
		lines := typeset.Wrap(t.Line(), width-4)
		lead := "  "
		if t.Word == atHand {
			lead, from = st.Here.Render(">")+" ", len(out)
			for _, source := range sources {
				lines = append(lines, typeset.Wrap(source, width-4)...)
			}
		}
		for i, l := range lines {
			if i > 0 {
				lead = "    "
			}
			out = append(out, lead+l)
		}
	}
	return out, from
}

// wordAtHand is the word that the field, the page or the step at the table is
// about, "" where there is none.
func (d *Desk) wordAtHand() string {
	about := func(t wording.Word) bool { return t.Word == "cap ease" } // the page of what must match
	if k, ok := d.Focused(); ok {
		about = func(t wording.Word) bool { return slices.Contains(t.Keys, k) }
	} else if d.step == forms.Trace {
		steps, at := d.Rep.TraceSteps(), d.traceAt(d.trace)
		about = func(t wording.Word) bool { return len(steps) > 0 && slices.Contains(t.Acts, steps[at].Action) }
	}
	if i := slices.IndexFunc(wording.Glossary, about); i >= 0 {
		return wording.Glossary[i].Word
	}
	return ""
}
