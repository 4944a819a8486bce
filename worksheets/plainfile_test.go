package worksheets_test

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"capscye/worksheets"
)

// agree fails unless a file that is read plainly reads the same by the reader
// of all TOML, which is the judge.
func agree(t rapid.TB, source string) {
	t.Helper()
	if !worksheets.ReadsPlainly([]byte(source)) {
		return
	}
	got, err := worksheets.Decode("blouse.toml", []byte(source))
	if err != nil { // refused by its size or depth
		return
	}
	want, err := worksheets.DecodeAny("blouse.toml", []byte(source))
	if err != nil {
		t.Fatalf("%q is read, and is no TOML: %v", source, err)
	}
	if !reflect.DeepEqual(got, want) {
		t.Fatalf("%q\n got %+v\nwant %+v", source, got, want)
	}
	if p, q := messages(got.Problems()), messages(want.Problems()); !slices.Equal(p, q) {
		t.Fatalf("%q\n got %q\nwant %q", source, p, q)
	}
}

// What the program writes itself, and its examples, are plain: else the fast
// way would be there for nothing.
func TestWhatTheProgramWritesIsReadPlainly(t *testing.T) {
	for _, name := range worksheets.Examples() {
		source := exampleSource(t, name)
		if agree(t, source); !worksheets.ReadsPlainly([]byte(source)) {
			t.Errorf("the example %s is not read plainly", name)
		}
	}
	full := filledSheet(t)
	full.Done = []string{"sleeve-mark", "sleeve-pin"}
	full.Fittings = []worksheets.Fitting{{Date: "2026-11-20", Note: "tight \"here\"\nand there"}, {Note: "no day"}}
	full.Sizes = decode(t, sized).Sheet.Sizes
	full.Set(worksheets.Notes, "two\n\tlines, \"quoted\", C:\\sheets")
	for _, s := range []worksheets.Sheet{{}, full} {
		source, _ := encode(t, worksheets.New(s))
		if agree(t, source); !worksheets.ReadsPlainly([]byte(source)) {
			t.Errorf("a new file is not read plainly:\n%s", source)
		}
	}
}

// What is no plain file, or none at all, is left to the judge.
func TestWhatIsNotPlainIsLeftAlone(t *testing.T) {
	for _, source := range []string{
		"[body]\nbicep = 13 3/4\n", "[body]\nbicep = \"13\" 3\n", "[body]\nbicep = \"13\n", "[body]\nbicep = \"13\\\"", "[body]\nbicep = '13'\n",
		"[body]\nbicep = \"\"\"13\"\"\"\n", "[body]\nbicep =\n", "[body]\nbicep\n", "[body]\n= \"1\"\n", "[body]\nbicep = \"a\\u0041\"\n", "[body]\nbicep = \"\\q\"\n",
		"[body]\nbicep = \"13\"\nbicep = \"14\"\n", "[body]\nBicep = \"13\"\n", "[body]\nneck = \"15\"\n", "[body]\n[body]\n", "[body] x\n", "[body\n", "[ body ]\n", "[[body]]\n", "[fitting]\n",
		"[lining]\n", "[body]\nbicep = 13\n", "[body]\nmeasured_on = 2026-02-30\n", "[body]\nmeasured_on = 0000-01-01\n", "[body]\nmeasured_on = 2026-10-03T07:32:00\n",
		"[bodice]\ncrossings = 12\n", "[bodice]\ncrossings = -1\n", "[bodice]\ncrossings = 1.0\n", "[bodice]\ncrossings = 01\n",
		"version = 2\n", "version = 1\nversion = 1\n", "version = 10\n", "version = \"1\"\n", "title = \"x\"\n", "body.bicep = \"13\"\n",
		"[progress]\ndone = [\"a\" \"b\"]\n", "[progress]\ndone = [,]\n", "[progress]\ndone = [\"a\",,]\n", "[progress]\ndone = [\n]\n", "[progress]\ndone = [1]\n",
		"[progress]\ndone = []\ndone = []\n", "[progress]\ndone = [\"a\"] x\n", "[progress]\ndone = \"a\"\n", "[progress]\nstep = []\n",
		"[size.sleeve]\nwidth = \"13\"\n", "[[size]]\nwidth = \"13\"\n", "[[size]]\nname = 16\n", "[[size]]\nname = \"16\"\nname = \"16\"\n", "[[size]]\n[size.trim]\n", "[[size]] x\n", "[size]\n",
		"[[size]]\n[size.sleeve]\n[size.sleeve]\n", "[[size]]\n[size.sleeve]\nmeasured = \"seam\"\n", "[[size]]\n[[size.sleeve]]\n", "[[size]]\n[size.bodice]\nfront = \"1\" 2\n",
		"[[fitting]]\ndate = \"today\"\n", "[[fitting]]\ndate = 2026-11-20\ndate = 2026-11-20\n", "[[fitting]]\nnote = \"a\"\nnote = \"b\"\n", "[[fitting]]\nnote = 1\n", "[[fitting]]\nwho = \"x\"\n",
		"[[fitting]]\nnote = \"a\" x\n", "[[fitting]]\ndate = 2026-11-20 x\n",
		"\ufeff[body]\n", "[body]\r", "# a\rb\n", "[about]\ntitle = \"a\rb\"\n", "[progress]\ndone = [\"\"\"a\"\"\"]\n", "[body]\nbicep = \"\"\"\"\"\"\n", "[body]\rbicep = \"13\"\n", "# \x00\n", "# \x1b[2J\n", "# \x7f\n", "# \xff\n", "[about]\ntitle = \"\x07\"\n",
	} {
		if worksheets.ReadsPlainly([]byte(source)) {
			t.Errorf("%q is read plainly", source)
		}
	}
}

