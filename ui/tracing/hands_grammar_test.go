package tracing_test

import (
	"fmt"
	"math"
	"strings"
)

// The sentences, and what the hands do when they read them. They follow the order of
// the work.

var grammar = []rule{
	// Laying the pattern down.
	as("Lay the {sleeve pattern|bodice front|bodice back} on fresh paper", func(h *hands, _ words) error {
		h.deeds = nil
		return nil
	}),
	as("Mark both underarm points, where the seam lines of cap and underarm seam cross, {<AMOUNT>|one seam allowance} from both edges", crossings("underarm point")),
	as("Mark the shoulder point, where the seam lines of shoulder and armhole cross, and the underarm point, where those of armhole and side seam cross, each {<AMOUNT>|one seam allowance} from both edges", crossings("underarm point", "shoulder point")),
	as("Draw the grain line, and the bicep line through both underarm points and well past them", drawn("grain line", "bicep line")),
	as("Draw a level line through the underarm point and well past it, square to the centre", drawn("level line")),
	as("Trace the shoulder dot and the hem line, from seam line to seam line", drawn("dot", "hem line", "hem corner")),
	as("Trace the shoulder dot, both underarm seam lines and the hem line, from seam line to seam line", drawn("dot", "hem line", "hem corner", "old underarm seam line")),
	as("Trace the neck, the shoulder, the centre, the side seam line[, {the dart|any dart}] and the {waist|hem}: the old outline", func(h *hands, w words) error {
		if w[0] != "" {
			if err := drawn("dart")(h, w); err != nil {
				return err
			}
		}
		if w[len(w)-1] == "waist" { // where the piece ends it has a corner
			return drawn("old side seam line", "waist corner")(h, w)
		}
		return drawn("old side seam line")(h, w)
	}),
	as("Mark the waist corner, where the side seam line crosses the waist", drawn("waist corner")),
	as("Draw the bust line, level, <AMOUNT> below the underarm point along the side seam line", func(h *hands, w words) error {
		down, err := exactly(w[0])
		if err != nil {
			return err
		}
		return h.each(func(p *paper) error {
			y := p.below.along(down).y
			p.bustLine = &y
			return nil
		})
	}),
	as("Draw the hip line, level, where the hip width was measured", drawn("hip line")),

	// Marks.
	as("{Front: on|Back: on|On} the {bicep line|level line},? mark the {pivot|slide} <AMOUNT> {out|inward} from the underarm point[ and the slide <AMOUNT> {beyond|back from} it]", marking),
	as("On the bust line, mark <AMOUNT> {out|inward} from the old side seam line: the bust-line mark", func(h *hands, w words) error {
		mm, err := out(w[0], w[1])
		if err != nil {
			return err
		}
		return h.each(func(p *paper) error { return p.markBust(mm) })
	}),
	as("An inward mark lies under the pattern: prick it through", nothing),

	// The pivot.
	as("Put the pin in the shoulder dot, on the seam line", on((*paper).pin)),
	as("Put the pin in the shoulder point", on((*paper).pin)),
	as("Pivot: turn the pattern about the pin, {outward|inward}, until its {underarm|side} seam line passes through the {first mark|mark}", func(h *hands, w words) error {
		return h.each(func(p *paper) error { return p.turnToMark(w[2], w[0] == "outward") })
	}),
	as("Pivot: turn the pattern about the pin, {outward|inward}, until its underarm point lies straight {below|above} the {first mark|mark}, square to the {bicep line|level line}", func(h *hands, w words) error {
		return h.each(func(p *paper) error { return p.turnStraight(w[1], w[2], w[0] == "outward") })
	}),
	as("Trace the {cap|armhole} along its seam line, with its notches, from the {shoulder dot|shoulder point} to the underarm point[, and on down the {underarm|side} seam line to the {last mark|mark}]", func(h *hands, w words) error {
		return h.each(func(p *paper) error {
			p.traceCurve()
			if w[3] == "" {
				return nil
			}
			return p.traceDown(w[3])
		})
	}),
	as("Stop there", nothing),

	// The slide.
	as("Take the pin out", on(func(p *paper) error { p.pinned = false; return nil })),
	as("Slide the pattern straight {out|in} by <AMOUNT>, without turning it, until its {underarm|side} seam line passes through the {last mark|mark}", sliding((*paper).passes, 3)),
	as("Slide the pattern straight {out|in} by <AMOUNT>, without turning it, until its underarm point lies on the {last mark|mark}", sliding((*paper).liesOn, 2)),
	as("Slide the pattern straight {out|in} by <AMOUNT>, without turning it, until its underarm point lies straight {below|above} the {last mark|mark}", func(h *hands, w words) error {
		return sliding(func(p *paper, which string) error { return p.liesStraight(w[2], which) }, 3)(h, w)
	}),
	as("Mark its underarm point there[,?[ and] trace the {underarm|side} seam line from it to the {last mark|mark}][,?[ and] join {it with a level line to the end of the traced cap|it with a level line to the end of the traced armhole}]", func(h *hands, w words) error {
		return h.each(func(p *paper) error {
			p.markUnderarm()
			if w[1] != "" {
				if err := p.traceDown(w[1]); err != nil {
					return err
				}
			}
			if w[2] != "" {
				return p.join()
			}
			return nil
		})
	}),
	as("Draw the end of the {cap|armhole} again: leave the traced curve where a straight line from it to the new underarm point makes the {half-cap|half-armhole} [<AMOUNT> long, ]<AMOUNT> shorter than it was", func(h *hands, w words) error {
		shorter, err := exactly(w[3])
		if err != nil {
			return err
		}
		if w[2] != "" && len(h.now) == 1 {
			if err := h.says(w[1]+" "+h.now[0].name, w[2]); err != nil {
				return err
			}
		}
		return h.each(func(p *paper) error { return p.redraw(shorter) })
	}),

	// The seam below.
	as("Lay the pattern back, grain line on grain line and dot on dot", on(func(p *paper) error { return p.layBack(0) })),
	as("Lay the pattern back, grain line on grain line and dot on dot, then move it straight {out|in} by <AMOUNT>[, until its underarm point lies on the {last mark|mark}]", func(h *hands, w words) error {
		mm, err := out(w[1], w[0])
		if err != nil {
			return err
		}
		return h.each(func(p *paper) error {
			if err := p.layBack(mm); err != nil || w[2] == "" {
				return err
			}
			return p.liesOn(w[2])
		})
	}),
	as("Trace the underarm seam line from {there|the old underarm point} to the hem line", on(func(p *paper) error { p.draw(p.at.line(p.below)); return nil })),
	as("Mark its hem corner on the hem line", on((*paper).markHem)),
	as("In a second colour, draw a straight line from <POINT> to <POINT>", drawing),
	as("In a second colour, draw straight lines from <POINT> to <POINT>, then to <POINT>[, then to <POINT>]", drawing),
	as("From there follow the old side seam line to the hem", on(func(p *paper) error {
		p.draw(p.below.from(p.drawn[len(p.drawn)-1].last()))
		return nil
	})),
	as("Then draw on to a point <AMOUNT> out from the old side seam line at the hip line, and from there to the hem, <AMOUNT> outside the old side seam line", func(h *hands, w words) error {
		hip, err := exactly(w[0])
		if err != nil {
			return err
		}
		hem, err := exactly(w[1])
		if err != nil {
			return err
		}
		return h.each(func(p *paper) error { return p.drawOverHip(hip, hem) })
	}),
	as("Then draw on to the old side seam line at the hip line, and follow it to the hem", on(func(p *paper) error { return p.drawOverHip(0, 0) })),
	as("Draw the {waist|hem} line on to {it|there}", on(func(p *paper) error { p.there["lower edge drawn on"] = true; return nil })),
	as("Smooth the bend at <POINT>[ and at <POINT>][ and at <POINT>] over about [2 in][5 cm] each way, on the outside, so that no width is lost", smoothing),
	as("Fold the {traced dart|dart} shut", on((*paper).fold)),
	as("If a dart starts in the {side seam|armhole}, fold it shut first", on((*paper).fold)),
	as("Open {the|that} dart and draw its legs on to the new side seam line", on(func(p *paper) error {
		p.there["legs of the dart"] = true
		return p.has("folded dart")
	})),

	// The other half, and what stays.
	as("Do the same on the back: [pivot <AMOUNT>{ inward|}][, ][slide <AMOUNT>{ inward|}]", func(h *hands, w words) error { return h.sameAgain(h.sleeve[1], w) }),
	as("Do the same with the bodice back: [pivot <AMOUNT>{ inward|}][, ][slide <AMOUNT>{ inward|}]", func(h *hands, w words) error { return h.sameAgain(h.bodice[1], w) }),
	as("The {half-cap|half-armhole} of the back is then <AMOUNT> long", func(h *hands, w words) error {
		return h.says(w[0]+" "+h.again.back.name, w[1])
	}),
	as("The {front|back} stays as it is: trace its cap along the seam line, from the shoulder dot to the underarm point, and its underarm seam line to the hem line", func(h *hands, w words) error {
		p := h.sleeve[map[string]int{"front": 0, "back": 1}[w[0]]]
		p.draw(p.curve)
		p.draw(p.below)
		return nil
	}),
	as("The {sleeve|bodice front|bodice back} cannot be altered so: nothing is marked, pinned or turned on it", func(h *hands, w words) error {
		piece, _, _ := strings.Cut(w[0], " ")
		h.cannot[piece], h.stopped[w[0]] = true, true
		return nil
	}),
	as("The bodice is already cut: leave it alone", nothing),

	// When both halves are done.
	as("Smooth the {cap|armhole} through the {shoulder dot|shoulder point} and {the underarm points|the underarm point}, without a point or a dip", nothing),
	as("Draw the hem line from seam to seam", nothing),
	as("Draw the hem line from seam to seam: the hem is now <AMOUNT> {wide|wider than it was|narrower than it was}", func(h *hands, w words) error {
		if w[1] == "wide" {
			return h.says("hem", w[0])
		}
		err := h.says("hem change", w[0])
		if w[1] == "narrower than it was" {
			h.said[len(h.said)-1].mm *= -1
		}
		return err
	}),
	as("Match the notches once, now: lay the cap on the armhole, seam line on seam line, from the underarm up, front and back", nothing),
	as("Move each notch of the sleeve to that of the armhole (one in front, two in the back); the ease stays above them", nothing),
	as("Walk the cap along the armhole, seam line on seam line[: it must still go in]", nothing),
	as("Walk the cap along the armhole, seam line on seam line: both must have changed by the same amount, front and back", func(h *hands, _ words) error {
		h.said = append(h.said, saying{what: "cap less armhole, front"}, saying{what: "cap less armhole, back"})
		return nil
	}),
	as("Walk the cap along the armhole, seam line on seam line: neither has changed its length, front or back", func(h *hands, _ words) error {
		for _, seam := range []string{"cap, front", "cap, back", "armhole, front", "armhole, back"} {
			h.said = append(h.said, saying{what: "change of " + seam})
		}
		return nil
	}),
	as("The cap should measure <AMOUNT>, the armhole <AMOUNT>: {<AMOUNT> to ease in|the cap is <AMOUNT> too short|nothing to ease in}", func(h *hands, w words) error {
		for i, what := range []string{"cap", "armhole"} {
			if err := h.says(what, w[i]); err != nil {
				return err
			}
		}
		switch ease, short := w[3], w[4]; {
		case ease != "":
			return h.says("cap ease", ease)
		case short != "":
			err := h.says("cap ease", short)
			h.said[len(h.said)-1].mm *= -1
			return err
		}
		h.said = append(h.said, saying{what: "cap ease"})
		return nil
	}),
	as("Measure from seam line to seam line", nothing),
	as("The sleeve, along the bicep line[, where a side came in at its new underarm point]: <AMOUNT> around", func(h *hands, w words) error {
		return h.says("sleeve around", w[0])
	}),
	as("The bodice, {at the bust line|along the level line}[, where a side came in at its new underarm point], less darts: <AMOUNT> around", func(h *hands, w words) error {
		for _, p := range h.bodice {
			if drawn := p.bustLine != nil; len(p.marks) > 0 && drawn != (w[0] == "at the bust line") {
				return fmt.Errorf("a bust line was drawn on the %s: %v", p.name, drawn)
			}
		}
		return h.says("bodice around", w[1])
	}),
	as("Lay front and back together along {the underarm seam, then along the side seam|the underarm seam|the side seam}; if their lengths differ, true the lower ends", nothing),
	as("Each {underarm|side} seam {gets <AMOUNT> longer|gets <AMOUNT> shorter|stays as long as it is}", func(h *hands, w words) error {
		for _, side := range []string{"front", "back"} {
			if err := h.saysChange("growth "+seamOf[w[0]]+" "+side, w[1]); err != nil {
				return err
			}
		}
		return nil
	}),
	as("The {underarm|side} seam of the front {gets <AMOUNT> longer|gets <AMOUNT> shorter|stays as long as it is}, that of the back {gets <AMOUNT> longer|gets <AMOUNT> shorter|stays as long as it is}", func(h *hands, w words) error {
		if err := h.saysChange("growth "+seamOf[w[0]]+" front", w[1]); err != nil {
			return err
		}
		return h.saysChange("growth "+seamOf[w[0]]+" back", w[4])
	}),

	// What else there is to do, which no tape finds.
	as("Alter the pieces on the same seams too: <ANY>", nothing),
	as("The new lines are seam lines: add {the seam allowance, <AMOUNT>,|your seam allowances|seam allowances} before you cut", func(h *hands, w words) error {
		for _, p := range []*paper{h.sleeve[0], h.bodice[0]} {
			if mm, err := exactly(w[1]); w[1] != "" && p.allowance > 0 && (err != nil || math.Abs(mm-p.allowance) > hair) {
				return fmt.Errorf("the allowance of the %s is %.2f mm", p.name, p.allowance)
			}
		}
		return nil
	}),
	as("Cut a test garment first: no figure replaces a fitting", nothing),
	as("Mind pins, blades and hot irons", nothing),
	as("Cut and sew the test garment, wear it, and write down what it shows", nothing),
}

