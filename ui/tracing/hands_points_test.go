package tracing_test

import (
	"errors"
	"fmt"
	"regexp"
)

// The points on the paper that lines are drawn between, by the words for them.

// drawing draws straight lines from point to point.
func drawing(h *hands, w words) error {
	return h.each(func(p *paper) error {
		var l line
		for _, text := range w {
			if text == "" {
				continue // no third point
			}
			at, err := h.pointCalled(p, text)
			if errors.Is(err, errPassedBy) {
				continue
			}
			if err != nil {
				return fmt.Errorf("%q: %w", text, err)
			}
			l = append(l, at)
		}
		p.draw(l)
		return nil
	})
}

// smoothing smooths the new seam where it bends.
func smoothing(h *hands, w words) error {
	return h.each(func(p *paper) error {
		for _, text := range w {
			if text == "" {
				continue
			}
			at, err := h.pointCalled(p, text)
			if err != nil {
				return fmt.Errorf("%q: %w", text, err)
			}
			p.smoothed = append(p.smoothed, at)
		}
		return nil
	})
}

// errPassedBy says that a line does not go by way of a point, if it lies as it does.
var errPassedBy = errors.New("it lies above")

var pointForms = []struct {
	form *regexp.Regexp
	find func(p *paper, w words) (point, error)
}{
	{regexp.MustCompile(`^the (first mark|last mark|mark)$`), func(p *paper, w words) (point, error) { return p.mark(w[0]) }},
	{regexp.MustCompile(`^the new underarm point$`), func(p *paper, _ words) (point, error) { return p.underarmNow() }},
	{regexp.MustCompile(`^the bust-line mark$`), func(p *paper, _ words) (point, error) {
		if p.bustMark == nil {
			return point{}, fmt.Errorf("it was not marked")
		}
		return *p.bustMark, nil
	}},
	{regexp.MustCompile(`^the bust-line mark, if that lies below it$`), func(p *paper, _ words) (point, error) {
		if p.bustMark == nil {
			return point{}, fmt.Errorf("it was not marked")
		}
		from, err := p.underarmNow()
		if err == nil && p.bustMark.y >= from.y {
			err = errPassedBy
		}
		return *p.bustMark, err
	}},
	{regexp.MustCompile(`^(?:the old side seam line at )?the bust line(, if that lies below it|)$`), func(p *paper, w words) (point, error) {
		if p.bustLine == nil {
			return point{}, fmt.Errorf("no bust line was drawn")
		}
		at, err := p.oldSeam(*p.bustLine)
		if from, noUnderarm := p.underarmNow(); w[0] != "" && noUnderarm == nil && at.y >= from.y {
			err = errPassedBy
		}
		return at, err
	}},
	{regexp.MustCompile(`^a point (?:` + amountForm + ` (out|inward) from|on) the old underarm seam line, (?:` + amountForm + ` down it from the old underarm point \(taken as the elbow\)|at the elbow, where its width was measured)$`), func(p *paper, w words) (point, error) {
		mm, err := 0.0, error(nil)
		if w[0] != "" {
			mm, err = out(w[0], w[1])
		}
		if err != nil {
			return point{}, err
		}
		down := p.elbow
		if w[2] != "" {
			if down, _, err = amount(w[2]); err != nil {
				return point{}, err
			}
		}
		if err := p.has("old underarm seam line", "underarm point"); err != nil {
			return point{}, err
		}
		p.fitted = true
		at, err := p.oldSeam(p.below.along(down).y)
		at = at.outBy(mm)
		p.elbowOut = &at
		return at, err
	}},
	{regexp.MustCompile(`^the elbow$`), func(p *paper, _ words) (point, error) {
		if p.elbowOut == nil {
			return point{}, fmt.Errorf("nothing was drawn there")
		}
		return *p.elbowOut, nil
	}},
	{regexp.MustCompile(`^the old (hem|waist) corner$`), func(p *paper, w words) (point, error) { return p.oldCorner(w[0], 0) }},
	{regexp.MustCompile(`^a point ` + amountForm + ` out from the old (hem|waist) corner$`), func(p *paper, w words) (point, error) {
		mm, err := exactly(w[0])
		if err != nil {
			return point{}, err
		}
		p.fitted, p.endsOut = true, true
		return p.oldCorner(w[1], mm)
	}},
	{regexp.MustCompile(`^that hem corner$`), func(p *paper, _ words) (point, error) {
		if p.hemMark == nil {
			return point{}, fmt.Errorf("it was not marked")
		}
		return *p.hemMark, nil
	}},
}

// pointCalled is the point on a paper that words mean.
func (h *hands) pointCalled(p *paper, text string) (point, error) {
	for _, f := range pointForms {
		if m := f.form.FindStringSubmatch(text); m != nil {
			h.understood[f.form.String()] = true
			return f.find(p, m[1:])
		}
	}
	return point{}, fmt.Errorf("the hands do not know this point")
}

// oldCorner is a point out from the lower corner of the pattern, as it was traced.
func (p *paper) oldCorner(which string, out float64) (point, error) {
	line := map[string]string{"hem": "hem line", "waist": "old side seam line"}[which]
	at, err := p.oldSeam(p.end().y)
	return at.outBy(out), errors.Join(err, p.has(line, which+" corner"))
}
