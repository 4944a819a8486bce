package screen

import (
	"os"
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/units"
	"capscye/worksheets"
)

// One key writes the card beside the sheet, and says where.
func TestCardFromTheScreen(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f6", "c").Sees("The card is in sheet-card.pdf.")
	if out := props.Read(t, "sheet-card.pdf"); !strings.HasPrefix(out, "%PDF-") {
		t.Errorf("%.20q", out)
	}
	// Written again it is the same card; what is no card is left alone.
	r.Press("c").Sees("The card is in sheet-card.pdf.")
	os.WriteFile("sheet-card.pdf", []byte("a bought pattern"), 0o644)
	r.Press("c").Sees("The card is in sheet-card-2.pdf.")
	if props.Read(t, "sheet-card.pdf") != "a bought pattern" {
		t.Error("a bought pattern was written over")
	}
	r.Press("f1").Sees("[saved]")
}

// What a test garment showed is kept with its day, and one more key makes a
// change of ease of it.
func TestFittingBecomesEase(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f6", "n").Sees("What did the test garment show?")
	r.Types("upper arm 1/2 in too tight").Press("enter")
	r.Sees("The note is saved. Change the ease at the bicep by +1/2, from 1 3/4 in to", "\n2 1/4 in?").Press("y")
	r.Sees("The ease at the bicep is now 2 1/4 in, where it was 1 3/4 in.", "Sleeve needs 3 in")
	got := props.Read(t, "sheet.toml")
	if !strings.Contains(got, "[[fitting]]\ndate = 2026-11-25\nnote = \"upper arm 1/2 in too tight\"") || !strings.Contains(got, `bicep = "2 1/4"`) {
		t.Errorf("the file is now\n%s", got)
	}
	r.Press("n").Types("drags at the back").Press("enter").Sees("The note is saved with the worksheet").Press("f5")
	for range 20 {
		r.Press("down")
	}
	r.Sees("2026-11-25  drags at the back")
	r.Press("f6", "n").Types("hip too wide by 1 in").Press("enter").Sees("from nothing to -1 in", "smaller than the body").Press("esc").Press("f2").Sees("At the hip          -")
	r.Press("f6", "n", "esc").Sees("[6 Trace]").Press("n", "enter").Sees("[6 Trace]")
}

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
		if c, ok := readFitting(note, &d.Sheet, units.Centimetres); ok {
			got = c.key.Path() + " " + units.Scale{System: units.Centimetres}.Exact(c.after)
		}
		if got != want {
			t.Errorf("%q: %q, want %q", note, got, want)
		}
	}
}
