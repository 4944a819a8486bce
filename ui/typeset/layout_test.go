package typeset

import (
	"slices"
	"strings"
	"testing"

	"capscye/units"
)

// A length is read in one piece, so no line ends inside one, wherever the window
// is wide enough for it.
func TestNoLengthIsBroken(t *testing.T) {
	const text = "Pivot 1 3/8 in and slide 13 15/16 in, then 34.9 cm or 5 mm by 9.772 deg, in 4 steps; 3 in all, 12 inches, -2.5 cm or 13-3/4 on 2026-11-25."
	whole := []string{"1 3/8 in", "13 15/16 in", "34.9 cm", "5 mm", "9.772 deg", "-2.5 cm", "13-3/4", "2026-11-25"}
	for width := 12; width < 110; width++ {
		lines := Wrap(text, width)
		for _, length := range whole {
			if !slices.ContainsFunc(lines, func(l string) bool { return strings.Contains(l, length) }) {
				t.Errorf("at %d cells %q is broken:\n%s", width, length, strings.Join(lines, "\n"))
			}
		}
		if got := strings.Join(lines, " "); got != text {
			t.Errorf("at %d cells the text became %q", width, got)
		}
	}
}

// What hangs out takes the cells that it is wide, whatever its letters take in bytes.
func TestALeadTakesTheCellsThatItIsWide(t *testing.T) {
	for lead, want := range map[string][]string{
		"  ää  ": {"  ää  Ready to", "      trace."},
		"  大  ":  {"  大  Ready to", "      trace."},
	} {
		if got := Hanging(lead, "Ready to trace.", 15); !slices.Equal(got, want) {
			t.Errorf("%q", got)
		}
	}
}

func TestAPrintoutIsTheSameTwice(t *testing.T) {
	var out Printout
	out.Line("%s1 3/8 in", units.OffMark)
	if first, second := out.Text(), out.Text(); first != second || strings.Count(first, "\n") != 2 {
		t.Errorf("%q, then %q", first, second)
	}
}

// A length that does not fit goes as a whole, and a plus with it; what is no length is cut
// where the line is full.
func TestACutLeavesNoOtherLength(t *testing.T) {
	for _, c := range []struct {
		text  string
		width int
		want  string
	}{
		{"mark 11/16 + 1 3/16 in", 16, "mark 11/16..."},
		{"mark 11/16 + 1 3/16 in", 12, "mark..."},
		{"mark 11/16 + 1 3/16 in", 22, "mark 11/16 + 1 3/16 in"},
		{"bust 42 1/2 in, ease 3", 18, "bust 42 1/2 in,..."},
		{"bust 42 1/2 in, ease 3", 17, "bust..."},
		{"a sentence that is long", 12, "a sentenc..."},
		{"1234567890", 8, "12345..."},
		{"bicep ~15 1/8", 12, "bicep..."},
	} {
		if got := Cut(c.text, c.width); got != c.want {
			t.Errorf("%q in %d: %q, want %q", c.text, c.width, got, c.want)
		}
	}
}
