package worksheets_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"capscye/units"
	"capscye/worksheets"
)

func TestEveryUnreadableValueIsReportedInOneLine(t *testing.T) {
	const length = units.Want
	for _, c := range []struct{ source, want string }{
		{"[body]\nbicep = 13.75\n", `blouse.toml, line 2: body.bicep: cannot read "13.75": it is not text in quotes; read would be text in quotes, such as bicep = "13.75"`},
		{"[body]\n\n# arm\nbicep = 13\n", `blouse.toml, line 4: body.bicep: cannot read "13": it is not text in quotes; read would be text in quotes, such as bicep = "13"`},
		{"[about]\nfabric = 3\n", `blouse.toml, line 2: about.fabric: cannot read "3": it is not text in quotes; read would be "woven" or "knit"`},
		{"[about]\nfabric = \"silk\"\n", `blouse.toml, line 2: about.fabric: cannot read "silk": not one of the choices; read would be "woven" or "knit"`},
		{"[sleeve]\nstyle = \"Shirt\"\n", `blouse.toml, line 2: sleeve.style: cannot read "Shirt": not one of the choices; read would be "set-in" or "shirt" or "gathered"`},
		{"[body]\nbicep = \"13 3/4 cubits\"\n", `blouse.toml, line 2: body.bicep: cannot read "13 3/4 cubits" at character 8, 'c': "cubits" is not a unit that is read here; read would be ` + length},
		{"[body]\nbicep = \"0\"\n", `blouse.toml, line 2: body.bicep: cannot read "0": it must be more than nothing; read would be ` + length},
		{"[sleeve]\nallowance = \"-5/8\"\n", `blouse.toml, line 2: sleeve.allowance: cannot read "-5/8": it cannot be less than nothing; read would be ` + length},
		{"[method]\nfront_share_bust = \"3/2\"\n", `blouse.toml, line 2: method.front_share_bust: cannot read "3/2" at character 1, '3': a share lies between none and all; read would be a part from 0 to 1, such as 1/2, 0.55 or 55 %`},
		{"[bodice]\ncrossings = 5\n", `blouse.toml, line 2: bodice.crossings: cannot read "5": not a whole number from 0 to 4; read would be 0, 1, 2, 3 or 4`},
		{"[bodice]\ncrossings = \"some\"\n", `blouse.toml, line 2: bodice.crossings: cannot read "some": not a whole number from 0 to 4; read would be 0, 1, 2, 3 or 4`},
		{"[about]\nruler = \"1/7 in\"\n", `blouse.toml, line 2: about.ruler: cannot read "1/7 in" at character 1, '1': no ruler has this as its finest mark; read would be 1/2, 1/4, 1/8, 1/16, 1/32 or 1/64 in, 5 mm or 1 mm`},
		{"[body]\nmeasured_on = \"2026-02-30\"\n", `blouse.toml, line 2: body.measured_on: cannot read "2026-02-30": not a day of the calendar; read would be a date such as 2026-10-03`},
		{"version = \"one\"\n", `blouse.toml, line 1: version: cannot read "one": it must be a whole number from 1; read would be version = 1`},
		{"version = 0\n", `blouse.toml, line 1: version: cannot read "0": it must be a whole number from 1; read would be version = 1`},
		{"body = 3\n", `blouse.toml, line 1: body: cannot read "3": it must be a table; read would be [body] on a line of its own`},
		{"[progress]\ndone = \"all\"\n", `blouse.toml, line 2: progress.done: cannot read "all": it must be a list; read would be a list such as ["sleeve-mark"]`},
		{"[progress]\ndone = [\"a\", 4]\n", `blouse.toml, line 2: progress.done: cannot read "4": every step must be text in quotes; read would be a list such as ["sleeve-mark"]`},
		{"fitting = 3\n", `blouse.toml, line 1: fitting: cannot read "3": it must be a list of tables; read would be [[fitting]] on a line of its own`},
		{"[fitting]\nnote = \"x\"\n", `blouse.toml, line 1: fitting: cannot read "a table": it must be a list of tables; read would be [[fitting]] on a line of its own`},
		{"[[fitting]]\ndate = 5\n", `blouse.toml, line 2: fitting.date: cannot read "5": it is not a day; read would be a date such as 2026-11-20`},
		{"[[fitting]]\nnote = 5\n", `blouse.toml, line 2: fitting.note: cannot read "5": it is not text in quotes; read would be text in quotes`},
	} {
		if got := messages(decode(t, c.source).Problems()); len(got) != 1 || got[0] != c.want {
			t.Errorf("%q:\n got %q\nwant %q", c.source, got, c.want)
		}
	}
}

