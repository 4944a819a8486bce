package try

import (
	"strings"
	"testing"

	"capscye/ui/compare"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

// Every offer on every example, made troublesome in many ways, is a whole sheet
// that reads, and keeps every answer but one.
func TestOffersChangeOneAnswer(t *testing.T) {
	for _, name := range worksheets.Examples() {
		for _, change := range []string{"body.bust=", "body.bicep=20", "body.bicep=50 cm", "method.armhole=keep", "method.follow=hold", "body.bust=30"} {
			d, err := worksheets.Example(name)
			if err != nil {
				t.Fatal(err)
			}
			list, err := trials(d, []string{change})
			if err != nil {
				t.Fatal(err)
			}
			r := report.Reckon(&list[0].doc, props.SomeDay, 0)
			for _, trouble := range compare.Troubles(r) {
				for _, o := range trouble.Offers {
					changed := 0
					for _, k := range worksheets.Keys() {
						if o.Sheet.Text(k) != r.Sheet.Text(k) {
							changed++
							if err := o.Sheet.Check(k); err != nil {
								t.Errorf("%s, %s: %v", name, change, err)
							}
						}
					}
					if changed != 1 && !strings.HasPrefix(o.Try, "pattern.size=") {
						t.Errorf("%s, %s: %q changes %d answers", name, change, o.Change, changed)
					}
				}
			}
		}
	}
}

// The command that is printed beside an offer makes the sheet of that offer, also where the
// answer that it gives is below zero: knits are worn smaller than the body, and a size may
// be called anything.
func TestThePrintedCommandMakesTheOffer(t *testing.T) {
	below := 0
	for _, name := range worksheets.Examples() {
		for _, change := range [][]string{
			{"body.bust="}, {"body.bicep=50 cm"}, {"method.armhole=keep"}, {"about.fabric=knit", "ease.bust==-2 cm", "body.bicep=38 cm"},
			{"about.fabric=knit", "about.unit=cm", "ease.bicep=1 cm", "ease.bust==-3 cm", "body.bicep=45 cm"},
		} {
			d, err := worksheets.Example(name)
			if err != nil {
				t.Fatal(err)
			}
			if len(d.Sheet.Sizes) > 0 {
				d.Sheet.Sizes[0] = d.Sheet.Sizes[0].With(worksheets.PatternSize, "-2")
			}
			list, err := trials(d, change)
			if err != nil {
				t.Fatal(err)
			}
			r := report.Reckon(&list[0].doc, props.SomeDay, 0)
			for _, trouble := range compare.Troubles(r) {
				for _, o := range trouble.Offers {
					if o.Try == "" {
						continue
					}
					tried, err := trials(&list[0].doc, []string{strings.ReplaceAll(o.Try, "'", "")}) // as a shell hands it on
					if err != nil || !tried[0].doc.Sheet.Equal(o.Sheet) {
						t.Errorf("%s, %s: %s is not %q: %v", name, change, o.Try, o.Change, err)
					}
					if strings.Contains(o.Try, "==") {
						below++
					}
				}
			}
		}
	}
	if below == 0 {
		t.Error("no offer was below zero")
	}
}
