// Package byhand lays out sheets whose sums are easy by hand, for tests alone.
package byhand

import (
	"capscye/calc"
	"capscye/units"
)

// Inches reads a length in inches.
func Inches(text string) units.Length {
	l, err := units.Parse(text, units.Inches)
	if err != nil {
		panic(err)
	}
	return l
}

// Known is a measurement in inches that was taken.
func Known(text string) units.Reading { return units.Known(Inches(text)) }

// Needing is a sheet whose sleeve and bodice fit a body without ease to ask for,
// so that the given needs are all there is. "" is a girth that is not asked.
func Needing(sleeve, bust string) calc.Input {
	input := calc.Input{Ruler: units.EighthInch, Method: calc.UsualMethod()}
	input.Sleeve.Measured, input.Bodice.Measured = calc.SeamToSeam, calc.SeamToSeam
	input.Sleeve.Width, input.Bodice.FinishedBust = Known("12"), Known("40")
	input.Bodice.BustDown = Known("0")
	if sleeve != "" {
		input.Bicep, input.BicepEase = Known("10"), units.Known(Inches("2")+Inches(sleeve))
	}
	if bust != "" {
		input.Bust, input.BustEase = Known("37"), units.Known(Inches("3")+Inches(bust))
	}
	return input
}

// WorkedByHand is an invented sheet. T = 13 3/4 + 1 3/4 - 13 = 2 1/2, 1 1/4 a
// side; B = 39 1/2 + 3 - 40 = 2 1/2, 5/8 a side. The band goes from
// max(1 1/4 - 1, 5/8 - 1) = 1/4 to 1 1/4.
func WorkedByHand() calc.Input {
	input := calc.Input{Ruler: units.EighthInch, Method: calc.UsualMethod()}
	input.Sleeve.Measured, input.Bodice.Measured = calc.SeamToSeam, calc.SeamToSeam
	input.Bicep, input.BicepEase, input.Sleeve.Width = Known("13 3/4"), Known("1 3/4"), Known("13")
	input.Bust, input.BustEase = Known("39 1/2"), Known("3")
	input.Bodice.Front, input.Bodice.Back, input.Bodice.BustDown = Known("10 1/4"), Known("9 3/4"), Known("0")
	return input
}

// Geometry is the invented sheet with everything that the turn needs: sleeve
// 13 wide, cap 5 1/4 high, straight; front corner 2 out and 7 down.
func Geometry() calc.Input {
	input := WorkedByHand()
	input.Sleeve.CapHeight, input.Sleeve.UnderarmSeam, input.Sleeve.HemWidth = Known("5 1/4"), Known("6"), Known("13")
	input.Sleeve.CapFront, input.Sleeve.CapBack = Known("9"), Known("9 1/4")
	input.Bodice.ArmholeFront, input.Bodice.ArmholeBack = Known("8 5/8"), Known("8 7/8")
	input.Bodice.CornerOutFront, input.Bodice.CornerDownFront = Known("2"), Known("7")
	input.Bodice.CornerOutBack, input.Bodice.CornerDownBack = Known("1 3/4"), Known("7 1/4")
	input.Bodice.SideSeam = Known("8")
	return input
}
