package screen

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/desk"
	"capscye/ui/drill"
	"capscye/ui/parts"
	"capscye/ui/typeset"
	"capscye/units"
	"capscye/worksheets"
)

// drillPage is the drill on the screen, in front of everything. The root keeps it while the
// program runs: a class is interrupted, and who comes back goes on where they were.
type drillPage struct {
	styles        parts.Styles
	lesson        *drill.Lesson
	typing        parts.Typing
	said          drill.Reply // what came of the latest answer, in sight until the next
	remark        string      // what is said beside that of the latest key, until another
	scored        bool        // the score is shown, before the drill is left
	sure          string      // a key that has to be pressed twice, pressed once
	scroll        int         // of what is known and said
	width, height int
}

func newDrillPage(seed uint64, st parts.Styles, width, height int) *drillPage {
	p := &drillPage{styles: st, typing: parts.NewTyping(st), width: width, height: height}
	p.begin(seed, drill.UsualLevel)
	return p
}

// begin begins a drill.
func (p *drillPage) begin(seed uint64, level int) {
	p.lesson = drill.NewLesson(seed, level, drill.UsualCount(level))
	p.said, p.remark, p.scored, p.scroll = drill.Reply{}, "", false, 0
	p.typing.Begin("", false)
}

// goOnDrilling puts the drill in front, where it was left.
func (m *root) goOnDrilling() {
	if m.drill == nil {
		m.drill = newDrillPage(drill.ClockSeed(m.today), m.styles, m.width, m.height)
	}
	m.front = m.drill
	m.drill.Resize(m.width, m.height) // the window may be another since
	m.drill.goOn()
}

// goOn goes on with the step at hand. What esc took out of the line, on the way out, is
// typed again.
func (p *drillPage) goOn() {
	p.scored = false
	if p.typing.Text() == "" {
		p.typing.TypeAgain()
	}
	p.say(p.said)
}

// keys are for the bottom line. The one that scrolls is there while there is something to
// scroll: a narrow line has no room for all.
func (p *drillPage) keys() []parts.Key {
	level, end := parts.Key{Show: "pgup/pgdn", Does: "level"}, parts.Key{Show: "^c", Does: "end"}
	var keys []parts.Key
	switch {
	case p.lesson.Ended():
		keys = []parts.Key{{Show: "enter", Does: "another drill"}}
	case p.scored:
		keys = []parts.Key{{Show: "enter", Does: "goes on"}}
	default:
		keys = []parts.Key{{Show: "enter", Does: "answers"}, {Show: "?", Does: "working"}}
	}
	keys = append(keys, parts.Key{Show: "^e", Does: "words"})
	if p.lastScroll() > 0 {
		keys = append(keys, parts.Key{Show: "up/down", Does: "scroll"})
	}
	if p.scored || p.lesson.Ended() {
		return append(keys, level, parts.Key{Show: "esc", Does: "back"}, end)
	}
	return append(keys, level, parts.Key{Show: "esc", Does: "score"}, end)
}

func (p *drillPage) Key(msg tea.KeyMsg) parts.Wish {
	again := p.sure == msg.String()
	p.remark, p.sure = "", ""
	p.scrollTo(p.scroll) // what was remarked took room
	over := p.scored || p.lesson.Ended()
	where := elsewhere(msg)
	switch name := msg.String(); {
	case name == "esc" && (over || !p.lesson.Begun() && p.typing.Text() == ""):
		return parts.ToGoBack{}
	case name == "esc" && p.typing.Text() != "":
		p.typing.GiveBack()
		next := "leaves the drill"
		if p.lesson.Begun() {
			next = "shows the score"
		}
		p.note("As it was. Esc again " + next + ".")
	case name == "esc":
		p.scored, p.scroll = true, 0
	case name == "ctrl+d": // which brought it
		return parts.ToGoBack{}
	case name == "ctrl+e":
		return toSeeDrillWords{atHand: p.lesson.Word()}
	case where != "":
		p.note(where)
	case name == "pgup" || name == "pgdown":
		p.turn(name, again)
	case name == "up" || name == "down":
		p.scrollTo(p.scroll + parts.By(name, "up"))
	case name == "enter" && p.scored && !p.lesson.Ended():
		p.goOn()
	case name == "enter" && over:
		p.begin(p.lesson.Seed+1, p.lesson.Level)
	case over:
	case p.lesson.Finished():
		if name == "enter" {
			p.lesson.GoOn()
			p.say(drill.Reply{})
		}
	case name == "enter":
		if meant := units.RunTogether(p.typing.Text()); len(meant) == 1 {
			p.typing.Put(meant[0])
			p.note("Is it " + meant[0] + "? Enter answers that.")
			return nil
		}
		p.answer(p.typing.Text())
	case name == "?":
		p.showWorking(again)
	default:
		p.enter(msg)
	}
	return nil
}

