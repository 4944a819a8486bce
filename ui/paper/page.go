// Package paper lays a worksheet on paper, as PDF, SVG or text, with a marking gauge
// that is true to scale. The card is laid out once, on a surface in millimetres; a PDF
// and an SVG are surfaces.
package paper

import (
	"sort"
	"strings"
	"unicode/utf8"

	"capscye/units"
)

// Surfaces, and a page that is written line by line. The layout of a card is written
// once, for any surface that can write and draw in millimetres.

// Surface is paper. Places are millimetres from its upper left corner; sizes of
// letters are points; the place of a text is the left end of its base line.
type Surface interface {
	NewPage()
	Text(x, y, size float64, f Face, s string)
	Line(x1, y1, x2, y2, width float64, dashed bool)
	Box(x, y, w, h float64, filled bool)
	Width(size float64, f Face, s string) float64 // of a text
}

// Face is a face of the type.
type Face uint8

// The faces: for text, and for what is to be seen first.
const (
	Roman Face = iota
	Bolder
	mono // for tables: every sign as wide as the next
)

// Size is a size of paper, in millimetres.
type Size struct{ Width, Height float64 }

// Sizes are the papers by their names.
var Sizes = map[string]Size{"a4": {210, 297}, "letter": {215.9, 279.4}}

// UsualSize is the paper that lies in printers where the unit is used.
func UsualSize(s units.System) string {
	if s == units.Inches {
		return "letter"
	}
	return "a4"
}

// Margin is what stays white around a page, in millimetres.
const Margin = 12.0

// Sizes of letters, in points, and how far apart their lines are. A card hangs on a
// wall: nothing on it is set smaller than the least.
const (
	leastSize  = 9.0
	textSize   = 10.0
	headSize   = 14.0
	lineHeight = 1.3 * 25.4 / 72 // millimetres for a point of size
)

// Page writes line by line down a surface, on to the next page where one is full.
type Page struct {
	Surface
	Size
	Y float64 // where the last line stands
}

// Begin goes on at the top of another page.
func (p *Page) Begin() {
	p.NewPage()
	p.Y = Margin
}

// Keep begins another page where so many millimetres do not fit on this one.
func (p *Page) Keep(height float64) {
	if p.Y+height > p.Size.Height-Margin {
		p.Begin()
	}
}

// Say writes one line at the left margin and goes on to the next, on another
// page where this one is full.
func (p *Page) Say(size float64, f Face, s string) {
	p.Keep(size * lineHeight)
	p.Y += size * lineHeight
	p.Text(Margin, p.Y, size, f, s)
}

// Title writes a title in the largest type with which it fits the page.
func (p *Page) Title(s string) {
	size := 20.0
	for size > leastSize && p.Surface.Width(size, Bolder, s) > p.Size.Width-2*Margin {
		size -= 0.5
	}
	for _, part := range p.Broken(s, size, Bolder, p.Size.Width-2*Margin) {
		p.Say(size, Bolder, part)
	}
	p.Y++
}

// Paragraph writes a text in as many lines as it takes.
func (p *Page) Paragraph(size float64, f Face, s string) {
	for _, part := range p.Broken(s, size, f, p.Size.Width-2*Margin) {
		p.Say(size, f, part)
	}
}

// Heading begins a part of a page, with its first lines kept by it.
func (p *Page) Heading(s string) {
	p.Keep(20)
	p.Y += 3
	p.Say(headSize, Bolder, s)
	p.Y++
}

// Broken breaks a text into lines of a width.
func (p *Page) Broken(s string, size float64, f Face, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		for {
			n := p.fitting(word, size, f, width)
			if n == len(word) {
				break
			}
			if line != "" {
				lines, line = append(lines, line), ""
			}
			lines, word = append(lines, word[:n]), word[n:]
		}
		longer := strings.TrimSpace(line + " " + word)
		if line != "" && p.Surface.Width(size, f, longer) > width {
			lines, longer = append(lines, line), word
		}
		line = longer
	}
	if line == "" {
		return lines
	}
	return append(lines, line)
}

// mostLetters is more than any line of paper holds.
const mostLetters = 400

// fitting is how many bytes of a word go into a width: whole letters, one at least. It
// looks no further than a line can reach, for a word can be as long as a file.
func (p *Page) fitting(word string, size float64, f Face, width float64) int {
	var ends []int // of its letters
	for at := 0; at < len(word) && len(ends) < mostLetters; {
		_, n := utf8.DecodeRuneInString(word[at:])
		at += n
		ends = append(ends, at)
	}
	if ends[len(ends)-1] == len(word) && p.Surface.Width(size, f, word) <= width {
		return len(word)
	}
	n := sort.Search(len(ends), func(i int) bool { return p.Surface.Width(size, f, word[:ends[i]]) > width })
	return ends[max(n, 1)-1]
}
