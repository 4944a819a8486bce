package typeset

import (
	"regexp"

	"capscye/units"
)

// OffMark finds a rounded length; a lone ~ may stand in a title.
var OffMark = regexp.MustCompile(units.OffMark + `-?[0-9]`)

// OffMarkNote explains the sign before a rounded length, where the text has one.
func OffMarkNote(text string) string {
	if !OffMark.MatchString(text) {
		return ""
	}
	return units.OffMark + " means rounded"
}

// Spoken says in a word what the sign before a rounded length means.
func Spoken(text string) string {
	return OffMark.ReplaceAllStringFunc(text, func(found string) string { return "about " + found[1:] })
}
