package show

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"strconv"
	"testing"
	"unicode/utf16"

	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/units"
	"capscye/worksheets"
)

// The bytes of the JSON are those that the library's own indentation, its maps
// and its numbers make, which is how they once were made.
func TestJSONIsByteForByteWhatTheLibraryWrites(t *testing.T) {
	same := func(d *worksheets.Document, working bool) {
		t.Helper()
		r := report.Reckon(d, props.SomeDay, 0)
		sheet := SheetOf(r, working)
		if _, ok := appendJSON(nil, reflect.ValueOf(sheet), 0); !ok {
			t.Fatal("a sheet is left to the library")
		}
		got, err := Encode(sheet)
		want, err2 := slowEncodeJSON(slowJSON(r, sheet))
		if err != nil || err2 != nil || !bytes.Equal(got, want) {
			t.Fatalf("%v, %v\n got %s\nwant %s", err, err2, got, want)
		}
	}
	for _, name := range worksheets.Examples() {
		d, err := worksheets.Example(name)
		if err != nil {
			t.Fatal(err)
		}
		same(d, false)
		same(d, true)
	}
	rnd := rand.New(rand.NewPCG(20261125, 1))
	for i := range props.OfMany(300, 1000) {
		same(props.RandomDocument(rnd), i%8 == 0)
	}
	for _, f := range []float64{0, math.Copysign(0, -1), 1e-6, 9.9e-7, -1.5e-7, 1e-10, 2.2e-16, 1e-100, 1e20, 1e21, -3e21, 1e300, 0.1, -25.4, math.MaxFloat64, math.SmallestNonzeroFloat64} {
		got, err := Encode([]any{f})
		mine, ok := appendJSON(nil, reflect.ValueOf([]float64{f}), 0)
		want, err2 := slowEncodeJSON([]any{f})
		if err != nil || err2 != nil || !bytes.Equal(got, want) || !ok || string(mine)+"\n" != string(want) {
			t.Errorf("%v: %s, %s, want %s", f, got, mine, want)
		}
	}
	for _, v := range []any{nil, []int{}, map[string]any{}, []any{map[string]any{}, []any{}, "[{\\\""}, map[string]any{"\x1b": "\x7f", "": []any{1, -2.5e-9, true, nil}}, "\xff\ufffd\ufeff"} {
		got, err := Encode(v)
		want, err2 := slowEncodeJSON(v)
		if err != nil || err2 != nil || !bytes.Equal(got, want) {
			t.Errorf("%v, %v\n got %s\nwant %s", err, err2, got, want)
		}
	}
}

// A length is written by whole counts, and every number beside one as the library does.
func TestLengthsAreWrittenAsTheLibraryDoes(t *testing.T) {
	rnd := rand.New(rand.NewPCG(20261126, 4))
	for i := range props.OfMany(100_000, 300_000) {
		n := rnd.Int64N(1 << (1 + i%36))
		f := units.Length(n).Millimetres()
		for _, f := range []float64{f, -f, math.Nextafter(f, 1e9), math.Nextafter(f, -1e9), f + 1e-9} {
			if size := math.Abs(f); size != 0 && size < 1e-6 {
				continue // with an exponent, which is compared above
			}
			got, ok := appendNumber(nil, f)
			if want := strconv.FormatFloat(f, 'f', -1, 64); !ok || string(got) != want {
				t.Fatalf("%d counts: %s, want %s", n, got, want)
			}
		}
	}
}

