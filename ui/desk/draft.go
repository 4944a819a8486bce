package desk

import (
	"cmp"
	"errors"
	"fmt"
	"strings"

	"capscye/ui/compare"
	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/typeset"
	"capscye/units"
	"capscye/worksheets"
)

// What is typed and is no answer yet. It waits in its field as a draft, and the answer
// that was there stays, in the plan and in the file.

// doubt says that a text reads as no hand would mean it.
type doubt struct {
	text  string
	meant []string // what it may be
}

// Error says so, and what it may be.
func (e doubt) Error() string {
	if len(e.meant) == 1 {
		return fmt.Sprintf("is %q meant for %s? Enter takes that", e.text, e.meant[0])
	}
	return fmt.Sprintf("%q can be %s: put the space in", e.text, strings.Join(e.meant, " or "))
}

// MeantBy is the one thing that a doubted text may be, where there is one.
func MeantBy(err error) (text string, ok bool) {
	var e doubt
	if errors.As(err, &e) && len(e.meant) == 1 {
		return e.meant[0], true
	}
	return "", false
}

// typed is the sheet as it would be with what stands in the line of input; where that
// cannot be taken, it is the sheet as it is.
func (d *Desk) typed(k worksheets.Key) (worksheets.Sheet, error) {
	sheet := *d.Sheet()
	text, err := d.AsTyped(k, &d.typing, d.draft())
	if err != nil {
		return sheet, err
	}
	if err := sheet.Set(k, text); err != nil {
		return *d.Sheet(), err
	}
	return sheet, nil
}

// forFile is what is typed as an answer, with its unit where the file has another than what
// is shown.
func (d *Desk) forFile(k worksheets.Key, typed string) string {
	text := strings.TrimSpace(typed)
	if k.IsLength() && d.shown != 0 {
		return worksheets.WithUnit(text, d.shown)
	}
	return text
}

// AsTyped is what is typed as an answer for the file. err says that it reads as no hand
// would mean it; an answer of the file is not read so, unless a draft waits in its place.
func (d *Desk) AsTyped(k worksheets.Key, in *parts.Typing, draft string) (text string, err error) {
	text = d.forFile(k, in.Text())
	if !k.IsLength() {
		return text, nil
	}
	if meant := units.RunTogether(text); len(meant) > 0 && (in.Changed() || draft != "") {
		return text, doubt{in.Text(), meant}
	}
	return text, nil
}

// ToType is an answer, or what waits in its place, for the line of input.
func (d *Desk) ToType(k worksheets.Key, answer, draft string) string {
	if draft != "" {
		return draft
	}
	if k.IsLength() && d.shown != 0 { // a bare number would read as the other unit here
		return worksheets.WithUnit(answer, d.Sheet().Unit())
	}
	return answer
}

// draft is what waits in the field under the hands, "" for nothing.
func (d *Desk) draft() string {
	k, ok := d.Focused()
	if !ok {
		return ""
	}
	return d.Sheet().Drafts.Of(k)
}

// atValue tells that the hands have just reached an answer, or an empty field: there
// left and right change it, and typing replaces it.
func (d *Desk) atValue() bool { return d.typing.Untouched() && d.draft() == "" }

// Commit takes what was typed as the answer, or keeps it as a draft where it cannot be.
func (d *Desk) Commit() parts.Wish {
	k, ok := d.Focused()
	if !ok || forms.KindOf(k) == forms.ChoiceField || !d.typing.Changed() {
		return nil
	}
	sheet, err := d.typed(k)
	text := strings.TrimSpace(d.typing.Text())
	switch {
	case err != nil:
		d.putDraft(k, text)
		d.Message = fmt.Sprintf("%s cannot be read: %s.", parts.Quoted(text), d.stays(k))
		return nil
	case text == "" && d.draft() != "": // what was taken away is the draft
		d.putDraft(k, "")
		d.Message = typeset.Capitalised(d.stays(k)) + "; empty it again to clear it."
		return nil
	}
	return d.Answer(k, sheet.Text(k))
}

// typedTaken takes what is being typed as the answer, before something else is done. asks
// tells that this asks for a worksheet of one's own, and nothing is done before that.
func (d *Desk) typedTaken() (w parts.Wish, asks bool) {
	asks = d.AsksOwn()
	w = d.Commit()
	return w, asks && w != nil
}

// TypedFirst takes what is being typed as the answer, and wants one thing that sees to it
// that all is saved.
func (d *Desk) TypedFirst(w parts.Wish) parts.Wish {
	if own, asks := d.typedTaken(); asks {
		return own
	}
	return w
}

