package ui

import (
	"capscye/units"
	"capscye/worksheets"
)

// Every message that reaches the root besides those of the terminal.

// openedMsg brings a worksheet to the table.
type openedMsg struct {
	doc *worksheets.Document
	err error
}

// savedMsg says how a save went. doc is the copy that was saved, as the file
// has it now; sheet is what it said when the save began.
type savedMsg struct {
	doc    *worksheets.Document
	sheet  worksheets.Sheet
	backup string // where the earlier content was kept, if it had to be
	err    error
}

// listedMsg brings the worksheets of the folder.
type listedMsg struct {
	found []worksheets.Listed
	err   error
}

// wish is what a part wants done. The root grants it.
type wish struct {
	kind wishKind
	path string
	unit units.System
	over bool // save even over a file that was changed elsewhere
}

type wishKind uint8

const (
	wishNothing wishKind = iota
	wishSave             // to the sheet's file, asking for a name if it has none
	wishSaveAs           // to path
	wishOpen             // the file at path
	wishExample          // the built-in sheet named path
	wishBegin            // a new sheet at path in unit
	wishName             // ask for the name of a new sheet
	wishList             // the folder's worksheets
	wishKeys             // the page of keys
	wishBack             // away with what is in front
	wishQuit
)
