package ui

// What the tests of the whole program look at besides its streams.
var (
	RunOn    = runOn
	Commands = commands
)
