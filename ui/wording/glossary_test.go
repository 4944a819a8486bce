package wording

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"capscye/calc/trace"
	"capscye/ui/forms"
	"capscye/worksheets"
)

// Each word has one sentence, the words are in order, and what is at hand has
// one word at the most.
func TestGlossaryIsInOrder(t *testing.T) {
	answers, actions := map[worksheets.Key]string{}, map[trace.Action]string{}
	for i, w := range Glossary {
		if i > 0 && w.Word <= Glossary[i-1].Word {
			t.Errorf("%q stands behind %q", w.Word, Glossary[i-1].Word)
		}
		if !strings.HasSuffix(w.says, ".") || strings.Count(w.says, ". ") > 0 || strings.ToUpper(w.says[:1]) != w.says[:1] {
			t.Errorf("%q: %q is not one sentence", w.Word, w.says)
		}
		for _, k := range w.Keys {
			if other := answers[k]; other != "" {
				t.Errorf("%s has both %q and %q", k, other, w.Word)
			}
			answers[k] = w.Word
		}
		for _, a := range w.Acts {
			if other := actions[a]; other != "" {
				t.Errorf("%s has both %q and %q", Verbs[a], other, w.Word)
			}
			actions[a] = w.Word
		}
	}
}

// Every action at the table has its word, which stands large in the table view.
func TestEveryActionHasAVerb(t *testing.T) {
	for a := trace.Lay; a <= trace.TestGarment; a++ {
		if Verbs[a] == "" {
			t.Errorf("action %d has no verb", a)
		}
	}
}

// plainWords need no explanation.
var plainWords = strings.Fields(`
	a after again already alter and any arm at back below between body by chart check corner crossed cut day depth down drawn each
	elbow extend fabric far finest fit flat for free from front gain garment gets half height how if in is kept laid larger largest lay leave
	length less limit long lost marks measure measured measuring much none notes of off on optional other out pattern plus printed room ruler same see sheet
	short size slid smallest starts still style take than that the this title to too unit waist was wearer what where whether width with works
	worksheet wrist`)

// A word of the trade on a label, in a heading, a line of working or a step at
// the table is in the glossary.
func TestWordsOfTheTradeAreInTheGlossary(t *testing.T) {
	var said []string
	for s := range forms.StepCount {
		for _, it := range forms.Items[s] {
			said = append(said, it.Heading)
		}
	}
	for _, f := range forms.Fields {
		said = append(said, f.Label, f.Words)
	}
	said = append(said, slices.Collect(maps.Values(QuantityWords))...)
	said = append(said, slices.Collect(maps.Values(SubjectWords))...)
	said = append(said, slices.Collect(maps.Values(PlaceWords))...)
	said = append(said, slices.Collect(maps.Values(Verbs))...)
	said = append(said, slices.Collect(maps.Values(PieceNames))...)
	for _, k := range worksheets.Keys() {
		if k != worksheets.Unit {
			for _, o := range k.Options() {
				said = append(said, forms.Said(k, o))
			}
		}
	}
	known := map[string]bool{}
	for _, w := range plainWords {
		known[w] = true
		if !regexp.MustCompile(`\b` + w + `\b`).MatchString(strings.ToLower(strings.Join(said, "\n"))) {
			t.Errorf("%q is said nowhere", w)
		}
	}
	for _, w := range Glossary {
		for _, part := range strings.Fields(w.Word) {
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
