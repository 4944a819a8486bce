package calc

import "capscye/units"

// held is a sheet as it is held against the bounds.
type held struct {
	of    [KnitCloth + 1]bool        // which bounds hold for it
	typed [AnswerCount]units.Reading // for bounds of their own
	net   [AnswerCount]units.Reading // beside each other: widths without allowances and take-off
}

func hold(in *Input) (h held) {
	h.of = [...]bool{
		Anyone: true, GrownUp: !in.child(), LongSleeve: in.Sleeve.Long, ShortSleeve: !in.Sleeve.Long, SetInSleeve: in.Sleeve.Style == SetIn,
		WovenCloth: in.Fabric == Woven, KnitCloth: in.Fabric == Knit,
	}
	for a := Bicep; a < AnswerCount; a++ {
		if r := in.answer(a); r != nil {
			h.typed[a], h.net[a] = *r, *r
		}
	}
	for _, a := range [...]Answer{SleeveWidth, HemWidth, ElbowWidth} {
		h.net[a] = in.Sleeve.Flat(h.typed[a])
	}
	for _, a := range [...]Answer{BodiceFrontWidth, BodiceBackWidth, WaistFront, WaistBack, HipFront, HipBack} {
		h.net[a] = in.Bodice.flat(h.typed[a])
	}
	h.net[BodiceFrontWidth].Length -= in.Bodice.TakeOffFront.Or(0)
	h.net[BodiceBackWidth].Length -= in.Bodice.TakeOffBack.Or(0)
	return h
}

// answer is where a measurement or an ease stands.
func (in *Input) answer(a Answer) *units.Reading {
	switch a {
	case Bicep:
		return &in.Bicep
	case BicepOther:
		return &in.BicepOther
	case Bust:
		return &in.Bust
	case HighBust:
		return &in.HighBust
	case Waist:
		return &in.Waist
	case Hip:
		return &in.Hip
	case Elbow:
		return &in.Elbow
	case Wrist:
		return &in.Wrist
	case BicepEase:
		return &in.BicepEase
	case BustEase:
		return &in.BustEase
	case WaistEase:
		return &in.WaistEase
	case HipEase:
		return &in.HipEase
	case ElbowEase:
		return &in.ElbowEase
	case WristEase:
		return &in.WristEase
	}
	if r := in.Sleeve.answer(a); r != nil {
		return r
	}
	return in.Bodice.answer(a)
}

func (in *SleeveInput) answer(a Answer) *units.Reading {
	switch a {
	case SleeveWidth:
		return &in.Width
	case SleeveAllowance:
		return &in.Allowance
	case CapHeight:
		return &in.CapHeight
	case CapFront:
		return &in.CapFront
	case CapBack:
		return &in.CapBack
	case UnderarmSeam:
		return &in.UnderarmSeam
	case HemWidth:
		return &in.HemWidth
	case ElbowWidth:
		return &in.ElbowWidth
	}
	return nil
}

func (in *BodiceInput) answer(a Answer) *units.Reading {
	switch a {
	case BodiceFrontWidth:
		return &in.Front
	case BodiceBackWidth:
		return &in.Back
	case BodiceAllowance:
		return &in.Allowance
	case TakeOffFront:
		return &in.TakeOffFront
	case TakeOffBack:
		return &in.TakeOffBack
	case FinishedBust:
		return &in.FinishedBust
	case ArmholeFront:
		return &in.ArmholeFront
	case ArmholeBack:
		return &in.ArmholeBack
	case CornerOutFront:
		return &in.CornerOutFront
	case CornerDownFront:
		return &in.CornerDownFront
	case CornerOutBack:
		return &in.CornerOutBack
	case CornerDownBack:
		return &in.CornerDownBack
	case BustDown:
		return &in.BustDown
	case SideSeam:
		return &in.SideSeam
	case WaistFront:
		return &in.WaistFront
	case WaistBack:
		return &in.WaistBack
	case HipFront:
		return &in.HipFront
	case HipBack:
		return &in.HipBack
	}
	return nil
}
