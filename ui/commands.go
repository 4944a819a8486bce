package ui

import (
	"errors"
	"io/fs"
	"os"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/units"
	"capscye/worksheets"
)

// All input and output of the screen is here.

func openFile(path string) tea.Cmd {
	return func() tea.Msg {
		d, err := worksheets.Load(path)
		if err == nil {
			d.FindOrigins()
		}
		return openedMsg{doc: d, err: err}
	}
}

func openExample(name string) tea.Cmd {
	return func() tea.Msg {
		d, err := worksheets.Example(name)
		return openedMsg{doc: d, err: err}
	}
}

func listFolder(t *taking) tea.Cmd {
	return func() tea.Msg {
		found, err := worksheets.List(".")
		return listedMsg{found, err, t}
	}
}

// readSource reads the sheet that a section is taken from.
func readSource(t taking) tea.Cmd {
	return func() tea.Msg {
		d, err := worksheets.Load(t.from)
		return takenMsg{t.section, d, err}
	}
}

// beginFile makes a new sheet and its file at once, so that everything typed
// from then on has a place to be kept. Where it takes measurements from another
// sheet, it has its unit.
func beginFile(path string, sys units.System, t *taking) tea.Cmd {
	return func() tea.Msg {
		var from *worksheets.Document
		if t != nil {
			var err error
			if from, err = worksheets.Load(t.from); err != nil {
				return openedMsg{err: err}
			}
			sys = from.Sheet.Unit()
		}
		sheet := begin(sys)
		if from != nil {
			sheet.Take(t.section, from.Sheet, t.from)
		}
		d := worksheets.New(sheet)
		d.SetPath(path)
		_, err := d.Save()
		return openedMsg{doc: d, err: err}
	}
}

// takeTheirs opens the file as something else wrote it; what was changed here is
// kept beside it, and the copies follow.
func takeTheirs(d worksheets.Document, copies []worksheets.Sheet) tea.Cmd {
	return func() tea.Msg {
		beside, err := d.KeepBeside()
		if err != nil {
			return openedMsg{err: err}
		}
		theirs, err := worksheets.Load(d.Path())
		if err != nil {
			return openedMsg{err: err}
		}
		return openedMsg{doc: theirs, note: "What was changed here is kept in " + beside + ".",
			copies: following(copies, d.Sheet, theirs.Sheet)}
	}
}

// saveFile saves a copy, so that the table can go on changing the sheet. A path
// of its own gives the sheet its name.
func saveFile(k *desk, path string, over bool) tea.Cmd {
	d := *k.doc
	named := path != d.Path()
	if named {
		d.SetPath(path)
	}
	return func() tea.Msg {
		sheet, save := d.Sheet, d.Save
		if over {
			save = d.SaveOver
		}
		backup, err := save()
		return savedMsg{k, &d, sheet, named, backup, err}
	}
}

// saveCopy writes a copy of a sheet to a file of its own.
func saveCopy(d worksheets.Document, path string) tea.Cmd {
	return func() tea.Msg { return copySavedMsg{d.Sheet, path, d.SaveCopy(path)} }
}

// printFile writes the card of a report beside its sheet.
func printFile(sheet string, r report, today time.Time) tea.Cmd {
	return func() tea.Msg {
		name := cardNameFor(sheet)
		_, lost, err := writeCard(name, "", r, today)
		return printedMsg{name, lost, err}
	}
}

// exists tells whether there is anything at the path.
func exists(path string) bool {
	_, err := os.Lstat(path)
	return !errors.Is(err, fs.ErrNotExist)
}
