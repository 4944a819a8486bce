package tracing_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"capscye/ui"
)

// What the program says of a worksheet: its steps, and its figures.

// figures are those of show --json that a tape can find. nil is not known.
type figures struct {
	Sides struct {
		SleeveFront sideFigures `json:"sleeve_front"`
		SleeveBack  sideFigures `json:"sleeve_back"`
		BodiceFront sideFigures `json:"bodice_front"`
		BodiceBack  sideFigures `json:"bodice_back"`
	} `json:"sides"`
	Finished struct {
		BicepMarked *float64 `json:"bicep_marked_mm"`
		BustMarked  *float64 `json:"bust_marked_mm"`
		Corners     *float64 `json:"across_corners_mm"`
	} `json:"finished"`
	Seams struct {
		Cap     *float64 `json:"cap_after_mm"`
		Armhole *float64 `json:"armhole_after_mm"`
	} `json:"seams"`
	Findings []struct{ Code, Text string }
}

type sideFigures struct {
	Need      *float64     `json:"need_mm"`
	Pivot     *float64     `json:"pivot_mm"`
	Slide     *float64     `json:"slide_mm"`
	Total     *float64     `json:"total_mm"`
	PivotMark *float64     `json:"pivot_mark_mm"`
	SlideMark *float64     `json:"slide_mark_mm"`
	AtLine    *float64     `json:"at_line_mm"`
	Growth    *float64     `json:"seam_growth_mm"`
	Outline   [][2]float64 `json:"outline_mm"`
}

// onMarks tells that the exact amounts are what is marked.
func (s sideFigures) onMarks() bool {
	return s.Pivot != nil && s.PivotMark != nil && *s.Pivot == *s.PivotMark && *s.Slide == *s.SlideMark
}

// asNeeded tells that the side gains what it needs, no more for another piece's sake
// and no less for a limit's.
func (s sideFigures) asNeeded() bool { return s.Need != nil && s.Total != nil && *s.Need == *s.Total }

// answer is what the program says of a sheet: its steps, what show prints, and its JSON.
type answer struct {
	printed, shown string
	figures        figures
}

// inTable is a figure that show prints in the row of that name, by its columns; ok is
// false for a dash and for a row that is not there.
func (a answer) inTable(row string, from, to int, unit string) (mm float64, rough, ok bool) {
	for _, l := range strings.Split(a.shown, "\n") {
		if !strings.HasPrefix(l, row+" ") || len(l) < to {
			continue
		}
		text := strings.TrimPrefix(strings.TrimSpace(l[from:to]), "+")
		exact := strings.Replace(text, "~", "", 1)
		mm, err := readLength(exact, unit)
		return mm, exact != text, err == nil
	}
	return 0, false, false
}

// outs are the amounts by which the findings say that the steps draw a seam out.
func (f figures) outs() (list []string) {
	for _, finding := range f.Findings {
		if finding.Code == "binds-below" {
			for _, m := range drawnTo.FindAllStringSubmatch(finding.Text, -1) {
				list = append(list, m[1])
			}
		}
	}
	return list
}

var drawnTo = regexp.MustCompile(`to (\S[^:,;]*? (?:in|cm)) (?:outside|inside) the old seam`)

func (a answer) sides() (sleeve, bodice [2]sideFigures) {
	s := a.figures.Sides
	return [2]sideFigures{s.SleeveFront, s.SleeveBack}, [2]sideFigures{s.BodiceFront, s.BodiceBack}
}

// program asks the program about one sheet after the other, in files of one folder.
type program struct {
	t    *testing.T
	file string
}

func newProgram(t *testing.T) *program {
	return &program{t, filepath.Join(t.TempDir(), "sheet.toml")}
}

func (p *program) run(args ...string) string {
	p.t.Helper()
	var out, errs bytes.Buffer
	if status := ui.Run(args, strings.NewReader(""), &out, &errs); status > 1 {
		p.t.Fatalf("%v: status %d, %s", args, status, errs.String())
	}
	return out.String()
}

func (p *program) ask(s sheet) answer {
	p.t.Helper()
	source := s.toml()
	if err := os.WriteFile(p.file, []byte(source), 0o644); err != nil {
		p.t.Fatal(err)
	}
	a := answer{printed: p.run("trace", p.file), shown: p.run("show", p.file)}
	shown := p.run("show", "--json", p.file)
	if err := json.Unmarshal([]byte(shown), &a.figures); err != nil {
		p.t.Fatalf("%v\n%s\n%s", err, source, shown)
	}
	return a
}

// jsonSteps are the steps as trace --json prints them.
func (p *program) jsonSteps() (texts []string) {
	p.t.Helper()
	var steps []struct{ Text string }
	if err := json.Unmarshal([]byte(p.run("trace", "--json", p.file)), &steps); err != nil {
		p.t.Fatal(err)
	}
	for _, s := range steps {
		texts = append(texts, s.Text)
	}
	return texts
}
