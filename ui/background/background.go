// Package background keeps the terminal from being asked for its colours.
//
// At the version in use, bubbletea asks for the terminal's background while it
// initialises, even when all that was wanted is --version: a terminal that does
// not answer costs five seconds, and one that does answer can swallow the first
// keys. The answer is not needed here, for every style uses the terminal's own
// sixteen colours. Setting it beforehand stops the question, provided that this
// package is initialised first: it imports lipgloss and nothing else, and its
// path sorts before github.com/charmbracelet/bubbletea, which is the order of
// initialisation in Go.
package background

import "github.com/charmbracelet/lipgloss"

func init() { lipgloss.SetHasDarkBackground(true) }
