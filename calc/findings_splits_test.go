package calc_test

import (
	"capscye/calc"
	"capscye/units"
)

// What is to be said of pivots and slides. Nothing of it is said while the plan is
// open: both pieces share a slide, so neither is planned then.

func slowSplits() []func(*slowSheet) {
	return []func(*slowSheet){
		each(sayFitsAlready), each(sayComesIn), each(sayWhatItDoes), each(sayFollowsUnasked), each(sayExtraEase), each(sayTooFarIn),
		each(sayPivotsBack), each(sayMissed), each(sayLimitWide), each(sayTighterThanBody),
		saySlideMoved, sayCapTakesSlide, sayCapEase, sayStartLarger,
	}
}

// each says something of either piece once it is planned.
func each(says func(*slowSheet, slowPiece)) func(*slowSheet) {
	return func(s *slowSheet) {
		for _, p := range s.pieces {
			if !s.plan.Open {
				says(s, p)
			}
		}
	}
}

func (p slowPiece) asked() bool { return p.girth.Need.Known }

// sum adds up something over a front and a back side.
func (p slowPiece) sum(of func(calc.SidePlan) units.Length) units.Length {
	return of(p.sides[0]) + of(p.sides[1])
}

func (p slowPiece) slides() units.Length {
	return p.sum(func(s calc.SidePlan) units.Length { return s.Slide })
}
func (p slowPiece) gains() units.Length {
	return p.sum(func(s calc.SidePlan) units.Length { return s.Total })
}

func (p slowPiece) turns() bool { return p.sides[0].Pivot != 0 || p.sides[1].Pivot != 0 }
func (p slowPiece) slid() bool  { return p.sides[0].Slide != 0 || p.sides[1].Slide != 0 }

// beyond is by how much a side comes out larger than it was asked, where its limit
// is not the reason.
func beyond(s calc.SidePlan) units.Length {
	if s.LeftOver != 0 || !s.Need.Known {
		return 0
	}
	return s.Total - s.Need.Length
}

// atLine is what front and back gain where the girth is measured; ok is false where the
// outline is not known.
func (p slowPiece) atLine() (gain units.Length, ok bool) {
	front, known := p.seams[0].atLine()
	back, alsoKnown := p.seams[1].atLine()
	return toCounts(front) + toCounts(back), known && alsoKnown
}

// There is nothing to alter: the need is nothing, and the other piece asks for nothing
// either. A reading: of a bodice that is cut nothing is said, for it would not be altered.
func sayFitsAlready(s *slowSheet, p slowPiece) {
	if p.asked() && !p.cut && p.girth.Need.Length == 0 && !p.turns() && !p.slid() {
		s.say(calc.Finding{Code: calc.FitsAlready, Level: calc.Note, About: p.of})
	}
}

// The pattern is larger than asked, so it comes in; a bodice that is cut does not.
func sayComesIn(s *slowSheet, p slowPiece) {
	if p.asked() && p.girth.Need.Length < 0 && !p.cut {
		s.say(calc.Finding{Code: calc.ComesIn, Level: calc.Note, About: p.of, Amount: -p.girth.Need.Length})
	}
}

// What an asked piece does: pivots, slides, or both; its seam changes by its slides.
func sayWhatItDoes(s *slowSheet, p slowPiece) {
	code := calc.PivotOnly
	switch {
	case !p.asked() || !p.turns() && !p.slid():
		return
	case p.turns() && p.slid():
		code = calc.PivotAndSlide
	case p.slid():
		code = calc.SlideOnly
	}
	s.say(calc.Finding{Code: code, Level: calc.Note, About: p.of, Amount: p.slides()})
}

// A chosen slide that lies outside its range is moved into it. Where there is no such
// range, or nothing that slides, the choice had no part in it.
func saySlideMoved(s *slowSheet) {
	if s.plan.Open || s.Method.Slide != calc.SlideChosen {
		return
	}
	for h, of := range []calc.Subject{calc.OfFront, calc.OfBack} {
		asked := s.pieces[0].asked() || s.pieces[1].asked() && !s.pieces[1].cut
		if slide := s.plan.Sides[h].Slide; asked && !s.plan.Bands[h].Empty() && slide != s.Method.SlideLength {
			s.say(calc.Finding{Code: calc.SlideMoved, Level: calc.Note, About: of, Amount: s.Method.SlideLength, Other: slide})
		}
	}
}

// A girth that nobody asked for changes, because its seam has to match. Turned instead,
// its seam would keep its length, while the other piece's changes by the slides. A
// reading: held, and past its limit, it is missed, and that is said instead.
func sayFollowsUnasked(s *slowSheet, p slowPiece) {
	if !p.asked() && p.gains() != 0 && !p.missed() {
		s.say(calc.Finding{Code: calc.FollowsUnasked, Level: calc.Warn, About: p.of, Amount: p.copies * p.gains(), Other: p.slides()})
	}
}

// It comes out larger than asked, because it has to slide as far as the other piece.
func sayExtraEase(s *slowSheet, p slowPiece) {
	if more := p.sum(func(s calc.SidePlan) units.Length { return max(beyond(s), 0) }); more > 0 {
		s.say(calc.Finding{Code: calc.ExtraEase, Level: calc.Warn, About: p.of, Amount: p.copies * more})
	}
}

