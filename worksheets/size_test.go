package worksheets_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"capscye/worksheets"
)

func TestSizesAreReadWithTheirTables(t *testing.T) {
	for _, source := range []string{
		sized,
		"size = [{name = \"16\", chart_bust = \"38\", sleeve = {width = \"13 1/2\"}, bodice.front = \"10 3/4\", bodice.back = \"10 1/4\"}, {name = \"18\", bodice = {back = \"10 3/4\"}}]",
	} {
		s := decode(t, source).Sheet
		if len(s.Sizes) != 2 {
			t.Fatalf("%d sizes in %q", len(s.Sizes), source)
		}
		for k, want := range map[worksheets.Key][2]string{
			worksheets.PatternSize: {"16", "18"}, worksheets.ChartBust: {"38", ""}, worksheets.SleeveWidth: {"13 1/2", ""},
			worksheets.BodiceFront: {"10 3/4", ""}, worksheets.BodiceBack: {"10 1/4", "10 3/4"}, worksheets.CapHeight: {"", ""},
		} {
			if got := [2]string{s.Sizes[0].Text(k), s.Sizes[1].Text(k)}; got != want {
				t.Errorf("%v says %q, want %q", k, got, want)
			}
		}
	}
}

// What the pattern is throughout does not differ by size; everything else that is
// measured on it does.
func TestWhatDiffersBySize(t *testing.T) {
	var not []string
	for _, k := range worksheets.PatternSection.Keys() {
		if !k.IsOfSize() {
			not = append(not, k.Path())
		}
	}
	if got := strings.Join(not, " "); got != "sleeve.length sleeve.style sleeve.measured sleeve.allowance bodice.measured bodice.allowance bodice.crossings bodice.dart_front bodice.dart_back" {
		t.Errorf("%s do not differ", got)
	}
	for _, k := range worksheets.SizeKeys() {
		if !slices.Contains(worksheets.PatternSection.Keys(), k) {
			t.Errorf("%v is no answer about a pattern", k)
		}
	}
}

func TestTroubleWithASizeIsSaidWithItsLine(t *testing.T) {
	long := strings.Repeat("x", worksheets.LongestSize+1)
	many := ""
	for n := range worksheets.MostSizes + 1 {
		many += fmt.Sprintf("[[size]]\nname = \"%d\"\n", n)
	}
	for source, want := range map[string]string{
		"[[size]]\nname = \"16\"\n[size.sleeve]\nwidth = \"wide\"\n":               `line 4: size 16: sleeve.width: "wide" is not a length`,
		"[[size]]\nname = \"16\"\n\n[[size]]\nname = \"18\"\nchart_bust = \"0\"\n": "line 6: size 18: chart_bust: ",
		"[[size]]\nname = \"16\"\n[size.bodice]\nfront = 10.5\n":                   `line 4: size 16: bodice.front: put quotes around 10.5`,
		"[[size]]\nname = 16\n":                               `line 2: size number 1: name: put quotes around 16. Write it like name = "16"`,
		"[[size]]\n[size.sleeve]\nwidth = \"13\"\n":           "line 1: size number 1: name: the size has no name",
		"[[size]]\nname = \"16\"\n[[size]]\nname = \"16\"\n":  `line 4: size 16: name: "16" is the name of another size already`,
		"[pattern]\nsize = \"16\"\n[[size]]\nname = \"16\"\n": `line 2: pattern.size: "16" is the name of another size already`,
		"[[size]]\nname = \"" + long + "\"\n":                 "line 2: size " + long + ": name: \"" + long + "\" has more than 40 characters",
		many:                                                  "line 42: size 20: name: a worksheet has at most 20 other sizes; this one is left out",
		many + "[[size]]\nname = \"a\"\n":                     "line 42: size 20: name: a worksheet has at most 20 other sizes; all from this one on are left out",
		"size = \"14\"\n":                                     `line 1: size: "14" is not a list of tables. Write [[size]]`,
		"[[size]]\nname = \"16\"\nsleeve = 13\n":              "line 3: size 16: sleeve: \"13\" is not a table",
	} {
		d := decode(t, source)
		found := messages(d.Problems())
		if len(found) != 1 && !strings.Contains(want, "another size already") || !slices.ContainsFunc(found, func(m string) bool { return strings.HasPrefix(m, "blouse.toml, "+want) }) {
			t.Errorf("%q:\n got %q\nwant %q", source, found, want)
		}
	}
}

