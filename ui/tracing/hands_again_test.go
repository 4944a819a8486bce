package tracing_test

import (
	"fmt"
	"math"
)

// Doing the same again on the other half.

// deed is what was done to one half.
type deed func(p *paper) error

// again is what is to be the same on the back.
type again struct {
	back         *paper
	pivot, slide float64
}

// sameAgain keeps what is to be done again once the step was read to its end.
func (h *hands) sameAgain(back *paper, w words) error {
	h.again = &again{back: back}
	for i, to := range []*float64{&h.again.pivot, &h.again.slide} {
		if w[2*i] == "" {
			continue
		}
		mm, err := out(w[2*i], w[2*i+1])
		if err != nil {
			return err
		}
		*to = mm
	}
	return nil
}

// doAgain does on the back what was done on the front, and holds that the step names
// the amounts that were marked there.
func (h *hands) doAgain() error {
	if h.again == nil {
		return nil
	}
	a := *h.again
	h.again = nil
	for _, d := range h.deeds {
		if err := d(a.back); err != nil {
			return fmt.Errorf("on the back: %w", err)
		}
	}
	start, err := a.back.oldSeam(a.back.underarm().y)
	if err != nil {
		return err
	}
	if last := a.back.marks[len(a.back.marks)-1]; math.Abs(last.x-start.x-a.pivot-a.slide) > hair {
		return fmt.Errorf("pivot and slide are not those of the front, which were %.2f mm together", last.x-start.x)
	}
	return nil
}
