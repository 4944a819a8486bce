package screen

import (
	"capscye/ui/console"
	"capscye/ui/desk"
	"capscye/ui/roster"
	"capscye/worksheets"
)

// Every message that reaches the root besides those of the terminal.

// openedMsg brings a worksheet to the table. note is to be said with it.
type openedMsg struct {
	doc  *worksheets.Document
	note string
	err  error

	guard  *worksheets.Recovery // the place that guards what is not saved
	left   worksheets.Leftover  // by earlier runs
	copies []worksheets.Sheet   // what lies beside it
}

// guardedMsg says how guarding what is not saved went.
type guardedMsg struct {
	desk *desk.Desk
	err  error
}

// faultMsg says that a command ran into a fault of the program.
type faultMsg struct{ fault console.Fault }

// savedMsg says how a save went; desk is whose it was.
type savedMsg struct {
	desk *desk.Desk
	desk.Outcome
}

// copySavedMsg says how saving a copy as its own file went.
type copySavedMsg struct {
	desk  *desk.Desk
	sheet worksheets.Sheet
	path  string
	err   error
}

// printedMsg says how writing a card went.
type printedMsg struct {
	name, lost string
	err        error
}

// signalMsg asks for the end, as the system does it.
type signalMsg struct{ status int }

// listedMsg brings the worksheets of the folder, to open one or to take from it.
type listedMsg struct {
	found  []roster.Row
	err    error
	taking *desk.Taking
}

// takenMsg brings the sheet that a section is taken from.
type takenMsg struct {
	section worksheets.Section
	from    *worksheets.Document
	err     error
}
