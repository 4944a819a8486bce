package parts

import (
	"fmt"
	"strings"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/typeset"
	"capscye/units"
	"capscye/worksheets"
)

// CannotBegin says why a key does not begin an answer of the kind, with an example in the
// unit of bare numbers; "" where it does.
func CannotBegin(k worksheets.Kind, bare units.System, msg tea.KeyMsg) string {
	if msg.Type != tea.KeyRunes && msg.Type != tea.KeySpace {
		return ""
	}
	text := strings.TrimLeftFunc(string(msg.Runes), unicode.IsSpace)
	begins, example := "0123456789.,+¼½¾⅛⅜⅝⅞⅓⅔", "a length, such as 13 3/4"
	if bare == units.Centimetres {
		example = "a length, such as 34,9"
	}
	switch k {
	case worksheets.Text:
		return ""
	case worksheets.Signed, worksheets.Slid:
		begins += "-−"
	case worksheets.Date:
		begins, example = "0123456789", "a day, such as 2026-10-03"
	case worksheets.Count:
		begins, example = "01234", "0, 1, 2, 3 or 4"
	case worksheets.Part:
		begins, example = "0123456789.,½¼¾⅛⅜⅝⅞⅓⅔", "a part, such as 1/2 or 55 %"
	}
	if text != "" && strings.ContainsRune(begins, []rune(text)[0]) {
		return ""
	}
	what := Quoted(text)
	if text == "" {
		what = "A space"
	}
	return fmt.Sprintf("%s begins no answer here; type %s.", what, example)
}

// Quoted is what somebody typed, as much of it as a line takes.
func Quoted(text string) string { return `"` + typeset.Cut(typeset.Plain(text), 30) + `"` }
