package terminal

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// PasteTailMsg stands for a key that was pressed by a paste.
type PasteTailMsg struct{}

// FloodMsg says that more came from the keyboard than is taken.
type FloodMsg struct{}

// AfterPaste is how long behind a paste, and behind each other, keys count as its
// tail. No hand is as fast, and no terminal that pastes as slow.
const AfterPaste = 100 * time.Millisecond

// WithoutTails keeps a paste from pressing keys: one that holds its own end mark ends
// there, and the rest of it would be keys. The library asks it about every message.
func WithoutTails() func(tea.Model, tea.Msg) tea.Msg {
	var last time.Time
	return func(_ tea.Model, msg tea.Msg) tea.Msg {
		key, ok := msg.(tea.KeyMsg)
		if !ok {
			return msg
		}
		now := time.Now()
		tail := !key.Paste && now.Sub(last) < AfterPaste
		if key.Paste || tail {
			last = now
		}
		if tail {
			return PasteTailMsg{}
		}
		return msg
	}
}
