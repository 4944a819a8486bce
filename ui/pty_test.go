//go:build linux

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

// binaryFolder is where the program was built, "" where it was not.
var binaryFolder string

// removeBinary takes away what [binary] left.
func removeBinary() { os.RemoveAll(binaryFolder) }

// binary builds the real program once for the tests that run it.
var binary = sync.OnceValues(func() (string, error) {
	folder, err := os.MkdirTemp("", "capscye-test")
	if err != nil {
		return "", err
	}
	binaryFolder = folder
	path := filepath.Join(folder, "capscye")
	build := exec.Command("go", "build", "-o", path, ".")
	build.Dir = sourceFolder
	if out, err := build.CombinedOutput(); err != nil {
		return "", &os.PathError{Op: "go build: " + string(out), Path: path, Err: err}
	}
	return path, nil
})

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
	return startCommand(t, folder, env, exec.Command(path, args...))
}

func startCommand(t *testing.T, folder string, env []string, cmd *exec.Cmd) *terminal {
	t.Helper()
	cmd.Dir = folder
	cmd.Env = append(os.Environ(), append([]string{"TERM=xterm-256color"}, env...)...)
	file, err := pty.StartWithSize(cmd, &pty.Winsize{Rows: 24, Cols: 80})
	if err != nil {
		t.Fatal(err)
	}
	if err := syscall.SetNonblock(int(file.Fd()), true); err != nil { // or closing it would wait for the reader
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

// beginSmock is the program with a new sheet in inches, and the file of that.
func beginSmock(t *testing.T) (term *terminal, file string) {
	t.Helper()
	folder := t.TempDir()
	term = start(t, folder, nil, "smock.toml")
	term.await("Begin it?")
	term.types("i")
	term.await("[saved]")
	return term, filepath.Join(folder, "smock.toml")
}

// The real program in a real terminal: a girth is typed, the answer follows,
// the file has it, and the terminal is given back.
func TestRealProgramInATerminal(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "blouse.toml")
	layAt(t, path, "choir-blouse")
	term := start(t, folder, nil, "blouse.toml")
	term.await("Sleeve needs 2 1/2 in; each side: pivot 1 in, slide 1/4 in")
	term.types("14 1/4\r")
	term.await("Sleeve needs 3 in; each side: pivot 1 in, slide 1/2 in")
	term.types("\x03")
	if status := term.ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	if got := answerIn(t, path, worksheets.Bicep); got != "14 1/4" {
		t.Errorf("the file has %q", got)
	}
	term.givenBack()
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
	if got := answerIn(t, filepath.Join(folder, "smock.toml"), worksheets.Bicep); got != "34,9" {
		t.Errorf("the file has %q", got)
	}
}

// A signal keeps what was typed, gives the terminal back, and shows in the exit
// status as 128 and its number.
func TestSignalsKeepWhatWasTyped(t *testing.T) {
	for _, sig := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP, syscall.SIGQUIT} {
		term, file := beginSmock(t)
		term.types("14")
		term.await("= 14 in")
		if err := term.cmd.Process.Signal(sig); err != nil {
			t.Fatal(err)
		}
		if status := term.ends(); status != 128+int(sig) {
			t.Errorf("%v: status %d", sig, status)
		}
		if got := answerIn(t, file, worksheets.Bicep); got != "14" {
			t.Errorf("%v: the file has %q", sig, got)
		}
		term.givenBack()
	}
}

// A terminal that answers no question must not make anybody wait: the library
// would ask for the background colour, and wait five seconds for an answer.
func TestNobodyWaitsForASilentTerminal(t *testing.T) {
	for _, args := range [][]string{{"--version"}, {"--help"}, {"show", example("choir-blouse")}, {"ask", "--help"}, {"words"}, {"man"}, {"completion", "bash"}} {
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

// ... and a worksheet that is named is asked for, line by line, without a sign
// that steers a terminal.
func TestDumbTerminalIsAsked(t *testing.T) {
	folder := t.TempDir()
	term := start(t, folder, []string{"TERM=dumb"}, "smock")
	term.await("Begin it in inches or in centimetres?")
	term.types("c\n")
	term.await("Bicep, in centimetres? Empty.")
	term.types("34,9\nquit\n")
	if status := term.ends(); status != 1 || strings.Contains(term.raw(), "\x1b") || !strings.Contains(term.raw(), "Kept in smock.toml.") {
		t.Errorf("status %d, %q", status, term.raw())
	}
	if got := answerIn(t, filepath.Join(folder, "smock.toml"), worksheets.Bicep); got != "34,9" {
		t.Errorf("the file has %q", got)
	}
}

// A signal keeps what was answered, also where there is no name for it yet.
func TestSignalsKeepWhatWasAnswered(t *testing.T) {
	for _, sig := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP} {
		folder := t.TempDir()
		term := start(t, folder, nil, "ask")
		term.await("Begin it in inches")
		term.types("i\n13\n")
		term.await("Other arm")
		if err := term.cmd.Process.Signal(sig); err != nil {
			t.Fatal(err)
		}
		if status := term.ends(); status != 128+int(sig) || strings.Contains(term.raw(), "Under which name") {
			t.Errorf("%v: status %d, %q", sig, status, term.raw())
		}
		if got := answerIn(t, filepath.Join(folder, "worksheet.toml"), worksheets.Bicep); got != "13" {
			t.Errorf("%v: the file has %q", sig, got)
		}
	}
}

// Whoever reads the questions may go away; the answers stay.
func TestAnswersOutliveTheirReader(t *testing.T) {
	path, err := binary()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	cmd := exec.Command(path, "ask")
	cmd.Dir = folder
	typed, _ := cmd.StdinPipe()
	said, _ := cmd.StdoutPipe()
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	io.WriteString(typed, "i\n13\n")
	for heard, buf := "", make([]byte, 4096); !strings.Contains(heard, "Other arm"); {
		n, err := said.Read(buf)
		if err != nil {
			t.Fatal(err)
		}
		heard += string(buf[:n])
	}
	said.Close()
	io.WriteString(typed, "12\n12\n")
	late := time.AfterFunc(10*time.Second, func() { _ = cmd.Process.Kill() })
	defer late.Stop()
	if cmd.Wait(); cmd.ProcessState.ExitCode() != exitUnread {
		t.Errorf("%v", cmd.ProcessState)
	}
	if got := answerIn(t, filepath.Join(folder, "worksheet.toml"), worksheets.Bicep); got != "13" {
		t.Errorf("the file has %q", got)
	}
}

// Idle costs nothing: once the frames of the last key are out, a second brings
// not a byte.
func TestNothingIsWrittenWhileIdle(t *testing.T) {
	term, _ := beginSmock(t)
	term.types("14 1/4\r") // and the hands are on the next field
	term.await("an answer is missing")
	time.Sleep(200 * time.Millisecond) // the save, and the frame that says so
	before := term.raw()
	time.Sleep(time.Second)
	if after := term.raw(); after != before {
		t.Errorf("%q was written while nobody did anything", after[len(before):])
	}
}
