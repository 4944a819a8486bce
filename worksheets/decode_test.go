package worksheets_test

import (
	"slices"
	"strings"
	"testing"

	"capscye/units"
	"capscye/worksheets"
)

// wholeFile answers every key, and one fitting.
const wholeFile = `# For the stage.
version = 1

[about]
title   = "Rehearsal blouse"
wearer  = "Tamsel"
unit    = "in"          # what a bare number means
ruler   = "1/8 in"
fabric  = "woven"
notes   = "3 buttons"
body_from    = "choir-blouse.toml"
pattern_from = "costume-tunic.toml"

[body]                  # girths
measured_on = 2026-10-03
bicep       = "13 3/4"
bicep_other = "34.9 cm"
bust        = "39 1/2"
high_bust   = "38"
waist       = "31"
hip         = "41"
elbow       = "12"
wrist       = "6 3/4"

[ease]
bicep = "1 3/4"
bust  = "3"
waist = "2"
hip   = "-1/2"
elbow = "1"
wrist = "2"

[pattern]
size            = "14"
chart_bust      = "36"
chart_high_bust = "34 1/2"

[sleeve]
length         = "long"
style          = "gathered"
width          = "13"
measured       = "edge"
allowance      = "5/8"
cap_height     = "5 1/4"
cap_front      = "9"
cap_back       = "9 1/4"
underarm_seam  = "6"
hem_width      = "13"
elbow_width    = "12 7/8"

[bodice]
front          = "10 1/4"
back           = "9 3/4"
measured       = "seam"
allowance      = "5/8"
crossings      = 2
take_off_front = "1/2"
take_off_back  = "3/8"
dart_front     = "side"
dart_back      = "waist"
finished_bust  = "42"
armhole_front  = "8 5/8"
armhole_back   = "8 7/8"
corner_out_front = "2"
corner_down_front = "7"
corner_out_back  = "1 3/4"
corner_down_back = "7 1/4"
bust_down      = "2"
side_seam      = "8"
waist_front    = "9"
waist_back     = "8"
hip_front      = "11"
hip_back       = "10 3/4"

[method]
pivot_limit_sleeve = "1"
pivot_limit_bodice = "7/8"
front_share_sleeve = "1/2"
front_share_bust   = "3/5"
slide   = "even"
follow  = "hold"
armhole = "keep"
taper_from = "corner"

[progress]
done = ["sleeve-mark", "sleeve-pin"]

[[fitting]]             # what the test garment showed
date = 2026-11-20
note = "tight when reaching"

[[fitting]]
date = "2026-11-27"
note = """
two
lines"""
`

func TestAWholeFileIsReadWithEveryAnswer(t *testing.T) {
	d := decode(t, wholeFile)
	if p, u := messages(d.Problems()), messages(d.Unknown()); p != nil || u != nil || d.ReadOnly != "" {
		t.Errorf("problems %q, unknown %q, read-only %q", p, u, d.ReadOnly)
	}
	for _, k := range worksheets.Keys() {
		if d.Sheet.Text(k) == "" {
			t.Errorf("%v has no answer", k)
		}
	}
	for k, want := range map[worksheets.Key]string{
		worksheets.Title: "Rehearsal blouse", worksheets.MeasuredOn: "2026-10-03", worksheets.BicepOther: "34.9 cm",
		worksheets.EaseHip: "-1/2", worksheets.ElbowWidth: "12 7/8", worksheets.Crossings: "2", worksheets.WaistBack: "8",
		worksheets.FrontShareBust: "3/5", worksheets.Slide: "even", worksheets.Armhole: "keep",
	} {
		if got := d.Sheet.Text(k); got != want {
			t.Errorf("%v says %q, want %q", k, got, want)
		}
	}
	if !slices.Equal(d.Sheet.Done, []string{"sleeve-mark", "sleeve-pin"}) {
		t.Errorf("done are %q", d.Sheet.Done)
	}
	if want := []worksheets.Fitting{{Date: "2026-11-20", Note: "tight when reaching"}, {Date: "2026-11-27", Note: "two\nlines"}}; !slices.Equal(d.Sheet.Fittings, want) {
		t.Errorf("fittings are %q", d.Sheet.Fittings)
	}
}

func TestTheWrittenFormDoesNotMatter(t *testing.T) {
	want := decode(t, wholeFile).Sheet
	undone := strings.Replace(wholeFile, "[progress]\ndone = ", "#", 1)
	for name, source := range map[string]string{
		"Windows line ends":    strings.ReplaceAll(strings.ReplaceAll(wholeFile, "\ntwo\nlines", "\ntwo\\nlines"), "\n", "\r\n"),
		"a byte order mark":    "\ufeff" + wholeFile,
		"no final line end":    strings.TrimSuffix(wholeFile, "\n"),
		"single quotes":        strings.ReplaceAll(wholeFile, `"13 3/4"`, `'13 3/4'`),
		"space around answers": strings.ReplaceAll(wholeFile, `"13 3/4"`, `"  13 3/4 "`),
		"the day as text":      strings.ReplaceAll(wholeFile, `= 2026-10-03`, `= "2026-10-03"`),
		"a count as text":      strings.ReplaceAll(wholeFile, `= 2`+"\n", `= "2"`+"\n"),
		"a dotted key":         strings.Replace(undone, "version = 1\n", "version = 1\nprogress.done = [\"sleeve-mark\", \"sleeve-pin\"]\n", 1),
		"an inline table":      strings.Replace(undone, "version = 1\n", "version = 1\nprogress = {done = [\"sleeve-mark\", \"sleeve-pin\"]}\n", 1),
	} {
		d := decode(t, source)
		if !d.Sheet.Equal(want) || d.Problems() != nil || d.Unknown() != nil {
			t.Errorf("%s: problems %q, unknown %q, sheet %+v", name, messages(d.Problems()), messages(d.Unknown()), d.Sheet)
		}
	}
}

