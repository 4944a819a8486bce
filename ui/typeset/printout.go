package typeset

import (
	"fmt"
	"strings"
)

// PrintWidth is how wide the printed sheet is.
const PrintWidth = 80

// Printout is a printed text in the making.
type Printout struct{ strings.Builder }

// Line prints one line.
func (p *Printout) Line(format string, args ...any) { fmt.Fprintf(p, format+"\n", args...) }

// Hanging prints a paragraph with its lead hanging out to the left.
func (p *Printout) Hanging(lead, text string) {
	for _, l := range Hanging(lead, text, PrintWidth) {
		p.WriteString(l)
		p.WriteByte('\n')
	}
}

// Text is the whole, with the sign of rounded lengths explained where there is
// one.
func (p *Printout) Text() string {
	text := p.String()
	if note := OffMarkNote(text); note != "" {
		text += note + "\n"
	}
	return text
}
