package ui_test

import (
	"bytes"
	"io"
	"strings"
	"testing"

	"capscye/ui"
	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
)

func TestMain(m *testing.M) { props.Main(m, program.Remove) }

// run runs the program without a terminal.
func run(in string, args ...string) (status int, out, errs string) {
	var o, e bytes.Buffer
	status = runWith(strings.NewReader(in), &o, &e, args...)
	return status, o.String(), e.String()
}

// runWith runs it with streams of its own.
func runWith(in io.Reader, out, errs io.Writer, args ...string) (status int) {
	return ui.RunOn(props.SomeDay, args, in, out, errs)
}
