package worksheets_test

import (
	"slices"
	"strings"
	"testing"

	"capscye/worksheets"
)

// set is one answer typed.
type set struct {
	key  worksheets.Key
	text string
}

func TestOnlyWhatChangedIsChangedInTheFile(t *testing.T) {
	crlf := func(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") }
	odd := "# for Tamsel\nversion=1\n\n\n[ body ]   # girths\n\tbust =\t\"39 1/2\"# loose\n bicep   =   '13 3/4'   # left arm\n\n# the end\n[shop]\nbicep = \"7\"\n\n\n"
	for name, c := range map[string]struct {
		source string
		sets   []set
		want   string
	}{
		"a value, its comment and the spacing around it": {odd, []set{{worksheets.Bicep, "14"}}, strings.Replace(odd, `'13 3/4'`, `"14"`, 1)},
		"a value with a comment close behind":            {odd, []set{{worksheets.Bust, "40"}}, strings.Replace(odd, `"39 1/2"`, `"40"`, 1)},
		"two values":                                     {odd, []set{{worksheets.Bicep, ""}, {worksheets.Bust, "40"}}, strings.Replace(strings.Replace(odd, `'13 3/4'`, `""`, 1), `"39 1/2"`, `"40"`, 1)},
		"Windows line ends":                              {crlf(odd), []set{{worksheets.Bicep, "14"}}, crlf(strings.Replace(odd, `'13 3/4'`, `"14"`, 1))},
		"a byte order mark":                              {"\ufeff" + odd, []set{{worksheets.Bicep, "14"}}, "\ufeff" + strings.Replace(odd, `'13 3/4'`, `"14"`, 1)},
		"a key added behind the last of its table":       {odd, []set{{worksheets.Waist, "31"}}, strings.Replace(odd, "# left arm\n", "# left arm\nwaist = \"31\"\n", 1)},
		"keys added with Windows line ends":              {crlf(odd), []set{{worksheets.Waist, "31"}, {worksheets.Hip, "41"}}, crlf(strings.Replace(odd, "# left arm\n", "# left arm\nwaist = \"31\"\nhip = \"41\"\n", 1))},
		"a table added at the end":                       {odd, []set{{worksheets.EaseBust, "3"}}, odd + "\n[ease]\nbust = \"3\"\n"},
		"a table added with Windows line ends":           {crlf(odd), []set{{worksheets.EaseBust, "3"}}, crlf(odd + "\n[ease]\nbust = \"3\"\n")},
		"a key added to a table without any":             {"[body] # girths\n\n[ease]\n", []set{{worksheets.Bust, "39"}}, "[body] # girths\nbust = \"39\"\n\n[ease]\n"},
		"a key added to a file that ends in its table":   {"[body]\nbust = \"39\"", []set{{worksheets.Waist, "31"}}, "[body]\nbust = \"39\"\nwaist = \"31\""},
		"a table added to a file without a line end":     {"[body]\nbust = \"39\" # x", []set{{worksheets.EaseBust, "3"}}, "[body]\nbust = \"39\" # x\n\n[ease]\nbust = \"3\"\n"},
		"a key before a table within the table":          {"[body]\nbust = \"39\"\n[body.left]\nknee = 15\n", []set{{worksheets.Waist, "31"}}, "[body]\nbust = \"39\"\nwaist = \"31\"\n[body.left]\nknee = 15\n"},
		"a value of many lines":                          {"[about]\nnotes = \"\"\"\none\n# two\"\"\" # end\ntitle = \"x\"\n", []set{{worksheets.Notes, "three"}}, "[about]\nnotes = \"three\" # end\ntitle = \"x\"\n"},
		"a key behind a value of many lines":             {"[about]\nnotes = \"\"\"\n[body]\nbust = 1\"\"\"\n[body]\nbust = \"2\"\n", []set{{worksheets.Bust, "3"}}, "[about]\nnotes = \"\"\"\n[body]\nbust = 1\"\"\"\n[body]\nbust = \"3\"\n"},
		"a quoted key in a quoted table":                 {"['body']\n\"bust\" = \"39\"\n", []set{{worksheets.Bust, "40"}}, "['body']\n\"bust\" = \"40\"\n"},
		"a dotted key that is there":                     {"body.bust = \"39\" # x\nshop.name = \"a\"\n", []set{{worksheets.Bust, "40"}}, "body.bust = \"40\" # x\nshop.name = \"a\"\n"},
		"a key added beside a dotted key":                {"body.bust = \"39\" # x\nshop = 1\n", []set{{worksheets.Waist, "31"}, {worksheets.Hip, "41"}}, "body.bust = \"39\" # x\nbody.waist = \"31\"\nbody.hip = \"41\"\nshop = 1\n"},
		"a key of a table that others call alike":        {"[shop]\nbody.bust = \"3\" # x\n", []set{{worksheets.Waist, "31"}}, "[shop]\nbody.bust = \"3\" # x\n\n[body]\nwaist = \"31\"\n"},
		"a day":                                     {"[body]\nmeasured_on = 2026-10-03 # x\n", []set{{worksheets.MeasuredOn, "2026-10-04"}}, "[body]\nmeasured_on = 2026-10-04 # x\n"},
		"a day that is none":                        {"[body]\nmeasured_on = 2026-10-03 # x\n", []set{{worksheets.MeasuredOn, "soon"}}, "[body]\nmeasured_on = \"soon\" # x\n"},
		"a count":                                   {"[bodice]\ncrossings = 1 # x\n", []set{{worksheets.Crossings, "2"}}, "[bodice]\ncrossings = 2 # x\n"},
		"a count that is none":                      {"[bodice]\ncrossings = 1 # x\n", []set{{worksheets.Crossings, "two"}}, "[bodice]\ncrossings = \"two\" # x\n"},
		"a value of the wrong type, put right":      {"[body]\nbust = 39.5 # x\nhip = 41\n", []set{{worksheets.Bust, "39.5"}}, "[body]\nbust = \"39.5\" # x\nhip = 41\n"},
		"a value set to something else and back":    {odd, []set{{worksheets.Bicep, "14"}, {worksheets.Bicep, "13 3/4"}}, odd},
		"text with everything that needs an escape": {"[about]\ntitle = \"x\"\n", []set{{worksheets.Title, "a\"b\\c\td\ne\x1bf\x7fg"}}, "[about]\ntitle = \"a\\\"b\\\\c\\td\\ne\\u001bf\\u007fg\"\n"},
	} {
		d := decode(t, c.source)
		for _, s := range c.sets {
			d.Sheet.Set(s.key, s.text)
		}
		out, lost := encode(t, d)
		if out != c.want || lost {
			t.Errorf("%s, lost %v:\n got %q\nwant %q", name, lost, out, c.want)
		}
		if again := decode(t, out); !again.Sheet.Equal(d.Sheet) {
			t.Errorf("%s: read back as %+v", name, again.Sheet)
		}
	}
}

func TestAnEmptyFileTakesAnAnswer(t *testing.T) {
	for _, source := range []string{"", "\n", "\ufeff", "# nothing yet"} {
		d := decode(t, source)
		d.Sheet.Set(worksheets.Bust, "39")
		out, lost := encode(t, d)
		if added, ok := strings.CutPrefix(out, source); !ok || strings.TrimSpace(added) != "[body]\nbust = \"39\"" || lost {
			t.Errorf("%q becomes %q, lost %v", source, out, lost)
		}
	}
}

func TestAChangedAnswerChangesItsLineOnly(t *testing.T) {
	lines := strings.SplitAfter(wholeFile, "\n")
	for _, k := range worksheets.Keys() {
		if k == worksheets.Unit { // which names the unit of every bare number
			continue
		}
		d := decode(t, wholeFile)
		d.Sheet.Set(k, "changed")
		out, lost := encode(t, d)
		now := strings.SplitAfter(out, "\n")
		if len(now) != len(lines) || lost {
			t.Fatalf("%v: %d lines became %d, lost %v", k, len(lines), len(now), lost)
		}
		_, name, _ := strings.Cut(k.Path(), ".")
		for i := range lines {
			if before, _, _ := strings.Cut(lines[i], "="); lines[i] != now[i] && (strings.TrimSpace(before) != name || !strings.HasPrefix(now[i], before+"= \"changed\"")) {
				t.Errorf("%v: the line %q became %q", k, lines[i], now[i])
			}
		}
	}
}

func TestASteppedListAndFittingsGoWhereTheyBelong(t *testing.T) {
	source := "[progress]\ndone = [\n  \"a\", # first\n] # steps\n\n[[fitting]]\ndate = 2026-11-20 # Friday\nnote = \"tight\"\nby = \"Orin\"\n\n[body]\nbust = \"39\"\n"
	d := decode(t, source)
	d.Sheet.Done = []string{"a", `b "c"`}
	d.Sheet.Fittings = append(slices.Clone(d.Sheet.Fittings), worksheets.Fitting{Date: "2026-11-27", Note: "better\nat the back"}, worksheets.Fitting{Date: "Monday", Note: ""})
	d.Sheet.Set(worksheets.EaseBust, "3")
	want := "[progress]\ndone = [\"a\", \"b \\\"c\\\"\"] # steps\n\n[[fitting]]\ndate = 2026-11-20 # Friday\nnote = \"tight\"\nby = \"Orin\"\n\n[body]\nbust = \"39\"\n" +
		"\n[ease]\nbust = \"3\"\n" +
		"\n[[fitting]]\ndate = 2026-11-27\nnote = \"better\\nat the back\"\n\n[[fitting]]\ndate = \"Monday\"\nnote = \"\"\n"
	out, lost := encode(t, d)
	if out != want || lost {
		t.Errorf("lost %v\n got %q\nwant %q", lost, out, want)
	}
	if again := decode(t, out); !again.Sheet.Equal(d.Sheet) {
		t.Errorf("read back as %+v", again.Sheet)
	}
}

// Only the last fittings of a file can be cut out of it; elsewhere, and where a
// comment would go, the file is made anew, which asks first.
func TestTheLastFittingsAreCut(t *testing.T) {
	head := "# mine\n[body]\nbust = \"39\" # loose\n"
	one, two := "\n[[fitting]]\nnote = \"tight\"\n", "\n[[fitting]]\nnote = \"better\"\n"
	for _, test := range []struct {
		source, want string
		left         int
	}{
		{head + one + two, head + one, 1},
		{head + one + two, head, 0},
		{strings.ReplaceAll(head+one+two, "\n", "\r\n"), strings.ReplaceAll(head+one, "\n", "\r\n"), 1},
		{head + strings.Trim(one, "\n"), head, 0},
		{head + one + two + "# soon\n", "", 1},
		{head + one + two + "[ease]\nbust = \"3\"\n", "", 1},
		{"# mine\nfitting = [{note = \"tight\"}, {note = \"better\"}]\n", "", 1},
	} {
		d := decode(t, test.source)
		d.Sheet.Fittings = d.Sheet.Fittings[:test.left]
		if lost := d.LosesComments(); lost != (test.want == "") {
			t.Errorf("%q: comments go: %v", test.source, lost)
		} else if out, _ := encode(t, d); !lost && out != test.want {
			t.Errorf("%q\n got %q\nwant %q", test.source, out, test.want)
		}
	}
}

func TestDoneStepsAreAddedWhereThereIsNoList(t *testing.T) {
	for source, want := range map[string]string{
		"version = 1\n":                 "version = 1\n\n[progress]\ndone = [\"a\"]\n",
		"[progress]\n# none\n":          "[progress]\ndone = [\"a\"]\n# none\n",
		"[progress]\nstage = 2\n":       "[progress]\nstage = 2\ndone = [\"a\"]\n",
		"[progress]\ndone = [] # yet\n": "[progress]\ndone = [\"a\"] # yet\n",
	} {
		d := decode(t, source)
		d.Sheet.Done = []string{"a"}
		if out, lost := encode(t, d); out != want || lost {
			t.Errorf("%q becomes %q, lost %v; want %q", source, out, lost, want)
		}
	}
}

func TestWhereBytesCannotStayTheSheetAndUnknownKeysDo(t *testing.T) {
	rest := "\nshop = {name = \"a\", list = [1, {b = 2}, [3, \"c\"], 2026-01-01]} # x\n'odd key.' = 07:32:00\n[other]\nwhen = 1979-05-27T07:32:00.999999-07:00\nfew = 5.0\n"
	for name, c := range map[string]struct {
		source string
		sets   []set
		unlist bool
	}{
		"a key added to an inline table":       {source: "body = {bust = \"39\", neck = 15} # x", sets: []set{{worksheets.Waist, "31"}}},
		"a key changed in an inline table":     {source: "body = {bust = \"39\", neck = 15} # x", sets: []set{{worksheets.Bust, "40"}}},
		"steps added to an inline table":       {source: "progress = {stage = 2} # x", unlist: true},
		"everything changed in inline tables":  {source: "about = {title = \"x\"}\nmethod = {slide = \"even\", quilt = 1}", sets: []set{{worksheets.Title, "y"}, {worksheets.Slide, "least"}, {worksheets.Crossings, "2"}, {worksheets.MeasuredOn, "2026-10-03"}}},
		"a table of an inline table within it": {source: "body = {left = {knee = 15}, bust = \"39\"}", sets: []set{{worksheets.Hip, "41"}}},
	} {
		d := decode(t, c.source+rest)
		for _, s := range c.sets {
			d.Sheet.Set(s.key, s.text)
		}
		if c.unlist {
			d.Sheet.Done = []string{"a"}
		}
		out, lost := encode(t, d)
		if !lost {
			t.Errorf("%s: nothing is lost in %q", name, out)
		}
		otherReader(t, out)
		again := decode(t, out)
		if !again.Sheet.Equal(d.Sheet) {
			t.Errorf("%s: %q says %+v", name, out, again.Sheet)
		}
		if got, want := strangers(t, out), strangers(t, c.source+rest); got != want {
			t.Errorf("%s: unknown keys\n got %s\nwant %s", name, got, want)
		}
	}
}

func TestAKeyAddedBesideDottedKeysLeavesTOML(t *testing.T) {
	for _, source := range []string{
		"body.bust = \"39\"\n", "body.bust = \"39\" # x\nbody.neck = 15 # y\nshop = 1\n[other]\n", "body.bust = '39'", "body.bust = '39'\r\n",
		"'body' . \"bust\" = '39'\n", "body.left.knee = 15\n", "x.body.bust = '3'\n", "method.slide = 'even'\n[body]\n",
	} {
		d := decode(t, source)
		d.Sheet.Set(worksheets.Waist, "31")
		d.Sheet.Set(worksheets.Follow, "hold")
		out, _ := encode(t, d)
		otherReader(t, out)
		if got, want := strangers(t, out), strangers(t, source); got != want || !decode(t, out).Sheet.Equal(d.Sheet) {
			t.Errorf("%q becomes %q\n got %s\nwant %s", source, out, got, want)
		}
	}
}

func TestAQuotedKeyWithAPointIsNotTakenForADottedOne(t *testing.T) {
	d := decode(t, "'body.neck' = 15\n[body]\nbust = '39'\n")
	d.Sheet.Set(worksheets.Waist, "31")
	out, _ := encode(t, d)
	otherReader(t, out)
}

func TestItIsSaidBeforehandWhetherCommentsWillBeLost(t *testing.T) {
	for source, want := range map[string]bool{
		"# mine\nbody = {bust = \"39\"}\n": true, "body = {bust = \"39\"}\n": false, "# mine\n[body]\nbust = \"39\"\n": false,
	} {
		d := decode(t, source)
		if d.LosesComments() {
			t.Errorf("%q loses comments without a change", source)
		}
		d.Sheet.Set(worksheets.Waist, "31")
		if got := d.LosesComments(); got != want {
			t.Errorf("%q loses comments: %v", source, got)
		}
	}
}

func TestACountIsKeptAsItWasTyped(t *testing.T) {
	for _, text := range []string{"02", "+1", "-0"} {
		d := decode(t, "# mine\n[bodice]\ncrossings = 1\n")
		d.Sheet.Set(worksheets.Crossings, text)
		if out, lost := encode(t, d); lost || decode(t, out).Sheet.Text(worksheets.Crossings) != text {
			t.Errorf("%s becomes %q, lost %v", text, out, lost)
		}
		if out, _ := encode(t, worksheets.New(d.Sheet)); decode(t, out).Sheet.Text(worksheets.Crossings) != text {
			t.Errorf("%s becomes %q in a new file", text, out)
		}
	}
}

func TestAChangedFittingKeepsItsUnknownKeys(t *testing.T) {
	d := decode(t, "[[fitting]]\ndate = 2026-11-20\nnote = \"tight\"\nby = \"Orin\"\n")
	d.Sheet.Fittings = []worksheets.Fitting{{Date: "2026-11-20", Note: "very tight"}}
	if out, _ := encode(t, d); !strings.Contains(out, `by = "Orin"`) {
		t.Errorf("%q", out)
	}
}

func TestTextThatIsNotUTF8CanBeSaved(t *testing.T) {
	d := decode(t, "[about]\ntitle = \"x\"\n")
	d.Sheet.Set(worksheets.Title, "a\xff")
	d.Sheet.Set(worksheets.Bicep, "13 3/4")
	if out, _, err := d.Encode(); err != nil || decode(t, string(out)).Sheet.Text(worksheets.Bicep) != "13 3/4" {
		t.Errorf("%q, %v", out, err)
	}
}

// The screen asks before every save whether comments would be lost. What was
// made for that answer is what the save writes: the same bytes, not equal ones.
func TestAnAnswerIsEncodedOnce(t *testing.T) {
	d, err := worksheets.Decode("sheet.toml", []byte("# kept\n[body]\nbicep = \"13\"\n"))
	if err != nil {
		t.Fatal(err)
	}
	encoded := func(bicep string) []byte {
		if err := d.Sheet.Set(worksheets.Bicep, bicep); err != nil {
			t.Fatal(err)
		}
		if d.LosesComments() {
			t.Errorf("%s: the comment would be lost", bicep)
		}
		out, _, err := d.Encode()
		if want := "# kept\n[body]\nbicep = \"" + bicep + "\"\n"; err != nil || string(out) != want {
			t.Errorf("%q, %v, want %q", out, err, want)
		}
		return out
	}
	first := encoded("14")
	if again := encoded("14"); &again[0] != &first[0] {
		t.Error("it was encoded twice")
	}
	encoded("15")
	encoded("14")
	encoded("13") // as it was read
}

// Of a fitting only what was changed is written anew, and what is no day stays as it is.
func TestAChangedFittingKeepsItsDay(t *testing.T) {
	for _, day := range []string{"2026-11-20", "7", "\"Monday\""} {
		d := decode(t, "[[fitting]]\ndate = "+day+"\nnote = \"tight\"\n")
		d.Sheet.Fittings = []worksheets.Fitting{{Date: d.Sheet.Fittings[0].Date, Note: "very tight"}}
		if out, _ := encode(t, d); !strings.Contains(out, "date = "+day+"\n") || !strings.Contains(out, "very tight") {
			t.Errorf("%q", out)
		}
	}
}

// What an edit would lose besides the answers is seen before it is written.
func TestBytesThatSayLessAreNotProved(t *testing.T) {
	const source = "[body]\nbust = \"39\"\nneck = 15\n[shop]\nname = \"x\"\n[[fitting]]\nnote = \"tight\"\n"
	d := decode(t, source)
	d.Sheet.Set(worksheets.Bust, "40")
	good := strings.Replace(source, "39", "40", 1)
	for out, want := range map[string]bool{
		good: true, source: false, strings.Replace(good, "neck = 15\n", "", 1): false, strings.Replace(good, "15", "16", 1): false,
		strings.Replace(good, "[shop]\n", "[ship]\n", 1): false, strings.Replace(good, "tight", "loose", 1): false, good + "[shop]\n": false,
	} {
		if got := d.Proves([]byte(out)); got != want {
			t.Errorf("%q is proved: %v", out, got)
		}
	}
}

// Many changes at one place come in their order, in whatever order the file has its keys.
func TestEverythingChangesAtOnce(t *testing.T) {
	keys := slices.DeleteFunc(worksheets.Keys(), func(k worksheets.Key) bool {
		table, _, _ := strings.Cut(k.Path(), ".")
		return table == "sleeve" || table == "ease" || k == worksheets.Unit || k == worksheets.MeasuredOn
	})
	for range len(keys) {
		keys = append(keys[5:], keys[:5]...)
		keys[0], keys[7] = keys[7], keys[0]
		source := ""
		for _, k := range keys {
			source += k.Path() + " = \"1\"\n"
		}
		source += "[sleeve]\nwidth = \"2\""
		d := decode(t, source)
		for _, k := range keys {
			d.Sheet.Set(k, "7")
		}
		d.Sheet.Set(worksheets.CapHeight, "5")
		d.Sheet.Set(worksheets.EaseBust, "3")
		want := strings.ReplaceAll(source, "\"1\"", "\"7\"") + "\ncap_height = \"5\"\n\n[ease]\nbust = \"3\"\n"
		if out, lost := encode(t, d); out != want || lost {
			t.Fatalf("lost %v\n got %q\nwant %q", lost, out, want)
		}
	}
}

func TestTablesAreAddedInTheOrderOfTheSheet(t *testing.T) {
	d := decode(t, "")
	for _, k := range []worksheets.Key{worksheets.EaseBust, worksheets.Bust, worksheets.Title} {
		d.Sheet.Set(k, "3")
	}
	if out, _ := encode(t, d); strings.Join(strings.Fields(out), " ") != `[about] title = "3" [body] bust = "3" [ease] bust = "3"` {
		t.Errorf("%q", out)
	}
}
