package paper

import (
	"bytes"
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

// A card is known again whatever its worksheet says, also where that talks like a mark;
// and no longer once any byte of it is another, is gone or is one more.
func TestACardIsKnownUntilItIsChanged(t *testing.T) {
	d, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	for i, title := range []string{"Blouse", maker.unsigned(), maker.Name + " 0123456789abcdef"} {
		d.Sheet.Set(worksheets.Title, title)
		d.Sheet.Set(worksheets.Notes, "my "+title)
		for _, name := range []string{"a.pdf", "a.svg", "a.txt"} {
			made, _, err := files(name, "", report.Reckon(d, props.SomeDay, 0), props.SomeDay)
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range made {
				if !maker.Made(f.Content) {
					t.Errorf("%s of %q is not known again", f.Name, title)
				}
				step := 1 + len(f.Content)/props.OfMany(300, 1000)
				for at := i * step / 3; at < len(f.Content); at += step {
					other := bytes.Clone(f.Content)
					other[at] ^= 1
					if maker.Made(other) || maker.Made(f.Content[:at]) || maker.Made(append(other[:at:at], f.Content[at+1:]...)) {
						t.Fatalf("%s: byte %d of %d is another, and it is still known", f.Name, at, len(f.Content))
					}
				}
				if maker.Made(append(bytes.Clone(f.Content), '\n')) || (Maker{"capscye drill", "a drill sheet"}).Made(f.Content) {
					t.Errorf("%s: with one more, or as another maker's, it is still known", f.Name)
				}
			}
		}
	}
}