func TestAHalfFilledFileIsNoFault(t *testing.T) {
	for _, source := range []string{
		"", "\n", "\ufeff", "# nothing yet\n", "version = 1\n", "[body]\n", "[body]\nbicep = \"\"\n", "[[fitting]]\n",
		"[progress]\n", "[body]\nmeasured_on = \"\"\n", "[bodice]\ncrossings = \"\"\n", "[about]\nunit = \"\"\n",
	} {
		d := decode(t, source)
		if p, u := messages(d.Problems()), messages(d.Unknown()); p != nil || u != nil || d.ReadOnly != "" {
			t.Errorf("%q: problems %q, unknown %q, read-only %q", source, p, u, d.ReadOnly)
		}
		for _, k := range worksheets.Keys() {
			if d.Sheet.Text(k) != "" {
				t.Errorf("%q: %v says %q", source, k, d.Sheet.Text(k))
			}
		}
	}
	d := decode(t, file(`[about]`, `unit = "cm"`, `[body]`, `bicep = "35"`))
	if r := d.Sheet.Reading(worksheets.Bicep); r != units.Known(35*units.Centimetre) || d.Sheet.Reading(worksheets.Bust).Known {
		t.Errorf("bicep reads %v, bust %v", r, d.Sheet.Reading(worksheets.Bust))
	}
}

func TestAnEmptyListOfFittingsIsNoFault(t *testing.T) {
	if p := messages(decode(t, "fitting = []\n").Problems()); p != nil {
		t.Errorf("problems %q", p)
	}
}

func TestFittingsWrittenInOneLineAreRead(t *testing.T) {
	d := decode(t, file(`fitting = [{date = 2026-11-20, note = "tight"}]`))
	if want := []worksheets.Fitting{{Date: "2026-11-20", Note: "tight"}}; !slices.Equal(d.Sheet.Fittings, want) {
		t.Errorf("fittings %q, problems %q", d.Sheet.Fittings, messages(d.Problems()))
	}
}

func TestTheVersionDecidesWhetherTheFileMayBeWritten(t *testing.T) {
	for line, readOnly := range map[string]string{
		"":                    "",
		"version = 1":         "",
		"version = 2":         "it has version 2, and this program writes version 1",
		"version = 900":       "it has version 900, and this program writes version 1",
		"version = 0":         "its version cannot be read",
		"version = -1":        "its version cannot be read",
		"version = 2.5":       "its version cannot be read",
		`version = "1"`:       "its version cannot be read",
		"version = [1]":       "its version cannot be read",
		"version = {a = 1}":   "its version cannot be read",
		"version = true":      "its version cannot be read",
		"version.major = 1":   "its version cannot be read",
		"version = 1 # first": "",
	} {
		d := decode(t, file(line, `[body]`, `bicep = "13 3/4"`))
		if d.ReadOnly != readOnly {
			t.Errorf("%q: read-only %q, want %q", line, d.ReadOnly, readOnly)
		}
		if bad := readOnly == "its version cannot be read"; bad != (len(d.Problems()) == 1) {
			t.Errorf("%q: problems %q", line, messages(d.Problems()))
		}
		if d.Sheet.Text(worksheets.Bicep) != "13 3/4" {
			t.Errorf("%q: the rest was not read", line)
		}
	}
}

func TestTheDayMayBeATOMLDateOrText(t *testing.T) {
	for written, want := range map[string]string{
		"2026-10-03": "2026-10-03", `"2026-10-03"`: "2026-10-03", "'2026-10-03'": "2026-10-03",
		"2026-10-03T23:30:00-05:00": "2026-10-03", "2026-10-03 08:00:00": "2026-10-03", `"3 October"`: "3 October",
	} {
		d := decode(t, file("[body]", "measured_on = "+written))
		if got := d.Sheet.Text(worksheets.MeasuredOn); got != want {
			t.Errorf("%s is read as %q, want %q", written, got, want)
		}
		if bad := want == "3 October"; bad != (len(d.Problems()) == 1) {
			t.Errorf("%s: problems %q", written, messages(d.Problems()))
		}
	}
}

func TestATimeOfDayIsNoDay(t *testing.T) {
	d := decode(t, file("[body]", "measured_on = 07:32:00"))
	if len(d.Problems()) != 1 {
		t.Errorf("read as %q, problems %q", d.Sheet.Text(worksheets.MeasuredOn), messages(d.Problems()))
	}
}

func TestTextFromAFileIsKeptEvenWhereItWouldActOnATerminal(t *testing.T) {
	d := decode(t, file(`[about]`, `title = "a\u001b[31mb\u202ec\u0000\u0007\u009b\u200bd"`, `notes = """one`, `two"""`))
	if got, want := d.Sheet.Text(worksheets.Title), "a\x1b[31mb\u202ec\x00\a\u009b\u200bd"; got != want {
		t.Errorf("the title is %q, want %q", got, want)
	}
	if got := d.Sheet.Text(worksheets.Notes); got != "one\ntwo" {
		t.Errorf("the notes are %q", got)
	}
	if p := messages(d.Problems()); p != nil {
		t.Errorf("problems %q", p)
	}
}
