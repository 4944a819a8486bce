package desk

import "capscye/ui/parts"

// The width from which the answer stands beside the form, and what both take.
const (
	besideFrom  = 100
	formFrom    = 70 // what the widest table of a form needs
	answerMost  = 44
	stripHeight = 4
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

// layoutFor is a pure function of the window, of how many lines the form has, and of how
// many what differs from copies has; 0 while none lie beside the sheet. In a narrow window
// they share the lines, and neither leaves empty what the other lacks.
func layoutFor(width, height, form, differs int) layout {
	l := layout{tooSmall: parts.TooSmall(width, height)}
	all := height - 4 // title, tape, rule, keys
	l.answerWidth, l.answerHeight = width, stripHeight
	if half := all / 2; differs > 0 {
		switch l.answerHeight = half; {
		case form > all-half:
			l.answerHeight = min(half, differs)
		case differs > half:
			l.answerHeight = min(all-form, differs)
		}
	}
	l.formWidth, l.formHeight = width, all-l.answerHeight
	if width >= besideFrom {
		l.beside = true
		l.answerWidth, l.answerHeight = min(width-formFrom-2, answerMost), all
		l.formWidth, l.formHeight = width-l.answerWidth-2, all
	}
	return l
}
