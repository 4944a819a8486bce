package units

import (
	"fmt"
	"slices"
	"testing"
)

func TestRunTogether(t *testing.T) {
	for text, want := range map[string][]string{
		"141/2": {"14 1/2"}, "133/4": {"13 3/4"}, "137/8": {"13 7/8"}, "1315/16": {"13 15/16"}, "391/2 in": {"39 1/2 in"}, "-11/2": {"-1 1/2"},
		"14.1/2": {"14 1/2"}, "14,1/2": {"14 1/2"}, "14/1/2": {"14 1/2"}, "131/3": {"13 1/3"}, "991/2": {"99 1/2"},
		"111/16": {"1 11/16", "11 1/16"}, // which of them, nobody can tell
		"3/4":    nil, "13 /4": nil, "141/2cc": nil, "141/2 ft": nil, "7/4": nil, "14 1/2": nil, "14-1/2": nil, "14": nil, "1/2": nil, "": nil, "13.75": nil, "101/5": nil, "100/2": nil, "1001/2": nil, "14 1/ 2": nil, "1/2/3/4": nil,
	} {
		if got := RunTogether(text); !slices.Equal(got, want) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// Every reading of a tape to 99 in and a 64th, typed without the space, is among those
// that may have been meant; and where only one may, it is the one.
func TestEveryReadingRunTogetherIsGuessed(t *testing.T) {
	alone, all := 0, 0
	for whole := 1; whole <= 99; whole++ {
		for _, below := range []int{2, 3, 4, 8, 16, 32, 64} {
			for above := 1; above < below; above++ {
				want := fmt.Sprintf("%d %d/%d", whole, above, below)
				got := RunTogether(fmt.Sprintf("%d%d/%d", whole, above, below))
				if !slices.Contains(got, want) {
					t.Fatalf("%s is not among %q", want, got)
				}
				all++
				if len(got) == 1 {
					alone++
				}
			}
		}
	}
	t.Logf("%d of %d readings have no other", alone, all)
}
