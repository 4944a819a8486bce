package parts

import (
	"io"
	"os"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// Styles holds every style by its meaning. Colours are of the terminal's own
// sixteen, none that vanishes on a light or a dark ground, and never the only
// sign of anything: each meaning also has a glyph or a word.
type Styles struct {
	Heading lipgloss.Style
	Here    lipgloss.Style // the value under the hands
	Verdict lipgloss.Style // the first thing that is to be seen; with Refused, where it is against cutting
	Refused lipgloss.Style
	Answer  lipgloss.Style // what to mark, and what the hands are on
	Idle    lipgloss.Style // a field that nothing follows from, which says why
	Key     lipgloss.Style
	Warn    lipgloss.Style
	Stop    lipgloss.Style
}

// NewStyles makes the styles for an output. Without colour, bold and reverse
// stay: a cursor that cannot be seen helps nobody, and the colour profile that
// stands for NO_COLOR in the library would drop them too.
func NewStyles(out io.Writer, profile termenv.Profile, colour bool) Styles {
	r := lipgloss.NewRenderer(out)
	r.SetColorProfile(profile)
	r.SetHasDarkBackground(true) // known, so that nobody asks the terminal
	s := Styles{
		Heading: r.NewStyle().Bold(true),
		Here:    r.NewStyle().Reverse(true),
		Verdict: r.NewStyle().Bold(true).Reverse(true),
		Refused: r.NewStyle().Bold(true).Reverse(true),
		Answer:  r.NewStyle().Bold(true),
		Idle:    r.NewStyle().Faint(true),
		Key:     r.NewStyle().Bold(true),
		Warn:    r.NewStyle().Bold(true),
		Stop:    r.NewStyle().Bold(true),
	}
	if colour {
		s.Heading = s.Heading.Foreground(lipgloss.ANSIColor(6))
		s.Refused = s.Refused.Foreground(lipgloss.ANSIColor(1))
		s.Warn = s.Warn.Foreground(lipgloss.ANSIColor(5))
		s.Stop = s.Stop.Foreground(lipgloss.ANSIColor(1))
	}
	return s
}

// StylesFor are the styles for a real terminal.
func StylesFor(out io.Writer) Styles {
	return NewStyles(out, termenv.ANSI, os.Getenv("NO_COLOR") == "")
}

// Bold sets lines off, in place.
func Bold(lines []string, st Styles) []string {
	for i, l := range lines {
		lines[i] = st.Answer.Render(l)
	}
	return lines
}
