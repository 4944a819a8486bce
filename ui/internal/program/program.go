//go:build linux

package program

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

	"capscye/ui/internal/props"
)

// Sewing is a folder with a sheet, on a small disk of its own where that can be had,
// and the real program at it, which keeps what is not saved elsewhere.
func Sewing(t *testing.T, ownDisk bool) (folder string, term *Terminal) {
	t.Helper()
	folder = filepath.Join(t.TempDir(), "sewing")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	if ownDisk {
		if err := syscall.Mount("none", folder, "tmpfs", 0, "size=64k"); err != nil {
			t.Skipf("no disk of our own to fill here: %v", err)
		}
		t.Cleanup(func() { syscall.Unmount(folder, syscall.MNT_DETACH) })
	}
	props.LayAt(t, filepath.Join(folder, "blouse.toml"), "choir-blouse")
	term = Start(t, folder, []string{"XDG_STATE_HOME=" + filepath.Dir(folder)}, "blouse.toml")
	term.Await("Sleeve needs 2 1/2 in")
	return folder, term
}

// Binary builds the real program once for the tests that run it, without what debuggers
// read, as it goes out. Programs that are built to run lie ready for the next package, so it
// is run by cp.
var Binary = sync.OnceValues(func() (string, error) {
	folder, err := os.MkdirTemp("", "capscye-test")
	if err != nil {
		return "", err
	}
	binaryFolder = folder
	path := filepath.Join(folder, "capscye")
	build := exec.Command("go", "run", "-exec", "cp", ".", path)
	build.Dir = props.SourceFolder
	if out, err := build.CombinedOutput(); err != nil {
		return "", &os.PathError{Op: "go run: " + string(out), Path: path, Err: err}
	}
	return path, nil
})

// Terminal is a terminal that shows what the program writes and answers
// nothing it asks.
type Terminal struct {
	T    *testing.T
	Cmd  *exec.Cmd
	File *os.File

	mu    sync.Mutex
	wrote bytes.Buffer
	more  chan struct{} // closed when more was written than is in it
	done  chan struct{}
}

// Start starts the program in a folder, in a terminal of 80 x 24.
func Start(t *testing.T, folder string, env []string, args ...string) *Terminal {
	t.Helper()
	path, err := Binary()
	if err != nil {
		t.Fatal(err)
	}
	return StartCommand(t, folder, env, exec.Command(path, args...))
}

// StartCommand starts any command so.
func StartCommand(t *testing.T, folder string, env []string, cmd *exec.Cmd) *Terminal {
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
	term := &Terminal{T: t, Cmd: cmd, File: file, more: make(chan struct{}), done: make(chan struct{})}
	go term.read()
	t.Cleanup(func() {
		_ = cmd.Process.Kill()
		_ = file.Close()
	})
	return term
}

func (m *Terminal) read() {
	defer close(m.done)
	buf := make([]byte, 1<<16)
	for {
		n, err := m.File.Read(buf)
		m.mu.Lock()
		m.wrote.Write(buf[:n])
		close(m.more)
		m.more = make(chan struct{})
		m.mu.Unlock()
		if err != nil {
			return
		}
	}
}

// Raw is all that was written.
func (m *Terminal) Raw() string {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.wrote.String()
}

// Await waits until a text was written.
func (m *Terminal) Await(text string) {
	m.T.Helper()
	if !m.writes(0, text) {
		m.T.Fatalf("%q was not written; there is\n%q", text, m.Raw())
	}
}

// Goes presses keys and waits until a text is written behind them.
func (m *Terminal) Goes(keys, text string) {
	m.T.Helper()
	from := len(m.Raw())
	if m.Types(keys); !m.writes(from, text) {
		m.T.Fatalf("%q does not bring %q; there is\n%q", keys, text, m.Raw()[from:])
	}
}

// writes waits until a text stands behind a place in what was written, and tells whether it
// came. It looks again only when more was written: looking takes the processor from the
// program.
func (m *Terminal) writes(from int, text string) bool {
	late := time.After(10 * time.Second)
	for {
		m.mu.Lock()
		wrote, more := m.wrote.String()[from:], m.more
		m.mu.Unlock()
		if strings.Contains(ansi.Strip(wrote), text) {
			return true
		}
		select {
		case <-more:
		case <-late:
			return false
		}
	}
}

// Types writes keys to the terminal.
func (m *Terminal) Types(keys string) {
	m.T.Helper()
	if _, err := io.WriteString(m.File, keys); err != nil {
		m.T.Fatal(err)
	}
}

// Answers types what answers a question, once hands could have read it, and waits for what
// comes of it: before, no key answers.
func (m *Terminal) Answers(keys, want string) {
	m.T.Helper()
	time.Sleep(60 * time.Millisecond)
	m.Goes(keys, want)
}

// Ends waits for the end and returns the exit status.
func (m *Terminal) Ends() int {
	m.T.Helper()
	ended := make(chan error, 1)
	go func() { ended <- m.Cmd.Wait() }()
	select {
	case <-ended:
	case <-time.After(10 * time.Second):
		m.T.Fatalf("it does not end; it wrote\n%q", m.Raw())
	}
	<-m.done
	return m.Cmd.ProcessState.ExitCode()
}

// BeginSmock is the program with a new sheet in inches, and the file of that.
func BeginSmock(t *testing.T) (term *Terminal, file string) {
	t.Helper()
	folder := t.TempDir()
	term = Start(t, folder, nil, "smock.toml")
	term.Await("Begin it?")
	term.Types("i\r") // without a title
	term.Await("[saved]")
	return term, filepath.Join(folder, "smock.toml")
}
