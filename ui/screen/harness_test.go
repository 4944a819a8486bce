//go:build linux

package screen

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/creack/pty"

	"capscye/ui/internal/props"
)

// The harness runs the program beside the least that does anything on the same
// libraries (testdata/bare), in terminals that answer no question, in turns, so
// that whatever else the machine does falls on both. It knows nothing but bytes
// and times; what is measured and against what is in measure_test.go.

// rig is what is measured: two programs and the least of all, and a folder for
// the sheet.
type rig struct {
	t                           *testing.T
	folder                      string
	capscye, bare, hello        string
	releaseCapscye, releaseBare string
	sheet                       string
}

// newRig builds the programs and lays out a sheet.
func newRig(t *testing.T) *rig {
	folder := t.TempDir()
	build := func(name, source string, flags ...string) string {
		path := filepath.Join(folder, name)
		cmd := exec.Command("go", slices.Concat([]string{"build", "-o", path}, flags, []string{source})...)
		cmd.Dir = props.SourceFolder
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("%v: %v\n%s", cmd, err, out)
		}
		return path
	}
	release := []string{"-trimpath", "-ldflags=-s -w"}
	r := &rig{t: t, folder: folder,
		capscye: build("capscye", "."), bare: build("bare", "./testdata/bare"), hello: build("hello", "./testdata/hello"),
		releaseCapscye: build("capscye-release", ".", release...), releaseBare: build("bare-release", "./testdata/bare", release...),
		sheet: filepath.Join(folder, "sheet.toml")}
	r.layOut()
	return r
}

// layOut puts the sheet back as it was in the beginning.
func (r *rig) layOut() {
	source, err := os.ReadFile(props.Example("choir-blouse"))
	if err != nil {
		r.t.Fatal(err)
	}
	if err := os.WriteFile(r.sheet, source, 0o644); err != nil {
		r.t.Fatal(err)
	}
}

// watched is a program in a terminal, with the moment at which each piece of
// what it wrote arrived.
type watched struct {
	r       *rig
	cmd     *exec.Cmd
	file    *os.File
	started time.Time

	mu    sync.Mutex
	wrote []byte
	ends  []arrival
}

// arrival is how much had been written when something arrived.
type arrival struct {
	size int
	at   time.Time
}

// launch starts a program in a window of 120 x 40.
func (r *rig) launch(path string, args ...string) *watched {
	r.t.Helper()
	w := &watched{r: r, cmd: exec.Command(path, args...)}
	w.cmd.Dir = r.folder
	w.cmd.Env = append(os.Environ(), "TERM=xterm-256color")
	var err error
	w.started = time.Now()
	if w.file, err = pty.StartWithSize(w.cmd, &pty.Winsize{Rows: 40, Cols: 120}); err != nil {
		r.t.Fatal(err)
	}
	go w.read()
	r.t.Cleanup(func() { _ = w.cmd.Process.Kill(); _ = w.file.Close() })
	return w
}

func (w *watched) read() {
	buf := make([]byte, 1<<16)
	for {
		n, err := w.file.Read(buf)
		at := time.Now()
		w.mu.Lock()
		w.wrote = append(w.wrote, buf[:n]...)
		w.ends = append(w.ends, arrival{len(w.wrote), at})
		w.mu.Unlock()
		if err != nil {
			return
		}
	}
}

func (w *watched) size() int {
	w.mu.Lock()
	defer w.mu.Unlock()
	return len(w.wrote)
}

// await is when what came behind a place was for the first time what is waited
// for.
func (w *watched) await(from int, what string, seen func([]byte) bool) time.Time {
	w.r.t.Helper()
	for deadline := time.Now().Add(20 * time.Second); time.Now().Before(deadline); time.Sleep(200 * time.Microsecond) {
		w.mu.Lock()
		for _, a := range w.ends {
			if a.size > from && seen(w.wrote[from:a.size]) {
				w.mu.Unlock()
				return a.at
			}
		}
		w.mu.Unlock()
	}
	w.r.t.Fatalf("%v: no %s; it wrote %q", w.cmd.Args, what, w.wrote[min(from, len(w.wrote)):])
	return time.Time{}
}

// frameEnd is how the library ends a frame: the cursor goes to its last line.
var frameEnd = regexp.MustCompile(`\x1b\[[0-9;]+H$`)

// firstFrame is how long the first whole frame took. Both programs say in the
// last line how to end.
func (w *watched) firstFrame() time.Duration {
	w.r.t.Helper()
	return w.await(0, "first frame", func(b []byte) bool {
		return frameEnd.Match(b) && strings.Contains(ansi.Strip(string(b)), "^c end")
	}).Sub(w.started)
}

// frame is how long a key took to its changed frame.
func (w *watched) frame(key string) time.Duration {
	w.r.t.Helper()
	from, before := w.size(), time.Now()
	w.press(key)
	return w.await(from, fmt.Sprintf("frame for %q", key), frameEnd.Match).Sub(before)
}

func (w *watched) press(key string) {
	w.r.t.Helper()
	if _, err := io.WriteString(w.file, key); err != nil {
		w.r.t.Fatal(err)
	}
}

// quiet waits until nothing has been written for a while, such as the frame that
// says that something is saved.
func (w *watched) quiet(d time.Duration) {
	for size := -1; size != w.size(); time.Sleep(d) {
		size = w.size()
	}
}

// end ends the program by the key that both have for it.
func (w *watched) end() {
	w.r.t.Helper()
	w.press("\x03")
	w.ended()
}

// ended waits for the end, and not for ever.
func (w *watched) ended() {
	w.r.t.Helper()
	late := time.AfterFunc(20*time.Second, func() { _ = w.cmd.Process.Kill() })
	defer late.Stop()
	if err := w.cmd.Wait(); err != nil {
		w.r.t.Fatalf("%v: %v", w.cmd.Args, err)
	}
	_ = w.file.Close()
}

// wholeRun is how long a program takes from start to end.
func (r *rig) wholeRun(path string, args ...string) time.Duration {
	r.t.Helper()
	w := r.launch(path, args...)
	w.ended()
	return time.Since(w.started)
}

// processorTime is what all threads have used, as the kernel counts it; not ok
// where it has no such files.
func (w *watched) processorTime() (sum time.Duration, ok bool) {
	threads, _ := filepath.Glob(fmt.Sprintf("/proc/%d/task/*/schedstat", w.cmd.Process.Pid))
	for _, name := range threads {
		var ns int64
		text, err := os.ReadFile(name)
		if _, scan := fmt.Sscan(string(text), &ns); err != nil || scan != nil {
			return 0, false
		}
		sum += time.Duration(ns)
	}
	return sum, len(threads) > 0
}

// resident is the memory in use, in kilobytes, now and at most; not ok where the
// kernel has no such file.
func (w *watched) resident() (now, most int, ok bool) {
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", w.cmd.Process.Pid))
	if err != nil {
		return 0, 0, false
	}
	for _, line := range bytes.Split(status, []byte("\n")) {
		_, _ = fmt.Sscanf(string(line), "VmRSS: %d kB", &now)
		_, _ = fmt.Sscanf(string(line), "VmHWM: %d kB", &most)
	}
	return now, most, now > 0
}
