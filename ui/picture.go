package ui

import (
	"math"
	"strings"

	"capscye/calc"
)

// The smallest picture that shows anything.
const (
	smallestPictureWidth  = 24
	smallestPictureHeight = 8
)

// picture draws a piece: the old outline dotted, the new one solid, o the pin,
// x the mark, an arrow the way the corner goes, and pivot + slide by its corner.
// Line style and words carry the meaning; there is no colour.
func picture(d calc.Drawing, r report, name string, width, height int) []string {
	if width < smallestPictureWidth || height < smallestPictureHeight {
		return nil
	}
	caption := name + ": old dotted, new solid"
	if d.Assumed {
		caption = name + ", proportions assumed: old dotted, new solid"
	}
	if d.Approximate {
		caption = name + ", curve approximate: old dotted, new solid"
	}
	c := newCanvas(width, height-1)
	f := fit(d, c)
	for _, s := range d.Old {
		f.stroke(c, s, 3)
	}
	if !r.plan.Open {
		for _, s := range d.New {
			f.stroke(c, s, 1)
		}
	}
	f.label(c, d.Pin, "o", 0, 0)
	for _, corner := range d.Corners {
		f.corner(c, corner, r)
	}
	return append([]string{cut(caption, width)}, c.lines()...)
}

// tracedPictures are every piece one above the other, for the page of tracing.
func tracedPictures(r report, width int) []string {
	const height = 14
	width = min(width, 48)
	out := picture(calc.SleeveDrawing(r.input, r.plan), r, "Sleeve", width, height)
	for _, h := range calc.Halves() {
		out = append(append(out, ""), picture(calc.BodiceDrawing(r.input, r.plan, h), r, "Bodice "+subjectWords[h.Subject()], width, height)...)
	}
	return out
}

// pictures are the pieces for a given room, one above the other: the sleeve, and
// the front of the bodice where there is room for both. A bodice that changes
// alone comes first.
func pictures(r report, width, height int) []string {
	sleeve := func(height int) []string {
		return picture(calc.SleeveDrawing(r.input, r.plan), r, "Sleeve", width, height)
	}
	bodice := func(height int) []string {
		return picture(calc.BodiceDrawing(r.input, r.plan, calc.Front), r, "Bodice front", width, height)
	}
	first, second := sleeve, bodice
	if s := r.plan.Sides; s[calc.SleeveFront].Total == 0 && s[calc.SleeveBack].Total == 0 && s[calc.BodiceFront].Total != 0 {
		first, second = bodice, sleeve
	}
	if height >= 2*smallestPictureHeight {
		return append(first(height/2), second(height-height/2)...)
	}
	return first(height)
}

// frame places millimetres on a canvas: the same scale both ways, the drawing
// in the middle.
type frame struct{ scale, left, top float64 }

// fit finds the frame in which everything of a drawing is seen.
func fit(d calc.Drawing, c *canvas) frame {
	minX, maxX, minY, maxY := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, strokes := range [][]calc.Stroke{d.Old, d.New} {
		for _, s := range strokes {
			for _, p := range s {
				minX, maxX = min(minX, p.X), max(maxX, p.X)
				minY, maxY = min(minY, p.Y), max(maxY, p.Y)
			}
		}
	}
	dotsX, dotsY := float64(2*c.width-1), float64(4*c.height-1)
	scale := min(dotsX/max(maxX-minX, 1), dotsY/max(maxY-minY, 1))
	return frame{scale, minX - (dotsX/scale-(maxX-minX))/2, maxY + (dotsY/scale-(maxY-minY))/2}
}

func (f frame) at(p calc.Point) (x, y float64) {
	return (p.X - f.left) * f.scale, (f.top - p.Y) * f.scale
}

func (f frame) stroke(c *canvas, s calc.Stroke, every int) {
	run := 0
	for i := 1; i < len(s); i++ {
		x0, y0 := f.at(s[i-1])
		x1, y1 := f.at(s[i])
		c.line(x0, y0, x1, y1, every, &run)
	}
}

// label writes text at a point, moved by some cells.
func (f frame) label(c *canvas, p calc.Point, text string, dx, dy int) {
	x, y := f.at(p)
	c.write(int(math.Round(x))/2+dx, int(math.Round(y))/4+dy, text)
}

// corner marks an underarm corner: the mark, the way the corner goes, and the
// name and the amounts of its side, inside the piece.
func (f frame) corner(c *canvas, k calc.Corner, r report) {
	side := r.plan.Sides[k.Side]
	name := map[calc.Half]string{calc.Front: "FRONT", calc.Back: "BACK"}[k.Side.Half()]
	amounts, _, _ := strings.Cut(r.marksShort(side), " "+r.scale.Ruler.System().String())
	if !r.plan.Open && side.Total != 0 {
		f.label(c, k.Mark, "x", 0, 0)
		f.label(c, k.New, arrow(k), 0, -1)
	}
	dx, dy := -max(len(name), len(amounts))-2, 1 // the front of a sleeve and a bodice piece lie left of their corner
	if k.Old.X < 0 {
		dx = 3
		if x, _ := f.at(k.Old); float64(c.width)-x < labelsNeed { // no room beside the front's
			dy = 3
		}
	}
	f.label(c, k.Old, name, dx, dy)
	f.label(c, k.Old, amounts, dx, dy+1)
}

// labelsNeed is how many cells the words of front and back need side by side.
const labelsNeed = 26

// arrow is the way the corner goes: up or down with the turn, else outward or
// inward with the slide.
func arrow(k calc.Corner) string {
	const still = 0.5 // half a millimetre is no way to go
	switch dx, dy := math.Abs(k.New.X)-math.Abs(k.Old.X), k.New.Y-k.Old.Y; {
	case dy > still:
		return "^"
	case dy < -still:
		return "v"
	case dx > 0 == (k.Old.X > 0):
		return ">"
	}
	return "<"
}
