package show

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/ui/compare"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// Sentences are the computed sheet for the ear: the verdict, what to mark, what comes
// out, what to check, and why.
func Sentences(r report.Report, working bool) typeset.Speech {
	var s typeset.Speech
	s.SayEach(r.Verdict().Line())
	s.Say("%s", r.Name())
	s.Say("Lengths are in %s, amounts to mark are for a ruler in %s", wording.UnitWords(r.Scale.System), r.Scale.Ruler)
	s.SayEach(r.SizeWords())
	if notes := r.Sheet.Text(worksheets.Notes); notes != "" {
		s.Say("Notes: %s", notes)
	}
	SayAmounts(&s, r)
	if !r.Plan.TooFar() { // nothing comes out of what nobody does
		sayOutcome(&s, r)
	}
	sayFindings(&s, r)
	for _, t := range compare.Troubles(r) {
		for _, o := range t.Offers {
			if t.Finding.Level > calc.Note {
				s.Say("A single change would solve this: %s", o.Asked)
			} else {
				s.Say("Worth a try: %s", o.Asked)
			}
			for _, price := range o.Said {
				s.SayEach("With that, " + typeset.Uncapitalised(price))
			}
		}
	}
	sayWhy(&s, r)
	for _, l := range report.FittingLines(r) {
		s.Say("A fitting showed: %s", l)
	}
	if working {
		for _, l := range r.Worked() {
			s.SayEach(l.Why)
			s.Say("%s", l.Text)
		}
	}
	for _, c := range wording.Cautions {
		s.SayEach(c)
	}
	return s
}

// SayAmounts says what to mark and where.
func SayAmounts(s *typeset.Speech, r report.Report) {
	if r.Plan.TooFar() {
		s.SayEach(r.NothingToTrace())
		return
	}
	for i, p := range r.Pieces() {
		line := [...]string{"on the bicep line", "on the level line through the underarm"}[i]
		for _, words := range p.SidesWords(r.Scale) {
			side, amounts, _ := strings.Cut(words, ": ")
			if amounts == "stays" {
				s.Say("%s, %s: leave it as it is", p.Name, side)
				continue
			}
			s.Say("%s, %s, %s: %s", p.Name, side, line, strings.ReplaceAll(amounts, ", ", " and "))
		}
		if len(p.SidesWords(r.Scale)) == 0 && !p.Open && p.Girth.Asked() {
			s.Say("%s: nothing to mark", p.Name)
		}
	}
}

// sayOutcome says what comes out: the girths, the cap and the armhole, and what has to fit
// below the underarm.
func sayOutcome(s *typeset.Speech, r report.Report) {
	SayFinished(s, r)
	sayCapEase(s, r)
	for _, front := range []calc.Side{calc.SleeveFront, calc.BodiceFront} {
		sayHeights(s, r, front)
		sayGrowths(s, r, front)
	}
	for _, w := range r.Plan.Widths {
		words := fmt.Sprintf("Around the %s it measures %s, ", wording.PlaceWords[w.At], r.Scale.Format(w.Around))
		switch spare := -w.Lacks(); {
		case spare < 0:
			s.Say("%s%s less than wanted", words, r.Scale.Format(-spare))
		case spare == 0:
			s.Say("%sas wanted", words)
		default:
			s.Say("%s%s more than wanted", words, r.Scale.Format(spare))
		}
	}
	if !r.Plan.Open && r.Plan.Whole() {
		for _, h := range calc.Halves() {
			s.Say("%s slide: %s", typeset.Capitalised(wording.SubjectWords[h.Subject()]), strings.NewReplacer(" (", "; ", ")", "").Replace(r.BandWords(h)))
		}
	}
}

