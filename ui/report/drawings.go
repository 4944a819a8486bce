package report

import (
	"math"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/calc/trace"
)

// Extent is how far a drawing reaches, in the millimetres of the pattern.
func Extent(d trace.Drawing) (minX, maxX, minY, maxY float64) {
	minX, maxX, minY, maxY = math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, s := range slices.Concat(d.Old, d.New) {
		for _, p := range s {
			minX, maxX = min(minX, p.X), max(maxX, p.X)
			minY, maxY = min(minY, p.Y), max(maxY, p.Y)
		}
	}
	return minX, maxX, minY, maxY
}

// Amounts are the pivot and the slide of a side, without the unit.
func (r Report) Amounts(s calc.Side) string {
	text, _, _ := strings.Cut(r.MarksShort(r.Plan.Sides[s]), " "+r.Scale.Ruler.System().String())
	return text
}
