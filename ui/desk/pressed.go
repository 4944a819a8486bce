package desk

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// What the keys do to a worksheet.

// Key takes one key of the terminal.
func (d *Desk) Key(msg tea.KeyMsg) parts.Wish {
	d.Message = ""
	name := msg.String()
	if !msg.Paste {
		if b, ok := d.find(name); ok {
			d.visit.letters = ""
			w := b.do(d, name)
			if own, asks := w.(ToOwn); asks && own.First != nil {
				own.Again = &msg
				return own
			}
			return w
		}
		if why := d.whyNot(name); why != "" && strings.HasPrefix(name, "ctrl+") { // a line of input has uses of its own for some
			d.Message = why
			return nil
		}
	}
	return d.enter(msg)
}

// enter puts what no binding took into the field.
func (d *Desk) enter(msg tea.KeyMsg) parts.Wish {
	k, ok := d.Focused()
	switch {
	case !msg.Paste && msg.String() == "?" && !(ok && d.takesQuestion(k)):
		return ToSeeKeys{}
	case msg.Type == tea.KeyEsc: // nothing to bring back
		return nil
	case !ok || msg.Alt && msg.Type == tea.KeyRunes: // alt+a would type "a"
		d.Message = d.whyNot(msg.String())
		return nil
	case forms.KindOf(k) == forms.ChoiceField:
		return d.spell(k, msg)
	}
	if d.Message = d.Refuses(msg, k, &d.typing); d.Message != "" {
		return nil
	}
	d.typing.Take(msg)
	d.foresee()
	return nil
}

// Refuses says why a key is not typed as part of an answer; "" where it is.
func (d *Desk) Refuses(msg tea.KeyMsg, k worksheets.Key, into *parts.Typing) string {
	switch {
	case d.Shut():
		return d.ReadOnly()
	case into.Locked():
		return "This text has lines or signs that would be lost here: edit it in the file."
	}
	why := into.Refuses(msg)
	if why == "" && (into.Untouched() || into.Text() == "") {
		why = parts.CannotBegin(k.Kind(), d.bareUnit(), msg)
	}
	return why
}

// takesQuestion tells that a question mark is typed into a field, and asks for no help: in
// words, and behind something else.
func (d *Desk) takesQuestion(k worksheets.Key) bool {
	return k.Kind() == worksheets.Text || forms.KindOf(k) != forms.ChoiceField && d.typing.Changed() && d.typing.Text() != ""
}

// moveField goes to the next or the field before.
func (d *Desk) moveField(by int) parts.Wish {
	w, asks := d.typedTaken()
	if asks {
		return w
	}
	d.at[d.step] = d.nextField(by)
	d.reach()
	return w
}

// enterField takes what is offered, if anything is, and goes to the next field; behind
// the last one to the next step.
func (d *Desk) enterField() parts.Wish {
	if text, ok := d.meant(); ok {
		w := d.takeMeant(text)
		if _, asks := w.(ToOwn); !asks {
			d.moveField(1)
		}
		return w
	}
	w, asks := d.typedTaken()
	if asks {
		return w
	}
	if w == nil {
		w = d.takeWaiting()
	}
	if next := d.nextUseful(); next > d.at[d.step] {
		d.at[d.step] = next
		d.reach()
		return w
	}
	d.goTo(d.step + 1)
	return w
}

// moveStep goes to the next or the step before.
func (d *Desk) moveStep(by int) parts.Wish {
	w, asks := d.typedTaken()
	if asks {
		return w
	}
	d.goTo(d.step + forms.Step(by))
	return w
}

// StepNamed goes to the step whose number ends the name of the key.
func (d *Desk) StepNamed(key string) parts.Wish {
	w, asks := d.typedTaken()
	if asks {
		return w
	}
	d.goTo(forms.Step(key[len(key)-1] - '1'))
	return w
}

func (d *Desk) goTo(s forms.Step) {
	d.place.turn(s)
	d.land()
	if d.step == forms.Trace {
		d.trace = d.firstUndone()
	}
	d.reach()
}

// SwitchUnit shows lengths in the other system, and reads bare numbers so.
// Nothing in the sheet changes; the unit that it is written in is a field of step 1.
func (d *Desk) SwitchUnit() parts.Wish {
	w, asks := d.typedTaken()
	if asks {
		return w
	}
	if d.shown == 0 {
		d.shown = d.Sheet().Unit().Other()
	} else {
		d.shown = 0
	}
	d.reckon()
	d.reach()
	d.sayToo(fmt.Sprintf("Shown and typed in %s; nothing measured changes. Ruler: %s.",
		wording.UnitWords(d.Rep.Scale.System), d.Rep.Scale.Ruler))
	return w
}
