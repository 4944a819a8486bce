package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
)

// FittingLines are what test garments showed, day by day.
func FittingLines(r Report) []string {
	var lines []string
	for _, f := range r.Sheet.Fittings {
		lines = append(lines, strings.TrimSpace(typeset.Plain(f.Date)+"  "+typeset.Plain(f.Note)))
	}
	return lines
}

// The tables that the screen and the printed sheet share. Their first row is
// the heading.

// Tables are all of them, for paper; those that have nothing to say are
// left out.
func Tables(r Report) [][]string {
	all := [][]string{
		needsTable(r), SidesTable(r), bandLines(r), FinishedTable(r), SeamsTable(r), TurnTable(r), WidthsTable(r),
	}
	return slices.DeleteFunc(all, func(table []string) bool { return len(table) == 0 })
}

// needsTable is body + ease - pattern = need.
func needsTable(r Report) []string {
	row := func(name string, cells ...any) string {
		return fmt.Sprintf("%-16s%12s%12s%12s%12s", append([]any{name}, cells...)...)
	}
	lines := []string{row("", "body", "+ ease", "- pattern", "= need")}
	for _, p := range r.Pieces() {
		g := p.Girth
		lines = append(lines, row(p.Name+", "+p.place, wording.OrDash(g.Body, r.Scale), wording.OrDash(g.Ease, r.Scale),
			wording.OrDash(g.Flat, r.Scale), wording.OrDash(g.Need, r.Scale)))
	}
	return lines
}

// SidesTable is the four sides next to each other.
func SidesTable(r Report) []string {
	row := func(name string, cells ...any) string {
		return fmt.Sprintf("%-13s%8s%8s%8s%8s   %s", append([]any{name}, cells...)...)
	}
	lines := []string{row("", "need", "pivot", "slide", "total", "mark pivot + slide")}
	for _, s := range calc.Sides() {
		p := r.Plan.Sides[s]
		lines = append(lines, row(typeset.Capitalised(wording.SubjectWords[s.Subject()]), wording.OrDash(p.Need, r.Scale), r.planned(p.Pivot),
			r.planned(p.Slide), r.planned(p.Total), r.MarksShort(p)))
	}
	return lines
}

// FinishedTable is what comes out beside what was asked, on the seams as they are drawn.
func FinishedTable(r Report) []string {
	row := func(name string, cells ...any) string {
		return fmt.Sprintf("%-8s%13s%13s%13s%13s", append([]any{name}, cells...)...)
	}
	lines := []string{row("", "asked", "comes out", "by marks", "ease")}
	for _, p := range r.Pieces() {
		g := p.Girth
		lines = append(lines, row(typeset.Capitalised(p.place), wording.OrDash(g.Wanted(), r.Scale), wording.OrDash(g.Drawn, r.Scale),
			wording.OrDash(g.DrawnMarked, r.Scale), wording.OrDash(g.EaseDrawn, r.Scale)))
	}
	return lines
}

// TurnTable is what the pivots do: the turn, the height that is left, and how
// much longer the seam below the underarm gets as it is drawn. It is nil where no corner was
// measured. All of it is rounded, for a turn is not exact.
func TurnTable(r Report) []string {
	row := func(name string, cells ...any) string {
		return fmt.Sprintf("%-13s%8s%12s%12s%14s", append([]any{name}, cells...)...)
	}
	lines := []string{row("", "turn", "height", "after", "seam below")}
	for _, s := range calc.Sides() {
		t, e := r.Plan.Turns[s], r.Plan.Edges[s]
		if !t.Known {
			continue
		}
		growth := "-"
		if grows := r.Plan.Sides[s].Grows; grows.Known {
			growth = wording.Signed(grows.Length, r.Scale)
		}
		lines = append(lines, row(typeset.Capitalised(wording.SubjectWords[s.Subject()]), fmt.Sprintf("%.1f deg", t.Angle*180/math.Pi),
			r.Millimetres(e.H), r.Millimetres(t.HeightAfter), growth))
	}
	if len(lines) == 1 {
		return nil
	}
	return lines
}

