package screen

import (
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// Vowels that stand beside their letters stick out of no page, also in a terminal that
// counts every character.
func TestNoScriptSticksOutOfThePage(t *testing.T) {
	for _, word := range []string{"กำไรน้ำ", "कमीज़ की बाँहें", "தையல்காரர்", "မြန်မာအင်္ကျီ", "👍🏽👍🏽"} {
		t.Chdir(t.TempDir())
		props.LayAt(t, "sheet.toml", "choir-blouse")
		d, err := worksheets.Load("sheet.toml")
		if err != nil {
			t.Fatal(err)
		}
		for _, k := range []worksheets.Key{worksheets.Title, worksheets.Wearer, worksheets.Notes} {
			d.Sheet.Set(k, strings.Repeat(word+" ", 12))
		}
		for _, size := range [][2]int{{60, 16}, {80, 24}, {120, 40}} {
			r := sit(t, d, size[0], size[1]).Fits()
			for _, key := range []string{"shift+tab", "f5", "f6", "t", "esc", "ctrl+l", "f1", "up", "ctrl+x", "esc", "ctrl+o", "esc"} {
				r.Press(key).Fits()
			}
			r.Press("f1", "shift+tab").Types(word).Fits().Press("home").Fits()
		}
	}
}
