package show

import (
	"math/rand/v2"
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/ui/tracing"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// Whatever a sheet says, what is heard of it is sentences: each ends as one, and has
// none of the signs that a reader spells out, nor columns.
func TestSentencesCanBeHeard(t *testing.T) {
	rnd := rand.New(rand.NewPCG(20261126, 1))
	for i := range props.OfMany(36, 100) {
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

// The choir blouse has a cap of 9 and 9 1/4 in to an armhole of 17 1/2, and slides by 1/4 on
// either half: 3/4 in to ease in before and after. With a back of 8 1/2 the two are alike,
// with 8 the cap is 1/2 in too short, and nobody eases in less than nothing.
func TestACapThatIsTooShortIsSaidToBe(t *testing.T) {
	for back, want := range map[string][2]string{
		"9 1/4": {"The cap is 3/4 in longer than the armhole, to be eased in, as before.", "the armhole 18 in: 3/4 in to ease in."},
		"8 1/2": {"The cap is as long as the armhole, as before.", "the armhole 18 in: nothing to ease in."},
		"8":     {"The cap is 1/2 in shorter than the armhole, as before.", "the armhole 18 in: the cap is 1/2 in too short."},
	} {
		d, err := worksheets.Example("choir-blouse")
		if err != nil {
			t.Fatal(err)
		}
		if err := d.Sheet.Set(worksheets.CapBack, back); err != nil {
			t.Fatal(err)
		}
		r := report.Reckon(d, props.SomeDay, 0)
		said, steps := Sentences(r, false), tracing.Sentences(r)
		if !strings.Contains(said.Text(), want[0]) || !strings.Contains(steps.Text(), want[1]) {
			t.Errorf("a half-cap of %s: not %q in\n%s\nor not %q in\n%s", back, want[0], said.Text(), want[1], steps.Text())
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

// The working of a sheet says why it slides before it does the sums, to the eye and to the ear:
// a sleeve side needs 1 1/4, the limit is 1, and the bodice side needs 5/8.
func TestWorkingSaysWhyItSlides(t *testing.T) {
	_, out, _ := run("", "show", "--working", props.Example("choir-blouse"))
	props.Says(t, out, "  front slide\n      The sleeve front needs 1 1/4 and may pivot 1, which leaves 1/4. The bodice\n      front needs 5/8 and may pivot 1, which is enough.",
		"so both slide 1/4.\n      = the nearest to 0 between")
	_, out, _ = run("", "show", "--working", "--sentences", props.Example("choir-blouse"))
	props.Heard(t, out)
	props.Says(t, out, "The sleeve front needs 1 1/4 and may pivot 1, which leaves 1/4.\n", "They are sewn together, so both slide 1/4.\nfront slide: the nearest to 0 between")
}

// A way out is said as it would be asked of somebody.
func TestAWayOutIsSaidAsOneAsks(t *testing.T) {
	_, out, _ := run("", "show", "--sentences", props.Example("allotment-shirt"))
	for _, want := range []string{
		"A single change would solve this: set the ease at the bust to 1 13/16 in, instead of 3 1/2 in.",
		"A single change would solve this: let what slides too far keep its width.",
		"Worth a try: set the front share of the bust to 75 %, instead of 3/5.",
	} {
		if !strings.Contains(out, want+"\n") {
			t.Errorf("%q is not said in\n%s", want, out)
		}
	}
}
