package ui

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// The sheet on paper: one page with everything that goes up on the wall, and a
// marking gauge, true to scale. The layout is written once, for any surface
// that can write and draw in millimetres.

// surface is paper. Places are millimetres from its upper left corner; sizes of
// letters are points; the place of a text is the left end of its base line.
type surface interface {
	newPage()
	text(x, y, size float64, f face, s string)
	line(x1, y1, x2, y2, width float64, dashed bool)
	box(x, y, w, h float64, filled bool)
	width(size float64, f face, s string) float64 // of a text
}

// face is a face of the type.
type face uint8

const (
	roman face = iota
	bolder
	mono // for tables: every sign as wide as the next
)

// paper is a size of paper, in millimetres.
type paper struct{ width, height float64 }

var papers = map[string]paper{"a4": {210, 297}, "letter": {215.9, 279.4}}

// usualPaper is the paper that lies in printers where the unit is used.
func usualPaper(s units.System) string {
	if s == units.Inches {
		return "letter"
	}
	return "a4"
}

const (
	margin     = 12.0
	tableSize  = 7.5
	textSize   = 7.5
	lineHeight = 1.3 * 25.4 / 72 // millimetres for a point of size
)

// card lays a report out on a surface.
type card struct {
	surface
	paper
	r report
	y float64
}

// printCard prints the card, and the gauge on a page of its own.
func printCard(s surface, p paper, r report, today time.Time) {
	c := &card{surface: s, paper: p, r: r}
	c.newPage()
	c.head(today)
	top := c.y
	c.tables(top)
	below := c.y
	c.y = top
	c.drawings()
	c.y = max(c.y, below) + 2
	c.findings()
	c.steps()
	c.newPage()
	c.gauge()
}

// say writes one line at the left margin and goes on to the next.
func (c *card) say(size float64, f face, s string) {
	c.y += size * lineHeight
	c.text(margin, c.y, size, f, s)
}

func (c *card) head(today time.Time) {
	c.y = margin
	c.say(14, bolder, c.r.name())
	c.y += 1
	lines := []string{fmt.Sprintf("Printed %s. Lengths in %s; amounts to mark for a ruler in %s.",
		today.Format(time.DateOnly), unitWords(c.r.scale.System), c.r.scale.Ruler)}
	if day := c.r.sheet.Text(worksheets.MeasuredOn); day != "" {
		lines[0] += " Measured " + plain(day) + "."
	}
	if notes := plain(c.r.sheet.Text(worksheets.Notes)); notes != "" {
		lines = append(lines, notes)
	}
	var given []string
	for _, k := range []worksheets.Key{worksheets.Bicep, worksheets.BicepOther, worksheets.Bust, worksheets.HighBust, worksheets.Waist,
		worksheets.Hip, worksheets.Elbow, worksheets.Wrist} {
		if l := c.r.sheet.Reading(k); l.Known {
			given = append(given, fields[k].words+" "+c.r.scale.Number(l.Length))
		}
	}
	if len(given) > 0 {
		lines = append(lines, "Body: "+strings.Join(given, ", ")+" "+c.r.scale.System.String()+".")
	}
	for _, l := range lines {
		for _, part := range c.broken(l, textSize, c.paper.width-2*margin) {
			c.say(textSize, roman, part)
		}
	}
	c.y += 2
}

// tables are the numbers, in the left part of the page.
func (c *card) tables(top float64) {
	c.y = top
	for _, t := range [][]string{
		needsTable(c.r), sidesTable(c.r), bandLines(c.r), finishedTable(c.r), seamsTable(c.r), turnTable(c.r), widthsTable(c.r),
	} {
		for _, row := range t {
			c.say(tableSize, mono, strings.TrimRight(row, " "))
		}
		if len(t) > 0 {
			c.y += 1.6
		}
	}
}

// drawings are the pieces at a stated scale, in the right part of the page: the
// sleeve, and front and back of the bodice beside each other below it.
func (c *card) drawings() {
	left := margin + c.surface.width(tableSize, mono, strings.Repeat("x", 68)) + 3
	room := c.paper.width - margin - left
	c.drawing("Sleeve", calc.SleeveDrawing(c.r.input, c.r.plan, calc.AllAltered), left, room, 42)
	top, lowest := c.y, 0.0
	for i, h := range calc.Halves() {
		c.y = top
		c.drawing("Bodice "+subjectWords[h.Subject()], calc.BodiceDrawing(c.r.input, c.r.plan, h, calc.AllAltered),
			left+float64(i)*room/2, room/2, 48)
		lowest = max(lowest, c.y)
	}
	c.y = lowest
}

