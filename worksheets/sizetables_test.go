package worksheets_test

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"capscye/worksheets"
)

// noted is a file whose sizes each say something that is nobody else's.
const noted = `version = 1
[pattern]
size = "14"
[sleeve]
width = "13"

# above 18
[[size]]
name = "18"
paper = "18" # sheet 18
[size.sleeve]
# inside 18
width = "14"

[[size]]
name = "16"
paper = "16" # sheet 16
[size.bodice]
front = "11"
[size.trim]
lace = 16
# below 16

[progress]
done = []
[[fitting]]
note = "tight"
`

// inFolder is a worksheet in a folder of its own.
func inFolder(t testing.TB, source string) *worksheets.Document {
	t.Helper()
	path := filepath.Join(t.TempDir(), "blouse.toml")
	if err := os.WriteFile(path, []byte(source), 0o644); err != nil {
		t.Fatal(err)
	}
	return load(t, path)
}

// saved saves a sheet and gives the file, and the name of what was put beside it.
func saved(t testing.TB, d *worksheets.Document, s worksheets.Sheet) (source, beside string) {
	t.Helper()
	d.Sheet = s
	beside, err := d.Save()
	if err != nil {
		t.Fatal(err)
	}
	return string(readFile(t, d.Path())), beside
}

// What a size says besides our answers goes with it and comes back with it, byte for
// byte, in its place among the others; what a save took out lies beside the file.
func TestASizeThatComesBackHasWhatItSaid(t *testing.T) {
	table := func(name, width string) worksheets.Size {
		return worksheets.Size{}.With(worksheets.PatternSize, name).With(worksheets.SleeveWidth, width)
	}
	type edit = func(s worksheets.Sheet) worksheets.Sheet
	without := func(i int) edit { return func(s worksheets.Sheet) worksheets.Sheet { return s.WithoutSize(i) } }
	inHand := func(i int) edit { return func(s worksheets.Sheet) worksheets.Sheet { return s.TakeInHand(i) } }
	block := func(name, until string) string {
		return noted[strings.Index(noted, name):strings.Index(noted, until)]
	}
	first, second := block("\n# above 18", "\n[[size]]\nname = \"16\""), block("\n[[size]]\nname = \"16\"", "\n[progress]")
	const made = "\n[[size]]\nname = %q\n[size.sleeve]\nwidth = %q\n"
	for name, c := range map[string]struct {
		edits []edit // each saved; then all undone at once
		want  string
	}{
		"the first removed":       {[]edit{without(0)}, strings.Replace(noted, first, "", 1)},
		"the last removed":        {[]edit{without(1)}, strings.Replace(noted, second, "", 1)},
		"both removed":            {[]edit{without(0), without(0)}, strings.NewReplacer(first, "", second, "").Replace(noted)},
		"both in the other order": {[]edit{without(1), without(0)}, strings.NewReplacer(first, "", second, "").Replace(noted)},
		"taken in hand":           {[]edit{inHand(0)}, strings.NewReplacer(first, fmt.Sprintf(made, "14", "13"), `size = "14"`, `size = "18"`, "[sleeve]\nwidth = \"13\"", "[sleeve]\nwidth = \"14\"").Replace(noted)},
		"others put in their place": {[]edit{func(s worksheets.Sheet) worksheets.Sheet {
			s.Sizes = []worksheets.Size{table("40", "20"), s.Sizes[1], table("42", "21")}
			return s
		}}, strings.NewReplacer(first, fmt.Sprintf(made, "40", "20"), second, second+fmt.Sprintf(made, "42", "21")).Replace(noted)},
		"in another order": {[]edit{func(s worksheets.Sheet) worksheets.Sheet {
			s.Sizes = []worksheets.Size{s.Sizes[1], s.Sizes[0]}
			return s
		}}, strings.NewReplacer(first, "", second, second+first).Replace(noted)},
		"renamed": {[]edit{func(s worksheets.Sheet) worksheets.Sheet {
			return s.WithSize(0, s.Sizes[0].With(worksheets.PatternSize, "18 W"))
		}}, strings.Replace(noted, `name = "18"`, `name = "18 W"`, 1)},
	} {
		for _, crlf := range []bool{false, true} {
			ends := strings.NewReplacer()
			if crlf {
				ends = strings.NewReplacer("\n", "\r\n")
			}
			d := inFolder(t, ends.Replace(noted))
			before, got, beside := d.Sheet, "", ""
			for _, edit := range c.edits {
				var put string
				if got, put = saved(t, d, edit(d.Sheet)); put != "" {
					beside = put
				}
			}
			if got != ends.Replace(c.want) {
				t.Errorf("%s:\n got %s\nwant %s", name, got, c.want)
			}
			if kept := name == "renamed" || name == "in another order"; kept != (beside == "") {
				t.Errorf("%s: %q lies beside", name, beside)
			}
			if got, _ := saved(t, d, before); got != ends.Replace(noted) {
				t.Errorf("%s, undone:\n got %s\nwant %s", name, got, noted)
			}
		}
	}
}

