package try

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"capscye/ui/console"
	"capscye/ui/internal/props"
)

// FuzzTry tries any two changes on a sheet: an answer, or words about the change
// that cannot be read; never a panic, nor a sheet that is written.
func FuzzTry(f *testing.F) {
	for _, args := range [][2]string{
		{"ease.bicep=2", "method.slide=even"}, {"ease.bicep=1..3/0.5", "ease.bust=3"}, {"ease.bicep=1 1/2..2 1/2/1/4", "about.unit=cm"},
		{"about.unit=furlong", "ease.bicep=1..3/1"}, {"body.bicep=", "method.armhole=keep"}, {"ease.bicep=-1..1/1/64", "="}, {"ease.bicep", "x=1"},
		{"ease.bicep=1..99999999999/1", "ease.bicep=1../"}, {"ease.bicep=..", "ease.bicep=0..0/0"}, {"about.title=\x1b]0;x\x07\u202e", "about.wearer=\xff"},
		{"\x1b[31m=1", "body.bust=\u009b2J"}, {"body.measured_on=2026-02-30", "about.ruler=1/3"}, {"ease.bicep=1..3/1/0", "sleeve.allowance=-1"},
	} {
		f.Add(args[0], args[1], true)
		f.Add(args[0], args[1], false)
	}
	source, err := os.ReadFile(props.Example("choir-blouse"))
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, one, other string, asJSON bool) {
		args := []string{"try", "--", "-", one, other}
		if asJSON {
			args = slices.Insert(args, 1, "--json")
		}
		status, out, errs := run(string(source), args...)
		if props.Acts(out + errs) {
			t.Fatalf("%q is printed, and\n%q", errs, out)
		}
		switch {
		case status == console.ExitUnread:
			if out != "" || !strings.HasPrefix(errs, "capscye: ") || strings.Count(errs, "\n") != 1 {
				t.Fatalf("status %d, %q, and\n%q", status, errs, out)
			}
		case status != console.ExitWell && status != console.ExitUnfinished || out == "":
			t.Fatalf("status %d, %q, and\n%q", status, errs, out)
		case asJSON && !json.Valid([]byte(out)):
			t.Fatalf("no JSON:\n%s", out)
		}
	})
}
