package report

import (
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// SizeWords names the size in hand, "" where it has no name.
func (r Report) SizeWords() string {
	name := r.Sheet.Text(worksheets.PatternSize)
	if name == "" {
		return ""
	}
	return "Size " + typeset.Plain(name) + "."
}
