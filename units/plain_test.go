package units

import (
	"math/rand/v2"
	"testing"
)

// What the short way reads, the reader of the whole grammar reads alike; random texts of the
// signs that lengths are made of, most of them no length.
func TestThePlainNumbersAreThoseOfTheGrammar(t *testing.T) {
	rnd := rand.New(rand.NewPCG(20261126, 2))
	const signs = "0123456789123456789  //..-,+ \u00bd'i"
	runes, taken := []rune(signs), 0
	try := func(text string) {
		n, ok := plainNumber(text)
		if !ok {
			return
		}
		taken++
		r := reader{text: text}
		if slow, err := r.number(); err != nil || !r.atEnd() || slow != n || Length(n.numerator)*Inch > Max*Length(n.denominator) {
			t.Fatalf("%q is %v, and by the grammar %v, %v", text, n, slow, err)
		}
	}
	for range 400_000 {
		text := make([]rune, 1+rnd.IntN(8))
		for i := range text {
			text[i] = runes[rnd.IntN(len(runes))]
		}
		try(string(text))
	}
	for _, text := range []string{"0", "999", "1000", "999 998/999", "1 1/1", "1 2/1", "0/5", "5/0", "1  1/2", " 1", "1 ", "1 1/2 ", "1.", ".5", "0.999", "999/1", "1/2/3", "1 1/2/3", "1.5/2", "1 2"} {
		try(text)
	}
	if taken < 10_000 {
		t.Errorf("only %d were taken", taken)
	}
}
