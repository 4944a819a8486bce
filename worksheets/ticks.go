package worksheets

import (
	"slices"
	"strings"
)

// What is ticked off at the table was done to the pieces of one size. Another size is on
// other paper: the ticks of one that is not in hand have its name behind them, and come
// back with it.

const ofSize = " of size "

// OfOtherSize tells that the id of a finished step, as [Sheet] has it in Done, is of a size
// that is not in hand.
func OfOtherSize(id string) bool { return strings.Contains(id, ofSize) }

// renamedTicks moves ticks along with what the sizes are called now; the one in hand is "".
func renamedTicks(done []string, now func(size string) (name string, gone bool)) []string {
	var ticks []string
	for _, id := range done {
		tick, size, _ := strings.Cut(id, ofSize)
		name, gone := now(size)
		if gone {
			continue
		}
		if name != "" {
			tick += ofSize + name
		}
		ticks = append(ticks, tick)
	}
	if slices.Equal(ticks, done) {
		return done
	}
	return ticks
}
