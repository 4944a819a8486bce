package ask

import (
	"fmt"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// news is a short word of what a change did to a complete plan, a thought a line, and of
// what became doubtful with it. answered are the answers that were just given: why they are
// doubted is said, what may be meant is offered behind that, and what follows from a slip is
// no news.
func news(before, after report.Report, answered ...worksheets.Key) []string {
	var said typeset.Speech
	if before.Scale != after.Scale { // the same in other figures
		return nil
	}
	doubts, doubted := slips(before, after, answered)
	if doubted {
		for _, text := range doubts {
			said.SayEach(text)
		}
		return said.Lines()
	}
	was := before.Pieces()
	for i, p := range after.Pieces() {
		need, sides := p.NeedWords(after.Scale), strings.Join(p.SidesWords(after.Scale), ", ")
		switch {
		case p.Open || !p.Girth.Asked():
		case need != was[i].NeedWords(before.Scale):
			said.SayEach(need)
		case sides != "" && sides != strings.Join(was[i].SidesWords(before.Scale), ", "):
			said.SayEach(p.Name + ", " + sides)
		}
	}
	for _, text := range doubts {
		said.SayEach(text)
	}
	return said.Lines()
}

// slips are the findings that came with a change and are worth a word at once: measurements
// that were perhaps mistyped, alone where there are any, else those that say stop. One that
// was said is not said again because its figures or its spelling changed, until its answer
// does.
func slips(before, after report.Report, answered []worksheets.Key) (said []string, doubted bool) {
	var stops []string
	known := map[string]bool{}
	for _, f := range before.Findings {
		known[slipOf(before, f)] = true
	}
	for _, f := range after.Findings {
		switch {
		case known[slipOf(after, f)]:
		case f.Doubts():
			text := f.Text
			if k, is := worksheets.KeyNamed(f.Key); is && slices.Contains(answered, k) { // what is asked next are the questions
				_, text, _ = strings.Cut(text, "? ")
			}
			said = append(said, text)
		case f.Level == calc.Stop:
			stops = append(stops, f.Text)
		}
	}
	if len(said) > 0 {
		return said, true
	}
	return stops, false
}

// slipOf names a finding, and the answer that it doubts.
func slipOf(r report.Report, f report.Finding) string {
	name := fmt.Sprint(f.Level, f.Code, f.About, f.Key)
	if k, is := worksheets.KeyNamed(f.Key); is && f.Doubts() {
		name += r.Sheet.Text(k)
	}
	return name
}
