package screen

import (
	"os"
	"testing"

	"github.com/muesli/termenv"
)

// Without colour, what is under the hands is still reversed and bold.
func TestNoColourKeepsTheCursor(t *testing.T) {
	st := newStyles(os.Stdout, termenv.ANSI, false)
	if got := st.here.Render("x"); got != "\x1b[7mx\x1b[0m" {
		t.Errorf("%q", got)
	}
	coloured := newStyles(os.Stdout, termenv.ANSI, true)
	if got := coloured.stop.Render("x"); got != "\x1b[1;31mx\x1b[0m" {
		t.Errorf("%q", got)
	}
}
