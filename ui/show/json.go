package show

import (
	"math"
	"strings"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/units"
	"capscye/worksheets"
)

// The JSON of a computed sheet. Lengths are millimetres, exact and unrounded;
// null is "not known". The keys are a contract with other programs.

// millimetres is a length in JSON, nil where it is not known. The shortest
// decimal is the exact one.
func millimetres(r units.Reading) *float64 { return ifKnown(r.Known, r.Length.Millimetres()) }

// ifKnown is a number, nil where it is not known.
func ifKnown(known bool, n float64) *float64 {
	if !known {
		return nil
	}
	return &n
}

// Sheet is a computed sheet as other programs read it.
type Sheet struct {
	Title     string    `json:"title"`
	Unit      string    `json:"unit"`
	Need      Need      `json:"need"`
	SlideBand Bands     `json:"slide_band"`
	Sides     Sides     `json:"sides"`
	Finished  Finished  `json:"finished"`
	Seams     Seams     `json:"seams"`
	Findings  []Finding `json:"findings"`
	Working   []string  `json:"working,omitempty"`
}

// Need is what each girth lacks.
type Need struct {
	Sleeve *float64 `json:"sleeve_mm"`
	Bust   *float64 `json:"bust_mm"`
}

// Bands are written in the order of the alphabet.
type Bands struct {
	Back  Band `json:"back"`
	Front Band `json:"front"`
}

// Sides are written in the order of the alphabet.
type Sides struct {
	BodiceBack  Side `json:"bodice_back"`
	BodiceFront Side `json:"bodice_front"`
	SleeveBack  Side `json:"sleeve_back"`
	SleeveFront Side `json:"sleeve_front"`
}

// Band is where the slide of a half can lie.
type Band struct {
	Low   *float64 `json:"low_mm"`
	High  *float64 `json:"high_mm"`
	Empty bool     `json:"empty"`
}

// Side is what becomes of one altered edge.
type Side struct {
	Need           *float64     `json:"need_mm"`
	Pivot          *float64     `json:"pivot_mm"`
	Slide          *float64     `json:"slide_mm"`
	Total          *float64     `json:"total_mm"`
	LeftOver       *float64     `json:"left_over_mm"`
	PivotMark      *float64     `json:"pivot_mark_mm"`
	SlideMark      *float64     `json:"slide_mark_mm"`
	Turn           *float64     `json:"turn_deg"`
	Lift           *float64     `json:"lift_mm"`
	CapHeightAfter *float64     `json:"cap_height_after_mm"`
	SeamGrowth     *float64     `json:"seam_growth_mm"`
	AtLine         *float64     `json:"at_line_mm"`
	Bend           *float64     `json:"bend_deg"`
	Outline        [][2]float64 `json:"outline_mm"` // [out, up] from the pin; null where it is not known
}

// Finished is what comes out, exactly and by the marks.
type Finished struct {
	Bicep         *float64 `json:"bicep_mm"`
	Bust          *float64 `json:"bust_mm"`
	BicepMarked   *float64 `json:"bicep_marked_mm"`
	BustMarked    *float64 `json:"bust_marked_mm"`
	BicepEase     *float64 `json:"bicep_ease_mm"`
	BustEase      *float64 `json:"bust_ease_mm"`
	AcrossCorners *float64 `json:"across_corners_mm"`
}

// Seams are cap and armhole, before and after.
type Seams struct {
	CapBefore     *float64 `json:"cap_before_mm"`
	CapAfter      *float64 `json:"cap_after_mm"`
	ArmholeBefore *float64 `json:"armhole_before_mm"`
	ArmholeAfter  *float64 `json:"armhole_after_mm"`
	CapEaseBefore *float64 `json:"cap_ease_before_mm"`
	CapEaseAfter  *float64 `json:"cap_ease_after_mm"`
}

// Finding is a finding of the report.
type Finding struct {
	Code  calc.Code `json:"code"`
	Level string    `json:"level"`
	About string    `json:"about"`
	Text  string    `json:"text"`
	Words []string  `json:"ways_out,omitempty"`
	Ways  []Way     `json:"ways,omitempty"`
	Key   string    `json:"key,omitempty"`
	Guess string    `json:"guess,omitempty"`
	Slip  string    `json:"slip,omitempty"`
	// Accept is what it means to accept it as it is, where that is a choice.
	Accept *Accept `json:"accept,omitempty"`
}

// Way is a way out of a finding, with its numbers.
type Way struct {
	Way      string   `json:"way"`
	Amount   *float64 `json:"amount_mm"`
	EachSide *float64 `json:"each_side_mm"`
	Adds     *float64 `json:"adds_mm"`
	Lowers   *float64 `json:"lowers_mm"`
}

