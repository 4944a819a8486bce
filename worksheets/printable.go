package worksheets

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Printable makes text from a file, a file name or a message harmless: what
// would steer a terminal, turn the direction of reading or be invisible is
// shown as an escape instead of obeyed. Line breaks and tabs become spaces.
func Printable(s string) string {
	if !strings.ContainsFunc(s, Unprintable) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '\n' || r == '\t':
			b.WriteByte(' ')
		case r == '\r':
		case Unprintable(r):
			b.WriteString(strings.Trim(strconv.QuoteRuneToASCII(r), "'"))
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// Unprintable tells the characters that do something instead of showing
// something: controls (C0, C1), formats (bidirectional overrides, zero width),
// private and unassigned ones, line separators, and bytes that are no UTF-8; and those
// that show nothing, by the property of Unicode (Default_Ignorable_Code_Point: fillers,
// joiners, variation selectors) or because their picture is empty.
func Unprintable(r rune) bool {
	switch {
	case r < utf8.RuneSelf:
		return r < ' ' || r == 0x7f
	case r == '\u00a0' || r == '\u202f' || r == '\u2009':
		return false
	case r == unicode.ReplacementChar || !unicode.IsPrint(r): // all formats are ignorable too
		return true
	}
	return unicode.In(r, unicode.Other_Default_Ignorable_Code_Point, unicode.Variation_Selector) || strings.ContainsRune(emptyPictures, r)
}

// emptyPictures are signs of scripts that are drawn as nothing and have no property that
// says so: the blanks of braille and of hieroglyphs, a filler of Khitan, a note without a
// head.
const emptyPictures = "\u2800\U00013441\U00013442\U00016fe4\U0001d159"

// shorten keeps a text in a message to less than a line, however much the file
// holds.
func shorten(s string) string { return shortenTo(80, s) }

func shortenTo(most int, s string) string {
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	return string([]rune(s)[:most]) + "..."
}

// shortenMiddle shortens a reason that begins with what was read and ends with what
// is wrong with it.
func shortenMiddle(most int, s string) string {
	runes := []rune(s)
	if len(runes) <= most {
		return s
	}
	return string(runes[:most/2]) + "..." + string(runes[len(runes)-most/2:])
}
