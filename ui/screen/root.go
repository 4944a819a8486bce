// Package screen is the root of the screen and its pages.
//
// It is one root model that routes messages to what is in front: the worksheet on the desk,
// or a part over it. Each renders itself for a given size and answers a key with what it
// wants, a small value; the root alone turns wishes into commands (wishes.go). Files are read
// and written by commands.go, but for the end of the guard against a crash, and a look at
// what it kept (beginning.go). Messages are in messages.go; saving has a file of its own.
// View reads the state and the window only.
//
// After every message what is in no file is compared with what is guarded against a crash;
// while everything is saved, that is only a lock.
//
// A fault is caught where the terminal can be given back; commands run in goroutines of
// their own and send theirs as a message. Signals are messages too.
package screen

import (
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/desk"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/ui/terminal"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// root is the whole screen. It routes: keys go to what is in front, and what
// comes back is a wish that it grants.
type root struct {
	width, height int
	styles        parts.Styles
	today         time.Time         // when the program was started
	did           func(report.Work) // is told of work, so that a test can count it; nil for nobody

	desk *desk.Desk // the worksheet on the table; nil before the first

	over
	saves
	waits
	printing bool // a card is being written
	status   int  // what the program should exit with
}

// Init has nothing to ask for: what the program starts with is there already.
func (m *root) Init() tea.Cmd { return nil }

// Update routes, and guards what that leaves unsaved.
func (m *root) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	before := m.front
	cmd := m.update(msg)
	if m.front == nil {
		m.behind = nil
	}
	cmd = both(cmd, m.watch(before))
	if guarded, ok := msg.(guardedMsg); ok && guarded.err != nil {
		return m, cmd
	}
	return m, both(cmd, m.guardWork())
}

func both(one, other tea.Cmd) tea.Cmd {
	switch {
	case other == nil:
		return one
	case one == nil:
		return other
	}
	return tea.Batch(one, other)
}

func (m *root) update(msg tea.Msg) tea.Cmd {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.resize(msg.Width, msg.Height)
	case tea.KeyMsg:
		return m.pressed(msg)
	case seenMsg:
		if m.asked == msg.question {
			m.asked = nil
		}
	case openedMsg:
		m.opened(msg)
	case listedMsg:
		return m.listed(msg)
	case takenMsg:
		return m.taken(msg)
	case savedMsg:
		return m.saved(msg)
	case copySavedMsg:
		m.copySaved(msg)
	case printedMsg:
		m.printed(msg)
	case signalMsg:
		m.status, m.signalled = msg.status, true
		return m.end()
	case guardedMsg:
		m.guarded(msg)
	case terminal.FloodMsg:
		m.complain("Too much input at once; part of it was dropped.")
	case terminal.PasteTailMsg:
		m.complain("Keys right behind the paste were dropped.")
	case faultMsg:
		panic(msg.fault) // where it is caught, the terminal can be given back
	}
	return nil
}

// place is where what is not saved of the sheet on the desk is guarded.
func (m *root) place() *worksheets.Recovery {
	if m.desk == nil {
		return nil
	}
	return m.desk.GuardedBy()
}

// View is pure: the state and the window decide it.
func (m *root) View() string {
	switch {
	case m.width == 0 || m.height == 0: // the first frame comes before the size
		return ""
	case m.front != nil:
		return m.front.Render(m.width, m.height)
	case m.desk != nil:
		return m.desk.Render(m.width, m.height)
	}
	return ""
}

// resize tells the window to those who scroll.
func (m *root) resize(width, height int) {
	m.width, m.height = width, height
	if m.desk != nil {
		m.desk.Resize(width, height)
	}
	for _, p := range []parts.Part{m.front, m.behind} {
		if p, ok := p.(resizer); ok {
			p.Resize(width, height)
		}
	}
}

// pressed takes a key, unless it is one that has to wait.
func (m *root) pressed(msg tea.KeyMsg) tea.Cmd {
	if msg.Type == tea.KeyRunes && len(msg.Runes) > 1 && !msg.Paste {
		return m.pressedAtOnce(msg)
	}
	if !ends(msg) && (m.unseen() || m.holds(msg)) {
		return nil
	}
	w := m.route(msg)
	_, quits := w.(parts.ToQuit)
	m.told = m.told && quits
	return m.grant(w)
}

// pressedAtOnce takes letters that came in one piece, as over a slow link: each is a key, as
// if it had come alone. More than hands type ahead is text, which presses no key.
func (m *root) pressedAtOnce(msg tea.KeyMsg) (cmd tea.Cmd) {
	const ahead = 40
	if len(msg.Runes) > ahead {
		msg.Paste = true
		return m.pressed(msg)
	}
	for _, r := range msg.Runes {
		one := msg
		one.Runes = []rune{r}
		cmd = both(cmd, m.pressed(one))
	}
	return cmd
}

