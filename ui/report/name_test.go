package report_test

import (
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

// A worksheet without a title goes by its file, also where an answer of it is another.
func TestAWorksheetGoesByItsTitleOrItsFile(t *testing.T) {
	for want, answers := range map[string]map[worksheets.Key]string{
		"smock.toml":              {},
		"smock.toml, for Tamsel":  {worksheets.Wearer: "Tamsel", worksheets.Title: "  "},
		"Smock":                   {worksheets.Title: "Smock"},
		"Smock, for Tamsel":       {worksheets.Title: "Smock", worksheets.Wearer: "Tamsel"},
		"\\u202eSmock, for \\x1b": {worksheets.Title: "\u202eSmock", worksheets.Wearer: "\x1b"},
	} {
		var s worksheets.Sheet
		for k, text := range answers {
			s.Set(k, text)
		}
		d := worksheets.New(s)
		d.SetPath("a/folder/smock.toml")
		r := report.Reckon(d, props.SomeDay, 0)
		if got := r.Name(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
		if got := r.With(s).Name(); got != want {
			t.Errorf("with another answer %q, want %q", got, want)
		}
	}
}
