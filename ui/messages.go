package ui

import (
	"capscye/units"
	"capscye/worksheets"
)

// Every message that reaches the root besides those of the terminal.

// openedMsg brings a worksheet to the table. note is to be said with it.
type openedMsg struct {
	doc  *worksheets.Document
	note string
	err  error
}

// savedMsg says how a save went. doc is the copy that was saved, as the file
// has it now; sheet is what it said when the save began; desk is whose it was.
type savedMsg struct {
	desk   *desk
	doc    *worksheets.Document
	sheet  worksheets.Sheet
	named  bool   // it was the first save under a name that was just given
	backup string // where the earlier content was kept, if it had to be
	err    error
}

// printedMsg says how writing a card went.
type printedMsg struct {
	name, lost string
	err        error
}

// signalMsg asks for the end, as the system does it.
type signalMsg struct{ status int }

// listedMsg brings the worksheets of the folder.
type listedMsg struct {
	found []rosterRow
	err   error
}

// wish is what a part wants done. The root grants it.
type wish struct {
	kind wishKind
	path string
	unit units.System
	ask  bool // wishSave: ask first what to do about a file that was changed elsewhere
	over bool // wishSaveAs: write over what something else wrote, keeping it beside
	drop bool // wishOpen and its like: leave what is not saved
	ease *easeChange
}

type wishKind uint8

const (
	wishNothing wishKind = iota
	wishSave             // to the sheet's file, asking for a name if it has none
	wishSaveAs           // to path
	wishLose             // save, though the comments of the file go
	wishTheirs           // open the file again, keeping what is here beside it
	wishOpen             // the file at path
	wishExample          // the built-in sheet named path
	wishBegin            // a new sheet at path in unit
	wishName             // ask for the name of a new sheet
	wishList             // the folder's worksheets
	wishKeys             // the page of keys
	wishWorking          // the arithmetic, from the figure at hand on
	wishTable            // the step at the table, as large as the screen
	wishCard             // the card as a PDF beside the sheet
	wishNote             // ask what a test garment showed
	wishEase             // change the ease by what a fitting showed
	wishBack             // away with what is in front
	wishQuit
)
