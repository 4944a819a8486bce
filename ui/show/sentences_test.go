package show

import (
	"math/rand/v2"
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/ui/tracing"
	"capscye/ui/wording"
)

// Whatever a sheet says, what is heard of it is sentences: each ends as one, and has
// none of the signs that a reader spells out, nor columns.
func TestSentencesCanBeHeard(t *testing.T) {
	rnd := rand.New(rand.NewPCG(20261126, 1))
	for i := range 100 {
		d := props.RandomDocument(rnd)
		r := report.Reckon(d, props.SomeDay, 0)
		said, steps := Sentences(r, i%4 == 0), tracing.Sentences(r)
		props.Heard(t, said.Text())
		props.Heard(t, steps.Text())
	}
	for i := range props.Plans {
		r := props.Planned(t, i)
		said, steps := Sentences(r, true), tracing.Sentences(r)
		props.Heard(t, said.Text())
		props.Heard(t, steps.Text())
	}
}

// The verdict comes first, and of each example it is that of show without the flag.
func TestTheVerdictIsTheFirstLine(t *testing.T) {
	for _, args := range [][]string{{"show"}, {"show", "--sentences"}, {"trace"}, {"trace", "--sentences"}} {
		for name, want := range map[string]string{"choir-blouse": "Ready to trace.\n", "archive-coat": "Check this first: "} {
			if _, out, _ := run("", append(args, props.Example(name))...); !strings.HasPrefix(out, want) {
				t.Errorf("%v of %s begins\n%.100s", args, name, out)
			}
		}
	}
}

// What is for programs is not for the ear.
func TestSentencesGoWithNoJSON(t *testing.T) {
	for _, command := range []string{"show", "trace"} {
		if status, out, errs := run("", command, "--sentences", "--json", props.Example("choir-blouse")); status != 2 || out != "" || !strings.Contains(errs, "not both") {
			t.Errorf("%s: status %d, %s", command, status, errs)
		}
	}
}

// What the last step says before the cloth is cut is not said once more behind it.
func TestCautionsAreHeardOnce(t *testing.T) {
	_, out, _ := run("", "trace", "--sentences", props.Example("choir-blouse"))
	for _, c := range wording.Cautions {
		if n := strings.Count(out, c); n != 1 {
			t.Errorf("%d times: %s", n, c)
		}
	}
}
