package screen

import (
	"strings"
	"testing"
)

// Pictures follow every letter that can be read; the answer does not.
func TestPictureFollowsTyping(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 120, 40)
	before := r.Screen()
	r.Types("12")
	typed := r.Screen()
	panel := func(s string) string {
		var b strings.Builder
		for _, l := range strings.Split(s, "\n") {
			if runes := []rune(l); len(runes) > 76 {
				b.WriteString(string(runes[76:]) + "\n")
			}
		}
		return b.String()
	}
	if panel(before) == panel(typed) {
		t.Error("the picture stayed")
	}
	r.Sees("Sleeve needs 2 1/2 in", "Sleeve as typed").Types(" 3/").Sees("Sleeve needs 2 1/2 in")
	if panel(r.Screen()) != panel(typed) {
		t.Error("what cannot be read moved the picture")
	}
	r.Press("enter").DoesNotSee("as typed")
}
