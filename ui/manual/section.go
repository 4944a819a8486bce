package manual

import (
	"strings"

	"capscye/ui/typeset"
)

// section is a heading and what stands below it, for roff or for a terminal.
type section struct {
	name  string
	parts []part
}

// part is one thing below a heading.
type part struct {
	kind       kind
	lead, text string
}

type kind uint8

const (
	paragraph kind = iota
	entry          // a text under a lead
	subheading
	literal // lines that stay as they are
)

// say adds paragraphs, with an empty line between two.
func (s *section) say(text string) {
	for _, p := range strings.Split(strings.Trim(text, "\n"), "\n\n") {
		s.parts = append(s.parts, part{paragraph, "", p})
	}
}

func (s *section) entry(lead, text string) { s.parts = append(s.parts, part{entry, lead, text}) }
func (s *section) below(heading string)    { s.parts = append(s.parts, part{subheading, heading, ""}) }
func (s *section) lines(text string)       { s.parts = append(s.parts, part{literal, "", text}) }

// plain is the section for a terminal, as help prints it.
func (s section) plain() string {
	var out typeset.Printout
	out.Line("")
	out.Line("%s:", s.name)
	column := s.column()
	for _, p := range s.parts {
		switch {
		case p.kind == paragraph:
			out.Hanging("  ", strings.ReplaceAll(p.text, "\n", " "))
		case p.kind == entry && column > 0:
			out.Hanging("  "+typeset.Pad(p.lead, column), p.text)
		case p.kind == entry:
			out.Line("  %s", p.lead)
			out.Hanging("      ", p.text)
		default:
			out.Line("%s", p.lead+p.text)
		}
	}
	return out.String()
}

// column is the width of the leads with a gap, 0 where they are too long to stand
// beside their texts.
func (s section) column() int {
	const most = 16
	widest := 0
	for _, p := range s.parts {
		if p.kind == entry {
			widest = max(widest, len([]rune(p.lead)))
		}
	}
	if widest > most {
		return 0
	}
	return widest + 2
}
