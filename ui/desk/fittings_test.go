package desk

import (
	"testing"

	"capscye/units"
	"capscye/worksheets"
)

// A note is read only where it says one place, one amount and one way.
func TestReadFitting(t *testing.T) {
	d, err := worksheets.Example("archive-coat")
	if err != nil {
		t.Fatal(err)
	}
	for note, want := range map[string]string{
		"upper arm 1,5 cm too tight": "ease.bicep 7.5", "Bust: 2 too loose": "ease.bust 8", "waist (1/2 in) too narrow": "ease.waist 11.27",
		"the biceps are 1/2 in too tight": "ease.bicep 7.27", "fitting: hip too wide by 1 in": "ease.hip 6.46",
		"too tight": "", "bust too tight": "", "bust 2 cm": "", "waist tight 1 cm, hip loose": "", "": "",
		"bust 1 in too tight, arm 1/2 in too tight": "", "bust 1 in too tight, sleeve is fine": "", "size 12: bust tight": "",
		"on the 3 buttons the bust is too tight": "", "Fitting 2: upper arm 1/2 too tight": "", "bust 2 sizes too small": "",
		"I widened the sleeve by 1/2 in": "", "upper arm not too tight, 1/2 in to spare": "", "sleeve 2 in too long and too wide": "",
		"the chips on the table are too big 1 in": "", "bust 1 in too tight on each side": "",
	} {
		got := ""
		if c, ok := ReadFitting(note, &d.Sheet, units.Centimetres); ok {
			got = c.key.Path() + " " + units.Scale{System: units.Centimetres}.Exact(c.after)
		}
		if got != want {
			t.Errorf("%q: %q, want %q", note, got, want)
		}
	}
}
