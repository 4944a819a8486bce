package worksheets_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"capscye/worksheets"
)

func TestEveryUnreadableValueIsReportedInOneLine(t *testing.T) {
	for _, c := range []struct{ source, want string }{
		{"[body]\nbicep = 13.75\n", `blouse.toml, line 2: body.bicep: put quotes around 13.75. Write it like bicep = "13.75"`},
		{"[body]\n\n# arm\nbicep = 13\n", `blouse.toml, line 4: body.bicep: put quotes around 13. Write it like bicep = "13"`},
		{"[about]\nfabric = 3\n", `blouse.toml, line 2: about.fabric: put quotes around 3. Write it like fabric = "woven"`},
		{"[about]\nfabric = \"silk\"\n", `blouse.toml, line 2: about.fabric: "silk" is not a choice. Choose woven or knit`},
		{"[sleeve]\nstyle = \"Shirt\"\n", `blouse.toml, line 2: sleeve.style: "Shirt" is not a choice. Choose set-in, shirt or gathered`},
		{"[body]\nbicep = \"13 3/4 cubits\"\n", `blouse.toml, line 2: body.bicep: "13 3/4 cubits" is not a length: "cubits" is no unit here. Write it like 13 3/4, 13.75 or 34,9 cm`},
		{"[body]\nbicep = \"0\"\n", `blouse.toml, line 2: body.bicep: "0" must be more than 0. Write it like 13 3/4, 13.75 or 34,9 cm`},
		{"[sleeve]\nallowance = \"-5/8\"\n", `blouse.toml, line 2: sleeve.allowance: "-5/8" is below 0. Write it like 13 3/4, 13.75 or 34,9 cm`},
		{"[method]\nfront_share_bust = \"3/2\"\n", `blouse.toml, line 2: method.front_share_bust: "3/2" is not a share: it goes from 0 to 1. Write it like 1/2, 0.55 or 55 %`},
		{"[method]\nslide = \"some\"\n", `blouse.toml, line 2: method.slide: "some" is not a slide. Write it like least, even or 1 1/4`},
		{"[method]\nslide = \"1 1/0\"\n", `blouse.toml, line 2: method.slide: "1 1/0" is not a slide: the number after the slash is 0. Write it like least, even or 1 1/4`},
		{"[bodice]\ncrossings = 5\n", `blouse.toml, line 2: bodice.crossings: "5" is not a whole number from 0 to 4. Write it like 1`},
		{"[bodice]\ncrossings = \"some\"\n", `blouse.toml, line 2: bodice.crossings: "some" is not a whole number from 0 to 4. Write it like 1`},
		{"[about]\nruler = \"1/7 in\"\n", `blouse.toml, line 2: about.ruler: "1/7 in" is not a mark of a ruler. Write it like 1/8 in, 1/16 in or 1 mm`},
		{"[body]\nmeasured_on = \"2026-02-30\"\n", `blouse.toml, line 2: body.measured_on: "2026-02-30" is no day of the calendar. Write it like 2026-10-03`},
		{"version = \"one\"\n", `blouse.toml, line 1: version: "one" is not a whole number from 1. Write version = 1`},
		{"version = 0\n", `blouse.toml, line 1: version: "0" is not a whole number from 1. Write version = 1`},
		{"body = 3\n", `blouse.toml, line 1: body: "3" is not a table. Write [body] on a line of its own`},
		{"[progress]\ndone = \"all\"\n", `blouse.toml, line 2: progress.done: "all" is not a list. Write it like ["sleeve-mark"]`},
		{"[progress]\ndone = [\"a\", 4]\n", `blouse.toml, line 2: progress.done: put quotes around 4. Write it like ["sleeve-mark"]`},
		{"fitting = 3\n", `blouse.toml, line 1: fitting: "3" is not a list of tables. Write [[fitting]] on a line of its own`},
		{"[fitting]\nnote = \"x\"\n", `blouse.toml, line 1: fitting: "a table" is not a list of tables. Write [[fitting]] on a line of its own`},
		{"[[fitting]]\ndate = 5\n", `blouse.toml, line 2: fitting.date: "5" is not a day. Write it like 2026-11-20`},
		{"[[fitting]]\nnote = 5\n", `blouse.toml, line 2: fitting.note: put quotes around 5. Write it like note = "tight at the back"`},
	} {
		if got := messages(decode(t, c.source).Problems()); len(got) != 1 || got[0] != c.want {
			t.Errorf("%q:\n got %q\nwant %q", c.source, got, c.want)
		}
	}
}

