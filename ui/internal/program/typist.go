//go:build linux

package program

import (
	"math/rand/v2"
	"strconv"
	"time"

	"capscye/ui/forms"
	"capscye/worksheets"
)

// Committed is a field that was left with Enter, and when that was typed.
type Committed struct {
	Key  worksheets.Key
	Text string
	At   time.Time
}

// Typist types a length into every field that takes one, step after step, until a moment
// has come.
func (m *Terminal) Typist(rnd *rand.Rand, until time.Time) (done []Committed) {
	for s := range forms.StepCount {
		for _, it := range forms.Items[s] {
			if it.Heading != "" {
				continue
			}
			keys, text := "\r", ""
			if forms.KindOf(it.Key) == forms.LengthField {
				text = strconv.Itoa(1+rnd.IntN(60)) + [...]string{"", " 1/2", " 3/8", ".25"}[rnd.IntN(4)]
				keys = text + "\r"
			}
			if _, err := m.File.WriteString(keys); err != nil {
				return done
			}
			if text != "" {
				done = append(done, Committed{it.Key, text, time.Now()})
			}
			time.Sleep(time.Duration(rnd.IntN(40)) * time.Millisecond)
			if time.Now().After(until) {
				return done
			}
		}
	}
	return done
}
