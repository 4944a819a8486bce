package desk

import (
	"capscye/ui/forms"
	"capscye/worksheets"
)

// What a field is worth, as its row says it, and where the hands land by it.

// worth stands in the place of an answer that is not there.
func (d *Desk) worth(k worksheets.Key) string {
	if forms.WorthOf(d.Sheet(), k) == forms.Idle {
		return "-"
	}
	return "- " + forms.WorthOf(d.Sheet(), k).String()
}

// optionsOf are the words of a choice and which one it has; -1 while amounts wait for
// somebody to say so, whatever stands for it in the sums.
func (d *Desk) optionsOf(k worksheets.Key) (options []forms.Option, now int) {
	options, now = forms.OptionsOf(d.Sheet(), k)
	if forms.Awaited(d.Sheet(), k) {
		now = -1
	}
	return options, now
}

// note stands behind a value: why nothing follows from it, what may have been meant by it,
// where it comes from, or the usual range.
func (d *Desk) note(k worksheets.Key) string {
	s, doubt := d.Sheet(), d.Rep.DoubtOf(k)
	_, inherited := s.Inherits(k)
	switch why := forms.WhyIdle(s, k); {
	case why != "":
		return why
	case doubt != "": // the other answers are still missing, and the verdict tells of them
		return d.styles.Warn.Render(doubt)
	case inherited:
		return "as above"
	}
	return d.Rep.UsualEase(k)
}

// land puts the hands on the first field of the step that amounts wait for, if there is
// one; else they are where they were.
func (d *Desk) land() {
	for i, it := range forms.Items[d.step] {
		if it.Heading == "" && forms.Awaited(d.Sheet(), it.Key) {
			d.at[d.step] = i
			return
		}
	}
}

// nextUseful is the next field of the step from which something can follow, going round.
func (d *Desk) nextUseful() int {
	items, at := forms.Items[d.step], d.at[d.step]
	next := nextField(items, at, 1)
	for next > at && forms.WorthOf(d.Sheet(), items[next].Key) == forms.Idle {
		next = nextField(items, next, 1)
	}
	return next
}