var seamOf = map[string]string{"underarm": "sleeve", "side": "bodice"}

// drawn is what lies on the paper from now on: hands know no line and no point that no
// step drew. What lies on the front's paper is drawn on the back's too, when the same is
// done again.
func drawn(what ...string) func(*hands, words) error {
	return func(h *hands, _ words) error {
		d := func(p *paper) error {
			for _, w := range what {
				p.there[w] = true
			}
			return nil
		}
		h.deeds = append(h.deeds, d)
		for _, p := range h.now {
			d(p)
		}
		return nil
	}
}

// crossings are points that are marked an amount from the edges: which must be where the
// seam lines cross.
func crossings(points ...string) func(*hands, words) error {
	return func(h *hands, w words) error {
		for _, p := range h.now {
			if w[0] == "one seam allowance" {
				continue
			}
			if mm, err := exactly(w[1]); err != nil || math.Abs(mm-p.allowance) > hair {
				return fmt.Errorf("the allowance of the %s is %.2f mm", p.name, p.allowance)
			}
		}
		return drawn(points...)(h, w)
	}
}

// marking is a mark or two on the line through the underarm point. On a sleeve it says
// which half is at hand from now on.
func marking(h *hands, w words) error {
	switch side := strings.TrimSuffix(w[0], ": on"); {
	case h.piece != "Sleeve":
	case side == "Front":
		h.now, h.deeds = h.sleeve[:1], nil
	case side == "Back":
		h.now, h.deeds = h.sleeve[1:], nil
	}
	first, err := out(w[3], w[4])
	if err != nil {
		return err
	}
	amounts := []float64{first}
	if w[5] != "" {
		second, err := exactly(w[5])
		if err != nil {
			return err
		}
		if (w[6] == "back from") == (first > 0) {
			second = -second
		}
		amounts = append(amounts, second)
	}
	return h.each(func(p *paper) error {
		if err := p.has("underarm point", w[1]); err != nil {
			return err
		}
		return p.markOut(amounts...)
	})
}

func sliding(holds func(p *paper, which string) error, place int) func(*hands, words) error {
	return func(h *hands, w words) error {
		mm, err := out(w[1], w[0])
		if err != nil {
			return err
		}
		return h.each(func(p *paper) error {
			if err := p.slide(mm); err != nil {
				return err
			}
			return holds(p, w[place])
		})
	}
}
