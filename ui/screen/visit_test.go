package screen

import (
	"os"
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// On every field the first esc brings back what a key pushed, in the plan and in the file,
// and says so; the next what it was pushed to; undo goes through both.
func TestEscBringsBackWhatAKeyPushed(t *testing.T) {
	for _, push := range []struct {
		step, field string
		key         worksheets.Key
		keys        []string
		was, is     string // in the file
		says        string
	}{
		{"f1", "Bicep", worksheets.Bicep, []string{"right"}, "13 3/4", "13 7/8", "Bicep was 13 3/4 in; esc brings it back."},
		{"f1", "Bicep", worksheets.Bicep, []string{"right", "right", "right"}, "13 3/4", "14 1/8", "Bicep was 13 3/4 in; esc brings it back."},
		{"f1", "Unit", worksheets.Unit, []string{"right"}, "in", "cm", "The ruler stays"},
		{"f1", "Unit", worksheets.Unit, []string{"c", "i", "c"}, "in", "cm", "The ruler stays"},
		{"f1", "Fabric", worksheets.Fabric, []string{"right"}, "woven", "knit", "Fabric was woven; esc brings it back."},
		{"f1", "Fabric", worksheets.Fabric, []string{"k"}, "woven", "knit", "Fabric was woven; esc brings it back."},
		{"f3", "Measured", worksheets.SleeveMeasured, []string{"backspace"}, "seam", "", "esc brings back seam to seam"},
		{"f4", "Slide", worksheets.Slide, []string{"right"}, "least", "3/8", "The slide was least; esc brings it back."},
		{"f4", "Slide", worksheets.Slide, []string{"e"}, "least", "even", "The slide was least; esc brings it back."},
		{"f4", "Armhole", worksheets.Armhole, []string{"right"}, "alter", "keep", "Armhole was alter; esc brings it back."},
	} {
		r := sitWithFile(t, "choir-blouse", 80, 24).Press(push.step)
		before := props.Read(t, "sheet.toml")
		for n := 0; !strings.Contains(r.Screen(), "> "+push.field+" "); n++ {
			if r.Press("down"); n > 60 {
				t.Fatalf("no field %s", push.field)
			}
		}
		has := func(want, when string) {
			t.Helper()
			d, err := worksheets.Load("sheet.toml")
			if err != nil {
				t.Fatal(err)
			}
			if got := d.Sheet.Text(push.key); got != want {
				t.Errorf("%s, %v: %s the file has %q and not %q", push.field, push.keys, when, got, want)
			}
		}
		r.Press(push.keys...)
		r.Sees(push.says, "esc as it was")
		has(push.is, "pushed,")
		r.Press("esc").Sees(" again. Esc again brings back ", "esc as it was", "[saved]")
		has(push.was, "after esc")
		if now := props.Read(t, "sheet.toml"); now != before {
			t.Errorf("%s, %v: after esc the file is\n%s", push.field, push.keys, now)
		}
		r.Press("esc")
		has(push.is, "after the second esc")
		r.Press("esc", "ctrl+z")
		has(push.is, "after undo of the third esc")
		r.Press("ctrl+z", "ctrl+z")
		has(push.is, "after undo of all esc")
		r.Press("esc").DoesNotSee("again. Esc") // undo has its own keys
		has(push.is, "after an esc behind undo")
	}
}

// What esc brings back is of one visit: whoever leaves the field and comes again has
// accepted what was pushed. What is typed behind a push is brought back first.
func TestEscKnowsOneVisitOfTheHands(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("right", "down", "up").DoesNotSee("esc as it was")
	r.Press("esc").Sees("[13 7/8").Press("right").Sees("[14  ", "Bicep was 13 7/8 in; esc brings it back.")
	r.Types("99").Press("esc").Sees("[14  ", "As it was. Esc again brings back what you typed.")
	r.Press("left").Sees("[13 7/8").DoesNotSee("Bicep was").DoesNotSee("esc as it was")
	r.Press("ctrl+t").Press("right", "ctrl+t", "esc").Sees("[13 7/8  ", "Bicep is 13 7/8 in again")
}

// Nothing to bring back is no key that goes into the field: left and right push it still.
func TestEscOnAValueJustReachedChangesNothing(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24).Press("esc", "right").Sees("[13 7/8")
}

// In an example what was pushed is a copy; esc leaves it, with nothing changed in it.
func TestEscInAnExampleLeavesACopyWithNothingChanged(t *testing.T) {
	r := lookAt(t, "choir-blouse", 120, 40).Press("right").Sees("[13 7/8", "The example stays as it is")
	r.Press("esc").Sees("[13 3/4", "Bicep is 13 3/4 in again").Press("ctrl+x").Sees("nothing changed yet")
}

// Nobody can write what cannot be read into the file, esc neither.
func TestEscBringsBackNothingUnreadable(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	os.WriteFile("sheet.toml", []byte(strings.Replace(props.Read(t, "sheet.toml"), `"woven"`, `"silk"`, 1)), 0o644)
	r := reopen(t, "sheet.toml")
	for !strings.Contains(r.Screen(), "> Fabric ") {
		r.Press("down")
	}
	r.Press("k").Sees("< knit >").DoesNotSee("esc as it was").Press("esc").Sees("< knit >")
}
