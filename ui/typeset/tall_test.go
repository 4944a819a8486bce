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
		rows := Tall(amount, 80, 5)
		if len(rows) != tallRows || !strings.HasSuffix(rows[tallRows-1], amount[strings.LastIndex(amount, " ")+1:]) {
			t.Errorf("%s: %q", amount, rows)
		}
	}
	if rows := Tall("13 15/16 in", 20, 10); len(rows) != 1 || rows[0] != "13 15/16 in" {
		t.Errorf("too narrow: %q", rows)
	}
}

// They are as tall as the room allows, never wider than it, and never more than twice as
// slender as they were drawn.
func TestTallDigitsFillTheRoom(t *testing.T) {
	for _, c := range []struct {
		amount              string
		width, height, rows int
	}{
		{"1/4 in", 80, 24, 20}, {"1 + 1/4 in", 120, 22, 20}, {"13/16 + 1 3/16 in", 120, 40, 10}, {"2.5 + 2.5 cm", 80, 9, 5},
		{"1/4 in", 80, 4, 1}, {"1/4 in", 21, 40, 10}, {"1/4 in", 19, 40, 1},
	} {
		rows := Tall(c.amount, c.width, c.height)
		if len(rows) != c.rows {
			t.Errorf("%s in %d x %d: %d rows, want %d", c.amount, c.width, c.height, len(rows), c.rows)
		}
		for _, row := range rows {
			if len(row) > c.width {
				t.Errorf("%s in %d x %d: %q sticks out", c.amount, c.width, c.height, row)
			}
		}
	}
}
