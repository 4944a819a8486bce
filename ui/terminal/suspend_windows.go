package terminal

import tea "github.com/charmbracelet/bubbletea"

// PassSuspension has nothing to do: Windows suspends no program from outside.
func PassSuspension(*tea.Program) (stop func()) { return func() {} }
