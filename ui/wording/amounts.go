package wording

import (
	"strings"

	"capscye/units"
)

// InOrOut words a shrinking amount as going in, so that a minus sign that
// somebody overlooks does no harm.
func InOrOut(l units.Length, sc units.Scale) string {
	if l < 0 {
		return sc.OnRuler(-l) + " inward"
	}
	return sc.OnRuler(l)
}

// Span is "3 to 4 in", or one length where both ends are the same.
func Span(low, high units.Length, sc units.Scale) string {
	if low == high {
		return sc.Format(low)
	}
	return sc.Number(low) + " to " + sc.Format(high)
}

// Usual is a range that is published or common, in round numbers whatever the ruler: half
// centimetres where lengths are metric, for nobody means its inches to the millimetre.
func Usual(low, high units.Length, sc units.Scale) string {
	if sc.System == units.Inches {
		sc.Ruler = units.SixteenthInch
		return Span(low, high, sc)
	}
	mark := units.FiveMillimetres.Mark()
	sc.Ruler = units.OneMillimetre
	return strings.ReplaceAll(Span(low.Round(mark), high.Round(mark), sc), ".0 ", " ")
}

// UsualOne is one length that is published or common, written as [Usual] has it.
func UsualOne(l units.Length, sc units.Scale) string { return Usual(l, l, sc) }

// ShownAsNothing tells that a length, as it is shown, is none: less than the ruler shows.
func ShownAsNothing(text string) bool { return !strings.ContainsAny(text, "123456789") }

// Longer says how a seam changes: "gets 1/2 in longer".
func Longer(l units.Length, sc units.Scale) string {
	switch shown := sc.Format(l.Abs()); {
	case ShownAsNothing(shown):
		return "stays as long as it is"
	case l < 0:
		return "gets " + shown + " shorter"
	default:
		return "gets " + shown + " longer"
	}
}

// UnitWords is the name of a system of lengths.
func UnitWords(s units.System) string {
	if s == units.Inches {
		return "inches"
	}
	return "centimetres"
}

// Signed writes a change with its sign.
func Signed(l units.Length, sc units.Scale) string {
	text := sc.Number(l)
	if l > 0 && !ShownAsNothing(text) {
		return "+" + text
	}
	return text
}

// OrDash is a number, or a dash for what is not known.
func OrDash(l units.Reading, sc units.Scale) string {
	if !l.Known {
		return "-"
	}
	return sc.Number(l.Length)
}