// slowEncodeJSON leaves the indentation to the library and looks at every
// character afterwards.
func slowEncodeJSON(v any) ([]byte, error) {
	var b, out bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	for _, r := range b.String() {
		switch {
		case r == '\n' || !typeset.Unprintable(r):
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

// slowMM is a length that writes itself.
type slowMM units.Reading

func (m slowMM) MarshalJSON() ([]byte, error) {
	if !m.Known {
		return []byte("null"), nil
	}
	return strconv.AppendFloat(nil, m.Length.Millimetres(), 'f', -1, 64), nil
}

type slowBand struct {
	Low   slowMM `json:"low_mm"`
	High  slowMM `json:"high_mm"`
	Empty bool   `json:"empty"`
}

type slowSide struct {
	Need           slowMM   `json:"need_mm"`
	Pivot          slowMM   `json:"pivot_mm"`
	Slide          slowMM   `json:"slide_mm"`
	Total          slowMM   `json:"total_mm"`
	LeftOver       slowMM   `json:"left_over_mm"`
	PivotMark      slowMM   `json:"pivot_mark_mm"`
	SlideMark      slowMM   `json:"slide_mark_mm"`
	Turn           *float64 `json:"turn_deg"`
	Lift           *float64 `json:"lift_mm"`
	CapHeightAfter *float64 `json:"cap_height_after_mm"`
	SeamGrowth     *float64 `json:"seam_growth_mm"`
	AtLine         slowMM   `json:"at_line_mm"`
	Bend           *float64 `json:"bend_deg"`
	Outline        any      `json:"outline_mm"`
}

type slowSheet struct {
	Title     string              `json:"title"`
	Unit      string              `json:"unit"`
	Need      any                 `json:"need"`
	SlideBand map[string]slowBand `json:"slide_band"`
	Sides     map[string]slowSide `json:"sides"`
	Finished  any                 `json:"finished"`
	Seams     any                 `json:"seams"`
	Findings  []Finding           `json:"findings"`
	Working   []string            `json:"working,omitempty"`
}

// slowJSON is a report as maps and as lengths that write themselves; findings and working
// are as they are in fast.
func slowJSON(r report.Report, fast Sheet) slowSheet {
	p, s := r.Plan, r.Plan.Seams
	planned := func(l units.Length) slowMM { return slowMM{Length: l, Known: !p.Open} }
	number := func(known bool, n float64) *float64 {
		if !known {
			return nil
		}
		return &n
	}
	out := slowSheet{
		Title: r.Sheet.Text(worksheets.Title), Unit: r.Sheet.Unit().String(),
		Need: struct {
			S slowMM `json:"sleeve_mm"`
			B slowMM `json:"bust_mm"`
		}{slowMM(p.Sleeve.Need), slowMM(p.Bust.Need)},
		Finished: struct {
			A slowMM `json:"bicep_mm"`
			B slowMM `json:"bust_mm"`
			C slowMM `json:"bicep_marked_mm"`
			D slowMM `json:"bust_marked_mm"`
			E slowMM `json:"bicep_ease_mm"`
			F slowMM `json:"bust_ease_mm"`
			G slowMM `json:"across_corners_mm"`
		}{slowMM(p.Sleeve.Finished), slowMM(p.Bust.Finished), slowMM(p.Sleeve.Marked), slowMM(p.Bust.Marked), slowMM(p.Sleeve.EaseAfter), slowMM(p.Bust.EaseAfter),
			slowMM(p.AcrossCorners)},
		Seams: struct {
			A slowMM `json:"cap_before_mm"`
			B slowMM `json:"cap_after_mm"`
			C slowMM `json:"armhole_before_mm"`
			D slowMM `json:"armhole_after_mm"`
			E slowMM `json:"cap_ease_before_mm"`
			F slowMM `json:"cap_ease_after_mm"`
		}{slowMM(s.CapBefore), slowMM(s.CapAfter), slowMM(s.ArmholeBefore), slowMM(s.ArmholeAfter), slowMM(s.CapEaseBefore), slowMM(s.CapEaseAfter)},
		SlideBand: map[string]slowBand{}, Sides: map[string]slowSide{},
		Findings: fast.Findings, Working: fast.Working,
	}
	for h, name := range []string{"front", "back"} {
		b := p.Bands[h]
		out.SlideBand[name] = slowBand{planned(b.Low), planned(b.High), b.Empty()}
	}
	for i, name := range []string{"sleeve_front", "sleeve_back", "bodice_front", "bodice_back"} {
		a, t := p.Sides[i], p.Turns[i]
		var outline any // null where it is not known
		if points := t.Outline.Points(); len(points) > 0 {
			list := []any{}
			for _, p := range points {
				list = append(list, []any{p.X, p.Y})
			}
			outline = list
		}
		out.Sides[name] = slowSide{
			slowMM(a.Need), planned(a.Pivot), planned(a.Slide), planned(a.Total), planned(a.LeftOver), planned(a.PivotMark), planned(a.SlideMark),
			number(t.Known, t.Angle*180/math.Pi), number(t.Known, t.Lift), number(t.Known, t.HeightAfter), number(t.Growth.Known, t.Growth.MM),
			slowMM(a.AtLine), number(t.Bend.Known, t.Bend.MM*180/math.Pi), outline,
		}
	}
	return out
}
