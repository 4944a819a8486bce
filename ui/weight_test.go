//go:build linux

package ui

import (
	"bytes"
	"os"
	"testing"
)

// A template that is run finds methods by their names, so the linker has to keep
// every method of every library: 3 MB of the program, for one line of --version.
// The libraries take care not to run any, as long as nobody gives them one.
func TestNoTemplatesAreLinked(t *testing.T) {
	path, err := binary()
	if err != nil {
		t.Fatal(err)
	}
	program, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(program, []byte("capscye/ui.Run")) {
		t.Fatal("the names of functions are not where this test looks for them")
	}
	if bytes.Contains(program, []byte("text/template.(*state).evalField")) {
		t.Error("the program runs text templates")
	}
}

func TestVersionIsOneLine(t *testing.T) {
	for _, args := range [][]string{{"--version"}, {"-v"}, {"--version", "a", "b"}} {
		if status, out, errs := run("", args...); status != 0 || out != "capscye "+Version+"\n" || errs != "" {
			t.Errorf("%v: status %d, %q, %q", args, status, out, errs)
		}
	}
}
