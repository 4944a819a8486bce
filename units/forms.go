package units

// Form is a way to write a length, by an example.
type Form struct{ Example, Says string }

// Forms are the ways to write the number of a length that [Parse] reads, for people to
// look up; a test reads each.
var Forms = []Form{
	{"13 3/4", "a whole number, a space, and a fraction below 1"},
	{"13-3/4", "the same with a hyphen, without spaces"},
	{"3/4", "a fraction alone"},
	{"13¾", "a fraction that is one character: ⅛ ¼ ⅓ ⅜ ½ ⅝ ⅔ ¾ or ⅞"},
	{"13.75", "with a decimal point"},
	{"13,75", "with a decimal comma"},
	{"-1/2", "with a minus sign, where a length may be negative, such as ease"},
}

// UnitName is a unit and the words for it.
type UnitName struct {
	Unit  Length
	Words []string // in small letters; the usual ones first
}

// UnitNames are the units that are read behind a number.
var UnitNames = []UnitName{
	{Inch, []string{"in", `"`, "inch", "inches", "in.", "″", "”", "''"}},
	{Centimetre, []string{"cm", "centimetre", "centimetres", "centimeter", "centimeters", "cm."}},
	{Millimetre, []string{"mm", "millimetre", "millimetres", "millimeter", "millimeters", "mm."}},
}
