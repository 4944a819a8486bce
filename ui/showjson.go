package ui

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf16"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// The JSON of a computed sheet. Lengths are millimetres, exact and unrounded;
// null is "not known". The keys are a contract with other programs.

// millimetres is a length in JSON, null where it is not known.
type millimetres units.Reading

// MarshalJSON writes the shortest decimal, which is the exact one.
func (m millimetres) MarshalJSON() ([]byte, error) {
	if !m.Known {
		return []byte("null"), nil
	}
	return strconv.AppendFloat(nil, m.Length.Millimetres(), 'f', -1, 64), nil
}

// ifKnown is a number of the turn, nil where it is not known.
func ifKnown(known bool, n float64) *float64 {
	if !known {
		return nil
	}
	return &n
}

type sheetJSON struct {
	Title     string              `json:"title"`
	Unit      string              `json:"unit"`
	Need      needJSON            `json:"need"`
	SlideBand map[string]bandJSON `json:"slide_band"`
	Sides     map[string]sideJSON `json:"sides"`
	Finished  finishedJSON        `json:"finished"`
	Seams     seamsJSON           `json:"seams"`
	Findings  []findingJSON       `json:"findings"`
	Working   []string            `json:"working,omitempty"`
}

type needJSON struct {
	Sleeve millimetres `json:"sleeve_mm"`
	Bust   millimetres `json:"bust_mm"`
}

type bandJSON struct {
	Low   millimetres `json:"low_mm"`
	High  millimetres `json:"high_mm"`
	Empty bool        `json:"empty"`
}

type sideJSON struct {
	Need           millimetres `json:"need_mm"`
	Pivot          millimetres `json:"pivot_mm"`
	Slide          millimetres `json:"slide_mm"`
	Total          millimetres `json:"total_mm"`
	LeftOver       millimetres `json:"left_over_mm"`
	PivotMark      millimetres `json:"pivot_mark_mm"`
	SlideMark      millimetres `json:"slide_mark_mm"`
	Turn           *float64    `json:"turn_deg"`
	Lift           *float64    `json:"lift_mm"`
	CapHeightAfter *float64    `json:"cap_height_after_mm"`
	SeamGrowth     *float64    `json:"seam_growth_mm"`
}

type finishedJSON struct {
	Bicep       millimetres `json:"bicep_mm"`
	Bust        millimetres `json:"bust_mm"`
	BicepMarked millimetres `json:"bicep_marked_mm"`
	BustMarked  millimetres `json:"bust_marked_mm"`
	BicepEase   millimetres `json:"bicep_ease_mm"`
	BustEase    millimetres `json:"bust_ease_mm"`
}

type seamsJSON struct {
	CapBefore     millimetres `json:"cap_before_mm"`
	CapAfter      millimetres `json:"cap_after_mm"`
	ArmholeBefore millimetres `json:"armhole_before_mm"`
	ArmholeAfter  millimetres `json:"armhole_after_mm"`
	CapEaseBefore millimetres `json:"cap_ease_before_mm"`
	CapEaseAfter  millimetres `json:"cap_ease_after_mm"`
}

type findingJSON struct {
	Code  calc.Code `json:"code"`
	Level string    `json:"level"`
	About string    `json:"about"`
	Text  string    `json:"text"`
	Ways  []string  `json:"ways_out,omitempty"`
}

// failureJSON stands for a file that could not be read, so that the objects of
// an array keep the order of the files.
type failureJSON struct {
	File  string `json:"file"`
	Error string `json:"error"`
}

func toJSON(r report, working bool) sheetJSON {
	p := r.plan
	planned := func(l units.Length) millimetres { return millimetres{Length: l, Known: !p.Open} }
	out := sheetJSON{
		Title: r.sheet.Text(worksheets.Title), Unit: r.sheet.Unit().String(),
		Need:      needJSON{millimetres(p.Sleeve.Need), millimetres(p.Bust.Need)},
		SlideBand: map[string]bandJSON{}, Sides: map[string]sideJSON{},
		Finished: finishedJSON{
			millimetres(p.Sleeve.Finished), millimetres(p.Bust.Finished),
			millimetres(p.Sleeve.Marked), millimetres(p.Bust.Marked),
			millimetres(p.Sleeve.EaseAfter), millimetres(p.Bust.EaseAfter),
		},
		Findings: []findingJSON{},
	}
	for _, h := range calc.Halves() {
		b := p.Bands[h]
		out.SlideBand[subjectWords[h.Subject()]] = bandJSON{planned(b.Low), planned(b.High), b.Empty()}
	}
	e := p.Seams
	out.Seams = seamsJSON{
		millimetres(e.CapBefore), millimetres(e.CapAfter), millimetres(e.ArmholeBefore), millimetres(e.ArmholeAfter),
		millimetres(e.CapEaseBefore), millimetres(e.CapEaseAfter),
	}
	for i, name := range []string{"sleeve_front", "sleeve_back", "bodice_front", "bodice_back"} {
		s, t := p.Sides[i], p.Turns[i]
		out.Sides[name] = sideJSON{
			Need: millimetres(s.Need), Pivot: planned(s.Pivot), Slide: planned(s.Slide), Total: planned(s.Total),
			LeftOver: planned(s.LeftOver), PivotMark: planned(s.PivotMark), SlideMark: planned(s.SlideMark),
			Turn: ifKnown(t.Known, t.Angle*180/math.Pi), Lift: ifKnown(t.Known, t.Lift),
			CapHeightAfter: ifKnown(t.Known, t.HeightAfter), SeamGrowth: ifKnown(t.Growth.Known, t.Growth.MM),
		}
	}
	for _, f := range r.findings {
		out.Findings = append(out.Findings, findingJSON{f.code, f.level.String(), underscored(f.about), f.text, f.ways})
	}
	if working {
		for _, l := range r.worked() {
			out.Working = append(out.Working, l.text)
		}
	}
	return out
}

// underscored is a subject as the JSON keys have it.
func underscored(s string) string { return strings.ReplaceAll(s, " ", "_") }

// encodeJSON writes one value, indented, with every character escaped that a
// terminal could take for a command.
func encodeJSON(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	if !bytes.ContainsFunc(b.Bytes(), unsafeInJSON) {
		return b.Bytes(), nil
	}
	var out bytes.Buffer
	for _, r := range b.String() {
		switch {
		case !unsafeInJSON(r):
			out.WriteRune(r)
		case r > 0xffff:
			high, low := utf16.EncodeRune(r)
			fmt.Fprintf(&out, `\u%04x\u%04x`, high, low)
		default:
			fmt.Fprintf(&out, `\u%04x`, r)
		}
	}
	return out.Bytes(), nil
}

func unsafeInJSON(r rune) bool { return r != '\n' && unprintable(r) }
