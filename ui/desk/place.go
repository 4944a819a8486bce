package desk

import (
	"capscye/ui/forms"
	"capscye/worksheets"
)

// place is where the hands are in a worksheet.
type place struct {
	step   forms.Step
	at     [forms.StepCount]int // the field under the hands, per step, as an index into its form
	scroll int                  // of the page of step 5
	trace  int                  // the step at the table, in step 6
}

// beginning is the first step, and in every step its first field.
func beginning() (p place) {
	for s := range forms.StepCount {
		p.at[s] = nextField(forms.Items[s], -1, 1)
	}
	return p
}

// Focused is the answer under the hands; ok is false on a page.
func (p *place) Focused() (k worksheets.Key, ok bool) {
	f := forms.Items[p.step]
	if len(f) == 0 {
		return 0, false
	}
	return f[p.at[p.step]].Key, true
}

func (p *place) on(kind forms.Kind) bool {
	k, ok := p.Focused()
	return ok && forms.KindOf(k) == kind
}

// nextField is the field of this step before or after the one under the hands.
func (p *place) nextField(by int) int { return nextField(forms.Items[p.step], p.at[p.step], by) }

// nextField is the index of the field before or after one, going round.
func nextField(f []forms.Item, from, by int) int {
	for i := from + by; len(f) > 0 && i != from; i += by {
		i = (i + len(f)) % len(f)
		if f[i].Heading == "" {
			return i
		}
	}
	return max(from, 0)
}

// turn goes to a step, no farther than the last.
func (p *place) turn(s forms.Step) {
	p.step = max(0, min(s, forms.StepCount-1))
	p.scroll = 0
}
