package paper

import (
	"fmt"
	"math"

	"capscye/calc"
	"capscye/calc/trace"
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
	old, new trace.Stroke // the seams below the old corner and below the new one
	girth    trace.Stroke
	line     string // the name of the girth's line
}

// templatePoint is a place with its name.
type templatePoint struct {
	at    calc.Point
	words string
}

// templates print a template for every side that is altered, beside each other where
// they fit.
func (c *card) templates() {
	list := c.cornerTemplates()
	if len(list) == 0 {
		return
	}
	c.Heading("Corner templates")
	c.Paragraph(textSize, Roman, "True to scale, by the marks: print at 100 %. Lay the pin hole on the pin and the line on the line you drew: corners, mark and seams "+
		"must lie on yours. Outward is to the right (on one that lies sideways, down); turn a template over for the side that goes the other way.")
	x, top, lowest := Margin, c.Y+3, c.Y+3
	for _, t := range list {
		w, h, sideways := t.size(c.Size)
		if w == 0 {
			c.Y = lowest
			c.Paragraph(textSize, Roman, fmt.Sprintf("%s: no room for it on this paper; check that corner with a ruler, from the pin.", typeset.Capitalised(t.name)))
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
		if !c.isJob() || !t.Known || t.OutOfReach || p.Pivot == 0 && p.Slide == 0 {
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
	out := cornerTemplate{name: wording.SubjectWords[s.Subject()], line: "bicep line", points: []templatePoint{
		{at: calc.Point{}, words: "pin hole"}, {at: corner, words: "old corner"},
		{at: fresh, words: "new corner"},
	}}
	if fresh != mark {
		out.points = append(out.points, templatePoint{at: mark, words: "last mark"})
	}
	line := e.LineAt()
	if !s.OfSleeve() {
		if out.line = "level line"; e.Line > 0 {
			out.line = "bust line"
		}
	}
	if at, ok := t.Outline.Find(calc.LinePoint); ok {
		out.points = append(out.points, templatePoint{at: at, words: "mark on the bust line"})
	}
	low := math.Min(math.Min(corner.Y, fresh.Y)-seamShown, line.Y-belowLine)
	out.old = trace.Stroke{corner, e.SeamTo(low)}
	out.new = trace.Stroke{fresh}
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
	out.girth = trace.Stroke{{X: math.Min(0, line.X-20), Y: line.Y}, {X: right + 5, Y: line.Y}}
	return out
}

// bounds is the room that a template takes around its pin.
func (t cornerTemplate) bounds() (minX, maxX, minY, maxY float64) {
	minX, maxX, minY, maxY = -5.0, 5.0, 0.0, 3.0
	grow := func(p calc.Point) {
		minX, maxX, minY, maxY = math.Min(minX, p.X-3), math.Max(maxX, p.X+nameRoom), math.Min(minY, p.Y-1), math.Max(maxY, p.Y+3)
	}
	for _, p := range t.points {
		grow(p.at)
	}
	for _, s := range []trace.Stroke{t.old, t.new} {
		for _, p := range s {
			grow(p)
		}
	}
	return minX, maxX, minY, maxY
}

// nameRoom is the room beside a point for its name, in millimetres.
const nameRoom = 24.0

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
	c.stroke(t.girth, at, 0.1, false)
	c.stroke(t.old, at, 0.15, true)
	c.stroke(t.new, at, 0.4, false)
	c.templateNames(t, at)
}

// templateNames mark the points of a template, and name each where the name covers no
// other, no point and no line.
func (c *card) templateNames(t cornerTemplate, at placing) {
	const dot, arm, size = 0.5, 2.5, leastSize
	free := clear{within: box{Margin, Margin, c.Size.Width - 2*Margin, c.Size.Height - 2*Margin}}
	for _, s := range []trace.Stroke{t.girth, t.old, t.new} {
		free.lines = append(free.lines, at.segments(s)...)
	}
	for _, p := range t.points {
		x, y := at(p.at)
		c.Box(x-dot/2, y-dot/2, dot, dot, true)
		c.Line(x-arm, y, x+arm, y, 0.1, false)
		c.Line(x, y-arm, x, y+arm, 0.1, false)
		free.boxes = append(free.boxes, box{x - arm, y - arm, 2 * arm, 2 * arm})
	}
	for _, p := range append(t.points, templatePoint{t.girth[0], t.line}) {
		x, y := at(p.at)
		b, near := free.place(x, y, c.Surface.Width(size, Roman, p.words), size*lineHeight)
		if !near { // say by a line which point it is
			c.Line(x, y, b.x+b.w/2, b.y+b.h/2, 0.05, true)
		}
		c.Text(b.x, b.y+ascent*size, size, Roman, p.words)
	}
}
