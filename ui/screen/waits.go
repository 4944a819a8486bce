package screen

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/desk"
	"capscye/ui/parts"
	"capscye/ui/typeset"
)

// waits is what the root knows of a sheet, or of the list of the folder, that is on its way
// from the disk: what is pressed meanwhile is not meant for what is in front still.
type waits struct {
	bringing bool         // a worksheet is being opened
	listing  bool         // the folder is being listed
	ahead    []tea.KeyMsg // what was pressed for the list
	dropped  bool         // something was pressed while a worksheet was being opened

	blind time.Duration   // how long nobody can have seen a question that was just asked; 0 in scripts
	asked *parts.Question // that nobody can have seen yet, nil for none
}

// frame is longer than the screen takes to draw what is new, and far shorter than hands take
// to answer it.
const frame = 30 * time.Millisecond

// seenMsg says that a question can have been seen by now.
type seenMsg struct{ question *parts.Question }

// unseen tells that what is in front asks something that nobody can have seen: a key was
// pressed before it was asked, and answers something else.
func (m *root) unseen() bool { return m.asked != nil && m.front == m.asked }

// watch waits until a question that was just asked can have been seen.
func (m *root) watch(before parts.Part) tea.Cmd {
	q, ok := m.front.(*parts.Question)
	if !ok || m.front == before || m.blind == 0 {
		return nil
	}
	m.asked = q
	return tea.Tick(m.blind, func(time.Time) tea.Msg { return seenMsg{q} })
}

// mostAhead bounds what is kept for a list.
const mostAhead = 100

// holds tells that a key waits for the list, or that there is nothing that it could be for.
func (w *waits) holds(key tea.KeyMsg) bool {
	w.dropped = w.dropped || w.bringing
	if w.listing && len(w.ahead) < mostAhead {
		w.ahead = append(w.ahead, key)
	}
	return w.listing || w.bringing
}

// list asks for the list of the folder, to open one of its worksheets or to take from one.
func (m *root) list(t *desk.Taking) tea.Cmd {
	m.listing = true
	return listFolder(m.today, t)
}

// listed puts the list in front, and gives it what was pressed since it was asked for.
func (m *root) listed(msg listedMsg) tea.Cmd {
	ahead := m.ahead
	m.listing, m.ahead = false, nil
	if msg.err != nil {
		m.complain(typeset.Plain(console.FileWords(msg.err)))
		return nil
	}
	m.layList(msg)
	var cmd tea.Cmd
	for _, key := range ahead {
		cmd = both(cmd, m.pressed(key))
	}
	return cmd
}

func (m *root) layList(msg listedMsg) {
	switch {
	case msg.taking == nil && len(msg.found) == 0 && m.desk == nil:
		m.front = &start{styles: m.styles}
	case msg.taking == nil:
		m.front = newList(msg.found, m.styles, m.desk != nil)
	case msg.taking.Path != "" || m.desk == nil:
		m.front = newPicker(msg.found, *msg.taking, msg.taking.Path, m.styles)
	default:
		m.front = newPicker(msg.found, *msg.taking, m.desk.Doc.Path(), m.styles)
	}
}