// SeamsTable is cap and armhole before and after, and as the marks make them where that
// differs; nil where neither was measured.
func SeamsTable(r Report) []string {
	s := r.Plan.Seams
	if !s.CapBefore.Known && !s.ArmholeBefore.Known {
		return nil
	}
	marked := r.Plan.AsMarked(r.Input).Seams
	lines := []string{fmt.Sprintf("%-13s%12s%12s", "", "before", "after")}
	if marked != s {
		lines[0] += fmt.Sprintf("%11s", "by marks")
	}
	row := func(name string, before, after, byMarks units.Reading) {
		line := fmt.Sprintf("%-13s%12s%12s", name, wording.OrDash(before, r.Scale), wording.OrDash(after, r.Scale))
		if marked != s {
			line += fmt.Sprintf("%11s", wording.OrDash(byMarks, r.Scale))
		}
		lines = append(lines, line)
	}
	row("Cap seam", s.CapBefore, s.CapAfter, marked.CapAfter)
	row("Armhole", s.ArmholeBefore, s.ArmholeAfter, marked.ArmholeAfter)
	row("Cap ease", s.CapEaseBefore, s.CapEaseAfter, marked.CapEaseAfter)
	lines[len(lines)-1] += "   usual " + r.UsualCapEase()
	return lines
}

// UsualCapEase is the cap ease that the style commonly has: "1/2 to 1 1/2 in".
func (r Report) UsualCapEase() string {
	usual := calc.UsualCapEase(r.Input.Sleeve.Style, r.Input.Fabric)
	if !usual.Bounded {
		return "from " + wording.UsualOne(usual.Low, r.Scale)
	}
	return wording.Usual(usual.Low, usual.High, r.Scale)
}

// WidthsTable is what has to fit below the underarm; nil where nothing was
// measured there.
func WidthsTable(r Report) []string {
	if len(r.Plan.Widths) == 0 {
		return nil
	}
	row := func(name string, cells ...any) string {
		return fmt.Sprintf("%-13s%12s%12s%12s", append([]any{name}, cells...)...)
	}
	lines := []string{row("", "wanted", "comes out", "to spare")}
	for _, w := range r.Plan.Widths {
		line := row(typeset.Capitalised(wording.PlaceWords[w.At]), r.Scale.Number(w.Wanted), r.Scale.Number(w.Around), wording.Signed(-w.Lacks(), r.Scale))
		if r.drawnOut(w.At) {
			line += "   drawn out to fit"
		}
		lines = append(lines, line)
	}
	return lines
}

// drawnOut tells that the steps draw a seam out at a level, farther than its taper goes.
func (r *Report) drawnOut(at calc.Place) bool {
	for _, s := range calc.Sides() {
		fit, out := r.Plan.Fits[s], false
		switch at {
		case calc.AtElbow:
			out = s.OfSleeve() && fit.Elbow
		case calc.AtWrist:
			out = s.OfSleeve() && fit.EndOut != 0
		case calc.AtWaist:
			out = !s.OfSleeve() && fit.EndOut != 0
		case calc.AtHip:
			out = !s.OfSleeve() && fit.HipOut != 0
		}
		if out {
			return true
		}
	}
	return false
}

// bandLines says in words where the slide lies in its band.
func bandLines(r Report) []string {
	var lines []string
	for _, h := range calc.Halves() {
		lines = append(lines, fmt.Sprintf("%-16s%s", "Slide, "+wording.SubjectWords[h.Subject()], r.BandWords(h)))
	}
	return lines
}

// BandWords says where the slide of a half lies in its band.
func (r Report) BandWords(h calc.Half) string {
	band, slide := r.Plan.Bands[h], r.Scale.Format(r.Plan.Sides[h.Sleeve()].Slide)
	switch {
	case !r.Plan.Whole():
		return "not known yet"
	case band.Empty() && r.Input.Method.Armhole == calc.KeepArmhole:
		return slide + "; the kept armhole leaves no other"
	case band.Empty():
		return slide + "; no slide serves both pieces"
	}
	return fmt.Sprintf("%s (%s would work)", slide, wording.Span(band.Low, band.High, r.Scale))
}

// planned is a figure of a side, or a dash while nothing is planned.
func (r Report) planned(l units.Length) string {
	if !r.Plan.Whole() {
		return "-"
	}
	return r.Scale.Number(l)
}

// MarksShort is the two amounts to mark, "1 + 1/4 in", or why there are none.
func (r Report) MarksShort(s calc.SidePlan) string {
	switch {
	case !r.Plan.Whole():
		return "not known yet"
	case r.Plan.TooFar():
		return "no marks"
	case s.PivotMark == 0 && s.SlideMark == 0:
		return "nothing"
	}
	return BothMarks(s.PivotMark, s.SlideMark, r.Scale)
}

// BothMarks is "1 + 1/4 in".
func BothMarks(pivot, slide units.Length, sc units.Scale) string {
	return BareMarks(pivot, slide, sc) + " " + sc.Ruler.System().String()
}

// BareMarks is "1 + 1/4", in the ruler's unit.
func BareMarks(pivot, slide units.Length, sc units.Scale) string {
	held := units.Scale{System: sc.Ruler.System(), Ruler: sc.Ruler}
	return held.Number(pivot) + " + " + held.Number(slide)
}
