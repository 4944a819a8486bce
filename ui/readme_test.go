package ui_test

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"capscye/ui"
	"capscye/ui/console"
	"capscye/ui/internal/props"
	"capscye/ui/manual"
	"capscye/ui/wording"
)

func TestWithoutATerminalTheExampleIsPrinted(t *testing.T) {
	status, out, _ := run("")
	_, shown, _ := run("", "show", props.Example("choir-blouse"))
	if status != 0 || out != shown {
		t.Errorf("status %d\n%s", status, out)
	}
	if _, out, _ := run("", props.Example("archive-coat")); !strings.Contains(out, "Work coat for the archive") {
		t.Errorf("capscye FILE without a terminal:\n%s", out)
	}
}

// The README's commands are those of the program, its screen is the screen as it is,
// its first worksheet gives what it says, and its cautions are the program's.
func TestReadmeIsTrue(t *testing.T) {
	readme := props.Read(t, filepath.Join(props.SourceFolder, "README.md"))
	screen, err := os.ReadFile(filepath.Join(props.SourceFolder, "ui", "screen", "testdata", "TestStepsAsSeen", "80x24", "4-Split.golden"))
	if err != nil || !strings.Contains(readme, "```\n"+string(bytes.TrimRight(screen, "\n"))+"\n```") {
		t.Errorf("the README shows another screen than there is: %v", err)
	}

	_, sizes, _ := run("", "sizes", props.Example("market-smock"))
	_, table, found := strings.Cut(readme, "```\nSize ")
	if table, _, _ = strings.Cut(table, "\n```"); !found || !strings.Contains(sizes, "\nSize "+table+"\n") {
		t.Errorf("the README shows other sizes than there are:\n%s", sizes)
	}

	var commands []string
	for _, c := range ui.Commands(&console.Session{}).Commands() {
		if !c.Hidden {
			commands = append(commands, "| `capscye "+c.Use+"` | "+c.Short+" |")
		}
	}
	_, table, _ = strings.Cut(readme, "|---|---|\n")
	table, _, _ = strings.Cut(table, "\n\n")
	if first, others, _ := strings.Cut(table, "\n"); !strings.HasPrefix(first, "| `capscye [FILE]` |") || others != strings.Join(commands, "\n") {
		t.Errorf("the commands of the README\n%s\nthose of the program\n%s", table, strings.Join(commands, "\n"))
	}
	for _, name := range regexp.MustCompile(`capscye [^|`+"`"+`]*(--[a-z]+)`).FindAllStringSubmatch(readme, -1) {
		if _, help, _ := run("", strings.Fields(strings.ReplaceAll(name[0], "COMMAND", "show"))[1], "--help"); !strings.Contains(help, name[1]) {
			t.Errorf("%q: there is no such option", name[0])
		}
	}

	if !strings.Contains(readme, "```toml\n"+manual.FirstWorksheet+"\n```") {
		t.Error("the first worksheet of the README is not the one of the manual")
	}
	status, out, errs := run(manual.FirstWorksheet, "show", "-")
	_, said, _ := strings.Cut(readme, "then says:\n\n")
	said, _, _ = strings.Cut(said, "\n\n")
	if status != 0 || errs != "" || said == "" || !strings.Contains(out, strings.ReplaceAll(said[4:], "\n    ", "\n")+"\n") {
		t.Errorf("status %d, %s: the first worksheet does not say\n%s\nbut\n%s", status, errs, said, out)
	}
	if !strings.Contains(out, "Bodice front        -       0     1/4") {
		t.Errorf("the bodice does not slide by 1/4:\n%s", out)
	}

	flowing := strings.Join(strings.Fields(readme), " ")
	for _, c := range wording.Cautions[:2] { // the third has its law in the middle
		if !strings.Contains(flowing, c) {
			t.Errorf("the README does not say %q", c)
		}
	}
	for _, want := range []string{"A child's nightwear can be lawful only because it fits tightly", "ask your local rules before widening it."} {
		if !strings.Contains(flowing, want) || !strings.Contains(wording.Cautions[2], want) {
			t.Errorf("the caution about nightwear is not %q everywhere", want)
		}
	}
}

// What people read first stays short enough to be read; the rest is in the manual and
// in the comments of the packages.
func TestPagesAreShort(t *testing.T) {
	for name, most := range map[string]int{"README.md": 150, "DEVELOPERS.md": 200} {
		text := props.Read(t, filepath.Join(props.SourceFolder, name))
		if lines := strings.Count(text, "\n"); lines < 50 || lines > most {
			t.Errorf("%s has %d lines; at most %d are wanted", name, lines, most)
		}
	}
}
