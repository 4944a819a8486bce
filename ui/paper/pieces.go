package paper

import (
	"fmt"

	"capscye/calc"
	"capscye/calc/trace"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// The pieces as they lie before and after, all of a garment at one stated scale.

// drawn is a piece with its name.
type drawn struct {
	name string
	trace.Drawing
	minX, maxX, minY, maxY float64 // millimetres of the pattern
}

func (d drawn) width(scale float64) float64  { return (d.maxX - d.minX) / scale }
func (d drawn) height(scale float64) float64 { return (d.maxY - d.minY) / scale }

// scales are the scales that drawings may be stated in.
var scales = []float64{2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50}

// wordsBeside is the room in millimetres that the words beside a corner take, captionRoom
// what stands over a piece.
const wordsBeside, captionRoom = 38.0, 9.0

// pieces are the sleeve, and front and back of the bodice beside each other below it.
func (c *card) pieces() {
	sleeve := drawn{name: "Sleeve", Drawing: trace.SleeveDrawing(c.r.Input, c.r.Plan, trace.AllAltered)}
	list := []*drawn{&sleeve}
	for _, h := range calc.Halves() {
		list = append(list, &drawn{name: "Bodice " + wording.SubjectWords[h.Subject()], Drawing: trace.BodiceDrawing(c.r.Input, c.r.Plan, h, trace.AllAltered)})
	}
	assumed := false
	for _, d := range list {
		d.minX, d.maxX, d.minY, d.maxY = report.Extent(d.Drawing)
		assumed = assumed || d.Assumed
	}
	front, back := list[1], list[2]
	c.Begin()
	c.Title("The pieces: " + c.r.Name())
	width, height := c.Size.Width-2*Margin, c.Size.Height-Margin-c.Y-2*textSize*lineHeight
	scale := scales[len(scales)-1]
	for _, s := range scales {
		across := max(sleeve.width(s)+2*wordsBeside, front.width(s)+back.width(s)+2*wordsBeside+4)
		down := sleeve.height(s) + max(front.height(s), back.height(s)) + 2*captionRoom
		if across <= width && down <= height {
			scale = s
			break
		}
	}
	words := fmt.Sprintf("All at 1 : %g; dashed before, solid after. A cross is a mark.", scale)
	if assumed {
		words += " What was not measured is drawn in usual proportions."
	}
	c.Paragraph(textSize, Roman, words)
	top := c.Y
	c.piece(sleeve, Margin+wordsBeside, top, scale)
	top += captionRoom + sleeve.height(scale)
	c.piece(*front, Margin, top, scale)
	c.piece(*back, Margin+front.width(scale)+wordsBeside+4, top, scale)
	c.Y = top + captionRoom + max(front.height(scale), back.height(scale))
}

// piece draws one piece under its caption: old dashed, new solid, pin, marks and amounts.
func (c *card) piece(d drawn, left, top, scale float64) {
	c.Text(left, top+textSize*lineHeight, textSize, Bolder, d.name)
	top += captionRoom
	at := func(p calc.Point) (x, y float64) { return left + (p.X-d.minX)/scale, top + (d.maxY-p.Y)/scale }
	for _, s := range d.Old {
		c.stroke(s, at, 0.15, true)
	}
	c.stroke(d.Girth, at, 0.08, false)
	if c.isJob() && !d.Unreached {
		for _, s := range d.New {
			c.stroke(s, at, 0.5, false)
		}
	}
	x, y := at(d.Pin)
	c.Box(x-0.8, y-0.8, 1.6, 1.6, true)
	if len(d.Girth) > 1 {
		line := wording.GirthLine(d.Drawing)
		x, y := at(d.Girth[0].Toward(d.Girth[1], 0.5))
		c.Text(x-c.Surface.Width(leastSize, Roman, line)/2, y-1, leastSize, Roman, line)
	}
	for _, k := range d.Corners {
		c.corner(k, left, left+d.width(scale), at)
	}
}

// placing is where the points of a pattern lie on paper.
type placing func(calc.Point) (x, y float64)

// segments are the straight parts of a stroke.
func (at placing) segments(s trace.Stroke) (list [][4]float64) {
	for i := 1; i < len(s); i++ {
		x1, y1 := at(s[i-1])
		x2, y2 := at(s[i])
		list = append(list, [4]float64{x1, y1, x2, y2})
	}
	return list
}

// stroke draws a stroke of a pattern.
func (c *card) stroke(s trace.Stroke, at placing, thick float64, dashed bool) {
	for _, l := range at.segments(s) {
		c.Line(l[0], l[1], l[2], l[3], thick, dashed)
	}
}

// corner marks a corner, and names its side and amounts beside the piece, outside
// everything that is drawn of it.
func (c *card) corner(k trace.Corner, left, right float64, at placing) {
	mx, my := at(k.Mark)
	c.Line(mx-1, my-1, mx+1, my+1, 0.25, false)
	c.Line(mx-1, my+1, mx+1, my-1, 0.25, false)
	for _, fits := range k.Fits {
		x, y := at(fits)
		c.Line(x-1, y, x+1, y, 0.25, false)
		c.Line(x, y-1, x, y+1, 0.25, false)
	}
	for _, bend := range k.Bends {
		x, y := at(bend)
		c.Box(x-0.6, y-0.6, 1.2, 1.2, false)
	}
	words := []string{typeset.Capitalised(wording.SubjectWords[k.Side.Half().Subject()])}
	p := c.r.Plan.Sides[k.Side]
	if p.PivotMark != 0 && c.isJob() {
		words = append(words, "pivot "+wording.InOrOut(p.PivotMark, c.r.Scale))
	}
	if p.SlideMark != 0 && c.isJob() {
		words = append(words, "slide "+wording.InOrOut(p.SlideMark, c.r.Scale))
	}
	for i, w := range words {
		face := Roman
		if i > 0 {
			face = Bolder
		}
		x := right + 2
		if k.Old.X < 0 {
			x = left - 2 - c.Surface.Width(leastSize, face, w)
		}
		c.Text(x, my+leastSize*lineHeight*float64(i), leastSize, face, w)
	}
}
