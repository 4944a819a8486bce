package paper

import (
	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// The marking gauge of a card, true to scale.

// gauge is a page of strips to cut out and lay on the paper, true to
// scale, and squares to check the printer with.
func (c *card) gauge() {
	c.Begin()
	c.Title("Marking gauge: " + c.r.Name())
	c.Paragraph(textSize, Roman, "True to scale: print at 100 %, and measure the squares before you trust a strip. Cut along the dashed lines; lay the 0 of a side on its underarm corner.")
	c.Y += 4
	for _, s := range c.strips() {
		c.strip(s)
	}
	c.square(Margin, 2*units.Inch, "2 in")
	c.square(Margin+65, 5*units.Centimetre, "5 cm")
	c.Y += (2 * units.Inch).Millimetres() + 2
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
		p := c.r.Plan.Sides[s]
		if !c.isJob() || !p.Altered() {
			continue
		}
		amounts := [2]units.Length{p.PivotMark, p.SlideMark}
		if i, ok := bySides[amounts]; ok {
			list[i].name += ", " + wording.SubjectWords[s.Subject()]
			continue
		}
		bySides[amounts] = len(list)
		one := strip{name: wording.SubjectWords[s.Subject()], marks: []stripMark{{0, "0"}}}
		if p.PivotMark != 0 {
			one.marks = append(one.marks, stripMark{p.PivotMark, "pivot " + wording.InOrOut(p.PivotMark, c.r.Scale)})
		}
		if p.SlideMark != 0 {
			one.marks = append(one.marks, stripMark{p.Marked(), "slide " + wording.InOrOut(p.SlideMark, c.r.Scale)})
		}
		list = append(list, one)
	}
	for _, k := range []worksheets.Key{worksheets.SleeveAllowance, worksheets.BodiceAllowance} {
		_, printed := c.r.Sheet.Inherits(k) // that one's strip serves both
		if l := c.r.Sheet.Reading(k); l.Known && l.Length > 0 && !printed {
			list = append(list, strip{forms.Fields[k].Words, []stripMark{{0, "0"}, {l.Length, wording.MarkedOff(l.Length, c.r.Scale)}}})
		}
	}
	return list
}

// strip draws one strip, its name and words inside the line that it is cut
// along. Outward is to the right. A mark is a thin bar whose middle is the place.
func (c *card) strip(s strip) {
	const bar, inside, row = 0.2, 3.0, 4.2
	low, high := units.Length(0), units.Length(0)
	for _, m := range s.marks {
		low, high = min(low, m.at), max(high, m.at)
	}
	tall := 8 + row*float64(len(s.marks)+1)
	length := (high - low).Millimetres() + 2*inside
	words := c.Surface.Width(textSize, Bolder, typeset.Capitalised(s.name))
	for _, m := range s.marks {
		words = max(words, (m.at-low).Millimetres()+c.Surface.Width(leastSize, Roman, m.words))
	}
	length = max(length, words+2*inside)
	top := c.Y + 1.5
	if length > c.Size.Width-2*Margin || top+tall > c.Size.Height-Margin {
		c.Paragraph(textSize, Roman, typeset.Capitalised(s.name)+": no room for it on this paper; measure it with the ruler.")
		return
	}
	for _, edge := range [][4]float64{ // dashed: to be cut along, and no mark
		{Margin, top, Margin + length, top}, {Margin, top + tall, Margin + length, top + tall},
		{Margin, top, Margin, top + tall}, {Margin + length, top, Margin + length, top + tall},
	} {
		c.Line(edge[0], edge[1], edge[2], edge[3], 0.15, true)
	}
	c.Text(Margin+inside, top+row, textSize, Bolder, typeset.Capitalised(s.name))
	zero := Margin + inside - low.Millimetres()
	for i, m := range s.marks {
		x := zero + m.at.Millimetres()
		c.Box(x-bar/2, top+tall-5, bar, 5, true)
		c.Text(x+0.8, top+row+row*float64(i+1), leastSize, Roman, m.words)
		c.Line(x, top+1.2+row*float64(i+1), x, top+tall-5, 0.05, true)
	}
	c.Y = top + tall + 2
}

// square is a square to check the printer with.
func (c *card) square(x float64, side units.Length, words string) {
	mm := side.Millimetres()
	c.Keep(mm + 2)
	c.Box(x, c.Y+2, mm, mm, false)
	c.Text(x+2, c.Y+6, textSize, Roman, words+" square: measure it")
}
