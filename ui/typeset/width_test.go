package typeset

import (
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/charmbracelet/x/ansi"
	"github.com/mattn/go-runewidth"
)

// bothWays are the two ways in which terminals count: by clusters, and character by
// character, where every mark that takes room (Mc) takes a cell.
func bothWays(line string) (clusters, characters int) {
	plain := ansi.Strip(line)
	for _, r := range plain {
		w := runewidth.RuneWidth(r)
		if unicode.Is(unicode.Mc, r) {
			w = max(w, 1)
		}
		characters += w
	}
	return ansi.StringWidth(plain), characters
}

// lettersOf are what texts of a script are drawn from: what of it can be shown, sparsely
// where it is large.
func lettersOf(table *unicode.RangeTable) (list []rune) {
	add := func(from, to, stride rune) {
		for r := from; r <= to; r += stride {
			if !Unprintable(r) && string(r) != noHyphen && (len(list) < 400 || r%97 == 0) {
				list = append(list, r)
			}
		}
	}
	for _, r := range table.R16 {
		add(rune(r.Lo), rune(r.Hi), rune(r.Stride))
	}
	for _, r := range table.R32 {
		add(rune(r.Lo), rune(r.Hi), rune(r.Stride))
	}
	return list
}

// In whatever script a title is, no line that is cut, filled or broken sticks out of its
// width, by either way of counting; and no letter of a broken text is lost.
func TestNoLineSticksOutInAnyScript(t *testing.T) {
	random := rand.New(rand.NewPCG(17, 8))
	for _, name := range slices.Sorted(maps.Keys(unicode.Scripts)) {
		letters := append(lettersOf(unicode.Scripts[name]), []rune(" \u0301")...)
		for range 20 {
			var text strings.Builder
			for range 1 + random.IntN(60) {
				if text.WriteRune(letters[random.IntN(len(letters))]); random.IntN(6) == 0 {
					text.WriteByte(' ')
				}
			}
			width := 4 + random.IntN(40)
			styled := "\x1b[1m" + text.String() + "\x1b[0m"
			lines := append(Wrap(text.String(), width), Cut(text.String(), width), Pad(text.String(), width), Cut(styled, width), Pad(styled, width))
			for _, l := range lines {
				if clusters, characters := bothWays(l); clusters > width || characters > width {
					t.Fatalf("%s: %d by clusters, %d by characters in %d cells: %q of %q", name, clusters, characters, width, l, text.String())
				}
			}
			spaceless := func(s string) string { return strings.Join(strings.Fields(s), "") }
			if got := strings.Join(Wrap(text.String(), width), " "); spaceless(got) != spaceless(text.String()) {
				t.Fatalf("%s: broken in %d cells %q became %q", name, width, text.String(), got)
			}
			for _, padded := range []string{Pad(text.String(), 80), Pad(styled, 80)} {
				if clusters, characters := bothWays(padded); max(clusters, characters) != 80 && Width(text.String()) <= 80 && clusters == characters {
					t.Fatalf("%s: %d and %d cells: %q", name, clusters, characters, padded)
				}
			}
			if cut := Cut(styled, width); !strings.HasSuffix(cut, "\x1b[0m") {
				t.Fatalf("%s: a style goes on behind %q", name, cut)
			}
		}
	}
}

// Vowels of Thai and Devanagari, and a tone of skin, by hand: by clusters these are 1, 1 and
// 2 cells, by the tables of a C library (Mc 1, Lo 1, emoji 2) 2, 2 and 4.
func TestTheLargerWidthCounts(t *testing.T) {
	for text, want := range map[string]int{
		"กำ": 2, "का": 2, "👍🏽": 4, "e\u0301": 1, "ab": 2, "宽": 2, "⠿⅛": 2, "\x1b[31mกำ\x1b[0m": 2, "": 0,
	} {
		if got := Width(text); got != want {
			t.Errorf("%q is %d cells wide, want %d", text, got, want)
		}
	}
}

// What cannot be seen is shown as an escape: fillers, joiners and selectors by the
// property of Unicode (DerivedCoreProperties.txt, Default_Ignorable_Code_Point), blanks
// by their names in the code charts.
func TestWhatCannotBeSeenIsShown(t *testing.T) {
	for _, r := range "\u3164\u115f\u1160\uffa0\u034f\u180b\u180d\u17b4\u17b5\ufe00\ufe0f\u2800\u00ad\u200b\u200d\u2060\u2064\u206f\ufeff\ufff0\u3000\u2003" +
		"\U000e0100\U000e01ef\U0001d159\U00016fe4\U0001bca0\U0001d173\U00013441\U000e0020" {
		if got := Plain("a" + string(r) + "b"); !strings.HasPrefix(got, `a\`) || !strings.HasSuffix(got, "b") {
			t.Errorf("%U comes through: %q", r, got)
		}
	}
	for _, text := range []string{"Größe 13 3/4", "ก่ำ", "नि", "가", "寛", "é", "⅛ ½", "→", "Ⅷ", "a\u00a0b"} {
		if got := Plain(text); got != text {
			t.Errorf("%q becomes %q", text, got)
		}
	}
}

// A line of plain signs is measured and wrapped as every other text is.
func TestPlainLinesAreLikeOthers(t *testing.T) {
	rnd := rand.New(rand.NewPCG(20261126, 3))
	signs := []string{" ", " ", "a", "-", "1", "3/8", "in", ".", "~", "0", "  ", "\t", "\x7f", "\x1b[1m", "é", "\u0301", "\n"}
	for range 20_000 {
		text := ""
		for range rnd.IntN(12) {
			text += signs[rnd.IntN(len(signs))]
		}
		width := 1 + rnd.IntN(30)
		slow := wrap(together(text), width)
		for i, l := range slow {
			slow[i] = strings.TrimRight(breakable.Replace(l), " ")
		}
		if got := Wrap(text, width); !slices.Equal(got, slow) {
			t.Fatalf("%q at %d: %q, want %q", text, width, got, slow)
		}
		if plain(text) && Width(text) != ansi.StringWidth(text) {
			t.Fatalf("%q is %d wide", text, Width(text))
		}
	}
}
