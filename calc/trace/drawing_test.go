package trace_test

import (
	"math"
	"slices"
	"testing"

	"capscye/calc"
	"capscye/calc/internal/byhand"
	"capscye/calc/trace"
	"capscye/units"
)

// What pictures show, by the points that they are drawn from.

func wayAlong(s trace.Stroke) (length float64) {
	for i := 1; i < len(s); i++ {
		length += math.Hypot(s[i].X-s[i-1].X, s[i].Y-s[i-1].Y)
	}
	return length
}

// passes tells that some stroke has a point there.
func passes(strokes []trace.Stroke, p calc.Point) bool {
	return slices.ContainsFunc(strokes, func(s trace.Stroke) bool {
		return slices.ContainsFunc(s, func(q calc.Point) bool { return math.Hypot(p.X-q.X, p.Y-q.Y) < 1e-6 })
	})
}

// marked is a sheet and its plan as it lies on the paper.
func marked(input calc.Input) (calc.Input, calc.Plan) {
	return input, calc.Compute(input).AsMarked(input)
}

// While a side is turned and slid the whole paper lies so that its corner is at the new
// place, and what was traced of the other side stays.
func TestPaperMovesAsAWhole(t *testing.T) {
	input, p := marked(byhand.Geometry())
	end := trace.SleeveDrawing(input, p, trace.AllAltered)
	stages := trace.Stages{trace.Altered, trace.SlidOut}
	d := trace.SleeveDrawing(input, p, stages)
	front, back := d.Corners[0], d.Corners[1]
	if back.New.X >= back.Old.X { // out is to the left there
		t.Errorf("the back slides from %v to %v", back.Old, back.New)
	}
	if !passes(d.New, back.New) {
		t.Errorf("the paper's back corner is not at %v", back.New)
	}
	if !passes(d.New, front.New) || front.New != end.Corners[0].New {
		t.Errorf("the front that was traced is gone from %v", front.New)
	}
}

// Turned, and not slid yet, the corner lies where the turn alone brings it; slid, 1/4 in
// further out.
func TestTheCornerIsTurnedAndThenSlid(t *testing.T) {
	input, p := marked(byhand.Geometry())
	turned := trace.SleeveDrawing(input, p, trace.Stages{trace.TurnedOut}).Corners[0]
	slid := trace.SleeveDrawing(input, p, trace.Stages{trace.SlidOut}).Corners[0]
	if out := (slid.New.X - turned.New.X) / 25.4; math.Abs(out-0.25) > 1e-9 || slid.New.Y != turned.New.Y {
		t.Errorf("it slides from %v to %v", turned.New, slid.New)
	}
	if math.Abs(turned.New.X/25.4-7.296833) > 1e-6 { // as in TestTurnWorkedByHand
		t.Errorf("it turns to %v", turned.New)
	}
}

// What stands in for a measurement, or cannot be drawn as long as it was measured, is said.
func TestWhatIsDrawnByGuessIsSaid(t *testing.T) {
	whole := byhand.Geometry()
	whole.Sleeve.CapFront, whole.Sleeve.CapBack = byhand.Known("9 1/4"), byhand.Known("9 1/4")
	for what, c := range map[string]struct {
		change               func(*calc.Input)
		assumed, approximate bool
	}{
		"all measured":     {func(*calc.Input) {}, false, false},
		"a cap too long":   {func(in *calc.Input) { in.Sleeve.CapBack = byhand.Known("13") }, false, true}, // over 6 1/2 and 5 1/4
		"no cap height":    {func(in *calc.Input) { in.Sleeve.CapHeight = units.Reading{} }, true, false},
		"no underarm seam": {func(in *calc.Input) { in.Sleeve.UnderarmSeam = units.Reading{} }, true, false},
	} {
		changed := whole
		c.change(&changed)
		input, p := marked(changed)
		if d := trace.SleeveDrawing(input, p, trace.Stages{}); d.Assumed != c.assumed || d.Approximate != c.approximate {
			t.Errorf("%s: assumed %v, approximate %v", what, d.Assumed, d.Approximate)
		}
	}
	for what, forget := range map[string]func(*calc.Input){
		"no side seam": func(in *calc.Input) { in.Bodice.SideSeam = units.Reading{} },
		"no corner":    func(in *calc.Input) { in.Bodice.CornerOutFront = units.Reading{} },
	} {
		changed := whole
		forget(&changed)
		input, p := marked(changed)
		if d := trace.BodiceDrawing(input, p, calc.Front, trace.Stages{}); !d.Assumed {
			t.Errorf("%s: nothing is said to be assumed", what)
		}
	}
}

