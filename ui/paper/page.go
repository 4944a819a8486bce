// Package paper lays a worksheet on paper, as PDF, SVG or text, with a marking gauge
// that is true to scale. The card is laid out once, on a surface in millimetres; a PDF
// and an SVG are surfaces.
package paper

import (
	"fmt"
	"strings"
	"time"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/tracing"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// The sheet on paper: one page with everything that goes up on the wall, and a
// marking gauge, true to scale. The layout is written once, for any surface
// that can write and draw in millimetres.

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

// Sizes of letters, in points, and how far apart their lines are.
const (
	tableSize  = 7.0
	textSize   = 7.5
	lineHeight = 1.3 * 25.4 / 72 // millimetres for a point of size
)

// Page writes line by line down a surface, on to the next page where one is full.
type Page struct {
	Surface
	Size
	Y float64 // where the last line stands
}

// card lays a report out on a surface.
type card struct {
	Page
	r report.Report
}

// printCard prints the card, and the gauge on a page of its own.
func printCard(s Surface, p Size, r report.Report, today time.Time) {
	c := &card{Page{Surface: s, Size: p}, r}
	c.NewPage()
	c.head(today)
	top := c.Y
	c.tables(top)
	below := c.Y
	c.Y = top
	c.drawings()
	c.Y = max(c.Y, below) + 2
	c.findings()
	c.steps()
	c.NewPage()
	c.gauge()
	c.templates()
}

// Say writes one line at the left margin and goes on to the next, on another
// page where this one is full.
func (p *Page) Say(size float64, f Face, s string) {
	if p.Y+size*lineHeight > p.Size.Height-Margin {
		p.NewPage()
		p.Y = Margin
	}
	p.Y += size * lineHeight
	p.Text(Margin, p.Y, size, f, s)
}

// Title writes a title in the largest type with which it fits the page.
func (p *Page) Title(s string) {
	size := 14.0
	for size > 7 && p.Surface.Width(size, Bolder, s) > p.Size.Width-2*Margin {
		size -= 0.5
	}
	for _, part := range p.Broken(s, size, Bolder, p.Size.Width-2*Margin) {
		p.Say(size, Bolder, part)
	}
	p.Y++
}

// mostNotes is how many lines of notes a card has room for.
const mostNotes = 4

func (c *card) head(today time.Time) {
	c.Y = Margin
	c.Title(c.r.Name())
	lines := []string{fmt.Sprintf("Printed %s. Lengths in %s; amounts to mark for a ruler in %s.",
		today.Format(time.DateOnly), wording.UnitWords(c.r.Scale.System), c.r.Scale.Ruler)}
	if day := c.r.Sheet.Text(worksheets.MeasuredOn); day != "" {
		lines[0] += " Measured " + typeset.Plain(day) + "."
	}
	if notes := c.Broken(typeset.Plain(c.r.Sheet.Text(worksheets.Notes)), textSize, Roman, c.Size.Width-2*Margin); len(notes) > mostNotes {
		lines = append(append(lines, notes[:mostNotes]...), "... more in the sheet")
	} else {
		lines = append(lines, notes...)
	}
	var given []string
	for _, k := range []worksheets.Key{worksheets.Bicep, worksheets.BicepOther, worksheets.Bust, worksheets.HighBust, worksheets.Waist,
		worksheets.Hip, worksheets.Elbow, worksheets.Wrist} {
		if l := c.r.Sheet.Reading(k); l.Known {
			given = append(given, forms.Fields[k].Words+" "+c.r.Scale.Number(l.Length))
		}
	}
	if len(given) > 0 {
		lines = append(lines, "Body: "+strings.Join(given, ", ")+" "+c.r.Scale.System.String()+".")
	}
	for _, l := range lines {
		for _, part := range c.Broken(l, textSize, Roman, c.Size.Width-2*Margin) {
			c.Say(textSize, Roman, part)
		}
	}
	c.Y += 2
}

// tables are the numbers, in the left part of the page.
func (c *card) tables(top float64) {
	c.Y = top
	for _, t := range report.Tables(c.r) {
		for _, row := range t {
			c.Say(tableSize, mono, strings.TrimRight(row, " "))
		}
		c.Y += 1.6
	}
}

// drawings are the pieces at a stated scale, in the right part of the page: the
// sleeve, and front and back of the bodice beside each other below it.
func (c *card) drawings() {
	left := Margin + c.Surface.Width(tableSize, mono, strings.Repeat("x", 68)) + 3
	room := c.Size.Width - Margin - left
	c.drawing("Sleeve", calc.SleeveDrawing(c.r.Input, c.r.Plan, calc.AllAltered), left, room, 40)
	top, lowest := c.Y, 0.0
	for i, h := range calc.Halves() {
		c.Y = top
		c.drawing("Bodice "+wording.SubjectWords[h.Subject()], calc.BodiceDrawing(c.r.Input, c.r.Plan, h, calc.AllAltered),
			left+float64(i)*room/2, room/2, 44)
		lowest = max(lowest, c.Y)
	}
	c.Y = lowest
}

// wordsBeside is the room in millimetres that the words beside a corner take.
const wordsBeside = 14.0

// scales are the scales that a drawing may be stated in.
var scales = []float64{2, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30}

// drawing draws one piece: old dashed, new solid, pin, marks and amounts.
func (c *card) drawing(name string, d calc.Drawing, left, width, height float64) {
	minX, maxX, minY, maxY := report.Extent(d)
	width -= wordsBeside * float64(len(d.Corners))
	scale := scales[len(scales)-1]
	for _, s := range scales {
		if (maxX-minX)/s <= width && (maxY-minY)/s <= height {
			scale = s
			break
		}
	}
	caption := fmt.Sprintf("%s, 1 : %g", name, scale)
	if len(d.Corners) > 1 {
		caption += " (dashed before, solid after)"
	}
	if d.Assumed {
		caption += ", proportions assumed"
	}
	c.Y += textSize * lineHeight
	c.Text(left, c.Y, textSize, Bolder, caption)
	if len(d.Corners) > 1 {
		left += wordsBeside
	}
	top := c.Y + 2
	at := func(p calc.Point) (x, y float64) { return left + (p.X-minX)/scale, top + (maxY-p.Y)/scale }
	strokes := func(list []calc.Stroke, thick float64, dashed bool) {
		for _, s := range list {
			for i := 1; i < len(s); i++ {
				x1, y1 := at(s[i-1])
				x2, y2 := at(s[i])
				c.Line(x1, y1, x2, y2, thick, dashed)
			}
		}
	}
	strokes(d.Old, 0.15, true)
	strokes([]calc.Stroke{d.Girth}, 0.08, false)
	if !c.r.Plan.Open && !d.Unreached {
		strokes(d.New, 0.4, false)
	}
	x, y := at(d.Pin)
	c.Box(x-0.6, y-0.6, 1.2, 1.2, true)
	if len(d.Girth) > 1 {
		x, y := at(d.Girth[0].Toward(d.Girth[1], 0.5))
		c.Text(x-c.Surface.Width(5.5, Roman, wording.GirthLine(d))/2, y-0.6, 5.5, Roman, wording.GirthLine(d))
	}
	for _, k := range d.Corners {
		c.cornerWords(k, at)
	}
	c.Y = top + (maxY-minY)/scale + 3
}

// cornerWords mark a corner, and name its side and amounts beside the piece.
func (c *card) cornerWords(k calc.Corner, at func(calc.Point) (x, y float64)) {
	const size = 5.5
	mx, my := at(k.Mark)
	c.Line(mx-0.8, my-0.8, mx+0.8, my+0.8, 0.2, false)
	c.Line(mx-0.8, my+0.8, mx+0.8, my-0.8, 0.2, false)
	for _, fits := range k.Fits {
		x, y := at(fits)
		c.Line(x-0.9, y, x+0.9, y, 0.2, false)
		c.Line(x, y-0.9, x, y+0.9, 0.2, false)
	}
	for _, bend := range k.Bends {
		x, y := at(bend)
		c.Box(x-0.5, y-0.5, 1, 1, false)
	}
	ox, _ := at(k.Old)
	for i, w := range []string{strings.ToLower(wording.HalfNames[k.Side.Half()]), c.r.MarksShort(c.r.Plan.Sides[k.Side])} {
		x := max(mx, ox) + 1.5
		if k.Old.X < 0 {
			x = min(mx, ox) - 1.5 - c.Surface.Width(size, Roman, w)
		}
		c.Text(x, my+2.6*float64(i+1), size, Roman, w)
	}
}

func (c *card) findings() {
	for _, f := range c.r.Findings {
		for _, part := range c.Broken(strings.ToUpper(f.Level.String())+": "+f.Line(), textSize, Roman, c.Size.Width-2*Margin) {
			c.Say(textSize, Roman, part)
		}
	}
	for _, l := range report.FittingLines(c.r) {
		for _, part := range c.Broken("Fitting "+l, textSize, Roman, c.Size.Width-2*Margin) {
			c.Say(textSize, Roman, part)
		}
	}
	for _, w := range wording.Cautions {
		c.Say(textSize, Roman, w)
	}
	c.Y += 2
}

// steps are the steps at the table with boxes to tick, in two columns, in the
// largest type with which they stay on the page. What does not fit even in the
// smallest goes on to another page.
func (c *card) steps() {
	const gap = 5.0
	width := (c.Size.Width - 2*Margin - gap) / 2
	steps := c.r.TraceSteps()
	var blocks [][]string
	lines, size := 0, 0.0
	for _, size = range []float64{7, 6.5, 6, 5.5, 5, 0} {
		if size == 0 { // not even in small print: on a page of its own, in large
			c.NewPage()
			c.Y, size = Margin, 7
		}
		blocks, lines = nil, 0
		for i, s := range steps {
			block := c.Broken(fmt.Sprintf("%d  %s: %s", i+1, typeset.Capitalised(tracing.About(s)), tracing.Sentence(s, c.r.Scale)), size, Roman, width-5)
			blocks, lines = append(blocks, block), lines+len(block)
		}
		if float64(lines/2+4)*size*lineHeight < c.Size.Height-Margin-c.Y { // a step is not torn apart
			break
		}
	}
	top, column, used := c.Y, 0, 0
	for i, block := range blocks {
		full := c.Y+float64(len(block))*size*lineHeight > c.Size.Height-Margin
		switch {
		case column == 0 && (full || 2*used >= lines): // half of them stand in the left column
			column, c.Y = 1, top
		case full:
			c.NewPage()
			c.Y, top, column = Margin, Margin, 0
			lines, used = lines-used, 0
		}
		x := Margin + float64(column)*(width+gap)
		c.Box(x, c.Y+0.7, 2.2, 2.2, c.r.Done(steps[i]))
		for _, l := range block {
			c.Y += size * lineHeight
			c.Text(x+4, c.Y, size, Roman, l)
		}
		used += len(block)
	}
}

// Broken breaks a text into lines of a width.
func (p *Page) Broken(s string, size float64, f Face, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		for p.Surface.Width(size, f, word) > width { // a word that is longer than a line
			n := len([]rune(word)) - 1
			for n > 1 && p.Surface.Width(size, f, string([]rune(word)[:n])) > width {
				n--
			}
			if line != "" {
				lines, line = append(lines, line), ""
			}
			lines, word = append(lines, string([]rune(word)[:n])), string([]rune(word)[n:])
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