func TestOnlyWhatChangedOfASizeIsChangedInTheFile(t *testing.T) {
	crlf := func(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") }
	type edit = func(s worksheets.Sheet) worksheets.Sheet
	with := func(i int, k worksheets.Key, text string) edit {
		return func(s worksheets.Sheet) worksheets.Sheet { return s.WithSize(i, s.Sizes[i].With(k, text)) }
	}
	without := func(i int) edit { return func(s worksheets.Sheet) worksheets.Sheet { return s.WithoutSize(i) } }
	first := sized[strings.Index(sized, "\n[[size]]\nname = \"16\""):strings.Index(sized, "\n[[size]]\nname = \"18\"")]
	second := sized[strings.Index(sized, "\n[[size]]\nname = \"18\""):strings.Index(sized, "\n# the end")]
	replaced := func(pairs ...string) string { return strings.NewReplacer(pairs...).Replace(sized) }
	for name, c := range map[string]struct {
		change edit
		want   string
	}{
		"a value":                        {with(0, worksheets.SleeveWidth, "13 5/8"), replaced(`"13 1/2" # twice`, `"13 5/8" # twice`)},
		"a name":                         {with(0, worksheets.PatternSize, "16 W"), replaced(`"16" #`, `"16 W" #`)},
		"a key added to a table":         {with(0, worksheets.CapHeight, "5"), replaced("cuff = \"8\"\n", "cuff = \"8\"\ncap_height = \"5\"\n")},
		"a key added to the size itself": {with(0, worksheets.ChartHighBust, "37"), replaced("line = \"dashed\"\n", "line = \"dashed\"\nchart_high_bust = \"37\"\n")},
		"a table added":                  {with(1, worksheets.SleeveWidth, "14"), replaced("back = \"10 3/4\"\n", "back = \"10 3/4\"\n\n[size.sleeve]\nwidth = \"14\"\n")},
		"a size added": {func(s worksheets.Sheet) worksheets.Sheet {
			return s.WithSize(2, worksheets.Size{}.With(worksheets.PatternSize, "20").With(worksheets.BodiceFront, "11"))
		}, replaced("\n# the end", "\n[[size]]\nname = \"20\"\n[size.bodice]\nfront = \"11\"\n\n# the end")},
		"the first removed": {without(0), strings.Replace(sized, first, "", 1)},
		"the last removed":  {without(1), strings.Replace(sized, second, "", 1)},
		"taken in hand": {func(s worksheets.Sheet) worksheets.Sheet { return s.TakeInHand(1) }, replaced(`size = "14"`, `size = "18"`, `width = "13"`, `width = ""`,
			second, "\n[[size]]\nname = \"14\"\n[size.sleeve]\nwidth = \"13\"\n", "slide = \"even\"\n", "slide = \"even\"\n\n[bodice]\nback = \"10 3/4\"\n")},
	} {
		for _, source := range []string{sized, crlf(sized)} {
			d := decode(t, source)
			d.Sheet = c.change(d.Sheet)
			out, lost := encode(t, d)
			want := c.want
			if source != sized {
				want = crlf(want)
			}
			if out != want || lost {
				t.Errorf("%s, lost %v:\n got %s\nwant %s", name, lost, out, want)
			}
		}
	}
}

// Where a size is written on one line, or its tables with points, nothing is lost of it.
func TestSizesOfEveryFormAreChanged(t *testing.T) {
	for source, wantLost := range map[string]bool{
		"size = [{name = \"16\", line = \"dashed\"}] # all\n":                                                      true,
		"[[size]] # one\nname = \"16\"\nsleeve.width = \"13\"\nline = \"dashed\"\n":                                false,
		"[[size]] # one\nname = \"16\"\nsleeve = {width = \"13\"}\nline = \"dashed\"\n":                            true,
		"[[size]] # one\nname = \"16\"\nline = \"dashed\"\n[method]\n[size.sleeve]\n[size.lace]\nwidth = \"13\"\n": false,
	} {
		d := decode(t, source)
		d.Sheet = d.Sheet.WithSize(0, d.Sheet.Sizes[0].With(worksheets.CapHeight, "5"))
		out, lost := encode(t, d)
		again := decode(t, out)
		if lost != wantLost || !again.Sheet.Equal(d.Sheet) || strangers(t, out) != strangers(t, source) {
			t.Errorf("lost %v:\n%s\nbecomes\n%s", lost, source, out)
		}
		otherReader(t, out)
	}
}

// A text of a size that stands in a table on one line, or in a list of such, is changed there.
func TestATextOnOneLineIsChangedThere(t *testing.T) {
	for _, source := range []string{
		"# mine\n[[size]]\nname = \"16\"\nsleeve = { cuff = 3, \"width\" = \"14\" } # twice\n",
		"\ufeff[[size]]\r\nname = '16'\r\nsleeve = {cap = {front = 1}, width = \"14\"} # é\r\n",
		"size = [ { name = \"14\" }, # no sleeve\n  { sleeve.width = \"14\", name = \"16\", line = [\"14\"] } ]\n[sleeve]\nwidth = \"13\" # ours\n",
	} {
		d := decode(t, source)
		i, _ := d.Sheet.SizeNamed("16")
		d.Sheet = d.Sheet.WithSize(i, d.Sheet.Sizes[i].With(worksheets.SleeveWidth, "14 1/2"))
		out, lost := encode(t, d)
		if want := strings.NewReplacer(`width = "14"`, `width = "14 1/2"`, `"width" = "14"`, `"width" = "14 1/2"`).Replace(source); out != want || lost {
			t.Errorf("lost %v:\n%s\nwant\n%s", lost, out, want)
		}
	}
}

// sizedSheet draws a sheet with sizes, all of them named.
func sizedSheet(t *rapid.T) worksheets.Sheet {
	var s worksheets.Sheet
	size := func(name string) (z worksheets.Size) {
		for range rapid.IntRange(1, 8).Draw(t, "answers") {
			z = z.With(rapid.SampledFrom(worksheets.SizeKeys()).Draw(t, "key"), typed().Draw(t, "text"))
		}
		return z.With(worksheets.PatternSize, name)
	}
	for i, name := range []string{"14", "16", "18", "20"}[:rapid.IntRange(1, 4).Draw(t, "sizes")] {
		s = s.WithSize(i, size(name))
	}
	for _, k := range worksheets.SizeKeys() {
		s.Set(k, size("12").Text(k))
	}
	s.Set(worksheets.SleeveMeasured, "edge")
	s.Set(worksheets.Bust, "39")
	return s
}

// What is ticked off was done to the paper of one size: it goes out with that size, and
// comes back with it, also under another name; a size that is removed takes its ticks along.
func TestTicksAreOfTheSizeInHand(t *testing.T) {
	var s worksheets.Sheet
	if err := s.Set(worksheets.PatternSize, "16"); err != nil {
		t.Fatal(err)
	}
	for i, name := range []string{"14", "18"} {
		s = s.WithSize(i, worksheets.Size{}.With(worksheets.PatternSize, name))
	}
	s.Done = []string{"sleeve-lay", "sleeve-front-mark#1a2b"}
	other := s.TakeInHand(0)
	if want := []string{"sleeve-lay of size 16", "sleeve-front-mark#1a2b of size 16"}; !slices.Equal(other.Done, want) {
		t.Errorf("with 14 in hand %q are ticked, want %q", other.Done, want)
	}
	other.Done = append(other.Done, "sleeve-lay")
	if got := other.SizeAlone(0).Done; !slices.Equal(got, s.Done) {
		t.Errorf("of 16 alone %q are ticked", got)
	}
	if got := other.SizeAlone(1).Done; len(got) != 0 {
		t.Errorf("of 18 alone %q are ticked", got)
	}
	back := other.WithSize(0, other.Sizes[0].With(worksheets.PatternSize, "16 W")).TakeInHand(0)
	if want := append(slices.Clone(s.Done), "sleeve-lay of size 14"); !slices.Equal(back.Done, want) {
		t.Errorf("back with 16 W %q are ticked, want %q", back.Done, want)
	}
	if got := back.WithoutSize(0).Done; !slices.Equal(got, s.Done) {
		t.Errorf("without 14 %q are ticked", got)
	}
}

// Taking in hand is taken back by doing it again, changes no other size, and leaves the
// sheet alone that it was asked of.
func TestTakingASizeInHandTwiceIsNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := sizedSheet(t)
		before := s.WithSize(0, s.Sizes[0]) // with sizes of its own
		i := rapid.IntRange(0, len(s.Sizes)-1).Draw(t, "taken")
		taken := s.TakeInHand(i)
		if !s.Equal(before) {
			t.Fatal("the sheet was changed")
		}
		if !taken.TakeInHand(i).Equal(s) {
			t.Fatalf("twice gives %+v\nof %+v", taken.TakeInHand(i), s)
		}
		for _, k := range worksheets.Keys() {
			want := s.Text(k)
			if k.IsOfSize() {
				want = s.Sizes[i].Text(k)
			}
			if taken.Text(k) != want {
				t.Fatalf("%v says %q, want %q", k, taken.Text(k), want)
			}
			alone := s.SizeAlone(i)
			if alone.Text(k) != want || len(alone.Sizes) != 0 {
				t.Fatalf("alone %v says %q, want %q", k, alone.Text(k), want)
			}
		}
		for n := range s.Sizes {
			if n != i && taken.Sizes[n] != s.Sizes[n] {
				t.Fatalf("size %d was changed", n)
			}
		}
	})
}