// An inward slide shortens the curve that is drawn, by as much as the step says.
func TestACurveDrawnAnewHasItsLength(t *testing.T) {
	input, p := marked(comingIn("8 1/2"))
	d := trace.SleeveDrawing(input, p, trace.AllAltered)
	for i, c := range d.Corners[:2] {
		at := slices.Index(d.New[i], c.New)
		if at < 0 {
			t.Fatalf("side %d does not pass its corner", i)
		}
		if got := wayAlong(d.New[i][:at+1]) / 25.4; math.Abs(got-8) > 0.01 { // a line of 24 parts for a curve
			t.Errorf("side %d: the curve is %v long, want 8", i, got)
		}
		if c.Line.Y != c.New.Y {
			t.Errorf("side %d: measured at %v, its corner lies at %v", i, c.Line.Y, c.New.Y)
		}
	}
}

// The girth is measured at its own level where the corner lies above it.
func TestTheLineOfTheGirthIsDrawn(t *testing.T) {
	input, p := marked(byhand.Geometry())
	d := trace.SleeveDrawing(input, p, trace.AllAltered)
	if got := (d.Corners[0].Line.X - d.Corners[1].Line.X) / 25.4; d.Corners[0].Line.Y != d.Corners[0].Old.Y || math.Abs(got-15.5) > 1e-9 {
		t.Errorf("%v across at %v, want 15 1/2 at the bicep line", got, d.Corners[0].Line.Y/25.4)
	}
}

// A piece of the bodice is as wide as it was measured, front and back each; its waist
// reaches to the new corner; and a width that was not measured is said to be assumed.
func TestPiecesOfTheBodiceAsMeasured(t *testing.T) {
	whole := byhand.Geometry()
	whole.Waist, whole.WaistEase = byhand.Known("33"), byhand.Known("1") // 32 on the pattern: 1/2 in a side
	whole.Bodice.WaistFront, whole.Bodice.WaistBack = byhand.Known("8 1/4"), byhand.Known("7 3/4")
	input, p := marked(whole)
	for h, width := range []float64{10.25, 9.75} {
		d := trace.BodiceDrawing(input, p, calc.Half(h), trace.AllAltered)
		rest := d.Old[len(d.Old)-1]
		if got := (d.Corners[0].Old.X - rest[2].X) / 25.4; math.Abs(got-width) > 1e-9 || d.Assumed {
			t.Errorf("half %d: %v wide, assumed %v", h, got, d.Assumed)
		}
		oldEnd, newEnd := d.Old[0][len(d.Old[0])-1], d.New[0][len(d.New[0])-1]
		if out := (newEnd.X - oldEnd.X) / 25.4; math.Abs(out-0.5) > 1e-9 {
			t.Errorf("half %d: the waist goes out by %v", h, out)
		}
		if waist := d.New[len(d.New)-1]; waist[len(waist)-1] != newEnd || !slices.Equal(d.Corners[0].Fits, []calc.Point{newEnd}) {
			t.Errorf("half %d: the waist ends at %v, fits %v, want %v", h, waist[len(waist)-1], d.Corners[0].Fits, newEnd)
		}
	}
	whole.Bodice.Front, whole.Bodice.FinishedBust = units.Reading{}, byhand.Known("40")
	input, p = marked(whole)
	if d := trace.BodiceDrawing(input, p, calc.Front, trace.AllAltered); !d.Assumed {
		t.Error("nobody measured how wide that front is")
	}
}

// The seam below the underarm leans in, and its line leads from the corner to its end.
func TestTheSeamLeansIn(t *testing.T) {
	e := calc.Edge{W: 165, H: 133, Lean: 0.12, Known: true, Below: calc.Approx{MM: 430, Known: true}, Line: 50}
	endX, endY := e.End()
	for _, p := range []calc.Point{{X: 165, Y: -133}, e.LineAt(), {X: endX, Y: endY}} {
		if on := e.SeamTo(p.Y); math.Abs(on.X-p.X) > 1e-9 || endX > 115 {
			t.Errorf("at the level of %v the seam is at %v", p, on)
		}
	}
}

// Bends and points that fit lie on the seam that they belong to, also on the back, which
// is on the left; the corner is no bend.
func TestBendsAndFitsLieOnTheirSeam(t *testing.T) {
	whole := byhand.Geometry()
	whole.Sleeve.Long, whole.Sleeve.UnderarmSeam, whole.Sleeve.HemWidth, whole.Sleeve.ElbowWidth = true, byhand.Known("17"), byhand.Known("9"), byhand.Known("11")
	whole.Elbow, whole.ElbowEase = byhand.Known("12"), byhand.Known("1")
	input, p := marked(whole)
	d := trace.SleeveDrawing(input, p, trace.AllAltered)
	for i, c := range d.Corners {
		if len(c.Bends) != 1 || len(c.Fits) != 1 {
			t.Errorf("corner %d: bends %v, fits %v", i, c.Bends, c.Fits)
		}
		for _, point := range slices.Concat(c.Bends, c.Fits) {
			if !passes(d.New[i:i+1], point) {
				t.Errorf("corner %d: %v is not on its seam", i, point)
			}
		}
		if math.Abs(c.Bends[0].Y-c.Old.Y) > 1e-9 {
			t.Errorf("corner %d: it bends at %v, not at its last mark", i, c.Bends[0])
		}
	}
}
