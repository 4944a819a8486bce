package typeset

import "strings"

// OrList is "set-in, shirt or gathered".
func OrList(words []string) string { return list(words, " or ") }

// AndList is "14, 16 and 18".
func AndList(words []string) string { return list(words, " and ") }

// list sets commas between words, and another joint before the last.
func list(words []string, joint string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + joint + words[last]
}

// Capitalised begins with a capital; the text begins with a letter of ASCII.
func Capitalised(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// Uncapitalised is a sentence as it goes on behind other words; it begins with a letter of ASCII.
func Uncapitalised(s string) string { return strings.ToLower(s[:1]) + s[1:] }
