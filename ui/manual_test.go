package ui_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/ui"
	"capscye/ui/console"
	"capscye/ui/desk"
	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/roster"
	"capscye/ui/show"
	"capscye/ui/sizes"
	"capscye/ui/try"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// printedManual is the page as the program prints it.
func printedManual(t *testing.T) string {
	t.Helper()
	status, page, errs := run("", "man")
	if status != 0 || errs != "" {
		t.Errorf("status %d, %s", status, errs)
	}
	return page
}

// unescaped is a page of roff with its signs as a reader sees them.
var unescaped = strings.NewReplacer(`\-`, "-", `\(dq`, `"`, `\(ha`, "^", `\(aq`, "'", `\(ti`, "~", `\(ga`, "`", `\[u00BE]`, "¾")

// manualSections are the sections of the page by name, each its lines.
func manualSections(t *testing.T) map[string][]string {
	t.Helper()
	sections, name := map[string][]string{}, ""
	for _, l := range strings.Split(unescaped.Replace(printedManual(t)), "\n") {
		if heading, ok := strings.CutPrefix(l, `.SH "`); ok {
			name = strings.TrimSuffix(heading, `"`)
		} else if heading, ok := strings.CutPrefix(l, `.SH `); ok {
			name = heading
		}
		sections[name] = append(sections[name], l)
	}
	return sections
}

// Where the programs that set such pages are here, they find nothing to warn of.
func TestPageOfTheManual(t *testing.T) {
	page := printedManual(t)
	for _, l := range strings.Split(page, "\n") {
		if strings.HasPrefix(l, ".") && !regexp.MustCompile(`^\.(TH|SH|SS|PP|TP|B|br|nf|fi)\b`).MatchString(l) || strings.HasPrefix(l, "'") {
			t.Errorf("no macro: %q", l)
		}
	}
	if regexp.MustCompile(`[^\n -~]`).MatchString(page) {
		t.Error("not plain ASCII")
	}
	file := filepath.Join(t.TempDir(), "capscye.1")
	os.WriteFile(file, []byte(page), 0o644)
	for _, checker := range [][]string{{"mandoc", "-Tlint", "-Wwarning"}, {"groff", "-man", "-Tutf8", "-ww", "-z"}} {
		path, err := exec.LookPath(checker[0])
		if err != nil {
			t.Logf("%s is not here", checker[0])
			continue
		}
		out, _ := exec.Command(path, append(checker[1:], file)...).CombinedOutput() // the status only repeats that something was said
		for _, l := range strings.Split(strings.TrimSpace(string(out)), "\n") {
			if l != "" && !strings.Contains(l, "missing date") { // the page is as old as the program, and that has no day
				t.Errorf("%v: %s", checker, l)
			}
		}
	}
}

// The page tells every command with its options, every key of the screen, of the file
// and of the JSON, every form of a length, every code and every exit status, and of
// each it says something.
func TestTheManualIsWhole(t *testing.T) {
	sections := manualSections(t)
	entries := map[string][]string{} // by section, the leads
	for name, lines := range sections {
		table := ""
		for i, l := range lines {
			if heading, ok := strings.CutPrefix(l, ".SS "); ok {
				table = strings.Trim(heading, `"[]`)
			}
			if l != ".TP" {
				continue
			}
			lead := strings.TrimSuffix(strings.TrimPrefix(strings.TrimPrefix(lines[i+1], ".B "), `"`), `"`)
			if i+2 >= len(lines) || strings.HasPrefix(lines[i+2], ".") || lines[i+2] == "" {
				t.Errorf("%s: nothing is said of %q", name, lead)
			}
			entries[name] = append(entries[name], lead)
			if table != "" && table != lead {
				entries[name] = append(entries[name], table+"."+lead)
			}
		}
	}
	has := func(section, lead string) {
		t.Helper()
		if !slices.Contains(entries[section], lead) {
			t.Errorf("%s: %q is not told", section, lead)
		}
	}
	for _, c := range ui.Commands(&console.Session{}).Commands() {
		if c.Hidden {
			continue
		}
		_, text, found := strings.Cut(strings.Join(sections["COMMANDS"], "\n"), `.SS "capscye `+c.Use+`"`)
		text, _, _ = strings.Cut(text, ".SS ")
		if !found || !strings.Contains(text, strings.Split(c.Long, "\n")[0]) {
			t.Errorf("%s is not on the page", c.Name())
		}
		for _, option := range regexp.MustCompile(`--[a-z]+`).FindAllString(c.LocalNonPersistentFlags().FlagUsages(), -1) {
			if !strings.Contains(text, option) {
				t.Errorf("%s %s is not on the page", c.Name(), option)
			}
		}
	}
	for _, k := range desk.Help() {
		has("KEYS", k.Key)
	}
	for _, k := range worksheets.Keys() {
		has("FILE", k.Path())
	}
	for _, k := range []string{"version", "progress.done", "size.name", "size.chart_bust", "size.chart_high_bust", "size.[size.sleeve]", "size.[size.bodice]", "fitting.date", "fitting.note"} {
		has("FILE", k)
	}
	for _, f := range units.Forms {
		has("LENGTHS", f.Example)
	}
	for command, keys := range map[string][]show.JSONKey{"show": append(show.SheetKeys(), show.FailureKeys()...), "trace": show.StepKeys(), "sizes": sizes.JSONKeys(), "try": try.JSONKeys(), "roster": roster.JSONKeys()} {
		for _, k := range keys {
			has("JSON", command+" --json."+k.Path)
			if k.Says == "" {
				t.Errorf("%s --json: nothing is said of %s", command, k.Path)
			}
		}
	}
	for _, c := range report.Codes {
		has("FINDINGS", string(c.Code))
	}
	for _, b := range calc.Bounds {
		has("DOUBTS", forms.KeyOf[b.Of].Path())
	}
	for _, s := range console.Statuses {
		has("EXIT STATUS", s.Status)
	}
	if title, cautions := strings.Join(sections[""], "\n"), strings.Join(sections["CAUTIONS"], "\n"); !strings.Contains(title, "capscye "+ui.Version) || !strings.Contains(cautions, wording.Cautions[2]) {
		t.Errorf("version or cautions are missing:\n%s\n%s", title, cautions)
	}
}

// Help of a command has what the page says of it: the keys of its JSON, the lengths
// that it reads, the exit status.
func TestHelpHasItsOwn(t *testing.T) {
	for command, want := range map[string][]string{
		"":       {"Exit status:", "128 and more", "capscye man"},
		"show":   {"--working", "sides.*.at_line_mm", "finished.across_corners_mm", "findings[].ways_out", "Exit status:"},
		"trace":  {"slide_mm", "same-again"},
		"try":    {"changed[].what", "ease.bicep=1..3/0.5"},
		"roster": {"saved", "apostrophe", "one that cannot be read makes it 1"},
		"ask":    {"13-3/4", "=back", "centimetres"},
		"words":  {"Exit status:"}, "sizes": nil, "card": nil, "drill": nil, "man": nil, "completion": nil,
	} {
		status, out, errs := run("", strings.Fields(command+" --help")...)
		if status != 0 || errs != "" {
			t.Errorf("%s --help: status %d, %s", command, status, errs)
		}
		for _, text := range want {
			if !strings.Contains(strings.Join(strings.Fields(out), " "), text) {
				t.Errorf("%s --help lacks %q:\n%s", command, text, out)
			}
		}
		for _, l := range strings.Split(out, "\n") {
			if len([]rune(l)) > typeset.PrintWidth {
				t.Errorf("%s --help: %d columns: %q", command, len([]rune(l)), l)
			}
		}
	}
}
