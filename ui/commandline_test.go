//go:build linux

package ui_test

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"capscye/ui"
	"capscye/ui/console"
	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
	"capscye/ui/typeset"
)

// A call is understood, or it is said why it is not.
func TestCallsWithoutACommand(t *testing.T) {
	for _, c := range []struct {
		args   []string
		status int
		errs   string
	}{
		{[]string{"--shove"}, 2, "there is no --shove here; capscye --help lists what there is"},
		{[]string{"sizes", "-x", "a.toml"}, 2, "there is no -x here; capscye sizes --help lists what there is"},
		{[]string{"man", "try"}, 2, `man prints its one page and takes no name, not "try"`},
		{[]string{"help"}, 0, ""},
		{[]string{"help", "try"}, 0, ""},
		{[]string{"help", "tyr"}, 2, `there is no command "tyr"; capscye --help lists them`},
		{[]string{"one.toml", "two.toml"}, 2, "open one worksheet at a time; show takes several"},
		{[]string{"--version"}, 0, ""},
		{[]string{"--help"}, 0, ""},
		{[]string{"show", "--json=maybe"}, 2, "--json takes no value. Write --json, or leave it out"},
		{[]string{"drill", "--seed"}, 2, "--seed needs a value; capscye drill --help says which"},
	} {
		status, out, errs := run("", c.args...)
		if status != c.status || !strings.Contains(errs, c.errs) || c.errs == "" && errs != "" {
			t.Errorf("%v: status %d, want %d; errors %q, want %q", c.args, status, c.status, errs, c.errs)
		}
		if (c.status == 2) != (out == "") {
			t.Errorf("%v: results on standard output: %q", c.args, out)
		}
	}
}

// help with a command says what that command says with --help.
func TestHelpIsHadBothWays(t *testing.T) {
	for _, command := range []string{"", "try", "completion"} {
		_, want, _ := run("", append(strings.Fields(command), "--help")...)
		if _, got, _ := run("", append([]string{"help"}, strings.Fields(command)...)...); got != want || want == "" {
			t.Errorf("help %s prints\n%s", command, got)
		}
	}
}

// full is a disk without room.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

// Help that could not be written is an error, as any other result is.
func TestHelpThatCannotBeWritten(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"show", "--help"}, {"--version"}, {"words"}} {
		var errs strings.Builder
		if status := ui.Run(args, nil, full{}, &errs); status != 2 || !strings.Contains(errs.String(), "no space left on device") {
			t.Errorf("%v: status %d, %q", args, status, errs.String())
		}
	}
}

// Every shell that is there reads its script without a fault.
func TestCompletionScriptsAreRead(t *testing.T) {
	completion, _, err := ui.Commands(&console.Session{}).Find([]string{"completion"})
	if err != nil || len(completion.ValidArgs) == 0 {
		t.Fatal(completion.ValidArgs, err)
	}
	for _, shell := range completion.ValidArgs {
		status, script, errs := run("", "completion", shell)
		if status != 0 || errs != "" || !strings.Contains(script, "capscye") {
			t.Errorf("%s: status %d, %s", shell, status, errs)
		}
		path, err := exec.LookPath(shell)
		if err != nil {
			t.Logf("%s is not here", shell)
			continue
		}
		file := filepath.Join(t.TempDir(), "script")
		os.WriteFile(file, []byte(script), 0o644)
		if out, err := exec.Command(path, "-n", file).CombinedOutput(); err != nil {
			t.Errorf("%s: %v\n%s", shell, err, out)
		}
	}
	for _, args := range [][]string{{"completion"}, {"completion", "csv"}, {"completion", "bash", "zsh"}} {
		if status, out, errs := run("", args...); status != 2 || out != "" || !strings.Contains(errs, "bash, zsh or fish") {
			t.Errorf("%v: status %d, %q", args, status, errs)
		}
	}
}

// bash is asked as it asks when somebody presses Tab behind the words. The
// function that splits a line into words comes with bash's own collection of
// completions, which need not be here.
const pressTab = `
_get_comp_words_by_ref() { words=("${COMP_WORDS[@]}"); cword=$COMP_CWORD; cur=${words[cword]}; prev=${words[cword-1]}; }
source "$1"; shift
COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); COMP_LINE="$*"; COMP_POINT=${#COMP_LINE}; COMP_TYPE=9
compopt() { :; }
__start_capscye
printf '%s\n' "${COMPREPLY[@]}"
`

