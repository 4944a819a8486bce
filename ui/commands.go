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
		return openedMsg{doc: d, err: err}
	}
}

func openExample(name string) tea.Cmd {
	return func() tea.Msg {
		d, err := worksheets.Example(name)
		return openedMsg{doc: d, err: err}
	}
}

func listFolder(today time.Time) tea.Cmd {
	return func() tea.Msg {
		found, err := rosterRows(".", today)
		return listedMsg{found, err}
	}
}

// beginFile makes a new sheet and its file at once, so that everything typed
// from then on has a place to be kept.
func beginFile(path string, sys units.System) tea.Cmd {
	return func() tea.Msg {
		d := worksheets.New(begin(sys))
		d.SetPath(path)
		_, err := d.Save()
		return openedMsg{doc: d, err: err}
	}
}

// takeTheirs opens the file as something else wrote it; what was changed here is
// kept beside it.
func takeTheirs(d worksheets.Document) tea.Cmd {
	return func() tea.Msg {
		beside, err := d.KeepBeside()
		if err != nil {
			return openedMsg{err: err}
		}
		theirs, err := worksheets.Load(d.Path())
		return openedMsg{theirs, "What was changed here is kept in " + beside + ".", err}
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
