package ui

import (
	"strconv"
	"strings"
	"unicode"
)

// plain makes text from a file, a file name or a message harmless: what would
// steer a terminal, turn the direction of reading or be invisible is shown as
// an escape instead of obeyed. Line breaks become spaces.
func plain(s string) string {
	if !strings.ContainsFunc(s, unsafe) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '\n' || r == '\t':
			b.WriteByte(' ')
		case r == '\r':
		case unsafe(r):
			b.WriteString(strings.Trim(strconv.QuoteRuneToASCII(r), "'"))
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// unsafe tells the characters that do something instead of showing something:
// controls (C0, C1), formats (bidirectional overrides, zero width), private and
// unassigned ones, line separators, and bytes that are no UTF-8.
func unsafe(r rune) bool {
	return r == unicode.ReplacementChar || !unicode.IsPrint(r) && r != '\u00a0' && r != '\u202f' && r != '\u2009'
}
