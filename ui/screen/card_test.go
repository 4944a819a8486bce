package screen

import (
	"os"
	"strings"
	"testing"

	"capscye/ui/internal/props"
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
	r.Sees("The note is added. Change the ease at the bicep by +1/2, from 1 3/4 in to", "\n2 1/4 in?").Press("y")
	r.Sees("The ease at the bicep is now 2 1/4 in, where it was 1 3/4 in.", "Sleeve needs 3 in")
	got := props.Read(t, "sheet.toml")
	if !strings.Contains(got, "[[fitting]]\ndate = 2026-11-25\nnote = \"upper arm 1/2 in too tight\"") || !strings.Contains(got, `bicep = "2 1/4"`) {
		t.Errorf("the file is now\n%s", got)
	}
	r.Press("n").Types("drags at the back").Press("enter").Sees("The note is added to the worksheet").Press("f5")
	for range 20 {
		r.Press("down")
	}
	r.Sees("2026-11-25  drags at the back")
	r.Press("f6", "n").Types("hip too wide by 1 in").Press("enter").Sees("from nothing to -1 in", "smaller than the body").Press("esc").Press("f2").Sees("At the hip          -")
	r.Press("f6", "n", "esc").Sees("[6 Trace]").Press("n", "enter").Sees("[6 Trace]")
}
