package forms

import "capscye/worksheets"

// AskedAt is the field that asks for an answer which is not there: how the pattern was
// measured is asked once, of the sleeve, unless the bodice is told to be otherwise.
func AskedAt(s *worksheets.Sheet, k worksheets.Key) worksheets.Key {
	from, ok := k.From()
	if ok && s.Text(from) == "" && s.Choice(worksheets.SleeveMeasured) == s.Choice(worksheets.BodiceMeasured) {
		return from
	}
	return k
}
