//go:build !windows

package ui

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/creack/pty"

	"capscye/worksheets"
)

// binary builds the real program once for the tests that run it.
var binary = sync.OnceValues(func() (string, error) {
	built = true
	folder, err := os.MkdirTemp("", "capscye-test")
	if err != nil {
		return "", err
	}
	path := filepath.Join(folder, "capscye")
	build := exec.Command("go", "build", "-o", path, ".")
	build.Dir = sourceFolder
	if out, err := build.CombinedOutput(); err != nil {
		return "", &os.PathError{Op: "go build: " + string(out), Path: path, Err: err}
	}
	return path, nil
})

// TestMain takes the binary away again.
func TestMain(m *testing.M) {
	status := m.Run()
	if built {
		if path, err := binary(); err == nil {
			os.RemoveAll(filepath.Dir(path))
		}
	}
	os.Exit(status)
}

// built tells that some test asked for the binary.
var built bool

// terminal is a terminal that shows what the program writes and answers
// nothing it asks.
type terminal struct {
	t    *testing.T
	cmd  *exec.Cmd
	file *os.File

	mu    sync.Mutex
	wrote bytes.Buffer
	done  chan struct{}
}

func start(t *testing.T, folder string, env []string, args ...string) *terminal {
	t.Helper()
	path, err := binary()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(path, args...)
	cmd.Dir = folder
	cmd.Env = append(os.Environ(), append([]string{"TERM=xterm-256color"}, env...)...)
	file, err := pty.StartWithSize(cmd, &pty.Winsize{Rows: 24, Cols: 80})
	if err != nil {
		t.Fatal(err)
	}
	term := &terminal{t: t, cmd: cmd, file: file, done: make(chan struct{})}
	go term.read()
	t.Cleanup(func() {
		_ = cmd.Process.Kill()
		_ = file.Close()
	})
	return term
}

func (m *terminal) read() {
	defer close(m.done)
	buf := make([]byte, 1<<16)
	for {
		n, err := m.file.Read(buf)
		m.mu.Lock()
		m.wrote.Write(buf[:n])
		m.mu.Unlock()
		if err != nil {
			return
		}
	}
}

func (m *terminal) raw() string {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.wrote.String()
}

// await waits until a text was written.
func (m *terminal) await(text string) {
	m.t.Helper()
	for deadline := time.Now().Add(10 * time.Second); time.Now().Before(deadline); time.Sleep(2 * time.Millisecond) {
		if strings.Contains(ansi.Strip(m.raw()), text) {
			return
		}
	}
	m.t.Fatalf("%q was not written; there is\n%q", text, m.raw())
}

func (m *terminal) types(keys string) {
	m.t.Helper()
	if _, err := io.WriteString(m.file, keys); err != nil {
		m.t.Fatal(err)
	}
}

// ends waits for the end and returns the exit status.
func (m *terminal) ends() int {
	m.t.Helper()
	ended := make(chan error, 1)
	go func() { ended <- m.cmd.Wait() }()
	select {
	case <-ended:
	case <-time.After(10 * time.Second):
		m.t.Fatalf("it does not end; it wrote\n%q", m.raw())
	}
	<-m.done
	return m.cmd.ProcessState.ExitCode()
}

// The real program in a real terminal: a girth is typed, the answer follows,
// the file has it, and the terminal is given back.
func TestRealProgramInATerminal(t *testing.T) {
	folder := t.TempDir()
	source, err := os.ReadFile(example("choir-blouse"))
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(folder, "blouse.toml")
	if err := os.WriteFile(path, source, 0o644); err != nil {
		t.Fatal(err)
	}
	term := start(t, folder, nil, "blouse.toml")
	term.await("Sleeve needs 2 1/2 in; each side: pivot 1 in, slide 1/4 in")
	term.types("14 1/4\r")
	term.await("Sleeve needs 3 in; each side: pivot 1 in, slide 1/2 in")
	term.types("\x03")
	if status := term.ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	d, err := worksheets.Load(path)
	if err != nil || d.Sheet.Text(worksheets.Bicep) != "14 1/4" {
		t.Errorf("the file has %q, %v", d.Sheet.Text(worksheets.Bicep), err)
	}
	if raw := term.raw(); !strings.Contains(raw, "\x1b[?1049l") || !strings.Contains(raw, "\x1b[?25h") {
		t.Errorf("the terminal was not given back: %q", raw)
	}
}