// elsewhere says where a key of the worksheet works, that the drill and its line of input
// have no use for; "" for any other.
func elsewhere(msg tea.KeyMsg) string {
	name := msg.String()
	_, known := desk.ShownFor(name)
	ctrl, isCtrl := strings.CutPrefix(name, "ctrl+")
	switch {
	case msg.Paste || !known || slices.Contains([]string{"ctrl+a", "ctrl+b", "ctrl+f", "ctrl+c", "ctrl+q"}, name):
		return "" // home, left and right of a line
	case name == "ctrl+r":
		return "^r works in the worksheet; here ? shows the working."
	case isCtrl:
		name = "^" + ctrl
	case len(name) < 2 || name[0] != 'f' && !msg.Alt: // f1 to f6, alt+1 to 6
		return ""
	}
	return name + " works in the worksheet; ^d leaves the drill for it, and the drill waits."
}

// toSeeDrillWords wants the words of the trade in front of the drill, from the one at hand
// on.
type toSeeDrillWords struct {
	parts.Wanted
	atHand string
}

func (w toSeeDrillWords) grant(m *root) tea.Cmd {
	m.scroll("Words", howToScroll, func(width int) (out []string, from int) {
		return desk.GlossaryLines(w.atHand, nil, m.styles, width)
	})
	return nil
}

// turn goes to another level with the same seed. Where steps are done already, the
// key has to be pressed twice.
func (p *drillPage) turn(name string, again bool) {
	level := p.lesson.Level + parts.By(name, "pgup")
	if level < 1 || level > drill.Levels {
		p.note(fmt.Sprintf("Levels go from 1 to %d.", drill.Levels))
		return
	}
	if p.lesson.Begun() && !p.lesson.Ended() && !again {
		p.sure = name
		p.note(fmt.Sprintf("Press again to start level %d; the score so far is lost.", level))
		return
	}
	p.begin(p.lesson.Seed, level)
	p.note(fmt.Sprintf("Level %d begins.", level))
}

// showWorking gives the step at hand away. Where it may not be what is meant, with an
// answer typed, or with the working of the step before in sight, which somebody wants to
// read again, the key has to be pressed twice.
func (p *drillPage) showWorking(again bool) {
	text := typeset.Plain(strings.TrimSpace(p.typing.Text()))
	switch {
	case again && text != "":
		p.answer("?")
		p.said.Words = "You typed " + text + ". " + p.said.Words
		p.say(p.said)
	case again || text == "" && !p.said.ShowsWorking():
		p.answer("?")
	case text != "":
		p.sure = "?"
		p.note(text + " is not checked yet: enter checks it, ? again shows the working.")
	default:
		p.sure = "?"
		p.note("This working is of the last step. Press ? again for the answer to this one.")
	}
}

func (p *drillPage) answer(text string) {
	r := p.lesson.Answer(text)
	if r.Unread { // it counts for nothing, and may be mended
		p.note(r.Words)
		return
	}
	p.typing.Begin("", false)
	p.say(r)
}

// say shows what came of an answer, from its first line on.
func (p *drillPage) say(r drill.Reply) {
	p.said = r
	known, said := p.parts(p.width)
	p.scroll = 0
	if len(known)+len(said) > p.room(p.width, p.height) {
		p.scrollTo(len(known) + 1)
	}
}

