package ask

import (
	"strings"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/ui/typeset"
)

// news is a short word of what a change did to a complete answer, and of what it
// says of the change; "" where there is nothing to say.
func news(before, after report.Report) string {
	var said []string
	if before.Scale != after.Scale { // the same in other figures
		return ""
	}
	add := func(text string) { said = append(said, typeset.Spoken(text)) }
	was := before.Pieces()
	for i, p := range after.Pieces() {
		need, sides := p.NeedWords(after.Scale), strings.Join(p.SidesWords(after.Scale), ", ")
		switch {
		case p.Open || !p.Girth.Asked():
		case need != was[i].NeedWords(before.Scale):
			add(need + ".")
		case sides != "" && sides != strings.Join(was[i].SidesWords(before.Scale), ", "):
			add(p.Name + ", " + sides + ".")
		}
	}
	return strings.Join(append(said, slips(before, after)...), " ")
}

// slips are the findings that came with a change and are worth a word at once:
// those that say stop, and measurements that were perhaps mistyped.
func slips(before, after report.Report) []string {
	var said []string
	known := map[string]bool{}
	for _, f := range before.Findings {
		known[f.Text] = true
	}
	for _, f := range after.Findings {
		if !known[f.Text] && (f.Level == calc.Stop || f.Guess != nil) {
			said = append(said, typeset.Spoken(f.Text))
		}
	}
	return said
}
