package ui_test

import (
	"errors"
	"strings"
	"testing"

	"capscye/ui/console"
)

// A fault outside the screen ends with its status and a report, too.
func TestAFaultWithoutAScreen(t *testing.T) {
	status, out, errs := 0, &strings.Builder{}, &strings.Builder{}
	status = runWith(faultyReader{}, out, errs, "show", "-")
	if status != console.ExitFault || !strings.Contains(errs.String(), "a fault of its own") || strings.Contains(errs.String(), "private") {
		t.Errorf("status %d, %s", status, errs)
	}
}

type faultyReader struct{}

func (faultyReader) Read([]byte) (int, error) { panic(errors.New("private")) }
