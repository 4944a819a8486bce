package parts

import (
	"os"
	"testing"

	"github.com/muesli/termenv"
)

// Without colour, what is under the hands is still reversed and bold.
func TestNoColourKeepsTheCursor(t *testing.T) {
	st := NewStyles(os.Stdout, termenv.ANSI, false)
	if got := st.Here.Render("x"); got != "\x1b[7mx\x1b[0m" {
		t.Errorf("%q", got)
	}
	coloured := NewStyles(os.Stdout, termenv.ANSI, true)
	if got := coloured.Stop.Render("x"); got != "\x1b[1;31mx\x1b[0m" {
		t.Errorf("%q", got)
	}
}
