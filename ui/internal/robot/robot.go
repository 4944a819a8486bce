// Package robot is a person at a screen, for tests: it presses keys and reads lines.
package robot

import (
	"strings"
	"testing"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/mattn/go-runewidth"
)

// Pasted is a text as it comes from a paste.
func Pasted(text string) tea.KeyMsg {
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true}
}

// Robot is a person at the screen: it presses keys and reads lines. Commands
// run at once, so a script needs no waiting; on a slow disk they run when the script says so.
type Robot struct {
	T             *testing.T
	Model         tea.Model
	Ended         bool
	Width, Height int  // of the window
	Slow          bool // commands wait for Arrive

	late []tea.Cmd
}

// Arrive runs the commands that wait, those of a slow disk.
func (r *Robot) Arrive() *Robot {
	late := r.late
	r.Slow, r.late = false, nil
	for _, c := range late {
		r.Tell(c())
	}
	return r
}

// Tell gives the screen a message and runs what comes of it to the end.
func (r *Robot) Tell(msg tea.Msg) {
	queue := []tea.Msg{msg}
	for len(queue) > 0 {
		next := queue[0]
		queue = queue[1:]
		switch next := next.(type) {
		case nil:
			continue
		case tea.QuitMsg:
			r.Ended = true
			continue
		case tea.BatchMsg:
			for _, c := range next {
				if c != nil {
					queue = append(queue, c())
				}
			}
			continue
		case tea.WindowSizeMsg:
			r.Width, r.Height = next.Width, next.Height
		}
		_, cmd := r.Model.Update(next)
		switch {
		case cmd == nil:
		case r.Slow:
			r.late = append(r.late, cmd)
		default:
			queue = append(queue, cmd())
		}
	}
}

var keyTypes = map[string]tea.KeyType{
	"tab": tea.KeyTab, "shift+tab": tea.KeyShiftTab, "enter": tea.KeyEnter, "esc": tea.KeyEsc,
	"up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight,
	"pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "home": tea.KeyHome, "end": tea.KeyEnd,
	"backspace": tea.KeyBackspace, "delete": tea.KeyDelete, "ctrl+c": tea.KeyCtrlC, "ctrl+s": tea.KeyCtrlS,
	"ctrl+a": tea.KeyCtrlA, "ctrl+b": tea.KeyCtrlB, "ctrl+z": tea.KeyCtrlZ, "ctrl+y": tea.KeyCtrlY, "ctrl+t": tea.KeyCtrlT, "ctrl+o": tea.KeyCtrlO, "ctrl+k": tea.KeyCtrlK, "ctrl+r": tea.KeyCtrlR, "ctrl+n": tea.KeyCtrlN, "ctrl+d": tea.KeyCtrlD, "ctrl+e": tea.KeyCtrlE, "ctrl+l": tea.KeyCtrlL, "ctrl+f": tea.KeyCtrlF, "ctrl+g": tea.KeyCtrlG, "ctrl+x": tea.KeyCtrlX, "ctrl+p": tea.KeyCtrlP, "ctrl+u": tea.KeyCtrlU,
	"f1": tea.KeyF1, "f2": tea.KeyF2, "f3": tea.KeyF3, "f4": tea.KeyF4, "f5": tea.KeyF5, "f6": tea.KeyF6,
}

// Key is a key by its name, or a single character.
func (r *Robot) Key(name string) tea.KeyMsg {
	r.T.Helper()
	kind, ok := keyTypes[name]
	switch {
	case ok:
		return tea.KeyMsg{Type: kind}
	case name == " ":
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	case utf8.RuneCountInString(name) != 1:
		r.T.Fatalf("the robot knows no key %q", name)
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// Press presses keys by name; a single character is typed.
func (r *Robot) Press(keys ...string) *Robot {
	r.T.Helper()
	for _, k := range keys {
		r.Tell(r.Key(k))
	}
	return r
}

// Types types a text, one character after the other.
func (r *Robot) Types(text string) *Robot {
	r.T.Helper()
	for _, c := range text {
		r.Press(string(c))
	}
	return r
}

// Screen is what is to be seen, without styles and without spaces at line ends.
func (r *Robot) Screen() string {
	var lines []string
	for _, l := range strings.Split(ansi.Strip(r.Model.View()), "\n") {
		lines = append(lines, strings.TrimRight(l, " "))
	}
	return strings.Join(lines, "\n")
}

// Sees fails unless every text stands on the screen.
func (r *Robot) Sees(texts ...string) *Robot {
	r.T.Helper()
	screen := r.Screen()
	for _, text := range texts {
		if !strings.Contains(screen, text) {
			r.T.Errorf("%q is not on the screen:\n%s", text, screen)
		}
	}
	return r
}

// DoesNotSee fails if a text stands on the screen.
func (r *Robot) DoesNotSee(text string) *Robot {
	r.T.Helper()
	if screen := r.Screen(); strings.Contains(screen, text) {
		r.T.Errorf("%q is on the screen:\n%s", text, screen)
	}
	return r
}

// Fits fails if a line is wider than the window or there are too many.
func (r *Robot) Fits() *Robot {
	r.T.Helper()
	lines := strings.Split(r.Model.View(), "\n")
	for _, l := range lines {
		plain := ansi.Strip(l)
		if len(plain) <= r.Width { // no sign takes more cells than bytes
			continue
		}
		if w := max(ansi.StringWidth(plain), byCharacter(plain)); w > r.Width {
			r.T.Fatalf("a line has %d cells in a window of %d:\n%q", w, r.Width, l)
		}
	}
	if len(lines) > r.Height {
		r.T.Fatalf("%d lines in a window of %d x %d", len(lines), r.Width, r.Height)
	}
	return r
}

// byCharacter is how many cells a line takes in a terminal that knows of no clusters.
func byCharacter(line string) (width int) {
	for _, c := range line {
		width += runewidth.RuneWidth(c)
	}
	return width
}