func TestBashCompletes(t *testing.T) {
	bash, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("no bash")
	}
	built, err := program.Binary()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	for _, name := range []string{"blouse.toml", "bolero.TOML", "bag.txt", ".hidden.toml", "club/smock.toml"} {
		os.MkdirAll(filepath.Dir(filepath.Join(folder, name)), 0o755)
		os.WriteFile(filepath.Join(folder, name), nil, 0o644)
	}
	_, script, _ := run("", "completion", "bash")
	file := filepath.Join(t.TempDir(), "script")
	os.WriteFile(file, []byte(script), 0o644)
	for typed, want := range map[string]string{
		"capscye sh":                        "show",
		"capscye bl":                        "blouse.toml",
		"capscye ask ":                      "blouse.toml bolero.TOML club/",
		"capscye show blouse.toml bo":       "bolero.TOML",
		"capscye show club/":                "club/smock.toml",
		"capscye trace blouse.toml b":       "",
		"capscye try b":                     "blouse.toml bolero.TOML",
		"capscye try blouse.toml ease.b":    "ease.bicep= ease.bust=",
		"capscye try blouse.toml ease.x":    "",
		"capscye completion ":               "bash zsh fish",
		"capscye completion f":              "fish",
		"capscye show --w":                  "--working",
		"capscye card blouse.toml --paper ": "a4 letter",
		"capscye words shoulder":            "shoulder dot",
	} {
		cmd := exec.Command(bash, append([]string{"--norc", "-c", pressTab, "bash", file}, strings.Split(typed, " ")...)...)
		cmd.Dir = folder
		cmd.Env = append(os.Environ(), "PATH="+filepath.Dir(built)+":"+os.Getenv("PATH"))
		out, err := cmd.CombinedOutput()
		offered := regexp.MustCompile(`(?m) +\(.*\)$`).ReplaceAllString(string(out), "") // without descriptions
		got := strings.ReplaceAll(strings.Join(strings.Fields(offered), " "), `\ `, " ")
		if err != nil || got != want {
			t.Errorf("%q completes to %q, want %q (%v)", typed, got, want, err)
		}
	}
}

// A word is found by its beginning, in any case; a wrong one says what there is.
func TestWordsOnTheCommandLine(t *testing.T) {
	status, out, errs := run("", "words")
	if status != 0 || errs != "" || !strings.Contains(out, "armhole: ") || !strings.Contains(out, "woven: ") {
		t.Errorf("status %d, %s\n%s", status, errs, out)
	}
	for _, l := range strings.Split(out, "\n") {
		if len(l) > typeset.PrintWidth {
			t.Errorf("%d columns: %q", len(l), l)
		}
	}
	if _, out, _ := run("", "words", "SLAsh"); !strings.HasPrefix(out, "slash and spread: ") || strings.Count(out, "\n") > 3 {
		t.Errorf("by its beginning: %q", out)
	}
	if _, out, _ := run("", "words", "Cap", "Ease"); !strings.HasPrefix(out, "cap ease: ") {
		t.Errorf("of two words: %q", out)
	}
	if _, out, _ := run("", "words", "cap"); !strings.HasPrefix(out, "cap: ") || !strings.Contains(out, "\ncap ease: ") || !strings.Contains(out, "\ncap height: ") {
		t.Errorf("in full, and what else begins so: %q", out)
	}
	status, out, errs = run("", "words", "zip\x1b[31m")
	if status != 2 || out != "" || !strings.Contains(errs, "no word here begins with") || !strings.Contains(errs, "capscye words lists all") || strings.Contains(errs, "\x1b") {
		t.Errorf("status %d, %q, %q", status, out, errs)
	}
}

// A title longer than a line is broken like any other text that is printed, and so is the
// longest name of a size, whatever its letters take.
func TestALongTitleKeepsToTheWidth(t *testing.T) {
	title := strings.Repeat("寸法表 ", 12) + strings.Repeat("x", 200) + " for the summer of the choir"
	sheet := strings.Replace(props.Read(t, props.Example("choir-blouse")), `"Choir blouse"`, `"`+title+`"`, 1)
	for _, args := range [][]string{{"show", "-"}, {"show", "--working", "-"}, {"trace", "-"}, {"try", "-", "ease.bicep=2"}, {"sizes", "-"}} {
		_, out, errs := run(sheet, args...)
		if !strings.Contains(strings.Join(strings.Fields(out), ""), strings.Join(strings.Fields(title), "")) {
			t.Errorf("%v does not name the sheet:\n%s%s", args, out, errs)
		}
		keepsToTheWidth(t, out, args)
	}
	smock := props.Read(t, props.Example("market-smock"))
	for _, letter := range []string{"w", "ä", "大"} {
		name := strings.Repeat(letter, 40)
		for _, was := range []string{`size            = "20"`, `name            = "16"`} { // in hand, and another
			key, _, _ := strings.Cut(was, `"`)
			sheet := strings.Replace(smock, was, key+`"`+name+`"`, 1)
			for _, args := range [][]string{{"show", "-"}, {"sizes", "-"}, {"card", "-", "-o", filepath.Join(t.TempDir(), "card.txt")}} {
				status, out, errs := run(sheet, args...)
				if status == 2 || errs != "" {
					t.Errorf("%v with size %s: status %d, %s", args, name, status, errs)
				}
				if args[0] == "card" {
					out = props.Read(t, args[3])
				}
				if !strings.Contains(out, strings.Repeat(letter, 5)) && (args[0] == "sizes" || strings.HasPrefix(was, "size")) {
					t.Errorf("%v does not name size %s:\n%s", args, name, out)
				}
				keepsToTheWidth(t, out, args)
			}
		}
	}
}

// keepsToTheWidth wants no line wider than print is, nor broken where there is room.
func keepsToTheWidth(t *testing.T, out string, args []string) {
	t.Helper()
	short := 0
	for l := range strings.Lines(out) {
		w := typeset.Width(strings.TrimSuffix(l, "\n"))
		if w > typeset.PrintWidth {
			t.Errorf("%v prints %d columns: %s", args, w, l)
		}
		if short++; len(strings.TrimSpace(l)) != 1 {
			short = 0
		}
		if short == 3 {
			t.Errorf("%v prints a letter a line:\n%s", args, out)
		}
	}
}
