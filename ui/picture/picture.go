// Package picture draws a piece in dots.
package picture

import (
	"math"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/calc/trace"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// The smallest picture that shows anything.
const (
	smallestWidth  = 24
	smallestHeight = 8
)

// draw draws a piece: the old outline dotted, the new one solid, the line of the
// girth thin and named, o the pin, x the marks, where the new seam bends, + where it is
// drawn out to fit, an arrow the way the corner goes, and front and back with their
// pivot + slide. Line style and words carry the meaning; there is no colour.
func draw(d trace.Drawing, r report.Report, name string, width, height int) []string {
	if width < smallestWidth || height < smallestHeight {
		return nil
	}
	out := captions(d, r, name, width)
	r.Did(report.DrewPicture)
	c := newCanvas(width, height-len(out))
	f := fit(d, c, labelRoom(d, width))
	f.stroke(c, d.Girth, 5)
	for _, s := range d.Old {
		f.stroke(c, s, 3)
	}
	if !r.Plan.Open && !d.Unreached {
		for _, s := range d.New {
			f.stroke(c, s, 1)
		}
	}
	f.girthName(c, d)
	if anyMarked(d) {
		f.label(c, d.Pin, "o", 0, 0)
	}
	for _, corner := range d.Corners {
		f.corner(c, corner, d, r)
	}
	if labelRoom(d, width) == 0 && anyMarked(d) {
		c.write(0, c.height-1, amountsLine(d, r))
	}
	return append(out, c.lines()...)
}

// captions are one line or two of what is seen.
func captions(d trace.Drawing, r report.Report, name string, width int) []string {
	lines := "old dotted, new solid"
	switch {
	case r.Plan.Open || !anyMarked(d):
		lines = "as it is"
	case d.Unreached:
		lines = "as it is; it cannot be altered so"
	}
	if !d.Unreached && slices.ContainsFunc(d.Corners, func(k trace.Corner) bool { return len(k.Fits) > 0 }) {
		lines += ", + drawn out to fit"
	}
	out := []string{name + ": " + lines}
	if len(out[0]) > width {
		out[0] = typeset.Cut(name, width)
	}
	switch {
	case d.Assumed:
		out = append(out, "proportions assumed")
	case d.Approximate:
		out = append(out, "curve approximate")
	}
	return out
}

// anyMarked tells that there is anything on the paper yet.
func anyMarked(d trace.Drawing) bool {
	return slices.ContainsFunc(d.Corners, func(k trace.Corner) bool { return k.Marked })
}

// labelRoom is how many cells beside the piece the words of a side take; none
// where the picture is too narrow for them.
func labelRoom(d trace.Drawing, width int) int {
	const words = 11
	if width < 20+len(d.Corners)*words {
		return 0
	}
	return words
}

// amountsLine names the amounts below a picture that has no room beside it.
func amountsLine(d trace.Drawing, r report.Report) string {
	var parts []string
	for _, k := range d.Corners {
		parts = append(parts, wording.HalfNames[k.Side.Half()][:1]+" "+r.Amounts(k.Side))
	}
	return strings.Join(parts, "  ")
}

// OfStep is the piece of a step at the table as it lies then.
func OfStep(s trace.Step, r report.Report, width, height int) []string {
	var d trace.Drawing
	var name string
	switch s.Piece {
	case trace.SleevePiece:
		d, name = trace.SleeveDrawing(r.Input, r.Plan, s.Stages), "Sleeve"
	case trace.BodiceFrontPiece:
		d, name = trace.BodiceDrawing(r.Input, r.Plan, calc.Front, s.Stages), "Bodice front"
	case trace.BodiceBackPiece:
		d, name = trace.BodiceDrawing(r.Input, r.Plan, calc.Back, s.Stages), "Bodice back"
	default:
		return nil
	}
	r.Did(report.DrewCurves)
	return draw(d, r, name, min(width, 60), height)
}

// Both are the pieces for a given room, one above the other, with a remark
// behind their names: the sleeve, and the front of the bodice where there is room
// for both. A bodice that changes alone comes first.
func Both(r report.Report, remark string, width, height int) []string {
	sleeve := func(height int) []string {
		return draw(r.Sleeve(), r, "Sleeve"+remark, width, height)
	}
	bodice := func(height int) []string {
		return draw(r.Bodice(), r, "Bodice front"+remark, width, height)
	}
	first, second := sleeve, bodice
	if s := r.Plan.Sides; s[calc.SleeveFront].Total == 0 && s[calc.SleeveBack].Total == 0 && s[calc.BodiceFront].Total != 0 {
		first, second = bodice, sleeve
	}
	if height >= 2*smallestHeight {
		return append(first(height/2), second(height-height/2)...)
	}
	return first(height)
}

// frame places millimetres on a canvas: the same scale both ways, the drawing
// in the middle.
type frame struct{ scale, left, top float64 }

// fit finds the frame in which everything of a drawing is seen, with room for
// the words beside it.
func fit(d trace.Drawing, c *canvas, room int) frame {
	minX, maxX, minY, maxY := report.Extent(d)
	left := room // the back of a sleeve has its words on the left
	if len(d.Corners) < 2 {
		left = 0
	}
	tall := c.height
	if room == 0 && len(d.Corners) > 0 {
		tall-- // the amounts stand in the last line
	}
	dotsX, dotsY := float64(2*(c.width-room-left)-1), float64(4*tall-1)
	scale := min(dotsX/max(maxX-minX, 1), dotsY/max(maxY-minY, 1))
	return frame{scale, minX - (dotsX/scale-(maxX-minX))/2 - 2*float64(left)/scale, maxY + (dotsY/scale-(maxY-minY))/2}
}

func (f frame) at(p calc.Point) (x, y float64) {
	return (p.X - f.left) * f.scale, (f.top - p.Y) * f.scale
}

func (f frame) stroke(c *canvas, s trace.Stroke, every int) {
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

// girthName names the line of the girth where there is room inside the piece.
func (f frame) girthName(c *canvas, d trace.Drawing) {
	if len(d.Girth) < 2 {
		return
	}
	name := wording.GirthLine(d)
	x0, y := f.at(d.Girth[0])
	x1, _ := f.at(d.Girth[1])
	if cells := int(math.Abs(x1-x0) / 2); cells > len(name)+3 {
		c.write(int(math.Round(x0+x1))/4-len(name)/2, int(math.Round(y))/4, name)
	}
}

// corner marks an underarm corner: the mark, the way the corner goes, and the
// name and the amounts of its side, outside the piece where there is room.
func (f frame) corner(c *canvas, k trace.Corner, d trace.Drawing, r report.Report) {
	side := r.Plan.Sides[k.Side]
	name := wording.HalfNames[k.Side.Half()]
	if !r.Plan.Open && !d.Unreached && k.Marked && (side.Pivot != 0 || side.Slide != 0) {
		for _, bend := range k.Bends {
			f.label(c, bend, "x", 0, 0)
		}
		for _, fits := range k.Fits {
			f.label(c, fits, "+", 0, 0)
		}
		f.label(c, k.Mark, "x", 0, 0)
		if k.New != k.Old {
			f.label(c, k.New, arrow(k), 0, -1)
		}
	}
	outermost := math.Max(math.Abs(k.Old.X), math.Max(math.Abs(k.New.X), math.Abs(k.Mark.X)))
	room := labelRoom(d, c.width)
	if room == 0 {
		dx := -2
		if k.Old.X < 0 {
			dx = 2
		}
		f.label(c, k.Old, name[:1], dx, 1)
		return
	}
	words := []string{name}
	if k.Marked {
		words = append(words, r.Amounts(k.Side))
	}
	for i, words := range words {
		if k.Old.X < 0 {
			f.label(c, calc.Point{X: -outermost, Y: k.Old.Y}, words, -len(words)-1, 1+i)
		} else {
			f.label(c, calc.Point{X: outermost, Y: k.Old.Y}, words, 2, 1+i)
		}
	}
}

// arrow is the way the corner goes: up or down with the turn, else outward or
// inward with the slide.
func arrow(k trace.Corner) string {
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
