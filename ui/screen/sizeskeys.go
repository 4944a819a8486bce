package screen

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/desk"
	"capscye/ui/parts"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// What the keys do on the page of sizes, besides typing.

// pressed is what a key does that is not typed.
func (p *sizesPage) pressed(name string) (do func() parts.Wish, ok bool) {
	d := p.desk
	moved := func(rows, cols int) func() parts.Wish { return func() parts.Wish { return p.move(rows, cols) } }
	after := func(do func() parts.Wish) func() parts.Wish { // what is being typed is taken first
		return func() parts.Wish {
			w, stays := p.commit()
			if stays {
				return w
			}
			if own := do(); own != nil {
				w = own
			}
			p.refresh()
			return w
		}
	}
	switch name {
	case "up", "shift+tab":
		return moved(-1, 0), true
	case "down", "tab":
		return moved(1, 0), true
	case "pgup":
		return moved(-6, 0), true
	case "pgdown":
		return moved(6, 0), true
	case "left", "right":
		if p.typing.Untouched() && p.draft(p.col, p.at()) == "" {
			return moved(0, parts.By(name, "left")), true
		}
		return nil, false
	case "enter":
		return p.enter, true
	case "esc":
		return p.esc, true
	case "ctrl+a":
		if p.guess() != nil {
			return after(p.takeGuess), true
		}
		return nil, false
	case "ctrl+x":
		return p.remove, true
	case "ctrl+z":
		return after(d.Undo), true
	case "ctrl+y":
		return after(d.Redo), true
	case "ctrl+s":
		return after(p.askSave), true
	case "ctrl+t":
		return after(d.SwitchUnit), true
	case "ctrl+g":
		return after(d.NextCopy), true
	case "ctrl+k":
		return func() parts.Wish { return toSeeSizesKeys{} }, true
	case "?":
		return func() parts.Wish { return toSeeSizesKeys{} }, !p.takesQuestion()
	case "ctrl+c", "ctrl+q":
		return p.quit, true
	}
	return p.pressedInSteps(name)
}

// pressedInSteps is what a key does that is one of the worksheet.
func (p *sizesPage) pressedInSteps(name string) (do func() parts.Wish, ok bool) {
	show, known := desk.ShownFor(name)
	switch {
	case !known:
	case len(name) > 1 && name[0] == 'f' || strings.HasPrefix(name, "alt+"):
		return func() parts.Wish {
			w, stays := p.commit()
			if stays {
				return w
			}
			return toStep{key: name, then: w}
		}, true
	case strings.HasPrefix(name, "ctrl+"): // a line of input has uses of its own for some
		return func() parts.Wish {
			p.desk.Message = show + " works in the steps; esc goes back there."
			return nil
		}, true
	}
	return nil, false
}

// askSave asks for the worksheet to be saved; what keeps a copy is no key of this page.
func (p *sizesPage) askSave() parts.Wish {
	w := p.desk.AskSave()
	if p.desk.Hand > 0 {
		p.desk.Message = "This copy is not saved: esc, then ^x keeps it or gives it its own file."
	}
	return w
}

// quit ends; but an example asks about what was typed.
func (p *sizesPage) quit() parts.Wish {
	w, _ := p.commit()
	if own, asks := w.(desk.ToOwn); asks {
		return own
	}
	return parts.ToQuit{}
}

// takesQuestion tells that a question mark is typed, and asks for no help.
func (p *sizesPage) takesQuestion() bool {
	return p.at().Kind() == worksheets.Text || p.typing.Changed() && p.typing.Text() != ""
}

// toStep wants the step that a key names, in the place of the page; then is what else is
// wanted.
type toStep struct {
	parts.Wanted
	key  string
	then parts.Wish
}

func (w toStep) grant(m *root) tea.Cmd {
	m.front = nil
	return both(m.grant(m.desk.StepNamed(w.key)), m.grant(w.then))
}

// toSeeSizesKeys wants the page of keys for the page of sizes.
type toSeeSizesKeys struct{ parts.Wanted }

func (toSeeSizesKeys) grant(m *root) tea.Cmd {
	m.scroll("Keys", "of the sizes; any other key goes back", func(width int) ([]string, int) {
		var out []string
		for _, k := range sizesKeys {
			out = append(out, typeset.Hanging(typeset.Pad(k[0], 12), k[1], width)...)
		}
		return append(out, desk.TypingText(width)...), 0
	})
	return nil
}

// sizesKeys are the keys of the page, with what they do.
var sizesKeys = [][2]string{
	{"enter", "on a name takes that size in hand; in a cell keeps, and goes down"},
	{"left/right", "to the size before or after; once you type, inside the text"},
	{"up/down", "to another row, or tab; pgup and pgdn go six rows"},
	{"^a", "takes the guess, where something is doubted"},
	{"^x", "removes the size"},
	{"^z, ^y", "undo, redo"},
	{"^s", "save"},
	{"^t", "in/cm"},
	{"^g", "to the copies of the worksheet and back"},
	{"f1-f6", "to a step, or alt+1-6"},
	{"esc", "as it was; then back to step 3"},
	{"^c", "end, or ^q"},
}
