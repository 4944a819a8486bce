package worksheets_test

import (
	"bytes"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/BurntSushi/toml"
	other "github.com/pelletier/go-toml/v2"
	"pgregory.net/rapid"

	"capscye/units"
	"capscye/worksheets"
)

// tree is a TOML file as its reader gives it.
func tree(t testing.TB, source string) map[string]any {
	t.Helper()
	var all map[string]any
	if _, err := toml.Decode(strings.TrimPrefix(source, "\ufeff"), &all); err != nil {
		t.Fatalf("no TOML: %v\n%q", err, source)
	}
	return all
}

// strangers is everything in a file that is not of the worksheet.
func strangers(t testing.TB, source string) string {
	t.Helper()
	all := tree(t, source)
	delete(all, "fitting")
	withoutSizes(all)
	for _, path := range append(paths(), "progress.done") {
		table, name, _ := strings.Cut(path, ".")
		if in, ok := all[table].(map[string]any); ok {
			delete(in, name)
		}
	}
	for name, value := range all {
		if in, ok := value.(map[string]any); ok && len(in) == 0 {
			delete(all, name)
		}
	}
	return fmt.Sprint(all)
}

// withoutSizes takes what the worksheet has of sizes out of the tree of a file; of a size
// that says nothing else, everything.
func withoutSizes(all map[string]any) {
	list, _ := all["size"].([]map[string]any)
	inline, _ := all["size"].([]any)
	for _, size := range inline {
		if table, ok := size.(map[string]any); ok {
			list = append(list, table)
		}
	}
	var left []any
	for _, size := range list {
		for _, k := range worksheets.SizeKeys() {
			table, name, _ := strings.Cut(k.Path(), ".")
			if in, ok := size[table].(map[string]any); ok {
				if delete(in, name); len(in) == 0 {
					delete(size, table)
				}
			}
			delete(size, map[string]string{"size": "name", "chart_bust": "chart_bust", "chart_high_bust": "chart_high_bust"}[name])
		}
		if len(size) > 0 {
			left = append(left, size)
		}
	}
	if all["size"] = left; len(left) == 0 {
		delete(all, "size")
	}
}

func paths() []string {
	var all []string
	for _, k := range worksheets.Keys() {
		all = append(all, k.Path())
	}
	return all
}

// otherReader asks a second reader of TOML whether it can read the file too.
func otherReader(t rapid.TB, source string) {
	t.Helper()
	var all map[string]any
	if err := other.Unmarshal(bytes.TrimPrefix([]byte(source), []byte("\ufeff")), &all); err != nil {
		t.Errorf("another program cannot read the file: %v\n%q", err, source)
	}
}

// hostile is a file that a person with odd habits wrote.
const hostile = "\ufeff# mine\r\nversion=1\r\n'odd.key' = [1,\r\n  {a = 'x'}, # [body]\r\n]\n" +
	"method.pivot_limit_sleeve = \"1\" # dotted\nmethod.pivot_limit_bodice = ''\r\nmethod . front_share_sleeve='1/2'\nmethod.'front_share_bust' = \"55 %\"\n" +
	"method.slide = \"\"\"\r\neven\"\"\"\n\"method\".follow = 'hold'\nmethod.armhole = \"keep\"\n" +
	"sleeve = { width = \"13\", cuff = { kind = \"band\" }, length = 'long' } # all in one line\n" +
	"\n\n  [ about ] # [ease]\n\t\ttitle\t=\t'''it's \"mine\"''' # bust = \"1\"\nunit = 'cm'\nTitle = \"no\"\n" +
	"[\"body\"]\n  'bust' = \"\"\"100\"\"\"#close\n measured_on = 2026-10-03 # a day\n  [body.left]\n  knee = 40\n" +
	"[[ size ]] # the green line\n'name' = '14'\n sleeve.width = '13' # loose\\n[size . bodice]\nfront=\"\"\"10 1/4\"\"\" # [[size]]\n[size.trim]\nlace = 2\n" +
	"[[size]]\nname = \"16\" # the blue line\nsleeve = { width = '13 1/2', cuff = 3 }\nline = 'dashed'\n" +
	"[[ fitting ]]\nnote = '''\ntight\n[body]'''\ndate = 2026-11-20\n[bodice]\ncrossings = 0x2\n# nothing behind this"