// Accept is a finding accepted as it is.
type Accept struct {
	Ease *float64 `json:"ease_mm"`
	Text string   `json:"text"`
}

// Failure stands for a file that could not be read, so that the objects of
// an array keep the order of the files.
type Failure struct {
	File  string `json:"file"`
	Error string `json:"error"`
}

// SheetOf is a report as JSON, with every line of the working if that is wanted.
func SheetOf(r report.Report, working bool) Sheet {
	p, e := r.Plan, r.Plan.Seams
	out := Sheet{
		Title: r.Sheet.Text(worksheets.Title), Unit: r.Sheet.Unit().String(),
		Need:      Need{millimetres(p.Sleeve.Need), millimetres(p.Bust.Need)},
		SlideBand: Bands{Back: bandOf(p, calc.Back), Front: bandOf(p, calc.Front)},
		Sides: Sides{
			BodiceBack: sideOf(p, calc.BodiceBack), BodiceFront: sideOf(p, calc.BodiceFront),
			SleeveBack: sideOf(p, calc.SleeveBack), SleeveFront: sideOf(p, calc.SleeveFront),
		},
		Finished: Finished{
			millimetres(p.Sleeve.Finished), millimetres(p.Bust.Finished),
			millimetres(p.Sleeve.Marked), millimetres(p.Bust.Marked),
			millimetres(p.Sleeve.EaseAfter), millimetres(p.Bust.EaseAfter), millimetres(p.AcrossCorners),
		},
		Seams: Seams{
			millimetres(e.CapBefore), millimetres(e.CapAfter), millimetres(e.ArmholeBefore), millimetres(e.ArmholeAfter),
			millimetres(e.CapEaseBefore), millimetres(e.CapEaseAfter),
		},
		Findings: []Finding{},
	}
	for _, f := range r.Findings {
		out.Findings = append(out.Findings, findingOf(f))
	}
	if working {
		for _, l := range r.Worked() {
			out.Working = append(out.Working, l.Text)
		}
	}
	return out
}

func findingOf(f report.Finding) Finding {
	out := Finding{Code: f.Code, Level: f.Level.String(), About: Underscored(f.About), Text: f.Text, Key: f.Key}
	for _, w := range f.Ways {
		out.Words = append(out.Words, w.Words)
		out.Ways = append(out.Ways, Way{w.Of, millimetres(w.Amount), millimetres(w.EachSide), millimetres(w.Adds), millimetres(w.Lowers)})
	}
	if f.Accept != "" {
		out.Accept = &Accept{millimetres(f.Ease), f.Accept}
	}
	if f.Guess != nil {
		out.Guess, out.Slip = f.Guess.Text, f.Guess.Slip.String()
	}
	return out
}

// bandOf is the band of a half, sideOf what is done on a side: not known while
// the plan is open.
func bandOf(p calc.Plan, h calc.Half) Band {
	b := p.Bands[h]
	return Band{ifKnown(!p.Open, b.Low.Millimetres()), ifKnown(!p.Open, b.High.Millimetres()), b.Empty()}
}

func sideOf(p calc.Plan, side calc.Side) Side {
	s, t := p.Sides[side], p.Turns[side]
	planned := func(l units.Length) *float64 { return ifKnown(!p.Open, l.Millimetres()) }
	return Side{
		Need: millimetres(s.Need), Pivot: planned(s.Pivot), Slide: planned(s.Slide), Total: planned(s.Total),
		LeftOver: planned(s.LeftOver), PivotMark: planned(s.PivotMark), SlideMark: planned(s.SlideMark),
		Turn: ifKnown(t.Known, t.Angle*180/math.Pi), Lift: ifKnown(t.Known, t.Lift),
		CapHeightAfter: ifKnown(t.Known, t.HeightAfter), SeamGrowth: ifKnown(t.Growth.Known, t.Growth.MM),
		AtLine: millimetres(s.AtLine), Bend: ifKnown(t.Bend.Known, t.Bend.MM*180/math.Pi), Outline: outlineOf(t),
	}
}

// outlineOf are the points of the new seam below the underarm.
func outlineOf(t calc.Turn) (points [][2]float64) {
	for _, p := range t.Outline.Points() {
		points = append(points, [2]float64{p.X, p.Y})
	}
	return points
}

// Underscored is a subject as the JSON keys have it.
func Underscored(s string) string { return strings.ReplaceAll(s, " ", "_") }
