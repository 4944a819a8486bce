package units

import (
	"strings"
	"testing"
)

// What people are told that can be written is read, as what they are told it is.
func TestEveryFormIsRead(t *testing.T) {
	values := map[string]Length{"3/4": 3 * Inch / 4, "-1/2": -Inch / 2} // of all others, 13 3/4
	told := map[string]bool{}
	for _, f := range Forms {
		want, ok := values[f.Example]
		if !ok {
			want = 13*Inch + 3*Inch/4
		}
		if got, named, err := ParseNamed(f.Example, Inches); err != nil || named || got != want {
			t.Errorf("%q is read as %v, %v; want %v", f.Example, got, err, want)
		}
		told[f.Example] = true
	}
	for _, u := range UnitNames {
		for _, word := range u.Words {
			for _, text := range []string{"2" + word, "2 " + strings.ToUpper(word)} {
				if got, named, err := ParseNamed(text, Centimetres); err != nil || !named || got != 2*u.Unit {
					t.Errorf("%q is read as %v, %v; want %v", text, got, err, 2*u.Unit)
				}
			}
			told[word] = true
		}
	}
	numbers, rest, _ := strings.Cut(Want, ", with ")
	rest, _, _ = strings.Cut(rest, " behind")
	for _, list := range []string{numbers, rest} {
		for _, one := range strings.Split(strings.ReplaceAll(list, " or ", ", "), ", ") {
			if !told[one] {
				t.Errorf("errors say that %q is read, which nobody can look up", one)
			}
		}
	}
	for sign := range vulgar {
		if !strings.ContainsRune(Forms[3].Says, sign) {
			t.Errorf("%c is read, and nobody can look that up", sign)
		}
	}
}
