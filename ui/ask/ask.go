// Package ask asks for a worksheet a line at a time, without a screen. It asks what the
// forms ask; answers.go words a question and reads its answer, keep.go saves.
package ask

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"
	"time"

	"capscye/ui/console"
	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/show"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// The worksheet as questions, a line each: for a screen reader, a slow line, a
// pipe. Nothing here needs a terminal: no colour, no cursor, no columns.

// Run asks for a worksheet, and ends with the answer.
func Run(s *console.Session, names []string) error {
	a := &asking{conversation: conversation{out: s.Out, heard: console.Listen(s.In)}, today: s.Today, group: -1}
	defer a.heard.Stop()
	err := a.open(names)
	defer a.place.Close()
	switch {
	case errors.Is(err, errNotBegun):
		a.say("No worksheet was made.")
		s.Worse(max(console.ExitUnfinished, a.heard.Status))
		return a.broken
	case err != nil:
		s.Worse(console.ExitUnread)
		s.Complain(err)
		return nil
	case a.doc.ReadOnly != "":
		a.say("%s stays as it is: %s.", typeset.Plain(a.doc.Path()), typeset.Plain(a.doc.ReadOnly))
	default:
		a.converse()
	}
	if a.heard.Status == 0 {
		a.reckon() // its file may have given it a name since
		a.conclude()
	}
	a.sayWhere()
	if !a.rep.Whole() || a.unsaved != "" || a.elsewhere {
		s.Worse(console.ExitUnfinished)
	}
	if a.unsaved != "" {
		s.Complain(errors.New("not saved: " + a.unsaved))
		if kept := a.place.Path(); kept != "" {
			s.Complain(errors.New("your answers are safe in " + kept + "; open the file with capscye to get them back"))
		}
	}
	s.Worse(a.heard.Status)
	return a.broken
}

// asking is a worksheet being asked for.
type asking struct {
	conversation
	today time.Time

	doc   *worksheets.Document
	rep   report.Report
	at    int // the question at hand
	group int // the one whose heading was said last
	quit  bool

	offered func() // takes what was probably meant, where yes is answered

	place     *worksheets.Recovery // where what has no file yet is kept
	undecided []worksheets.Sheet   // what earlier runs left there
	unsaved   string               // why the latest answers are not on disk
	elsewhere bool                 // the answers go to another file than the one that was named
}

// conversation is what is said and what is heard.
type conversation struct {
	out    io.Writer
	broken error // why nothing can be said any more
	heard  *console.Listener
}

func (c *conversation) say(format string, args ...any) {
	if c.broken != nil {
		return
	}
	if _, err := fmt.Fprintf(c.out, format+"\n", args...); err != nil {
		c.broken = fmt.Errorf("cannot write: %w", err)
	}
}

// listen waits for a line; there is none to wait for once nobody hears the
// questions.
func (c *conversation) listen() (h console.Line, ok bool) {
	if c.broken != nil {
		return console.Line{}, false
	}
	return c.heard.Next()
}

// errNotBegun says that the person went away before there was a worksheet.
var errNotBegun = errors.New("no worksheet was made")

// open reads the worksheet, or begins it.
func (a *asking) open(names []string) (err error) {
	name := ""
	switch {
	case len(names) == 1 && names[0] == "-":
		return errors.New("ask reads the answers from standard input, so the worksheet has to be a file")
	case len(names) == 1:
		a.doc, name, err = console.LoadNamed(names[0])
		if !errors.Is(err, fs.ErrNotExist) {
			break
		}
		if err = console.MayBegin(name); err != nil {
			break
		}
		a.say("%s does not exist yet.", typeset.Plain(name))
		fallthrough
	default:
		a.doc, err = a.begin(name)
	}
	if err == nil {
		a.reckon()
		a.sayLeft(name)
	}
	return err
}