// sized is a file with two sizes besides the one in hand, and with more in them.
const sized = `# three sizes
version = 1
[pattern]
size = "14" # ours

[sleeve]
width = "13"

[[size]]
name = "16" # the blue line
chart_bust = "38"
line = "dashed"
[size.sleeve]
width = "13 1/2" # twice
cuff = "8"

[size.bodice]
front = "10 3/4"
back = "10 1/4"
# the next size

[[size]]
name = "18"
[size.bodice]   # no sleeve
back = "10 3/4"

# the end
[method]
slide = "even"
`

// starts are the files that the properties begin with.
func starts(t testing.TB) map[string]string {
	t.Helper()
	all := map[string]string{"hostile": hostile, "sized": sized, "whole": wholeFile, "empty": "", "one table": "[body]"}
	for _, name := range worksheets.Examples() {
		all[name] = exampleSource(t, name)
	}
	return all
}

func TestAFileIsTheSameBytesUntilTheSheetChanges(t *testing.T) {
	for name, source := range starts(t) {
		d := decode(t, source)
		if out, lost := encode(t, d); out != source || lost {
			t.Errorf("%s: written as %q, lost %v", name, out, lost)
		}
		d.Sheet.Set(worksheets.Hip, "41")
		first, _ := encode(t, d)
		again := decode(t, first)
		if second, lost := encode(t, again); second != first || lost {
			t.Errorf("%s: %q is written as %q, lost %v", name, first, second, lost)
		}
	}
}

// typed draws what somebody might type: answers, TOML, anything printable.
func typed() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"", "13 3/4", "34,9 cm", "349 mm", "-1/2", "½", "0", "1", "2", "7", "in", "cm", "even", "hold", "55 %", "2026-10-04", "2026-02-30",
			`"`, `'`, `"""`, `'''`, `\`, `\u0041`, `a"b'c\`, "# no comment", "[body]", "[[fitting]]", "bust = \"1\"", "a\nb", "a\r\nb", "\x1b[31m", "\u202e", "\ufeff", "\x00\x7f", "true", "[]", "{}"}),
		rapid.StringOfN(rapid.RuneFrom(nil, unicode.L, unicode.N, unicode.P, unicode.S, unicode.Zs), 0, 20, -1),
	)
}

func TestAnySheetThatIsTypedComesBackFromItsFile(t *testing.T) {
	from := starts(t)
	for _, name := range slices.Sorted(maps.Keys(from)) { // the draws depend on the order
		source := from[name]
		rapid.Check(t, func(t *rapid.T) {
			d, err := worksheets.Decode(name, []byte(source))
			if err != nil {
				t.Fatal(err)
			}
			for range rapid.IntRange(1, 8).Draw(t, "changes") {
				change(t, &d.Sheet)
				out, lost, err := d.Encode()
				if err != nil {
					t.Fatalf("%s: %v", name, err)
				}
				again, err := worksheets.Decode(name, out)
				if err != nil || !again.Sheet.Equal(d.Sheet) {
					t.Fatalf("%s: %v\n%q\nsays %+v\nnot  %+v", name, err, out, again, d.Sheet)
				}
				if lost && name != "hostile" {
					t.Fatalf("%s: comments are lost", name)
				}
				if rapid.Bool().Draw(t, "saved") {
					d = again
				}
			}
		})
	}
}

// changeSize adds, changes or removes a size, or takes one in hand.
func changeSize(t *rapid.T, s *worksheets.Sheet) {
	some := rapid.IntRange(0, max(0, len(s.Sizes)-1)).Draw(t, "which size")
	key, text := rapid.SampledFrom(worksheets.SizeKeys()).Draw(t, "key of a size"), typed().Draw(t, "text")
	switch what := rapid.IntRange(0, 4).Draw(t, "change of a size"); {
	case what == 0 || len(s.Sizes) == 0:
		z := worksheets.Size{}.With(worksheets.PatternSize, text).With(key, text)
		*s = s.WithSize(len(s.Sizes), z)
	case what == 1:
		*s = s.WithoutSize(some)
	case what == 2:
		*s = s.TakeInHand(some)
	default:
		*s = s.WithSize(some, s.Sizes[some].With(key, text))
	}
}

