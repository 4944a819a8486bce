package typeset

import "capscye/worksheets"

// Plain makes text from outside harmless to show, and unprintable tells the
// characters for which it is needed: every face uses them for titles, notes,
// file names and messages alike.
var (
	Plain       = worksheets.Printable
	Unprintable = worksheets.Unprintable
)
