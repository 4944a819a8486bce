package desk

import (
	"os"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/muesli/termenv"

	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/worksheets"
)

func TestMain(m *testing.M) { props.Main(m) }

// alone is a desk that nobody stands behind: what it wants is not granted.
type alone struct{ *Desk }

func (a *alone) Init() tea.Cmd { return nil }

func (a *alone) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		a.Resize(msg.Width, msg.Height)
	case tea.KeyMsg:
		a.Key(msg)
	}
	return a, nil
}

func (a *alone) View() string { return a.Render(a.width, a.height) }

// sit lays a worksheet that says what a built-in one says on a desk, in a window.
func sit(t *testing.T, name string, width, height int) (*robot.Robot, *alone) {
	t.Helper()
	props.Lay(t, name)
	doc, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	a := &alone{New(doc, nil, parts.NewStyles(os.Stdout, termenv.Ascii, false), report.Reckoner{Today: props.SomeDay})}
	r := &robot.Robot{T: t, Model: a}
	r.Tell(tea.WindowSizeMsg{Width: width, Height: height})
	return r, a
}
