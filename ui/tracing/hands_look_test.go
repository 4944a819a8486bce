package tracing_test

import (
	"math"
	"slices"
	"strings"
)

// What is looked at on the paper besides what is measured.

// drawnOut: where the findings say that the steps draw a seam out, they do, by as much.
func (t *trial) drawnOut() {
	steps := strings.Join(strings.Fields(t.answer.printed), " ")
	for _, out := range t.answer.figures.outs() {
		t.held["drawn out"]++
		if !strings.Contains(steps, "a point "+out+" ") {
			t.fault("no step draws a seam to a point %s off the old one", out)
		}
	}
	fitted, binds := false, false
	for _, f := range t.answer.figures.Findings {
		binds = binds || f.Code == "binds-below" && strings.Contains(f.Text, "the steps draw ")
	}
	for _, o := range t.halves() {
		fitted = fitted || o.fitted
	}
	for _, p := range append(append([]*paper{}, t.hands.sleeve[:]...), t.hands.bodice[:]...) {
		if p.endsOut != p.there["lower edge drawn on"] {
			t.fault("%s: the new seam ends outside the old one: %v; the edge is drawn on to it: %v", p.name, p.endsOut, !p.endsOut)
		}
	}
	if fitted != binds {
		t.fault("a seam is drawn out: %v; the findings say so: %v", fitted, binds)
	}
}

// bends: a seam that tapers is smoothed wherever it bends.
func (t *trial) bends() {
	papers := append(append([]*paper{}, t.hands.sleeve[:]...), t.hands.bodice[:]...)
	for i, o := range t.halves() {
		if !o.touched || !o.bodice && t.sheet.is("sleeve.length", "short") == "short" {
			continue
		}
		for n := 1; n+1 < len(o.below) && o.below[n].y > o.end().y+hair; n++ {
			a, b := o.below[n].minus(o.below[n-1]), o.below[n+1].minus(o.below[n])
			turn := math.Abs(math.Atan2(a.cross(b), a.x*b.x+a.y*b.y)) * 180 / math.Pi
			t.held["bends"]++
			if turn > 3 && !slices.ContainsFunc(papers[i].smoothed, func(at point) bool { return at.to(o.below[n]) < 1 }) {
				t.fault("%s: the seam bends by %.0f degrees at %v, and is not smoothed there", o.name, turn, o.below[n])
			}
		}
	}
}

// darts: one that may be there is traced, and folded shut before its seam is drawn anew.
func (t *trial) darts() {
	for _, p := range t.hands.bodice {
		if len(p.drawn) == 0 {
			continue
		}
		side := p.dart == "side" || p.dart == "any"
		for what, want := range map[string]bool{"dart": p.dart != "none", "folded dart": side, "legs of the dart": side, "folded at the armhole": p.dart == "armhole"} {
			if p.there[what] != want {
				t.fault("%s, dart %s: %s %v", p.name, p.dart, what, p.there[what])
			}
		}
	}
}