// begin asks for the unit, without which no number means anything, and makes a
// new worksheet; its file at once, if it has a name.
func (a *asking) begin(name string) (*worksheets.Document, error) {
	if name == "" {
		if d, err := a.takeUp(); d != nil || err != nil {
			return d, err
		}
		a.say("New worksheet; you name it at the end.")
	}
	for {
		a.say("Begin it in inches or in centimetres?")
		h, ok := a.listen()
		switch word := strings.ToLower(strings.TrimSpace(h.Text)); {
		case !ok || word == "quit":
			return nil, errNotBegun
		case strings.HasPrefix(word, "?"):
			a.explainWord(word, forms.Fields[worksheets.Unit].Hint+" Answer inches or centimetres; quit begins nothing.")
		default:
			sys, err := unitNamed(word)
			switch {
			case err != nil:
				a.refuse(err)
			case name == "":
				return worksheets.New(forms.Begin(sys)), nil
			default:
				return console.Begun(name, forms.Begin(sys))
			}
		}
	}
}

func (a *asking) reckon() { a.rep = report.Reckon(a.doc, a.today, 0) }

// commandWords are what can be said besides an answer.
const commandWords = "Enter keeps, back and next move, empty clears, ? explains, ? and a word explains that word, ?? says this again, " +
	"quit ends and reads the result."

// converse asks every question, and for a name if there is none.
func (a *asking) converse() {
	a.say("%s. %s", a.rep.Name(), a.rep.ScaleWords())
	var five []string
	for _, k := range forms.Enough {
		five = append(five, forms.Fields[k].Words)
	}
	a.say("%d questions; %d are enough for a plan, and come first: %s.", a.asked(questions), len(five), strings.Join(five, ", "))
	a.say("%s", commandWords)
	for {
		a.askAll()
		if a.heard.Status != 0 {
			a.say("") // the terminal may have shown the key that ended it
		}
		if a.doc.Path() != "" || !a.doc.Changed() {
			break
		}
		if !a.askName() {
			break
		}
		a.quit, a.at = false, len(questions)-1
	}
	if a.doc.Path() != "" {
		a.keep()
	}
}

// askAll asks from the question at hand on, until there are no more questions, or
// no more answers.
func (a *asking) askAll() {
	for a.at < len(questions) && !a.quit {
		q := questions[a.at]
		if a.passes(q) {
			a.at++
			continue
		}
		if q.key == otherSize {
			if !a.askSize(q) {
				return
			}
			continue
		}
		a.announce(q.group)
		a.say("%s", a.question(q.key))
		if q.key.IsLength() {
			a.offerDraft(a.doc.Sheet.Drafts.Of(q.key), func(meant string) { a.take(q.key, meant) })
		}
		h, ok := a.listen()
		if !ok {
			return
		}
		a.hear(q, h)
	}
}

// announce says the heading, once on coming to it.
func (a *asking) announce(group int) {
	if group == a.group {
		return
	}
	g, text := groups[group], ""
	if g.step != noStep && (a.group < 0 || groups[a.group].step != g.step) {
		text = fmt.Sprintf("Step %d, %s. ", g.step+1, forms.StepNames[g.step])
	}
	if g.heading != "" {
		heading := g.heading
		if g.step != noStep { // which was just named
			heading = strings.TrimPrefix(heading, forms.StepNames[g.step]+": ")
		}
		text += typeset.Capitalised(heading) + ". "
	}
	words := a.questionsWords(g)
	if a.group < 0 { // said once
		words += "; next skips them"
	}
	a.group = group
	a.say("%s%s.", text, words)
}

// hear takes a line: a word that steers, or an answer.
func (a *asking) hear(q questionOf, h console.Line) {
	text := strings.TrimSpace(h.Text)
	switch word := strings.ToLower(text); {
	case a.takesOffer(word):
	case h.TooLong || len([]rune(text)) > forms.LongestAnswer:
		a.tooLong()
	case word == "":
		a.at++
	case word == "back" && a.at == 0:
		a.say("This is the first question.")
	case word == "back":
		for a.at--; a.at > 0 && a.passes(questions[a.at]); { // the first never is
			a.at--
		}
	case word == "next":
		a.at = groups[q.group].from + groups[q.group].count
	case word == "quit":
		a.quit = true
	case word == "??":
		a.say("%s", commandWords)
	case strings.HasPrefix(word, "?"):
		a.explainWord(word, a.explanation(q.key)...)
	case word == "empty":
		a.take(q.key, "")
	default:
		a.take(q.key, strings.TrimPrefix(text, "="))
	}
}

