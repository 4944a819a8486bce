package ui

import (
	"strings"

	"capscye/units"
	"capscye/worksheets"
)

// What the arrow keys do to the field under the hands.

// scrollBy moves the page of step 5, no farther than its end.
func (d *desk) scrollBy(by int) {
	l := layoutFor(d.width, d.height, len(d.copies) > 0)
	end := max(0, len(matchLines(d.rep, d.styles, l.formWidth))-l.formHeight)
	d.scroll = min(max(0, d.scroll+by), end)
}

// nudge moves the length in the field to the next mark of the ruler.
func (d *desk) nudge(by int) wish {
	k, _ := d.focused()
	typed, err := d.typed(k)
	if err != nil || typed.Text(k) == "" {
		d.message = "Type a length first; then up and down move it by a ruler mark."
		return wish{}
	}
	text := exactly(nextMark(typed.Reading(k).Length, typed.Ruler(), by), d.sheet().Scale())
	if err := typed.Set(k, text); err != nil {
		d.message = fields[k].label + ": " + plain(err.Error())
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

// choose goes through the options of a choice.
func (d *desk) choose(by int) wish {
	k, _ := d.focused()
	options, now := optionsOf(d.sheet(), k)
	return d.set(k, options[(now+by+len(options))%len(options)])
}

// optionsOf are the words that a field can be set to, and which one it has.
func optionsOf(s *worksheets.Sheet, k worksheets.Key) (options []string, now int) {
	options = k.Options()
	current := ""
	if k.Kind() == worksheets.Scale {
		for _, r := range units.Rulers() {
			options = append(options, r.String())
		}
		current = s.Ruler().String()
	} else {
		current = s.Choice(k)
	}
	for i, o := range options {
		if o == current {
			now = i
		}
	}
	return options, now
}
