package tracing_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"capscye/ui/internal/props"
)

// A worksheet as somebody writes it down: texts by their keys, "sleeve.width" and so
// on. The hands read its lengths themselves.
type sheet map[string]string

// toml is the worksheet as a file.
func (s sheet) toml() string {
	var b strings.Builder
	b.WriteString("version = 1\n")
	table := ""
	for _, key := range slices.Sorted(maps.Keys(s)) {
		t, name, _ := strings.Cut(key, ".")
		if t != table {
			fmt.Fprintf(&b, "\n[%s]\n", t)
			table = t
		}
		fmt.Fprintf(&b, "%s = %q\n", name, s[key])
	}
	return b.String()
}

// exampleSheet reads an example of the project. Only what stands in quotes is of
// interest here.
func exampleSheet(t *testing.T, file string) sheet {
	t.Helper()
	source, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, table := sheet{}, ""
	for _, l := range strings.Split(string(source), "\n") {
		if m := regexp.MustCompile(`^\[(\w+)\]`).FindStringSubmatch(l); m != nil {
			table = m[1]
		} else if m := regexp.MustCompile(`^(\w+) *= *"([^"]*)"`).FindStringSubmatch(l); m != nil {
			s[table+"."+m[1]] = m[2]
		} else if m := regexp.MustCompile(`^crossings *= *(\d+)`).FindStringSubmatch(l); m != nil {
			s["bodice.crossings"] = m[1]
		}
	}
	return s
}

// exampleFiles are the examples of the project.
func exampleFiles(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(props.SourceFolder, "worksheets", "examples", "*.toml"))
	if err != nil || len(files) == 0 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	return files
}

// is tells what a choice says, or what it means where nothing is written.
func (s sheet) is(key, usual string) string {
	if s[key] == "" {
		return usual
	}
	return s[key]
}

// mm is a length of the worksheet, if it was measured.
func (s sheet) mm(key string) (float64, bool) {
	if s[key] == "" {
		return 0, false
	}
	mm, err := readLength(s[key], s.is("about.unit", "in"))
	if err != nil {
		panic(fmt.Sprintf("%s: %v", key, err)) // the test wrote it itself
	}
	return mm, true
}

// step is what the program shows lengths in, in millimetres: a mark of the ruler for
// inches, a sixteenth where the ruler is metric, and always 1 mm for centimetres.
func (s sheet) step() float64 {
	if s.is("about.unit", "in") == "cm" {
		return 1
	}
	if strings.HasSuffix(s.is("about.ruler", "1/8 in"), "mm") {
		return 25.4 / 16
	}
	return s.rulerMark()
}

// rulerMark is the distance between two marks of the ruler, in millimetres.
func (s sheet) rulerMark() float64 {
	usual := "1/8 in"
	if s.is("about.unit", "in") == "cm" {
		usual = "1 mm"
	}
	mm, err := readLength(s.is("about.ruler", usual), "in")
	if err != nil {
		panic(err)
	}
	return mm
}

var (
	lengthForm = regexp.MustCompile(`^([-−]?)(\d+[.,]\d+|\d+ \d+/\d+|\d+/\d+|\d+)(?: ?(in|cm|mm))?$`)
	perUnit    = map[string]float64{"in": 25.4, "cm": 10, "mm": 1}
)

// readLength reads "13 3/4", "40,4 cm" or "5 mm".
func readLength(text, bare string) (mm float64, err error) {
	m := lengthForm.FindStringSubmatch(text)
	if m == nil {
		return 0, fmt.Errorf("no length: %q", text)
	}
	for _, part := range strings.Fields(m[2]) {
		above, below, fraction := strings.Cut(strings.Replace(part, ",", ".", 1), "/")
		n, err := strconv.ParseFloat(above, 64)
		if err != nil {
			return 0, err
		}
		if fraction {
			d, err := strconv.ParseFloat(below, 64)
			if err != nil {
				return 0, err
			}
			n /= d
		}
		mm += n
	}
	unit := m[3]
	if unit == "" {
		unit = bare
	}
	if m[1] != "" {
		mm = -mm
	}
	return mm * perUnit[unit], nil
}
