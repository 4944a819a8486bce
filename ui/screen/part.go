package screen

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"
)

// part is one thing that can be in front of the desk. It draws itself for a size, and
// answers a key with what it wants.
type part interface {
	render(width, height int) string
	key(msg tea.KeyMsg) wish
}

// wish is what a part wants done, a small value that says all there is to know about
// it; nil wants nothing. What embeds wanted is one, and nothing else. Only the root
// grants, which makes commands of it.
type wish interface{ isWanted() }

type wanted struct{}

func (wanted) isWanted() {}

// Wishes of any part.
type (
	toGoBack struct{ wanted } // away with what is in front
	toQuit   struct{ wanted }
)

// named gives a part that takes no text the name of a key. With a paste no key was
// pressed.
func named(msg tea.KeyMsg, press func(name string) wish) wish {
	if msg.Paste {
		return nil
	}
	return press(msg.String())
}

// unless is the way that a key goes: on, unless it is one of those that go back.
func unless(name string, back ...string) int {
	if slices.Contains(back, name) {
		return -1
	}
	return 1
}
