package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"capscye/worksheets"
)

// robot is a person at the screen: it presses keys and reads lines. Commands
// run at once, so a script needs no waiting.
type robot struct {
	t             *testing.T
	model         tea.Model
	ended         bool
	width, height int // of the window
}

// rootOf is the screen that a robot sits at.
func rootOf(r *robot) *root { return r.model.(*root) }

// someDay is when the tests take place.
var someDay = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

// sit opens a document in a window.
func sit(t *testing.T, d *worksheets.Document, width, height int) *robot {
	t.Helper()
	m := &root{styles: newStyles(os.Stdout, termenv.Ascii, false), today: someDay}
	r := &robot{t: t, model: m}
	if d != nil {
		m.opened(openedMsg{doc: d})
	}
	r.tell(tea.WindowSizeMsg{Width: width, Height: height})
	return r
}

// sitWithExample opens a built-in sheet, which has no file.
func sitWithExample(t *testing.T, name string, width, height int) *robot {
	t.Helper()
	d, err := worksheets.Example(name)
	if err != nil {
		t.Fatal(err)
	}
	return sit(t, d, width, height)
}

// sitWithFile copies a built-in sheet into an empty folder and opens it there.
func sitWithFile(t *testing.T, name string, width, height int) *robot {
	t.Helper()
	lay(t, name)
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	return sit(t, d, width, height)
}

// sourceFolder is the top of the project, "" for a test binary that was started
// elsewhere; tests leave the folder they start in.
var sourceFolder = func() string {
	folder, err := os.Getwd()
	if err != nil {
		panic(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(folder, "go.mod")); err == nil {
			return folder
		}
		if filepath.Dir(folder) == folder {
			return ""
		}
		folder = filepath.Dir(folder)
	}
}()

// tell gives the screen a message and runs what comes of it to the end.
func (r *robot) tell(msg tea.Msg) {
	queue := []tea.Msg{msg}
	for len(queue) > 0 {
		next := queue[0]
		queue = queue[1:]
		switch next := next.(type) {
		case nil:
			continue
		case tea.QuitMsg:
			r.ended = true
			continue
		case tea.BatchMsg:
			for _, c := range next {
				if c != nil {
					queue = append(queue, c())
				}
			}
			continue
		case tea.WindowSizeMsg:
			r.width, r.height = next.Width, next.Height
		}
		if _, cmd := r.model.Update(next); cmd != nil {
			queue = append(queue, cmd())
		}
	}
}

var keyTypes = map[string]tea.KeyType{
	"tab": tea.KeyTab, "shift+tab": tea.KeyShiftTab, "enter": tea.KeyEnter, "esc": tea.KeyEsc,
	"up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight,
	"pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "home": tea.KeyHome, "end": tea.KeyEnd,
	"backspace": tea.KeyBackspace, "delete": tea.KeyDelete, "ctrl+c": tea.KeyCtrlC, "ctrl+s": tea.KeyCtrlS,
	"ctrl+z": tea.KeyCtrlZ, "ctrl+y": tea.KeyCtrlY, "ctrl+t": tea.KeyCtrlT, "ctrl+o": tea.KeyCtrlO, "ctrl+k": tea.KeyCtrlK, "ctrl+r": tea.KeyCtrlR, "ctrl+n": tea.KeyCtrlN, "ctrl+d": tea.KeyCtrlD, "ctrl+e": tea.KeyCtrlE, "ctrl+l": tea.KeyCtrlL, "ctrl+f": tea.KeyCtrlF, "ctrl+g": tea.KeyCtrlG, "ctrl+x": tea.KeyCtrlX, "ctrl+p": tea.KeyCtrlP, "ctrl+u": tea.KeyCtrlU,
	"f1": tea.KeyF1, "f2": tea.KeyF2, "f3": tea.KeyF3, "f4": tea.KeyF4, "f5": tea.KeyF5, "f6": tea.KeyF6,
}

// key is a key by its name, or a single character.
func (r *robot) key(name string) tea.KeyMsg {
	r.t.Helper()
	kind, ok := keyTypes[name]
	switch {
	case ok:
		return tea.KeyMsg{Type: kind}
	case name == " ":
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	case utf8.RuneCountInString(name) != 1:
		r.t.Fatalf("the robot knows no key %q", name)
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// press presses keys by name; a single character is typed.
func (r *robot) press(keys ...string) *robot {
	r.t.Helper()
	for _, k := range keys {
		r.tell(r.key(k))
	}
	return r
}

// types types a text, one character after the other.
func (r *robot) types(text string) *robot {
	r.t.Helper()
	for _, c := range text {
		r.press(string(c))
	}
	return r
}

// screen is what is to be seen, without styles and without spaces at line ends.
func (r *robot) screen() string {
	var lines []string
	for _, l := range strings.Split(ansi.Strip(r.model.View()), "\n") {
		lines = append(lines, strings.TrimRight(l, " "))
	}
	return strings.Join(lines, "\n")
}

// sees fails unless every text stands on the screen.
func (r *robot) sees(texts ...string) *robot {
	r.t.Helper()
	screen := r.screen()
	for _, text := range texts {
		if !strings.Contains(screen, text) {
			r.t.Errorf("%q is not on the screen:\n%s", text, screen)
		}
	}
	return r
}

func (r *robot) doesNotSee(text string) *robot {
	r.t.Helper()
	if screen := r.screen(); strings.Contains(screen, text) {
		r.t.Errorf("%q is on the screen:\n%s", text, screen)
	}
	return r
}

// fits fails if a line is wider than the window or there are too many.
func (r *robot) fits() *robot {
	r.t.Helper()
	lines := strings.Split(r.model.View(), "\n")
	for _, l := range lines {
		if w := ansi.StringWidth(l); w > r.width {
			r.t.Fatalf("a line has %d cells in a window of %d:\n%q", w, r.width, l)
		}
	}
	if len(lines) > r.height {
		r.t.Fatalf("%d lines in a window of %d x %d", len(lines), r.width, r.height)
	}
	return r
}
