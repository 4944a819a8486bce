package screen

import (
	"os"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/ui/parts"
	"capscye/worksheets"
)

// rootOf is the screen that a robot sits at.
func rootOf(r *robot.Robot) *root { return r.Model.(*root) }

// sit opens a document in a window.
func sit(t *testing.T, d *worksheets.Document, width, height int) *robot.Robot {
	t.Helper()
	return sitAt(t, &root{styles: parts.NewStyles(os.Stdout, termenv.Ascii, false), today: props.SomeDay}, d, width, height)
}

// sitAt opens a document, if any, on a screen that was made for a test.
func sitAt(t *testing.T, m *root, d *worksheets.Document, width, height int) *robot.Robot {
	t.Helper()
	r := &robot.Robot{T: t, Model: m}
	if d != nil {
		m.opened(openedMsg{doc: d})
	}
	r.Tell(tea.WindowSizeMsg{Width: width, Height: height})
	return r
}

// sitWithExample opens a worksheet that says what a built-in one says, as somebody's own.
func sitWithExample(t *testing.T, name string, width, height int) *robot.Robot {
	t.Helper()
	return sitWithFile(t, name, width, height)
}

// lookAt opens a built-in example itself.
func lookAt(t *testing.T, name string, width, height int) *robot.Robot {
	t.Helper()
	d, err := worksheets.Example(name)
	if err != nil {
		t.Fatal(err)
	}
	return sit(t, d, width, height)
}

// sitWithFile copies a built-in sheet into an empty folder and opens it there.
func sitWithFile(t *testing.T, name string, width, height int) *robot.Robot {
	t.Helper()
	props.Lay(t, name)
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	return sit(t, d, width, height)
}
