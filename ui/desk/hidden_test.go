package desk

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"capscye/ui/forms"
)

// With copies beside the sheet, whatever is hidden of a form or of what differs is said
// with how much it is, wherever the hands are, and no line is left empty meanwhile.
func TestWhatIfHidesNothingUnsaid(t *testing.T) {
	more := regexp.MustCompile(`\.\.\. and (\d+) more( above| below|: \^x)`)
	for _, size := range []struct{ width, height int }{{80, 24}, {60, 16}, {99, 30}, {80, 40}} {
		r, d := sit(t, "choir-blouse", size.width, size.height)
		r.Press("f2", "ctrl+l", "right")
		for s := forms.Body; s <= forms.Split; s++ {
			r.Press(fmt.Sprintf("f%d", s+1))
			for range forms.Items[s] {
				screen := r.Fits().Screen()
				said, seen := map[string]int{}, 0
				for _, m := range more.FindAllStringSubmatch(screen, -1) {
					said[m[2]], _ = strconv.Atoi(m[1])
				}
				f := d.form(size.width)
				f.rows = slices.DeleteFunc(f.rows, isAir)
				for _, line := range strings.Split(screen, "\n") {
					if slices.ContainsFunc(f.rows, func(row string) bool { return strings.TrimRight(ansi.Strip(row), " ") == line }) {
						seen++
					}
				}
				k, _ := d.Focused()
				if hidden := len(f.rows) - seen; hidden != said[" above"]+said[" below"] {
					t.Errorf("%v: %d rows are hidden, %v are told:\n%s", k, hidden, said, screen)
				}
				r.Sees("> " + forms.Fields[k].Label)
				if differing := d.besideLines(size.width); said[": ^x"] == 0 && !strings.Contains(screen, strings.TrimSpace(ansi.Strip(differing[len(differing)-1]))) {
					t.Errorf("%v: what differs is cut unsaid:\n%s", k, screen)
				}
				if len(said) > 0 && strings.Contains(screen, "\n\n") {
					t.Errorf("%v: lines are empty while others are hidden:\n%s", k, screen)
				}
				r.Press("down")
			}
		}
	}
}
