package forms

import (
	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// KeyOf says where an answer of the sums stands in the worksheet.
var KeyOf = map[calc.Answer]worksheets.Key{
	calc.Bicep: worksheets.Bicep, calc.BicepOther: worksheets.BicepOther, calc.Bust: worksheets.Bust,
	calc.BicepEase: worksheets.EaseBicep, calc.BustEase: worksheets.EaseBust,
	calc.SleeveMeasured: worksheets.SleeveMeasured, calc.SleeveAllowance: worksheets.SleeveAllowance, calc.SleeveWidth: worksheets.SleeveWidth,
	calc.CapFront: worksheets.CapFront, calc.CapBack: worksheets.CapBack,
	calc.BodiceFrontWidth: worksheets.BodiceFront, calc.BodiceBackWidth: worksheets.BodiceBack,
	calc.BodiceMeasured: worksheets.BodiceMeasured, calc.BodiceAllowance: worksheets.BodiceAllowance,
	calc.TakeOffFront: worksheets.TakeOffFront, calc.TakeOffBack: worksheets.TakeOffBack,
	calc.FinishedBust: worksheets.FinishedBust,
	calc.ArmholeFront: worksheets.ArmholeFront, calc.ArmholeBack: worksheets.ArmholeBack,
	calc.LimitSleeve: worksheets.PivotLimitSleeve, calc.LimitBodice: worksheets.PivotLimitBodice,
	calc.ShareSleeve: worksheets.FrontShareSleeve, calc.ShareBust: worksheets.FrontShareBust, calc.FollowCustom: worksheets.Follow,
	calc.SlideLength: worksheets.Slide, calc.Ruler: worksheets.Ruler, calc.AnyGirth: worksheets.Bicep,
	calc.HighBust: worksheets.HighBust, calc.Waist: worksheets.Waist, calc.Hip: worksheets.Hip,
	calc.Elbow: worksheets.Elbow, calc.Wrist: worksheets.Wrist,
	calc.CapHeight: worksheets.CapHeight, calc.UnderarmSeam: worksheets.UnderarmSeam, calc.HemWidth: worksheets.HemWidth,
	calc.CornerOutFront: worksheets.CornerOutFront, calc.CornerDownFront: worksheets.CornerDownFront,
	calc.CornerOutBack: worksheets.CornerOutBack, calc.CornerDownBack: worksheets.CornerDownBack,
	calc.ElbowWidth: worksheets.ElbowWidth, calc.BustDown: worksheets.BustDown, calc.HipFront: worksheets.HipFront, calc.HipBack: worksheets.HipBack,
	calc.WaistEase: worksheets.EaseWaist, calc.HipEase: worksheets.EaseHip, calc.ElbowEase: worksheets.EaseElbow, calc.WristEase: worksheets.EaseWrist,
	calc.SideSeam: worksheets.SideSeam, calc.WaistFront: worksheets.WaistFront, calc.WaistBack: worksheets.WaistBack,
}

// PlaceOf says at which level an answer asks for ease.
var PlaceOf = map[worksheets.Key]calc.Place{
	worksheets.EaseBicep: calc.AtBicep, worksheets.EaseBust: calc.AtBust, worksheets.EaseWaist: calc.AtWaist,
	worksheets.EaseHip: calc.AtHip, worksheets.EaseElbow: calc.AtElbow, worksheets.EaseWrist: calc.AtWrist,
}

// Begin is a new sheet: the usual limits, and the middle of the usual ease for
// the person to change.
func Begin(sys units.System) worksheets.Sheet {
	var s worksheets.Sheet
	set := func(k worksheets.Key, text string) {
		if err := s.Set(k, text); err != nil { // our own words are always readable
			panic(err)
		}
	}
	set(worksheets.Unit, sys.String())
	set(worksheets.Ruler, units.UsualRuler(sys).String())
	limit := calc.UsualLimit
	step := units.EighthInch.Mark()
	if sys == units.Centimetres { // where the tape is metric, nobody marks 2.54 cm
		limit, step = 25*units.Millimetre, units.FiveMillimetres.Mark()
	}
	sc := s.Scale()
	set(worksheets.PivotLimitSleeve, sc.Number(limit))
	set(worksheets.PivotLimitBodice, sc.Number(limit))
	for k, place := range PlaceOf {
		set(k, sc.Number(calc.MiddleEase(place, calc.Woven).Round(step)))
	}
	return s
}
