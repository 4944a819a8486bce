package worksheets_test

import (
	"os"
	"slices"
	"testing"

	"capscye/units"
	"capscye/worksheets"
)

// A section that is taken along is measured as it was, also by a sheet in the
// other unit, and its file and wearer are remembered.
func TestTakenMeasurementsAreTheSameLengths(t *testing.T) {
	for _, name := range worksheets.Examples() {
		from, err := worksheets.Example(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, unit := range []string{"in", "cm"} {
			for _, section := range []worksheets.Section{worksheets.BodySection, worksheets.PatternSection} {
				var s worksheets.Sheet
				s.Set(worksheets.Unit, unit)
				s.Set(worksheets.EaseBust, "3")
				s.Take(section, from.Sheet, "some/folder/"+name+".toml")
				for _, k := range section.Keys() {
					if got, want := s.Text(k), from.Sheet.Text(k); from.Sheet.Unit().String() == unit && got != want {
						t.Errorf("%s in %s: %s says %q, said %q", name, unit, k, got, want)
					}
					if got, want := s.Reading(k), from.Sheet.Reading(k); got != want {
						t.Errorf("%s in %s: %s is %v, want %v", name, unit, k, got, want)
					}
				}
				if s.Unit().String() != unit || s.Text(worksheets.EaseBust) != "3" || s.Text(worksheets.Slide) != "" {
					t.Error("more was taken than the section")
				}
				origin, wearer := s.Text(worksheets.BodyFrom), s.Text(worksheets.Wearer)
				if section == worksheets.PatternSection {
					origin, wearer = s.Text(worksheets.PatternFrom), from.Sheet.Text(worksheets.Wearer)
				}
				if origin != name+".toml" || wearer != from.Sheet.Text(worksheets.Wearer) {
					t.Errorf("taken from %q, of %q", origin, wearer)
				}
			}
		}
	}
}

// Who is named stays, where the sheet that measurements come from names nobody.
func TestMeasurementsOfNobodyTakeNoNameAway(t *testing.T) {
	var s, from worksheets.Sheet
	s.Set(worksheets.Wearer, "Tamsel")
	s.Take(worksheets.BodySection, from, "nobody.toml")
	if got := s.Text(worksheets.Wearer); got != "Tamsel" {
		t.Errorf("the wearer is %q", got)
	}
}

// What has changed since counts as a length, not as a way of writing; what the
// origin has not does not count.
func TestWhatHasChangedSince(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("odile.toml", []byte("[about]\nunit=\"in\"\n[body]\nmeasured_on=2026-11-01\nbicep=\"14\"\nbust=\"39 1/2\"\n[bodice]\nmeasured=\"edge\"\n"), 0o644)
	os.WriteFile("coat.toml", []byte("[about]\nunit=\"cm\"\nbody_from=\"odile.toml\"\npattern_from=\"odile.toml\"\n[body]\nbicep=\"34\"\nbust=\"1003.3 mm\"\nwaist=\"80\"\n"), 0o644)
	d, err := worksheets.Load("coat.toml")
	if err != nil {
		t.Fatal(err)
	}
	if len(d.Origins) != 2 {
		t.Fatalf("%d origins", len(d.Origins))
	}
	if got := d.Origins[0].Since(d.Sheet); !slices.Equal(got, []worksheets.Key{worksheets.Bicep}) {
		t.Errorf("changed: %v", got)
	}
	if got := d.Origins[1].Since(d.Sheet); !slices.Equal(got, []worksheets.Key{worksheets.BodiceMeasured}) {
		t.Errorf("changed: %v", got)
	}
	d.Sheet.Take(worksheets.BodySection, d.Origins[0].Sheet, "odile.toml")
	if got := d.Origins[0].Since(d.Sheet); len(got) != 0 || d.Sheet.Reading(worksheets.Bicep) != units.Known(14*units.Inch) {
		t.Errorf("taken again, %v has changed", got)
	}
}

// Nothing and a length of nothing are two things.
func TestALengthOfNothingHasChangedSinceNothing(t *testing.T) {
	var s, from worksheets.Sheet
	from.Set(worksheets.TakeOffFront, "0")
	if got := (worksheets.Origin{Section: worksheets.PatternSection, Sheet: from}).Since(s); !slices.Equal(got, []worksheets.Key{worksheets.TakeOffFront}) {
		t.Errorf("changed: %v", got)
	}
}

// The origins of a sheet are known as long as it is open, whatever is saved; those
// that it has not any more are no longer its own.
func TestOriginsOutliveASave(t *testing.T) {
	t.Chdir(t.TempDir())
	write(t, "odile.toml", "[body]\nbicep=\"14\"\n")
	write(t, "coat.toml", "[about]\nbody_from=\"odile.toml\"\n[body]\nbicep=\"13\"\n")
	d := load(t, "coat.toml")
	for _, bust := range []string{"39", "40"} {
		d.Sheet.Set(worksheets.Bust, bust)
		if _, err := d.Save(); err != nil {
			t.Fatal(err)
		}
		if len(d.Origins) != 1 || !d.Origins[0].IsOf(d.Sheet) || !slices.Equal(d.Origins[0].Since(d.Sheet), []worksheets.Key{worksheets.Bicep}) {
			t.Fatalf("saved with a bust of %s, its origins are %+v", bust, d.Origins)
		}
	}
	d.Sheet.Set(worksheets.BodyFrom, "tamsel.toml")
	if d.Origins[0].IsOf(d.Sheet) {
		t.Error("it is of a sheet that was taken from another")
	}
}

// No name leads out of the folder, or to the sheet itself, and what cannot be read
// is left out.
func TestOriginsStayInTheFolder(t *testing.T) {
	t.Chdir(t.TempDir())
	os.Mkdir("in", 0o755)
	os.Mkdir("in/folder.toml", 0o755)
	for name, text := range map[string]string{"secret.toml": "[body]\nbust=\"1\"\n", "in/notes.txt": "[body]\nbust=\"1\"\n", "in/broken.toml": "[body\n"} {
		os.WriteFile(name, []byte(text), 0o644)
	}
	for _, from := range []string{"../secret.toml", "notes.txt", "broken.toml", "folder.toml", "sheet.toml", "gone.toml", "..", "", "\\u0000.toml"} {
		os.WriteFile("in/sheet.toml", []byte("[about]\nbody_from = \""+from+"\"\n[body]\nbust=\"2\"\n"), 0o644)
		d, err := worksheets.Load("in/sheet.toml")
		if err != nil {
			t.Fatal(err)
		}
		if len(d.Origins) != 0 {
			t.Errorf("%q was followed", from)
		}
	}
}
