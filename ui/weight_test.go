//go:build linux

package ui_test

import (
	"bytes"
	"os"
	"testing"

	"capscye/ui"
	"capscye/ui/internal/program"
)

// A template that is run finds methods by their names, so the linker has to keep
// every method of every library: 3 MB of the program, for one line of --version.
// The libraries take care not to run any, as long as nobody gives them one.
func TestNoTemplatesAreLinked(t *testing.T) {
	path, err := program.Binary()
	if err != nil {
		t.Fatal(err)
	}
	built, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(built, []byte("capscye/ui.Run")) {
		t.Fatal("the names of functions are not where this test looks for them")
	}
	if bytes.Contains(built, []byte("text/template.(*state).evalField")) {
		t.Error("the program runs text templates")
	}
}

func TestVersionIsOneLine(t *testing.T) {
	for _, args := range [][]string{{"--version"}, {"-v"}, {"--version", "a", "b"}} {
		if status, out, errs := run("", args...); status != 0 || out != "capscye "+ui.Version+"\n" || errs != "" {
			t.Errorf("%v: status %d, %q, %q", args, status, out, errs)
		}
	}
}
