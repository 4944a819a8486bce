package ui

import (
	"encoding/json"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/worksheets"
)

// acts tells whether a text would do something to a terminal besides standing in
// it: controls, signs that turn the direction of writing or are invisible, line
// separators, and bytes that are no UTF-8. Line ends are what lines are made of.
func acts(s string) bool {
	return !utf8.ValidString(s) || strings.ContainsFunc(s, func(r rune) bool {
		return r != '\n' && unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Cs, unicode.Zl, unicode.Zp)
	})
}

// keysOf are the paths of every key in a value of JSON; those in a list stand once.
func keysOf(v any) map[string]bool {
	found := map[string]bool{}
	var walk func(path string, v any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for name, child := range v {
				found[path+"."+name] = true
				walk(path+"."+name, child)
			}
		case []any:
			for _, child := range v {
				walk(path+"[]", child)
			}
		}
	}
	walk("", v)
	return found
}

// FuzzShow prints any file: what can be read is JSON with the keys that every
// sheet has, and nothing that is printed steers a terminal.
func FuzzShow(f *testing.F) {
	for _, name := range worksheets.Examples() {
		source, err := os.ReadFile(example(name))
		if err != nil {
			f.Fatal(err)
		}
		f.Add(source)
	}
	for _, source := range []string{
		"", "[body]\nbicep = \"99999999\"\n[ease]\nbicep = \"-1/2\"\n[sleeve]\nwidth = \"1/64\"\n",
		"[about]\ntitle = \"\\u001b]0;x\\u0007\\u202e\\u0085\"\nwearer = \"\\U000e0001\"\nunit = \"\\u009b31m\"\n",
		"[body]\nbicep = \"\\u001b[2J\"\n\"\\u001bc\" = 1\n['\\u2028']\n", "[[fitting]]\ndate = \"\\u001b\"\nnote = \"upper arm 1/2 in too tight\\u202e\"\n",
		"[progress]\ndone = [\"\\u001b[31m\", \"sleeve-mark\"]\n", "version = 9\n", "[body\n\x1b[31m\xff", "[about]\ntitle = \"\xed\xa0\x80\"\n",
		"[method]\nslide = \"1000\"\nfront_share_bust = \"100 %\"\npivot_limit_sleeve = \"0\"\n[body]\nbust = \"40\"\n[ease]\nbust = \"3\"\n[bodice]\nfront = \"0.0001\"\nback = \"1\"\n",
	} {
		f.Add([]byte(source))
	}
	_, out, _ := run("", "show", "--json", example("choir-blouse"))
	var usual any
	if err := json.Unmarshal([]byte(out), &usual); err != nil {
		f.Fatal(err)
	}
	every := keysOf(usual)
	f.Fuzz(func(t *testing.T, source []byte) {
		_, decoding := worksheets.Decode("", source)
		status, out, errs := run(string(source), "show", "--json", "-")
		if acts(out + errs) {
			t.Fatalf("%q is printed, and\n%q", errs, out)
		}
		if decoding != nil {
			if status != exitUnread || out != "" || errs == "" {
				t.Fatalf("status %d, %q, %s", status, errs, out)
			}
			return
		}
		var tree any
		if err := json.Unmarshal([]byte(out), &tree); err != nil || status == exitUnread {
			t.Fatalf("status %d, %v:\n%s", status, err, out)
		}
		keys := keysOf(tree)
		for _, sometimes := range []string{".findings[].code", ".findings[].level", ".findings[].about", ".findings[].text", ".findings[].ways_out"} {
			delete(keys, sometimes)
			delete(every, sometimes)
		}
		if !maps.Equal(keys, every) {
			t.Fatalf("the keys are %v", slices.Sorted(maps.Keys(keys)))
		}
		for _, args := range [][]string{{"show", "--working", "-"}, {"trace", "-"}} {
			if again, out, errs := run(string(source), args...); again != status || acts(out+errs) {
				t.Fatalf("%v: status %d and %d, %q, and\n%q", args, again, status, errs, out)
			}
		}
	})
}

// FuzzTry tries any two changes on a sheet: an answer, or words about the change
// that cannot be read; never a panic, nor a sheet that is written.
func FuzzTry(f *testing.F) {
	for _, args := range [][2]string{
		{"ease.bicep=2", "method.slide=even"}, {"ease.bicep=1..3/0.5", "ease.bust=3"}, {"ease.bicep=1 1/2..2 1/2/1/4", "about.unit=cm"},
		{"about.unit=furlong", "ease.bicep=1..3/1"}, {"body.bicep=", "method.armhole=keep"}, {"ease.bicep=-1..1/1/64", "="}, {"ease.bicep", "x=1"},
		{"ease.bicep=1..99999999999/1", "ease.bicep=1../"}, {"ease.bicep=..", "ease.bicep=0..0/0"}, {"about.title=\x1b]0;x\x07\u202e", "about.wearer=\xff"},
		{"\x1b[31m=1", "body.bust=\u009b2J"}, {"body.measured_on=2026-02-30", "about.ruler=1/3"}, {"ease.bicep=1..3/1/0", "sleeve.allowance=-1"},
	} {
		f.Add(args[0], args[1], true)
		f.Add(args[0], args[1], false)
	}
	source, err := os.ReadFile(example("choir-blouse"))
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, one, other string, asJSON bool) {
		args := []string{"try", "--", "-", one, other}
		if asJSON {
			args = slices.Insert(args, 1, "--json")
		}
		status, out, errs := run(string(source), args...)
		if acts(out + errs) {
			t.Fatalf("%q is printed, and\n%q", errs, out)
		}
		switch {
		case status == exitUnread:
			if out != "" || !strings.HasPrefix(errs, "capscye: ") || strings.Count(errs, "\n") != 1 {
				t.Fatalf("status %d, %q, and\n%q", status, errs, out)
			}
		case status != exitWell && status != exitUnfinished || out == "":
			t.Fatalf("status %d, %q, and\n%q", status, errs, out)
		case asJSON && !json.Valid([]byte(out)):
			t.Fatalf("no JSON:\n%s", out)
		}
	})
}

// pasted is a text as it comes from a paste.
func pasted(text string) tea.KeyMsg {
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true}
}
