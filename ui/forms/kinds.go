package forms

import "capscye/worksheets"

// Kind tells fields by how keys work in them.
type Kind uint8

// The kinds of fields.
const (
	LengthField Kind = iota // typed, nudged by ruler marks
	textField               // typed
	ChoiceField             // chosen with left and right
	SlideField              // pushed with left and right, or typed
)

// KindOf is the kind of the field of an answer.
func KindOf(k worksheets.Key) Kind {
	switch k.Kind() {
	case worksheets.Girth, worksheets.Amount, worksheets.Signed:
		return LengthField
	case worksheets.Choice, worksheets.Scale:
		return ChoiceField
	case worksheets.Slid:
		return SlideField
	}
	return textField
}

// LongestAnswer is as many characters as an answer may have where it is typed, on the
// screen and line by line. A file may hold more.
const LongestAnswer = 2000
