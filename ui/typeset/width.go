package typeset

import (
	"strings"
	"unicode"

	"github.com/charmbracelet/x/ansi"
	"github.com/mattn/go-runewidth"
)

// How many cells a text takes. Terminals count in two ways: by clusters, as a person
// sees letters, or character by character, where a vowel that stands beside its Thai or
// Devanagari letter has a cell of its own. Nobody asks a terminal which, so the larger
// counts: a line may come out short, and never sticks out.

// byCharacter counts the characters of a cluster. Those of ambiguous width are narrow, as
// the library of the screen has them.
var byCharacter = &runewidth.Condition{}

// Width is how many cells a line takes at most, whichever way the terminal counts.
// Styles take none.
func Width(s string) int {
	if plain(s) {
		return len(s)
	}
	if even(s) {
		return ansi.StringWidth(s)
	}
	width := 0
	for rest, state := s, byte(0); rest != ""; {
		seq, w, n, next := ansi.DecodeSequence(rest, state, nil)
		width += clusterWidth(seq, w)
		rest, state = rest[n:], next
	}
	return width
}

// clusterWidth is the larger of the two counts of a cluster that takes w cells as a
// whole. What takes none steers.
func clusterWidth(cluster string, w int) int {
	if w == 0 && strings.HasPrefix(cluster, "\x1b") {
		return 0
	}
	characters := 0
	for _, r := range cluster {
		characters += runeWidth(r)
	}
	return max(w, characters)
}

func runeWidth(r rune) int {
	if unicode.Is(unicode.Mc, r) { // the tables of some systems give every one of them a cell
		return max(1, byCharacter.RuneWidth(r))
	}
	return byCharacter.RuneWidth(r)
}

// even tells that both ways of counting agree on every text of these characters: Latin
// letters, the signs between them, arrows, lines and braille.
func even(s string) bool {
	for _, r := range s {
		if r >= 0x300 && (r < 0x2000 || r > 0x28ff) {
			return false
		}
	}
	return true
}

// cut is as much of a line as has room, and what closes its styles.
func cut(s string, width int, tail string) string {
	if even(s) {
		return ansi.Truncate(s, width, tail)
	}
	room := width - Width(tail)
	var out strings.Builder
	full := false
	for rest, state := s, byte(0); rest != ""; {
		seq, w, n, next := ansi.DecodeSequence(rest, state, nil)
		rest, state = rest[n:], next
		if strings.HasPrefix(seq, "\x1b") {
			out.WriteString(seq)
			continue
		}
		if w = clusterWidth(seq, w); !full && w > room {
			full = true
			out.WriteString(tail)
		}
		if !full {
			out.WriteString(seq)
			room -= w
		}
	}
	return out.String()
}

// wrap breaks a text into lines of a width, at its spaces; a word without room for it is
// broken between its letters.
func wrap(text string, width int) []string {
	if even(text) {
		return strings.Split(ansi.Wrap(text, width, ""), "\n")
	}
	var lines []string
	for _, paragraph := range strings.Split(text, "\n") {
		line, taken := "", 0
		for _, word := range strings.SplitAfter(paragraph, " ") {
			if taken+Width(strings.TrimRight(word, " ")) > width && taken > 0 {
				lines, line, taken = append(lines, line), "", 0
			}
			for Width(strings.TrimRight(word, " ")) > width {
				part := cut(word, width, "")
				if part == "" {
					part = marksOf(word, width)
				}
				lines, word = append(lines, part), word[len(part):]
			}
			line += word
			taken += Width(word)
		}
		lines = append(lines, line)
	}
	return lines
}

// marksOf is as much of a cluster as has room, where one with many marks is wider than a
// line: one character at least.
func marksOf(cluster string, width int) string {
	for i, r := range cluster {
		if width -= runeWidth(r); width < 0 && i > 0 {
			return cluster[:i]
		}
	}
	return cluster
}
