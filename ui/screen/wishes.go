package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/drill"
	"capscye/worksheets"
)

// wish is what a part wants done, a small value that says all there is to know about
// it; nil wants nothing. Only the root calls grant, which makes commands of it.
type wish interface {
	grant(m *root) tea.Cmd
}

// grant turns a wish into commands.
func (m *root) grant(w wish) tea.Cmd {
	if w == nil {
		return nil
	}
	return w.grant(m)
}

// Wishes about where the sheet on the desk is saved.
type (
	// toSave wants it saved in its file; the person is asked for a name if it has
	// none and, where ask is set, what to do about a file that was changed elsewhere.
	toSave struct{ ask bool }

	// toSaveAs wants it saved at a path; over writes over what something else wrote
	// there, putting that aside.
	toSaveAs struct {
		path string
		over bool
	}

	// toLose wants it saved though the comments of the file go.
	toLose struct{}

	// toGoOnBeside wants a file of its own for it, and leaves the other to whom changed it.
	toGoOnBeside struct{}

	// toTakeTheirs wants the file opened again; what is here is put aside.
	toTakeTheirs struct{}
)

func (w toSave) grant(m *root) tea.Cmd { return m.save(w.ask) }

func (w toSaveAs) grant(m *root) tea.Cmd {
	m.uncover()
	if m.saving {
		m.desk.message = "A save is under way; try again."
		return nil
	}
	m.saving = true
	return saveFile(m.desk, w.path, w.over)
}

func (toLose) grant(m *root) tea.Cmd {
	m.uncover()
	m.desk.mayLose = true
	return m.startSave()
}

func (toGoOnBeside) grant(m *root) tea.Cmd {
	m.front = m.askName(console.FileNameFor(m.desk.doc.Sheet.Text(worksheets.Title)), "")
	return nil
}

func (toTakeTheirs) grant(m *root) tea.Cmd {
	m.front = nil
	if m.saving || m.bringing {
		return nil
	}
	m.bringing = true
	return takeTheirs(*m.desk.doc, m.desk.copies, m.desk.guard.place)
}

// toBring wants another sheet on the desk; drop leaves what is not saved of the one
// that is there.
type toBring struct {
	source source
	drop   bool
}

func (w toBring) grant(m *root) tea.Cmd { return m.bring(w) }

// source is where a sheet comes from. open lets the one before it go.
type source interface {
	open(before *worksheets.Recovery) tea.Cmd
}

type (
	file    string // at a path
	example string // a built-in sheet, by its name
)

func (f file) open(before *worksheets.Recovery) tea.Cmd { return openFile(string(f), before) }

func (e example) open(before *worksheets.Recovery) tea.Cmd { return openExample(string(e), before) }

// Wishes about the sheets of the folder.
type (
	toList struct{}           // the list of them
	toPick struct{ t taking } // a list, to choose the one to take measurements from
	toTake struct{ t taking } // to take them from the one chosen
)

func (w toList) grant(m *root) tea.Cmd {
	return m.behindSave(w, func() tea.Cmd { return listFolder(m.today, nil) })
}

func (w toPick) grant(m *root) tea.Cmd {
	return m.behindSave(w, func() tea.Cmd { return listFolder(m.today, &w.t) })
}

func (w toTake) grant(m *root) tea.Cmd {
	if w.t.path != "" {
		return m.bring(toBring{source: newSheet{path: w.t.path, taking: &w.t}})
	}
	return readSource(w.t)
}

// Wishes about the sheet itself.
type (
	toPrint      struct{}               // the card as a PDF beside it
	toNote       struct{}               // to ask what a test garment showed
	toChangeEase struct{ c easeChange } // by what a fitting showed
)

func (toPrint) grant(m *root) tea.Cmd { return m.print() }

func (toNote) grant(m *root) tea.Cmd {
	m.front = m.askFitting()
	return nil
}

func (w toChangeEase) grant(m *root) tea.Cmd {
	m.front = nil
	return m.grant(m.desk.changeEase(w.c))
}

// Wishes about copies beside the sheet.
type (
	toTry        struct{ sheet worksheets.Sheet } // as a copy
	toSeeCopies  struct{}                         // the page of them
	toChooseCopy struct{}                         // the one at hand becomes the sheet
	toNameCopy   struct{}                         // to ask for a file name for it
	toSaveCopy   struct{ path string }            // as its own file
)

func (w toTry) grant(m *root) tea.Cmd {
	m.front = nil
	m.desk.layTrial(w.sheet)
	return nil
}

func (w toSeeCopies) grant(m *root) tea.Cmd {
	return m.behindSave(w, func() tea.Cmd {
		m.front = newCopyPage(m.desk, m.width, m.height)
		return nil
	})
}

func (toChooseCopy) grant(m *root) tea.Cmd {
	m.front = nil
	return m.grant(m.desk.chooseHand())
}

func (toNameCopy) grant(m *root) tea.Cmd {
	m.front = m.askCopyName()
	return nil
}

func (w toSaveCopy) grant(m *root) tea.Cmd {
	m.front = nil
	return saveCopy(m.desk, w.path)
}

// Wishes to see a page.
type (
	toSeeKeys    struct{}
	toSeeWorking struct{} // the arithmetic, from the figure at hand on
	toSeeWords   struct{} // of the trade
	toSeeTable   struct{} // the step at the table, as large as the screen
	toSeeOffers  struct{} // what would make it work
	toSeeSizes   struct{} // the sizes of the pattern
	toDrill      struct{} // the sums of the trade
)

func (toSeeKeys) grant(m *root) tea.Cmd {
	return m.scroll("Keys", "any other key goes back; ^s is ctrl and s together",
		func(width int) ([]string, int) { return keysText(width), 0 })
}

func (toSeeWorking) grant(m *root) tea.Cmd {
	return m.scroll("Working", howToScroll, m.desk.workingText)
}

func (toSeeWords) grant(m *root) tea.Cmd { return m.scroll("Words", howToScroll, m.desk.glossaryText) }

const howToScroll = "any other key goes back; up, down, pgup, pgdn scroll"

// scroll puts a text in front.
func (m *root) scroll(heading, how string, text func(width int) ([]string, int)) tea.Cmd {
	m.cover(newScrollPage(m.styles.heading.Render(heading)+"   "+how, text, m.width, m.height))
	return nil
}

func (toSeeTable) grant(m *root) tea.Cmd {
	m.front = tableView{m.desk}
	return nil
}

func (w toSeeSizes) grant(m *root) tea.Cmd {
	return m.behindSave(w, func() tea.Cmd {
		m.front = newSizesPage(m.desk)
		return nil
	})
}

func (toSeeOffers) grant(m *root) tea.Cmd {
	m.front = &offerPage{styles: m.styles, troubles: m.desk.troubles()}
	return nil
}

func (toDrill) grant(m *root) tea.Cmd {
	m.front = newDrillPage(drill.ClockSeed(m.today), m.styles, m.width, m.height)
	return nil
}

// Wishes to leave.
type (
	toGoBack struct{} // away with what is in front
	toQuit   struct{}
)

func (toGoBack) grant(m *root) tea.Cmd {
	m.uncover()
	m.next = nil
	if m.desk == nil {
		return listFolder(m.today, nil)
	}
	return nil
}

func (toQuit) grant(m *root) tea.Cmd { return m.quit() }
