package screen

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
	Show  string   // as a person reads them
	Does  string
	Where string // on the page of keys: where it works, where not everywhere
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

// Keys is the table for the worksheet. The first match whose time it is
// wins; a key that nobody takes goes into the field.
var Keys = []binding{
	{keys: []string{"tab"}, Show: "tab", Does: "next", Where: "in a form", act: actNextField, when: hasFields},
	{keys: []string{"shift+tab"}, Show: "shift+tab", Does: "back", Where: "in a form", act: actPrevField, when: hasFields, rare: true},
	{keys: []string{"enter"}, Show: "enter", Does: "keep, next", Where: "in a form", act: actEnter, when: hasFields, rare: true},
	{keys: []string{"enter"}, Show: "enter", Does: "next step", Where: "on a page", act: actTurn, when: onPage, rare: true},
	{keys: []string{"ctrl+g"}, Show: "^g", Does: "other", Where: "beside a copy", act: actOther, when: hasCopies},
	{keys: []string{"ctrl+x"}, Show: "^x", Does: "keep or drop", Where: "beside a copy", act: actCopies, when: hasCopies},
	{keys: []string{"left", "right", "up", "down"}, Show: "arrows", Does: "push", Where: "on the slide", act: actPush, when: onSlide},
	{keys: []string{"l"}, Show: "l", Does: "least", Where: "on the slide", act: actLeast, when: onSlide},
	{keys: []string{"e"}, Show: "e", Does: "even", Where: "on the slide", act: actEven, when: onSlide},
	{keys: []string{"left", "right", "up", "down", " "}, Show: "arrows", Does: "choose", Where: "in a choice", act: actChoose, when: onChoice},
	{keys: []string{"up", "down"}, Show: "up/down", Does: "one mark", Where: "in a length", act: actNudge, when: onLength},
	{keys: []string{" "}, Show: "space", Does: "done, next", Where: "in step 6", act: actDone, when: onTrace},
	{keys: []string{"x"}, Show: "x", Does: "not done", Where: "in step 6", act: actUndone, when: onTrace, rare: true},
	{keys: []string{"left", "right", "home", "end"}, Show: "left/right", Does: "piece", Where: "in step 6", act: actJump, when: onTrace, rare: true},
	{keys: []string{"t"}, Show: "t", Does: "table view", Where: "in step 6", act: actTable, when: onTrace},
	{keys: []string{"n"}, Show: "n", Does: "note a fitting", Where: "in step 6", act: actNote, when: onTrace},
	{keys: []string{"c"}, Show: "c", Does: "card", Where: "in step 6", act: actCard, when: onTrace},
	{keys: []string{"up", "down"}, Show: "up/down", Does: "step", Where: "in step 6", act: actScroll, when: onTrace},
	{keys: []string{"w"}, Show: "w", Does: "ways out", Where: "in step 5", act: actOffers, when: onTrouble},
	{keys: []string{"up", "down"}, Show: "up/down", Does: "scroll", Where: "in step 5", act: actScroll, when: onMatch},
	{keys: []string{"pgdown", "pgup", "ctrl+n", "ctrl+p"}, Show: "pgdn/pgup", Does: "step", Where: "or ^n, ^p", act: actTurn},
	{keys: []string{"f1", "f2", "f3", "f4", "f5", "f6", "alt+1", "alt+2", "alt+3", "alt+4", "alt+5", "alt+6"},
		Show: "f1-f6", Does: "to a step", Where: "or alt+1-6", act: actStep, rare: true},
	{keys: []string{"1", "2", "3", "4", "5", "6"}, Show: "1-6", Does: "to a step", Where: "on a page", act: actStep, when: onPage},
	{keys: []string{"ctrl+z"}, Show: "^z", Does: "undo", act: actUndo, rare: true},
	{keys: []string{"ctrl+y"}, Show: "^y", Does: "redo", act: actRedo, rare: true},
	{keys: []string{"ctrl+s"}, Show: "^s", Does: "save", act: actSave},
	{keys: []string{"ctrl+l"}, Show: "^l", Does: "what if", Where: "lays a copy", act: actCopy},
	{keys: []string{"ctrl+f"}, Show: "^f", Does: "take from", Where: "another sheet", act: actTake, when: onMeasures, rare: true},
	{keys: []string{"ctrl+t"}, Show: "^t", Does: "in/cm", act: actUnit},
	{keys: []string{"ctrl+o"}, Show: "^o", Does: "sheets", act: actList},
	{keys: []string{"ctrl+r"}, Show: "^r", Does: "working", act: actWorking},
	{keys: []string{"ctrl+d"}, Show: "^d", Does: "drill", act: actDrill, rare: true}, // delete does what it does in a line of input
	{keys: []string{"ctrl+e"}, Show: "^e", Does: "words", act: actWords, rare: true},
	{keys: []string{"ctrl+k"}, Show: "^k", Does: "keys", act: actKeys},
	{keys: []string{"ctrl+c", "ctrl+q"}, Show: "^c", Does: "end", Where: "or ^q", act: actQuit},
}

func hasFields(d *desk) (bool, string) {
	return len(forms.Items[d.step]) > 0, "this step has nothing to fill in"
}

// onSlide is the slide, until somebody types a length into it.
func onSlide(d *desk) (bool, string) {
	return d.on(forms.SlideField) && d.typing.fresh, "this pushes the slide, in step 4"
}

func onChoice(d *desk) (bool, string) { return d.on(forms.ChoiceField), "" }

// onLength is a length, and the slide once somebody types one into it.
func onLength(d *desk) (bool, string) {
	return d.on(forms.LengthField) || d.on(forms.SlideField) && !d.typing.fresh, "tab goes from field to field"
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
	for _, b := range Keys {
		if slices.Contains(b.keys, key) && (b.when == nil || first(b.when(d))) {
			return b, true
		}
	}
	return binding{}, false
}

// whyNot is the reason that a key does nothing now, if the table knows one.
func (d *desk) whyNot(key string) string {
	for _, b := range Keys {
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
	for _, b := range Keys {
		if !b.rare && (b.when == nil || first(b.when(d))) {
			now = append(now, b)
		}
	}
	return now
}

// keyLine is the bottom line: as many of the keys as fit whole. The last two,
// how to see the rest and how to end, always do.
func keyLine(keys []binding, st styles, width int) string {
	words := func(b binding) string { return st.key.Render(b.Show) + " " + b.Does }
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
	for _, b := range Keys {
		rows = append(rows, typeset.Pad(b.Show, 11)+typeset.Pad(b.Does, 15)+b.Where)
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