// note says something beside that, which stays in sight: its end too, if that was.
func (p *drillPage) note(words string) {
	end := p.scroll == p.lastScroll()
	p.remark = words
	if end {
		p.scroll = p.lastScroll()
	}
}

// enter puts a key into the line of input.
func (p *drillPage) enter(msg tea.KeyMsg) {
	if msg.Alt && msg.Type == tea.KeyRunes { // alt+a would type "a"
		return
	}
	problem, _ := p.lesson.Now()
	why := p.typing.Refuses(msg)
	if why == "" && p.typing.Text() == "" {
		why = parts.CannotBegin(worksheets.Signed, problem.System, msg)
	}
	if why != "" {
		p.note(why)
		return
	}
	p.typing.Take(msg)
}

// Resize is told the window, so that scrolling ends where the text does.
func (p *drillPage) Resize(width, height int) {
	p.width, p.height = width, height
	p.scrollTo(p.scroll)
}

func (p *drillPage) scrollTo(line int) {
	p.scroll = max(0, min(line, p.lastScroll()))
}

// lastScroll is how far it can scroll.
func (p *drillPage) lastScroll() int {
	known, said := p.parts(p.width)
	return max(0, len(known)+len(said)-p.room(p.width, p.height))
}

// parts are what is known and what was said, above the line of input.
func (p *drillPage) parts(width int) (known, said []string) {
	l := p.lesson
	if p.said.Words != "" {
		words, working := p.said.Lines(width)
		said = append(append([]string{""}, parts.Bold(words, p.styles)...), working...)
	}
	switch {
	case p.scored && !l.Ended():
		return nil, append(append(l.ScoreLines(width), ""), typeset.Wrap(itWaits, width)...)
	case p.scored:
		return nil, l.ScoreLines(width)
	case l.Ended():
		return said, append([]string{""}, l.ScoreLines(width)...)
	}
	known = l.ProblemLines(l.At, width)
	known[0] = p.styles.Answer.Render(known[0])
	if done := l.DoneWords(); done != "" {
		known = append(known, typeset.Hanging("  Done: ", done, width)...)
	}
	return known, said
}

// itWaits stands below a score that is not the last.
const itWaits = "Esc leaves, and the drill waits: ^d in a worksheet goes on here."

// question is what is remarked and asked, with the line of input and how it reads; where
// the score is shown nothing is asked.
func (p *drillPage) question(width int) (out []string) {
	if p.remark != "" {
		out = parts.Bold(typeset.Wrap(p.remark, width), p.styles)
	}
	if p.lesson.Ended() || p.scored {
		return out
	}
	if p.lesson.Finished() {
		return append(out, "> This problem is done. Enter for the next.")
	}
	problem, q := p.lesson.Now()
	const box = 18 // as wide as an answer in the form
	reading := ""
	if text := strings.TrimSpace(p.typing.Text()); text != "" {
		reading = p.styles.Stop.Render("cannot be read")
		if length, err := units.Parse(text, problem.System); err == nil {
			reading = "= " + drill.Scale(problem).Both(length)
		}
	}
	out = append(out, typeset.Hanging("> ", drill.AskWords(q, problem), width)...)
	return append(out, typeset.Cut("  ["+p.typing.Render(box, p.styles)+"] "+reading, width))
}

// room is how many lines what is known and said can take.
func (p *drillPage) room(width, height int) int {
	return max(0, height-len(p.question(width))-3) // title, a rule, the keys
}

func (p *drillPage) Render(width, height int) string {
	if parts.TooSmall(width, height) {
		return parts.SmallWindow(width, height)
	}
	known, said := p.parts(width)
	room := p.room(width, height)
	out := []string{p.styles.Heading.Render("Drill: practise the arithmetic") + fmt.Sprintf("   level %d, seed %d", p.lesson.Level, p.lesson.Seed)}
	out = append(out, strings.Split(typeset.Scrolled(append(known, said...), p.scroll, width, room), "\n")...)
	out = append(out, strings.Repeat("-", width))
	out = append(append(out, p.question(width)...), parts.KeyLine(p.keys(), p.styles, width))
	return typeset.Block(out, width, height)
}
