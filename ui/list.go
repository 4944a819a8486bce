package ui

import (
	"path/filepath"

	"capscye/worksheets"
)

// list is the folder's worksheets, a new one, the examples and the drill, to choose from.
type list struct {
	styles  styles
	rows    []listRow
	at      int
	message string
	canBack bool // there is a worksheet to go back to
	head    string
}

type listRow struct {
	text string
	wish wish
}

func newList(found []worksheets.Listed, st styles, canBack bool) *list {
	l := &list{styles: st, canBack: canBack, head: "Worksheets of this folder"}
	for _, f := range found {
		text := pad(plain(filepath.Base(f.Path)), 28) + plain(f.Name)
		if f.Err != nil {
			text = pad(plain(filepath.Base(f.Path)), 28) + "cannot be read"
		}
		l.rows = append(l.rows, listRow{text, wish{kind: wishOpen, path: f.Path}})
	}
	l.rows = append(l.rows, listRow{"Begin a new worksheet", wish{kind: wishName}})
	for _, name := range worksheets.Examples() {
		l.rows = append(l.rows, listRow{"Example: " + name, wish{kind: wishExample, path: name}})
	}
	l.rows = append(l.rows, listRow{"Drill: the sums of the trade, in five levels", wish{kind: wishDrill}})
	return l
}

func (l *list) key(name string) wish {
	l.message = ""
	switch name {
	case "up", "shift+tab", "k":
		l.at = max(0, l.at-1)
	case "down", "tab", "j":
		l.at = min(len(l.rows)-1, l.at+1)
	case "pgup", "home":
		l.at = 0
	case "pgdown", "end":
		l.at = len(l.rows) - 1
	case "enter":
		return l.rows[l.at].wish
	case "esc":
		if l.canBack {
			return wish{kind: wishBack}
		}
	}
	return wish{}
}

func (l *list) render(width, height int) string {
	rows := make([]string, len(l.rows))
	for i, r := range l.rows {
		rows[i] = "  " + r.text
		if i == l.at {
			rows[i] = l.styles.here.Render(cut("> "+r.text, width))
		}
	}
	keys := "up/down choose  enter open  ^c end"
	if l.canBack {
		keys = "up/down choose  enter open  esc back  ^c end"
	}
	head := []string{l.styles.heading.Render(cut(l.head, width)), ""}
	tail := []string{keys}
	if l.message != "" {
		tail = append(bold(wrap(l.message, width), l.styles), keys)
	}
	room := max(0, height-len(head)-len(tail))
	seen, _ := window(rows, l.at, room)
	body := append(seen, make([]string, room)...)[:room]
	return block(append(append(head, body...), tail...), width, height)
}
