package wording

import (
	"strings"

	"capscye/calc"
	"capscye/units"
)

// SlideWords say why a half slides as it does, as a teacher says it before any sums; "" where
// no sentence does. alike tells that front and back are, and are spoken of as each side.
func SlideWords(in calc.Input, p calc.Plan, h calc.Half, alike bool, sc units.Scale) string {
	why := p.SlideReason(in, h)
	if why == calc.NoReason {
		return ""
	}
	sides, band := p.SidesThatSlide(in, h), p.Bands[h]
	slide := sc.Exact(p.Sides[sides[0]].Slide)
	switch why {
	case calc.PivotsReach:
		return reachWords(in, p, sides, alike, sc)
	case calc.BeyondLimits:
		return beyondWords(in, p, sides, alike, sc)
	}
	s := sides[0]
	words := sentence(sideWords(s, alike) + " " + needWords(p.Sides[s].Need.Length, sc) + "; half of that is " + sc.Exact(units.Half.Of(p.Sides[s].Need.Length)))
	switch why {
	case calc.HalfTooLittle:
		return words + " The smallest slide that works is " + slide + ", so that is the slide."
	case calc.HalfTooMuch:
		return words + " The largest slide that works is " + slide + ", so that is the slide."
	}
	return words + " Slides from " + sc.Exact(band.Low) + " to " + sc.Exact(band.High) + " work, so that is the slide."
}

// reachWords are for sides that can pivot all that they need.
func reachWords(in calc.Input, p calc.Plan, sides []calc.Side, alike bool, sc units.Scale) string {
	needs, limits := make([]string, len(sides)), make([]string, len(sides))
	for i, s := range sides {
		needs[i] = sideWords(s, alike) + " " + needWords(p.Sides[s].Need.Length, sc)
		limits[i] = sc.Exact(in.Method.Limit(s))
	}
	words := sentence(strings.Join(needs, " and "))
	switch {
	case len(sides) == 1:
		return words + " That is within the limit of " + limits[0] + ", so nothing slides."
	case limits[0] == limits[1]:
		return words + " Both are within the limit of " + limits[0] + ", so nothing slides."
	}
	return words + " Both are within their limits of " + limits[0] + " and " + limits[1] + ", so nothing slides."
}

// beyondWords are for sides of which one at least needs more than it may pivot.
func beyondWords(in calc.Input, p calc.Plan, sides []calc.Side, alike bool, sc units.Scale) string {
	slide, way := p.Sides[sides[0]].Slide, "slide"
	if slide < 0 {
		way = "slide in"
	}
	var words []string
	for _, s := range sides {
		left := "which is enough"
		if beyond := p.BeyondLimit(in, s); beyond != 0 {
			left = "which leaves " + sc.Exact(beyond.Abs())
		}
		if len(sides) == 1 {
			left += " to " + way
		}
		words = append(words, sentence(sideWords(s, alike)+" "+needWords(p.Sides[s].Need.Length, sc)+" and may pivot "+sc.Exact(in.Method.Limit(s))+", "+left))
	}
	switch {
	case len(sides) == 2:
		words = append(words, "They are sewn together, so both "+way+" "+sc.Exact(slide.Abs())+".")
	case in.Method.Armhole == calc.KeepArmhole:
		words = append(words, "The cap can take that.") // or else no slide would work
	}
	return strings.Join(words, " ")
}

func sentence(words string) string { return strings.ToUpper(words[:1]) + words[1:] + "." }

// sideWords name a side in a sentence.
func sideWords(s calc.Side, alike bool) string {
	switch {
	case !alike:
		return "the " + SubjectWords[s.Subject()]
	case s.OfSleeve():
		return "each sleeve side"
	}
	return "each bodice side"
}

// needWords say a need without a sign.
func needWords(need units.Length, sc units.Scale) string {
	switch {
	case need == 0:
		return "needs nothing"
	case need < 0:
		return "must come in " + sc.Exact(need.Abs())
	}
	return "needs " + sc.Exact(need)
}
