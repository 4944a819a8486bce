// Bare is the smallest program on the same terminal libraries: eight lines of
// input on the whole screen, and nothing else. ui/harness_test.go measures
// capscye beside it. Frame rate, cursor and the answer about the background are
// those of capscye, or the two could not be compared.
package main

import (
	"strings"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	_ "capscye/ui/background"
)

type bare struct {
	fields [8]textinput.Model
	at     int
}

func (b bare) Init() tea.Cmd { return nil }

func (b bare) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if key, ok := msg.(tea.KeyMsg); ok {
		switch key.Type {
		case tea.KeyCtrlC:
			return b, tea.Quit
		case tea.KeyTab:
			b.fields[b.at].Blur()
			b.at = (b.at + 1) % len(b.fields)
			b.fields[b.at].Focus()
			return b, nil
		}
	}
	var cmd tea.Cmd
	b.fields[b.at], cmd = b.fields[b.at].Update(msg)
	return b, cmd
}

func (b bare) View() string {
	var out strings.Builder
	for i := range b.fields {
		out.WriteString(b.fields[i].View() + "\n")
	}
	return out.String() + "^c end"
}

func main() {
	var b bare
	for i := range b.fields {
		b.fields[i] = textinput.New()
		b.fields[i].Cursor.SetMode(cursor.CursorStatic)
	}
	b.fields[0].Focus()
	if _, err := tea.NewProgram(b, tea.WithAltScreen(), tea.WithFPS(120)).Run(); err != nil {
		panic(err)
	}
}
