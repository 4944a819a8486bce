package ui_test

import (
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"path/filepath"
	"strings"
	"testing"

	"capscye/ui"
	"capscye/ui/console"
	"capscye/ui/internal/props"
	"capscye/ui/paper"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// Nothing that is printed, to either stream, by any command, lets a payload through;
// nor does a card, or the report of a fault.
func TestNoPayloadIsPrinted(t *testing.T) {
	for i, p := range props.Payloads {
		if i%3 != 0 && !props.Thorough() {
			continue
		}
		file := props.LayHostile(t, p)
		if d, err := worksheets.Load(file); i%10 == 0 { // the slowest of all
			if err != nil {
				t.Fatal(err)
			}
			card, err := paper.Write(filepath.Join(t.TempDir(), "card.pdf"), "a4", report.Reckon(d, props.SomeDay, 0), props.SomeDay)
			if err != nil {
				t.Fatal(err)
			}
			pages := props.ReadPDF(t, []byte(props.Read(t, card.Saved[0])))
			for n := range pages.NumPage() {
				if text := props.PageText(t, pages.Page(n+1)); props.Acts(text) {
					t.Errorf("%q comes through the PDF:\n%q", p, text)
				}
			}
		}
		p = strings.ReplaceAll(p, "\x00", "") // no argument can have one
		for _, args := range [][]string{
			{"show", "--working", file}, {"show", "--json", "--working", file, "bad" + file[2:], p}, {"trace", file}, {file}, {p}, {"--", "-" + p}, {"--" + p}, {"show", "--" + p},
			{"try", file, "ease.bicep=2"}, {"try", file, "ease.bicep=1..2/1"}, {"sizes", file}, {"roster", "--csv"}, {"roster", "--sentences"}, {"trace", "--sentences", file}, {"show", "--sentences", file}, {"try", file, "about.title=" + p, "about.unit=" + p}, {"try", file, p}, {"try", file, p + "=1"}, {"try", file, "ease.bicep=" + p + ".." + p + "/1"},
			{"try", "--json", file, "about.title=" + p}, {"try", file, "about.wearer=" + p, "ease.bicep=1..2/1"},
			{"card", file, "-o", "c" + p + ".txt"}, {"card", file, "-o", "c" + p + ".svg"}, {"card", file, "-o", p}, {"card", file, "--paper", p, "-o", "c.pdf"},
			{"card", file, "-o", p + "/" + p + "/c.txt"}, {"show", "bad" + file[2:]}, {"show", p + "/none"}, {"show", "."}, {"words", p}, {"completion", p}, {"drill", "--level", p}, {"drill", "--seed", p},
			{"drill", "--paper", p}, {"ask", p + "/none"}, {"__complete", "show", ""}, {"__complete", "words", p}, {"show", file, "--json=" + p},
		} {
			if _, out, errs := run("", args...); props.Acts(out) || props.Acts(errs) {
				t.Errorf("%q comes through %q:\n%q\n%q", p, args, errs, out)
			}
		}
		if _, out, errs := run(p+"\n"+p+"\nback\n? "+p+"\n"+strings.Repeat("\n", 90), "ask", file); props.Acts(out + errs) {
			t.Errorf("%q comes through ask:\n%q\n%q", p, errs, out)
		}
		if _, out, errs := run("i\n13\n"+strings.Repeat("next\n", 12)+p+"\n", "ask"); props.Acts(out + errs) {
			t.Errorf("%q comes through the naming of ask:\n%q\n%q", p, errs, out)
		}
		cards, _ := filepath.Glob("c*")
		for _, name := range cards {
			lookAtCard(t, p, name)
		}
		if said := console.NewFault(errors.New(p)).Report(ui.Version, typeset.Plain(file)); props.Acts(said) {
			t.Errorf("%q comes through the report of a fault", p)
		}
	}
}

// lookAtCard reads a card as its reader would.
func lookAtCard(t *testing.T, p, name string) {
	t.Helper()
	content := props.Read(t, name)
	switch filepath.Ext(name) {
	case ".svg":
		for d := xml.NewDecoder(strings.NewReader(content)); ; {
			if _, err := d.Token(); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				t.Errorf("%q: %q is no XML: %v", p, name, err)
				break
			}
		}
		fallthrough
	case ".txt":
		if props.Acts(content) {
			t.Errorf("%q comes through %q", p, name)
		}
	}
}

// What a terminal could obey is not thrown away: it is shown.
func TestWhatIsNotObeyedIsShown(t *testing.T) {
	file := props.LayHostile(t, "\x1b]0;title\a\u202e")
	_, out, errs := run("", "show", file)
	if want := `Blouse\x1b]0;title\a\u202eBlouse`; !strings.Contains(out, want) {
		t.Errorf("%q is not in\n%s", want, out)
	}
	if !strings.Contains(errs, `k\x1b]0;title\a\u202ek`) {
		t.Errorf("the unknown key is not named in\n%s", errs)
	}
	_, out, _ = run("", "show", "--json", file)
	var sheet struct{ Title string }
	if err := json.Unmarshal([]byte(out), &sheet); err != nil || sheet.Title != "Blouse\x1b]0;title\a\u202eBlouse" {
		t.Errorf("the title is %q, %v", sheet.Title, err)
	}
}

// Half a pair of surrogates is no character: the file is refused, with its line.
func TestHalfACharacterIsRefused(t *testing.T) {
	for _, half := range []string{`\ud800`, `\udfff`, `\ud83d\ude00`, `\U0000d800`, `\U00110000`, "\xed\xa0\x80", "\xff\x1b[31m", "\xc0\x80"} {
		status, out, errs := run("[about]\ntitle = \""+half+"\"\n", "show", "-")
		if status != console.ExitUnread || out != "" || !strings.Contains(errs, "standard input, line 2") || props.Acts(errs) {
			t.Errorf("%q: status %d, %q, %s", half, status, errs, out)
		}
	}
}
