package typeset

import "strings"

// OrList is "set-in, shirt or gathered".
func OrList(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// Capitalised begins with a capital; the text begins with a letter of ASCII.
func Capitalised(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
