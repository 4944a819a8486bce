package tracing_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
)

// Worksheets that nobody wrote: patterns and bodies of every kind that the sentences
// have words for.

// kinds are the ways in which a sheet can be altered; they come in turn.
var kinds = []string{"pivot only", "slide only", "both", "inward", "mixed", "following", "kept", "as it comes"}

// writer writes lengths as somebody would on a ruler or a tape.
type writer struct {
	*rand.Rand
	inches                 bool
	s                      sheet
	lostSleeve, lostBodice float64 // what of a width is allowances, in inches
}

// length writes inches in eighths, or centimetres in millimetres, and gives back what
// was written, in inches.
func (w *writer) length(key string, inches float64) float64 {
	text := ""
	if w.inches {
		n := int(math.Round(inches * 8))
		inches = float64(n) / 8
		text = eighths(n)
	} else {
		mm := math.Round(inches * 25.4)
		inches = mm / 25.4
		text = strconv.FormatFloat(mm/10, 'f', 1, 64)
	}
	w.s[key] = text
	return inches
}

// eighths writes so many eighths of an inch.
func eighths(n int) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, rest, below := n/8, n%8, 8
	for rest%2 == 0 && rest > 0 {
		rest, below = rest/2, below/2
	}
	switch {
	case rest == 0:
		return fmt.Sprintf("%s%d", sign, whole)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, rest, below)
	}
	return fmt.Sprintf("%s%d %d/%d", sign, whole, rest, below)
}

func (w *writer) within(low, high float64) float64 { return low + (high-low)*w.Float64() }
func (w *writer) chance(p float64) bool            { return w.Float64() < p }
func (w *writer) one(of ...string) string          { return of[w.IntN(len(of))] }

// randomSheet is the sheet of a number.
func randomSheet(n int) (sheet, string) {
	w := &writer{Rand: rand.New(rand.NewPCG(2026, uint64(n))), s: sheet{}}
	kind := kinds[n%len(kinds)]
	s := w.s
	s["about.title"] = fmt.Sprintf("Sheet %d", n)
	s["about.unit"] = w.one("in", "in", "cm")
	w.inches = s["about.unit"] == "in"
	s["about.ruler"] = w.one("1/2 in", "1/4 in", "1/8 in", "1/16 in", "1/64 in", "1 mm", "5 mm")
	if w.chance(0.7) { // most people hold a ruler of their own system
		s["about.ruler"] = map[bool]string{true: w.one("1/2 in", "1/4 in", "1/8 in", "1/16 in", "1/64 in"), false: w.one("1 mm", "5 mm")}[w.inches]
	}
	whole := w.chance(0.7) // everything was measured
	maybe := func(key string, inches float64) float64 {
		if whole || w.chance(0.6) {
			return w.length(key, inches)
		}
		return inches
	}
	sleeve := w.sleeve(maybe)
	bust := w.bodice(maybe)
	w.ask(kind, sleeve, bust)
	w.levels()
	return s, kind
}

// sleeve writes a sleeve, and gives back how wide it is.
func (w *writer) sleeve(maybe func(string, float64) float64) float64 {
	s := w.s
	s["sleeve.length"] = w.one("short", "long")
	s["sleeve.style"] = w.one("set-in", "shirt", "gathered")
	s["sleeve.measured"] = w.one("seam", "edge")
	lost := 0.0
	if s["sleeve.measured"] == "edge" || w.chance(0.6) {
		allowance := w.length("sleeve.allowance", []float64{0.25, 0.375, 0.5, 0.625, 1}[w.IntN(5)])
		if s["sleeve.measured"] == "edge" {
			lost = 2 * allowance
		}
	}
	w.lostSleeve = lost
	width := w.length("sleeve.width", w.within(11.5, 17)+lost) - lost
	tall := maybe("sleeve.cap_height", width*w.within(0.3, 0.46))
	if chord := math.Hypot(width/2, tall); w.chance(0.8) {
		w.length("sleeve.cap_front", chord+(width/2+tall-chord)*w.within(0.15, 0.6))
		w.length("sleeve.cap_back", chord+(width/2+tall-chord)*w.within(0.15, 0.6))
	}
	seam, hem := w.within(3.5, 8), width*w.within(0.86, 1.02)
	if s["sleeve.length"] == "long" {
		seam, hem = w.within(15, 19), width*w.within(0.5, 0.85)
	}
	maybe("sleeve.underarm_seam", seam)
	if w.chance(0.6) {
		maybe("sleeve.hem_width", hem+lost)
	}
	if s["sleeve.length"] == "long" && w.chance(0.7) {
		w.length("sleeve.elbow_width", (width+hem)/2*w.within(0.95, 1.05)+lost)
	}
	return width
}