func TestRealProgramOffersToBegin(t *testing.T) {
	folder := t.TempDir()
	term := start(t, folder, []string{"NO_COLOR=1"}, "smock.toml")
	term.await("smock.toml does not exist yet. Begin it?")
	term.types("c")
	term.await("[saved]")
	term.types("34,9\r\x03")
	if status := term.ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	d, err := worksheets.Load(filepath.Join(folder, "smock.toml"))
	if err != nil || d.Sheet.Text(worksheets.Bicep) != "34,9" {
		t.Errorf("%v, %v", d, err)
	}
}

// A signal keeps what was typed, gives the terminal back, and shows in the exit
// status as 128 and its number.
func TestSignalsKeepWhatWasTyped(t *testing.T) {
	for _, sig := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP} {
		folder := t.TempDir()
		term := start(t, folder, nil, "smock.toml")
		term.await("Begin it?")
		term.types("i")
		term.await("[saved]")
		term.types("14")
		term.await("= 14 in")
		if err := term.cmd.Process.Signal(sig); err != nil {
			t.Fatal(err)
		}
		if status := term.ends(); status != 128+int(sig) {
			t.Errorf("%v: status %d", sig, status)
		}
		d, err := worksheets.Load(filepath.Join(folder, "smock.toml"))
		if err != nil || d.Sheet.Text(worksheets.Bicep) != "14" {
			t.Errorf("%v: %v, %v", sig, d, err)
		}
		if !strings.Contains(term.raw(), "\x1b[?1049l") {
			t.Errorf("%v: the terminal was not given back", sig)
		}
	}
}

// A terminal that answers no question must not make anybody wait: the library
// would ask for the background colour, and wait five seconds for an answer.
func TestNobodyWaitsForASilentTerminal(t *testing.T) {
	for _, args := range [][]string{{"--version"}, {"--help"}, {"show", example("choir-blouse")}} {
		before := time.Now()
		term := start(t, t.TempDir(), nil, args...)
		if status := term.ends(); status != 0 {
			t.Errorf("%v: status %d", args, status)
		}
		took := time.Since(before)
		t.Logf("%v took %v", args, took)
		if took > 2*time.Second { // far more than a slow machine needs, far less than the wait
			t.Errorf("%v took %v", args, took)
		}
		if raw := term.raw(); strings.Contains(raw, "\x1b]11;?") || strings.Contains(raw, "\x1b[6n") {
			t.Errorf("%v asks the terminal: %q", args, raw)
		}
	}
}

// On a terminal that cannot be drawn on, the sheet is printed.
func TestDumbTerminalGetsThePrintedSheet(t *testing.T) {
	term := start(t, t.TempDir(), []string{"TERM=dumb"})
	if status := term.ends(); status != 0 || !strings.Contains(term.raw(), "Choir blouse, for Odile") || strings.Contains(term.raw(), "\x1b") {
		t.Errorf("status %d, %q", status, term.raw())
	}
}

// Idle costs nothing: once the frames of the last key are out, a second brings
// not a byte.
func TestNothingIsWrittenWhileIdle(t *testing.T) {
	folder := t.TempDir()
	term := start(t, folder, nil, "smock.toml")
	term.await("Begin it?")
	term.types("i")
	term.await("[saved]")
	term.types("14 1/4\r") // and the hands are on the next field
	term.await("an answer is missing")
	time.Sleep(200 * time.Millisecond) // the save, and the frame that says so
	before := term.raw()
	time.Sleep(time.Second)
	if after := term.raw(); after != before {
		t.Errorf("%q was written while nobody did anything", after[len(before):])
	}
}
