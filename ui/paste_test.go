//go:build linux

package ui

import (
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/creack/pty"

	"capscye/worksheets"
)

// floods types a lot at once, while the program reads, and tells how long it takes
// until a key is answered again.
func (m *terminal) floods(text string) time.Duration {
	m.t.Helper()
	begun := time.Now()
	if _, err := m.file.WriteString(text); err != nil {
		m.t.Fatal(err)
	}
	for deadline := begun.Add(60 * time.Second); time.Now().Before(deadline); {
		time.Sleep(afterPaste + 50*time.Millisecond) // or the key would be part of it
		from := len(m.raw())
		m.types("\x0b") // the page of keys
		time.Sleep(50 * time.Millisecond)
		if strings.Contains(ansi.Strip(m.raw()[from:]), "any other key goes back") {
			return time.Since(begun)
		}
	}
	m.t.Fatal("it answers no more")
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
			folder, term := sewing(t, false)
			term.goes("14 1/4\r", "14 1/4 in")
			took := term.floods(text)
			t.Logf("%s: answers again after %v", name, took)
			if took > 20*time.Second { // far more than a slow machine needs
				t.Errorf("answers again after %v", took)
			}
			if name == "marked" {
				term.await("Too long: at most 2000 characters; nothing was changed.")
			} else {
				term.await("Too much came at once: what no hand could type was left out.")
			}
			term.types("\x03")
			if status := term.ends(); status != 0 {
				t.Errorf("status %d", status)
			}
			term.givenBack()
			got := answerIn(t, filepath.Join(folder, "blouse.toml"), worksheets.Bicep)
			if name != "lines" && got != "14 1/4" { // lines are typed, as far as they are taken
				t.Errorf("the file has %q", got)
			}
		})
	}
}

// A paste that holds its own end mark ends there, and what follows would be keys:
// they come at once behind it, as no hand can press them, and are left out.
func TestAPasteDoesNotPressKeys(t *testing.T) {
	folder, term := sewing(t, false)
	path := filepath.Join(folder, "blouse.toml")
	before := read(t, path)
	term.goes("\x1b[200~1\x1b[201~\r\x7f\r\x7f\r\x1b[Ae\x03\x03\x1b[17~ c\x1b[201~", "What came with the paste behind its end was left out")
	time.Sleep(2 * afterPaste)
	if read(t, path) != before {
		t.Errorf("the file is now\n%s", read(t, path))
	}
	if cards, _ := filepath.Glob(filepath.Join(folder, "*")); len(cards) != 1 {
		t.Errorf("it wrote %q", cards)
	}
	term.goes("4 1/8\r", "14 1/8 in") // behind the 1 that was pasted; a hand is slower
	term.types("\x03")
	if status := term.ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	if got := answerIn(t, path, worksheets.Bicep); got != "14 1/8" {
		t.Errorf("the file has %q", got)
	}
}

// A terminal that says nothing of its kind gets lines, as one that cannot be drawn
// on; of one that no list knows it is believed that it can what all can.
func TestTerminalsOfNoKind(t *testing.T) {
	for _, term := range []string{"TERM=", "TERM=dumb"} {
		m := start(t, t.TempDir(), []string{term})
		if status := m.ends(); status != 0 || !strings.Contains(m.raw(), "Choir blouse, for Odile") || strings.Contains(m.raw(), "\x1b") {
			t.Errorf("%s: status %d, %q", term, status, m.raw())
		}
		m = start(t, t.TempDir(), []string{term}, "smock")
		m.await("Begin it in inches or in centimetres?")
		m.types("quit\n")
		if m.ends(); strings.Contains(m.raw(), "\x1b") {
			t.Errorf("%s: %q", term, m.raw())
		}
	}
	for _, term := range []string{"TERM=no-such-kind", "TERM=vt100", "TERM=linux", "TERM=\x1b]0;x\a"} {
		m := start(t, t.TempDir(), []string{term}, "smock")
		m.await("Begin it?")
		m.goes("i", "[saved]")
		m.goes("14\r", "14 in")
		m.types("\x03")
		if status := m.ends(); status != 0 || slices.ContainsFunc(told(m.raw()), func(s string) bool { return strings.HasPrefix(s, "OSC") }) {
			t.Errorf("%s: status %d, %q", term, status, told(m.raw()))
		}
		m.givenBack()
	}
}

// From one cell to more than any desk has, the real program starts, shows something
// that fits, and works.
func TestWindowsOfAnySize(t *testing.T) {
	for _, size := range []pty.Winsize{{Rows: 1, Cols: 1}, {Rows: 1, Cols: 500}, {Rows: 200, Cols: 1}, {Rows: 15, Cols: 59}, {Rows: 16, Cols: 60}, {Rows: 200, Cols: 500}} {
		folder, term := sewing(t, false)
		if err := pty.Setsize(term.file, &size); err != nil {
			t.Fatal(err)
		}
		term.types("14 1/8\r")
		await(t, "it to be saved", func() bool { return strings.Contains(read(t, filepath.Join(folder, "blouse.toml")), "14 1/8") })
		term.types("\x03")
		if status := term.ends(); status != 0 {
			t.Errorf("%v: status %d", size, status)
		}
		term.givenBack()
	}
	r := sitWithFile(t, "choir-blouse", 80, 24) // every size on every page, without the terminal
	for _, page := range []string{"f1", "f2", "f3", "f4", "f5", "f6", "t", "esc", "ctrl+o", "esc", "ctrl+k", "esc", "ctrl+r", "esc", "ctrl+l", "ctrl+x", "esc", "ctrl+d"} {
		r.press(page)
		for width := 1; width <= 500; width += 1 + width/4 {
			for height := 1; height <= 200; height += 1 + height/2 {
				r.tell(tea.WindowSizeMsg{Width: width, Height: height})
				r.fits()
			}
		}
	}
}

// Whoever reads what is printed may go away after a line: the end is quiet.
func TestAReaderThatGoesAway(t *testing.T) {
	if _, err := exec.LookPath("bash"); err != nil {
		t.Skip("no bash here")
	}
	program, err := binary()
	if err != nil {
		t.Fatal(err)
	}
	files := strings.Repeat(" "+example("choir-blouse"), 200)
	for _, command := range []string{"show" + files, "show --json" + files, "show --working" + files, "trace " + example("choir-blouse"), "words", "man"} {
		m := startCommand(t, t.TempDir(), nil, exec.Command("bash", "-c", program+" "+command+" | head -1; echo \"status ${PIPESTATUS[0]}\""))
		m.ends()
		lines := strings.Split(strings.TrimSpace(m.raw()), "\r\n")
		if len(lines) != 2 || !slices.Contains([]string{"status 0", "status 141"}, lines[1]) { // 128 and SIGPIPE
			t.Errorf("%.30s: %q", command, m.raw())
		}
	}
}
