package tracing_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
)

// Pattern pieces as somebody measured them. A worksheet does not say everything about
// a pattern; what it leaves out is made up here, since a pattern has a cap height
// whether it was measured or not.

// half is one side of a piece of the pattern, at rest: its pin at the origin.
type half struct {
	name      string // "sleeve front"
	bodice    bool
	curve     line    // the seam line of half a cap or half an armhole, pin to underarm point
	below     line    // the seam line below it, past the end that it was measured to where the piece is longer
	seam      float64 // length of the seam below, to that end
	hip       float64 // level of the hip line, of a piece that reaches it; else 0
	middle    float64 // where grain line or centre lies
	elbow     float64 // down the seam below a cap
	halfLeant bool    // the width at its end was measured and not its length, so that nobody can know how it leans
	takenOff  float64 // dart, tuck, pleat or overlap that the tape lay over
	allowance float64
	dart      string // the seam in which it starts; "any" where nobody told, "none" where nothing says that there is one
}

// piece is "sleeve" or "bodice".
func (h *half) piece() string {
	piece, _, _ := strings.Cut(h.name, " ")
	return piece
}

func (h *half) underarm() point { return h.curve.last() }
func (h *half) end() point      { return h.below.along(h.seam) }

// pattern is every piece, and where on it the girths were measured.
type pattern struct {
	sleeve, bodice [2]*half // front, back
	bustDown       float64  // down the side seam line
	loose, guessed bool     // leaning as it likes; partly made up
}

// How far a hip line lies below a waist, and a hem below that: made up, as long as
// there is room for both.
const waistToHip, hipToHem = 8 * 25.4, 2 * 25.4

// cutter cuts a pattern that a worksheet was measured on; the same worksheet gives the
// same pattern. A seam of which one end only was measured hangs straight, as the method
// takes it; on a loose pattern it leans as it likes.
type cutter struct {
	sheet
	rnd     *rand.Rand
	loose   bool
	guessed bool // something was made up
}

func cut(s sheet, loose bool) *pattern {
	c := &cutter{sheet: s, rnd: rand.New(rand.NewPCG(7, uint64(len(s)))), loose: loose}
	p := &pattern{loose: loose}
	p.bustDown, _ = s.mm("bodice.bust_down")
	front, back := c.bustWidths()
	p.sleeve = [2]*half{c.sleeveHalf("front"), c.sleeveHalf("back")}
	p.bodice = [2]*half{c.bodiceHalf("front", front, p.bustDown), c.bodiceHalf("back", back, p.bustDown)}
	p.guessed = c.guessed
	return p
}

// measured is a length of the worksheet, or one made up.
func (c *cutter) measured(key string, low, high float64) float64 {
	if mm, ok := c.mm(key); ok {
		return mm
	}
	c.guessed = true
	return low + (high-low)*c.rnd.Float64()
}

// leaning is the angle of a seam that goes in by so much over its length.
func (c *cutter) leaning(in, over float64, known bool) float64 {
	if known {
		return math.Asin(in / over)
	}
	c.guessed = true
	if c.loose {
		return -0.05 + 0.2*c.rnd.Float64()
	}
	return 0
}

// sleeveWidth is a width of the sleeve without what the tape had too much.
func (c *cutter) sleeveWidth(key string) (mm float64, ok bool) {
	mm, ok = c.mm(key)
	if allowance, _ := c.mm("sleeve.allowance"); c.sheet["sleeve.measured"] == "edge" {
		mm -= 2 * allowance
	}
	return mm, ok
}

