//go:build linux

package ui_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"capscye/ui/console"
	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
)

// mostOfMemory is the memory in kilobytes that the program may have of its own for any file,
// held by the system: over it the program ends.
const mostOfMemory = 256 << 10

// mostResident is what of it may lie in the memory of the machine at once.
const mostResident = 96 << 10

// peak is the most memory that a running program had, in kilobytes.
func peak(pid int) int {
	status, _ := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	m := regexp.MustCompile(`VmHWM:\s+(\d+) kB`).FindSubmatch(status)
	if m == nil {
		return 0
	}
	n, _ := strconv.Atoi(string(m[1]))
	return n
}

// A file that is too large, too deep or too full is refused in words, or shown; with
// bounded memory and within seconds, printed and on the screen.
func TestHugeFiles(t *testing.T) {
	t.Parallel()
	built, err := program.Binary()
	if err != nil {
		t.Fatal(err)
	}
	many := func(n int, line func(i int) string) string {
		var b strings.Builder
		for i := range n {
			b.WriteString(line(i))
		}
		return b.String()
	}
	fitting := func(int) string { return "[[fitting]]\nnote = \"tight\"\n" }
	const tooLarge = "A worksheet has at most 786432"
	for i, c := range []struct{ name, source, said string }{
		{"over 1 MiB", "[body]\nbicep = \"13\"\n" + strings.Repeat("# cotton lawn\n", 100_000), tooLarge},
		{"a title of 1 MB", "[about]\ntitle = \"" + strings.Repeat("x", 1_000_000) + "\"\n", tooLarge},
		{"a title of 700 KB", "[about]\ntitle = \"" + strings.Repeat("é", 350_000) + "\"\n", ""},
		{"a title of joined signs", "[about]\ntitle = \"a" + strings.Repeat("\u0301", 350_000) + "\"\n", ""},
		{"notes of 700 KB", "[about]\nnotes = \"" + strings.Repeat("lawn ", 140_000) + "\"\n", ""},
		{"100,000 fittings", many(100_000, fitting), tooLarge},
		{"25,000 fittings", many(25_000, fitting), "more keys, arrays or tables than a worksheet has"},
		{"15,000 fittings", many(15_000, fitting), ""},
		{"10,000 unknown keys", "[body]\n" + many(10_000, func(i int) string { return fmt.Sprintf("k%d = 1\n", i) }), "there are more such keys; all stay in the file"},
		{"1,000 unknown tables", many(1000, func(i int) string { return fmt.Sprintf("[t%d.u]\nk = 1\n", i) }), "there are more such keys; all stay in the file"},
		{"50,000 steps done", "[progress]\ndone = [" + strings.Repeat(`"x", `, 50_000) + "]\n", ""},
		{"deep brackets", "x = " + strings.Repeat("[", 300_000) + "\n", "At most 5 levels of brackets"},
		{"deep tables", "x = " + strings.Repeat("{a = ", 100_000) + "\n", "At most 5 levels of brackets"},
		{"a deep key", strings.Repeat("a.", 100_000) + "a = 1\n", "At most 5 levels of brackets, or parts of a key"},
		{"a huge number", "[body]\nbicep = \"" + strings.Repeat("9", 700_000) + "\"\n", "body.bicep: "},
		{"a huge number outside quotes", "[bodice]\ncrossings = " + strings.Repeat("9", 700_000) + "\n", "bodice.crossings: "},
		{"a huge fraction", "[body]\nbicep = \"1/" + strings.Repeat("9", 700_000) + "\"\n", "body.bicep: "},
		{"a huge exponent", "x = 1e999999999\n[body]\nbicep = \"13\"\n", "line 1: x: "},
	} {
		t.Run(c.name, func(t *testing.T) {
			folder := t.TempDir()
			if err := os.WriteFile(filepath.Join(folder, "huge.toml"), []byte(c.source), 0o644); err != nil {
				t.Fatal(err)
			}
			commands := []string{"show --working huge.toml", "show --json huge.toml", "card huge.toml -o c.txt", "ask huge.toml </dev/null"}
			if !props.Thorough() {
				commands = commands[:1]
			}
			for _, command := range commands {
				begun := time.Now()
				cmd := exec.Command("sh", "-c", fmt.Sprintf("ulimit -d %d; exec %s %s", mostOfMemory, built, command))
				var errs bytes.Buffer
				cmd.Dir, cmd.Stderr = folder, &errs
				err, status := cmd.Run(), cmd.ProcessState.ExitCode()
				// -1 is a signal; a program that runs out of memory or stack ends with 2, as one that refuses a file.
				if crashed := strings.Contains(errs.String(), "\ngoroutine "); crashed || status < 0 || status > console.ExitUnread || errs.Len() > 20_000 || props.Acts(errs.String()) {
					t.Errorf("%s: %v, %.500s", command, err, errs.String())
				}
				if refused := status == console.ExitUnread; refused && c.said == "" {
					t.Errorf("%s: refused: %.500s", command, errs.String())
				}
				if took := time.Since(begun); took > 10*time.Second { // far more than a slow machine needs
					t.Errorf("%s took %v", command, took)
				}
				if !strings.HasPrefix(command, "ask") && !strings.Contains(errs.String(), c.said) {
					t.Errorf("%s says %.500s", command, errs.String())
				}
			}
			if i%3 != 1 && !props.Thorough() {
				return
			}
			term := program.StartCommand(t, folder, []string{"XDG_STATE_HOME=" + folder}, exec.Command("sh", "-c", fmt.Sprintf("ulimit -d %d; exec %s huge.toml", mostOfMemory, built)))
			if cmd := exec.Command(built, "show", "huge.toml"); c.said != "" {
				if cmd.Dir = folder; cmd.Run() != nil && cmd.ProcessState.ExitCode() == console.ExitUnread { // nothing opens
					if status := term.Ends(); status != console.ExitUnread || !strings.Contains(strings.Join(strings.Fields(term.Raw()), " "), c.said) {
						t.Errorf("the screen: status %d, %.500q", status, term.Raw())
					}
					return
				}
			}
			term.Await("[1 Body]")
			for _, keys := range [][2]string{{"\r14 1/8\r", "14 1/8 in"}, {"\x1b[17~", "[6 Trace]"}, {"\x1b[15~", "[5 Match]"}, {"\x1bOP", "[1 Body]"}} {
				term.Goes(keys[0], keys[1])
			}
			had := peak(term.Cmd.Process.Pid)
			if term.Types("\x03"); term.Ends() != 0 {
				t.Errorf("%.500q", term.Raw())
			}
			term.GivenBack()
			t.Logf("the screen had %d KB", had)
			if had > mostResident {
				t.Errorf("the screen had %d KB", had)
			}
		})
	}
}
