package paper

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"capscye/calc"
	"capscye/calc/trace"
	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/tracing"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// The first page of a card, which is read from the table: whose it is, what to mark on
// each side as large as the page allows, what comes out, and what speaks against
// cutting. Everything else stands on the pages behind it.

// card lays a report out on a surface.
type card struct {
	Page
	r report.Report
}

// printCard prints the card on as many pages as it takes.
func printCard(s Surface, p Size, r report.Report, today time.Time) {
	c := &card{Page{Surface: s, Size: p}, r}
	c.Begin()
	c.head(today)
	c.amounts()
	c.outcome()
	c.findings()
	c.pieces()
	c.steps()
	c.numbers()
	c.gauge()
	c.templates()
}

// isJob tells that there are amounts to be marked: none while answers are missing, and
// none that nobody would mark.
func (c *card) isJob() bool { return !c.r.Plan.Open && !c.r.Plan.TooFar() }

func (c *card) head(today time.Time) {
	c.Title(c.r.Name())
	c.Paragraph(headSize, Bolder, c.r.Verdict().Line())
	line := strings.TrimSpace(c.r.SizeWords()+" Printed ") + " " + today.Format(time.DateOnly) + ". " + c.r.ScaleWords()
	if day := c.r.Sheet.Text(worksheets.MeasuredOn); day != "" {
		line += " Measured " + typeset.Plain(day) + "."
	}
	c.Paragraph(textSize, Roman, line)
	c.Y += 2
}

// block is what is marked on one side, or on two that are alike.
type block struct {
	name    string
	amounts []string
}

// blocks are the four sides, front and back together where they are marked alike.
func (c *card) blocks() (list []block) {
	if !c.isJob() {
		return nil
	}
	for _, p := range c.r.Pieces() {
		front, back := p.Front, p.Back
		if front.PivotMark == back.PivotMark && front.SlideMark == back.SlideMark {
			list = append(list, block{p.Name + ", front and back each", c.amountWords(front)})
			continue
		}
		list = append(list, block{p.Name + " front", c.amountWords(front)}, block{p.Name + " back", c.amountWords(back)})
	}
	return list
}

func (c *card) amountWords(p calc.SidePlan) []string {
	if words := report.SideWords(p, c.r.Scale); words != "" {
		return strings.Split(typeset.Capitalised(words), ", ")
	}
	return []string{"As it is"}
}

// amounts are the largest thing on the card: two thirds of the page are theirs, less what
// stands above. Pivot and slide stand on one line or on two, as they get larger.
func (c *card) amounts() {
	list := c.blocks()
	if len(list) == 0 {
		c.Paragraph(headSize, Bolder, c.r.NothingToTrace())
		return
	}
	const name = headSize
	room := (c.Size.Height-2*Margin)*2/3 - c.Y + Margin
	joined, apart := make([][]string, len(list)), make([][]string, len(list))
	for i, b := range list {
		joined[i], apart[i] = []string{strings.Join(b.amounts, ", ")}, b.amounts
	}
	room -= float64(len(list)) * (name*lineHeight + blockGap)
	lines, size := joined, c.largest(joined, room)
	tooWide := func(l []string) bool { return c.Surface.Width(size, Bolder, l[0]) > c.Size.Width-2*Margin }
	if s := c.largest(apart, room); s > size || slices.ContainsFunc(joined, tooWide) {
		lines, size = apart, s
	}
	for i, b := range list {
		c.Y += blockGap
		c.Say(name, Roman, b.name)
		for _, line := range lines[i] {
			c.Paragraph(size, Bolder, line)
		}
	}
	c.Y += blockGap
}

// blockGap is the white above a block, in millimetres.
const blockGap = 5.0

// largest is the largest type with which lines fit the page's width and a room.
func (c *card) largest(blocks [][]string, room float64) float64 {
	const most = 72.0
	count, size := 0, most
	for _, lines := range blocks {
		count += len(lines)
		for _, line := range lines {
			for size > 2*headSize && c.Surface.Width(size, Bolder, line) > c.Size.Width-2*Margin {
				size--
			}
		}
	}
	return max(2*headSize, min(size, room/float64(count)/lineHeight))
}

// outcome is what the finished garment measures.
func (c *card) outcome() {
	const size = 13
	for _, p := range c.r.Pieces() {
		if words := p.FinishedWords(c.r.Scale); words != "" && c.isJob() {
			c.Paragraph(size, Bolder, "Finished "+strings.ToLower(p.Name)+": "+words+".")
		}
	}
}

// mostNotes is how many lines of notes a card has room for.
const mostNotes = 6

// findings are what to check, what test garments showed, and the cautions.
func (c *card) findings() {
	c.Y += 2
	for _, f := range c.r.Findings {
		c.Paragraph(textSize, Roman, report.LevelWords[f.Level]+": "+f.Line())
	}
	notes := c.Broken(typeset.Plain(c.r.Sheet.Text(worksheets.Notes)), textSize, Roman, c.Size.Width-2*Margin)
	if len(notes) > mostNotes {
		notes = append(notes[:mostNotes], "... more in the worksheet")
	}
	for _, l := range notes {
		c.Say(textSize, Roman, l)
	}
	for _, l := range report.FittingLines(c.r) {
		c.Paragraph(textSize, Roman, "Fitting "+l)
	}
	for _, w := range wording.Cautions {
		c.Paragraph(textSize, Roman, w)
	}
}

// numbers are the measurements and the arithmetic, for who wants to follow it.
func (c *card) numbers() {
	c.Begin()
	c.Title("The arithmetic: " + c.r.Name())
	var given []string
	for _, k := range []worksheets.Key{worksheets.Bicep, worksheets.BicepOther, worksheets.Bust, worksheets.HighBust, worksheets.Waist,
		worksheets.Hip, worksheets.Elbow, worksheets.Wrist} {
		if l := c.r.Sheet.Reading(k); l.Known {
			given = append(given, forms.Fields[k].Words+" "+c.r.Scale.Number(l.Length))
		}
	}
	if len(given) > 0 {
		c.Paragraph(textSize, Roman, "Body: "+strings.Join(given, ", ")+" "+c.r.Scale.System.String()+".")
	}
	for _, t := range report.Tables(c.r) {
		c.Y += 2
		for _, row := range t {
			c.Say(leastSize, mono, strings.TrimRight(row, " "))
		}
	}
}

// steps are the steps at the table with boxes to tick, piece by piece. A step is not torn apart.
func (c *card) steps() {
	const box, indent = 3.0, 11.0
	steps := c.r.TraceSteps()
	if len(steps) == 0 {
		return
	}
	c.Begin()
	c.Title("At the table: " + c.r.Name())
	piece := trace.Piece(255)
	for i, s := range steps {
		lines := c.Broken(tracing.Sentence(s, c.r.Scale), stepSize, Roman, c.Size.Width-2*Margin-indent)
		height := float64(len(lines)) * stepSize * lineHeight
		if s.Piece != piece {
			piece = s.Piece
			c.Heading(tracing.Heading(s))
		}
		c.Keep(height)
		c.Box(Margin, c.Y+1.6, box, box, c.r.Done(s))
		c.Text(Margin+box+1.2, c.Y+stepSize*lineHeight, stepSize, Bolder, fmt.Sprint(i+1))
		for _, l := range lines {
			c.Y += stepSize * lineHeight
			c.Text(Margin+indent, c.Y, stepSize, Roman, l)
		}
		c.Y += 1.5
	}
}

// stepSize is the type of the steps, which are read at the table.
const stepSize = 11.0
