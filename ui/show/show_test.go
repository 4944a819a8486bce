package show

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/exp/golden"

	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/ui/tracing"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// The printed sheet of every example, with its working. An example is judged by
// eye once; the arithmetic is checked in calc.
func TestShowAsPrinted(t *testing.T) {
	for _, name := range worksheets.Examples() {
		t.Run(name, func(t *testing.T) {
			status, out, errs := run("", "show", "--working", props.Example(name))
			if status != 0 || errs != "" {
				t.Errorf("status %d, %s", status, errs)
			}
			for _, l := range strings.Split(out, "\n") {
				if len([]rune(l)) > typeset.PrintWidth {
					t.Errorf("%d columns: %q", len([]rune(l)), l)
				}
			}
			golden.RequireEqual(t, out)
		})
	}
}

// The keys of the JSON are a contract. This is the list that other programs
// rely on, each with its kind: n for a number or null.
func TestJSONHasEveryKey(t *testing.T) {
	_, out, _ := run("", "show", "--json", props.Example("choir-blouse"))
	var tree map[string]any
	if err := json.Unmarshal([]byte(out), &tree); err != nil {
		t.Fatal(err)
	}
	number := func(path ...string) any {
		t.Helper()
		var at any = tree
		for _, p := range path {
			m, ok := at.(map[string]any)
			if !ok {
				t.Fatalf("%v is no object", path)
			}
			if at, ok = m[p]; !ok {
				t.Errorf("%v is missing", path)
				return nil
			}
		}
		if _, ok := at.(float64); !ok && at != nil {
			t.Errorf("%v is %v", path, at)
		}
		return at
	}
	if tree["title"] != "Choir blouse" || tree["unit"] != "in" {
		t.Errorf("title %v, unit %v", tree["title"], tree["unit"])
	}
	for _, side := range []string{"sleeve_front", "sleeve_back", "bodice_front", "bodice_back"} {
		for _, key := range []string{
			"need_mm", "pivot_mm", "slide_mm", "total_mm", "left_over_mm", "pivot_mark_mm", "slide_mark_mm",
			"turn_deg", "lift_mm", "cap_height_after_mm", "seam_growth_mm",
		} {
			number("sides", side, key)
		}
	}
	for _, key := range []string{"bicep_mm", "bust_mm", "bicep_marked_mm", "bust_marked_mm", "bicep_ease_mm", "bust_ease_mm"} {
		number("finished", key)
	}
	for _, key := range []string{"cap_before_mm", "cap_after_mm", "armhole_before_mm", "armhole_after_mm", "cap_ease_before_mm", "cap_ease_after_mm"} {
		number("seams", key)
	}
	// The sums of the example by hand: T = B = 2 1/2 in = 63.5 mm, 1 1/4 and 5/8
	// a side; slide 1/4, pivots 1 and 3/8.
	for _, c := range []struct {
		want float64
		path []string
	}{
		{63.5, []string{"need", "sleeve_mm"}}, {63.5, []string{"need", "bust_mm"}},
		{6.35, []string{"slide_band", "front", "low_mm"}}, {31.75, []string{"slide_band", "back", "high_mm"}},
		{31.75, []string{"sides", "sleeve_front", "need_mm"}}, {25.4, []string{"sides", "sleeve_back", "pivot_mm"}},
		{6.35, []string{"sides", "bodice_front", "slide_mm"}}, {9.525, []string{"sides", "bodice_back", "pivot_mark_mm"}},
		{393.7, []string{"finished", "bicep_mm"}}, {1079.5, []string{"finished", "bust_marked_mm"}},
		{44.45, []string{"finished", "bicep_ease_mm"}}, {76.2, []string{"finished", "bust_ease_mm"}},
	} {
		if got := number(c.path...); got != c.want {
			t.Errorf("%v = %v, want %v", c.path, got, c.want)
		}
	}
	finding := tree["findings"].([]any)[0].(map[string]any)
	if finding["code"] != "pivot-and-slide" || finding["level"] != "note" || finding["about"] != "sleeve" || finding["text"] == "" {
		t.Errorf("finding %v", finding)
	}
}