// wordsBeside is the room in millimetres that the words beside a corner take.
const wordsBeside = 14.0

// scales are the scales that a drawing may be stated in.
var scales = []float64{2, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30}

// drawing draws one piece: old dashed, new solid, pin, marks and amounts.
func (c *card) drawing(name string, d calc.Drawing, left, width, height float64) {
	minX, maxX, minY, maxY := extent(d)
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
	c.y += textSize * lineHeight
	c.text(left, c.y, textSize, bolder, caption)
	if len(d.Corners) > 1 {
		left += wordsBeside
	}
	top := c.y + 2
	at := func(p calc.Point) (x, y float64) { return left + (p.X-minX)/scale, top + (maxY-p.Y)/scale }
	strokes := func(list []calc.Stroke, thick float64, dashed bool) {
		for _, s := range list {
			for i := 1; i < len(s); i++ {
				x1, y1 := at(s[i-1])
				x2, y2 := at(s[i])
				c.line(x1, y1, x2, y2, thick, dashed)
			}
		}
	}
	strokes(d.Old, 0.15, true)
	if !c.r.plan.Open && !d.Unreached {
		strokes(d.New, 0.35, false)
	}
	x, y := at(d.Pin)
	c.box(x-0.6, y-0.6, 1.2, 1.2, true)
	for _, k := range d.Corners {
		c.cornerWords(k, at)
	}
	c.y = top + (maxY-minY)/scale + 3
}

// cornerWords mark a corner, and name its side and amounts beside the piece.
func (c *card) cornerWords(k calc.Corner, at func(calc.Point) (x, y float64)) {
	const size = 5.5
	mx, my := at(k.Mark)
	c.line(mx-0.8, my-0.8, mx+0.8, my+0.8, 0.2, false)
	c.line(mx-0.8, my+0.8, mx+0.8, my-0.8, 0.2, false)
	ox, _ := at(k.Old)
	for i, w := range []string{strings.ToLower(halfNames[k.Side.Half()]), c.r.marksShort(c.r.plan.Sides[k.Side])} {
		x := max(mx, ox) + 1.5
		if k.Old.X < 0 {
			x = min(mx, ox) - 1.5 - c.surface.width(size, roman, w)
		}
		c.text(x, my+2.6*float64(i+1), size, roman, w)
	}
}

func extent(d calc.Drawing) (minX, maxX, minY, maxY float64) {
	minX, maxX, minY, maxY = math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, s := range slices.Concat(d.Old, d.New) {
		for _, p := range s {
			minX, maxX = min(minX, p.X), max(maxX, p.X)
			minY, maxY = min(minY, p.Y), max(maxY, p.Y)
		}
	}
	return minX, maxX, minY, maxY
}

func (c *card) findings() {
	for _, f := range c.r.findings {
		for _, part := range c.broken(strings.ToUpper(f.level.String())+": "+f.line(), textSize, c.paper.width-2*margin) {
			c.say(textSize, roman, part)
		}
	}
	for _, w := range cautions {
		c.say(textSize, roman, w)
	}
	c.y += 2
}

// steps are the steps at the table with boxes to tick, in two columns, in the
// largest type with which they stay on the page. What does not fit even in the
// smallest goes on to another page.
func (c *card) steps() {
	const gap = 5.0
	width := (c.paper.width - 2*margin - gap) / 2
	steps := c.r.traceSteps()
	var blocks [][]string
	lines, size := 0, 0.0
	for _, size = range []float64{7, 6.5, 6, 5.5, 5} {
		blocks, lines = nil, 0
		for i, s := range steps {
			block := c.broken(fmt.Sprintf("%d  %s: %s", i+1, capitalised(about(s)), stepText(s, c.r)), size, width-5)
			blocks, lines = append(blocks, block), lines+len(block)
		}
		if float64(lines/2+4)*size*lineHeight < c.paper.height-margin-c.y { // a step is not torn apart
			break
		}
	}
	top, column, used := c.y, 0, 0
	for i, block := range blocks {
		full := c.y+float64(len(block))*size*lineHeight > c.paper.height-margin
		switch {
		case column == 0 && (full || 2*used >= lines): // half of them stand in the left column
			column, c.y = 1, top
		case full:
			c.newPage()
			c.y, top, column = margin, margin, 0
			lines, used = lines-used, 0
		}
		x := margin + float64(column)*(width+gap)
		c.box(x, c.y+0.7, 2.2, 2.2, c.r.done(steps[i]))
		for _, l := range block {
			c.y += size * lineHeight
			c.text(x+4, c.y, size, roman, l)
		}
		used += len(block)
	}
}

