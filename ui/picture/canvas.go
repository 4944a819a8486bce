package picture

import (
	"math"
	"strings"
)

// canvas is a picture in braille cells: each cell holds two dots across and
// four down, which are square where a cell is twice as tall as wide. Text lies
// over the dots.
type canvas struct {
	width, height int // cells
	dots          []rune
	text          []rune
}

func newCanvas(width, height int) *canvas {
	return &canvas{width, height, make([]rune, width*height), make([]rune, width*height)}
}

// brailleDot is the bit of each dot of a cell, by row and column.
var brailleDot = [4][2]rune{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

// dot sets one dot; outside the picture it is nothing.
func (c *canvas) dot(x, y int) {
	if x < 0 || y < 0 || x >= 2*c.width || y >= 4*c.height {
		return
	}
	c.dots[y/4*c.width+x/2] |= brailleDot[y%4][x%2]
}

// line draws from one dot to another. A faint line leaves out dots: every is
// how far apart they are, 1 for a solid line. run carries the count from one
// line to the next, so that a curve of many short lines is evenly dotted.
func (c *canvas) line(x0, y0, x1, y1 float64, every int, run *int) {
	steps := int(math.Max(math.Abs(x1-x0), math.Abs(y1-y0))) + 1
	for i := range steps {
		t := float64(i) / float64(steps)
		if *run%every == 0 {
			c.dot(int(math.Round(x0+(x1-x0)*t)), int(math.Round(y0+(y1-y0)*t)))
		}
		*run++
	}
}

// write puts text over the cells from a place on, moved left where it would
// stick out, and cut where it is too long.
func (c *canvas) write(x, y int, s string) {
	runes := []rune(s)
	if y < 0 || y >= c.height {
		return
	}
	x = max(0, min(x, c.width-len(runes)))
	for i, r := range runes {
		if x+i < c.width {
			c.text[y*c.width+x+i] = r
		}
	}
}

// lines are the rows of the picture.
func (c *canvas) lines() []string {
	out := make([]string, c.height)
	for y := range c.height {
		var b strings.Builder
		for x := range c.width {
			i := y*c.width + x
			switch {
			case c.text[i] != 0:
				b.WriteRune(c.text[i])
			case c.dots[i] != 0:
				b.WriteRune(0x2800 + c.dots[i])
			default:
				b.WriteByte(' ')
			}
		}
		out[y] = strings.TrimRight(b.String(), " ")
	}
	return out
}
