package screen

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"capscye/worksheets"
)

// However fine the ruler, no amount is cut: what is left of one is another amount.
func TestNoAmountIsCut(t *testing.T) {
	cut := regexp.MustCompile(`[0-9/+~] ?\.\.\.`)
	random := rand.New(rand.NewPCG(64, 1280))
	windows := [][2]int{{80, 24}, {120, 40}, {60, 16}, {100, 30}}
	pages := strings.Fields("f1 f2 f3 f4 f5 down down down f6 t down down esc ctrl+l f2 right right f4 f5 f1 f2 f3 ctrl+x down down esc ctrl+b right right esc f5 w esc ctrl+r pgdown pgdown esc ctrl+o esc")
	for run := range 48 {
		window := windows[run%len(windows)]
		r := sitWithFile(t, worksheets.Examples()[run/len(windows)%len(worksheets.Examples())], window[0], window[1])
		d := rootOf(r).desk
		s := d.Doc.Sheet
		for k, text := range map[worksheets.Key]string{
			worksheets.Unit: "in", worksheets.Ruler: []string{"1/16 in", "1/32 in", "1/64 in"}[random.IntN(3)],
			worksheets.EaseBicep:        fmt.Sprintf("%d %d/64", random.IntN(5), 1+random.IntN(63)),
			worksheets.EaseBust:         fmt.Sprintf("%d %d/64", random.IntN(5), 1+random.IntN(63)),
			worksheets.PivotLimitSleeve: fmt.Sprintf("%d/64", 30+random.IntN(33)),
		} {
			if err := s.Set(k, text); err != nil {
				t.Fatal(err)
			}
		}
		d.Change(s, "a fine ruler")
		for _, key := range pages {
			r.Press(key)
			for _, line := range strings.Split(r.Fits().Screen(), "\n") {
				if cut.MatchString(line) {
					t.Errorf("%v, after %s: %s", window, key, line)
				}
			}
		}
	}
}
