//go:build linux

package screen

import (
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/creack/pty"

	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
)

// From one cell to more than any desk has, the real program starts, shows something
// that fits, and works.
func TestWindowsOfAnySize(t *testing.T) {
	for _, size := range []pty.Winsize{{Rows: 1, Cols: 1}, {Rows: 1, Cols: 500}, {Rows: 200, Cols: 1}, {Rows: 15, Cols: 59}, {Rows: 16, Cols: 60}, {Rows: 200, Cols: 500}} {
		folder, term := program.Sewing(t, false)
		if err := pty.Setsize(term.File, &size); err != nil {
			t.Fatal(err)
		}
		term.Types("14 1/8\r")
		program.Await(t, "it to be saved", func() bool { return strings.Contains(props.Read(t, filepath.Join(folder, "blouse.toml")), "14 1/8") })
		term.Types("\x03")
		if status := term.Ends(); status != 0 {
			t.Errorf("%v: status %d", size, status)
		}
		term.GivenBack()
	}
	r := sitWithFile(t, "choir-blouse", 80, 24) // every size on every page, without the terminal
	for _, page := range []string{"f1", "f2", "f3", "f4", "f5", "f6", "t", "esc", "ctrl+o", "esc", "ctrl+k", "esc", "ctrl+r", "esc", "ctrl+l", "ctrl+x", "esc", "ctrl+d"} {
		r.Press(page)
		for width := 1; width <= 500; width += 1 + width/4 {
			for height := 1; height <= 200; height += 1 + height/2 {
				r.Tell(tea.WindowSizeMsg{Width: width, Height: height})
				r.Fits()
			}
		}
	}
}