// A pattern that is taken from another worksheet brings its own sizes, and says nothing
// under the comments of those that were there.
func TestAnotherPatternTakesNoComments(t *testing.T) {
	d := inFolder(t, "[sleeve]\nwidth = \"13\"\n[[size]]\nname = \"old\"\nmark = \"keep me\" # my comment\n[progress]\ndone = []\n")
	before, from := d.Sheet, decode(t, noted).Sheet
	s := before
	s.Take(worksheets.PatternSection, from, "tunic.toml")
	got, beside := saved(t, d, s)
	if strings.Contains(got, "keep me") || strings.Index(got, "[progress]") < strings.Index(got, `name = "16"`) || !strings.Contains(string(readFile(t, beside)), "keep me") {
		t.Errorf("%s\nbeside it %q", got, beside)
	}
	if got, _ := saved(t, d, before); !strings.Contains(got, "name = \"old\"\nmark = \"keep me\" # my comment\n[progress]") {
		t.Errorf("undone: %s", got)
	}
}

// A comment right above a table is of that, though it stands right below a size: it stays
// where the size goes, and the one below a size that nothing follows goes with it.
func TestACommentAboveATableStaysWhereASizeGoes(t *testing.T) {
	for source, want := range map[string]string{
		"[[size]]\nname = \"16\"\n# about the method\n# in two lines\n[method]\nslide = \"even\"\n": "# about the method\n# in two lines\n[method]\nslide = \"even\"\n",
		"[[size]]\nname = \"16\"\n# about the size\n\n[method]\nslide = \"even\"\n":                 "\n[method]\nslide = \"even\"\n",
	} {
		d := inFolder(t, "[sleeve]\nwidth = \"13\"\n"+source)
		before := d.Sheet
		if got, _ := saved(t, d, before.WithoutSize(0)); got != "[sleeve]\nwidth = \"13\"\n"+want {
			t.Errorf("without its size:\n%s", got)
		}
		if got, _ := saved(t, d, before); got != "[sleeve]\nwidth = \"13\"\n"+source {
			t.Errorf("undone:\n%s", got)
		}
	}
}

// Whatever is done to sizes, and however much of it at once is saved: what a size says
// besides our answers stands at the size of that name, or in a file beside.
func TestWhatASizeSaysStaysWithItsName(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		type state struct {
			sheet worksheets.Sheet
			of    map[string]string // name: whose paper it has
		}
		d := inFolder(t, noted)
		now := state{d.Sheet, map[string]string{"18": "18", "16": "16"}}
		history, ever := []state{now}, map[string][]string{"18": {"18"}, "16": {"16"}}
		for n := range rapid.IntRange(1, 10).Draw(r, "edits") {
			s, of := now.sheet, maps.Clone(now.of)
			i := rapid.IntRange(0, max(0, len(s.Sizes)-1)).Draw(r, "size")
			what := rapid.IntRange(0, 5).Draw(r, "edit")
			if len(s.Sizes) == 0 && what < 4 {
				what = 4
			}
			switch what {
			case 0:
				s = s.WithoutSize(i)
			case 1:
				s = s.TakeInHand(i)
			case 2:
				was, name := s.Sizes[i].Name(), fmt.Sprintf("renamed %d", n)
				s = s.WithSize(i, s.Sizes[i].With(worksheets.PatternSize, name))
				of[name] = of[was]
				delete(of, was)
				ever[name] = append(ever[name], of[name])
			case 3:
				s = s.WithSize(i, s.Sizes[i].With(worksheets.SleeveWidth, fmt.Sprint(10+n)))
			case 4:
				s = s.WithSize(len(s.Sizes), worksheets.Size{}.With(worksheets.PatternSize, fmt.Sprintf("new %d", n)).With(worksheets.BodiceBack, fmt.Sprint(20+n)))
			case 5:
				then := rapid.SampledFrom(history).Draw(r, "undone")
				s, of = then.sheet, maps.Clone(then.of)
			}
			now = state{s, of}
			history = append(history, now)
			if !rapid.Bool().Draw(r, "saved") {
				continue
			}
			source, _ := saved(t, d, s)
			beside := ""
			names, _ := filepath.Glob(d.Path() + ".before-*")
			for _, name := range names {
				beside += string(readFile(t, name))
			}
			list, _ := tree(t, source)["size"].([]map[string]any)
			for _, table := range list {
				name := table["name"].(string)
				paper, found := table["paper"].(string)
				line := fmt.Sprintf("paper = %q # sheet %s", paper, paper)
				switch {
				case found && (!slices.Contains(ever[name], paper) || strings.Count(source, line) != 1):
					r.Fatalf("size %s has %s in\n%s", name, paper, source)
				case found && paper == "18" && !strings.Contains(source, "# above 18\n[[size]]\nname = \""+name+"\"\n"), strings.Count(source, "# above 18") > 1:
					r.Fatalf("a comment of size 18 is astray in\n%s", source)
				case !found && of[name] != "" && !strings.Contains(beside, fmt.Sprintf("paper = %q", of[name])):
					r.Fatalf("size %s has lost %s in\n%s\nand beside it\n%s", name, of[name], source, beside)
				}
			}
		}
	})
}
