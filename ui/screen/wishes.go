package screen

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/desk"
	"capscye/ui/parts"
	"capscye/worksheets"
)

// granter is a wish of the screen's own, which knows how it is granted.
type granter interface {
	parts.Wish
	grant(m *root) tea.Cmd
}

// grant turns a wish into commands.
func (m *root) grant(w parts.Wish) tea.Cmd {
	switch w := w.(type) {
	case nil:
		return nil
	case granter:
		return w.grant(m)
	case parts.ToGoBack:
		return m.goBack()
	case parts.ToQuit:
		return m.quit()
	case desk.ToSave:
		return m.save(w.Ask)
	case desk.ToOwn:
		m.askOwn(w)
	case desk.ToList:
		return m.behindSave(w, func() tea.Cmd { return m.list(nil) })
	case desk.ToPick:
		return m.behindSave(w, func() tea.Cmd { return m.list(&w.Taking) })
	case desk.ToPrint:
		return m.print()
	case desk.ToNote:
		m.front = m.askFitting()
	case desk.ToDrill:
		m.goOnDrilling()
	case desk.ToSeeKeys:
		m.scroll("Keys", "any other key goes back; ^s is ctrl and s together", func(width int) ([]string, int) { return desk.KeysText(width), 0 })
	case desk.ToSeeWorking:
		m.scroll("Working", howToScroll, m.desk.WorkingText)
	case desk.ToSeeWords:
		m.scroll("Words", howToScroll, m.desk.GlossaryText)
	case desk.ToSeeTable:
		m.front = desk.TableView{Desk: m.desk}
	case desk.ToSeeOffers:
		m.front = &offerPage{styles: m.styles, troubles: m.desk.Troubles()}
	case desk.ToSeeSizes:
		return m.behindSave(w, func() tea.Cmd {
			m.front = newSizesPage(m.desk, m.styles)
			return nil
		})
	case desk.ToSeeCopies:
		return m.behindSave(w, func() tea.Cmd {
			m.front = newCopyPage(m.desk, m.styles, m.width, m.height)
			return nil
		})
	default:
		panic(fmt.Sprintf("nobody grants %T", w))
	}
	return nil
}

const howToScroll = "any other key goes back; up, down, pgup, pgdn scroll"

// scroll puts a text in front.
func (m *root) scroll(heading, how string, text func(width int) ([]string, int)) {
	m.cover(parts.NewScrollPage(m.styles.Heading.Render(heading)+"   "+how, text, m.width, m.height))
}

// goBack takes away what is in front; where nothing lies behind, once there is a list to
// show.
func (m *root) goBack() tea.Cmd {
	m.next = nil
	if m.desk == nil && m.behind == nil {
		return m.list(nil)
	}
	m.uncover()
	return nil
}

// Wishes about where the sheet on the desk is saved.
type (
	// toSaveAs wants it saved at a path; over writes over what something else wrote
	// there, putting that aside.
	toSaveAs struct {
		parts.Wanted
		path string
		over bool
	}

	// toLose wants it saved though the comments of the file go.
	toLose struct{ parts.Wanted }

	// toGoOnBeside wants a file of its own for it, and leaves the other to whom changed it.
	toGoOnBeside struct{ parts.Wanted }

	// toTakeTheirs wants the file opened again; what is here is put aside.
	toTakeTheirs struct{ parts.Wanted }
)

func (w toSaveAs) grant(m *root) tea.Cmd {
	m.uncover()
	if m.saving {
		m.desk.Message = "A save is under way; try again."
		return nil
	}
	m.saving = true
	return saveFile(m.desk, w.path, w.over)
}

func (toLose) grant(m *root) tea.Cmd {
	m.uncover()
	m.desk.AgreeToLose()
	return m.startSave()
}

func (toGoOnBeside) grant(m *root) tea.Cmd {
	m.front = m.askName(console.FileNameFor(m.desk.Doc.Sheet.Text(worksheets.Title)), "")
	return nil
}

func (toTakeTheirs) grant(m *root) tea.Cmd {
	m.front = nil
	if m.saving || m.bringing {
		return nil
	}
	m.bringing = true
	return takeTheirs(*m.desk.Doc, m.desk.Copies, m.desk.GuardedBy())
}

// toBring wants another sheet on the desk; drop leaves what is not saved of the one
// that is there.
type toBring struct {
	parts.Wanted
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

// toTake wants a section taken from the sheet that was chosen.
type toTake struct {
	parts.Wanted
	t desk.Taking
}

func (w toTake) grant(m *root) tea.Cmd {
	if w.t.Path != "" {
		return m.bring(toBring{source: newSheet{path: w.t.Path, taking: &w.t}})
	}
	return readSource(w.t)
}

// toChangeEase wants an ease changed by what a fitting showed.
type toChangeEase struct {
	parts.Wanted
	c desk.EaseChange
}

func (w toChangeEase) grant(m *root) tea.Cmd {
	m.front = nil
	return m.grant(m.desk.ChangeEase(w.c))
}

// Wishes about copies beside the sheet.
type (
	toTry struct { // a sheet, as a copy
		parts.Wanted
		sheet worksheets.Sheet
	}
	toChooseCopy struct{ parts.Wanted } // the one at hand becomes the sheet
	toNameCopy   struct{ parts.Wanted } // to ask for a file name for it
	toSaveCopy   struct {               // as its own file
		parts.Wanted
		path string
	}
)

func (w toTry) grant(m *root) tea.Cmd {
	m.front = nil
	m.desk.LayTrial(w.sheet)
	return nil
}

func (toChooseCopy) grant(m *root) tea.Cmd {
	m.front = nil
	return m.grant(m.desk.ChooseHand())
}

func (toNameCopy) grant(m *root) tea.Cmd {
	m.front = m.askCopyName()
	return nil
}

func (w toSaveCopy) grant(m *root) tea.Cmd {
	m.front = nil
	return saveCopy(m.desk, w.path)
}
