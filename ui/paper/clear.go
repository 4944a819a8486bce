package paper

// box is a rectangle on paper, in millimetres; y goes down.
type box struct{ x, y, w, h float64 }

// meets tells that two boxes overlap.
func (b box) meets(o box) bool {
	return b.x < o.x+o.w && o.x < b.x+b.w && b.y < o.y+o.h && o.y < b.y+b.h
}

// crossed tells that a line from one place to another runs through the box: it does
// unless all four corners lie on one side of it, or it ends before.
func (b box) crossed(l [4]float64) bool {
	x1, y1, x2, y2 := l[0], l[1], l[2], l[3]
	if max(x1, x2) <= b.x || min(x1, x2) >= b.x+b.w || max(y1, y2) <= b.y || min(y1, y2) >= b.y+b.h {
		return false
	}
	above, below := false, false
	for _, corner := range [][2]float64{{b.x, b.y}, {b.x + b.w, b.y}, {b.x, b.y + b.h}, {b.x + b.w, b.y + b.h}} {
		side := (x2-x1)*(corner[1]-y1) - (y2-y1)*(corner[0]-x1)
		above, below = above || side > 0, below || side < 0
	}
	return above && below
}

// ascent is how far letters rise above their base line, in millimetres for a point of
// size, and a little more.
const ascent = 0.95 * 25.4 / 72

// clear is a part of a page with what may not be covered.
type clear struct {
	within box
	boxes  []box
	lines  [][4]float64
}

// place finds room for a name beside a place, as near to it as there is, and takes it.
// near tells that nothing can lie between.
func (c *clear) place(x, y, w, h float64) (b box, near bool) {
	const gap, rings = 1.0, 12
	for ring := range rings {
		out := gap + float64(ring)*h/2
		for _, at := range [][2]float64{
			{x + gap, y - out - h}, {x + gap, y + out}, {x - gap - w, y - out - h}, {x - gap - w, y + out},
			{x + out + 2, y - h/2}, {x - out - 2 - w, y - h/2},
		} {
			b = box{at[0], at[1], w, h}
			if c.isFree(b) {
				c.boxes = append(c.boxes, b)
				return b, ring < 2
			}
		}
	}
	c.boxes = append(c.boxes, b)
	return b, false
}

func (c *clear) isFree(b box) bool {
	w := c.within
	if b.x < w.x || b.y < w.y || b.x+b.w > w.x+w.w || b.y+b.h > w.y+w.h {
		return false
	}
	for _, o := range c.boxes {
		if b.meets(o) {
			return false
		}
	}
	for _, l := range c.lines {
		if b.crossed(l) {
			return false
		}
	}
	return true
}
