package screen

import (
	"fmt"

	"capscye/ui/typeset"
)

// The smallest window that the worksheet can be used in, and the width from
// which the answer stands beside the form.
const (
	smallestWidth  = 60
	smallestHeight = 16
	besideFrom     = 100
	formFrom       = 70 // what the widest table of a form needs
	answerMost     = 44
	stripHeight    = 4
)

// layout divides a window: a title and the tape on top, the keys at the bottom,
// and between them the form with the answer beside it or below.
//
//	wide:  title           narrow:  title
//	       tape                     tape
//	       form | answer            form
//	       keys                     answer (4 lines)
//	                                keys
type layout struct {
	tooSmall, beside      bool
	formWidth, formHeight int
	answerWidth           int
	answerHeight          int
}

// layoutFor is a pure function of the window, and of whether copies lie beside the
// sheet: they take half of a narrow one.
func layoutFor(width, height int, copies bool) layout {
	l := layout{tooSmall: width < smallestWidth || height < smallestHeight}
	l.answerWidth, l.answerHeight = width, stripHeight
	if copies {
		l.answerHeight = (height - 4) / 2
	}
	l.formWidth, l.formHeight = width, height-4-l.answerHeight // title, tape, rule, keys
	if width >= besideFrom {
		l.beside = true
		l.answerWidth, l.answerHeight = min(width-formFrom-2, answerMost), height-4
		l.formWidth, l.formHeight = width-l.answerWidth-2, height-4
	}
	return l
}

// smallWindow asks for more room.
func smallWindow(width, height int) string {
	text := fmt.Sprintf("This window has %d x %d cells; the worksheet needs %d x %d. Nothing is lost: make it larger.",
		width, height, smallestWidth, smallestHeight)
	return typeset.Block(typeset.Wrap(text, width), width, height)
}
