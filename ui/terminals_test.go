//go:build linux

package ui_test

import (
	"fmt"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
)

// A terminal that says nothing of its kind gets lines, as one that cannot be drawn
// on; of one that no list knows it is believed that it can what all can.
func TestTerminalsOfNoKind(t *testing.T) {
	t.Parallel()
	for _, term := range []string{"TERM=", "TERM=dumb"} {
		m := program.Start(t, t.TempDir(), []string{term})
		if status := m.Ends(); status != 0 || !strings.Contains(m.Raw(), "Choir blouse, for Odile") || strings.Contains(m.Raw(), "\x1b") {
			t.Errorf("%s: status %d, %q", term, status, m.Raw())
		}
		m = program.Start(t, t.TempDir(), []string{term}, "smock")
		m.Await("Begin it in inches or in centimetres?")
		m.Types("quit\n")
		if m.Ends(); strings.Contains(m.Raw(), "\x1b") {
			t.Errorf("%s: %q", term, m.Raw())
		}
	}
	if _, help, _ := run("", "--help"); !strings.Contains(strings.Join(strings.Fields(help), " "), "capscye FILE works like ask, and capscye alone prints an example.") {
		t.Errorf("the help does not say so:\n%s", help)
	}
	for _, term := range []string{"TERM=no-such-kind", "TERM=vt100", "TERM=linux", "TERM=\x1b]0;x\a"} {
		m := program.Start(t, t.TempDir(), []string{term}, "smock")
		m.Await("Begin it?")
		m.Goes("i\r", "[saved]")
		m.Goes("14\r", "14 in")
		m.Types("\x03")
		if status := m.Ends(); status != 0 || slices.ContainsFunc(program.Told(m.Raw()), func(s string) bool { return strings.HasPrefix(s, "OSC") }) {
			t.Errorf("%s: status %d, %q", term, status, program.Told(m.Raw()))
		}
		m.GivenBack()
	}
}

// Whoever reads what is printed may go away after a line: the end is quiet.
func TestAReaderThatGoesAway(t *testing.T) {
	t.Parallel()
	if _, err := exec.LookPath("bash"); err != nil {
		t.Skip("no bash here")
	}
	built, err := program.Binary()
	if err != nil {
		t.Fatal(err)
	}
	files := strings.Repeat(" "+props.Example("choir-blouse"), 200)
	for _, command := range []string{"show" + files, "show --json" + files, "show --working" + files, "trace " + props.Example("choir-blouse"), "words", "man", "ask blouse.toml", "drill"} {
		t.Run(fmt.Sprintf("%.14s", command), func(t *testing.T) {
			t.Parallel()
			folder := t.TempDir()
			props.LayAt(t, filepath.Join(folder, "blouse.toml"), "choir-blouse")
			m := program.StartCommand(t, folder, nil, exec.Command("bash", "-c", "for i in 1 2 3; do sleep 0.1; echo; done 2>/dev/null | "+built+" "+command+" | head -1; echo \"status ${PIPESTATUS[1]}\""))
			m.Ends()
			lines := strings.Split(strings.TrimSpace(m.Raw()), "\r\n")
			if len(lines) != 2 || !slices.Contains([]string{"status 0", "status 141"}, lines[1]) { // 128 and SIGPIPE
				t.Errorf("%.30s: %q", command, m.Raw())
			}
		})
	}
}
