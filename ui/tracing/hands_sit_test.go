package tracing_test

import (
	"fmt"
	"regexp"
)

// The hands, and what they keep in mind while they read.

// hands are at the table with every piece of a pattern.
type hands struct {
	sleeve, bodice [2]*paper // front, back
	now            []*paper  // the halves that the sentences are about
	piece          string    // the heading that they stand under

	deeds           []deed // what is done again where it says the same again
	again           *again // what a step says of the same again; done when the step was read
	said            []saying
	understood      map[string]bool // the sentences that were met, by their forms
	cannot, stopped map[string]bool // pieces of the garment, and of the pattern, that cannot be altered
}

// saying is a length that the sentences say will be found.
type saying struct {
	what  string
	mm    float64
	rough bool
}

func sitDown(p *pattern) *hands {
	h := &hands{understood: map[string]bool{}, cannot: map[string]bool{}, stopped: map[string]bool{}}
	for i := range 2 {
		h.sleeve[i], h.bodice[i] = freshPaper(p.sleeve[i]), freshPaper(p.bodice[i])
	}
	return h
}

// heading begins another piece.
func (h *hands) heading(piece string) {
	if piece == h.piece {
		return
	}
	h.piece, h.now = piece, nil
	switch piece {
	case "Sleeve":
		h.now = h.sleeve[:]
	case "Bodice front":
		h.now = h.bodice[:1]
	case "Bodice back":
		h.now = h.bodice[1:]
	}
}

// each does a deed to the half at hand, and remembers it.
func (h *hands) each(d deed) error {
	if len(h.now) != 1 {
		return fmt.Errorf("it does not say on which of %d halves", len(h.now))
	}
	h.deeds = append(h.deeds, d)
	return d(h.now[0])
}

// on does to the half at hand what needs no words.
func on(d deed) func(*hands, words) error {
	return func(h *hands, _ words) error { return h.each(d) }
}

// nothing is done, where a sentence asks for what no tape finds.
func nothing(*hands, words) error { return nil }

// says keeps a length that will be looked for.
func (h *hands) says(what, text string) error {
	mm, rough, err := amount(text)
	h.said = append(h.said, saying{what, mm, rough})
	return err
}

var changeForm = regexp.MustCompile(`^gets ` + amountForm + ` (longer|shorter)$`)

// saysChange keeps "gets 1 in longer" as an amount, and "stays as long as it is" as none
// that a ruler shows.
func (h *hands) saysChange(what, text string) error {
	m := changeForm.FindStringSubmatch(text)
	if m == nil {
		h.said = append(h.said, saying{what, 0, true})
		return nil
	}
	err := h.says(what, m[1])
	if m[2] == "shorter" {
		h.said[len(h.said)-1].mm *= -1
	}
	return err
}