func TestAFileThatIsNotTOMLIsRefusedWithThePlace(t *testing.T) {
	const want = `; read would be TOML 1.0, such as bicep = "13 3/4"`
	for _, c := range []struct{ source, want string }{
		{"[body]\nbicep = 13 3/4\n", `blouse.toml, line 2, "bicep = 13 3/4": expected a top-level item to end with a newline, comment, or EOF, but got '3' instead`},
		{"[body]\n  bicep = \"13 3/4\nbust = \"39\"\n", `blouse.toml, line 2, "bicep = \"13 3/4": strings cannot contain newlines`},
		{"[body]\nbicep = \"13\"\n\nbicep = \"14\"\n", `blouse.toml, line 4, "bicep = \"14\"": Key 'body.bicep' has already been defined.`},
		{"[body]\nbicep\n", `blouse.toml, line 2, "bicep": expected '.' or '=', but got '\n' instead`},
		{"[body]\r\nbicep = 13 3/4\r\n", `blouse.toml, line 2, "bicep = 13 3/4": expected a top-level item to end with a newline, comment, or EOF, but got '3' instead`},
		{"\ufeff[body]\nbicep = ½\n", `blouse.toml, line 2, "bicep = ½": expected value but found '½' instead`},
		{"[body]\n\nbicep =\nbust = \"39\"\n", `blouse.toml, line 3, "bicep =": expected value but found '\n' instead`},
	} {
		fault := refused(t, []byte(c.source))
		if got := fault.Error(); got != c.want+want {
			t.Errorf("%q:\n got %s\nwant %s", c.source, got, c.want+want)
		}
		if strings.Contains(fault.Error(), "\n") {
			t.Errorf("%q: the message is more than one line: %s", c.source, fault)
		}
	}
}

func TestAnUnclosedHeaderIsBlamedOnItsOwnLine(t *testing.T) {
	if fault := refused(t, []byte("version = 1\n[body\nbicep = \"13\"\n")); fault.Line != 2 || fault.Text != "[body" {
		t.Errorf("%v", fault)
	}
}

func TestOneUnreadableValueHidesNoOther(t *testing.T) {
	d := decode(t, file(`version = 1`, `[method]`, `slide = "far"`, `[body]`, `bust = 39`, `bicep = "13 3/4"`, `waist = "wide"`, `[about]`, `fabric = true`))
	var lines []int
	var paths []string
	for _, p := range d.Problems() {
		lines, paths = append(lines, p.Line), append(paths, p.Path)
	}
	if !slices.Equal(lines, []int{3, 5, 7, 9}) || !slices.Equal(paths, []string{"method.slide", "body.bust", "body.waist", "about.fabric"}) {
		t.Errorf("problems of lines %v: %v", lines, paths)
	}
	if d.Sheet.Text(worksheets.Bicep) != "13 3/4" || d.Sheet.Text(worksheets.Waist) != "wide" {
		t.Errorf("the sheet says %+v", d.Sheet)
	}
	d.Sheet.Set(worksheets.Bust, "39")
	d.Sheet.Set(worksheets.Waist, "30")
	d.Sheet.Set(worksheets.Hip, "broad")
	want := []string{
		`blouse.toml: body.hip: cannot read "broad" at character 1, 'b': a digit is wanted here; read would be ` + units.Want,
		`blouse.toml, line 3: method.slide: cannot read "far" at character 1, 'f': a digit is wanted here; read would be ` + units.Want,
	}
	if got := messages(d.Problems()); len(got) != 3 || !slices.Equal(got[:2], want) || !strings.Contains(got[2], "line 9: about.fabric") {
		t.Errorf("after two were put right and one more typed: %q", got)
	}
}

