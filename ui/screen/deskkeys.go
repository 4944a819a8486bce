package screen

import (
	"fmt"
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
			d.visit.letters = ""
			return b.do(d, name)
		}
		if why := d.whyNot(name); why != "" && strings.HasPrefix(name, "ctrl+") { // a line of input has uses of its own for some
			d.message = why
			return nil
		}
	}
	return d.enter(msg)
}

// enter puts what no binding took into the field.
func (d *desk) enter(msg tea.KeyMsg) wish {
	k, ok := d.focused()
	switch {
	case !msg.Paste && msg.String() == "?" && !(ok && d.takesQuestion(k)):
		return toSeeKeys{}
	case msg.Type == tea.KeyEsc: // nothing to bring back
		return nil
	case !ok || msg.Alt && msg.Type == tea.KeyRunes: // alt+a would type "a"
		d.message = d.whyNot(msg.String())
		return nil
	case forms.KindOf(k) == forms.ChoiceField:
		return d.spell(k, msg)
	}
	if d.message = d.refuses(msg, k, &d.typing); d.message != "" {
		return nil
	}
	d.typing.take(msg)
	d.foresee()
	return nil
}

// refuses says why a key is not typed as part of an answer; "" where it is.
func (d *desk) refuses(msg tea.KeyMsg, k worksheets.Key, into *typing) string {
	switch {
	case d.shut():
		return d.readOnly()
	case into.locked:
		return "This text has lines or signs that would be lost here: edit it in the file."
	}
	why := into.refuses(msg)
	if why == "" && (into.untouched() || into.text() == "") {
		why = cannotBegin(k.Kind(), d.bareUnit(), msg)
	}
	return why
}

// takesQuestion tells that a question mark is typed into a field, and asks for no help: in
// words, and behind something else.
func (d *desk) takesQuestion(k worksheets.Key) bool {
	return k.Kind() == worksheets.Text || forms.KindOf(k) != forms.ChoiceField && d.typing.changed() && d.typing.text() != ""
}

// moveField goes to the next or the field before.
func (d *desk) moveField(by int) wish {
	w := d.commit()
	d.at[d.step] = d.nextField(by)
	d.reach()
	return w
}

// enterField takes what is offered, if anything is, and goes to the next field; behind
// the last one to the next step.
func (d *desk) enterField() wish {
	if text, ok := d.meant(); ok {
		w := d.takeMeant(text)
		d.moveField(1)
		return w
	}
	w := d.commit()
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
func (d *desk) moveStep(by int) wish {
	w := d.commit()
	d.goTo(d.step + forms.Step(by))
	return w
}

// stepNamed goes to the step whose number ends the name of the key.
func (d *desk) stepNamed(key string) wish {
	w := d.commit()
	d.goTo(forms.Step(key[len(key)-1] - '1'))
	return w
}

func (d *desk) goTo(s forms.Step) {
	d.place.turn(s)
	d.land()
	if d.step == forms.Trace {
		d.trace = d.firstUndone()
	}
	d.reach()
}

// switchUnit shows lengths in the other system, and reads bare numbers so.
// Nothing in the sheet changes; the unit that it is written in is a field of step 1.
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
