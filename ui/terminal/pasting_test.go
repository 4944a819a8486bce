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
			t.Parallel()
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
				term.Await("Too much input at once; part of it was dropped.")
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

// A paste that loses its end on the way is over when nothing more of it comes, and the
// keyboard is one again.
func TestAPasteWithoutItsEnd(t *testing.T) {
	t.Parallel()
	folder, term := program.Sewing(t, false)
	term.Goes("\x1b[200~14 1/8", "= 14 1/8 in")
	time.Sleep(time.Second)
	term.Types("\x03")
	if status := term.Ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	term.GivenBack()
	if got := props.AnswerIn(t, filepath.Join(folder, "blouse.toml"), worksheets.Bicep); got != "14 1/8" {
		t.Errorf("the file has %q", got)
	}
}

// Who cannot wait for that presses ctrl+c twice.
func TestAPasteWithoutItsEndCanBeLeft(t *testing.T) {
	t.Parallel()
	_, term := program.Sewing(t, false)
	term.Types("\x1b[200~14 1/4")
	for range 3 {
		time.Sleep(3 * terminal.AfterPaste)
		_, _ = term.File.WriteString("\x03") // it may be gone already
	}
	if status := term.Ends(); status != 0 {
		t.Errorf("status %d", status)
	}
}

// The parts of a key that come one by one, as over a slow line, are a key, or nothing:
// they are not typed.
func TestASlowKeyIsNotTyped(t *testing.T) {
	t.Parallel()
	folder, term := program.Sewing(t, false)
	term.Goes("\x1b[Z", "> Notes")
	for _, key := range [][]string{{"\x1b", "[15~"}, {"\x1b", "OP"}, {"\x1b[", "1", "5~"}, {"\x1b[1;", "5C"}, {"\x1bO", "P"}} {
		inParts(term, 150*time.Millisecond, key...) // three times as long as the parts of a key may be apart
	}
	term.Types("\x1b[11~") // F1, to Notes again
	term.Goes("kept", "kept")
	term.Types("\r\x03")
	if status := term.Ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	d, err := worksheets.Load(filepath.Join(folder, "blouse.toml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range worksheets.Keys() {
		if text := d.Sheet.Text(k); strings.ContainsAny(text, "[~") || strings.HasPrefix(text, "O") && k != worksheets.Wearer {
			t.Errorf("%v is %q", k, text)
		}
	}
}

// Parts that come in time are a key. No other test runs beside this one, or they might not.
func TestAKeyInPartsIsAKey(t *testing.T) {
	_, term := program.Sewing(t, false)
	inParts(term, 10*time.Millisecond, "\x1b", "[", "1", "7", "~")
	term.Await("[6 Trace]")
}

// inParts presses a key of which one part comes after the other.
func inParts(term *program.Terminal, pause time.Duration, parts ...string) {
	term.T.Helper()
	for _, part := range parts {
		term.Types(part)
		time.Sleep(pause)
	}
}

// A paste that holds its own end mark ends there, and what follows would be keys:
// they come at once behind it, as no hand can press them, and are left out.
func TestAPasteDoesNotPressKeys(t *testing.T) {
	t.Parallel()
	folder, term := program.Sewing(t, false)
	path := filepath.Join(folder, "blouse.toml")
	before := props.Read(t, path)
	term.Goes("\x1b[200~1\x1b[201~\r\x7f\r\x7f\r\x1b[Ae\x03\x03\x1b[17~ c\x1b[201~", "Keys right behind the paste were dropped")
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
