package picture

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"capscye/calc"
	"capscye/calc/trace"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

func wholeSleeve(in calc.Input, p calc.Plan) trace.Drawing {
	return trace.SleeveDrawing(in, p, trace.AllAltered)
}

// The pieces at three sizes, from the smallest: a short sleeve, a long one that
// tapers, a bodice front. go test ./ui/picture -update writes them anew; look at them.
func TestPicturesAsSeen(t *testing.T) {
	for _, size := range []struct{ width, height int }{{24, 8}, {44, 12}, {72, 24}} {
		for _, c := range []struct {
			name, sheet string
			drawing     func(calc.Input, calc.Plan) trace.Drawing
		}{
			{"short-sleeve", "choir-blouse", wholeSleeve},
			{"long-sleeve", "archive-coat", wholeSleeve},
			{"bodice-front", "choir-blouse", func(in calc.Input, p calc.Plan) trace.Drawing {
				return trace.BodiceDrawing(in, p, calc.Front, trace.AllAltered)
			}},
			{"assumed", "allotment-shirt", wholeSleeve},
		} {
			t.Run(fmt.Sprintf("%dx%d/%s", size.width, size.height, c.name), func(t *testing.T) {
				r := props.ReportOf(t, c.sheet)
				lines := draw(c.drawing(r.Input, r.Plan), r, "Piece", size.width, size.height)
				if len(lines) != size.height {
					t.Errorf("%d lines", len(lines))
				}
				for _, l := range lines {
					if len([]rune(l)) > size.width {
						t.Errorf("%q sticks out", l)
					}
				}
				golden.RequireEqual(t, strings.Join(lines, "\n")+"\n")
			})
		}
	}
	if lines := draw(trace.Drawing{}, report.Report{}, "Piece", 23, 8); lines != nil {
		t.Error("too small for a picture")
	}
}

// Front and back, with their amounts, stand on their own side of the pin, and no
// word lies over an outline.
func TestWordsStandOnTheirOwnSide(t *testing.T) {
	for _, name := range worksheets.Examples() {
		r := props.ReportOf(t, name)
		for _, width := range []int{44, 60, 72} {
			d := trace.SleeveDrawing(r.Input, r.Plan, trace.AllAltered)
			bare := newCanvas(width, 20)
			f := fit(d, bare, labelRoom(d, width))
			for _, s := range append(d.Old, d.New...) {
				f.stroke(bare, s, 1)
			}
			c := newCanvas(width, 20)
			for _, k := range d.Corners {
				f.corner(c, k, d, r)
			}
			pin, _ := f.at(d.Pin)
			for y := range c.height {
				for x := range c.width {
					i := y*c.width + x
					if c.text[i] == 0 || strings.ContainsRune("x^v<>", c.text[i]) {
						continue
					}
					if bare.dots[i] != 0 {
						t.Errorf("%s at %d: %q lies over an outline", name, width, c.text[i])
					}
				}
				row := string(c.text[y*c.width : (y+1)*c.width])
				if at := strings.Index(row, "Front"); at >= 0 && at < int(pin)/2 {
					t.Errorf("%s at %d: Front is on the side of the back", name, width)
				}
			}
		}
	}
}

// The scale is the same both ways, in cells that are twice as tall as wide:
// a circle stays a circle, in whatever room.
func TestPictureKeepsItsShape(t *testing.T) {
	var circle trace.Stroke
	for i := range 361 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 180)
		circle = append(circle, calc.Point{X: 100 * cos, Y: 100 * sin})
	}
	for _, size := range []struct{ w, h int }{{24, 7}, {44, 20}, {20, 40}} {
		c := newCanvas(size.w, size.h)
		f := fit(trace.Drawing{Old: []trace.Stroke{circle}}, c, 0)
		f.stroke(c, circle, 1)
		left, right, top, bottom := 2*size.w, 0, 4*size.h, 0
		for y := range 4 * size.h {
			for x := range 2 * size.w {
				if c.dots[y/4*c.width+x/2]&brailleDot[y%4][x%2] != 0 {
					left, right, top, bottom = min(left, x), max(right, x), min(top, y), max(bottom, y)
				}
			}
		}
		across, down := right-left, bottom-top // a dot is half a cell wide and a quarter tall: square
		if d := across - down; d < -1 || d > 1 || max(across, down) < min(2*size.w, 4*size.h)-3 {
			t.Errorf("%d x %d cells: %d dots across, %d down", size.w, size.h, across, down)
		}
	}
}
