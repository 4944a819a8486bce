package screen

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/desk"
	"capscye/ui/paper"
	"capscye/ui/report"
	"capscye/ui/roster"
	"capscye/worksheets"
)

// What the screen reads and writes while it runs, but for the end of the guard against a
// crash; what it begins with is read in run.go, and whether a name is free is asked where
// it is typed.

// safely makes a command of what may run into a fault of the program: in a
// goroutine of its own that would leave the terminal as it is.
func safely(run func() tea.Msg) tea.Cmd {
	return func() (msg tea.Msg) {
		defer func() {
			if r := recover(); r != nil {
				msg = faultMsg{console.NewFault(r)}
			}
		}()
		return run()
	}
}

// openFile opens a worksheet, and lets the one before go.
func openFile(path string, before *worksheets.Recovery) tea.Cmd {
	return safely(func() tea.Msg {
		d, name, err := console.LoadNamed(path)
		if err != nil {
			return openedMsg{err: err}
		}
		return opening(d, name, before)
	})
}

// letGo gives up the place of a sheet that is saved, or that the person agreed to
// leave as it is.
func letGo(place *worksheets.Recovery) {
	_ = place.Drop() // at worst it is offered once more
	place.Close()
}

// opening is a document with the place where what is not saved of it is guarded, and
// what was left there.
func opening(d *worksheets.Document, name string, before *worksheets.Recovery) openedMsg {
	letGo(before)
	msg := openedMsg{doc: d, guard: worksheets.OpenRecovery(name)}
	msg.left, _ = msg.guard.Left()
	return msg
}

// beginFile makes a new worksheet and its file at once, so that everything typed
// from then on has a file to be saved in.
func beginFile(n newSheet, before *worksheets.Recovery) tea.Cmd {
	return safely(func() tea.Msg {
		var s worksheets.Sheet
		if n.taking == nil {
			s = n.sheet()
		} else {
			from, err := worksheets.Load(n.taking.From)
			if err != nil {
				return openedMsg{err: err}
			}
			s = n.takingFrom(from.Sheet)
		}
		d, err := console.Begun(n.path, s)
		if err != nil {
			return openedMsg{err: err}
		}
		return opening(d, n.path, before)
	})
}

// openExample opens a built-in sheet, which has no file.
func openExample(name string, before *worksheets.Recovery) tea.Cmd {
	return safely(func() tea.Msg { return openingExample(name, before) })
}

func openingExample(name string, before *worksheets.Recovery) openedMsg {
	d, err := worksheets.Example(name)
	if err != nil {
		return openedMsg{err: err}
	}
	return opening(d, "example "+name, before)
}

func listFolder(today time.Time, t *desk.Taking) tea.Cmd {
	return safely(func() tea.Msg {
		found, err := roster.Rows(".", today)
		return listedMsg{found, err, t}
	})
}

// readSource reads the sheet that a section is taken from.
func readSource(t desk.Taking) tea.Cmd {
	return safely(func() tea.Msg {
		d, err := worksheets.Load(t.From)
		return takenMsg{t.Section, d, err}
	})
}

// takeTheirs opens the file as something else wrote it; what was changed here is
// put aside, and the copies follow.
func takeTheirs(d worksheets.Document, copies []worksheets.Sheet, place *worksheets.Recovery) tea.Cmd {
	return safely(func() tea.Msg {
		beside, err := d.KeepBeside()
		if err != nil {
			return openedMsg{err: err}
		}
		theirs, err := worksheets.Load(d.Path())
		if err != nil {
			return openedMsg{err: err}
		}
		theirs.Sheet.Drafts = d.Sheet.Drafts // no file has them
		return openedMsg{doc: theirs, note: "What was changed here is safe in " + beside + ".",
			copies: desk.Following(copies, d.Sheet, theirs.Sheet), guard: place}
	})
}

// saveFile saves a copy, so that the table can go on changing the sheet. A path
// of its own gives the sheet its name.
func saveFile(k *desk.Desk, path string, over bool) tea.Cmd {
	d := *k.Doc
	named := path != d.Path()
	if named {
		d.GoOnIn(path)
	}
	before := k.GuardedBy()
	return safely(func() tea.Msg {
		s := desk.Outcome{Doc: &d, Sheet: d.Sheet, Named: named}
		save := d.Save
		if over {
			save = d.SaveOver
		}
		if s.Backup, s.Err = save(); s.Err == nil && named && before != nil {
			letGo(before)
			s.Place = worksheets.OpenRecovery(path)
		}
		return savedMsg{k, s}
	})
}

// guardList guards what is not saved against a crash.
func guardList(d *desk.Desk, list []worksheets.Sheet) tea.Cmd {
	place := d.GuardedBy()
	return safely(func() tea.Msg {
		if len(list) == 0 {
			return guardedMsg{d, place.Drop()}
		}
		return guardedMsg{d, place.Keep(worksheets.Leftover{At: time.Now(), Versions: list})}
	})
}

// saveCopy writes the copy at hand to a file of its own.
func saveCopy(k *desk.Desk, path string) tea.Cmd {
	d, saved := k.HandAlone(), *k.Sheet()
	return safely(func() tea.Msg { return copySavedMsg{k, saved, path, d.SaveCopy(path)} })
}

// printFile writes the card of a report beside its sheet.
func printFile(sheet string, r report.Report, today time.Time) tea.Cmd {
	return safely(func() tea.Msg {
		name, err := paper.NameFor(sheet)
		if err != nil {
			return printedMsg{err: err}
		}
		w, err := paper.Write(name, "", r, today)
		return printedMsg{name, w.Lost, err}
	})
}
