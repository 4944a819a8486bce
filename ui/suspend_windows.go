package ui

import tea "github.com/charmbracelet/bubbletea"

// passSuspension has nothing to do: Windows suspends no program from outside.
func passSuspension(*tea.Program) (stop func()) { return func() {} }