// values that are no text, as they are written and as a message calls them.
var wrongValues = []struct{ written, called string }{
	{"13.75", "13.75"}, {"13", "13"}, {"true", "true"}, {"{ a = 1 }", "a table"}, {"[1, 2]", "a list"}, {"2026-10-03", "2026-10-03"},
}

func TestAValueOfAnotherTypeIsReportedForEveryKeyAndKept(t *testing.T) {
	for _, k := range worksheets.Keys() {
		table, name, _ := strings.Cut(k.Path(), ".")
		for _, v := range wrongValues {
			if k.Kind() == worksheets.Date && v.written == "2026-10-03" || k.Kind() == worksheets.Count && v.written == "13" {
				continue // the types that these have of their own
			}
			source := file("# one", "["+table+"]", name+" = "+v.written)
			d := decode(t, source)
			want := fmt.Sprintf("blouse.toml, line 3: %s: cannot read %q: it is not text in quotes; read would be ", k, v.called)
			if p := messages(d.Problems()); len(p) != 1 || !strings.HasPrefix(p[0], want) {
				t.Errorf("%v = %s: problems %q, want one that starts %s", k, v.written, p, want)
			}
			if d.Sheet.Text(k) != "" {
				t.Errorf("%v = %s is read as %q", k, v.written, d.Sheet.Text(k))
			}
			if out, lost := encode(t, d); out != source || lost {
				t.Errorf("%v = %s: saved as %q, lost %v", k, v.written, out, lost)
			}
		}
	}
}

func TestWhatAMessageOffersIsReadable(t *testing.T) {
	offer := regexp.MustCompile(`such as (\w+ = ".*")$`)
	for _, k := range worksheets.Keys() {
		table, name, _ := strings.Cut(k.Path(), ".")
		for _, written := range []string{"true", "{ a = 1 }", "[1, 2]", "07:32:00", "inf"} {
			for _, p := range messages(decode(t, file("["+table+"]", name+" = "+written)).Problems()) {
				if found := offer.FindStringSubmatch(p); found != nil {
					if again := messages(decode(t, file("["+table+"]", found[1])).Problems()); again != nil {
						t.Errorf("for %v = %s it offers %s, which gives %q", k, written, found[1], again)
					}
				}
			}
		}
	}
}

func TestAMessageShowsTheValueAsItIsWritten(t *testing.T) {
	for _, written := range []string{"13.0", "0x10", "inf", "1e3", "07:32:00"} {
		p := messages(decode(t, file("[body]", "bicep = "+written)).Problems())
		if len(p) != 1 || !strings.Contains(p[0], fmt.Sprintf("cannot read %q", written)) {
			t.Errorf("%s: %q", written, p)
		}
	}
}

func TestAListOfTablesIsNotCalledATable(t *testing.T) {
	if p := messages(decode(t, "[[body]]\nbicep = \"13\"\n").Problems()); len(p) != 1 || strings.Contains(p[0], `"a table"`) {
		t.Errorf("%q", p)
	}
}

func TestTheDayOfAFittingIsChecked(t *testing.T) {
	if p := decode(t, "[[fitting]]\ndate = \"soon\"\n").Problems(); len(p) != 1 {
		t.Errorf("problems %q", messages(p))
	}
}

func TestAProblemOfALaterFittingNamesItsOwnLine(t *testing.T) {
	p := decode(t, file("[[fitting]]", "date = 2026-11-20", "[[fitting]]", "date = 5")).Problems()
	if len(p) != 1 || p[0].Line != 4 {
		t.Errorf("problems %q", messages(p))
	}
}