// Sheets of any answers, and lines of any order, read alike.
func TestPlainFilesReadAlike(t *testing.T) {
	plain := 0
	rapid.Check(t, func(t *rapid.T) {
		var s worksheets.Sheet
		for range rapid.IntRange(0, 20).Draw(t, "changes") {
			change(t, &s)
		}
		source, _, err := worksheets.New(s).Encode()
		if err != nil {
			t.Fatal(err)
		}
		lines := strings.SplitAfter(string(source), "\n")
		for range rapid.IntRange(0, 3).Draw(t, "moves") {
			i, j := rapid.IntRange(0, len(lines)-1).Draw(t, "from"), rapid.IntRange(0, len(lines)-1).Draw(t, "to")
			switch rapid.IntRange(0, 2).Draw(t, "kind of move") {
			case 0:
				lines[i], lines[j] = lines[j], lines[i]
			case 1:
				lines[i] = lines[j]
			case 2:
				lines[i] = strings.TrimSuffix(lines[i], "\n") + rapid.SampledFrom([]string{"\r\n", " # x\n", "\t\n", "\"\n", "]\n", ""}).Draw(t, "end")
			}
		}
		file := strings.Join(lines, "")
		if agree(t, file); worksheets.ReadsPlainly([]byte(file)) {
			plain++
		}
	})
	if plain == 0 {
		t.Error("not one of the files was plain")
	}
}

// FuzzPlainFile holds the two readers together on any bytes.
func FuzzPlainFile(f *testing.F) {
	from := starts(f)
	for _, name := range slices.Sorted(maps.Keys(from)) {
		f.Add(from[name])
	}
	for _, value := range []string{`"13 3/4"`, `"13\"" # x`, `"\\\n\t"`, `""`, `"a" # "b`, "2026-10-03", "2026-10-03 # x", "2026-10-03 07:32:00", "1", "1_0", "0x1", `["a", "b",]`, "[]", "[ ]#"} {
		for _, key := range []string{"[body]\nmeasured_on", "[bodice]\ncrossings", "[progress]\ndone", "[[fitting]]\ndate", "[[fitting]]\nnote", "version"} {
			f.Add(fmt.Sprintf("%s = %s\r\n[about]\ntitle=%s\n", key, value, value))
		}
	}
	f.Fuzz(func(t *testing.T, source string) { agree(t, source) })
}
