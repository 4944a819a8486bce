package paper

import (
	"fmt"
	"math"

	"capscye/calc"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// The corner templates of a card: what turn and slide make of an underarm corner, true
// to scale, so that a traced corner is checked by laying one sheet on it.

// What a template shows of a seam below the corners, and at least below the line of
// the girth, in millimetres: enough to lay a ruler on.
const seamShown, belowLine = 30.0, 8.0

// cornerTemplate is the corner of one side by the marks, in millimetres from its pin, or
// of two sides that are alike.
type cornerTemplate struct {
	name     string
	points   []templatePoint
	old, new calc.Stroke // the seams below the old corner and below the new one
	girth    calc.Stroke
	line     string // the name of the girth's line
}

// templatePoint is a place with its name, above or below it, and right or left: corner and mark may lie
// close together.
type templatePoint struct {
	at          calc.Point
	words       string
	below, left bool
}

// templates print a template for every side that is altered, beside each other where
// they fit.
func (c *card) templates() {
	list := c.cornerTemplates()
	if len(list) == 0 {
		return
	}
	c.NewPage()
	c.Y = Margin
	c.Title("Corner templates: " + c.r.Name())
	for _, part := range c.Broken("True to scale, by the marks: print at 100 %. Lay the pin hole on the pin and the line on the line you drew: corners, mark and seams "+
		"must lie on yours. Outward is to the right (on one that lies sideways, down); turn a template over for the side that goes the other way.", textSize, Roman, c.Size.Width-2*Margin) {
		c.Say(textSize, Roman, part)
	}
	x, top, lowest := Margin, c.Y+3, c.Y+3
	for _, t := range list {
		w, h, sideways := t.size(c.Size)
		if w == 0 {
			c.Y = lowest
			c.Say(textSize, Roman, fmt.Sprintf("%s: no room for it on this paper; check that corner with a ruler, from the pin.", typeset.Capitalised(t.name)))
			lowest = c.Y + 2
			x, top = Margin, lowest
			continue
		}
		if x > Margin && x+w > c.Size.Width-Margin {
			x, top = Margin, lowest+4
		}
		if top+h > c.Size.Height-Margin {
			c.NewPage()
			x, top, lowest = Margin, Margin, Margin
		}
		c.template(t, x, top, sideways)
		x, lowest = x+w+6, max(lowest, top+h)
	}
	c.Y = lowest
}

// cornerTemplates are those of the sides that are altered and can be, alike ones once.
func (c *card) cornerTemplates() (list []cornerTemplate) {
	plan := c.r.Plan.AsMarked(c.r.Input)
	for _, s := range calc.Sides() {
		p, t, e := plan.Sides[s], plan.Turns[s], plan.Edges[s]
		if plan.Open || !t.Known || t.OutOfReach || p.Pivot == 0 && p.Slide == 0 {
			continue
		}
		if front := s - 1; s.Half() == calc.Back && e == plan.Edges[front] && t == plan.Turns[front] && len(list) > 0 {
			list[len(list)-1].name += ", " + wording.SubjectWords[s.Subject()]
			continue
		}
		list = append(list, templateOf(s, e, t, p))
	}
	return list
}

func templateOf(s calc.Side, e calc.Edge, t calc.Turn, p calc.SidePlan) cornerTemplate {
	corner, fresh := calc.Point{X: e.W, Y: -e.H}, calc.Point{X: t.CornerX, Y: t.CornerY}
	mark := calc.Point{X: e.W + p.Marked().Millimetres(), Y: -e.H}
	lower := fresh.Y < mark.Y // turned inward, the new corner lies below its mark
	out := cornerTemplate{name: wording.SubjectWords[s.Subject()], line: "bicep line", points: []templatePoint{
		{at: calc.Point{}, words: "pin hole"}, {at: corner, words: "old corner", below: p.Marked() < 0},
		{at: fresh, words: "new corner", below: lower, left: lower},
	}}
	if fresh != mark {
		out.points = append(out.points, templatePoint{at: mark, words: "last mark", below: !lower, left: lower})
	}
	line := e.LineAt()
	if !s.OfSleeve() {
		out.line = "bust line"
	}
	if at, ok := t.Outline.Find(calc.LinePoint); ok {
		out.points = append(out.points, templatePoint{at: at, words: "mark on the bust line", below: true})
	}
	low := math.Min(math.Min(corner.Y, fresh.Y)-seamShown, line.Y-belowLine)
	out.old = calc.Stroke{corner, e.SeamTo(low)}
	out.new = calc.Stroke{fresh}
	path := t.Outline.Points()
	if len(path) == 0 && p.Pivot >= 0 { // the length of the seam is not known, but it passes its mark
		path = []calc.Point{fresh, mark}
	}
	for i := 1; i < len(path); i++ {
		if path[i].Y < low { // cut off where the template ends
			part := (out.new[len(out.new)-1].Y - low) / (out.new[len(out.new)-1].Y - path[i].Y)
			out.new = append(out.new, out.new[len(out.new)-1].Toward(path[i], part))
			break
		}
		out.new = append(out.new, path[i])
	}
	right := line.X
	for _, p := range append(out.new, corner) {
		right = math.Max(right, p.X)
	}
	out.girth = calc.Stroke{{X: math.Min(0, line.X-20), Y: line.Y}, {X: right + 5, Y: line.Y}}
	return out
}

// bounds is the room that a template takes around its pin.
func (t cornerTemplate) bounds() (minX, maxX, minY, maxY float64) {
	minX, maxX, minY, maxY = -5.0, 5.0, 0.0, 3.0
	grow := func(p calc.Point) {
		minX, maxX, minY, maxY = math.Min(minX, p.X-3), math.Max(maxX, p.X+24), math.Min(minY, p.Y-1), math.Max(maxY, p.Y+3)
	}
	for _, p := range t.points {
		grow(p.at)
	}
	for _, s := range []calc.Stroke{t.old, t.new} {
		for _, p := range s {
			grow(p)
		}
	}
	return minX, maxX, minY, maxY
}

// templateHead is the room above a template for its name, in millimetres.
const templateHead = 7.0

// size is how wide and high a template lies on a paper, turned sideways where only so
// it has room; 0 where it has none.
func (t cornerTemplate) size(p Size) (w, h float64, sideways bool) {
	minX, maxX, minY, maxY := t.bounds()
	across, down := maxX-minX, maxY-minY
	room, depth := p.Width-2*Margin, p.Height-2*Margin-templateHead
	switch {
	case across <= room && down <= depth:
		return across, down + templateHead, false
	case down <= room && across <= depth:
		return down, across + templateHead, true
	}
	return 0, 0, false
}

// template draws one template with its upper left corner at a place.
func (c *card) template(t cornerTemplate, left, top float64, sideways bool) {
	minX, _, minY, maxY := t.bounds()
	at := func(p calc.Point) (x, y float64) {
		if sideways { // a quarter turn, outward down
			return left + p.Y - minY, top + templateHead + p.X - minX
		}
		return left + p.X - minX, top + templateHead + maxY - p.Y
	}
	c.Text(left, top+textSize*lineHeight, textSize, Bolder, typeset.Capitalised(t.name))
	stroke := func(s calc.Stroke, width float64, dashed bool) {
		for i := 1; i < len(s); i++ {
			x1, y1 := at(s[i-1])
			x2, y2 := at(s[i])
			c.Line(x1, y1, x2, y2, width, dashed)
		}
	}
	stroke(t.girth, 0.1, false)
	stroke(t.old, 0.15, true)
	stroke(t.new, 0.4, false)
	x, y := at(t.girth[0])
	c.Text(x+1, y-0.8, 6, Roman, t.line)
	const dot, arm = 0.5, 2.5
	for _, p := range t.points {
		x, y := at(p.at)
		c.Box(x-dot/2, y-dot/2, dot, dot, true)
		c.Line(x-arm, y, x+arm, y, 0.1, false)
		c.Line(x, y-arm, x, y+arm, 0.1, false)
		if p.below {
			y += 3.6
		}
		if p.left {
			x -= 2 + c.Surface.Width(6, Roman, p.words)
		}
		c.Text(x+1, y-0.8, 6, Roman, p.words)
	}
}