// take takes an answer, and says what is wrong with one that cannot be read.
func (a *asking) take(k worksheets.Key, text string) {
	if a.runTogether(k, text, func(meant string) { a.take(k, meant) }) {
		return
	}
	sheet := a.doc.Sheet
	text, err := readAnswer(&sheet, k, text)
	if err == nil {
		err = sheet.Set(k, text)
	}
	if err != nil {
		a.refuse(err)
		return
	}
	a.put(sheet, k)
	g := a.rep.GuessFor(k)
	a.offerGuess(g, &a.doc.Sheet, func() { a.put(g.In(a.doc.Sheet), k) })
	a.at++
}

// put puts a changed sheet in the place of the one before, reads answers of it back, says
// what is new, and saves.
func (a *asking) put(sheet worksheets.Sheet, answered ...worksheets.Key) {
	before, typed := a.rep, a.doc.Sheet.Drafts
	a.doc.Sheet = sheet
	a.reckon()
	if before.Scale.System != a.rep.Scale.System {
		a.say("Nothing that was measured changes. The ruler stays %s.", sheet.Ruler())
	}
	for _, k := range answered {
		a.say("%s: %s", typeset.Capitalised(forms.Fields[k].Words), a.readBack(k))
	}
	for _, line := range news(before, a.rep, answered...) {
		a.say("%s", line)
	}
	if a.doc.Path() != "" {
		a.keep()
	} else {
		a.settle(a.keepElsewhere())
	}
	if a.doc.Sheet.Drafts = sheet.Drafts; !sheet.Drafts.Equal(typed) { // there is an answer now; the file has no drafts
		a.place.Typed(sheet.Drafts)
		a.settle(a.keepElsewhere())
	}
}

func (a *asking) tooLong() {
	a.say("Too long: at most %d characters; nothing was changed.", forms.LongestAnswer)
}

func (a *asking) refuse(err error) { a.say("%s.", typeset.Capitalised(typeset.Plain(err.Error()))) }

// explainWord answers "?" with an explanation, and "? word" with that word.
func (a *asking) explainWord(word string, otherwise ...string) {
	word = strings.TrimSpace(strings.TrimPrefix(word, "?"))
	if word == "" {
		for _, line := range otherwise {
			a.say("%s", line)
		}
		return
	}
	found, err := wording.Find(word)
	if err != nil {
		a.refuse(err)
	}
	for _, w := range found {
		a.say("%s", typeset.Capitalised(w.Line()))
	}
}

// conclude says all that is known.
func (a *asking) conclude() {
	said := show.Sentences(a.rep, false)
	for _, line := range said.Lines() {
		a.say("%s", line)
	}
}

// sayWhere says where the answers are kept.
func (a *asking) sayWhere() {
	switch {
	case a.doc.ReadOnly != "" || a.unsaved != "":
	case a.doc.Path() == "":
		a.say("Nothing was answered, so nothing is saved.")
	default:
		a.say("Saved in %s.", typeset.Plain(a.doc.Path()))
		if shown := console.ForShell(a.doc.Path()); shown != "" && len(a.doc.Sheet.Sizes) > 0 {
			a.say("To hear the sizes compared:\ncapscye sizes --sentences %s", shown) // alone on its line, to be copied
		}
	}
}

// unitNamed reads a unit, in short or in full.
func unitNamed(word string) (units.System, error) {
	one, named, err := units.ParseNamed("1 "+word, units.Inches) // any way in which a length names it
	for sys, length := range map[units.System]units.Length{units.Inches: units.Inch, units.Centimetres: units.Centimetre} {
		if word != "" && (err == nil && named && one == length || strings.HasPrefix(wording.UnitWords(sys), strings.ToLower(word))) {
			return sys, nil
		}
	}
	const want = "Answer inches (in) or centimetres (cm)"
	if word == "" {
		return 0, errors.New(typeset.Uncapitalised(want)) // whoever refuses begins a sentence with it
	}
	return 0, &worksheets.ValueError{Input: word, Reason: "is not a unit here", Want: want}
}