func TestAFileThatIsNotTOMLIsRefusedWithThePlace(t *testing.T) {
	for _, c := range []struct{ source, want string }{
		{"[body]\nbicep = 13 3/4\n", `blouse.toml, line 2, "bicep = 13 3/4": put quotes around the value. Write it like bicep = "13 3/4"`},
		{"[body]\n  bicep = \"13 3/4\nbust = \"39\"\n", `blouse.toml, line 2, "bicep = \"13 3/4": it needs a closing quote. Write it like bicep = "13 3/4"`},
		{"[body]\nbicep = \"13\"\n\nbicep = \"14\"\n", `blouse.toml, line 4, "bicep = \"14\"": it is here a second time. Keep one of the two`},
		{"[body]\nbicep\n", `blouse.toml, line 2, "bicep": it needs = and a value. Write it like bicep = "13 3/4"`},
		{"[body]\r\nbicep = 13 3/4\r\n", `blouse.toml, line 2, "bicep = 13 3/4": put quotes around the value. Write it like bicep = "13 3/4"`},
		{"[body]\nbicep = \"13 3/4\" extra\n", `blouse.toml, line 2, "bicep = \"13 3/4\" extra": something stands behind the value. Write it like bicep = "13 3/4"`},
		{"[body]\n= \"13\"\n", `blouse.toml, line 2, "= \"13\"": it needs a key before =. Write it like bicep = "13 3/4"`},
		{"\ufeff[body]\nbicep = ½\n", `blouse.toml, line 2, "bicep = ½": put quotes around the value. Write it like bicep = "½"`},
		{"[about]\ntitle = Blouse\n", `blouse.toml, line 2, "title = Blouse": put quotes around the value. Write it like title = "Blouse"`},
		{"[about]\nunit = cm\n", `blouse.toml, line 2, "unit = cm": put quotes around the value. Write it like unit = "cm"`},
		{"[about]\nunit = inches\n", `blouse.toml, line 2, "unit = inches": put quotes around the value. Write it like unit = "in"`},
		{"[sleeve]\nstyle = shirt # usual\n", `blouse.toml, line 2, "style = shirt # usual": put quotes around the value. Write it like style = "shirt"`},
		{"[method]\nslide = even\n", `blouse.toml, line 2, "slide = even": put quotes around the value. Write it like slide = "even"`},
		{"[method]\nfollow = let out\n", `blouse.toml, line 2, "follow = let out": put quotes around the value. Write it like follow = "let out"`},
		{"[method]\nfront_share_bust = 55 %\n", `blouse.toml, line 2, "front_share_bust = 55 %": put quotes around the value. Write it like front_share_bust = "55 %"`},
		{"[about]\nruler = 1/8 in\n", `blouse.toml, line 2, "ruler = 1/8 in": put quotes around the value. Write it like ruler = "1/8 in"`},
		{"[bodice]\ncrossings = two\n", `blouse.toml, line 2, "crossings = two": put quotes around the value. Write it like crossings = "1"`},
		{"[body]\nbicep = 13,5\n", `blouse.toml, line 2, "bicep = 13,5": put quotes around the value. Write it like bicep = "13,5"`},
		{"[body]\nbicep = 013\n", `blouse.toml, line 2, "bicep = 013": put quotes around the value. Write it like bicep = "013"`},
		{"[body]\nmeasured_on = 2026-02-30\n", `blouse.toml, line 2, "measured_on = 2026-02-30": there is no such day. Write it like measured_on = "2026-10-03"`},
		{"[body]\nmeasured_on = 2026-9-3\n", `blouse.toml, line 2, "measured_on = 2026-9-3": write year, month and day. Write it like measured_on = "2026-09-03"`},
		{"[body]\nmeasured_on = 3.10.2026\n", `blouse.toml, line 2, "measured_on = 3.10.2026": write year, month and day. Write it like measured_on = "2026-10-03"`},
		{"[body]\nmeasured_on = 3/10/2026\n", `blouse.toml, line 2, "measured_on = 3/10/2026": write year, month and day. Write it like measured_on = "2026-10-03"`},
		{"version = one\n", `blouse.toml, line 1, "version = one": put quotes around the value. Write version = 1`},
		{"[[fitting]]\nnote = tight\n", `blouse.toml, line 2, "note = tight": put quotes around the value. Write it like note = "tight"`},
		{"[[fitting]]\ndate = 2026-02-30\n", `blouse.toml, line 2, "date = 2026-02-30": there is no such day. Write it like date = 2026-11-20`},
		{"[progress]\ndone = [sleeve-mark]\n", `blouse.toml, line 2, "done = [sleeve-mark]": put quotes around each step. Write it like done = ["sleeve-mark"]`},
		{"[progress]\ndone = [\"sleeve-mark\"\n[[fitting]]\n", `blouse.toml, line 3, "[[fitting]]": the list needs a comma or a closing bracket. Write it like done = ["sleeve-mark"]`},
		{"[[size]]\nname = XL\n", `blouse.toml, line 2, "name = XL": put quotes around the value. Write it like name = "XL"`},
		{"[[size]]\nname = \"16\"\n[size.sleeve]\nwidth = 13 1/2\n", `blouse.toml, line 4, "width = 13 1/2": put quotes around the value. Write it like width = "13 1/2"`},
		{"body.bicep = 13 1/2\n", `blouse.toml, line 1, "body.bicep = 13 1/2": put quotes around the value. Write it like body.bicep = "13 1/2"`},
		{"[body]\nbicep: 13\n", `blouse.toml, line 2, "bicep: 13": it needs = before the value. Write it like bicep = "13"`},
		{"Dear all,\nthe smock fits.\n", `blouse.toml, line 1, "Dear all,": it needs = and a value. Write it like bicep = "13 3/4"`},
		{"[about]\ncolour = dark green\n", `blouse.toml, line 2, "colour = dark green": put quotes around the value. Write it like colour = "dark green"`},
		{"[about]\ntitle = \"A\\qB\"\n", `blouse.toml, line 2, "title = \"A\\qB\"": a \ in double quotes is written twice. Write \\ instead of \`},
		{"[about]]\n", `blouse.toml, line 1, "[about]]": its brackets do not match. Write it like [body]`},
		{"[about]\ntitle = \"caf\xe9\"\n", `blouse.toml, line 2, "title = \"caf\xe9\"": it is not in UTF-8. Save the file as UTF-8`},
		{"\xff\xfe[\x00b\x00o\x00d\x00y\x00]\x00", `blouse.toml: it is not in UTF-8. Save the file as UTF-8`},
		{"[body]\n\nbicep =\nbust = \"39\"\n", `blouse.toml, line 3, "bicep =": it needs a value. Write it like bicep = "13 3/4"`},
	} {
		fault := refused(t, []byte(c.source))
		if got := fault.Error(); got != c.want {
			t.Errorf("%q:\n got %s\nwant %s", c.source, got, c.want)
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
		`blouse.toml: body.hip: "broad" is not a length. Write it like 13 3/4, 13.75 or 34,9 cm`,
		`blouse.toml, line 3: method.slide: "far" is not a slide. Write it like least, even or 1 1/4`,
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
			want := fmt.Sprintf("blouse.toml, line 3: %s: put quotes around %s. Write it like %s = ", k, v.called, name)
			if strings.HasPrefix(v.called, "a ") {
				want = fmt.Sprintf("blouse.toml, line 3: %s: %s is not text. Write it like %s = ", k, v.called, name)
			}
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
	offer, offers := regexp.MustCompile(`Write it like (\w+ = ".*")$`), 0
	for _, k := range worksheets.Keys() {
		table, name, _ := strings.Cut(k.Path(), ".")
		for _, written := range []string{"true", "{ a = 1 }", "[1, 2]", "07:32:00", "inf"} {
			for _, p := range messages(decode(t, file("["+table+"]", name+" = "+written)).Problems()) {
				if found := offer.FindStringSubmatch(p); found != nil {
					offers++
					if again := messages(decode(t, file("["+table+"]", found[1])).Problems()); again != nil {
						t.Errorf("for %v = %s it offers %s, which gives %q", k, written, found[1], again)
					}
				}
			}
		}
	}
	if offers < 5*len(worksheets.Keys()) {
		t.Errorf("only %d offers", offers)
	}
}

func TestAMessageShowsTheValueAsItIsWritten(t *testing.T) {
	for _, written := range []string{"13.0", "0x10", "inf", "1e3", "07:32:00"} {
		p := messages(decode(t, file("[body]", "bicep = "+written)).Problems())
		if len(p) != 1 || !strings.Contains(p[0], written) {
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
