package parts

import (
	"strings"

	"capscye/ui/typeset"
)

// Key is a key and what it does, as a person reads them.
type Key struct{ Show, Does string }

// KeyLine is the bottom line: as many of the keys as fit whole. The last two,
// how to see the rest and how to end, always do.
func KeyLine(keys []Key, st Styles, width int) string {
	words := func(k Key) string { return st.Key.Render(k.Show) + " " + k.Does }
	split := max(0, len(keys)-2)
	tail := ""
	for _, k := range keys[split:] {
		tail += "  " + words(k)
	}
	var line strings.Builder
	for _, k := range keys[:split] {
		next := words(k)
		if line.Len() > 0 {
			next = "  " + next
		}
		if typeset.Width(line.String())+typeset.Width(next)+typeset.Width(tail) > width {
			continue
		}
		line.WriteString(next)
	}
	return typeset.Cut(strings.TrimPrefix(line.String()+tail, "  "), width)
}
