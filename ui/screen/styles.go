package screen

import (
	"io"
	"os"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// styles holds every style by its meaning. Colours are of the terminal's own
// sixteen, none that vanishes on a light or a dark ground, and never the only
// sign of anything: each meaning also has a glyph or a word.
type styles struct {
	heading lipgloss.Style
	here    lipgloss.Style // the value under the hands
	verdict lipgloss.Style // the first thing that is to be seen; with refused, where it is against cutting
	refused lipgloss.Style
	answer  lipgloss.Style // what to mark, and what the hands are on
	idle    lipgloss.Style // a field that nothing follows from, which says why
	key     lipgloss.Style
	warn    lipgloss.Style
	stop    lipgloss.Style
}

// newStyles makes the styles for an output. Without colour, bold and reverse
// stay: a cursor that cannot be seen helps nobody, and the colour profile that
// stands for NO_COLOR in the library would drop them too.
func newStyles(out io.Writer, profile termenv.Profile, colour bool) styles {
	r := lipgloss.NewRenderer(out)
	r.SetColorProfile(profile)
	r.SetHasDarkBackground(true) // known, so that nobody asks the terminal
	s := styles{
		heading: r.NewStyle().Bold(true),
		here:    r.NewStyle().Reverse(true),
		verdict: r.NewStyle().Bold(true).Reverse(true),
		refused: r.NewStyle().Bold(true).Reverse(true),
		answer:  r.NewStyle().Bold(true),
		idle:    r.NewStyle().Faint(true),
		key:     r.NewStyle().Bold(true),
		warn:    r.NewStyle().Bold(true),
		stop:    r.NewStyle().Bold(true),
	}
	if colour {
		s.heading = s.heading.Foreground(lipgloss.ANSIColor(6))
		s.refused = s.refused.Foreground(lipgloss.ANSIColor(1))
		s.warn = s.warn.Foreground(lipgloss.ANSIColor(5))
		s.stop = s.stop.Foreground(lipgloss.ANSIColor(1))
	}
	return s
}

// screenStyles are the styles for a real terminal.
func screenStyles(out io.Writer) styles {
	return newStyles(out, termenv.ANSI, os.Getenv("NO_COLOR") == "")
}

func bold(lines []string, st styles) []string {
	for i, l := range lines {
		lines[i] = st.answer.Render(l)
	}
	return lines
}
