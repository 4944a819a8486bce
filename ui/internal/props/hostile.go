package props

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

// Payloads are texts that would do something to a terminal that was handed them.
var Payloads = func() (all []string) {
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
	all = append(all, "\u3164\u115f\u1160\uffa0\u034f\u180b", "\u17b4\ufe0f\U000e0100\u2800\U0001d159") // not to be seen
	return append(all, "a"+strings.Repeat("\u0301\u0489", 400), "%s%n%[1]d\r\nSTOP nothing\r", "a\tb\vc\f")
}()

// HostileSheet has a payload in every place of a file that is text: it stops, so
// that ways out are offered, and was taken from a sheet that has changed.
func HostileSheet(p string) string {
	q := func(s string) string { return written(s + p + s) }
	sized := func(s string) string { return written(s + string([]rune(p)[:min(len([]rune(p)), 30)])) } // a longer name of a size is refused
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
measured = "seam"
width = "13"
cap_height = "5 1/4"
style = %s
[bodice]
front = "10 1/4"
back = "9 3/4"
[method]
armhole = "keep"
[pattern]
size = %s
chart_bust = %s
[[size]]
name = %s
chart_bust = "46"
[size.sleeve]
width = %s
%s = "unknown"
[size.bodice]
front = "10 3/4"
back = "10 1/4"
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
		q("set-in"), sized("14"), q("46"), sized("16"), q("14"), q("k"), q("sleeve-mark"), q("2026-11-20"), q("bust 1/2 in too tight"), q("upper arm 1/2 in too tight"), q("k"))
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

// LayHostile lays a hostile sheet under a hostile name in a hostile folder, and
// others beside it, and goes there.
func LayHostile(t *testing.T, p string) (file string) {
	t.Helper()
	folder, file := HostileFolder(t, p)
	t.Chdir(folder)
	return file
}

// HostileFolder is such a folder, and the name of the sheet in it.
func HostileFolder(t *testing.T, p string) (folder, file string) {
	t.Helper()
	folder = filepath.Join(t.TempDir(), strings.TrimSuffix(fileOf(p), ".toml"))
	err := os.Mkdir(folder, 0o755)
	if err != nil && runtime.GOOS == "windows" {
		t.Skip("no such names here")
	}
	file = "my" + fileOf(p)
	for name, content := range map[string]string{
		file: HostileSheet(p), fileOf(p): strings.ReplaceAll(HostileSheet(p), `"13"`, `"12"`), "bad" + fileOf(p): "[body]\nbicep = " + p + "\n",
	} {
		err = errors.Join(err, os.WriteFile(filepath.Join(folder, name), []byte(content), 0o644))
	}
	if err != nil {
		t.Fatal(err)
	}
	return folder, file
}

// Acts tells whether a text would do something to a terminal besides standing in
// it: controls, signs that turn the direction of writing or are invisible, line
// separators, and bytes that are no UTF-8. Line ends are what lines are made of.
func Acts(s string) bool {
	return !utf8.ValidString(s) || strings.ContainsFunc(s, func(r rune) bool {
		return r != '\n' && unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Cs, unicode.Zl, unicode.Zp, unicode.Other_Default_Ignorable_Code_Point, unicode.Variation_Selector)
	})
}

// KeysOf are the paths of every key in a value of JSON; those in a list stand once.
func KeysOf(v any) map[string]bool {
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
