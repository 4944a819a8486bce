// Package parts has what lies in front of a worksheet on the screen and looks at none: a
// question, a name to be typed, a text that scrolls; and what those and the worksheet are
// made of, its styles, a line of input, and the keys at the bottom.
package parts

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"
)

// Part is one thing that can be in front of a worksheet. It draws itself for a size, and
// answers a key with what it wants.
type Part interface {
	Render(width, height int) string
	Key(msg tea.KeyMsg) Wish
}

// Wish is what a part wants done, a small value that says all there is to know about
// it; nil wants nothing. What embeds Wanted is one, and nothing else. Only the root of the
// screen grants, which makes commands of it.
type Wish interface{ isWanted() }

// Wanted is in every wish.
type Wanted struct{}

func (Wanted) isWanted() {}

// Wishes of any part.
type (
	ToGoBack struct{ Wanted } // away with what is in front
	ToQuit   struct{ Wanted }
)

// Named gives a part that takes no text the name of a key. With a paste no key was
// pressed.
func Named(msg tea.KeyMsg, press func(name string) Wish) Wish {
	if msg.Paste {
		return nil
	}
	return press(msg.String())
}

// By is by how much a key moves: by 1, or where it is one of those that go back, by -1.
func By(name string, back ...string) int {
	if slices.Contains(back, name) {
		return -1
	}
	return 1
}
