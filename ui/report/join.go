package report

import (
	"time"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/worksheets"
)

// Input is the one place where a sheet becomes numbers. today tells whether the
// measurements are old.
func Input(s *worksheets.Sheet, today time.Time) calc.Input {
	in := numbers(s, today)
	for _, k := range worksheets.Keys() {
		in.Unread = in.Unread || feeds(k) && s.Check(k) != nil
	}
	return in
}

// numbers is [Input] without looking for what cannot be read, which is left to whoever
// has looked.
func numbers(s *worksheets.Sheet, today time.Time) calc.Input {
	r := s.Reading
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
			Measured: measured(s, worksheets.SleeveMeasured), Allowance: r(worksheets.SleeveAllowance),
			Width: r(worksheets.SleeveWidth), CapFront: r(worksheets.CapFront), CapBack: r(worksheets.CapBack),
			Long: s.Choice(worksheets.SleeveLength) == "long", LengthAssumed: s.Text(worksheets.SleeveLength) == "", CapHeight: r(worksheets.CapHeight),
			UnderarmSeam: r(worksheets.UnderarmSeam), HemWidth: r(worksheets.HemWidth), ElbowWidth: r(worksheets.ElbowWidth),
		},
		Bodice: calc.BodiceInput{
			Front: r(worksheets.BodiceFront), Back: r(worksheets.BodiceBack),
			Measured: measured(s, worksheets.BodiceMeasured), Allowance: r(worksheets.BodiceAllowance),
			LikeSleeve: likeSleeve(s), Crossings: s.Count(worksheets.Crossings),
			TakeOffFront: r(worksheets.TakeOffFront), TakeOffBack: r(worksheets.TakeOffBack),
			FinishedBust: r(worksheets.FinishedBust),
			ArmholeFront: r(worksheets.ArmholeFront), ArmholeBack: r(worksheets.ArmholeBack),
			CornerOutFront: r(worksheets.CornerOutFront), CornerDownFront: r(worksheets.CornerDownFront),
			CornerOutBack: r(worksheets.CornerOutBack), CornerDownBack: r(worksheets.CornerDownBack),
			BustDown: r(worksheets.BustDown), SideSeam: r(worksheets.SideSeam), WaistFront: r(worksheets.WaistFront), WaistBack: r(worksheets.WaistBack),
			HipFront: r(worksheets.HipFront), HipBack: r(worksheets.HipBack),
			DartFront: dart(s, worksheets.DartFront), DartBack: dart(s, worksheets.DartBack),
		},
		Method: calc.Method{
			LimitSleeve: r(worksheets.PivotLimitSleeve).Length, LimitBodice: r(worksheets.PivotLimitBodice).Length,
			ShareSleeve: s.Share(worksheets.FrontShareSleeve), ShareBust: s.Share(worksheets.FrontShareBust),
		},
	}
	in.Typed = typed(s)
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
	if s.Choice(worksheets.TaperFrom) == "corner" {
		in.Method.TaperFrom = calc.FromCorner
	}
	return in
}

// measured is between what the tape lay.
func measured(s *worksheets.Sheet, k worksheets.Key) calc.Measured {
	switch s.Choice(k) {
	case "seam":
		return calc.SeamToSeam
	case "edge":
		return calc.EdgeToEdge
	}
	return calc.NotTold
}

// likeSleeve tells that something was taken from the sleeve which the width of the
// bodice needs: an allowance only between cut edges.
func likeSleeve(s *worksheets.Sheet) bool {
	_, measured := s.Inherits(worksheets.BodiceMeasured)
	_, allowance := s.Inherits(worksheets.BodiceAllowance)
	return measured || allowance && forms.SeamsCrossed(s)
}

// typed is how the answers that are lengths were typed.
func typed(s *worksheets.Sheet) *calc.Typed {
	t := &calc.Typed{Unit: s.Unit()}
	for _, a := range lengths {
		t.Texts[a] = s.Text(forms.KeyOf[a])
	}
	return t
}

// lengths are the answers that are.
var lengths = func() (list []calc.Answer) {
	for a, k := range forms.KeyOf {
		if forms.KindOf(k) == forms.LengthField {
			list = append(list, calc.Answer(a))
		}
	}
	return list
}()

// dart is where a dart starts.
func dart(s *worksheets.Sheet, k worksheets.Key) calc.Dart {
	return darts[s.Choice(k)]
}

var darts = map[string]calc.Dart{
	"any": calc.AnyDart, "none": calc.NoDart, "side": calc.SideDart, "waist": calc.WaistDart, "shoulder": calc.ShoulderDart, "armhole": calc.ArmholeDart,
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
