package calc_test

import (
	"capscye/calc"
	"capscye/units"
)

// What is to be said of the answers themselves, before anything is planned.

func slowAnswers() []func(*slowSheet) {
	return []func(*slowSheet){
		sayNothingAsked, sayAnswerMissing, sayLengthAssumed, sayBodiceAsSleeve, sayMeasuredDifferently, sayWidthImpossible, sayArmsDiffer, sayCapImpossible, sayArmholeImpossible, sayLeanImpossible,
	}
}

// Neither a bicep nor a bust was entered: there is nothing to do. A reading: what cannot
// be read may have been one.
func sayNothingAsked(s *slowSheet) {
	if !s.Unread && !s.Bicep.Known && !s.BicepOther.Known && !s.Bust.Known {
		s.say(calc.Finding{Code: calc.NothingAsked, Level: calc.Note, About: calc.OfSheet, Answer: calc.AnyGirth})
	}
}

// A need is girth + ease - flat width. Where the girth was entered, each of the
// others that is missing is named: the ease, the widths, the allowance where the tape
// crossed seams, and where there are widths, between what they were measured. A printed
// finished bust stands for the widths.
func sayAnswerMissing(s *slowSheet) {
	lacks := func(of calc.Subject, a calc.Answer, needed bool, r units.Reading) {
		if needed && !r.Known {
			s.say(calc.Finding{Code: calc.AnswerMissing, Level: calc.Warn, About: of, Answer: a})
		}
	}
	sleeve, widths := s.Bicep.Known || s.BicepOther.Known, s.Bust.Known && !s.Bodice.FinishedBust.Known
	told := func(m calc.Measured) units.Reading { return units.Reading{Known: m != calc.NotTold} }
	lacks(calc.OfSleeve, calc.SleeveMeasured, sleeve && s.Sleeve.Width.Known, told(s.Sleeve.Measured))
	lacks(calc.OfBust, calc.BodiceMeasured, widths && (s.Bodice.Front.Known || s.Bodice.Back.Known), told(s.Bodice.Measured))
	lacks(calc.OfSleeve, calc.SleeveWidth, sleeve, s.Sleeve.Width)
	lacks(calc.OfSleeve, calc.SleeveAllowance, sleeve && s.Sleeve.Measured == calc.EdgeToEdge, s.Sleeve.Allowance)
	lacks(calc.OfSleeve, calc.BicepEase, sleeve, s.BicepEase)
	lacks(calc.OfBust, calc.BodiceFrontWidth, widths, s.Bodice.Front)
	lacks(calc.OfBust, calc.BodiceBackWidth, widths, s.Bodice.Back)
	lacks(calc.OfBust, calc.BodiceAllowance, widths && s.Bodice.Measured == calc.EdgeToEdge && s.Bodice.Crossings > 0, s.Bodice.Allowance)
	lacks(calc.OfBust, calc.BustEase, s.Bust.Known, s.BustEase)
}

// A sleeve that nobody called long or short is altered as a short one, and that is said
// where there is something to mark on it.
func sayLengthAssumed(s *slowSheet) {
	if s.Sleeve.LengthAssumed && s.pieces[0].marked() {
		s.say(calc.Finding{Code: calc.LengthAssumed, Level: calc.Note, About: calc.OfSleeve})
	}
}

// widthsCount tells that the bust comes from widths measured in a known way.
func (s *slowSheet) widthsCount() bool {
	b := s.Bodice
	return !b.FinishedBust.Known && (b.Front.Known || b.Back.Known) && b.Measured != calc.NotTold
}

// What was not told of the bodice is taken from the sleeve, and said to be.
func sayBodiceAsSleeve(s *slowSheet) {
	if s.Bodice.LikeSleeve && s.widthsCount() {
		s.say(calc.Finding{Code: calc.BodiceAsSleeve, Level: calc.Note, About: calc.OfBust})
	}
}

