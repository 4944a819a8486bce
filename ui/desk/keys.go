package desk

import (
	"slices"

	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// binding is one row of a table of keys. The bottom line and the page of keys
// are made from these tables, so help cannot say what is not so.
type binding struct {
	keys  []string // as bubbletea names them
	show  string   // as a person reads them
	does  string
	where string // on the page of keys: where it works, where not everywhere
	do    func(d *Desk, key string) parts.Wish
	// when tells whether the key works now; nil is always. A key that does not
	// is left out of the bottom line, and says why when it is pressed.
	when func(*Desk) (ok bool, why string)
	rare bool // only on the page of keys
}

// bindings are the table for the worksheet. The first match whose time it is
// wins; a key that nobody takes goes into the field.
var bindings = []binding{
	{keys: []string{"down", "up", "tab", "shift+tab"}, show: "up/down", does: "field", where: "or tab", do: to((*Desk).moveField, "up", "shift+tab"), when: hasFields},
	{keys: []string{"esc"}, show: "esc", does: "as it was", where: "in a form", do: plain((*Desk).giveBack), when: canGiveBack},
	{keys: []string{"enter"}, show: "enter", does: "keep, next", where: "in a form", do: plain((*Desk).enterField), when: hasFields, rare: true},
	{keys: []string{"enter"}, show: "enter", does: "next step", where: "on a page", do: to((*Desk).moveStep), when: onPage, rare: true},
	{keys: []string{"ctrl+a"}, show: "^a", does: "take guess", where: "on a doubt", do: plain((*Desk).takeGuess), when: hasGuess},
	{keys: []string{"ctrl+b"}, show: "^b", does: "sizes", where: "in step 3", do: typedFirst(ToSeeSizes{}), when: onPattern},
	{keys: []string{"ctrl+g"}, show: "^g", does: "other", where: "with a copy", do: plain((*Desk).NextCopy), when: hasCopies},
	{keys: []string{"ctrl+x"}, show: "^x", does: "keep or drop", where: "with a copy", do: typedFirst(ToSeeCopies{}), when: hasCopies},
	{keys: []string{"left", "right"}, show: "left/right", does: "push", where: "on the slide", do: to((*Desk).pushSlide, "left"), when: onSlide},
	{keys: []string{"l"}, show: "l", does: "least", where: "on the slide", do: slide("least"), when: onSlide},
	{keys: []string{"e"}, show: "e", does: "even", where: "on the slide", do: slide("even"), when: onSlide},
	{keys: []string{"left", "right"}, show: "left/right", does: "choose", where: "in a choice", do: to((*Desk).choose, "left"), when: onChoice},
	{keys: []string{"left", "right"}, show: "left/right", does: "one mark", where: "on a length", do: to((*Desk).nudge, "left"), when: onLength},
	{keys: []string{" "}, show: "space", does: "done, next", where: "in step 6", do: plain((*Desk).tick), when: onTrace},
	{keys: []string{"x"}, show: "x", does: "not done", where: "in step 6", do: plain((*Desk).untick), when: onTrace, rare: true},
	{keys: []string{"left", "right", "home", "end"}, show: "left/right", does: "piece", where: "in step 6", do: (*Desk).jump, when: onTrace, rare: true},
	{keys: []string{"t"}, show: "t", does: "table view", where: "in step 6", do: asks(ToSeeTable{}), when: onTrace},
	{keys: []string{"n"}, show: "n", does: "note a fitting", where: "in step 6", do: asks(ToNote{}), when: onOwnTrace},
	{keys: []string{"c"}, show: "c", does: "card", where: "in step 6", do: asks(ToPrint{}), when: onTrace},
	{keys: []string{"up", "down"}, show: "up/down", does: "step", where: "in step 6", do: to((*Desk).moveTrace, "up"), when: onTrace},
	{keys: []string{"w"}, show: "w", does: "ways out", where: "in step 5", do: asks(ToSeeOffers{}), when: onTrouble},
	{keys: []string{"up", "down"}, show: "up/down", does: "scroll", where: "in step 5", do: to((*Desk).scrollBy, "up"), when: onMatch},
	{keys: []string{"pgdown", "pgup", "ctrl+n", "ctrl+p"}, show: "pgdn/pgup", does: "step", where: "or ^n, ^p", do: to((*Desk).moveStep, "pgup", "ctrl+p")},
	{keys: []string{"f1", "f2", "f3", "f4", "f5", "f6", "alt+1", "alt+2", "alt+3", "alt+4", "alt+5", "alt+6"},
		show: "f1-f6", does: "to a step", where: "or alt+1-6", do: (*Desk).StepNamed, rare: true},
	{keys: []string{"1", "2", "3", "4", "5", "6"}, show: "1-6", does: "to a step", where: "on a page", do: (*Desk).StepNamed, when: onPage},
	{keys: []string{"ctrl+z"}, show: "^z", does: "undo", do: plain((*Desk).Undo), rare: true},
	{keys: []string{"ctrl+y"}, show: "^y", does: "redo", do: plain((*Desk).Redo), rare: true},
	{keys: []string{"ctrl+s"}, show: "^s", does: "save", do: plain((*Desk).AskSave)},
	{keys: []string{"ctrl+l"}, show: "^l", does: "what if", where: "makes a copy", do: plain((*Desk).layCopy)},
	{keys: []string{"ctrl+f"}, show: "^f", does: "take from", where: "a worksheet", do: plain((*Desk).takeHere), when: onMeasures, rare: true},
	{keys: []string{"ctrl+t"}, show: "^t", does: "in/cm", do: plain((*Desk).SwitchUnit)},
	{keys: []string{"ctrl+o"}, show: "^o", does: "worksheets", do: typedFirst(ToList{})},
	{keys: []string{"ctrl+r"}, show: "^r", does: "working", do: asks(ToSeeWorking{})},
	{keys: []string{"ctrl+d"}, show: "^d", does: "drill", do: asks(ToDrill{}), rare: true}, // delete does what it does in a line of input
	{keys: []string{"ctrl+e"}, show: "^e", does: "words", do: asks(ToSeeWords{}), rare: true},
	{keys: []string{"ctrl+k"}, show: "^k", does: "keys", where: "or ?", do: asks(ToSeeKeys{})},
	{keys: []string{"ctrl+c", "ctrl+q"}, show: "^c", does: "end", where: "or ^q", do: typedFirst(parts.ToQuit{})},
}

// The ways in which bindings do what they do.

// plain does the same whichever of its keys it was.
func plain(do func(*Desk) parts.Wish) func(*Desk, string) parts.Wish {
	return func(d *Desk, _ string) parts.Wish { return do(d) }
}

// to moves something by one: on, or back where the key is one of those that go back.
func to(move func(d *Desk, by int) parts.Wish, back ...string) func(*Desk, string) parts.Wish {
	return func(d *Desk, key string) parts.Wish { return move(d, parts.By(key, back...)) }
}

// asks wants one thing.
func asks(w parts.Wish) func(*Desk, string) parts.Wish {
	return func(*Desk, string) parts.Wish { return w }
}

// typedFirst is [Desk.TypedFirst].
func typedFirst(w parts.Wish) func(*Desk, string) parts.Wish {
	return func(d *Desk, _ string) parts.Wish { return d.TypedFirst(w) }
}

// slide sets the slide to one of its words.
func slide(word string) func(*Desk, string) parts.Wish {
	return func(d *Desk, _ string) parts.Wish { return d.push(worksheets.Slide, word) }
}

func hasFields(d *Desk) (bool, string) {
	return len(forms.Items[d.step]) > 0, "this step has nothing to fill in"
}

// onSlide is the slide, until somebody types a length into it.
func onSlide(d *Desk) (bool, string) {
	return d.on(forms.SlideField) && d.atValue(), "this pushes the slide, in step 4"
}

func onChoice(d *Desk) (bool, string) { return d.on(forms.ChoiceField), "" }

// onLength is a length, until somebody types in it.
func onLength(d *Desk) (bool, string) { return d.on(forms.LengthField) && d.atValue(), "" }

func hasCopies(d *Desk) (bool, string) {
	return len(d.Copies) > 0, "no copy yet: ^l makes one"
}

func onPage(d *Desk) (bool, string) { return len(forms.Items[d.step]) == 0, "" }

func onTrace(d *Desk) (bool, string) { return d.step == forms.Trace, "" }

// onOwnTrace is step 6, but of an example, which nobody fits.
func onOwnTrace(d *Desk) (bool, string) {
	if d.step == forms.Trace && d.IsExample() {
		return false, "notes go into your own worksheet; this is an example: ^s begins one"
	}
	return onTrace(d)
}

// onTrouble is step 5 while something could be mended.
func onTrouble(d *Desk) (bool, string) {
	return d.step == forms.Match && mendable(d.Rep), "no single change is known that would help; the ways out are said with each check"
}

func onMeasures(d *Desk) (bool, string) {
	return d.step == forms.Body || d.step == forms.Pattern, "step 1 takes the body of another worksheet, step 3 the pattern"
}

func onPattern(d *Desk) (bool, string) {
	return d.step == forms.Pattern, "step 3 shows the sizes of the pattern"
}

func onMatch(d *Desk) (bool, string) { return d.step == forms.Match, "" }

// find is the binding that takes a key now.
func (d *Desk) find(key string) (binding, bool) {
	for _, b := range bindings {
		if slices.Contains(b.keys, key) && (b.when == nil || first(b.when(d))) {
			return b, true
		}
	}
	return binding{}, false
}

// ShownFor is how a key of the worksheet is shown, where it has one.
func ShownFor(key string) (show string, ok bool) {
	i := slices.IndexFunc(bindings, func(b binding) bool { return slices.Contains(b.keys, key) })
	if i < 0 {
		return "", false
	}
	return bindings[i].show, true
}

// whyNot is the reason that a key does nothing now, if the table knows one.
func (d *Desk) whyNot(key string) string {
	for _, b := range bindings {
		if b.when != nil && slices.Contains(b.keys, key) {
			if ok, why := b.when(d); !ok && why != "" {
				return typeset.Capitalised(why) + "."
			}
		}
	}
	return ""
}

func first(ok bool, _ string) bool { return ok }

// keysNow are the keys whose time it is.
func (d *Desk) keysNow() []parts.Key {
	var now []parts.Key
	for _, b := range bindings {
		if !b.rare && (b.when == nil || first(b.when(d))) {
			now = append(now, parts.Key{Show: b.show, Does: b.does})
		}
	}
	return now
}

// KeysText lists every key of the worksheet, in two columns where there is room,
// and what else is good to know.
func KeysText(width int) (out []string) {
	var rows []string
	for _, b := range bindings {
		rows = append(rows, typeset.Pad(b.show, 11)+typeset.Pad(b.does, 15)+b.where)
	}
	if width >= 76 {
		half := (len(rows) + 1) / 2
		for i := range rows[half:] {
			rows[i] = typeset.Pad(rows[i], width/2) + rows[half+i]
		}
		rows = rows[:half]
	}
	return append(append(out, rows...), TypingText(width)...)
}

// TypingText is what is good to know of typing.
func TypingText(width int) (out []string) {
	for _, text := range []string{
		"Typing replaces what is in a field, delete empties it, home and end go into it.",
		"Letters answer a choice. What cannot be read waits; the answer stays.",
		`Lengths: 13 3/4, 13-3/4, 13.75 or 13,75, with in, ", cm or mm, or nothing.`,
		"~ before a length means rounded.",
	} {
		out = append(out, typeset.Wrap(text, width)...)
	}
	return out
}
