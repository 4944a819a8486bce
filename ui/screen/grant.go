package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/drill"
	"capscye/worksheets"
)

// What becomes of wishes.

// grant turns a wish into commands.
func (m *root) grant(w wish) tea.Cmd {
	switch w.kind {
	case wishSave:
		return m.save(w.ask)
	case wishLose:
		m.front, m.desk.mayLose = nil, true
		return m.startSave()
	case wishSaveAs:
		m.front = nil
		if m.saving {
			m.desk.message = "A save is under way; try again."
			return nil
		}
		m.saving = true
		return saveFile(m.desk, w.path, w.over)
	case wishOpen, wishExample, wishBegin:
		return m.bring(w)
	case wishBeside:
		m.front = m.askName(console.FileNameFor(m.desk.doc.Sheet.Text(worksheets.Title)), "")
	case wishTheirs:
		m.front = nil
		if m.saving || m.bringing {
			return nil
		}
		m.bringing = true
		return takeTheirs(*m.desk.doc, m.desk.copies, m.desk.guard.place)
	case wishName:
		m.front = newNaming("What should the new worksheet be called?", "", m.styles, func(path string) wish {
			m.front = m.askBegin(path)
			return wish{}
		})
	case wishList:
		return m.behindSave(w, func() tea.Cmd { return listFolder(m.today, nil) })
	case wishPick:
		return m.behindSave(w, func() tea.Cmd { return listFolder(m.today, w.taking) })
	case wishTake:
		if w.taking.path != "" {
			return m.bring(wish{kind: wishBegin, path: w.taking.path, taking: w.taking})
		}
		return readSource(*w.taking)
	case wishCard:
		return m.print()
	case wishEase:
		m.front = nil
		return m.grant(m.desk.changeEase(*w.ease))
	case wishBack:
		m.front, m.next = nil, wish{}
		if m.desk == nil {
			return listFolder(m.today, nil)
		}
	case wishQuit:
		return m.quit()
	default:
		m.turnTo(w)
		return m.layBeside(w)
	}
	return nil
}

// turnTo puts the page in front that a wish asks for, if it asks for one.
func (m *root) turnTo(w wish) {
	switch w.kind {
	case wishKeys:
		head := m.styles.heading.Render("Keys") + "   any other key goes back; ^s is ctrl and s together"
		m.front = newScrollPage(head, func(width int) ([]string, int) { return keysText(width), 0 }, m.width, m.height)
	case wishWorking:
		head := m.styles.heading.Render("Working") + "   any other key goes back; up, down, pgup, pgdn scroll"
		m.front = newScrollPage(head, m.desk.workingText, m.width, m.height)
	case wishWords:
		head := m.styles.heading.Render("Words") + "   any other key goes back; up, down, pgup, pgdn scroll"
		m.front = newScrollPage(head, m.desk.glossaryText, m.width, m.height)
	case wishTable:
		m.front = tableView{m.desk}
	case wishDrill:
		m.front = newDrillPage(drill.ClockSeed(m.today), m.styles, m.width, m.height)
	case wishNote:
		m.front = m.askFitting()
	}
}

// layBeside grants what has to do with copies beside the sheet.
func (m *root) layBeside(w wish) tea.Cmd {
	switch w.kind {
	case wishOffers:
		m.front = &offerPage{styles: m.styles, troubles: m.desk.troubles()}
	case wishTry:
		m.front = nil
		m.desk.layTrial(*w.sheet)
	case wishCopies:
		return m.behindSave(w, func() tea.Cmd {
			m.front = newCopyPage(m.desk, m.width, m.height)
			return nil
		})
	case wishKeepCopy:
		m.front = nil
		return m.grant(m.desk.keepHand())
	case wishNameCopy:
		m.front = m.askCopyName()
	case wishSaveCopy:
		m.front = nil
		return saveCopy(m.desk, w.path)
	}
	return nil
}
