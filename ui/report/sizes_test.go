package report_test

import (
	"strings"
	"testing"

	"capscye/calc"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

// A width that falls while sizes rise is doubted, by name and figure; nothing else is.
func TestAWidthThatFallsIsDoubted(t *testing.T) {
	fall := func(change func(s worksheets.Sheet) worksheets.Sheet) string {
		d, err := worksheets.Example("market-smock")
		if err != nil {
			t.Fatal(err)
		}
		d.Sheet = change(d.Sheet)
		text := ""
		for _, f := range report.Reckon(d, props.SomeDay, 0).Findings {
			if f.Code == calc.SizesFall {
				text += f.Text
				if few := f.Few(); !strings.HasSuffix(few, ", the smaller") || !strings.Contains(few, " is less than that of size ") {
					t.Errorf("in a few words: %q", few)
				}
			}
		}
		return text
	}
	with := func(i int, k worksheets.Key, text string) func(worksheets.Sheet) worksheets.Sheet {
		return func(s worksheets.Sheet) worksheets.Sheet { return s.WithSize(i, s.Sizes[i].With(k, text)) }
	}
	const slip = "The sleeve width of size 18 is less than that of size 16, the smaller: 15 1/4 and 15 1/2 in; measure both again."
	for name, c := range map[string]struct {
		change func(worksheets.Sheet) worksheets.Sheet
		want   string
	}{
		"as measured":     {func(s worksheets.Sheet) worksheets.Sheet { return s }, ""},
		"a smaller width": {with(0, worksheets.SleeveWidth, "15 1/4"), slip},
		"the same width":  {with(0, worksheets.SleeveWidth, "15 1/2"), ""},
		"another in hand": {func(s worksheets.Sheet) worksheets.Sheet {
			return with(0, worksheets.SleeveWidth, "15 1/4")(s).TakeInHand(1)
		}, slip},
		"a cap that is lower": {with(0, worksheets.CapHeight, "4"), ""},
		"a dart taken off":    {func(s worksheets.Sheet) worksheets.Sheet { return with(0, worksheets.TakeOffFront, "1")(s) }, "The bodice front width of size 18 is less than that of size 16, the smaller: 11 and "},
		"names that tell no order": {func(s worksheets.Sheet) worksheets.Sheet {
			s = with(0, worksheets.SleeveWidth, "15 1/4")(s)
			return with(0, worksheets.ChartBust, "")(with(0, worksheets.PatternSize, "tall")(s))
		}, ""},
	} {
		if got := fall(c.change); got != c.want && !(c.want != "" && strings.HasPrefix(got, c.want)) {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}