// null is unknown: never zero, and never left out.
func TestJSONOfAnEmptySheet(t *testing.T) {
	status, out, _ := run("version = 1\n", "show", "--json", "-")
	if status != 1 {
		t.Errorf("status %d: an answer is required", status)
	}
	for _, want := range []string{`"sleeve_mm": null`, `"need_mm": null`, `"bicep_mm": null`, `"cap_before_mm": null`, `"code": "nothing-asked"`} {
		if !strings.Contains(out, want) {
			t.Errorf("%s is not in\n%s", want, out)
		}
	}
}

func TestSeveralFilesAreOneArray(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("broken.toml", []byte("bicep = = 3\n"), 0o644)
	status, out, errs := run("", "show", "--json", props.Example("choir-blouse"), "broken.toml", props.Example("archive-coat"))
	var list []map[string]any
	if err := json.Unmarshal([]byte(out), &list); err != nil {
		t.Fatalf("%v in\n%s", err, out)
	}
	if status != 2 || len(list) != 3 || list[0]["title"] != "Choir blouse" || list[1]["file"] != "broken.toml" || list[2]["unit"] != "cm" {
		t.Errorf("status %d: %v", status, list)
	}
	if !strings.Contains(errs, "broken.toml, line 1") {
		t.Errorf("errors: %s", errs)
	}
}

// A width that nobody says how it was measured makes no need in the JSON either.
func TestAWidthWithoutMeasuredHasNoNeed(t *testing.T) {
	for measured, want := range map[string]string{"": `"sleeve_mm": null`, "measured = \"\"\n": `"sleeve_mm": null`, "measured = \"seam\"\n": `"sleeve_mm": 25.4`} {
		sheet := "[body]\nbicep = \"13\"\n[ease]\nbicep = \"2\"\n[sleeve]\n" + measured + "width = \"14\"\n"
		_, out, _ := run(sheet, "show", "--json", "-")
		if !strings.Contains(out, want) || strings.Contains(out, `"answer-missing"`) != strings.Contains(want, "null") {
			t.Errorf("%q: %s is not in %s", measured, want, out)
		}
	}
}

