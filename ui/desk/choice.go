package desk

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/units"
	"capscye/worksheets"
)

// Choices: left and right go through them, and letters say them.

// choose goes through the options of a choice.
func (d *Desk) choose(by int) parts.Wish {
	k, _ := d.Focused()
	options, now := d.optionsOf(k)
	if now < 0 && by < 0 { // before the first comes the last
		now = 0
	}
	return d.push(k, options[(now+by+len(options))%len(options)].Answer)
}

// spell answers a choice by its words: a first letter chooses, the same again the next
// that has it, and more letters of a word the one that begins so. Digits and spaces
// choose nothing; backspace and delete empty a choice that nothing stands for.
func (d *Desk) spell(k worksheets.Key, msg tea.KeyMsg) parts.Wish {
	options, now := d.optionsOf(k)
	typed := strings.ToLower(string(msg.Runes))
	before := d.visit.letters
	d.visit.letters = ""
	switch {
	case k.Open() && (msg.Type == tea.KeyBackspace || msg.Type == tea.KeyDelete): // told by mistake, or as the sleeve again
		return d.push(k, "")
	case msg.Type == tea.KeyRunes && !strings.ContainsFunc(typed, unicode.IsDigit):
	case slices.Contains([]tea.KeyType{tea.KeyRunes, tea.KeySpace, tea.KeyBackspace, tea.KeyDelete}, msg.Type):
		d.Message = howToChoose(forms.SaidOf(options))
		return nil
	default:
		return nil
	}
	if n := saidBy(options, now, before+typed); before != "" && before != typed && n >= 0 {
		d.visit.letters = before + typed
		return d.push(k, options[n].Answer)
	}
	n := saidBy(options, now, typed)
	if n < 0 {
		d.Message = fmt.Sprintf("No choice begins with %s: %s.", parts.Quoted(typed), strings.Join(forms.SaidOf(options), ", "))
		return nil
	}
	if n == now { // the next that has the letter, where there is one
		n = saidBy(append(slices.Clone(options[now+1:]), options[:now+1]...), -1, typed)
		n = (n + now + 1) % len(options)
	}
	d.visit.letters = typed
	return d.push(k, options[n].Answer)
}

// howToChoose says what chooses: letters, where the choices begin with any.
func howToChoose(said []string) string {
	letters := ", or a first letter"
	if !slices.ContainsFunc(said, func(s string) bool { return unicode.IsLetter([]rune(s)[0]) }) {
		letters = ""
	}
	return "Left and right choose" + letters + ": " + strings.Join(said, ", ") + "."
}

// saidBy is the option that begins so, the one that is chosen now before others; -1 for
// none.
func saidBy(options []forms.Option, now int, typed string) int {
	begins := func(option forms.Option) bool {
		return slices.ContainsFunc(wordsOf(option), func(word string) bool { return strings.HasPrefix(word, typed) })
	}
	if now >= 0 && begins(options[now]) {
		return now
	}
	return slices.IndexFunc(options, begins)
}

// wordsOf are the beginnings that say an option: what is read, the words of the file, and
// units by all their names.
func wordsOf(option forms.Option) (words []string) {
	for _, word := range append(strings.Fields(option.Answer), option.Answer, option.Said) {
		words = append(words, word)
		for _, u := range units.UnitNames {
			if slices.Contains(u.Words, word) {
				words = append(words, u.Words...)
			}
		}
	}
	return words
}