// A piece that comes in has to come in farther than asked.
func sayTooFarIn(s *slowSheet, p slowPiece) {
	if less := p.sum(func(s calc.SidePlan) units.Length { return min(beyond(s), 0) }); less < 0 {
		s.say(calc.Finding{Code: calc.TooFarIn, Level: calc.Warn, About: p.of, Amount: -p.copies * less})
	}
}

// Held, a side turns against its need, to keep its width while it slides; a need of
// nothing has no direction, so any turn is against it. A reading: of a piece that nobody
// asked for and that is missed besides, only that is said.
func sayPivotsBack(s *slowSheet, p slowPiece) {
	most := units.Length(0)
	for _, side := range p.sides {
		if need := side.Need.Or(0); side.Pivot < 0 && need >= 0 || side.Pivot > 0 && need <= 0 {
			most = max(most, side.Pivot.Abs())
		}
	}
	if most > 0 && (p.asked() || !p.missed()) {
		s.say(calc.Finding{Code: calc.PivotsBack, Level: calc.Warn, About: p.of, Amount: most})
	}
}

func (p slowPiece) missed() bool { return p.sides[0].LeftOver != 0 || p.sides[1].LeftOver != 0 }

// Pivot and slide alone miss what is asked: said once, around the body, where front and
// back miss alike, else for each side with what that side misses. A bodice that is cut
// and larger than asked is no reason to stop, but a note of its extra ease.
func sayMissed(s *slowSheet, p slowPiece) {
	miss := func(about calc.Subject, by units.Length) {
		switch {
		case by == 0:
		case p.cut && by < 0:
			s.say(calc.Finding{Code: calc.ExtraEase, Level: calc.Note, About: about, Amount: -by})
		default:
			s.say(calc.Finding{Code: calc.CannotReach, Level: calc.Stop, About: about, Amount: by})
		}
	}
	if front, back := p.sides[0].LeftOver, p.sides[1].LeftOver; front == back {
		miss(p.of, p.copies*(front+back))
	} else {
		miss(p.subjects[0], front)
		miss(p.subjects[1], back)
	}
}

// A side pivots by more than the usual inch, because its limit allows it.
func sayLimitWide(s *slowSheet, p slowPiece) {
	if max(p.sides[0].Pivot.Abs(), p.sides[1].Pivot.Abs()) > calc.UsualLimit {
		s.say(calc.Finding{Code: calc.LimitWide, Level: calc.Warn, About: p.of, Amount: p.limit, Other: calc.UsualLimit})
	}
}

// Woven cloth does not stretch, and this comes out smaller than the body.
func sayTighterThanBody(s *slowSheet, p slowPiece) {
	gain, ok := p.atLine()
	less := p.girth.Body.Length - p.girth.Flat.Length - p.copies*gain
	if ok && p.asked() && s.Fabric == calc.Woven && less > 0 {
		s.say(calc.Finding{Code: calc.TighterThanBody, Level: calc.Warn, About: p.of, Amount: less})
	}
}

// The armhole stays, so what the sleeve slides has to be eased in.
func sayCapTakesSlide(s *slowSheet) {
	if slides := s.pieces[0].slides(); s.pieces[1].cut && slides != 0 && !s.plan.Open {
		s.say(calc.Finding{Code: calc.CapTakesSlide, Level: calc.Warn, About: calc.OfSleeve, Amount: slides})
	}
}

// The cap ease that comes out is held against what the style takes: set in 1/2 to 1 1/2
// in, shirt and knit 0 to 3/4 in, gathered 1 in or more.
func sayCapEase(s *slowSheet) {
	ease := s.plan.Seams.CapEaseAfter
	if !ease.Known || s.plan.Open {
		return
	}
	low, high := units.Inch/2, units.Inch*3/2
	switch {
	case s.Sleeve.Style == calc.Gathered:
		low, high = units.Inch, units.Max
	case s.Sleeve.Style == calc.Shirt || s.Fabric == calc.Knit:
		low, high = 0, units.Inch*3/4
	}
	if ease.Length < low {
		s.say(calc.Finding{Code: calc.CapEaseLow, Level: calc.Warn, About: calc.OfSleeve, Amount: ease.Length, Other: low})
	}
	if ease.Length > high {
		s.say(calc.Finding{Code: calc.CapEaseHigh, Level: calc.Warn, About: calc.OfSleeve, Amount: ease.Length, Other: high})
	}
}

// Both pieces need more than twice what their limits allow: a larger size is the better
// beginning, by what the limits do not allow. A reading: that follows from the needs,
// which are known while the plan is open for something that cannot be read.
func sayStartLarger(s *slowSheet) {
	sleeve, bust := s.plan.Sleeve.Need, s.plan.Bust.Need
	allowed, allowedBust := 2*s.Method.LimitSleeve, 4*s.Method.LimitBodice
	if sleeve.Known && bust.Known && sleeve.Length > 2*allowed && bust.Length > 2*allowedBust {
		s.say(calc.Finding{Code: calc.StartLarger, Level: calc.Warn, About: calc.OfSheet, Amount: bust.Length - allowedBust, Other: sleeve.Length - allowed})
	}
}
