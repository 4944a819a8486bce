package calc_test

import (
	"slices"

	"capscye/calc"
)

// What may follow from a doubted answer: tried by what the sums use of it, and laid at the
// first doubt that is guessed, else the first.

var seamAnswers = []calc.Answer{calc.CapFront, calc.CapBack, calc.ArmholeFront, calc.ArmholeBack}

// layAtDoubts marks what comes first, and gives a stop the doubt that may be why.
func (s *slowSheet) layAtDoubts() {
	doubts := []calc.Code{calc.GirthUnusual, calc.ArmForBust, calc.AnswerDoubted, calc.EaseUnusual}
	for i := range s.found {
		f := &s.found[i]
		if !slices.Contains([]calc.Code{calc.CannotReach, calc.OutOfReach, calc.SlideFar, calc.WidthImpossible}, f.Code) {
			continue
		}
		var why, guessed *calc.Finding
		for j := range s.found {
			d := &s.found[j]
			if !slices.Contains(doubts, d.Code) || !slices.ContainsFunc(s.madeOf(*f), func(a calc.Answer) bool { return a == d.Answer || len(d.Slips) == 0 && named(a, *d.Bound) }) {
				continue
			}
			d.Causes = d.Causes || f.Level == calc.Stop
			if d.Code == calc.EaseUnusual && f.Code != calc.SlideFar { // a garment may be wanted so wide
				continue
			}
			if why == nil {
				why = d
			}
			if guessed == nil && len(d.Slips) > 0 {
				guessed = d
			}
		}
		if guessed != nil {
			why = guessed
		}
		if why != nil && f.Code != calc.WidthImpossible {
			f.Answer, f.Doubt = why.Answer, why.Doubt
			f.Causes = false
		}
	}
}

// madeOf are the answers that what cannot be done comes from: the sums of both pieces, for
// they share a slide; for a turn the corners too, for a kept armhole the seams.
func (s *slowSheet) madeOf(f calc.Finding) (from []calc.Answer) {
	sleeve, bodice := []calc.Answer{calc.SleeveWidth}, []calc.Answer{calc.FinishedBust}
	if s.Sleeve.Measured == calc.EdgeToEdge {
		sleeve = append(sleeve, calc.SleeveAllowance)
	}
	if b := s.Bodice; !b.FinishedBust.Known {
		bodice = []calc.Answer{calc.BodiceFrontWidth, calc.BodiceBackWidth, calc.TakeOffFront, calc.TakeOffBack}
		if b.Measured == calc.EdgeToEdge && b.Crossings > 0 {
			bodice = append(bodice, calc.BodiceAllowance)
		}
	}
	if f.Code == calc.WidthImpossible {
		return map[calc.Subject][]calc.Answer{calc.OfSleeve: sleeve, calc.OfBust: bodice}[f.About]
	}
	if s.pieces[0].asked() {
		from = append(append(from, sleeve...), calc.BicepEase)
		if one, other := s.Bicep, s.BicepOther; !one.Known || other.Known && other.Length >= one.Length {
			from = append(from, calc.BicepOther)
		}
		if one, other := s.Bicep, s.BicepOther; !other.Known || one.Known && one.Length >= other.Length {
			from = append(from, calc.Bicep)
		}
	}
	if s.pieces[1].asked() {
		from = append(append(from, bodice...), calc.BustEase, calc.Bust)
	}
	switch {
	case f.Code == calc.OutOfReach && f.About == calc.OfSleeve:
		from = append(from, calc.CapHeight, calc.CapFront, calc.CapBack, calc.UnderarmSeam, calc.HemWidth)
	case f.Code == calc.OutOfReach:
		from = append(from, calc.CornerOutFront, calc.CornerDownFront, calc.CornerOutBack, calc.CornerDownBack,
			calc.ArmholeFront, calc.ArmholeBack, calc.BustDown, calc.SideSeam, calc.WaistFront, calc.WaistBack)
	case s.Method.Armhole == calc.KeepArmhole && s.plan.Seams.CapEaseBefore.Known:
		from = append(from, seamAnswers...)
	}
	return from
}