// A size that was measured without a name is not lost; of one that was not there is
// nothing to put anywhere.
func TestTheSizeInHandIsPutWhereTheOtherWas(t *testing.T) {
	s := decode(t, "[sleeve]\nwidth = \"13\"\n[[size]]\nname = \"16\"\n[size.sleeve]\nwidth = \"14\"\n[[size]]\nname = \"unnamed\"\n").Sheet
	taken := s.TakeInHand(0)
	if taken.Text(worksheets.PatternSize) != "16" || taken.Text(worksheets.SleeveWidth) != "14" ||
		taken.Sizes[0].Name() != "unnamed 2" || taken.Sizes[0].Text(worksheets.SleeveWidth) != "13" {
		t.Errorf("%+v", taken)
	}
	s = decode(t, "[sleeve]\nmeasured = \"seam\"\n[[size]]\nname = \"16\"\n").Sheet
	if taken := s.TakeInHand(0); len(taken.Sizes) != 0 || taken.Text(worksheets.PatternSize) != "16" {
		t.Errorf("%+v", taken)
	}
}

// The pattern of another worksheet comes with its sizes, as the lengths that they are;
// where another of them was taken in hand since, nothing has changed.
func TestSizesComeWithThePattern(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("tunic.toml", []byte(sized), 0o644)
	from := load(t, "tunic.toml").Sheet
	for _, unit := range []string{"in", "cm"} {
		var s worksheets.Sheet
		s.Set(worksheets.Unit, unit)
		s.Take(worksheets.PatternSection, from, "tunic.toml")
		origin := worksheets.Origin{Section: worksheets.PatternSection, File: "tunic.toml", Sheet: from}
		for i, z := range from.Sizes {
			for _, k := range worksheets.SizeKeys() {
				theirs, ours := from.SizeAlone(i), s.SizeAlone(i)
				if theirs.Reading(k) != ours.Reading(k) || unit == "in" && s.Sizes[i].Text(k) != z.Text(k) {
					t.Errorf("%s: %v of size %s says %q", unit, k, z.Name(), s.Sizes[i].Text(k))
				}
			}
		}
		s = s.TakeInHand(1)
		if got := origin.Since(s); len(got) != 0 {
			t.Errorf("%v has changed", got)
		}
		if s.Take(worksheets.PatternSection, from, "tunic.toml"); s.Text(worksheets.PatternSize) != "18" || s.Sizes[1].Name() != "14" {
			t.Errorf("taken again, size %s is in hand", s.Text(worksheets.PatternSize))
		}
	}
	var body worksheets.Sheet
	if body.Take(worksheets.BodySection, from, "tunic.toml"); len(body.Sizes) != 0 {
		t.Error("sizes came with a body")
	}
}

