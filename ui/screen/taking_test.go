package screen

import (
	"os"
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// A new sheet starts with the body of another one, with its day and its unit, and
// knows where it is from.
func TestANewSheetStartsFromAnother(t *testing.T) {
	for key, want := range map[string]string{"b": `body_from = "sheet.toml"`, "p": `pattern_from = "sheet.toml"`} {
		r := sitWithFile(t, "archive-coat", 80, 24).Press("ctrl+o", "down", "enter").Types("second").Press("enter", key).Fits()
		r.Sees("Choose the worksheet to take the ", "sheet.toml").Press("enter").Sees("[saved]", "centimetres")
		got := props.Read(t, "second.toml")
		if !strings.Contains(got, want) {
			t.Errorf("the file is\n%s", got)
		}
		d, err := worksheets.Load("second.toml")
		if err != nil {
			t.Fatal(err)
		}
		from, err := worksheets.Load("sheet.toml")
		if err != nil {
			t.Fatal(err)
		}
		for i, section := range []worksheets.Section{worksheets.BodySection, worksheets.PatternSection} {
			for _, k := range section.Keys() {
				taken := (i == 0) == (key == "b")
				if text := d.Sheet.Text(k); taken && text != from.Sheet.Text(k) || !taken && k.IsLength() && text != "" {
					t.Errorf("%s is %q", k, text)
				}
			}
		}
	}
}

// Step 1 takes the body of another worksheet, step 3 its pattern; undo takes it back.
func TestTakingIntoTheSheetAtHand(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	coat := props.Read(t, props.SourceFolder+"/worksheets/examples/archive-coat.toml")
	os.WriteFile("coat.toml", []byte(coat), 0o644)
	r.Press("ctrl+f").Sees("Choose the worksheet to take the body from.", "coat.toml").DoesNotSee("sheet.toml")
	r.Press("enter").Sees("Choir blouse, for Benedikt", "[saved]", "Other arm           ~14 5/8 in", "Took the body of coat.toml.")
	r.Press("ctrl+z").Sees("Undone: body of coat.toml.", "[13 3/4").Press("f3", "ctrl+f").Sees("Choose the worksheet to take the pattern from.")
	r.Press("enter").Sees("Took the pattern of coat.toml.").Press("f2", "ctrl+f").Sees("Step 1 takes the body of another worksheet, step 3 the pattern")
}

// Of several sheets the one that is chosen is taken; what was typed when the list
// was asked for is saved; and the sheet that was taken from before is not spoken of
// any more.
func TestTheChosenSheetIsTaken(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	for _, name := range []string{"allotment-shirt", "archive-coat", "costume-tunic"} {
		os.WriteFile(name+".toml", []byte(props.Read(t, props.Example(name))), 0o644)
	}
	r.Types("14 1/8").Press("ctrl+f")
	if !strings.Contains(props.Read(t, "sheet.toml"), `"14 1/8"`) {
		t.Error("what was typed is not saved")
	}
	r.Press("down", "enter").Sees("Took the body of archive-coat.toml.", "Benedikt")
	r.Press("ctrl+f", "enter").Sees("Took the body of allotment-shirt.toml.", "Marit")
	if got := props.Read(t, "sheet.toml"); !strings.Contains(got, `body_from = "allotment-shirt.toml"`) {
		t.Errorf("the file is\n%s", got)
	}
	r.Press("f5").DoesNotSee("was taken from").Press("ctrl+z").Sees("Undone: body of allotment-shirt.toml.").DoesNotSee("was taken from")
}

// What was measured again in the sheet that a body came from is pointed out, with
// both values and days; w takes it as a what-if.
func TestChangedMeasurementsArePointedOut(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("ctrl+o", "down", "enter").Types("second").Press("enter", "b", "enter").Sees("[saved]")
	again := strings.NewReplacer(`bicep       = "13 3/4"`, `bicep = "14"`, "2026-10-03", "2026-11-20").Replace(props.Read(t, "sheet.toml"))
	os.WriteFile("sheet.toml", []byte(again), 0o644)

	_, out, _ := run("", "show", "second.toml")
	const says = "The body was taken from sheet.toml, which now says: bicep 14 in (here 13 3/4 in). Measured there on 2026-11-20, here on 2026-10-03."
	if got := strings.Join(strings.Fields(out), " "); !strings.Contains(got, "check "+says) {
		t.Errorf("it is not pointed out:\n%s", out)
	}
	if _, out, _ = run("quit\n", "ask", "second.toml"); !strings.Contains(out, "Check: "+strings.Replace(says, ". ", ".\n", 1)) {
		t.Errorf("ask does not point it out:\n%s", out)
	}
	r.Press("ctrl+o", "enter").Sees("[1 Body]").Press("f5").Sees("The body was taken from sheet.toml")
	before := props.Read(t, "second.toml")
	r.Press("w").Fits().Sees("Take the body of sheet.toml again").Press("enter").Sees("copy 1 of 1", "13 3/4 in          14 in", "gone  check: The body was taken")
	if props.Read(t, "second.toml") != before {
		t.Error("the what-if was saved")
	}
	r.Press("ctrl+x", "k").Sees("[saved]")
	if got := props.Read(t, "second.toml"); !strings.Contains(got, `= "14"`) || !strings.Contains(got, "2026-11-20") {
		t.Errorf("the file is\n%s", got)
	}

	// What was measured later here is a note, not a warning.
	os.WriteFile("sheet.toml", []byte(strings.Replace(again, `bicep = "14"`, `bicep = "13"`, 1)), 0o644)
	os.WriteFile("second.toml", []byte(strings.Replace(props.Read(t, "second.toml"), "2026-11-20", "2026-11-24", 1)), 0o644)
	if _, out, _ = run("", "show", "second.toml"); !strings.Contains(out, "note  The body was taken from sheet.toml, which now says: bicep 13 in") {
		t.Errorf("it is not a note:\n%s", out)
	}
}
