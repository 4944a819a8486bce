package screen

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/typeset"
)

// saves is what the root knows of saving: one save at a time, and what is to
// happen behind it.
type saves struct {
	saving    bool // one is under way; what changes meanwhile is saved behind it
	leaving   bool // end once it is done
	signalled bool // the system wants the end: nobody can be asked any more
	told      bool // it was said that something is not saved; the next ask leaves it
	next      wish // to be granted once everything is saved
}

// save saves the sheet, asking first where there is something to ask.
func (m *root) save(ask bool) tea.Cmd {
	d := m.desk
	switch {
	case d.doc.ReadOnly != "":
		d.message = d.readOnly()
		return nil
	case m.saving:
		return nil // saved sees to what was changed meanwhile
	case ask && d.conflict:
		m.cover(newQuestion("Another program changed "+typeset.Plain(d.doc.Path())+" since it was read here.", m.styles).
			or("t", "take theirs, and save mine beside it", toTakeTheirs{}).
			or("m", "save mine, and theirs beside it", toSaveAs{path: d.doc.Path(), over: true}).
			or("b", "leave theirs, and go on with mine in a file of its own", toGoOnBeside{}).
			or("esc", "decide later", toGoBack{}))
		return nil
	case !d.mayLose && d.doc.LosesComments():
		m.cover(newQuestion("Saving will rewrite "+typeset.Plain(d.doc.Path())+" as a whole and lose its comments; the old file is kept beside it.", m.styles).
			or("s", "save", toLose{}).
			or("esc", "not now", toGoBack{}))
		return nil
	}
	return m.startSave()
}

// askName asks for the file name of a sheet that has none.
func (m *root) askName(suggestion, message string) *naming {
	n := newNaming("File name of this worksheet?", suggestion, m.styles,
		func(path string) wish { return toSaveAs{path: path} })
	n.message = message
	return n
}

// startSave saves now; behind a save that is under way, saved sees to it.
func (m *root) startSave() tea.Cmd {
	if m.saving {
		return nil
	}
	m.saving = true
	return saveFile(m.desk, m.desk.doc.Path(), false)
}

// saveIfChanged saves what is not saved yet. asked tells that the person has to
// answer something first.
func (m *root) saveIfChanged() (cmd tea.Cmd, asked bool) {
	d := m.desk
	if d == nil || d.doc.ReadOnly != "" || !d.due() {
		return nil, false
	}
	if m.signalled {
		d.mayLose = true // the original is put aside in any case
	}
	cmd = m.save(false)
	return cmd, cmd == nil && !m.saving
}

// behindSave saves what is not saved yet, and grants a wish at the same time; or
// once a question about saving is answered.
func (m *root) behindSave(w wish, granted func() tea.Cmd) tea.Cmd {
	cmd, asked := m.saveIfChanged()
	if asked {
		m.next = w
		return nil
	}
	return both(cmd, granted())
}

// saved takes the outcome of a save, and goes on with what waited for it.
func (m *root) saved(msg savedMsg) tea.Cmd {
	m.saving = false
	next := m.next
	m.next = nil
	if msg.desk != m.desk { // nothing else is brought while one is being saved
		return nil
	}
	if msg.err != nil && m.signalled { // nobody is there to try again
		return tea.Quit
	}
	if msg.err != nil && msg.named {
		m.leaving = false
		m.front = m.askName(msg.doc.Path(), "Not saved: "+typeset.Plain(console.FileWords(msg.err)))
		return nil
	}
	m.desk.saved(msg.saved)
	if msg.err != nil {
		if m.leaving {
			m.desk.message = strings.Replace(m.desk.message, ", ^c ", ", ^c again ", 1)
		}
		m.told, m.leaving = m.leaving, false // the person has to see it first
		if next != nil {
			m.front = nil
		}
		return nil
	}
	if cmd, asked := m.saveIfChanged(); cmd != nil || asked { // something was changed in the meantime
		m.next = next
		m.leaving = m.leaving && !asked
		return cmd
	}
	if m.leaving {
		return tea.Quit
	}
	return m.grant(next)
}

// copiesFirst is said where another worksheet is to come to the desk.
const copiesFirst = "This worksheet has a copy: keep or drop it first, with ^x."

// settle makes sure that another worksheet can take the place of this one:
// what can be saved is saved first, and about the rest the person is asked.
// wait tells that the wish has to wait.
func (m *root) settle(w toBring) (cmd tea.Cmd, wait bool) {
	d := m.desk
	switch {
	case d != nil && d.hasTried():
		m.complain(copiesFirst)
		return nil, true
	case d == nil || d.doc.ReadOnly != "" || d.isExample() || !m.saving && d.doc.Saved():
		return nil, false
	case d.conflict || d.failed:
		drop := w
		drop.drop = true
		m.front = newQuestion(d.rep.Name()+" has changes that are not saved.", m.styles).
			or("s", "stay and save them", toSave{ask: true}).
			or("d", "drop them and go on", drop).
			or("esc", "stay", toGoBack{})
		return nil, true
	}
	m.next = w // also behind a question about saving
	return m.save(false), true
}

// quit ends once everything is saved. What cannot be saved is said, and the
// second time it is left.
func (m *root) quit() tea.Cmd {
	d := m.desk
	if d != nil && d.hasTried() {
		if !m.told {
			d.message = "The copies are not saved. ^x keeps or drops them; ^c again quits without them."
			m.front, m.told = nil, true
			return nil
		}
		d.dropCopies()
		m.told = false // that was agreed; what is in the sheet is still to be saved
	}
	switch {
	case d == nil || d.doc.ReadOnly != "" || d.isExample():
		return tea.Quit
	case m.told || m.leaving:
		m.status = console.ExitUnfinished
		return tea.Quit
	case m.saving || d.doc.Saved():
		return m.end()
	case d.conflict:
		d.message = "Not saved: another program changed the file. ^s decides, ^c again " + d.leaving() + "."
	default:
		d.message = "Saving; ^c again quits without waiting."
		return m.end()
	}
	m.front, m.told = nil, true
	return nil
}

// end takes what is being typed, saves what can be, and ends.
func (m *root) end() tea.Cmd {
	if m.desk != nil {
		m.desk.trying = m.desk.trying || m.signalled // nobody can be asked for a worksheet of their own
		for _, p := range m.leavers() {
			p.leave()
		}
		m.desk.commit()
	}
	m.leaving = true
	if m.saving {
		return nil
	}
	cmd, asked := m.saveIfChanged()
	if asked {
		m.leaving, m.told = false, true
		return nil
	}
	if cmd != nil {
		return cmd
	}
	return tea.Quit
}
