// Package typeset fits text into lines and columns of a width, and never breaks a
// length. What is to be heard it makes sentences of, a thought a line ([Speech]); and it
// sets words as a sentence has them: in a list ([OrList], [AndList]), and as its first
// ([Capitalised]).
package typeset

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// Scrolled is the part of the lines from one on that a block takes, and how many
// are below it.
func Scrolled(lines []string, from, width, height int) string {
	top := max(0, min(from, len(lines)-height))
	seen := slices.Clone(lines[top:min(len(lines), top+height)])
	if below := len(lines) - top - height; below > 0 && height > 0 {
		seen[height-1] = Cut(fmt.Sprintf("... and %d lines more below", below+1), width)
	}
	return Block(seen, width, height)
}

// Block is exactly height lines, none wider than width.
func Block(lines []string, width, height int) string {
	out := make([]string, max(height, 0))
	for i := range out {
		if i < len(lines) {
			out[i] = Cut(lines[i], width)
		}
	}
	return strings.Join(out, "\n")
}

// Cut shortens a line to a width, and says so. A length goes as a whole, with the plus
// before it: what is left of one would be another. Where that leaves nothing, or the line
// has styles, it is cut where it is full.
func Cut(s string, width int) string {
	if Width(s) <= width {
		return s
	}
	if width < 4 {
		return cut(s, max(width, 0), "")
	}
	short := cut(s, width, "...")
	if strings.Contains(s, "\x1b") {
		return short
	}
	all, kept := []rune(together(s)), utf8.RuneCountInString(short)-len("...")
	from, to := kept, kept
	for from > 0 && all[from-1] != ' ' {
		from--
	}
	for to < len(all) && all[to] != ' ' {
		to++
	}
	inLength := from < kept && kept < to && strings.ContainsAny(string(all[from:to]), "0123456789")
	if !inLength && !strings.HasSuffix(strings.TrimRight(string(all[:kept]), " "), "+") {
		return short
	}
	if whole := strings.TrimRight(string([]rune(s)[:from]), " +"); whole != "" {
		return whole + "..."
	}
	return short
}

// Fitting is the first of some lines that a width takes, or the last of them, cut.
func Fitting(width int, lines ...string) string {
	for _, l := range lines {
		if Width(l) <= width {
			return l
		}
	}
	return Cut(lines[len(lines)-1], width)
}

// Pad fills a line with spaces to a width, cutting what is too long.
func Pad(s string, width int) string {
	s = Cut(s, width)
	return s + strings.Repeat(" ", max(0, width-Width(s)))
}

// PadLeft fills a line with spaces on its left.
func PadLeft(s string, width int) string {
	return strings.Repeat(" ", max(0, width-Width(s))) + s
}

// Wrap breaks a text into lines of a width, but no length: not between 1 and 3/8,
// not at a hyphen or behind a minus, nor before its unit.
func Wrap(text string, width int) []string {
	if len(text) <= width && plain(text) {
		return []string{strings.TrimRight(text, " ")}
	}
	lines := wrap(together(text), max(width, 1))
	for i, l := range lines {
		lines[i] = strings.TrimRight(breakable.Replace(l), " ")
	}
	return lines
}

// plain tells that a text is one line of signs that take a cell each.
func plain(text string) bool {
	for i := 0; i < len(text); i++ {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}

// The space and the hyphen at which no line is broken.
const (
	noBreak  = "\u00a0"
	noHyphen = "\u2011"
)

// breakable makes them the usual ones again.
var breakable = strings.NewReplacer(noBreak, " ", noHyphen, "-")

// together joins the parts of every length in a text.
func together(text string) string {
	var b strings.Builder
	from := 0
	for i := 0; i < len(text)-1; i++ {
		joint := ""
		switch {
		case text[i] == ' ' && i > 0 && isDigit(text[i-1]) && goesOn(text[i+1:]):
			joint = noBreak
		case text[i] == '-' && isDigit(text[i+1]):
			joint = noHyphen
		default:
			continue
		}
		b.WriteString(text[from:i])
		b.WriteString(joint)
		from = i + 1
	}
	if from == 0 {
		return text
	}
	return b.String() + text[from:]
}

// goesOn tells that a length goes on: with a fraction, or with its unit.
func goesOn(text string) bool {
	digits := 0
	for digits < len(text) && isDigit(text[digits]) {
		digits++
	}
	if digits > 0 {
		return digits < len(text) && text[digits] == '/'
	}
	for _, unit := range []string{"in", "cm", "mm", "deg"} {
		if rest, ok := strings.CutPrefix(text, unit); ok && (rest == "" || rest[0] < 'a' || rest[0] > 'z') {
			return true
		}
	}
	return false
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// Hanging wraps a text with its lead hanging out to the left.
func Hanging(lead, text string, width int) []string {
	out := Wrap(text, width-Width(lead))
	for i, l := range out {
		if i > 0 {
			lead = strings.Repeat(" ", Width(lead))
		}
		out[i] = lead + l
	}
	return out
}

// Window is the part of the lines that is seen when line focus is to be seen,
// and how many there are below it. It depends on nothing else, so a window that
// grows never stays past the end.
func Window(lines []string, focus, height int) (shown []string, below int) {
	top, end := Seen(len(lines), focus, height)
	return lines[top:end], len(lines) - end
}

// Seen is [Window] for lines that need not be there yet.
func Seen(count, focus, height int) (top, end int) {
	top = max(0, min(focus-height+2, count-height))
	return top, min(count, top+max(height, 0))
}

// Columns sets two blocks side by side.
func Columns(left, right string, leftWidth, gap int) string {
	l, r := strings.Split(left, "\n"), strings.Split(right, "\n")
	out := make([]string, max(len(l), len(r)))
	for i := range out {
		line := ""
		if i < len(l) {
			line = l[i]
		}
		if i < len(r) && r[i] != "" {
			line = Pad(line, leftWidth) + strings.Repeat(" ", gap) + r[i]
		}
		out[i] = line
	}
	return strings.Join(out, "\n")
}
