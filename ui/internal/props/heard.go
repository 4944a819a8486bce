package props

import (
	"strings"
	"testing"
)

// Heard fails unless a text is sentences for the ear: a line each, with none of the signs
// that a reader spells out, and no columns.
func Heard(t *testing.T, text string) {
	t.Helper()
	for _, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		if strings.ContainsAny(line, "~+[]{}=|") || strings.Contains(line, "->") || strings.Contains(line, "  ") || strings.TrimRight(line, ".?") == line || strings.TrimSpace(line) != line {
			t.Fatalf("this cannot be heard: %q", line)
		}
	}
}
