package worksheets_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"capscye/worksheets"
)

func TestUnknownKeysAndTablesAreListedAndKept(t *testing.T) {
	const why = "no such key here; it stays in the file and is not used"
	for _, c := range []struct {
		source string
		want   []string
	}{
		{"[body]\nneck = \"15\"\n", []string{"blouse.toml, line 2: body.neck: " + why}},
		{"[body]\nBicep = \"13\"\n", []string{"blouse.toml, line 2: body.Bicep: " + why + `; did you mean "bicep"?`}},
		{"[sleeve]\nCAP_HEIGHT = \"5\"\n", []string{"blouse.toml, line 2: sleeve.CAP_HEIGHT: " + why + `; did you mean "cap_height"?`}},
		{"bicep = \"13\"\n", []string{"blouse.toml, line 1: bicep: " + why}},
		{"\n[shop]\ncloth = \"linen\"\n", []string{"blouse.toml, line 2: shop: " + why}},
		{"\n[[shop]]\ncloth = \"linen\"\n[[shop]]\ncloth = \"wool\"\n", []string{"blouse.toml, line 2: shop: " + why}},
		{"[[shop]]\ncloth = \"linen\"\n", []string{"blouse.toml, line 1: shop: " + why}},
		{"[body]\nbust = \"39\"\n\n[body.left]\nknee = \"15\"\n", []string{"blouse.toml, line 4: body.left: " + why}},
		{"[progress]\nstage = 2\n", []string{"blouse.toml, line 2: progress.stage: " + why}},
		{"\ufeff# first\r\n[ease]\r\nneck = 1.5\r\n", []string{"blouse.toml, line 3: ease.neck: " + why}},
	} {
		d := decode(t, c.source)
		if got := messages(d.Unknown()); !slices.Equal(got, c.want) {
			t.Errorf("%q:\n got %q\nwant %q", c.source, got, c.want)
		}
		if p := messages(d.Problems()); p != nil {
			t.Errorf("%q: problems %q", c.source, p)
		}
		d.Sheet.Set(worksheets.Wrist, "6 1/2")
		out, lost := encode(t, d)
		if got, want := strangers(t, out), strangers(t, c.source); lost || got != want {
			t.Errorf("%q is saved as %q, lost %v", c.source, out, lost)
		}
		again := decode(t, out)
		if again.Sheet.Text(worksheets.Wrist) != "6 1/2" || len(again.Unknown()) != len(c.want) {
			t.Errorf("%q is saved as %q", c.source, out)
		}
	}
}

func TestAKeyInAnotherCaseDoesNotReplaceTheAnswer(t *testing.T) {
	d := decode(t, file(`[body]`, `Bicep = "99"`, `bicep = "13 3/4"`, `BICEP = "98"`))
	if d.Sheet.Text(worksheets.Bicep) != "13 3/4" || len(d.Unknown()) != 2 {
		t.Errorf("bicep is %q, unknown %q", d.Sheet.Text(worksheets.Bicep), messages(d.Unknown()))
	}
}

func TestATableInAnotherCaseComesWithASuggestion(t *testing.T) {
	for _, c := range []struct{ source, want string }{
		{"[Body]\nbicep = \"13\"\n", `did you mean "body"?`},
		{"[[Fitting]]\nnote = \"x\"\n", `did you mean "fitting"?`},
		{"[progress]\nDone = []\n", `did you mean "done"?`},
		{"Version = 1\n", `did you mean "version"?`},
	} {
		if u := messages(decode(t, c.source).Unknown()); len(u) != 1 || !strings.HasSuffix(u[0], c.want) {
			t.Errorf("%q: %q, want %s", c.source, u, c.want)
		}
	}
}

// A file of other things is not read out: twenty of its keys are enough.
func TestUnknownKeysAreListedUpToTwenty(t *testing.T) {
	for _, count := range []int{20, 21, 50} {
		source := "[body]\n"
		for n := range count {
			source += fmt.Sprintf("neck_%d = 15\n", n)
		}
		u := messages(decode(t, source).Unknown())
		if want := min(count, 21); len(u) != want {
			t.Errorf("of %d keys %d are listed, want %d", count, len(u), want)
		}
		if last := u[len(u)-1]; strings.Contains(last, "there are more such keys") != (count > 20) {
			t.Errorf("of %d keys the last says %q", count, last)
		}
	}
}

func TestAnUnknownKeyInAFittingIsListed(t *testing.T) {
	if u := decode(t, file("[[fitting]]", `note = "tight"`, `by = "Tamsel"`)).Unknown(); len(u) != 1 || u[0].Path != "fitting.by" {
		t.Errorf("unknown %q", messages(u))
	}
}

// a text with an escape sequence, one that turns the line of writing, and one
// of the control characters above ASCII
const actingTOML, acting = `x\u001b[31m\u202e\u009b`, "x\x1b[31m\u202e\u009b"

