package screen

import (
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/desk"
	"capscye/ui/parts"
	"capscye/ui/roster"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// list is the folder's worksheets, a new one, the examples and the drill, to choose from.
// Letters narrow it to the rows that have them.
type list struct {
	styles  parts.Styles
	rows    []listRow
	shown   []int // the rows that have what is typed
	at      int   // in shown
	typed   string
	message string
	canBack bool // there is a worksheet to go back to
	head    string
}

type listRow struct {
	text  string // what is found by typing; and shown, where there is no sheet
	wish  parts.Wish
	sheet *roster.Row
}

func newList(found []roster.Row, st parts.Styles, canBack bool) *list {
	l := &list{styles: st, canBack: canBack, head: "Worksheets of this folder"}
	for i := range found {
		f := &found[i]
		l.rows = append(l.rows, sheetRow(f, toBring{source: file(f.Path)}))
	}
	l.rows = append(l.rows, listRow{text: "Begin a new worksheet", wish: toName{others: len(found) > 0}}, listRow{text: "Open a worksheet from another folder", wish: toOpen{}})
	for _, name := range worksheets.Examples() {
		l.rows = append(l.rows, listRow{text: "Example: " + name, wish: toBring{source: example(name)}})
	}
	l.rows = append(l.rows, listRow{text: "Drill: practise the arithmetic on invented wearers", wish: desk.ToDrill{}})
	l.find("")
	return l
}

// sheetRow is a row for a sheet, found by its file, its wearer and its title.
func sheetRow(r *roster.Row, w parts.Wish) listRow {
	return listRow{r.File() + " " + r.ForWhom(), w, r}
}

// words are the row for a width.
func (r listRow) words(width int) string {
	if r.sheet == nil {
		return r.text
	}
	return r.sheet.Columns(width, listed(r.sheet, width))
}

// listed is what stands behind the amounts: the day where there is room.
func listed(r *roster.Row, width int) string {
	if width < listDayFrom {
		return r.ForWhom()
	}
	return r.Day() + "  " + r.ForWhom()
}

// listHead names the columns.
func listHead(width int) string {
	rest := "wearer, title"
	if width >= listDayFrom {
		rest = "saved       " + rest
	}
	return "  " + roster.Head(width-2, rest)
}

// listDayFrom is the width from which the list has room for the day of saving.
const listDayFrom = 90

// mostTyped bounds what is typed to find a row.
const mostTyped = 40

// find narrows the rows to those that have every word of a text.
func (l *list) find(text string) {
	l.typed, l.at, l.shown = text, 0, l.shown[:0]
	words := strings.Fields(strings.ToLower(text))
	for i, r := range l.rows {
		if hasEvery(strings.ToLower(r.text), words) {
			l.shown = append(l.shown, i)
		}
	}
}

func hasEvery(text string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(text, w) {
			return false
		}
	}
	return true
}

// Key takes letters for what is to be found, so none of them can do anything
// else.
func (l *list) Key(msg tea.KeyMsg) parts.Wish {
	l.message = ""
	if (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace) && !msg.Alt {
		if text := []rune(l.typed + typeset.Plain(string(msg.Runes))); len(text) <= mostTyped {
			l.find(string(text))
		}
		return nil
	}
	switch msg.String() {
	case "backspace":
		if text := []rune(l.typed); len(text) > 0 {
			l.find(string(text[:len(text)-1]))
		}
	case "up", "shift+tab":
		l.at = max(0, l.at-1)
	case "down", "tab":
		l.at = max(0, min(len(l.shown)-1, l.at+1))
	case "pgup", "home":
		l.at = 0
	case "pgdown", "end":
		l.at = max(0, len(l.shown)-1)
	case "enter":
		if l.at < len(l.shown) {
			return l.rows[l.shown[l.at]].wish
		}
	case "esc":
		if l.typed != "" {
			l.find("")
		} else if l.canBack {
			return parts.ToGoBack{}
		}
	}
	return nil
}

func (l *list) Render(width, height int) string {
	tail := []string{l.keys()}
	if l.message != "" {
		tail = append(parts.Bold(typeset.Wrap(l.message, width), l.styles), tail...)
	}
	room := max(0, height-listHeadHeight-len(tail))
	top, end := typeset.Seen(len(l.shown), l.at, room)
	body := make([]string, room)
	for i := top; i < end; i++ {
		words := l.rows[l.shown[i]].words(width - 2)
		body[i-top] = "  " + words
		if i == l.at {
			body[i-top] = l.styles.Here.Render(typeset.Cut("> "+words, width))
		}
	}
	head := []string{l.styles.Heading.Render(typeset.Cut(l.head, width)), l.findLine(strings.Join(body, "\n")), listHead(width)}
	return typeset.Block(append(append(head, body...), tail...), width, height)
}

// listHeadHeight is what stands above the rows.
const listHeadHeight = 3

// findLine says what is looked for; before that, how, and what the sign of
// rounded lengths means where one is seen.
func (l *list) findLine(body string) string {
	switch {
	case len(l.shown) == 0:
		return "Find: " + l.styles.Key.Render(l.typed) + "   no row has that; backspace removes a letter"
	case l.typed != "":
		return "Find: " + l.styles.Key.Render(l.typed) + l.styles.Here.Render(" ")
	}
	return strings.TrimRight("Type to find a file, a wearer or a title.  "+typeset.OffMarkNote(body), " ")
}

func (l *list) keys() string {
	switch {
	case l.typed != "":
		return "up/down choose  enter open  esc all rows  ^c end"
	case l.canBack:
		return "up/down choose  enter open  esc back  ^c end"
	}
	return "up/down choose  enter open  ^c end"
}

// newPicker lists the sheets of the folder to take a section from, but for the one
// that takes it.
func newPicker(found []roster.Row, t desk.Taking, own string, st parts.Styles) *list {
	l := &list{styles: st, canBack: true, head: "Choose the worksheet to take the " + wording.SectionWords[t.Section] + " from."}
	for i := range found {
		f := &found[i]
		if f.Failure == "" && filepath.Base(f.Path) != filepath.Base(own) {
			one := t
			one.From = f.Path
			l.rows = append(l.rows, sheetRow(f, toTake{t: one}))
		}
	}
	if len(l.rows) == 0 {
		l.rows = []listRow{{text: "There is no other worksheet in this folder.", wish: parts.ToGoBack{}}}
	}
	l.find("")
	return l
}

func (l *list) Complain(text string) { l.message = text }
