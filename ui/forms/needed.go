package forms

import "capscye/worksheets"

// Worth is what an answer is worth on a worksheet, by the answers that it has.
type Worth uint8

// The worths.
const (
	Optional Worth = iota // it adds to what is known
	Needed                // amounts wait for it
	Idle                  // no amount can follow from it
)

// String is the worth in a word.
func (w Worth) String() string { return [...]string{"optional", "needed", "not needed"}[w] }

// WorthOf is what an answer is worth. Girths come first: until there is one, nothing
// is asked of the pattern. How it was measured is asked once, of the sleeve.
func WorthOf(s *worksheets.Sheet, k worksheets.Key) Worth {
	if WhyIdle(s, k) != "" {
		return Idle
	}
	arm := s.Reading(worksheets.Bicep).Known || s.Reading(worksheets.BicepOther).Known
	bust := s.Reading(worksheets.Bust).Known
	widths := bust && !s.Reading(worksheets.FinishedBust).Known // front and back are measured
	needed := false
	switch k {
	case worksheets.Bicep, worksheets.Bust:
		needed = !arm && !bust
	case worksheets.EaseBicep, worksheets.SleeveLength, worksheets.SleeveWidth:
		needed = arm
	case worksheets.EaseBust:
		needed = bust
	case worksheets.SleeveMeasured:
		needed = arm || widths && s.Text(worksheets.BodiceMeasured) == ""
	case worksheets.SleeveAllowance:
		needed = s.Choice(worksheets.SleeveMeasured) == "edge" && (arm || widths && s.Text(worksheets.BodiceAllowance) == "" && SeamsCrossed(s))
	case worksheets.BodiceFront, worksheets.BodiceBack:
		needed = widths
	case worksheets.BodiceAllowance:
		_, inherited := s.Inherits(k)
		needed = widths && SeamsCrossed(s) && !inherited && AskedAt(s, k) == k
	}
	if needed {
		return Needed
	}
	return Optional
}

// Awaited tells that amounts wait for an answer that is not there.
func Awaited(s *worksheets.Sheet, k worksheets.Key) bool {
	return s.Text(k) == "" && WorthOf(s, k) == Needed
}

// WhyIdle says why no amount can follow from an answer; "" where one can. While nobody
// has said whether the sleeve is long, it may be. An allowance that does not come off is
// told by the steps at the table all the same, so its field stays within reach.
func WhyIdle(s *worksheets.Sheet, k worksheets.Key) string {
	switch k {
	case worksheets.Elbow, worksheets.Wrist, worksheets.EaseElbow, worksheets.EaseWrist, worksheets.ElbowWidth:
		if s.Text(worksheets.SleeveLength) == "short" {
			return "not for a short sleeve"
		}
	case worksheets.SleeveAllowance:
		if s.Choice(worksheets.SleeveMeasured) == "seam" && s.Choice(worksheets.BodiceMeasured) == "seam" {
			return "comes off only edge to edge"
		}
	case worksheets.BodiceAllowance:
		if s.Choice(worksheets.BodiceMeasured) == "seam" {
			return "comes off only edge to edge"
		}
	case worksheets.Crossings:
		if s.Choice(worksheets.BodiceMeasured) == "seam" {
			return "counts only edge to edge"
		}
	case worksheets.DartFront:
		return withoutTakeOff(s, k, worksheets.TakeOffFront)
	case worksheets.DartBack:
		return withoutTakeOff(s, k, worksheets.TakeOffBack)
	}
	return ""
}

// withoutTakeOff: a dart above or below the tape takes nothing off, and has to be traced
// all the same where somebody tells of it.
func withoutTakeOff(s *worksheets.Sheet, dart, takeOff worksheets.Key) string {
	if s.Text(takeOff) == "" && s.Choice(dart) == "any" {
		return "nothing taken off"
	}
	return ""
}

// SeamsCrossed tells that allowances come off the widths of the bodice.
func SeamsCrossed(s *worksheets.Sheet) bool {
	return s.Choice(worksheets.BodiceMeasured) == "edge" && s.Count(worksheets.Crossings) > 0
}

// AskedAt is the field that asks for an answer which is not there: how the pattern was
// measured is asked once, of the sleeve, unless the bodice is told to be otherwise.
func AskedAt(s *worksheets.Sheet, k worksheets.Key) worksheets.Key {
	from, ok := k.From()
	if ok && s.Text(from) == "" && s.Choice(worksheets.SleeveMeasured) == s.Choice(worksheets.BodiceMeasured) {
		return from
	}
	return k
}
