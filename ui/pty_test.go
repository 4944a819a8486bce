//go:build linux

package ui_test

import (
	"io"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// The real program in a real terminal: a girth is typed, the answer follows,
// the file has it, and the terminal is given back.
func TestRealProgramInATerminal(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	path := filepath.Join(folder, "blouse.toml")
	props.LayAt(t, path, "choir-blouse")
	term := program.Start(t, folder, nil, "blouse.toml")
	term.Await("Sleeve needs 2 1/2 in; each side: pivot 1 in, slide 1/4 in")
	term.Types("14 1/4\r")
	term.Await("Sleeve needs 3 in; each side: pivot 1 in, slide 1/2 in")
	term.Types("\x03")
	if status := term.Ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	if got := props.AnswerIn(t, path, worksheets.Bicep); got != "14 1/4" {
		t.Errorf("the file has %q", got)
	}
	term.GivenBack()
}

func TestRealProgramOffersToBegin(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	term := program.Start(t, folder, []string{"NO_COLOR=1"}, "smock.toml")
	term.Await("smock.toml does not exist yet. Begin it?")
	term.Types("c\r")
	term.Await("[saved]")
	term.Types("34,9\r\x03")
	if status := term.Ends(); status != 0 {
		t.Errorf("status %d", status)
	}
	if got := props.AnswerIn(t, filepath.Join(folder, "smock.toml"), worksheets.Bicep); got != "34,9" {
		t.Errorf("the file has %q", got)
	}
}

// A signal keeps what was typed, gives the terminal back, and shows in the exit
// status as 128 and its number.
func TestSignalsKeepWhatWasTyped(t *testing.T) {
	t.Parallel()
	for _, sig := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP, syscall.SIGQUIT} {
		term, file := program.BeginSmock(t)
		term.Types("14")
		term.Await("= 14 in")
		if err := term.Cmd.Process.Signal(sig); err != nil {
			t.Fatal(err)
		}
		if status := term.Ends(); status != 128+int(sig) {
			t.Errorf("%v: status %d", sig, status)
		}
		if got := props.AnswerIn(t, file, worksheets.Bicep); got != "14" {
			t.Errorf("%v: the file has %q", sig, got)
		}
		term.GivenBack()
	}
}

// A terminal that answers no question must not make anybody wait: the library
// would ask for the background colour, and wait five seconds for an answer.
func TestNobodyWaitsForASilentTerminal(t *testing.T) {
	for _, args := range [][]string{{"--version"}, {"--help"}, {"show", props.Example("choir-blouse")}, {"ask", "--help"}, {"words"}, {"man"}, {"completion", "bash"}} {
		before := time.Now()
		term := program.Start(t, t.TempDir(), nil, args...)
		if status := term.Ends(); status != 0 {
			t.Errorf("%v: status %d", args, status)
		}
		took := time.Since(before)
		t.Logf("%v took %v", args, took)
		if took > 2*time.Second { // far more than a slow machine needs, far less than the wait
			t.Errorf("%v took %v", args, took)
		}
		if raw := term.Raw(); strings.Contains(raw, "\x1b]11;?") || strings.Contains(raw, "\x1b[6n") {
			t.Errorf("%v asks the terminal: %q", args, raw)
		}
	}
}

// On a terminal that cannot be drawn on, an example is printed, as the help says.
func TestDumbTerminalGetsThePrintedSheet(t *testing.T) {
	t.Parallel()
	term := program.Start(t, t.TempDir(), []string{"TERM=dumb"})
	if status := term.Ends(); status != 0 || !strings.Contains(term.Raw(), "Choir blouse, for Odile") || strings.Contains(term.Raw(), "\x1b") {
		t.Errorf("status %d, %q", status, term.Raw())
	}
	if _, help, _ := run("", "--help"); !strings.Contains(strings.Join(strings.Fields(help), " "), "capscye FILE works like ask, and capscye alone prints an example.") {
		t.Errorf("the help does not say so:\n%s", help)
	}
}

// ... and a worksheet that is named is asked for, line by line, without a sign
// that steers a terminal.
func TestDumbTerminalIsAsked(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	term := program.Start(t, folder, []string{"TERM=dumb"}, "smock")
	term.Await("Begin it in inches or in centimetres?")
	term.Types("c\n")
	term.Await("Bicep, in centimetres? Empty, needed.")
	term.Types("34,9\nquit\n")
	if status := term.Ends(); status != 1 || strings.Contains(term.Raw(), "\x1b") || !strings.Contains(term.Raw(), "Saved in smock.toml.") {
		t.Errorf("status %d, %q", status, term.Raw())
	}
	if got := props.AnswerIn(t, filepath.Join(folder, "smock.toml"), worksheets.Bicep); got != "34,9" {
		t.Errorf("the file has %q", got)
	}
}

// A signal keeps what was answered, also where there is no name for it yet.
func TestSignalsKeepWhatWasAnswered(t *testing.T) {
	t.Parallel()
	for _, sig := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP} {
		folder := t.TempDir()
		term := program.Start(t, folder, nil, "ask")
		term.Await("Begin it in inches")
		term.Types("i\n13\n")
		term.Await("Ease at the bicep")
		if err := term.Cmd.Process.Signal(sig); err != nil {
			t.Fatal(err)
		}
		if status := term.Ends(); status != 128+int(sig) || strings.Contains(term.Raw(), "File name") {
			t.Errorf("%v: status %d, %q", sig, status, term.Raw())
		}
		if got := props.AnswerIn(t, filepath.Join(folder, "worksheet.toml"), worksheets.Bicep); got != "13" {
			t.Errorf("%v: the file has %q", sig, got)
		}
	}
}

// Whoever reads the questions may go away; the answers stay. Not beside other tests: each
// program that they start has this end of the pipe for a moment.
func TestAnswersOutliveTheirReader(t *testing.T) {
	path, err := program.Binary()
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
	for heard, buf := "", make([]byte, 4096); !strings.Contains(heard, "Ease at the bicep"); {
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
	if cmd.Wait(); cmd.ProcessState.Sys().(syscall.WaitStatus).Signal() != syscall.SIGPIPE && cmd.ProcessState.ExitCode() != 128+int(syscall.SIGPIPE) {
		t.Errorf("%v", cmd.ProcessState)
	}
	if got := props.AnswerIn(t, filepath.Join(folder, "worksheet.toml"), worksheets.Bicep); got != "13" {
		t.Errorf("the file has %q", got)
	}
}

// Idle costs nothing: once the frames of the last key are out, a second brings
// not a byte.
func TestNothingIsWrittenWhileIdle(t *testing.T) {
	t.Parallel()
	term, _ := program.BeginSmock(t)
	term.Types("14 1/4\r") // and the hands are on the next field
	term.Await("an answer is missing")
	before := ""
	for late := time.Now().Add(10 * time.Second); before != term.Raw() && time.Now().Before(late); {
		before = term.Raw()
		time.Sleep(200 * time.Millisecond) // the save, and the frame that says so
	}
	time.Sleep(time.Second)
	if after := term.Raw(); after != before {
		t.Errorf("%q was written while nobody did anything", after[len(before):])
	}
}
