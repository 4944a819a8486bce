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
			return nil
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
		return toSeeOffers{}
	case actCopy:
		return d.layCopy()
	case actOther:
		return d.nextLaid(1)
	case actCopies:
		d.commit()
		return toSeeCopies{}
	case actTable:
		return toSeeTable{}
	case actCard:
		return toPrint{}
	case actNote:
		return toNote{}
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
		return toSave{ask: true}
	case actList:
		d.commit()
		return toList{}
	case actWorking:
		return toSeeWorking{}
	case actDrill:
		return toDrill{}
	case actWords:
		return toSeeWords{}
	case actKeys:
		return toSeeKeys{}
	case actQuit:
		d.commit()
		return toQuit{}
	}
	return nil
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
		return nil
	case d.shut():
		d.message = d.readOnly()
		return nil
	case d.typing.locked:
		d.message = "This text has lines or signs that would be lost here: edit it in the file."
		return nil
	}
	if d.message = refusedPaste(msg, d.typing.entry); d.message != "" {
		return nil
	}
	d.typing.take(msg, k.Kind() != worksheets.Text && replaces(msg))
	d.foresee()
	return nil
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