func TestExitStatusAndMessages(t *testing.T) {
	t.Chdir(t.TempDir())
	write := func(name, text string) {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("half.toml", "[body]\nbicep = \"13\"\n")
	write("unreadable.toml", "[body]\nbicep = \"13\"\n[ease]\nbicep = \"1/0\"\n[sleeve]\nmeasured = \"seam\"\nwidth = \"12\"\n")
	write("stop.toml", "[body]\nbicep = \"20\"\n[ease]\nbicep = \"2\"\n[sleeve]\nmeasured = \"seam\"\nwidth = \"12\"\n[method]\narmhole = \"keep\"\n")
	write("whole.toml", "[body]\nbicep = \"13\"\n[ease]\nbicep = \"2\"\n[sleeve]\nmeasured = \"seam\"\nwidth = \"14\"\n[lining]\ncolour = \"grey\"\n")
	write("older.toml", "[body]\nbicep = \"13\"\n[ease]\nbicep = \"2\"\n[sleeve]\nwidth = \"14\"\n")
	write("syntax.toml", "[body]\nbicep = 13 3/4\n")
	for _, c := range []struct {
		args   []string
		status int
		errs   string
	}{
		{[]string{"show", "whole.toml"}, 0, "whole.toml, line 8: lining: no such key here; it stays in the file and is not used"},
		{[]string{"show", "half.toml"}, 1, ""},
		{[]string{"show", "stop.toml"}, 1, ""},
		{[]string{"show", "older.toml"}, 1, ""}, // nobody says how that width was measured
		{[]string{"show", "unreadable.toml"}, 1, `unreadable.toml, line 4: ease.bicep: "1/0" is not a length: the number after the slash is 0. Write it like 13 3/4`},
		{[]string{"show", "syntax.toml"}, 2, `syntax.toml, line 2, "bicep = 13 3/4"`},
		{[]string{"show", "absent.toml"}, 2, "absent.toml: there is no such file"},
		{[]string{"show", "."}, 2, ".: it is a folder"},
		{[]string{"show"}, 2, "show needs a file"},
		{[]string{"show", "--shove"}, 2, "there is no --shove here; capscye show --help lists what there is"},
		{[]string{"show", "--help"}, 0, ""},
	} {
		status, out, errs := run("", c.args...)
		if status != c.status || !strings.Contains(errs, c.errs) || c.errs == "" && errs != "" {
			t.Errorf("%v: status %d, want %d; errors %q, want %q", c.args, status, c.status, errs, c.errs)
		}
		if c.status == 2 && out != "" {
			t.Errorf("%v: results on standard output: %s", c.args, out)
		}
	}
}

// What is printed from a file does nothing to a terminal, on either stream.
func TestHostileFileIsPrintedHarmlessly(t *testing.T) {
	source := "[about]\ntitle = \"a\\u001b]0;own\\u0007b\\u202Ec\\u009Bd\"\nnotes = \"\\u001b[2J\\nsecond\"\n[body]\nbicep = \"\\u001b[31m\"\n\"\\u001b[5m\" = 1\n"
	for _, args := range [][]string{{"show", "-"}, {"show", "--json", "-"}, {"show", "--working", "-"}, {"show", "x\x1b[2J.toml"}} {
		_, out, errs := run(source, args...)
		for _, c := range out + errs {
			if c != '\n' && typeset.Unprintable(c) {
				t.Errorf("%v prints %U raw", args, c)
			}
		}
	}
	_, out, _ := run(source, "show", "--json", "-")
	var tree map[string]any
	if err := json.Unmarshal([]byte(out), &tree); err != nil || tree["title"] != "a\x1b]0;own\ab\u202ec\u009bd" {
		t.Errorf("the title does not survive: %q, %v", tree["title"], err)
	}
}

// Many files are worked at several at a time, and come out as one by one:
// results in their order, messages too, the worst status.
func TestManyFilesComeOutAsOneByOne(t *testing.T) {
	t.Chdir(t.TempDir())
	rnd := rand.New(rand.NewPCG(20261125, 2))
	names := []string{"absent.toml"}
	for i := range props.OfMany(24, 60) {
		name := fmt.Sprintf("sheet-%02d.toml", i)
		source, _, err := props.RandomDocument(rnd).Encode()
		if i%9 == 4 {
			source = []byte("[body]\nbicep = 13 3/4\n")
		}
		if err := errors.Join(err, os.WriteFile(name, source, 0o644)); err != nil {
			t.Fatal(err)
		}
		names = append(names, name)
	}
	for _, o := range [][]string{{"show"}, {"show", "--json"}} {
		var texts []string
		wantErrs := ""
		for i, name := range names {
			_, out, errs := run("", append(o, name)...)
			wantErrs += errs
			switch {
			case len(o) == 2 && out != "":
				texts = append(texts, strings.TrimSuffix(out, "\n"))
			case len(o) == 2:
				line, _ := strings.CutPrefix(strings.TrimSuffix(errs, "\n"), "capscye: ")
				failure, err := Encode(Failure{name, line})
				if err != nil {
					t.Fatal(err)
				}
				texts = append(texts, strings.TrimSuffix(string(failure), "\n"))
			case out != "" && i > 0:
				texts = append(texts, strings.Repeat("-", typeset.PrintWidth)+"\n"+out)
			}
		}
		want := strings.Join(texts, "")
		if len(o) == 2 {
			want = "[\n" + strings.Join(texts, ",\n") + "\n]\n"
		}
		status, out, errs := run("", append(o, names...)...)
		if status != 2 || out != want || errs != wantErrs {
			t.Errorf("%v: status %d\n got %q\n%q\nwant %q\n%q", o, status, out, errs, want, wantErrs)
		}
	}
}

// Standard input is read by whom it is named for first, and to its end, however
// slowly it comes.
func TestStandardInputIsReadInItsPlace(t *testing.T) {
	in := &slowly{parts: []string{"[about]\n", "title = ", "\"From a pipe\"\n"}}
	var out, errs bytes.Buffer
	runWith(in, &out, &errs, "show", props.Example("choir-blouse"), "-", "-", props.Example("archive-coat"))
	at := -1
	for _, title := range []string{"Choir blouse", "From a pipe", "standard input", "Work coat"} {
		next := strings.Index(out.String(), title)
		if next <= at {
			t.Fatalf("%q is not in its place: %s\n%s", title, errs.String(), out.String())
		}
		at = next
	}
}

// slowly is a pipe that is written to part by part.
type slowly struct {
	mu    sync.Mutex
	parts []string
}

func (s *slowly) Read(b []byte) (int, error) {
	time.Sleep(2 * time.Millisecond)
	s.mu.Lock()
	defer s.mu.Unlock()
	if len(s.parts) == 0 {
		return 0, io.EOF
	}
	n := copy(b, s.parts[0])
	s.parts = s.parts[1:]
	return n, nil
}

// Any two lengths of a sheet may be nothing, tiny or as long as lengths are read:
// the sheet is reckoned, and every number of its JSON is one.
func TestNoTwoLengthsAreTooSmallOrTooLarge(t *testing.T) {
	d, err := worksheets.Example("archive-coat") // a long sleeve
	if err != nil {
		t.Fatal(err)
	}
	usual := d.Sheet
	set := func(text string, keys ...worksheets.Key) {
		d.Sheet = usual
		for _, k := range keys {
			_ = d.Sheet.Set(k, text) // a girth of nothing cannot be read, and is one more case
		}
		r := report.Reckon(d, props.SomeDay, 0)
		out, err := Encode(SheetOf(r, true))
		if err != nil || strings.Contains(string(out), "9223372036854") {
			t.Errorf("%v = %q: %v", keys, text, err)
		}
		for _, l := range r.Worked() {
			if strings.Contains(l.Text, "NaN") || strings.Contains(l.Text, "Inf") {
				t.Errorf("%v = %q: %s", keys, text, l.Text)
			}
		}
	}
	for _, text := range []string{"0", "0.0001 in", "1/64 in", "100 m", "9999 cm", "-1"} {
		for i, one := range worksheets.Keys() {
			if !one.IsLength() {
				continue
			}
			for n, other := range worksheets.Keys()[i:] {
				if other.IsLength() && (text == "0" && n%props.OfMany(3, 1) == 0 || one == other) {
					set(text, one, other)
				}
			}
		}
		set(text, worksheets.Keys()...)
	}
	for _, s := range []worksheets.Section{worksheets.BodySection, worksheets.PatternSection} {
		set("0", s.Keys()...)
	}
}

func TestTraceCommand(t *testing.T) {
	status, out, errs := run("", "trace", props.Example("choir-blouse"))
	if status != 0 || errs != "" || out != tracing.Text(props.Planned(t, 0)) {
		t.Errorf("status %d, %s\n%s", status, errs, out)
	}
	if status, _, errs := run("", "trace"); status != 2 || !strings.Contains(errs, "name one file") {
		t.Errorf("status %d, %s", status, errs)
	}
	t.Chdir(t.TempDir())
	os.WriteFile("half.toml", []byte("[body]\nbicep = \"13\"\n"), 0o644)
	if status, out, _ := run("", "trace", "half.toml"); status != 1 || !strings.Contains(out, "No amounts yet: answers are missing.") {
		t.Errorf("status %d\n%s", status, out)
	}
}

// A corner far inside its pin turns nowhere, and that is a stop; the JSON is sound.
func TestACornerInsideItsPin(t *testing.T) {
	t.Chdir(t.TempDir())
	sheet := "[body]\nbust = \"40\"\n[ease]\nbust = \"4\"\n[bodice]\nmeasured = \"seam\"\nfront = \"10\"\nback = \"10\"\nside_seam = \"8\"\n" +
		"corner_out_front = \"-5\"\ncorner_down_front = \"1\"\ncorner_out_back = \"-1\"\ncorner_down_back = \"7\"\n"
	os.WriteFile("inside.toml", []byte(sheet), 0o644)
	status, out, errs := run("", "show", "--json", "inside.toml")
	if status != 1 || errs != "" || !strings.Contains(out, `"out-of-reach"`) || strings.Contains(out, "NaN") {
		t.Errorf("status %d, %s\n%s", status, errs, out)
	}
}
