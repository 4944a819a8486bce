package ui

import (
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"capscye/ui/forms"
	"capscye/ui/typeset"
)

// binding is one row of a table of keys. The bottom line and the page of keys
// are made from these tables, so help cannot say what is not so.
type binding struct {
	keys  []string // as bubbletea names them
	show  string   // as a person reads them
	does  string
	where string // on the page of keys: where it works, where not everywhere
	act   action
	// when tells whether the key works now; nil is always. A key that does not
	// is left out of the bottom line, and says why when it is pressed.
	when func(*desk) (ok bool, why string)
	rare bool // only on the page of keys
}

// action is what a key of the worksheet does.
type action uint8

const (
	actNextField action = iota
	actPrevField
	actEnter
	actTurn   // to the next step or the one before
	actStep   // to the step that the key names
	actPush   // the slide
	actChoose // through a choice
	actNudge  // a length by a ruler mark
	actScroll
	actDone // the step at the table, and on to the next
	actUndone
	actJump   // to another piece, or to either end
	actTake   // measurements of another sheet
	actOffers // what would make it work
	actTable  // the step, as large as the screen
	actCard   // the sheet on paper
	actNote   // what a test garment showed
	actLeast
	actEven
	actUndo
	actRedo
	actCopy // lay a copy beside the sheet
	actOther
	actCopies
	actUnit
	actSave
	actList
	actWorking // the arithmetic behind the figures
	actDrill
	actWords // of the trade
	actKeys
	actQuit
)

// deskKeys is the table for the worksheet. The first match whose time it is
// wins; a key that nobody takes goes into the field.
var deskKeys = []binding{
	{keys: []string{"tab"}, show: "tab", does: "next", where: "in a form", act: actNextField, when: hasFields},
	{keys: []string{"shift+tab"}, show: "shift+tab", does: "back", where: "in a form", act: actPrevField, when: hasFields, rare: true},
	{keys: []string{"enter"}, show: "enter", does: "keep, next", where: "in a form", act: actEnter, when: hasFields, rare: true},
	{keys: []string{"enter"}, show: "enter", does: "next step", where: "on a page", act: actTurn, when: onPage, rare: true},
	{keys: []string{"ctrl+g"}, show: "^g", does: "other", where: "beside a copy", act: actOther, when: hasCopies},
	{keys: []string{"ctrl+x"}, show: "^x", does: "keep or drop", where: "beside a copy", act: actCopies, when: hasCopies},
	{keys: []string{"left", "right", "up", "down"}, show: "arrows", does: "push", where: "on the slide", act: actPush, when: onSlide},
	{keys: []string{"l"}, show: "l", does: "least", where: "on the slide", act: actLeast, when: onSlide},
	{keys: []string{"e"}, show: "e", does: "even", where: "on the slide", act: actEven, when: onSlide},
	{keys: []string{"left", "right", "up", "down", " "}, show: "arrows", does: "choose", where: "in a choice", act: actChoose, when: onChoice},
	{keys: []string{"up", "down"}, show: "up/down", does: "one mark", where: "in a length", act: actNudge, when: onLength},
	{keys: []string{" "}, show: "space", does: "done, next", where: "in step 6", act: actDone, when: onTrace},
	{keys: []string{"x"}, show: "x", does: "not done", where: "in step 6", act: actUndone, when: onTrace, rare: true},
	{keys: []string{"left", "right", "home", "end"}, show: "left/right", does: "piece", where: "in step 6", act: actJump, when: onTrace, rare: true},
	{keys: []string{"t"}, show: "t", does: "table view", where: "in step 6", act: actTable, when: onTrace},
	{keys: []string{"n"}, show: "n", does: "note a fitting", where: "in step 6", act: actNote, when: onTrace},
	{keys: []string{"c"}, show: "c", does: "card", where: "in step 6", act: actCard, when: onTrace},
	{keys: []string{"up", "down"}, show: "up/down", does: "step", where: "in step 6", act: actScroll, when: onTrace},
	{keys: []string{"w"}, show: "w", does: "ways out", where: "in step 5", act: actOffers, when: onTrouble},
	{keys: []string{"up", "down"}, show: "up/down", does: "scroll", where: "in step 5", act: actScroll, when: onMatch},
	{keys: []string{"pgdown", "pgup", "ctrl+n", "ctrl+p"}, show: "pgdn/pgup", does: "step", where: "or ^n, ^p", act: actTurn},
	{keys: []string{"f1", "f2", "f3", "f4", "f5", "f6", "alt+1", "alt+2", "alt+3", "alt+4", "alt+5", "alt+6"},
		show: "f1-f6", does: "to a step", where: "or alt+1-6", act: actStep, rare: true},
	{keys: []string{"1", "2", "3", "4", "5", "6"}, show: "1-6", does: "to a step", where: "on a page", act: actStep, when: onPage},
	{keys: []string{"ctrl+z"}, show: "^z", does: "undo", act: actUndo, rare: true},
	{keys: []string{"ctrl+y"}, show: "^y", does: "redo", act: actRedo, rare: true},
	{keys: []string{"ctrl+s"}, show: "^s", does: "save", act: actSave},
	{keys: []string{"ctrl+l"}, show: "^l", does: "what if", where: "lays a copy", act: actCopy},
	{keys: []string{"ctrl+f"}, show: "^f", does: "take from", where: "another sheet", act: actTake, when: onMeasures, rare: true},
	{keys: []string{"ctrl+t"}, show: "^t", does: "in/cm", act: actUnit},
	{keys: []string{"ctrl+o"}, show: "^o", does: "sheets", act: actList},
	{keys: []string{"ctrl+r"}, show: "^r", does: "working", act: actWorking},
	{keys: []string{"ctrl+d"}, show: "^d", does: "drill", act: actDrill, rare: true}, // delete does what it does in a line of input
	{keys: []string{"ctrl+e"}, show: "^e", does: "words", act: actWords, rare: true},
	{keys: []string{"ctrl+k"}, show: "^k", does: "keys", act: actKeys},
	{keys: []string{"ctrl+c", "ctrl+q"}, show: "^c", does: "end", where: "or ^q", act: actQuit},
}

