package ui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/units"
	"capscye/worksheets"
)

// root is the whole screen. It routes: keys go to what is in front, and what
// comes back is a wish that it grants.
type root struct {
	width, height int
	styles        styles
	start         tea.Cmd

	desk  *desk // the worksheet on the table; nil before the first
	front part  // what lies over it; nil for nothing

	saving, again bool // one save at a time; another is wanted
	leaving       bool // end once the save is done
	told          bool // it was said that something is not saved; the next ask leaves it
}

// part is one thing that can be in front of the desk.
type part interface {
	render(width, height int) string
}

// Init asks for whatever the program was started with.
func (m *root) Init() tea.Cmd { return m.start }

// Update routes.
func (m *root) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.width, m.height = msg.Width, msg.Height
	case tea.KeyMsg:
		w := m.route(msg)
		m.told = m.told && w.kind == wishQuit
		return m, m.grant(w)
	case openedMsg:
		m.opened(msg)
	case listedMsg:
		m.listed(msg)
	case savedMsg:
		return m, m.saved(msg)
	}
	return m, nil
}

// View is pure: the state and the window decide it.
func (m *root) View() string {
	switch {
	case m.width == 0 || m.height == 0: // the first frame comes before the size
		return ""
	case m.front != nil:
		return m.front.render(m.width, m.height)
	case m.desk != nil:
		return m.desk.render(m.width, m.height)
	}
	return ""
}

// route gives a key to what is in front.
func (m *root) route(msg tea.KeyMsg) wish {
	switch front := m.front.(type) {
	case interface{ key(tea.KeyMsg) wish }:
		return front.key(msg)
	case interface{ key(string) wish }:
		return front.key(msg.String())
	}
	if m.desk != nil {
		return m.desk.key(msg)
	}
	if msg.String() == "ctrl+c" {
		return wish{kind: wishQuit}
	}
	return wish{}
}

// grant turns a wish into commands.
func (m *root) grant(w wish) tea.Cmd {
	switch w.kind {
	case wishSave:
		return m.save(w.over)
	case wishSaveAs:
		m.front = nil
		if w.path != m.desk.doc.Path() {
			m.desk.doc.SetPath(w.path)
		}
		return m.startSave(w.over)
	case wishOpen:
		return openFile(w.path)
	case wishExample:
		return openExample(w.path)
	case wishBegin:
		return beginFile(w.path, w.unit)
	case wishName:
		m.front = newNaming("What should the new worksheet be called?", "", m.styles, func(path string) wish {
			m.front = m.askBegin(path)
			return wish{}
		})
	case wishList:
		return tea.Batch(m.saveIfChanged(), listFolder())
	case wishKeys:
		m.front = keysPage{m.styles}
	case wishBack:
		m.front = nil
		if m.desk == nil {
			return listFolder()
		}
	case wishQuit:
		return m.quit()
	}
	return nil
}

// askBegin offers to begin a worksheet that does not exist yet.
func (m *root) askBegin(path string) part {
	begin := func(u units.System) wish { return wish{kind: wishBegin, path: path, unit: u} }
	return &question{styles: m.styles, text: fmt.Sprintf("%s does not exist yet. Begin it?", plain(path)), answers: []answer{
		{"i", "begin it in inches", begin(units.Inches)},
		{"c", "begin it in centimetres", begin(units.Centimetres)},
		{"esc", "no, show the worksheets of this folder", wish{kind: wishBack}},
	}}
}

// save saves the sheet, asking first where there is something to ask.
func (m *root) save(ask bool) tea.Cmd {
	d := m.desk
	switch {
	case d.doc.ReadOnly != "":
		d.message = "Read-only: " + d.doc.ReadOnly + "."
		return nil
	case d.doc.Path() == "":
		m.front = newNaming("Under which name should this worksheet be kept?",
			fileNameFor(d.doc.Sheet.Text(worksheets.Title)), m.styles,
			func(path string) wish { return wish{kind: wishSaveAs, path: path} })
		return nil
	case ask:
		m.front = &question{styles: m.styles, text: plain(d.doc.Path()) + " was changed by another program since it was read here.",
			answers: []answer{
				{"t", "take theirs, and drop what was changed here", wish{kind: wishOpen, path: d.doc.Path()}},
				{"m", "write mine, and keep theirs beside it", wish{kind: wishSaveAs, path: d.doc.Path(), over: true}},
				{"esc", "decide later", wish{kind: wishBack}},
			}}
		return nil
	}
	return m.startSave(false)
}

// startSave saves now, or once the save that is under way is done.
func (m *root) startSave(over bool) tea.Cmd {
	if m.saving {
		m.again = true
		return nil
	}
	m.saving = true
	return saveFile(*m.desk.doc, over)
}

func (m *root) saveIfChanged() tea.Cmd {
	d := m.desk
	if d == nil || d.doc.Path() == "" || d.doc.ReadOnly != "" || d.doc.Saved() || d.conflict {
		return nil
	}
	return m.startSave(false)
}

func (m *root) saved(msg savedMsg) tea.Cmd {
	m.saving = false
	if m.desk == nil || m.desk.doc.Path() != msg.doc.Path() {
		return nil // another worksheet is on the table by now
	}
	m.desk.saved(msg)
	again := m.again
	m.again = false
	if msg.err != nil {
		m.told, m.leaving = m.leaving, false // the person has to see it first
		return nil
	}
	if again {
		if cmd := m.saveIfChanged(); cmd != nil {
			return cmd
		}
	}
	if m.leaving {
		return tea.Quit
	}
	return nil
}

// quit ends once everything is saved. What cannot be saved is said, and the
// second time it is left.
func (m *root) quit() tea.Cmd {
	d := m.desk
	if d == nil || m.told || d.doc.ReadOnly != "" || m.untouched() {
		return tea.Quit
	}
	switch {
	case m.saving:
		m.leaving = true
		return nil
	case d.doc.Saved():
		return tea.Quit
	case d.doc.Path() == "":
		d.message = "This sheet has no file: ^s keeps it, ^c again leaves it."
	case d.conflict:
		d.message = "Not saved: the file was changed elsewhere. ^s decides, ^c again leaves it."
	default:
		m.leaving = true
		return m.startSave(false)
	}
	m.front, m.told = nil, true
	return nil
}

// untouched tells that an example was only looked at.
func (m *root) untouched() bool { return m.desk.doc.Path() == "" && !m.desk.doc.Changed() }

func (m *root) opened(msg openedMsg) {
	if msg.err != nil {
		m.complain(plain(fileWords(msg.err)))
		return
	}
	m.front, m.desk = nil, newDesk(msg.doc, m.styles)
	if p := msg.doc.Problems(); len(p) > 0 {
		m.desk.message = plain(p[0].Error())
	}
}

func (m *root) listed(msg listedMsg) {
	if msg.err != nil {
		m.complain(plain(fileWords(msg.err)))
		return
	}
	m.front = newList(msg.found, m.styles, m.desk != nil)
}

// complain says what went wrong wherever the person is looking.
func (m *root) complain(text string) {
	switch front := m.front.(type) {
	case *list:
		front.message = text
	case *naming:
		front.message = text
	case *question:
		front.text = text
	default:
		if m.desk != nil {
			m.desk.message = text
		}
	}
}
