package manual

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// roff is a page of the manual in the making, in roff with its macros for manual pages.
type roff struct{ strings.Builder }

// roffSigns are the characters that roff would not print as they are.
var roffSigns = strings.NewReplacer(`\`, `\e`, "-", `\-`, `"`, `\(dq`, "'", `\(aq`, "`", `\(ga`, "^", `\(ha`, "~", `\(ti`)

// escaped is a text in plain ASCII that prints as it is.
func escaped(text string) string {
	var b strings.Builder
	for _, c := range roffSigns.Replace(text) {
		if c < utf8.RuneSelf {
			b.WriteRune(c)
		} else {
			fmt.Fprintf(&b, `\[u%04X]`, c)
		}
	}
	return b.String()
}

// macro prints a macro, and the words that it sets, if any.
func (m *roff) macro(name, words string) {
	if words != "" {
		name += ` "` + escaped(words) + `"`
	}
	m.WriteString(name + "\n")
}

// text prints lines; one that begins with a point would be a macro.
func (m *roff) text(text string) {
	for _, l := range strings.Split(strings.Trim(text, "\n"), "\n") {
		if l = escaped(l); strings.HasPrefix(l, ".") {
			l = `\&` + l
		}
		m.WriteString(l + "\n")
	}
}

// section prints a heading and what stands below it.
func (m *roff) section(s section) {
	m.macro(".SH", s.name)
	first := true // below a heading a paragraph needs no space of its own
	for _, p := range s.parts {
		switch p.kind {
		case paragraph:
			if !first {
				m.macro(".PP", "")
			}
			m.text(p.text)
		case entry:
			m.macro(".TP", "")
			m.macro(".B", p.lead)
			m.text(p.text)
		case subheading:
			m.macro(".SS", p.lead)
		case literal:
			if !first {
				m.macro(".PP", "")
			}
			m.macro(".nf", "")
			m.text(p.text)
			m.macro(".fi", "")
		}
		first = p.kind == subheading
	}
}
