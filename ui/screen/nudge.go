package screen

import (
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/units"
)

// What the arrow keys do to the field under the hands.

// scrollBy moves the page of step 5, no farther than its end.
func (d *desk) scrollBy(by int) wish {
	l := d.layout(d.width, d.height)
	end := max(0, len(matchLines(d.rep, d.styles, l.formWidth))-l.formHeight)
	d.scroll = min(max(0, d.scroll+by), end)
	return nil
}

// nudge moves the length in the field to the next mark of the ruler.
func (d *desk) nudge(by int) wish {
	k, _ := d.focused()
	typed, err := d.typed(k)
	if err != nil || typed.Text(k) == "" {
		d.message = "Type a length first; then left and right move it by a ruler mark."
		return nil
	}
	text := forms.Exactly(nextMark(typed.Reading(k).Length, typed.Ruler(), by), d.sheet().Scale())
	if err := typed.Set(k, text); err != nil {
		d.message = forms.Fields[k].Label + ": " + typeset.Plain(err.Error())
		return nil
	}
	return d.push(k, text)
}

// nextMark is the nearest mark of the ruler beyond a length.
func nextMark(l units.Length, r units.Ruler, by int) units.Length {
	mark := r.Mark()
	below := l / mark
	if l < 0 && l%mark != 0 {
		below--
	}
	switch {
	case by > 0:
		return (below + 1) * mark
	case l%mark != 0:
		return below * mark
	}
	return (below - 1) * mark
}
