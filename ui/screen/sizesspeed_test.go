package screen

import (
	"testing"

	"capscye/ui/desk"
	"capscye/ui/internal/props"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/ui/sizes"
)

// The page with twenty sizes: a frame of it, a frame after one size was changed, and
// all sizes worked out.
func BenchmarkTwentySizes(b *testing.B) {
	d := desk.New(twentySizes(b), nil, parts.Styles{}, report.Reckoner{Today: props.SomeDay})
	d.TryHere()
	p := newSizesPage(d, parts.Styles{})
	p.move(3, 1)
	b.Run("frame", func(b *testing.B) {
		for b.Loop() {
			p.Render(120, 40)
		}
	})
	b.Run("changed", func(b *testing.B) {
		widths := []string{"17 3/4", "17 5/8"}
		for i := 0; b.Loop(); i++ { // the history grows, as it does under a hand
			p.typing.Put(widths[i%2])
			p.move(1, 0)
			p.move(-1, 0)
			p.Render(120, 40)
		}
	})
	b.Run("all", func(b *testing.B) {
		for b.Loop() {
			sizes.Of(d.Rep)
		}
	})
}
