package screen

import (
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/ui/sizes"
)

// The page with twenty sizes: a frame of it, a frame after one size was changed, and
// all sizes worked out.
func BenchmarkTwentySizes(b *testing.B) {
	d := newDesk(twentySizes(b), nil, styles{}, report.Reckoner{Today: props.SomeDay})
	d.trying = true
	p := newSizesPage(d, styles{})
	p.move(3, 1)
	b.Run("frame", func(b *testing.B) {
		for b.Loop() {
			p.render(120, 40)
		}
	})
	b.Run("changed", func(b *testing.B) {
		widths := []string{"17 3/4", "17 5/8"}
		for i := 0; b.Loop(); i++ { // the history grows, as it does under a hand
			p.typing.put(widths[i%2])
			p.move(1, 0)
			p.move(-1, 0)
			p.render(120, 40)
		}
	})
	b.Run("all", func(b *testing.B) {
		for b.Loop() {
			sizes.Of(d.rep)
		}
	})
}