// sleeveHalf: half the width out, the cap height down, leaning in to half the hem.
func (c *cutter) sleeveHalf(side string) *half {
	h := &half{name: "sleeve " + side}
	h.allowance, _ = c.mm("sleeve.allowance")
	width, ok := c.sleeveWidth("sleeve.width")
	if !ok {
		width = 340
	}
	w := width / 2
	low, high := 0.35*width, 0.4*width
	if half := c.shorter("sleeve.cap_front", "sleeve.cap_back"); half > 0 {
		low, high = c.rise(half, w)
	}
	tall := c.measured("sleeve.cap_height", low, high)
	low, high = 120, 160
	if c.sheet["sleeve.length"] == "long" {
		low, high = 420, 460
	}
	h.seam = c.measured("sleeve.underarm_seam", low, high)
	h.elbow = c.elbow(h.seam)
	hem, leans := c.sleeveWidth("sleeve.hem_width")
	_, long := c.mm("sleeve.underarm_seam")
	h.halfLeant = leans && !long
	corner := point{w, -tall}
	h.below = line{corner, hung(corner, h.seam, c.leaning(w-hem/2, h.seam, leans))}
	half, ok := c.mm("sleeve.cap_" + side)
	h.curve = bend(half, ok, func(k float64) [4]point {
		return [4]point{{}, {k * w, 0}, {w - k*w, -tall}, corner}
	})
	return h
}

// shorter is the shorter of two lengths, or the one that was measured; 0 for none.
func (c *cutter) shorter(keys ...string) (least float64) {
	for _, key := range keys {
		if mm, ok := c.mm(key); ok && (least == 0 || mm < least) {
			least = mm
		}
	}
	return least
}

// rise is about how far a curve of that length rises over a width: so much that it is
// neither straight nor square.
func (c *cutter) rise(length, width float64) (low, high float64) {
	straight := math.Sqrt(max(math.Pow(0.95*length, 2)-width*width, 1))
	return 0.97 * straight, straight
}

// hung is the end of a straight seam that leans in.
func hung(from point, length, lean float64) point {
	return from.plus(point{-math.Sin(lean), -math.Cos(lean)}.times(length))
}

// elbow lies where the sleeve is as wide as it was measured there; half way down, where
// that does not tell.
func (c *cutter) elbow(seam float64) float64 {
	width, _ := c.sleeveWidth("sleeve.width")
	elbow, ok := c.sleeveWidth("sleeve.elbow_width")
	hem, narrows := c.sleeveWidth("sleeve.hem_width")
	if ok && narrows && width > elbow && elbow > hem {
		return seam * (width - elbow) / (width - hem)
	}
	return seam / 2
}

// ofBodice is where the bodice tells how it was measured: where it does not, it was
// measured as the sleeve.
func (c *cutter) ofBodice(name string) (key string) {
	if c.sheet["bodice."+name] == "" {
		return "sleeve." + name
	}
	return "bodice." + name
}

// bodiceWidth is a width of half a front or half a back without its allowances, and
// with what a dart takes up: it is that of the paper.
func (c *cutter) bodiceWidth(key string) (mm float64, ok bool) {
	mm, ok = c.mm(key)
	if c.sheet[c.ofBodice("measured")] == "edge" {
		crossings := 1.0
		allowance, _ := c.mm(c.ofBodice("allowance"))
		if n := c.sheet["bodice.crossings"]; n != "" {
			fmt.Sscan(n, &crossings)
		}
		mm -= crossings * allowance
	}
	return mm, ok
}

// bustWidths are the widths of half a front and half a back on the paper.
func (c *cutter) bustWidths() (front, back float64) {
	if printed, ok := c.mm("bodice.finished_bust"); ok {
		return printed * 0.26, printed * 0.24
	}
	front, ok := c.bodiceWidth("bodice.front")
	if !ok {
		front = 250
	}
	back, ok = c.bodiceWidth("bodice.back")
	if !ok {
		back = 240
	}
	return front, back
}

