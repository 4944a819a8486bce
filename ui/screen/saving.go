package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/desk"
	"capscye/ui/parts"
	"capscye/ui/typeset"
)

// saves is what the root knows of saving: one save at a time, and what is to
// happen behind it.
type saves struct {
	saving    bool       // one is under way; what changes meanwhile is saved behind it
	leaving   bool       // end once it is done
	signalled bool       // the system wants the end: nobody can be asked any more
	told      bool       // it was said that something is not saved; the next ask leaves it
	next      parts.Wish // to be granted once everything is saved
}

// save saves the sheet, asking first where there is something to ask.
func (m *root) save(ask bool) tea.Cmd {
	d := m.desk
	switch {
	case d.Doc.ReadOnly != "":
		d.Message = d.ReadOnly()
		return nil
	case m.saving:
		return nil // saved sees to what was changed meanwhile
	case ask && d.Conflict:
		m.cover(parts.NewQuestion("Another program changed "+typeset.Plain(d.Doc.Path())+" since it was read here.", m.styles).
			Or("t", "take theirs, and save mine beside it", toTakeTheirs{}).
			Or("m", "save mine, and theirs beside it", toSaveAs{path: d.Doc.Path(), over: true}).
			Or("b", "leave theirs, and go on with mine in a file of its own", toGoOnBeside{}).
			Or("esc", "decide later", parts.ToGoBack{}))
		return nil
	case d.AsksToLose():
		m.cover(parts.NewQuestion("Saving will rewrite "+typeset.Plain(d.Doc.Path())+" as a whole and lose its comments; the old file is kept beside it.", m.styles).
			Or("s", "save", toLose{}).
			Or("esc", "not now", parts.ToGoBack{}))
		return nil
	}
	return m.startSave()
}

// askName asks for the file name of a sheet that has none.
func (m *root) askName(suggestion, message string) *parts.Naming {
	n := parts.NewNaming("File name of this worksheet?", suggestion, m.styles,
		func(path string) parts.Wish { return toSaveAs{path: path} })
	n.Message = message
	return n
}

// startSave saves now; behind a save that is under way, saved sees to it.
func (m *root) startSave() tea.Cmd {
	if m.saving {
		return nil
	}
	m.saving = true
	return saveFile(m.desk, m.desk.Doc.Path(), false)
}

// saveIfChanged saves what is not saved yet. asked tells that the person has to
// answer something first.
func (m *root) saveIfChanged() (cmd tea.Cmd, asked bool) {
	d := m.desk
	if d == nil || d.Doc.ReadOnly != "" || !d.Due() {
		return nil, false
	}
	if m.signalled && d.AsksToLose() { // nobody can be asked, so it is kept aside
		return nil, false
	}
	cmd = m.save(false)
	return cmd, cmd == nil && !m.saving
}

// behindSave saves what is not saved yet, and grants a wish at the same time; or
// once a question about saving is answered.
func (m *root) behindSave(w parts.Wish, granted func() tea.Cmd) tea.Cmd {
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
	if msg.Err != nil && m.signalled { // nobody is there to try again
		return tea.Quit
	}
	if msg.Err != nil && msg.Named {
		m.leaving = false
		m.front = m.askName(msg.Doc.Path(), "Not saved: "+typeset.Plain(console.FileWords(msg.Err)))
		return nil
	}
	m.desk.Saved(msg.Outcome, m.leaving)
	if msg.Err != nil {
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
	case d != nil && d.HasTried():
		m.complain(copiesFirst)
		return nil, true
	case d == nil || d.Doc.ReadOnly != "" || d.IsExample() || !m.saving && d.Doc.Saved():
		return nil, false
	case d.Conflict || d.Failed:
		drop := w
		drop.drop = true
		m.front = parts.NewQuestion(d.Rep.Name()+" has changes that are not saved.", m.styles).
			Or("s", "stay and save them", desk.ToSave{Ask: true}).
			Or("d", "drop them and go on", drop).
			Or("esc", "stay", parts.ToGoBack{})
		return nil, true
	}
	m.next = w // also behind a question about saving
	return m.save(false), true
}

// quit ends once everything is saved. What cannot be saved is said, and the
// second time it is left.
func (m *root) quit() tea.Cmd {
	d := m.desk
	if d != nil && d.HasTried() {
		if !m.told {
			d.Message = "The copies are not saved. ^x keeps or drops them; ^c again quits without them."
			m.front, m.told = nil, true
			return nil
		}
		d.DropCopies()
		m.told = false // that was agreed; what is in the sheet is still to be saved
	}
	switch {
	case d == nil || d.Doc.ReadOnly != "" || d.IsExample():
		return tea.Quit
	case m.told || m.leaving:
		m.status = console.ExitUnfinished
		return tea.Quit
	case m.saving || d.Doc.Saved():
		return m.end()
	case d.Conflict:
		d.Message = "Not saved: another program changed the file. ^s decides, ^c again " + d.Leaving() + "."
	default:
		d.Message = "Saving; ^c again quits without waiting."
		return m.end()
	}
	m.front, m.told = nil, true
	return nil
}

// end takes what is being typed, saves what can be, and ends.
func (m *root) end() tea.Cmd {
	if m.desk != nil {
		if m.signalled { // nobody can be asked for a worksheet of their own
			m.desk.TryHere()
		}
		for _, p := range m.leavers() {
			p.leave()
		}
		m.desk.Commit()
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
