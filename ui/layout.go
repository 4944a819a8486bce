package ui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// The smallest window that the worksheet can be used in, and the width from
// which the answer stands beside the form.
const (
	smallestWidth  = 60
	smallestHeight = 16
	besideFrom     = 100
	formFrom       = 70 // what the widest table of a form needs
	answerMost     = 44
	stripHeight    = 3
)

// layout divides a window: a title and the tape on top, the keys at the bottom,
// and between them the form with the answer beside it or below.
//
//	wide:  title           narrow:  title
//	       tape                     tape
//	       form | answer            form
//	       keys                     answer (3 lines)
//	                                keys
type layout struct {
	tooSmall, beside      bool
	formWidth, formHeight int
	answerWidth           int
	answerHeight          int
}

// layoutFor is a pure function of the window, and of whether copies lie beside the
// sheet: they take half of a narrow one.
func layoutFor(width, height int, copies bool) layout {
	l := layout{tooSmall: width < smallestWidth || height < smallestHeight}
	l.answerWidth, l.answerHeight = width, stripHeight
	if copies {
		l.answerHeight = (height - 4) / 2
	}
	l.formWidth, l.formHeight = width, height-4-l.answerHeight // title, tape, rule, keys
	if width >= besideFrom {
		l.beside = true
		l.answerWidth, l.answerHeight = min(width-formFrom-2, answerMost), height-4
		l.formWidth, l.formHeight = width-l.answerWidth-2, height-4
	}
	return l
}

// smallWindow asks for more room.
func smallWindow(width, height int) string {
	text := fmt.Sprintf("This window has %d x %d cells; the worksheet needs %d x %d. Nothing is lost: make it larger.",
		width, height, smallestWidth, smallestHeight)
	return block(wrap(text, width), width, height)
}

// block is exactly height lines, none wider than width.
func block(lines []string, width, height int) string {
	out := make([]string, max(height, 0))
	for i := range out {
		if i < len(lines) {
			out[i] = cut(lines[i], width)
		}
	}
	return strings.Join(out, "\n")
}

// cut shortens a line to a width, and says so.
func cut(s string, width int) string {
	if ansi.StringWidth(s) <= width {
		return s
	}
	if width < 4 {
		return ansi.Truncate(s, max(width, 0), "")
	}
	return ansi.Truncate(s, width, "...")
}

// pad fills a line with spaces to a width, cutting what is too long.
func pad(s string, width int) string {
	s = cut(s, width)
	return s + strings.Repeat(" ", max(0, width-ansi.StringWidth(s)))
}

// padLeft fills a line with spaces on its left.
func padLeft(s string, width int) string {
	return strings.Repeat(" ", max(0, width-ansi.StringWidth(s))) + s
}

// wrap breaks a text into lines of a width, but no length: not between 1 and 3/8,
// not at a hyphen or behind a minus, nor before its unit.
func wrap(text string, width int) []string {
	lines := strings.Split(ansi.Wrap(together(text), max(width, 1), ""), "\n")
	for i, l := range lines {
		lines[i] = strings.TrimRight(breakable.Replace(l), " ")
	}
	return lines
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

// hanging wraps a text with its lead hanging out to the left.
func hanging(lead, text string, width int) []string {
	out := wrap(text, width-len(lead))
	for i, l := range out {
		if i > 0 {
			lead = strings.Repeat(" ", len(lead))
		}
		out[i] = lead + l
	}
	return out
}

// window is the part of the lines that is seen when line focus is to be seen,
// and how many there are below it. It depends on nothing else, so a window that
// grows never stays past the end.
func window(lines []string, focus, height int) (shown []string, below int) {
	top, end := seen(len(lines), focus, height)
	return lines[top:end], len(lines) - end
}

// seen is [window] for lines that need not be there yet.
func seen(count, focus, height int) (top, end int) {
	top = max(0, min(focus-height+2, count-height))
	return top, min(count, top+max(height, 0))
}

// columns sets two blocks side by side.
func columns(left, right string, leftWidth, gap int) string {
	l, r := strings.Split(left, "\n"), strings.Split(right, "\n")
	out := make([]string, max(len(l), len(r)))
	for i := range out {
		line := ""
		if i < len(l) {
			line = l[i]
		}
		if i < len(r) && r[i] != "" {
			line = pad(line, leftWidth) + strings.Repeat(" ", gap) + r[i]
		}
		out[i] = line
	}
	return strings.Join(out, "\n")
}
