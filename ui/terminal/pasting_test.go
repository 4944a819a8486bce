//go:build linux

package terminal_test

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
	"capscye/ui/terminal"
	"capscye/worksheets"
)

// floods types a lot at once, while the program reads, and tells how long it takes
// until a key is answered again.
func floods(m *program.Terminal, text string) time.Duration {
	m.T.Helper()
	begun := time.Now()
	if _, err := m.File.WriteString(text); err != nil {
		m.T.Fatal(err)
	}
	for deadline := begun.Add(60 * time.Second); time.Now().Before(deadline); {
		time.Sleep(terminal.AfterPaste + 50*time.Millisecond) // or the key would be part of it
		from := len(m.Raw())
		m.Types("\x0b") // the page of keys
		time.Sleep(50 * time.Millisecond)
		if strings.Contains(ansi.Strip(m.Raw()[from:]), "any other key goes back") {
			return time.Since(begun)
		}
	}
	m.T.Fatal("it answers no more")
	return 0
}

// A megabyte that is pasted, marked as a paste or not, is taken or refused within
// seconds; then the program answers again, and what was kept before is still there.
func TestAMegabyteIsPasted(t *testing.T) {
	t.Parallel()
	const megabyte = 1 << 20
	for name, text := range map[string]string{
		"marked": "\x1b[200~" + strings.Repeat("13 3/4 ", megabyte/7) + "\x1b[201~", "one word": strings.Repeat("9", megabyte),
		"words": strings.Repeat("cotton lawn ", megabyte/12), "lines": strings.Repeat("14 1/2, 13 3/4\r", megabyte/15),
	} {
		t.Run(name, func(t *testing.T) {
			folder, term := program.Sewing(t, false)
			term.Goes("14 1/4\r", "14 1/4 in")
			took := floods(term, text)
			t.Logf("%s: answers again after %v", name, took)
			if took > 20*time.Second { // far more than a slow machine needs
				t.Errorf("answers again after %v", took)
			}
			if name == "marked" {
				term.Await("Too long: at most 2000 characters; nothing was changed.")
			} else {
				term.Await("Too much came at once: what no hand could type was left out.")
			}
			term.Types("\x03")
			if status := term.Ends(); status != 0 {
				t.Errorf("status %d", status)
			}
			term.GivenBack()
			got := props.AnswerIn(t, filepath.Join(folder, "blouse.toml"), worksheets.Bicep)
			if name != "lines" && got != "14 1/4" { // lines are typed, as far as they are taken
				t.Errorf("the file has %q", got)
			}
		})
	}
}

// A paste that holds its own end mark ends there, and what follows would be keys:
// they come at once behind it, as no hand can press them, and are left out.
func TestAPasteDoesNotPressKeys(t *testing.T) {
	folder, term := program.Sewing(t, false)
	path := filepath.Join(folder, "blouse.toml")
	before := props.Read(t, path)
	term.Goes("\x1b[200~1\x1b[201~\r\x7f\r\x7f\r\x1b[Ae\x03\x03\x1b[17~ c\x1b[201~", "What came with the paste behind its end was left out")
	time.Sleep(2 * terminal.AfterPaste)
	if props.Read(t, path) != before {
		t.Errorf("the file is now\n%s", props.Read(t, path))
	}
	if cards, _ := filepath.Glob(filepath.Join(folder, "*")); len(cards) != 1 {
		t.Errorf("it wrote %q", cards)
	}
	term.Goes("4 1/8\r", "14 1/8 in") // behind the 1 that was pasted; a hand is slower
	term.Types("\x03")
	if status := term.Ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	if got := props.AnswerIn(t, path, worksheets.Bicep); got != "14 1/8" {
		t.Errorf("the file has %q", got)
	}
}