// One pattern is measured in one way: seam lines here and cut edges there is a check, and
// so are two allowances, where both are taken off.
func sayMeasuredDifferently(s *slowSheet) {
	a, b := s.Sleeve, s.Bodice
	ways := a.Measured != b.Measured
	allowances := a.Measured == calc.EdgeToEdge && b.Measured == calc.EdgeToEdge && b.Crossings > 0 &&
		a.Allowance.Known && b.Allowance.Known && a.Allowance != b.Allowance
	if s.widthsCount() && a.Width.Known && a.Measured != calc.NotTold && (ways || allowances) {
		s.say(calc.Finding{Code: calc.MeasuredDifferently, Level: calc.Warn, About: calc.OfSheet, Amount: a.Allowance.Or(0), Other: b.Allowance.Or(0)})
	}
}

// Allowances and take-off cannot be more than the pattern is wide. That stops, whether
// or not the girth was asked.
func sayWidthImpossible(s *slowSheet) {
	sleeve, bust := paperSleeve(s.Sleeve, s.Sleeve.Width), exactReading(s.Bodice.FinishedBust)
	if !bust.known() {
		b := s.Bodice
		bust = oraclePiece(b, b.Front, b.TakeOffFront).plus(oraclePiece(b, b.Back, b.TakeOffBack)).times(exactly(2))
	}
	for i, left := range []exact{sleeve, bust} {
		if left.known() && left.sign() <= 0 {
			s.say(calc.Finding{Code: calc.WidthImpossible, Level: calc.Stop, About: s.pieces[i].of, Amount: left.length()})
		}
	}
}

// Of two arms the larger one decides, which is worth a word where they differ.
func sayArmsDiffer(s *slowSheet) {
	if s.Bicep.Known && s.BicepOther.Known && s.Bicep != s.BicepOther {
		s.say(calc.Finding{Code: calc.ArmsDiffer, Level: calc.Note, About: calc.OfSleeve, Amount: (s.Bicep.Length - s.BicepOther.Length).Abs()})
	}
}

// A half-cap of length L over a side w wide and h tall is possible only if
// hypot(w, h) <= L <= w + h; the side is half the flat width, and the cap height.
func sayCapImpossible(s *slowSheet) {
	half := oracleSleeveFlat(s.Sleeve).half().reading()
	s.seamOver(calc.CapImpossible, calc.OfSleeveFront, s.Sleeve.CapFront, half, s.Sleeve.CapHeight)
	s.seamOver(calc.CapImpossible, calc.OfSleeveBack, s.Sleeve.CapBack, half, s.Sleeve.CapHeight)
}

// A half-armhole reaches from the pin to its corner too; it may be as long as it likes,
// for an armhole may scoop inwards.
func sayArmholeImpossible(s *slowSheet) {
	b := s.Bodice
	s.seamOver(calc.ArmholeImpossible, calc.OfBodiceFront, b.ArmholeFront, b.CornerOutFront, b.CornerDownFront)
	s.seamOver(calc.ArmholeImpossible, calc.OfBodiceBack, b.ArmholeBack, b.CornerOutBack, b.CornerDownBack)
}

// seamOver lays a half-seam over its side. A reading: that is looked at with the turns,
// once the pieces are planned.
func (s *slowSheet) seamOver(code calc.Code, side calc.Subject, seam, wide, tall units.Reading) {
	if s.plan.Open || !seam.Known || !wide.Known || !tall.Known {
		return
	}
	l, w, h := exactly(seam.Length), exactly(wide.Length), exactly(tall.Length)
	if l.times(l).less(w.times(w).plus(h.times(h))) || code == calc.CapImpossible && w.plus(h).less(l) {
		s.say(calc.Finding{Code: code, Level: calc.Warn, About: side, Amount: seam.Length, Other: wide.Length, Third: tall.Length})
	}
}

// A seam cannot go in, or out, by more than it is long: one of the widths or the seam
// is wrong. Of a bodice it is the part below the bust line. A reading: it is said where the
// lean would be used, so once the pieces are planned and the corner was measured.
func sayLeanImpossible(s *slowSheet) {
	if s.plan.Open {
		return
	}
	for _, p := range s.pieces {
		for h, seam := range p.seams {
			if seam.tooFar {
				s.say(calc.Finding{Code: calc.LeanImpossible, Level: calc.Warn, About: p.subjects[h],
					Amount: toCounts(seam.below - seam.line), Other: seam.in})
			}
		}
	}
}
