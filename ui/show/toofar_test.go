package show_test

import (
	"strings"
	"testing"

	"capscye/ui/compare"
	"capscye/ui/internal/props"
	"capscye/ui/show"
	"capscye/worksheets"
)

// A slide that stops is no job: neither amounts to mark nor what would come out is said,
// but that there are none.
func TestASlideThatStopsIsNoJob(t *testing.T) {
	r := props.ReportOf(t, "choir-blouse")
	if err := r.Sheet.Set(worksheets.EaseBicep, "17 3/4"); err != nil {
		t.Fatal(err)
	}
	r = r.With(r.Sheet)
	speech := show.Sentences(r, false)
	for face, text := range map[string]string{"show": show.Text(r, false), "show --sentences": speech.Text()} {
		if !strings.Contains(text, "nobody alters a pattern so far") {
			t.Errorf("%s does not say so:\n%s", face, text)
		}
		for _, job := range []string{"on the bicep line", "finished: ", "Finished "} {
			if strings.Contains(text, job) {
				t.Errorf("%s says %q:\n%s", face, job, text)
			}
		}
	}
}

// What would make a worksheet work that may have a slip in it is the answer that was meant,
// and nothing else; once, whatever follows from it.
func TestWhatWasMeantIsTheOffer(t *testing.T) {
	r := props.ReportOf(t, "choir-blouse")
	if err := r.Sheet.Set(worksheets.SleeveWidth, "133"); err != nil {
		t.Fatal(err)
	}
	troubles := compare.Troubles(r.With(r.Sheet))
	if len(troubles) == 0 || len(troubles[0].Offers) != 1 || troubles[0].Offers[0].Change != "sleeve width: 13 in instead of 133 in" || troubles[0].Offers[0].Try != "sleeve.width=13" {
		t.Fatalf("%+v", troubles)
	}
	for _, other := range troubles[1:] {
		if other.Finding.Guess != nil {
			t.Errorf("it is offered again: %+v", other)
		}
	}
}
