package ui

import (
	"capscye/ui/typeset"
)

// headed sets the first row of a table off, and keeps all rows to a width.
func headed(table []string, st styles, width int) []string {
	for i, row := range table {
		table[i] = typeset.Cut(row, width)
	}
	table[0] = st.heading.Render(table[0])
	return table
}