// ends tells the keys that end the program, whatever is in front.
func ends(msg tea.KeyMsg) bool { return msg.String() == "ctrl+c" || msg.String() == "ctrl+q" }

// route gives a key to what is in front.
func (m *root) route(msg tea.KeyMsg) parts.Wish {
	_, typed := m.front.(leaver) // which takes what is typed first
	switch {
	case m.front != nil && !typed && ends(msg):
		if m.desk != nil { // the form behind may have a text that is being typed
			return m.desk.TypedFirst(parts.ToQuit{})
		}
		return parts.ToQuit{}
	case m.front != nil:
		return m.front.Key(msg)
	case m.desk != nil:
		return m.desk.Key(msg)
	case ends(msg):
		return parts.ToQuit{}
	}
	return nil
}

// print writes the card beside the sheet, under the sheet's name.
func (m *root) print() tea.Cmd {
	if m.printing || m.desk.OnCopy() {
		return nil
	}
	m.printing = true
	path := m.desk.Doc.Path()
	if path == "" {
		path = console.FileNameFor(m.desk.Doc.Sheet.Text(worksheets.Title))
	}
	return printFile(path, m.desk.Rep, m.today)
}

// askCopyName asks for the file name of the copy at hand.
func (m *root) askCopyName() *parts.Naming {
	d := m.desk
	return parts.NewNaming("File name of "+d.LaidWords(d.Hand)+"?", console.FileNameFor(d.Sheet().Text(worksheets.Title)+" what if"),
		m.styles, func(path string) parts.Wish { return toSaveCopy{path: path} })
}

// copySaved puts a copy away that has its own file now.
func (m *root) copySaved(msg copySavedMsg) {
	d := m.desk
	if msg.desk != d {
		return
	}
	if msg.err != nil {
		d.Message = "The copy is not saved: " + typeset.Plain(console.FileWords(msg.err)) + "."
		return
	}
	for _, p := range m.leavers() { // what is typed into the copy meanwhile is in no file
		p.leave()
	}
	d.Message = "The copy is saved in " + typeset.Plain(msg.path) + "."
	if d.Hand > 0 && d.Sheet().Equal(msg.sheet) {
		d.DropHand(d.Message)
		for _, p := range m.leavers() {
			p.follow()
		}
	}
	if _, ok := m.front.(*copyPage); ok && len(d.Copies) == 0 {
		m.front = nil
	}
}

// printed says where the card is.
func (m *root) printed(msg printedMsg) {
	m.printing = false
	switch {
	case m.desk == nil:
	case msg.err != nil:
		m.desk.Message = "No card: " + typeset.Plain(console.FileWords(msg.err)) + "."
	default:
		m.desk.Message = strings.TrimSpace("The card is in " + typeset.Plain(msg.name) + ". " + msg.lost)
	}
}

// bring brings another worksheet to the table, once what is there is safe.
func (m *root) bring(w toBring) tea.Cmd {
	if !w.drop {
		if cmd, wait := m.settle(w); wait {
			return cmd
		}
	}
	if m.bringing { // a second press; one of them is enough
		return nil
	}
	m.bringing = true
	return w.source.open(m.place())
}

func (m *root) opened(msg openedMsg) {
	dropped := m.dropped
	m.bringing, m.dropped = false, false
	if msg.err != nil {
		m.complain(typeset.Plain(strings.TrimSpace(msg.note + " " + console.FileWords(msg.err))))
		return
	}
	before := m.desk
	m.front, m.desk = nil, desk.New(msg.doc, msg.copies, m.styles, report.Reckoner{Today: m.today, Did: m.did})
	m.desk.GuardIn(msg.guard, before)
	m.desk.LayLeftover(msg.left)
	m.desk.Resize(m.width, m.height)
	if !msg.guard.Alone() {
		m.desk.Message = console.OpenElsewhere
	}
	if p := msg.doc.Problems(); len(p) > 0 && m.desk.Message == "" {
		m.desk.Message = typeset.Plain(p[0].Error())
	}
	if msg.note != "" {
		m.desk.Message = typeset.Plain(msg.note)
	}
	if dropped && m.desk.Message == "" {
		m.desk.Message = "What was pressed while it was being opened was dropped."
	}
}

// taken puts what was chosen into the sheet on the desk.
func (m *root) taken(msg takenMsg) tea.Cmd {
	if msg.err != nil || m.desk == nil {
		m.complain(typeset.Plain(console.FileWords(msg.err)))
		return nil
	}
	m.front = nil
	return m.grant(m.desk.Take(msg.section, msg.from))
}

// complain says what went wrong wherever the person is looking.
func (m *root) complain(text string) {
	front, ok := m.front.(complainer)
	switch {
	case ok:
		front.Complain(text)
	case m.desk == nil:
		q := parts.NewQuestion("", m.styles).Or("esc", "the worksheets of this folder", desk.ToList{})
		q.Complain(text)
		m.front = q
	default:
		m.desk.Message = text
	}
}