// change types one answer, or does a step, or notes a fitting, or changes a size.
func change(t *rapid.T, s *worksheets.Sheet) {
	switch rapid.IntRange(0, 9).Draw(t, "kind of change") {
	case 0:
		s.Done = rapid.SliceOfN(typed(), 0, 4).Draw(t, "done")
	case 1, 2, 3:
		changeSize(t, s)
	case 4:
		f := worksheets.Fitting{Date: typed().Draw(t, "date"), Note: typed().Draw(t, "note")}
		s.Fittings = append(s.Fittings[:len(s.Fittings):len(s.Fittings)], f)
	default:
		s.Set(rapid.SampledFrom(worksheets.Keys()).Draw(t, "key"), typed().Draw(t, "text"))
	}
}

func TestWhatIsUnknownOutlivesAnyChange(t *testing.T) {
	want := strangers(t, hostile)
	rapid.Check(t, func(r *rapid.T) {
		d := decode(t, hostile)
		for range rapid.IntRange(1, 6).Draw(r, "changes") {
			was := d.Sheet
			change(r, &d.Sheet)
			for _, name := range []string{"14", "16"} { // what else a size says goes with it
				if _, ok := d.Sheet.SizeNamed(name); !ok {
					d.Sheet = was
				}
			}
		}
		out, _ := encode(t, d)
		if got := strangers(t, out); got != want {
			r.Fatalf("unknown keys\n got %s\nwant %s\nin %q", got, want, out)
		}
		otherReader(r, out)
	})
}

func TestANewFileSaysTheSameAndHasEveryKey(t *testing.T) {
	full := filledSheet(t)
	full.Done = []string{"sleeve-mark", "sleeve-pin"}
	full.Fittings = []worksheets.Fitting{{Date: "2026-11-20", Note: "tight \"here\""}, {Note: "no day"}}
	full.Sizes = decode(t, sized).Sheet.Sizes
	for name, s := range map[string]worksheets.Sheet{"filled": full, "empty": {}} {
		source, lost := encode(t, worksheets.New(s))
		d := decode(t, source)
		if p, u := messages(d.Problems()), messages(d.Unknown()); p != nil || u != nil || d.ReadOnly != "" || lost {
			t.Errorf("%s: problems %q, unknown %q, read-only %q, lost %v", name, p, u, d.ReadOnly, lost)
		}
		all := tree(t, source)
		if all["version"] != int64(worksheets.Version) {
			t.Errorf("%s: version is %v", name, all["version"])
		}
		for _, path := range append(paths(), "progress.done") {
			table, key, _ := strings.Cut(path, ".")
			in, _ := all[table].(map[string]any)
			if _, ok := in[key]; !ok && path != "body.measured_on" { // a day is there or not
				t.Errorf("%s: a new file has no %s", name, path)
			}
		}
		for _, k := range worksheets.Keys() {
			if s.Text(k) != "" && d.Sheet.Text(k) != s.Text(k) {
				t.Errorf("%s: %v says %q, said %q", name, k, d.Sheet.Text(k), s.Text(k))
			}
			if got, want := meaning(d.Sheet, k), meaning(s, k); got != want {
				t.Errorf("%s: %v means %v, meant %v", name, k, got, want)
			}
		}
		if !reflect.DeepEqual([]any{append([]string{}, d.Sheet.Done...), d.Sheet.Fittings, d.Sheet.Sizes}, []any{append([]string{}, s.Done...), s.Fittings, s.Sizes}) {
			t.Errorf("%s: done %q, fittings %q and sizes %q", name, d.Sheet.Done, d.Sheet.Fittings, d.Sheet.Sizes)
		}
		otherReader(t, source)
	}
	if source, _ := encode(t, worksheets.New(full)); !decode(t, source).Sheet.Equal(full) {
		t.Error("a new file of a filled sheet says something else")
	}
}

// meaning is what an answer comes to.
func meaning(s worksheets.Sheet, k worksheets.Key) any {
	switch k.Kind() {
	case worksheets.Choice:
		return s.Choice(k)
	case worksheets.Scale:
		return s.Ruler()
	case worksheets.Part:
		return s.Share(k)
	case worksheets.Count:
		return s.Count(k)
	case worksheets.Text, worksheets.Date:
		return s.Text(k)
	}
	r, err := s.Length(k)
	return struct {
		units.Reading
		string
	}{r, fmt.Sprint(err)}
}
