package desk

import (
	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/typeset"
	"capscye/units"
)

// What the arrow keys do to the field under the hands.

// scrollBy moves the page of step 5, no farther than its end.
func (d *Desk) scrollBy(by int) parts.Wish {
	l := d.layout(d.width, d.height)
	end := max(0, len(matchLines(d.Rep, d.styles, l.formWidth))-l.formHeight)
	d.scroll = min(max(0, d.scroll+by), end)
	return nil
}

// nudge moves the length in the field to the next mark of the ruler.
func (d *Desk) nudge(by int) parts.Wish {
	k, _ := d.Focused()
	typed, err := d.typed(k)
	if err != nil || typed.Text(k) == "" {
		d.Message = "Type a length first; then left and right move it by a ruler mark."
		return nil
	}
	text := forms.Exactly(nextMark(typed.Reading(k).Length, typed.Ruler(), by), d.Sheet().Scale())
	if err := typed.Set(k, text); err != nil {
		d.Message = forms.Fields[k].Label + ": " + typeset.Plain(err.Error())
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
