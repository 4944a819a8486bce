package typeset

import (
	"strings"
	"testing"
)

// Every sign that an amount can have has a tall form of five rows.
func TestTallDigits(t *testing.T) {
	for c, rows := range tallDigits {
		for _, row := range rows {
			if len(row) != len(rows[0]) {
				t.Errorf("%q is ragged", c)
			}
		}
	}
	for _, amount := range []string{"13 15/16 in", "0.5 cm", "-1/2 in", "1 mm", "27/64 in", "38.9 cm"} {
		rows := Tall(amount, 80, 10)
		if len(rows) != tallRows || !strings.HasSuffix(rows[tallRows-1], amount[strings.LastIndex(amount, " ")+1:]) {
			t.Errorf("%s: %q", amount, rows)
		}
	}
	if rows := Tall("13 15/16 in", 20, 10); len(rows) != 1 || rows[0] != "13 15/16 in" {
		t.Errorf("too narrow: %q", rows)
	}
}
