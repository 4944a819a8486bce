package ui

import (
	"os"
	"testing"
)

// Hooks of the tests that run real programs, which not every system can.
var (
	insteadOfTests func() // makes the test binary another program, where it was started as one
	afterTests     func() // takes away what they left
)

// TestMain gives the tests a state folder of their own, so that they keep nothing
// in that of the person.
func TestMain(m *testing.M) {
	if insteadOfTests != nil {
		insteadOfTests()
	}
	state, err := os.MkdirTemp("", "capscye-state")
	if err != nil {
		panic(err)
	}
	os.Setenv("XDG_STATE_HOME", state)
	status := m.Run()
	os.RemoveAll(state)
	if afterTests != nil {
		afterTests()
	}
	os.Exit(status)
}