// What was changed of sizes is laid over a file that something else has changed.
func TestSizesAreWhatWasChangedSince(t *testing.T) {
	earlier := decode(t, sized).Sheet
	later := earlier.WithoutSize(1)
	theirs := earlier
	theirs.Set(worksheets.Bust, "40")
	if got := theirs.Since(earlier, later); len(got.Sizes) != 1 || got.Text(worksheets.Bust) != "40" {
		t.Errorf("%+v", got)
	}
	if got := theirs.Since(earlier, earlier); len(got.Sizes) != 2 {
		t.Errorf("%+v", got)
	}
}

// Another unit changes what numbers mean, not what was measured of a size.
func TestTheUnitChangesNoSize(t *testing.T) {
	s := decode(t, sized).Sheet
	before := s.SizeAlone(0)
	s.Set(worksheets.Unit, "cm")
	after := s.SizeAlone(0)
	for _, k := range worksheets.SizeKeys() {
		if before.Reading(k) != after.Reading(k) {
			t.Errorf("%v was %v, is %v", k, before.Reading(k), after.Reading(k))
		}
	}
}

// What is half typed goes with its size, wherever that goes.
func TestDraftsGoWithTheirSize(t *testing.T) {
	s := decode(t, sized).Sheet
	s.Drafts = s.Drafts.With(worksheets.SleeveWidth, "13 x").With(worksheets.Bust, "4o").WithSize("18", worksheets.SleeveWidth, "14 x").WithSize("16", worksheets.CapHeight, "5 x")
	taken := s.TakeInHand(1) // 18
	for _, c := range []struct {
		size string
		key  worksheets.Key
		want string
	}{{"", worksheets.SleeveWidth, "14 x"}, {"14", worksheets.SleeveWidth, "13 x"}, {"", worksheets.Bust, "4o"}, {"16", worksheets.CapHeight, "5 x"}, {"18", worksheets.SleeveWidth, ""}} {
		if got := taken.Drafts.OfSize(c.size, c.key); got != c.want {
			t.Errorf("size %q, %v: %q, want %q", c.size, c.key, got, c.want)
		}
	}
	if back := taken.TakeInHand(1); !back.Same(s) {
		t.Errorf("taken in hand twice:\n%+v\n%+v", back.Drafts, s.Drafts)
	}
	if got := s.WithoutSize(1).Drafts; got.OfSize("18", worksheets.SleeveWidth) != "" || got.OfSize("16", worksheets.CapHeight) != "5 x" || len(got.Texts) != 3 {
		t.Errorf("without 18: %+v", got)
	}
	if got := s.WithSize(1, s.Sizes[1].With(worksheets.PatternSize, "18 W")).Drafts; got.OfSize("18 W", worksheets.SleeveWidth) != "14 x" {
		t.Errorf("renamed: %+v", got)
	}
}
