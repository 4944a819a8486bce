package typeset

import "capscye/worksheets"

// Plain makes text from outside harmless to show: every face uses it for titles, notes,
// file names and messages alike.
func Plain(s string) string { return worksheets.Printable(s) }

// Unprintable tells the characters for which [Plain] is needed.
func Unprintable(r rune) bool { return worksheets.Unprintable(r) }