// broken breaks a text into lines of a width.
func (c *card) broken(s string, size, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		longer := strings.TrimSpace(line + " " + word)
		if line != "" && c.surface.width(size, roman, longer) > width {
			lines, longer = append(lines, line), word
		}
		line = longer
	}
	return append(lines, line)
}

// gauge is the second page: strips to cut out and lay on the paper, true to
// scale, and squares to check the printer with.
func (c *card) gauge() {
	c.y = margin
	c.say(14, bolder, "Marking gauge: "+c.r.name())
	c.y += 1
	c.say(textSize, roman, "True to scale: print at 100 %, and measure the squares before you trust a strip. Cut along the lines; lay 0 on the underarm corner.")
	c.y += 4
	for _, s := range c.strips() {
		c.strip(s)
	}
	c.square(margin, 2*units.Inch, "2 in")
	c.square(margin+65, 5*units.Centimetre, "5 cm")
}

// strip is one strip of the gauge: marks from zero, each with a word.
type strip struct {
	name  string
	marks []stripMark
}

type stripMark struct {
	at    units.Length
	words string
}

// strips are the amounts of the sheet, sides with the same amounts together.
func (c *card) strips() []strip {
	var list []strip
	bySides := map[[2]units.Length]int{}
	for _, s := range calc.Sides() {
		p := c.r.plan.Sides[s]
		if c.r.plan.Open || p.PivotMark == 0 && p.SlideMark == 0 {
			continue
		}
		amounts := [2]units.Length{p.PivotMark, p.SlideMark}
		if i, ok := bySides[amounts]; ok {
			list[i].name += ", " + subjectWords[s.Subject()]
			continue
		}
		bySides[amounts] = len(list)
		one := strip{name: subjectWords[s.Subject()], marks: []stripMark{{0, "0"}}}
		if p.PivotMark != 0 {
			one.marks = append(one.marks, stripMark{p.PivotMark.Abs(), "pivot " + inOrOut(p.PivotMark, c.r.scale)})
		}
		if p.SlideMark != 0 {
			one.marks = append(one.marks, stripMark{p.PivotMark.Abs() + p.SlideMark.Abs(), "then slide " + inOrOut(p.SlideMark, c.r.scale)})
		}
		list = append(list, one)
	}
	for _, k := range []worksheets.Key{worksheets.SleeveAllowance, worksheets.BodiceAllowance} {
		if l := c.r.sheet.Reading(k); l.Known && l.Length > 0 {
			list = append(list, strip{fields[k].words, []stripMark{{0, "0"}, {l.Length, c.r.scale.Format(l.Length)}}})
		}
	}
	return list
}

// strip draws one strip. A mark is a thin bar whose middle is the place.
func (c *card) strip(s strip) {
	const tall, bar = 9.0, 0.2
	last := s.marks[len(s.marks)-1].at.Millimetres()
	c.say(textSize, bolder, capitalised(s.name))
	if last > c.paper.width-2*margin-6 {
		c.say(textSize, roman, "longer than this paper; measure it with the ruler")
		c.y += 3
		return
	}
	top, zero := c.y+1.5, margin+3
	for _, edge := range [][4]float64{ // dashed: to be cut along, and no mark
		{margin, top, margin + last + 6, top}, {margin, top + tall, margin + last + 6, top + tall},
		{margin, top, margin, top + tall}, {margin + last + 6, top, margin + last + 6, top + tall},
	} {
		c.line(edge[0], edge[1], edge[2], edge[3], 0.15, true)
	}
	for i, m := range s.marks {
		x := zero + m.at.Millimetres()
		c.box(x-bar/2, top, bar, tall, true)
		c.text(x+0.8, top+tall+3*float64(i+1), 6, roman, m.words)
	}
	c.y = top + tall + 3*float64(len(s.marks)) + 4
}

// square is a square to check the printer with.
func (c *card) square(x float64, side units.Length, words string) {
	mm := side.Millimetres()
	c.box(x, c.y+2, mm, mm, false)
	c.text(x+2, c.y+6, textSize, roman, words+" square: measure it")
}
