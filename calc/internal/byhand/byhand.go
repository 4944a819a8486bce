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
