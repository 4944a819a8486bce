package ui

import (
	"strings"

	"capscye/units"
	"capscye/worksheets"
)

// What the arrow keys do to the field under the hands.

// vertical nudges a length by one ruler mark, scrolls a page, or moves between
// fields that have nothing to nudge.
func (d *desk) vertical(up bool) wish {
	by := 1
	if up {
		by = -1
	}
	switch {
	case len(forms[d.step]) == 0:
		d.scroll = max(0, d.scroll+by)
		return wish{}
	case d.on(lengthField):
		return d.nudge(-by)
	case up:
		return d.moveField(actPrevField)
	}
	return d.moveField(actNextField)
}

// nudge moves the length in the field to the next mark of the ruler.
func (d *desk) nudge(by int) wish {
	k, _ := d.focused()
	typed := d.doc.Sheet
	if err := typed.Set(k, d.entry.Value()); err != nil || d.entry.Value() == "" {
		d.message = "Type a length first; then up and down move it by a ruler mark."
		return wish{}
	}
	l := nextMark(typed.Reading(k).Length, typed.Ruler(), by)
	text := exactly(l, d.rep.scale)
	if err := typed.Set(k, text); err != nil {
		d.message = fields[k].label + ": it cannot be less."
		return wish{}
	}
	return d.set(k, text)
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

// exactly writes a length so that it reads back as the very same: in the
// sheet's unit where it is on a mark, else in the ruler's, else in millimetres.
func exactly(l units.Length, sc units.Scale) string {
	for _, text := range []string{sc.Number(l), sc.OnRuler(l)} {
		if !strings.HasPrefix(text, units.OffMark) {
			return text
		}
	}
	return l.String()
}

// horizontal goes through the options of a choice, or pushes the slide.
func (d *desk) horizontal(left bool) wish {
	by := 1
	if left {
		by = -1
	}
	k, _ := d.focused()
	if kindOf(k) == slideField {
		return d.pushSlide(by)
	}
	options, now := d.options(k)
	return d.set(k, options[(now+by+len(options))%len(options)])
}

// options are the words that a field can be set to, and which one it has.
func (d *desk) options(k worksheets.Key) (options []string, now int) {
	options = k.Options()
	current := ""
	if k.Kind() == worksheets.Scale {
		for _, r := range units.Rulers() {
			options = append(options, r.String())
		}
		current = d.doc.Sheet.Ruler().String()
	} else {
		current = d.doc.Sheet.Choice(k)
	}
	for i, o := range options {
		if o == current {
			now = i
		}
	}
	return options, now
}
