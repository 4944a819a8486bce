package screen

import (
	"capscye/ui/console"
	"capscye/ui/roster"
	"capscye/units"
	"capscye/worksheets"
)

// Every message that reaches the root besides those of the terminal.

// openedMsg brings a worksheet to the table. note is to be said with it.
type openedMsg struct {
	doc  *worksheets.Document
	note string
	err  error

	recovery *worksheets.Recovery
	left     worksheets.Leftover // by earlier runs
	copies   []worksheets.Sheet  // what lies beside it
}

// guardedMsg says how keeping what is not saved went.
type guardedMsg struct {
	desk *desk
	err  error
}

// faultMsg says that a command ran into a fault of the program.
type faultMsg struct{ fault console.Fault }

// savedMsg says how a save went. doc is the copy that was saved, as the file
// has it now; sheet is what it said when the save began; desk is whose it was.
type savedMsg struct {
	desk   *desk
	doc    *worksheets.Document
	sheet  worksheets.Sheet
	named  bool                 // it was the first save under a name that was just given
	place  *worksheets.Recovery // of that name
	backup string               // where the earlier content was kept, if it had to be
	err    error
}

// copySavedMsg says how saving a copy as its own file went.
type copySavedMsg struct {
	desk  *desk
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
	taking *taking
}

// takenMsg brings the sheet that a section is taken from.
type takenMsg struct {
	section worksheets.Section
	from    *worksheets.Document
	err     error
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

	sheet  *worksheets.Sheet // wishTry
	taking *taking           // wishPick, wishTake
}

type wishKind uint8

const (
	wishNothing  wishKind = iota
	wishSave              // to the sheet's file, asking for a name if it has none
	wishSaveAs            // to path
	wishLose              // save, though the comments of the file go
	wishBeside            // ask for a file of its own, and leave the other to whom changed it
	wishTheirs            // open the file again, keeping what is here beside it
	wishOpen              // the file at path
	wishExample           // the built-in sheet named path
	wishBegin             // a new sheet at path in unit
	wishName              // ask for the name of a new sheet
	wishList              // the folder's worksheets
	wishKeys              // the page of keys
	wishWorking           // the arithmetic, from the figure at hand on
	wishTable             // the step at the table, as large as the screen
	wishCard              // the card as a PDF beside the sheet
	wishWords             // of the trade
	wishDrill             // the sums of the trade
	wishNote              // ask what a test garment showed
	wishEase              // change the ease by what a fitting showed
	wishPick              // choose a sheet to take measurements from
	wishTake              // take them from the one chosen
	wishOffers            // the page of what would make it work
	wishTry               // sheet as a copy beside the sheet
	wishCopies            // the page of the copies beside the sheet
	wishKeepCopy          // the copy at hand becomes the sheet
	wishNameCopy          // ask for the name of the copy at hand
	wishSaveCopy          // the copy at hand as its own file at path
	wishBack              // away with what is in front
	wishQuit
)
