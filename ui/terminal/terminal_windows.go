package terminal

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// PassSuspension has nothing to do: Windows suspends no program from outside.
func PassSuspension(*tea.Program) (stop func()) { return func() {} }

// comes is not asked: the library reads the keys of Windows itself.
func (k *Keyboard) comes(time.Duration) bool { return true }
