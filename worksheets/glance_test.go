package worksheets

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
)

// Whatever is read in the plain way at a glance is within the bounds that a slow look finds;
// files of brackets, points and quotes, and files of very many tables.
func TestAGlanceLetsNothingThroughThatIsOutOfBounds(t *testing.T) {
	check := func(source string) (plain bool) {
		t.Helper()
		if _, _, ok := readPlain([]byte(source)); !ok || !withinBounds([]byte(source)) {
			return false
		}
		if err := checkBounds("", []byte(source)); err != nil {
			t.Fatalf("%.200q: %v", source, err)
		}
		return true
	}
	lines := []string{"[body]\n", "bicep = \"13 3/4\"\n", "# [[[[[[[[ a.b.c.d.e.f\n", "[[fitting]]\n", "note = \"[[[[[[.......\"\n", "[progress]\n", "done = [\"a.b\", \"[\"]\n",
		"[[size]]\n", "name = \"10\"\n", "sleeve.width = \"13\"\n", "[size.sleeve]\n", "width = \"12\"\n", "a.b.c.d.e = 1\n", "x = [[[[[[]]]]]]\n", "\"\"\"\n", "version = 1\n", "\n"}
	rnd, plain := rand.New(rand.NewPCG(20261126, 4)), 0
	for range 20_000 {
		var source strings.Builder
		for range 1 + rnd.IntN(6) {
			source.WriteString(lines[rnd.IntN(len(lines))])
		}
		if check(source.String()) {
			plain++
		}
	}
	if plain < 1000 {
		t.Errorf("only %d were plain", plain)
	}
	for _, n := range []int{9_999, mostOpened/2 - 1, mostOpened / 2, mostOpened/2 + 1, mostOpened} {
		check(strings.Repeat("[[fitting]]\n", n))
	}
	for _, n := range []int{mostPoints - 1, mostPoints, mostPoints + 1} {
		check("[about]\ntitle = \"" + strings.Repeat(".", n) + "\"\n")
		check("#" + strings.Repeat(".", n))
	}
	if withinBounds(bytes.Repeat([]byte(" "), MaxBytes+1)) {
		t.Error("too long a file is let through")
	}
	// Either way the outcome is that of the slow look.
	for _, n := range []int{10, mostOpened/2 + 1} {
		source := []byte(strings.Repeat("[[fitting]]\n", n))
		_, err := Decode("x", source)
		if want := checkBounds("x", source); fmt.Sprint(err) != fmt.Sprint(want) {
			t.Errorf("%d fittings: %v, want %v", n, err, want)
		}
	}
}