// takeWaiting takes a text that waits in its field and reads after all: a crash came while
// it was typed.
func (d *Desk) takeWaiting() parts.Wish {
	k, ok := d.Focused()
	if !ok || d.draft() == "" || d.typing.Changed() {
		return nil
	}
	sheet, err := d.typed(k)
	if err != nil {
		return nil
	}
	return d.Answer(k, sheet.Text(k))
}

// unfinished tells that a text which waits for an answer could be one.
func (d *Desk) unfinished(k worksheets.Key, draft string) bool {
	sheet := *d.Sheet()
	return sheet.Set(k, draft) == nil && (!k.IsLength() || len(units.RunTogether(draft)) == 0)
}

// Answer takes a readable text as an answer; for an example it asks for a worksheet of
// one's own first.
func (d *Desk) Answer(k worksheets.Key, text string) parts.Wish {
	if d.AsksOwn() { // and what was typed stands in its field behind the question
		return ToOwn{First: &TypedAnswer{Key: k, Text: text}}
	}
	if d.Full() { // what was typed waits until there is room for it
		d.putDraft(k, text)
		d.Message = d.Closed()
		return nil
	}
	return d.Set(k, text)
}

// putDraft lets a text wait in a field; "" takes it away.
func (d *Desk) putDraft(k worksheets.Key, text string) {
	if d.Shut() {
		d.Message = d.ReadOnly()
		d.reach()
		return
	}
	sheet := *d.Sheet()
	sheet.Drafts = sheet.Drafts.With(k, text)
	d.LetWait(sheet, forms.Fields[k].Words)
}

// stays says what an answer is while a draft waits: "bicep stays 13 3/4 in".
func (d *Desk) stays(k worksheets.Key) string {
	if d.Sheet().Text(k) == "" {
		return forms.Fields[k].Words + " stays empty"
	}
	return forms.Fields[k].Words + " stays " + d.answerWords(k)
}

// emptyWord says of an answer that there is none.
const emptyWord = "empty"

func (d *Desk) answerWords(k worksheets.Key) string {
	return cmp.Or(compare.AnswerText(d.Rep, k), typeset.Plain(d.Sheet().Text(k)), emptyWord)
}

// giveBack brings back what was in the field before something was typed, what was there
// before a draft, and what was there before a key pushed it. Pressed once more it brings
// what was typed or pushed.
func (d *Desk) giveBack() parts.Wish {
	k, _ := d.Focused()
	switch {
	case d.typing.Changed():
		d.typing.GiveBack()
		d.Message = "As it was. Esc again brings back what you typed."
	case d.draft() != "":
		d.putDraft(k, "")
		d.Message = typeset.Capitalised(d.stays(k)) + ". ^z brings back what you typed."
	case d.typing.CanTypeAgain():
		d.typing.TypeAgain()
	default:
		return d.bringBack()
	}
	d.foresee()
	return nil
}

// canGiveBack tells that esc has something to bring back.
func canGiveBack(d *Desk) (bool, string) {
	k, ok := d.Focused()
	pushed := ok && d.visit.key == k && (d.visit.pushed() || d.visit.given != nil)
	return d.typing.Changed() || d.typing.CanTypeAgain() || d.draft() != "" || pushed, ""
}

// meant is what is offered instead of what was typed.
func (d *Desk) meant() (text string, ok bool) {
	k, at := d.Focused()
	if !at || forms.KindOf(k) == forms.ChoiceField {
		return "", false
	}
	_, err := d.typed(k)
	return MeantBy(err)
}

// takeMeant takes what is offered.
func (d *Desk) takeMeant(text string) parts.Wish {
	k, _ := d.Focused()
	w := d.Answer(k, text)
	if d.Message == "" && !d.AsksOwn() {
		d.Message = fmt.Sprintf("%s is now %s. ^z undoes that.", typeset.Capitalised(forms.Fields[k].Words), d.answerWords(k))
	}
	return w
}

// bareUnit is what a bare number is read as.
func (d *Desk) bareUnit() units.System {
	if d.shown != 0 {
		return d.shown
	}
	return d.Sheet().Unit()
}

// SizeWords names an answer of a size.
func SizeWords(size, words string) string {
	switch size {
	case "":
		return words
	case worksheets.AnotherSize:
		return "another size"
	}
	return words + " of size " + typeset.Plain(size)
}
