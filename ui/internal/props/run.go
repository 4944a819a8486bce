package props

import (
	"bufio"
	"bytes"
	"flag"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/spf13/cobra"

	"capscye/ui/console"
)

// Commands is the program as far as a room makes it: a table of the commands to be
// tested, run without a terminal, on [SomeDay].
type Commands []func(*console.Session) *cobra.Command

// table makes the commands for one run.
func (c Commands) table(s *console.Session) *cobra.Command {
	root := &cobra.Command{Use: "capscye"}
	for _, command := range c {
		root.AddCommand(command(s))
	}
	return root
}

// Run runs a command with a text as its input.
func (c Commands) Run(in string, args ...string) (status int, out, errs string) {
	var o, e bytes.Buffer
	status = c.RunWith(strings.NewReader(in), &o, &e, args...)
	return status, o.String(), e.String()
}

// RunWith runs a command with streams of its own.
func (c Commands) RunWith(in io.Reader, out, errs io.Writer, args ...string) (status int) {
	s := &console.Session{In: in, Out: out, Errs: errs, Today: SomeDay, Version: "0.0.0"}
	return s.Execute(args, c.table)
}

// Talk runs a command with a person at it.
func (c Commands) Talk(t *testing.T, args ...string) *Person {
	t.Helper()
	in, typed := io.Pipe()
	said, out := io.Pipe()
	p := &Person{t: t, in: typed, heard: make(chan string, 1000), Status: make(chan int, 1)}
	go func() {
		for lines := bufio.NewScanner(said); lines.Scan(); {
			p.heard <- lines.Text()
		}
		close(p.heard)
	}()
	go func() {
		p.Status <- c.RunWith(in, out, &p.Errs, args...)
		out.Close()
	}()
	return p
}

// Main runs the tests of a package with a state folder of their own, so that they keep
// nothing in that of the person, and ends them. afterwards takes away what else they left.
func Main(m *testing.M, afterwards ...func()) {
	flag.Parse()
	if usual := flag.Lookup("test.parallel"); usual.Value.String() == usual.DefValue { // what runs at the same time mostly waits
		flag.Set("test.parallel", "8")
	}
	layInMemory()
	state, err := os.MkdirTemp("", "capscye-state")
	if err != nil {
		panic(err)
	}
	os.Setenv("XDG_STATE_HOME", state)
	status := m.Run()
	os.RemoveAll(state)
	for _, f := range afterwards {
		f()
	}
	os.Exit(status)
}