// bodiceHalf: the underarm point where it was measured from the pin, and the centre as
// far from the seam as the piece is wide at its bust line.
func (c *cutter) bodiceHalf(side string, width, down float64) *half {
	h := &half{name: "bodice " + side, bodice: true}
	h.allowance, _ = c.mm(c.ofBodice("allowance"))
	if _, printed := c.mm("bodice.finished_bust"); !printed {
		h.takenOff, _ = c.mm("bodice.take_off_" + side)
	}
	if h.dart = c.is("bodice.dart_"+side, "any"); h.dart == "any" && h.takenOff == 0 {
		h.dart = "none"
	}
	corner := c.armholeCorner(side)
	h.seam = c.measured("bodice.side_seam", 190, 230)
	waist, leans := c.bodiceWidth("bodice.waist_" + side)
	_, printed := c.mm("bodice.finished_bust")
	_, long := c.mm("bodice.side_seam")
	h.halfLeant = leans && !long
	lean := c.leaning(width-waist, h.seam-down, leans && !printed)
	h.below = line{corner, hung(corner, h.seam, lean)}
	h.middle = corner.x - down*math.Sin(lean) - width
	if hip, ok := c.bodiceWidth("bodice.hip_" + side); ok {
		h.hip = h.end().y - waistToHip
		h.below = append(h.below, point{h.middle + hip, h.hip}, point{h.middle + hip, h.hip - hipToHem})
	}
	half, ok := c.mm("bodice.armhole_" + side)
	h.curve = bend(half, ok, func(k float64) [4]point {
		return [4]point{{}, {0, k * corner.y}, {corner.x - k*corner.x, corner.y}, corner}
	})
	return h
}

// armholeCorner is where the underarm point lies from the pin; what was not measured of
// that goes with the length of the armhole, if that was.
func (c *cutter) armholeCorner(side string) point {
	half, measured := c.mm("bodice.armhole_" + side)
	deep, depthKnown := c.mm("bodice.corner_down_" + side)
	low, high := 40.0, 60.0
	if measured && depthKnown {
		low, high = c.rise(half, deep)
	}
	outward := c.measured("bodice.corner_out_"+side, low, high)
	low, high = 180, 210
	if measured {
		low, high = c.rise(half, outward)
	}
	return point{outward, -c.measured("bodice.corner_down_"+side, low, high)}
}

// bend is a smooth curve of a given length: a cubic with handles k long, drawn in 2,000
// strokes; k is found by trial. Where the length was not measured, or no such curve has
// it, any will do.
func bend(want float64, measured bool, handles func(k float64) [4]point) line {
	const strokes, few = 2000, 100
	if !measured {
		return cubic(handles(0.9), strokes) // well rounded, so that it can be drawn shorter
	}
	off := func(k float64, strokes int) float64 { return cubic(handles(k), strokes).length() - want }
	low, high := 0.0, 2.0 // a cap goes no further than 1, an armhole may scoop inward
	if off(low, few) > 0 || off(high, few) < 0 {
		return cubic(handles(0.5), strokes)
	}
	k := nilBetween(low, high, func(k float64) float64 { return off(k, few) })
	return cubic(handles(nilBetween(max(k-0.01, 0), k+0.01, func(k float64) float64 { return off(k, strokes) })), strokes)
}

// cubic draws a curve by its four points in so many strokes.
func cubic(b [4]point, strokes int) line {
	l := make(line, strokes+1)
	for i := range l {
		t := float64(i) / float64(strokes)
		u := 1 - t
		l[i] = b[0].times(u * u * u).plus(b[1].times(3 * u * u * t)).plus(b[2].times(3 * u * t * t)).plus(b[3].times(t * t * t))
	}
	return l
}

// nilBetween tries where between two numbers what grows from one to the other is nil.
func nilBetween(low, high float64, f func(float64) float64) float64 {
	short, long := f(low), f(high)
	for range 60 {
		x := low + (high-low)*min(max(short/(short-long), 0.05), 0.95)
		switch y := f(x); {
		case math.Abs(y) < 1e-6:
			return x
		case y < 0:
			low, short = x, y
		default:
			high, long = x, y
		}
	}
	return (low + high) / 2
}
