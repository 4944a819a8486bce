package ui

import (
	"time"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// input is the one place where a sheet becomes numbers. today tells whether the
// measurements are old.
func input(s *worksheets.Sheet, today time.Time) calc.Input {
	r := s.Reading
	edge := func(k worksheets.Key) bool { return s.Choice(k) == "edge" }
	in := calc.Input{
		Ruler: s.Ruler(),
		Bicep: r(worksheets.Bicep), BicepOther: r(worksheets.BicepOther), Bust: r(worksheets.Bust),
		HighBust: r(worksheets.HighBust), Waist: r(worksheets.Waist), Hip: r(worksheets.Hip),
		Elbow: r(worksheets.Elbow), Wrist: r(worksheets.Wrist),
		BicepEase: r(worksheets.EaseBicep), BustEase: r(worksheets.EaseBust),
		WaistEase: r(worksheets.EaseWaist), HipEase: r(worksheets.EaseHip),
		ElbowEase: r(worksheets.EaseElbow), WristEase: r(worksheets.EaseWrist),
		MeasuredLongAgo: longAgo(s.Text(worksheets.MeasuredOn), today),
		Sleeve: calc.SleeveInput{
			Width: r(worksheets.SleeveWidth), EdgeToEdge: edge(worksheets.SleeveMeasured),
			Allowance: r(worksheets.SleeveAllowance),
			CapFront:  r(worksheets.CapFront), CapBack: r(worksheets.CapBack),
			Long: s.Choice(worksheets.SleeveLength) == "long", CapHeight: r(worksheets.CapHeight),
			UnderarmSeam: r(worksheets.UnderarmSeam), HemWidth: r(worksheets.HemWidth), ElbowWidth: r(worksheets.ElbowWidth),
		},
		Bodice: calc.BodiceInput{
			Front: r(worksheets.BodiceFront), Back: r(worksheets.BodiceBack),
			EdgeToEdge: edge(worksheets.BodiceMeasured), Allowance: r(worksheets.BodiceAllowance),
			Crossings:    s.Count(worksheets.Crossings),
			TakeOffFront: r(worksheets.TakeOffFront), TakeOffBack: r(worksheets.TakeOffBack),
			FinishedBust: r(worksheets.FinishedBust),
			ArmholeFront: r(worksheets.ArmholeFront), ArmholeBack: r(worksheets.ArmholeBack),
			CornerOutFront: r(worksheets.CornerOutFront), CornerDownFront: r(worksheets.CornerDownFront),
			CornerOutBack: r(worksheets.CornerOutBack), CornerDownBack: r(worksheets.CornerDownBack),
			SideSeam: r(worksheets.SideSeam), WaistFront: r(worksheets.WaistFront), WaistBack: r(worksheets.WaistBack),
			HipFront: r(worksheets.HipFront), HipBack: r(worksheets.HipBack),
		},
		Method: calc.Method{
			LimitSleeve: r(worksheets.PivotLimitSleeve).Length, LimitBodice: r(worksheets.PivotLimitBodice).Length,
			ShareSleeve: s.Share(worksheets.FrontShareSleeve), ShareBust: s.Share(worksheets.FrontShareBust),
		},
	}
	for _, k := range worksheets.Keys() {
		in.Unread = in.Unread || feeds(k) && s.Check(k) != nil
	}
	if s.Choice(worksheets.Fabric) == "knit" {
		in.Fabric = calc.Knit
	}
	switch s.Choice(worksheets.SleeveStyle) {
	case "shirt":
		in.Sleeve.Style = calc.Shirt
	case "gathered":
		in.Sleeve.Style = calc.Gathered
	}
	if chosen := r(worksheets.Slide); chosen.Known {
		in.Method.Slide, in.Method.SlideLength = calc.SlideChosen, chosen.Length
	} else if s.Text(worksheets.Slide) == "even" {
		in.Method.Slide = calc.SlideEven
	}
	if s.Choice(worksheets.Follow) == "hold" {
		in.Method.Follow = calc.Hold
	}
	if s.Choice(worksheets.Armhole) == "keep" {
		in.Method.Armhole = calc.KeepArmhole
	}
	return in
}

// feeds tells the answers that needs, split and marks are made from; the others
// only add to what is known.
func feeds(k worksheets.Key) bool {
	switch k {
	case worksheets.Unit, worksheets.Ruler, worksheets.Bicep, worksheets.BicepOther, worksheets.Bust,
		worksheets.EaseBicep, worksheets.EaseBust,
		worksheets.SleeveWidth, worksheets.SleeveMeasured, worksheets.SleeveAllowance,
		worksheets.BodiceFront, worksheets.BodiceBack, worksheets.BodiceMeasured, worksheets.BodiceAllowance,
		worksheets.Crossings, worksheets.TakeOffFront, worksheets.TakeOffBack, worksheets.FinishedBust,
		worksheets.PivotLimitSleeve, worksheets.PivotLimitBodice, worksheets.FrontShareSleeve, worksheets.FrontShareBust,
		worksheets.Slide, worksheets.Follow, worksheets.Armhole:
		return true
	}
	return false
}

// longAgo tells that a day lies more than six months back.
func longAgo(day string, today time.Time) bool {
	measured, err := time.Parse(time.DateOnly, day)
	return err == nil && measured.AddDate(0, 6, 0).Before(today.Truncate(24*time.Hour))
}

// keyOf says where an answer of the sums stands in the worksheet.
var keyOf = map[calc.Answer]worksheets.Key{
	calc.Bicep: worksheets.Bicep, calc.BicepOther: worksheets.BicepOther, calc.Bust: worksheets.Bust,
	calc.BicepEase: worksheets.EaseBicep, calc.BustEase: worksheets.EaseBust,
	calc.SleeveWidth: worksheets.SleeveWidth, calc.SleeveAllowance: worksheets.SleeveAllowance,
	calc.CapFront: worksheets.CapFront, calc.CapBack: worksheets.CapBack,
	calc.BodiceFrontWidth: worksheets.BodiceFront, calc.BodiceBackWidth: worksheets.BodiceBack,
	calc.BodiceAllowance: worksheets.BodiceAllowance,
	calc.TakeOffFront:    worksheets.TakeOffFront, calc.TakeOffBack: worksheets.TakeOffBack,
	calc.FinishedBust: worksheets.FinishedBust,
	calc.ArmholeFront: worksheets.ArmholeFront, calc.ArmholeBack: worksheets.ArmholeBack,
	calc.LimitSleeve: worksheets.PivotLimitSleeve, calc.LimitBodice: worksheets.PivotLimitBodice,
	calc.ShareSleeve: worksheets.FrontShareSleeve, calc.ShareBust: worksheets.FrontShareBust, calc.FollowCustom: worksheets.Follow,
	calc.SlideLength: worksheets.Slide, calc.Ruler: worksheets.Ruler, calc.AnyGirth: worksheets.Bicep,
	calc.HighBust: worksheets.HighBust, calc.Waist: worksheets.Waist, calc.Hip: worksheets.Hip,
	calc.Elbow: worksheets.Elbow, calc.Wrist: worksheets.Wrist,
}

// places of ease, by their keys.
var placeOf = map[worksheets.Key]calc.Place{
	worksheets.EaseBicep: calc.AtBicep, worksheets.EaseBust: calc.AtBust, worksheets.EaseWaist: calc.AtWaist,
	worksheets.EaseHip: calc.AtHip, worksheets.EaseElbow: calc.AtElbow, worksheets.EaseWrist: calc.AtWrist,
}

// begin is a new sheet: the usual limits, and the middle of the usual ease for
// the person to change.
func begin(sys units.System) worksheets.Sheet {
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
	for k, place := range placeOf {
		set(k, sc.Number(calc.MiddleEase(place, calc.Woven).Round(step)))
	}
	return s
}
