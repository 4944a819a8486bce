package screen

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/forms"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// What the keys do to a worksheet.

// key takes one key of the terminal.
func (d *desk) key(msg tea.KeyMsg) wish {
	d.message = ""
	name := msg.String()
	if !msg.Paste {
		if b, ok := d.find(name); ok {
			return d.do(b.act, name)
		}
		if why := d.whyNot(name); why != "" && strings.HasPrefix(name, "ctrl+") { // a line of input has uses of its own for some
			d.message = why
			return wish{}
		}
	}
	return d.enter(msg)
}

// do is what the bindings come to.
func (d *desk) do(a action, name string) wish {
	switch a {
	case actNextField, actPrevField, actEnter:
		return d.moveField(a)
	case actTurn, actStep:
		return d.moveStep(a, name)
	case actNudge:
		return d.nudge(unless(name, "down"))
	case actChoose:
		return d.choose(unless(name, "left", "up"))
	case actPush:
		return d.pushSlide(unless(name, "left", "down"))
	case actScroll:
		if d.step == forms.Trace {
			d.trace = d.traceAt(d.trace + unless(name, "up"))
		} else {
			d.scrollBy(unless(name, "up"))
		}
	case actDone:
		return d.tick()
	case actUndone:
		return d.untick()
	case actJump:
		d.jump(name)
	case actUndo:
		return d.undo()
	case actRedo:
		return d.redo()
	case actTake:
		return d.takeHere()
	case actOffers:
		return wish{kind: wishOffers}
	case actCopy:
		return d.layCopy()
	case actOther:
		return d.nextLaid(1)
	case actCopies:
		d.commit()
		return wish{kind: wishCopies}
	case actTable:
		return wish{kind: wishTable}
	case actCard:
		return wish{kind: wishCard}
	case actNote:
		return wish{kind: wishNote}
	case actLeast:
		return d.set(worksheets.Slide, "least")
	case actEven:
		return d.set(worksheets.Slide, "even")
	case actUnit:
		return d.switchUnit()
	case actSave:
		d.commit()
		if d.hand > 0 {
			d.message = "The sheet is saved, this copy is not: ^x keeps it or gives it its own file."
		}
		return wish{kind: wishSave, ask: true}
	case actList:
		d.commit()
		return wish{kind: wishList}
	case actWorking:
		return wish{kind: wishWorking}
	case actDrill:
		return wish{kind: wishDrill}
	case actWords:
		return wish{kind: wishWords}
	case actKeys:
		return wish{kind: wishKeys}
	case actQuit:
		d.commit()
		return wish{kind: wishQuit}
	}
	return wish{}
}

// unless is the way that a key goes: on, unless it is one of those that go back.
func unless(name string, back ...string) int {
	if slices.Contains(back, name) {
		return -1
	}
	return 1
}

// enter puts what no binding took into the field.
func (d *desk) enter(msg tea.KeyMsg) wish {
	k, ok := d.focused()
	switch {
	case msg.Type == tea.KeyEsc:
		return d.commit()
	case !ok || forms.KindOf(k) == forms.ChoiceField || msg.Alt && msg.Type == tea.KeyRunes: // alt+a would type "a"
		d.message = d.whyNot(msg.String())
		return wish{}
	case d.shut():
		d.message = d.readOnly()
		return wish{}
	case d.typing.locked:
		d.message = "This text has lines or signs that would be lost here: edit it in the file."
		return wish{}
	}
	if d.message = refusedPaste(msg, d.typing.entry); d.message != "" {
		return wish{}
	}
	d.typing.take(msg, k.Kind() != worksheets.Text && replaces(msg))
	d.foresee()
	return wish{}
}

// moveField goes to the next or the field before; Enter on the last field goes
// on to the next step.
func (d *desk) moveField(a action) wish {
	w := d.commit()
	by := 1
	if a == actPrevField {
		by = -1
	}
	next := d.nextField(by)
	if a == actEnter && next <= d.at[d.step] {
		d.goTo(d.step + 1)
		return w
	}
	d.at[d.step] = next
	d.reach()
	return w
}

func (d *desk) moveStep(a action, name string) wish {
	w := d.commit()
	switch {
	case a == actStep:
		d.goTo(forms.Step(name[len(name)-1] - '1'))
	case name == "pgup" || name == "ctrl+p":
		d.goTo(d.step - 1)
	default:
		d.goTo(d.step + 1)
	}
	return w
}

func (d *desk) goTo(s forms.Step) {
	d.place.turn(s)
	if d.step == forms.Trace {
		d.trace = d.firstUndone()
	}
	d.reach()
}

// switchUnit shows lengths in the other system, and reads bare numbers so.
// Nothing in the sheet changes; the unit that it is kept in is a field of step 1.
func (d *desk) switchUnit() wish {
	w := d.commit()
	if d.shown == 0 {
		d.shown = d.sheet().Unit().Other()
	} else {
		d.shown = 0
	}
	d.reckon()
	d.reach()
	d.message = fmt.Sprintf("Shown and typed in %s; nothing measured changes. Ruler: %s.",
		wording.UnitWords(d.rep.Scale.System), d.rep.Scale.Ruler)
	return w
}