// sayCapEase says how the cap lies to the armhole, now and before.
func sayCapEase(s *typeset.Speech, r report.Report) {
	before, after := r.Plan.Seams.CapEaseBefore, r.Plan.Seams.CapEaseAfter
	if !after.Known {
		return
	}
	words := report.CapBesideArmhole(after.Length, r.Scale)
	if after.Length > 0 {
		words += ", to be eased in"
	}
	if before == after {
		s.Say("The cap is %s, as before", words)
	} else {
		s.Say("The cap is %s; before, it was %s", words, report.CapBesideArmhole(before.Length, r.Scale))
	}
	s.Say("The usual cap ease for this style is %s", r.UsualCapEase())
}

// sayHeights says what a pivot takes off the cap or the armhole, once where front and back
// lose the same.
func sayHeights(s *typeset.Speech, r report.Report, front calc.Side) {
	what := "cap height"
	if front == calc.BodiceFront {
		what = "armhole depth"
	}
	var said [2]string
	for i := range said {
		side := front + calc.Side(i)
		if t := r.Plan.Turns[side]; t.Known && t.Lift != 0 {
			height := calc.Approx{MM: t.HeightAfter, Known: true}.Length().Length
			was := calc.Approx{MM: r.Plan.Edges[side].H, Known: true}.Length().Length
			if said[i] = r.Scale.Format(height) + " instead of " + r.Scale.Format(was); r.Scale.Format(height) == r.Scale.Format(was) {
				said[i] = "" // no ruler shows what it loses
			}
		}
	}
	if said[0] == said[1] && said[0] != "" {
		s.Say("The %s becomes %s", what, said[0])
		return
	}
	for i, words := range said {
		if words != "" {
			s.Say("The %s of the %s becomes %s", what, wording.SubjectWords[calc.Halves()[i].Subject()], words)
		}
	}
}

// sayGrowths says how much longer the seams below the underarm get, once where front and back
// get alike.
func sayGrowths(s *typeset.Speech, r report.Report, front calc.Side) {
	seam := report.WordsOfPiece(front.Subject()).Below
	var said [2]string
	for i := range said {
		growth := r.Plan.Sides[front+calc.Side(i)].Grows
		if !growth.Known || r.Plan.Sides[front].Total == 0 && r.Plan.Sides[front+1].Total == 0 {
			return
		}
		said[i] = wording.Longer(growth.Length, r.Scale)
	}
	if said[0] == said[1] {
		s.Say("Each %s %s", seam, said[0])
		return
	}
	s.Say("The %s of the front %s, that of the back %s", seam, said[0], said[1])
}

// sayFindings says every finding, those that ask for most first, and its ways out.
func sayFindings(s *typeset.Speech, r report.Report) {
	for _, f := range r.Findings {
		if f.Code != calc.AnswerMissing { // the verdict has named it
			SayFinding(s, report.LevelWords[f.Level], f)
		}
	}
}

// SayFinding says a finding behind what it asks, and its ways out.
func SayFinding(s *typeset.Speech, lead string, f report.Finding) {
	s.SayEach(lead + ": " + f.Text)
	for _, w := range f.Ways {
		if f.Level == calc.Note {
			s.Say("You can %s", w.Words)
		} else {
			s.Say("A way out: %s", w.Words)
		}
	}
	if f.Accept != "" {
		s.Say("Or %s", f.Accept)
	}
}

// sayWhy says where the needs come from.
func sayWhy(s *typeset.Speech, r report.Report) {
	for i, p := range r.Pieces() {
		s.Say("%s", p.NeedWords(r.Scale))
		if g := p.Girth; g.Need.Known {
			s.Say("That is %s of %s and %s of ease, less %s of pattern", r.Scale.Format(g.Body.Length), [...]string{"arm", "bust"}[i],
				r.Scale.Format(g.Ease.Length), r.Scale.Format(g.Flat.Length))
		}
	}
}

// SayFinished says what comes out around the body.
func SayFinished(s *typeset.Speech, r report.Report) {
	for _, p := range r.Pieces() {
		if words := p.FinishedWords(r.Scale); words != "" {
			s.Say("Finished %s: %s", strings.ToLower(p.Name), words)
		}
	}
}
