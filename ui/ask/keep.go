package ask

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"capscye/ui/console"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// Where the answers go: to the file of the worksheet at once, each of them; to a
// file beside it when something else wrote that one; to a name asked for at the
// end when there is no file.

// unnamed stands for the worksheet that has no file yet.
const unnamed = "new worksheet"

// takeUp offers the worksheets that runs ended without giving them a name, one
// after the other, until one is taken up; nil for none. What nobody decided about
// stays kept.
func (a *asking) takeUp() (*worksheets.Document, error) {
	const how = "Answer yes to go on with it, drop to throw it away, or later, or just Enter, to leave it where it is; quit stops."
	a.place = worksheets.OpenRecovery(unnamed)
	left, _ := a.place.Left()
	a.undecided = left.Versions
	for at := 0; at < len(a.undecided); {
		one := report.Reckon(&worksheets.Document{Sheet: a.undecided[at]}, a.today, 0)
		a.say("%s, left without a name on %s. Go on with it: yes, drop or later?", one.Name(), console.DayAndTime(left.At))
		h, heard := a.listen()
		word := strings.ToLower(strings.TrimSpace(h.Text))
		begins := func(whole string) bool { return word != "" && strings.HasPrefix(whole, word) }
		switch {
		case !heard || word == "quit":
			return nil, errNotBegun
		case begins("yes"):
			d := worksheets.New(worksheets.Sheet{})
			d.Sheet, a.undecided = a.undecided[at], slices.Delete(slices.Clone(a.undecided), at, at+1)
			return d, nil
		case begins("drop"):
			a.undecided = slices.Delete(slices.Clone(a.undecided), at, at+1)
			a.settle(a.keepElsewhere())
		case word == "" || begins("later"):
			at++
		default:
			for _, p := range one.Pieces() {
				a.say("%s.", typeset.Spoken(p.NeedWords(one.Scale)))
			}
			a.say("%s", how)
		}
	}
	return nil, nil
}

// keepElsewhere keeps a worksheet that has no file yet, or whose file cannot be
// written, against the end of the program, and what earlier runs left.
func (a *asking) keepElsewhere() error {
	list := a.undecided
	if a.doc != nil && !a.doc.Saved() {
		list = append([]worksheets.Sheet{a.doc.Sheet}, list...)
	}
	if len(list) == 0 {
		return a.place.Drop()
	}
	return a.place.Keep(worksheets.Leftover{At: time.Now(), Versions: list})
}

// sayLeft says what is known of a worksheet with a file from other runs.
func (a *asking) sayLeft(name string) {
	if name == "" {
		return
	}
	a.place = worksheets.OpenRecovery(name)
	if !a.place.Alone() {
		a.say("%s", console.OpenElsewhere)
	}
	left, _ := a.place.Left()
	a.undecided = left.Versions
	a.doc.Sheet.Drafts = left.Drafts
	a.sayDrafts()
	if len(left.Versions) > 0 {
		a.say("Unsaved work of %s is safe; open the file with capscye, on a screen, to get it back.", console.DayAndTime(left.At))
	}
}

// keep saves what is not saved yet. What cannot be is said, and tried again with
// the next answer.
func (a *asking) keep() {
	if a.doc.Saved() {
		return
	}
	if a.doc.LosesComments() {
		a.say("Saving rewrites %s as a whole, without its comments; the old file is kept beside it.", typeset.Plain(a.doc.Path()))
	}
	backup, err := a.doc.Save()
	if backup != "" {
		a.say("The old file is saved as %s.", typeset.Plain(backup))
	}
	if errors.Is(err, worksheets.ErrChanged) {
		err = a.keepBeside()
	}
	if err != nil || a.unsaved != "" { // at the next start a screen lays it beside
		err = errors.Join(err, a.keepElsewhere())
	}
	a.settle(err)
}

// settle remembers and says how a save went, without saying the same again.
func (a *asking) settle(err error) {
	was := a.unsaved
	a.unsaved = ""
	if err != nil {
		a.unsaved = typeset.Plain(console.FileWords(err))
	}
	switch {
	case a.unsaved == was:
	case a.unsaved == "":
		a.say("Saved now, with everything before.")
	default:
		a.say("Not saved: %s. Nothing is lost yet; the next answer tries again.", a.unsaved)
	}
}

// keepBeside leaves the file as something else wrote it, and goes on in one
// beside it.
func (a *asking) keepBeside() error {
	beside, err := a.doc.KeepBeside()
	if err != nil {
		return err
	}
	theirs := a.doc.Path()
	d, err := worksheets.Load(beside)
	if err != nil {
		return err
	}
	a.doc, a.elsewhere = d, true
	a.say("Another program changed %s since it was read here, so it stays as it is. "+
		"Your answers, these and those to come, are saved in %s.", typeset.Plain(theirs), typeset.Plain(beside))
	return nil
}

// askName asks where a worksheet that has no file is saved; at the end of the
// answers it takes the name that it suggests. back tells that the person wants to
// go back to the questions.
func (a *asking) askName() (back bool) {
	for a.doc.Path() == "" {
		suggestion := firstFree(console.FileNameFor(a.doc.Sheet.Text(worksheets.Title)))
		if a.heard.Status != 0 { // nobody is asked any more
			a.keepAs(suggestion)
			return false
		}
		a.say("File name? Enter for %s.", suggestion)
		h, ok := a.listen()
		word := strings.ToLower(strings.TrimSpace(h.Text))
		switch {
		case !ok || word == "" || word == "quit":
			if a.keepAs(suggestion); !ok || word == "quit" {
				return false
			}
		case h.TooLong || strings.ContainsFunc(h.Text, typeset.Unprintable):
			a.say("That is no file name; type one such as blouse.toml.")
		case word == "back":
			return true
		case strings.HasPrefix(word, "?"):
			a.explainWord(word, "The worksheet is saved in this folder; .toml is added to its name if it is missing. back goes to the questions.")
		default:
			path, refusal := console.FreeName(strings.TrimPrefix(strings.TrimSpace(h.Text), "="))
			if refusal != "" {
				a.say("%s", refusal)
				continue
			}
			a.keepAs(path)
		}
	}
	return false
}

// keepAs saves under a first name. One that cannot be written is none.
func (a *asking) keepAs(path string) {
	a.doc.SetPath(path)
	_, err := a.doc.Save()
	if err != nil {
		a.doc.SetPath("")
	}
	if a.settle(err); err == nil {
		_ = a.keepElsewhere() // at worst it is offered once more
	}
}

// firstFree is the name, or with a number the first that nothing has.
func firstFree(name string) string {
	base := strings.TrimSuffix(name, worksheets.Ending)
	for n := 2; console.Exists(name); n++ {
		name = fmt.Sprintf("%s-%d%s", base, n, worksheets.Ending)
	}
	return name
}
