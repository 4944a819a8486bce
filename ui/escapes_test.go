package ui

import (
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// payloads are texts that would do something to a terminal that was handed them.
var payloads = func() (all []string) {
	var single []rune // characters that act alone
	for c := range rune(0x20) {
		single = append(single, c)
	}
	for c := rune(0x7f); c < 0xa0; c++ {
		single = append(single, c)
	}
	single = append(single, []rune("\u00ad\u061c\u180e\u200b\u200c\u200d\u200e\u200f\u2028\u2029\u202a\u202b\u202c\u202d\u202e\u2060\u2061"+
		"\u2066\u2067\u2068\u2069\u206a\ufeff\ufff9\ufffb\U000e0001\U000e0041")...)
	for some := range slices.Chunk(single, 8) { // few enough to be seen in a column
		all = append(all, string(some))
	}
	commands := []string{
		"\x1b[31;7m", "\x1b[2J\x1b[H", "\x1b[6n", "\x1b[?1049l", "\x1b[?25h", "\x1b[200~", "\x1bc", "\x1b(0", "\x1b#8", "\x1b[21t", "\x1b[>0q", "\x1b[?1000h",
		"\x1b]0;title\a", "\x1b]2;title\x1b\\", "\x1b]8;;http://x\x1b\\link\x1b]8;;\x1b\\", "\x1b]52;c;aGk=\a", "\x1b]4;1;?\a", "\x1b]9;note\a", "\x1b]1337;File=:aGk=\a",
		"\x1bP1$r0m\x1b\\", "\x1bPq#0;2;0;0;0\x1b\\", "\x1b_Ga=T;aGk=\x1b\\", "\x1b^private\x1b\\", "\x1bXstart\x1b\\", "\u009b2J", "\u009d0;t\u009c", "\u0090q\u009c",
	}
	for two := range slices.Chunk(commands, 2) {
		all = append(all, strings.Join(two, ""))
	}
	return append(all, "a"+strings.Repeat("\u0301\u0489", 400), "%s%n%[1]d\r\nSTOP nothing\r", "a\tb\vc\f")
}()

// hostileSheet has a payload in every place of a file that is text: it stops, so
// that ways out are offered, and was taken from a sheet that has changed.
func hostileSheet(p string) string {
	q := func(s string) string { return written(s + p + s) }
	return fmt.Sprintf(`version = 1
%s = 1
[%s]
%s = [ { %s = "x" } ]
[about]
title = %s
wearer = %s
notes = %s
%s = "unknown"
body_from = %s
pattern_from = %s
[body]
bicep = "16"
bust = "44"
waist = %s
%s = "unknown"
[ease]
bicep = "1 3/4"
bust = "3"
[sleeve]
width = "13"
cap_height = "5 1/4"
style = %s
[bodice]
front = "10 1/4"
back = "9 3/4"
[method]
armhole = "keep"
[progress]
done = [%s, "sleeve-lay"]
[[fitting]]
date = %s
note = %s
[[fitting]]
date = 2026-11-20
note = %s
%s = 1
`, q("k"), q("t"), q("k"), q("k"), q("Blouse"), q("Odile"), q("notes"), q("k"), written(fileOf(p)), written(fileOf(p)), q("31"), q("k"),
		q("set-in"), q("sleeve-mark"), q("2026-11-20"), q("bust 1/2 in too tight"), q("upper arm 1/2 in too tight"), q("k"))
}

// written is a text as a file has it that hides nothing: every character by its number.
func written(s string) string {
	var b strings.Builder
	for _, r := range s {
		fmt.Fprintf(&b, "\\U%08x", r)
	}
	return `"` + b.String() + `"`
}

// fileOf is a file name with as much of a payload as a name takes.
func fileOf(p string) string {
	name := strings.NewReplacer("/", "", "\x00", "").Replace(p)
	if len(name) > 100 {
		name = string([]rune(name)[:40])
	}
	return "sheet" + name + ".toml"
}

// layHostile lays a hostile sheet under a hostile name in a hostile folder, and
// others beside it.
func layHostile(t *testing.T, p string) (file string) {
	t.Helper()
	folder := filepath.Join(t.TempDir(), strings.TrimSuffix(fileOf(p), ".toml"))
	err := os.Mkdir(folder, 0o755)
	if err != nil && runtime.GOOS == "windows" {
		t.Skip("no such names here")
	}
	t.Chdir(folder)
	file = "my" + fileOf(p)
	err = errors.Join(err, os.WriteFile(file, []byte(hostileSheet(p)), 0o644),
		os.WriteFile(fileOf(p), []byte(strings.ReplaceAll(hostileSheet(p), `"13"`, `"12"`)), 0o644),
		os.WriteFile("bad"+fileOf(p), []byte("[body]\nbicep = "+p+"\n"), 0o644))
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// On every page of the screen, narrow and wide by turns, no payload comes through.
func TestNoPayloadReachesTheScreen(t *testing.T) {
	tour := []string{
		"f1", "tab", "ctrl+f", "down", "esc", "f2", "f3", "ctrl+f", "esc", "f4", "f5", "down", "w", "down", "esc", "pgup", "f6", "down", "right", "t", "down", "esc",
		"n", "x", "esc", "c", "ctrl+o", "down", "down", "enter", "esc", "ctrl+o", "esc", "ctrl+r", "pgdown", "esc", "ctrl+e", "esc", "ctrl+k", "esc",
		"f1", "up", "ctrl+l", "f3", "up", "ctrl+g", "ctrl+x", "right", "s", "esc", "ctrl+x", "down", "esc", "ctrl+d", "1", "enter", "?", "esc", "esc", "ctrl+s",
	}
	sizes := [][2]int{{80, 24}, {140, 50}}
	for i, p := range payloads {
		file := layHostile(t, p)
		for _, size := range sizes[i%2 : i%2+1] {
			d, err := worksheets.Load(file)
			if err != nil {
				t.Fatalf("%q: %v", p, err)
			}
			r := sit(t, d, size[0], size[1])
			look := func(where string) {
				t.Helper()
				if view := r.model.View(); acts(view) {
					t.Fatalf("%q comes through %s:\n%q", p, where, view)
				}
				r.fits()
			}
			for range len(forms.Items[forms.Body]) { // with the hands on every field
				look("the form")
				r.press("tab")
			}
			for i, k := range tour {
				r.press(k)
				look(fmt.Sprintf("key %d, %s", i, k))
			}
			os.WriteFile(file, append([]byte("# theirs\n"), hostileSheet(p)...), 0o644) // as another program would
			r.press("f1").types("15").press("enter")
			look("the news of a conflict")
			r.press("ctrl+s")
			look("the question about a conflict")
			r.press("t")
			look("taking theirs")
			rootOf(r).opened(openedMsg{err: errors.New(p), note: p})
			look("an error")
			rootOf(r).front = rootOf(r).askBegin(file)
			look("the offer to begin")
			r.tell(savedMsg{desk: rootOf(r).desk, doc: rootOf(r).desk.doc, named: true, err: errors.New(p)})
			look("the question for a name")
			r.press("ctrl+u").tell(pasted(p))
			look("a name that is pasted")
		}
	}
}

// Nothing that is printed, to either stream, by any command, lets a payload through;
// nor does a card, or the report of a fault.
func TestNoPayloadIsPrinted(t *testing.T) {
	for i, p := range payloads {
		file := layHostile(t, p)
		if d, err := worksheets.Load(file); i%10 == 0 { // the slowest of all
			if err != nil {
				t.Fatal(err)
			}
			names, _, err := writeCard(filepath.Join(t.TempDir(), "card.pdf"), "a4", report.Reckon(d, someDay, 0), someDay)
			if err != nil {
				t.Fatal(err)
			}
			card := readPDF(t, []byte(read(t, names[0])))
			for n := range card.NumPage() {
				if text := pageText(t, card.Page(n+1)); acts(text) {
					t.Errorf("%q comes through the PDF:\n%q", p, text)
				}
			}
		}
		p = strings.ReplaceAll(p, "\x00", "") // no argument can have one
		for _, args := range [][]string{
			{"show", "--working", file}, {"show", "--json", "--working", file, "bad" + file[2:], p}, {"trace", file}, {file}, {p}, {"--", "-" + p}, {"--" + p}, {"show", "--" + p},
			{"try", file, "ease.bicep=2"}, {"try", file, "about.title=" + p, "about.unit=" + p}, {"try", file, p}, {"try", file, p + "=1"}, {"try", file, "ease.bicep=" + p + ".." + p + "/1"},
			{"try", "--json", file, "about.title=" + p}, {"try", file, "about.wearer=" + p, "ease.bicep=1..2/1"},
			{"card", file, "-o", "c" + p + ".txt"}, {"card", file, "-o", "c" + p + ".svg"}, {"card", file, "-o", p}, {"card", file, "--paper", p, "-o", "c.pdf"},
			{"card", file, "-o", p + "/" + p + "/c.txt"}, {"show", "bad" + file[2:]}, {"show", p + "/none"}, {"show", "."}, {"words", p}, {"completion", p}, {"drill", "--level", p}, {"drill", "--seed", p},
			{"drill", "--paper", p}, {"ask", p + "/none"}, {"__complete", "show", ""}, {"__complete", "words", p}, {"show", file, "--json=" + p},
		} {
			if _, out, errs := run("", args...); acts(out) || acts(errs) {
				t.Errorf("%q comes through %q:\n%q\n%q", p, args, errs, out)
			}
		}
		if _, out, errs := run(p+"\n"+p+"\nback\n? "+p+"\n"+strings.Repeat("\n", 90), "ask", file); acts(out + errs) {
			t.Errorf("%q comes through ask:\n%q\n%q", p, errs, out)
		}
		if _, out, errs := run("i\n13\n"+strings.Repeat("next\n", 12)+p+"\n", "ask"); acts(out + errs) {
			t.Errorf("%q comes through the naming of ask:\n%q\n%q", p, errs, out)
		}
		cards, _ := filepath.Glob("c*")
		for _, name := range cards {
			lookAtCard(t, p, name)
		}
		if said := newFault(errors.New(p)).report(Version, typeset.Plain(file)); acts(said) {
			t.Errorf("%q comes through the report of a fault", p)
		}
	}
}

// lookAtCard reads a card as its reader would.
func lookAtCard(t *testing.T, p, name string) {
	t.Helper()
	content := read(t, name)
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
		if acts(content) {
			t.Errorf("%q comes through %q", p, name)
		}
	}
}

// What a terminal could obey is not thrown away: it is shown.
func TestWhatIsNotObeyedIsShown(t *testing.T) {
	file := layHostile(t, "\x1b]0;title\a\u202e")
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
		if status != exitUnread || out != "" || !strings.Contains(errs, "standard input, line 2") || acts(errs) {
			t.Errorf("%q: status %d, %q, %s", half, status, errs, out)
		}
	}
}