func hasFields(d *desk) (bool, string) {
	return len(forms.Items[d.step]) > 0, "this step has nothing to fill in"
}

// onSlide is the slide, until somebody types a length into it.
func onSlide(d *desk) (bool, string) {
	return d.on(forms.SlideField) && d.fresh, "this pushes the slide, in step 4"
}

func onChoice(d *desk) (bool, string) { return d.on(forms.ChoiceField), "" }

// onLength is a length, and the slide once somebody types one into it.
func onLength(d *desk) (bool, string) {
	return d.on(forms.LengthField) || d.on(forms.SlideField) && !d.fresh, "tab goes from field to field"
}

func hasCopies(d *desk) (bool, string) {
	return len(d.copies) > 0, "there is no copy beside the sheet: ^l lays one"
}

func onPage(d *desk) (bool, string) { return len(forms.Items[d.step]) == 0, "" }

func onTrace(d *desk) (bool, string) { return d.step == forms.Trace, "" }

// onTrouble is step 5 while something could be mended.
func onTrouble(d *desk) (bool, string) {
	return d.step == forms.Match && mendable(d.rep), ""
}

func onMeasures(d *desk) (bool, string) {
	return d.step == forms.Body || d.step == forms.Pattern, "step 1 takes the body of another sheet, step 3 the pattern"
}

func onMatch(d *desk) (bool, string) { return d.step == forms.Match, "" }

// find is the binding that takes a key now.
func (d *desk) find(key string) (binding, bool) {
	for _, b := range deskKeys {
		if slices.Contains(b.keys, key) && (b.when == nil || first(b.when(d))) {
			return b, true
		}
	}
	return binding{}, false
}

// whyNot is the reason that a key does nothing now, if the table knows one.
func (d *desk) whyNot(key string) string {
	for _, b := range deskKeys {
		if b.when != nil && slices.Contains(b.keys, key) && len(key) > 1 {
			if ok, why := b.when(d); !ok && why != "" {
				return typeset.Capitalised(why) + "."
			}
		}
	}
	return ""
}

func first(ok bool, _ string) bool { return ok }

// working are the bindings whose time it is.
func (d *desk) working() []binding {
	var now []binding
	for _, b := range deskKeys {
		if !b.rare && (b.when == nil || first(b.when(d))) {
			now = append(now, b)
		}
	}
	return now
}

// keyLine is the bottom line: as many of the keys as fit whole. The last two,
// how to see the rest and how to end, always do.
func keyLine(keys []binding, st styles, width int) string {
	words := func(b binding) string { return st.key.Render(b.show) + " " + b.does }
	split := max(0, len(keys)-2)
	tail := ""
	for _, b := range keys[split:] {
		tail += "  " + words(b)
	}
	var line strings.Builder
	for _, b := range keys[:split] {
		next := words(b)
		if line.Len() > 0 {
			next = "  " + next
		}
		if ansi.StringWidth(line.String())+ansi.StringWidth(next)+ansi.StringWidth(tail) > width {
			continue
		}
		line.WriteString(next)
	}
	return typeset.Cut(strings.TrimPrefix(line.String()+tail, "  "), width)
}

// keysText lists every key of the worksheet, in two columns where there is room,
// and what else is good to know.
func keysText(width int) (out []string) {
	var rows []string
	for _, b := range deskKeys {
		rows = append(rows, typeset.Pad(b.show, 11)+typeset.Pad(b.does, 15)+b.where)
	}
	if width >= 76 {
		half := (len(rows) + 1) / 2
		for i := range rows[half:] {
			rows[i] = typeset.Pad(rows[i], width/2) + rows[half+i]
		}
		rows = rows[:half]
	}
	out = append(out, rows...)
	for _, text := range []string{
		"Esc keeps what is typed; nothing here throws a typed value away.",
		"Typing over a field replaces it, delete empties it; left and right move inside it.",
		`Lengths: 13 3/4, 13-3/4, 13.75 or 13,75, with in, ", cm or mm, or nothing.`,
		"~ stands before a length between two marks: it is shown at the nearest.",
	} {
		out = append(out, typeset.Wrap(text, width)...)
	}
	return out
}