func TestMessagesShowWhatWouldActOnATerminalInsteadOfDoingIt(t *testing.T) {
	for _, line := range []string{
		"[about]\nunit = ", "[about]\nruler = ", "[body]\nmeasured_on = ", "[body]\nbicep = ", "[sleeve]\nallowance = ",
		"[method]\nfront_share_bust = ", "[method]\nslide = ", "[bodice]\ncrossings = ", "version = ", "body = ", "fitting = ", "[progress]\ndone = ",
	} {
		p := messages(decode(t, line+`"`+actingTOML+`"`+"\n").Problems())
		if len(p) != 1 || acts(p[0]) || !strings.Contains(p[0], `\x1b[31m\u202e`) {
			t.Errorf("%s: %q", line, p)
		}
	}
	for _, source := range []string{
		"bicep = \x1b[31m13\n", "bicep = \u202e13\n", "bi\u202ecep = 13\n", "[a]\n\"" + actingTOML + "\" = 1 2\n", "a = \"\u009b\" \"\n", "a\xff\xfe = 1\n", "\x00",
	} {
		if fault := refused(t, []byte(source)); acts(fault.Error()) {
			t.Errorf("%q: %q", source, fault.Error())
		}
	}
	for _, name := range []string{acting, "a\nb.toml", "line\u2028.toml"} {
		d, err := worksheets.Decode(name, []byte("body = 3\nshop = 3\n"))
		if err != nil {
			t.Fatal(err)
		}
		said := append(messages(d.Problems()), messages(d.Unknown())...)
		if len(said) != 2 || acts(strings.Join(said, "")) {
			t.Errorf("file %q: %q", name, said)
		}
		if _, err := worksheets.Decode(name, []byte("=")); err == nil || acts(err.Error()) {
			t.Errorf("file %q: %v", name, err)
		}
	}
}

func TestAKeyThatWouldActOnATerminalIsShownInMessages(t *testing.T) {
	d := decode(t, `"`+actingTOML+`" = 1`+"\n[body]\n\""+actingTOML+`" = 1`+"\n")
	unknown := messages(d.Unknown())
	if len(unknown) != 2 {
		t.Errorf("%q", unknown)
	}
	for _, m := range unknown {
		if acts(m) || !strings.Contains(m, `\x1b[31m\u202e\u009b`) {
			t.Errorf("%q", m)
		}
	}
	if fault := refused(t, []byte(strings.Repeat("\"a\\u202e\" = 1\n", 2))); acts(fault.Error()) {
		t.Errorf("%q", fault.Error())
	}
	if fault := refused(t, []byte("a = \"\\\u202e\"\n")); acts(fault.Error()) {
		t.Errorf("%q", fault.Error())
	}
}

// What shows something is shown as it is: line ends of other systems and the spaces of
// printed numbers are no escapes.
func TestWhatShowsSomethingIsShown(t *testing.T) {
	for text, want := range map[string]string{
		"13\u00a03/4\u202f\u2009½": "13\u00a03/4\u202f\u2009½", "one\r\ntwo\tthree\x1b": `one two three\x1b`, "\u200b": `\u200b`, "\ufffd": `\ufffd`, "": "",
	} {
		if got := worksheets.Printable(text); got != want {
			t.Errorf("%q is shown as %q, want %q", text, got, want)
		}
	}
}

// A long reason begins with what was read and ends with what is wrong with it; it is
// cut in the middle, between two characters.
func TestALongReasonIsCutInItsMiddle(t *testing.T) {
	for reason, want := range map[string]string{
		strings.Repeat("é", 90): strings.Repeat("é", 90), strings.Repeat("é", 200): strings.Repeat("é", 200),
		strings.Repeat("é", 150) + strings.Repeat("è", 150): strings.Repeat("é", 100) + "..." + strings.Repeat("è", 100),
	} {
		if got := (&worksheets.FileError{File: "blouse.toml", Reason: reason}).Error(); got != "blouse.toml: "+want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}

func TestAMessageIsShortHoweverLongTheTextIs(t *testing.T) {
	long := strings.Repeat("ab", 20_000)
	for _, source := range []string{
		"[body]\nbicep = \"" + long + "\"\n", "[method]\nfront_share_bust = \"" + long + "\"\n", "[about]\nruler = \"" + long + "\"\n",
	} {
		if p := messages(decode(t, source).Problems()); len(p) != 1 || len(p[0]) > 500 {
			t.Errorf("%.40q: %d messages, the first of %d bytes", source, len(p), len(p[0]))
		}
	}
	if fault := refused(t, []byte("bicep = 13 3/4 "+long)); len(fault.Error()) > 500 {
		t.Errorf("a message of %d bytes", len(fault.Error()))
	}
}

func TestAMessageIsShortForChoicesDaysCountsAndKeysToo(t *testing.T) {
	long := strings.Repeat("ab", 20_000)
	for _, source := range []string{
		"[about]\nunit = \"" + long + "\"\n", "[body]\nmeasured_on = \"" + long + "\"\n", "[bodice]\ncrossings = \"" + long + "\"\n", "[body]\n" + long + " = 1\n",
	} {
		d := decode(t, source)
		if said := append(messages(d.Problems()), messages(d.Unknown())...); len(said) != 1 || len(said[0]) > 500 {
			t.Errorf("%.40q: %d messages, %.600q", source, len(said), said)
		}
	}
	if fault := refused(t, []byte(strings.Repeat(long+" = 1\n", 2))); len(fault.Error()) > 500 {
		t.Errorf("a message of %d bytes", len(fault.Error()))
	}
}
