package screen

import (
	"errors"
	"fmt"
	"os"
	"testing"

	"capscye/ui/desk"
	"capscye/ui/forms"
	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/worksheets"
)

// On every page of the screen, narrow and wide by turns, no payload comes through.
func TestNoPayloadReachesTheScreen(t *testing.T) {
	tour := []string{
		"f1", "tab", "ctrl+f", "down", "esc", "f2", "f3", "ctrl+f", "esc", "f4", "f5", "down", "w", "down", "esc", "pgup", "f6", "down", "right", "t", "down", "esc",
		"n", "x", "esc", "c", "ctrl+o", "down", "down", "enter", "esc", "ctrl+o", "esc", "ctrl+r", "pgdown", "esc", "ctrl+e", "esc", "ctrl+k", "esc",
		"f1", "up", "ctrl+l", "f3", "up", "ctrl+g", "ctrl+x", "right", "s", "esc", "ctrl+x", "down", "esc", "ctrl+d", "1", "enter", "?", "esc", "esc", "ctrl+s",
	}
	sizes := [][2]int{{80, 24}, {140, 50}}
	for i, p := range props.Payloads {
		if i%3 != 0 && !props.Thorough() {
			continue
		}
		file := props.LayHostile(t, p)
		for _, size := range sizes[i%2 : i%2+1] {
			d, err := worksheets.Load(file)
			if err != nil {
				t.Fatalf("%q: %v", p, err)
			}
			r := sit(t, d, size[0], size[1])
			look := func(where string) {
				t.Helper()
				if view := r.Model.View(); props.Acts(view) {
					t.Fatalf("%q comes through %s:\n%q", p, where, view)
				}
				r.Fits()
			}
			for range len(forms.Items[forms.Body]) { // with the hands on every field
				look("the form")
				r.Press("tab")
			}
			for i, k := range tour {
				r.Press(k)
				look(fmt.Sprintf("key %d, %s", i, k))
			}
			os.WriteFile(file, append([]byte("# theirs\n"), props.HostileSheet(p)...), 0o644) // as another program would
			r.Press("f1").Types("15").Press("enter")
			look("the news of a conflict")
			r.Press("ctrl+s")
			look("the question about a conflict")
			r.Press("t")
			look("taking theirs")
			rootOf(r).opened(openedMsg{err: errors.New(p), note: p})
			look("an error")
			rootOf(r).front = rootOf(r).askBegin(file)
			look("the offer to begin")
			r.Tell(savedMsg{rootOf(r).desk, desk.Outcome{Doc: rootOf(r).desk.Doc, Named: true, Err: errors.New(p)}})
			look("the question for a name")
			r.Press("ctrl+u").Tell(robot.Pasted(p))
			look("a name that is pasted")
		}
	}
}
