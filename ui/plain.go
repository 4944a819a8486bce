package ui

import "capscye/worksheets"

// plain makes text from outside harmless to show, and unprintable tells the
// characters for which it is needed: every face uses them for titles, notes,
// file names and messages alike.
var (
	plain       = worksheets.Printable
	unprintable = worksheets.Unprintable
)
