package calc

import "slices"

// Where a stop may follow from a slip, the answer that is doubted is heard before it, and
// the stop has no other way out: a gusset of 114 in is none while the width may be 13.

// blame lays what cannot be done at the answers that are doubted.
func (c *computation) blame() {
	found := c.plan.Findings
	for i := range found {
		f := &found[i]
		if !slices.Contains([]Code{WidthImpossible, OutOfReach, SlideFar, CannotReach}, f.Code) {
			continue
		}
		why := -1 // the first that is doubted, one with a guess before others
		for j := range found {
			doubt := &found[j]
			if !doubt.Code.Doubts() || !slices.ContainsFunc(doubt.suspects(), func(a Answer) bool { return c.mayCause(a, f) }) {
				continue
			}
			doubt.Causes = doubt.Causes || f.Level == Stop
			if doubt.Code == EaseUnusual && f.Code != SlideFar {
				continue // somebody may want it so, and then there are ways out
			}
			if why < 0 || len(found[why].Slips) == 0 && len(doubt.Slips) > 0 {
				why = j
			}
		}
		if why >= 0 && f.Code != WidthImpossible {
			f.Answer, f.Doubt, f.Ways = found[why].Answer, found[why].Doubt, nil
			f.Causes = false
		}
	}
}

// Doubts tells the codes of answers that are doubted.
func (c Code) Doubts() bool {
	switch c {
	case GirthUnusual, ArmForBust, AnswerDoubted, EaseUnusual:
		return true
	}
	return false
}

// suspects are the answers that a doubt is about: the one that a guess mends, else both that
// do not go together.
func (f *Finding) suspects() []Answer {
	if len(f.Slips) > 0 || f.Bound.Beside == NoAnswer {
		return []Answer{f.Answer}
	}
	return []Answer{f.Answer, f.Bound.other(f.Answer)}
}

// mayCause tells that what a finding says can follow from an answer. Both pieces share a
// slide, so each may be stopped by an answer of the other.
func (c *computation) mayCause(a Answer, f *Finding) bool {
	sleeve, bodice := c.usedBySleeve(a), c.usedByBodice(a)
	if f.Code == WidthImpossible {
		return f.About == OfSleeve && sleeve && c.in.Sleeve.answer(a) != nil || f.About == OfBust && bodice && c.in.Bodice.answer(a) != nil
	}
	switch {
	case sleeve && c.plan.Sleeve.Asked() || bodice && c.plan.Bust.Asked():
		return true
	case f.Code == OutOfReach && f.About == OfSleeve:
		return slices.Contains([]Answer{CapHeight, CapFront, CapBack, UnderarmSeam, HemWidth}, a)
	case f.Code == OutOfReach:
		return slices.Contains([]Answer{CornerOutFront, CornerDownFront, CornerOutBack, CornerDownBack, ArmholeFront, ArmholeBack, BustDown, SideSeam, WaistFront, WaistBack}, a)
	}
	room := c.in.Method.Armhole == KeepArmhole && c.plan.Seams.CapEaseBefore.Known
	return room && slices.Contains([]Answer{CapFront, CapBack, ArmholeFront, ArmholeBack}, a)
}

// usedBySleeve tells the answers that the need of the sleeve is made of; of two arms only
// the larger.
func (c *computation) usedBySleeve(a Answer) bool {
	one, other := c.in.Bicep, c.in.BicepOther
	switch a {
	case Bicep:
		return !other.Known || one.Length >= other.Length
	case BicepOther:
		return !one.Known || other.Length >= one.Length
	case SleeveAllowance:
		return c.in.Sleeve.Measured == EdgeToEdge
	}
	return a == BicepEase || a == SleeveWidth
}

// usedByBodice tells the answers that the need of the bust is made of; a printed bust
// stands for the widths.
func (c *computation) usedByBodice(a Answer) bool {
	b, printed := c.in.Bodice, c.in.Bodice.FinishedBust.Known
	switch a {
	case BodiceFrontWidth, BodiceBackWidth, TakeOffFront, TakeOffBack:
		return !printed
	case BodiceAllowance:
		return !printed && b.seamsCrossed()
	}
	return a == Bust || a == BustEase || a == FinishedBust
}
