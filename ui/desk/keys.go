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
	Show  string   // as a person reads them
	Does  string
	Where string // on the page of keys: where it works, where not everywhere
	do    func(d *Desk, key string) parts.Wish
	// when tells whether the key works now; nil is always. A key that does not
	// is left out of the bottom line, and says why when it is pressed.
	when func(*Desk) (ok bool, why string)
	rare bool // only on the page of keys
}

// bindings are the table for the worksheet. The first match whose time it is
// wins; a key that nobody takes goes into the field.
var bindings = []binding{
	{keys: []string{"down", "up", "tab", "shift+tab"}, Show: "up/down", Does: "field", Where: "or tab", do: to((*Desk).moveField, "up", "shift+tab"), when: hasFields},
	{keys: []string{"esc"}, Show: "esc", Does: "as it was", Where: "in a form", do: plain((*Desk).giveBack), when: canGiveBack},
	{keys: []string{"enter"}, Show: "enter", Does: "keep, next", Where: "in a form", do: plain((*Desk).enterField), when: hasFields, rare: true},
	{keys: []string{"enter"}, Show: "enter", Does: "next step", Where: "on a page", do: to((*Desk).moveStep), when: onPage, rare: true},
	{keys: []string{"ctrl+a"}, Show: "^a", Does: "take guess", Where: "on a doubt", do: plain((*Desk).takeGuess), when: hasGuess},
	{keys: []string{"ctrl+b"}, Show: "^b", Does: "sizes", Where: "in step 3", do: typedFirst(ToSeeSizes{}), when: onPattern},
	{keys: []string{"ctrl+g"}, Show: "^g", Does: "other", Where: "with a copy", do: plain((*Desk).NextCopy), when: hasCopies},
	{keys: []string{"ctrl+x"}, Show: "^x", Does: "keep or drop", Where: "with a copy", do: typedFirst(ToSeeCopies{}), when: hasCopies},
	{keys: []string{"left", "right"}, Show: "left/right", Does: "push", Where: "on the slide", do: to((*Desk).pushSlide, "left"), when: onSlide},
	{keys: []string{"l"}, Show: "l", Does: "least", Where: "on the slide", do: slide("least"), when: onSlide},
	{keys: []string{"e"}, Show: "e", Does: "even", Where: "on the slide", do: slide("even"), when: onSlide},
	{keys: []string{"left", "right"}, Show: "left/right", Does: "choose", Where: "in a choice", do: to((*Desk).choose, "left"), when: onChoice},
	{keys: []string{"left", "right"}, Show: "left/right", Does: "one mark", Where: "on a length", do: to((*Desk).nudge, "left"), when: onLength},
	{keys: []string{" "}, Show: "space", Does: "done, next", Where: "in step 6", do: plain((*Desk).tick), when: onTrace},
	{keys: []string{"x"}, Show: "x", Does: "not done", Where: "in step 6", do: plain((*Desk).untick), when: onTrace, rare: true},
	{keys: []string{"left", "right", "home", "end"}, Show: "left/right", Does: "piece", Where: "in step 6", do: (*Desk).jump, when: onTrace, rare: true},
	{keys: []string{"t"}, Show: "t", Does: "table view", Where: "in step 6", do: asks(ToSeeTable{}), when: onTrace},
	{keys: []string{"n"}, Show: "n", Does: "note a fitting", Where: "in step 6", do: asks(ToNote{}), when: onTrace},
	{keys: []string{"c"}, Show: "c", Does: "card", Where: "in step 6", do: asks(ToPrint{}), when: onTrace},
	{keys: []string{"up", "down"}, Show: "up/down", Does: "step", Where: "in step 6", do: to((*Desk).moveTrace, "up"), when: onTrace},
	{keys: []string{"w"}, Show: "w", Does: "ways out", Where: "in step 5", do: asks(ToSeeOffers{}), when: onTrouble},
	{keys: []string{"up", "down"}, Show: "up/down", Does: "scroll", Where: "in step 5", do: to((*Desk).scrollBy, "up"), when: onMatch},
	{keys: []string{"pgdown", "pgup", "ctrl+n", "ctrl+p"}, Show: "pgdn/pgup", Does: "step", Where: "or ^n, ^p", do: to((*Desk).moveStep, "pgup", "ctrl+p")},
	{keys: []string{"f1", "f2", "f3", "f4", "f5", "f6", "alt+1", "alt+2", "alt+3", "alt+4", "alt+5", "alt+6"},
		Show: "f1-f6", Does: "to a step", Where: "or alt+1-6", do: (*Desk).StepNamed, rare: true},
	{keys: []string{"1", "2", "3", "4", "5", "6"}, Show: "1-6", Does: "to a step", Where: "on a page", do: (*Desk).StepNamed, when: onPage},
	{keys: []string{"ctrl+z"}, Show: "^z", Does: "undo", do: plain((*Desk).Undo), rare: true},
	{keys: []string{"ctrl+y"}, Show: "^y", Does: "redo", do: plain((*Desk).Redo), rare: true},
	{keys: []string{"ctrl+s"}, Show: "^s", Does: "save", do: plain((*Desk).AskSave)},
	{keys: []string{"ctrl+l"}, Show: "^l", Does: "what if", Where: "makes a copy", do: plain((*Desk).layCopy)},
	{keys: []string{"ctrl+f"}, Show: "^f", Does: "take from", Where: "a worksheet", do: plain((*Desk).takeHere), when: onMeasures, rare: true},
	{keys: []string{"ctrl+t"}, Show: "^t", Does: "in/cm", do: plain((*Desk).SwitchUnit)},
	{keys: []string{"ctrl+o"}, Show: "^o", Does: "worksheets", do: typedFirst(ToList{})},
	{keys: []string{"ctrl+r"}, Show: "^r", Does: "working", do: asks(ToSeeWorking{})},
	{keys: []string{"ctrl+d"}, Show: "^d", Does: "drill", do: asks(ToDrill{}), rare: true}, // delete does what it does in a line of input
	{keys: []string{"ctrl+e"}, Show: "^e", Does: "words", do: asks(ToSeeWords{}), rare: true},
	{keys: []string{"ctrl+k"}, Show: "^k", Does: "keys", Where: "or ?", do: asks(ToSeeKeys{})},
	{keys: []string{"ctrl+c", "ctrl+q"}, Show: "^c", Does: "end", Where: "or ^q", do: typedFirst(parts.ToQuit{})},
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
	return bindings[i].Show, true
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

// working are the keys whose time it is.
func (d *Desk) working() []parts.Key {
	var now []parts.Key
	for _, b := range bindings {
		if !b.rare && (b.when == nil || first(b.when(d))) {
			now = append(now, parts.Key{Show: b.Show, Does: b.Does})
		}
	}
	return now
}

// KeysText lists every key of the worksheet, in two columns where there is room,
// and what else is good to know.
func KeysText(width int) (out []string) {
	var rows []string
	for _, b := range bindings {
		rows = append(rows, typeset.Pad(b.Show, 11)+typeset.Pad(b.Does, 15)+b.Where)
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
		"~ before a length means rounded to the nearest ruler mark.",
	} {
		out = append(out, typeset.Wrap(text, width)...)
	}
	return out
}
