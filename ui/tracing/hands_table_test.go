package tracing_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
)

// row is a line of the table: how far off a length was, sheet by sheet.
type row struct {
	what        string
	count, good int
	sum, worst  float64
	at          int
}

func (r *row) add(n int, off float64) {
	if math.IsNaN(off) {
		return
	}
	r.count++
	r.sum += math.Abs(off)
	if math.Abs(off) <= hair {
		r.good++
	}
	if math.Abs(off) > math.Abs(r.worst) {
		r.worst, r.at = off, n
	}
}

// TestTableOfTheHands prints how far off the paper is, over the random sheets: with
// CAPSCYE_TEST_TABLE set, since a table judges nothing.
func TestTableOfTheHands(t *testing.T) {
	if os.Getenv("CAPSCYE_TEST_TABLE") == "" {
		t.Skip("CAPSCYE_TEST_TABLE is not set")
	}
	p := newProgram(t)
	for _, from := range []string{"line", "corner"} {
		t.Log("\n" + table(p, many(t), from))
	}
}

// table traces the sheets, all of them with the taper from the line or from the corner.
func table(p *program, sheets int, from string) string {
	rows := map[string]*row{}
	order := []string{"bicep line, of what was asked", "bust line, of what was asked", "bicep line, of what it says", "bust line, of what it says",
		"elbow, too tight", "waist, too tight", "hip, too tight", "cap, of what it says", "armhole, of what it says",
		"underarm seam growth, of what it says", "side seam growth, of what it says"}
	for _, what := range order {
		rows[what] = &row{what: what}
	}
	traced, asAsked, untraced := 0, 0, 0 // the last: a stop, or a pattern, as far as it was made up, on which it cannot be done
	for n := range sheets {
		s, _ := randomSheet(n)
		s["method.taper_from"] = from
		tr := trace(s, p.ask(s), cut(s, false))
		if len(tr.faults) > 0 || tr.void || len(tr.hands.stopped) > 0 {
			untraced++
			continue
		}
		traced++
		if tr.tabulate(n, rows) {
			asAsked++
		}
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%d sheets, taper from the %s: %d cannot be altered so; of %d that were traced, %d came to what was asked, within 1/64 in\n", sheets, from, untraced, traced, asAsked)
	fmt.Fprintf(&b, "%-40s %7s %12s %12s %20s\n", "", "lengths", "within 1/64", "mean error", "worst error (sheet)")
	for _, what := range order {
		r := rows[what]
		fmt.Fprintf(&b, "%-40s %7d %12d %9.2f mm %11.2f mm (%d)\n", r.what, r.count, r.good, r.sum/max(float64(r.count), 1), r.worst, r.at)
	}
	return b.String()
}

// tabulate adds a trial to the rows, and tells whether its girths came to what was asked,
// less what the ruler rounds: to the pattern's width and the marks of the sides.
func (t *trial) tabulate(n int, rows map[string]*row) bool {
	as := true
	sleeve, bodice := t.answer.sides()
	for _, g := range []struct {
		what   string
		halves [2]outline
		sides  [2]sideFigures
		said   *float64
		copies float64
	}{
		{"bicep", t.tape.sleeve, sleeve, t.answer.figures.Finished.BicepMarked, 1},
		{"bust", t.tape.bodice, bodice, t.answer.figures.Finished.BustMarked, 2},
	} {
		if !g.halves[0].touched && !g.halves[1].touched || g.said == nil {
			continue
		}
		found, want := around(g.halves, outline.girth), 0.0
		for i, o := range g.halves {
			want += g.copies * (o.before().width(o.lineAt) + *g.sides[i].PivotMark + *g.sides[i].SlideMark)
		}
		as = as && math.Abs(found-want) <= hair
		rows[g.what+" line, of what was asked"].add(n, found-want)
		said := *g.said
		for _, s := range t.hands.said {
			if s.what == map[string]string{"bicep": "sleeve around", "bust": "bodice around"}[g.what] && !s.rough {
				said = s.mm // where the sentences say it, they count where the seam is drawn out to fit
			}
		}
		rows[g.what+" line, of what it says"].add(n, found-said)
	}
	for _, f := range t.fits() {
		if f.what != "wrist" {
			rows[f.what+", too tight"].add(n, max(f.short, 0))
		}
	}
	for _, s := range t.hands.said {
		found, ok := t.find(s.what)
		of := map[string]string{"cap": "cap", "armhole": "armhole", "growth sleeve front": "underarm seam growth", "growth sleeve back": "underarm seam growth",
			"growth bodice front": "side seam growth", "growth bodice back": "side seam growth"}[s.what]
		if h := t.seamBelow(s.what); !ok || of == "" || h != nil && h.halfLeant {
			continue
		}
		off := found - s.mm
		if s.rough {
			off = math.Copysign(max(math.Abs(off)-t.sheet.step()/2, 0), off)
		}
		rows[of+", of what it says"].add(n, off)
	}
	return as
}