// bodice writes a bodice, and gives back its bust.
func (w *writer) bodice(maybe func(string, float64) float64) float64 {
	s := w.s
	lost := 0.0
	s["bodice.measured"] = w.one("seam", "edge")
	if s["bodice.measured"] == "edge" || w.chance(0.6) {
		allowance := w.length("bodice.allowance", []float64{0.375, 0.5, 0.625, 1}[w.IntN(4)])
		if s["bodice.allowance"] == s["sleeve.allowance"] { // told once
			delete(s, "bodice.allowance")
		}
		if s["bodice.measured"] == "edge" {
			crossings := 1 + w.IntN(2)
			s["bodice.crossings"] = strconv.Itoa(crossings)
			lost = float64(crossings) * allowance
		}
	}
	w.lostBodice = lost
	if s["bodice.measured"] == s["sleeve.measured"] && w.chance(0.5) {
		delete(s, "bodice.measured")
	}
	if w.chance(0.1) {
		return w.length("bodice.finished_bust", w.within(34, 52))
	}
	bust, down := 0.0, 0.0
	if w.chance(0.6) {
		down = w.length("bodice.bust_down", w.within(0, 3))
	}
	seam := maybe("bodice.side_seam", w.within(6.5, 9))
	reachesHip := w.chance(0.3)
	for _, side := range []string{"front", "back"} {
		take := 0.0
		if w.chance(0.3) {
			take = w.length("bodice.take_off_"+side, w.within(0.25, 1.5))
		}
		if take > 0 && w.chance(0.8) || w.chance(0.1) { // the tape need not have lain over it
			s["bodice.dart_"+side] = w.one("side", "waist", "shoulder", "armhole", "none")
		}
		width := w.length("bodice."+side, w.within(8.5, 12.5)+take+lost) - lost
		bust += 2 * (width - take)
		out := w.within(1, 3)
		depth := w.within(6, 9)
		out = maybe("bodice.corner_out_"+side, out)
		depth = maybe("bodice.corner_down_"+side, depth)
		if w.chance(0.8) {
			chord := math.Hypot(out, depth)
			w.length("bodice.armhole_"+side, chord+(out+depth-chord)*w.within(0.3, 0.7))
		}
		waist := width - (seam-down)*w.within(-0.03, 0.15)
		maybe("bodice.waist_"+side, waist+lost)
		if reachesHip {
			w.length("bodice.hip_"+side, width*w.within(0.95, 1.08)+lost)
		}
	}
	return bust
}

// inInches reads what was written.
func (w *writer) inInches(text string) float64 {
	mm, err := readLength(text, w.s["about.unit"])
	if err != nil {
		panic(err)
	}
	return mm / 25.4
}

// ask writes bodies and ease that make an alteration of a kind.
func (w *writer) ask(kind string, sleeve, bust float64) {
	s := w.s
	s["method.taper_from"] = w.one("line", "line", "line", "corner")
	s["method.follow"] = w.one("let out", "hold")
	s["method.slide"] = w.one("least", "even")
	s["method.front_share_sleeve"] = w.one("1/2", "1/2", "0.45", "3/5", "0.35")
	s["method.front_share_bust"] = w.one("1/2", "1/2", "0.55", "2/5", "1")
	w.length("method.pivot_limit_sleeve", []float64{0.5, 1, 1, 1.5}[w.IntN(4)])
	w.length("method.pivot_limit_bodice", []float64{0.5, 1, 1, 1.5}[w.IntN(4)])
	arm, body := w.within(0.5, 2.5), w.within(0.5, 5)
	switch kind {
	case "pivot only":
		arm, body = w.within(0.25, 1), w.within(0.25, 2)
		s["method.slide"] = "least"
	case "slide only":
		w.length("method.pivot_limit_sleeve", 0)
		w.length("method.pivot_limit_bodice", 0)
		body = 2 * arm
		s["method.front_share_sleeve"], s["method.front_share_bust"] = "1/2", "1/2"
	case "both":
		arm, body = w.within(2, 4), w.within(2, 7)
	case "inward":
		arm, body = -w.within(0.25, 2.5), -w.within(0.25, 4)
	case "mixed":
		s["method.follow"] = "hold"
		body = -w.within(0.25, 3)
		if w.chance(0.3) {
			arm, body = -w.within(0.25, 1.5), w.within(1, 4)
		}
	case "following":
		if w.chance(0.5) {
			arm = math.NaN()
			body = w.within(3, 7)
		} else {
			body = math.NaN()
			arm = w.within(1, 4)
		}
	case "kept":
		s["method.armhole"] = "keep"
		body = math.NaN()
	case "as it comes":
		arm, body = w.within(-2.5, 4), w.within(-4, 7)
		if w.chance(0.3) {
			w.length("method.slide", w.within(-0.5, 1))
		}
	}
	if !math.IsNaN(arm) {
		ease := w.length("ease.bicep", w.within(0.5, 3))
		w.length("body.bicep", sleeve+arm-ease)
	}
	if !math.IsNaN(body) {
		ease := w.length("ease.bust", w.within(1, 4))
		w.length("body.bust", bust+body-ease)
	}
}

// levels writes girths further down, some of which bind.
func (w *writer) levels() {
	for _, at := range []struct{ level, front, back string }{
		{"elbow", "sleeve.elbow_width", ""}, {"waist", "bodice.waist_front", "bodice.waist_back"}, {"hip", "bodice.hip_front", "bodice.hip_back"},
	} {
		if w.s[at.front] == "" || at.back != "" && w.s[at.back] == "" || w.chance(0.4) {
			continue
		}
		width := 0.0
		if at.back == "" {
			width = w.inInches(w.s[at.front]) - w.lostSleeve
		} else {
			width = 2 * (w.inInches(w.s[at.front]) + w.inInches(w.s[at.back]) - 2*w.lostBodice)
		}
		ease := w.length("ease."+at.level, w.within(0.5, 2))
		w.length("body."+at.level, width-ease+w.within(-3, 2))
	}
}
