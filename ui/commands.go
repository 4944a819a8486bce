package ui

import (
	"errors"
	"io/fs"
	"os"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/units"
	"capscye/worksheets"
)

// All input and output of the screen is here.

func openFile(path string) tea.Cmd {
	return func() tea.Msg {
		d, err := worksheets.Load(path)
		return openedMsg{d, err}
	}
}

func openExample(name string) tea.Cmd {
	return func() tea.Msg {
		d, err := worksheets.Example(name)
		return openedMsg{d, err}
	}
}

func listFolder() tea.Cmd {
	return func() tea.Msg {
		found, err := worksheets.List(".")
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
		return openedMsg{d, err}
	}
}

// saveFile saves a copy, so that the table can go on changing the sheet.
func saveFile(d worksheets.Document, over bool) tea.Cmd {
	return func() tea.Msg {
		sheet, save := d.Sheet, d.Save
		if over {
			save = d.SaveOver
		}
		backup, err := save()
		return savedMsg{&d, sheet, backup, err}
	}
}

// exists tells whether there is anything at the path.
func exists(path string) bool {
	_, err := os.Lstat(path)
	return !errors.Is(err, fs.ErrNotExist)
}
