package show

import (
	"encoding/json"
	"regexp"
	"slices"
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

// Every key that is printed can be looked up, and no key that is not: what is told is
// held against JSON that was printed, and something is said of each.
func TestEveryKeyOfTheJSONIsTold(t *testing.T) {
	d, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	d.Sheet.Set(worksheets.Slide, "even")
	d.Sheet.Set(worksheets.Waist, "99")     // what is wanted is a guess, a finding with ways out,
	d.Sheet.Set(worksheets.Armhole, "keep") // and one that can be accepted
	r := report.Reckon(d, props.SomeDay, 0)
	for _, c := range []struct {
		printed any
		told    []JSONKey
	}{
		{SheetOf(r, true), SheetKeys()},
		{stepsOf(r), StepKeys()},
		{Failure{"a.toml", "gone"}, FailureKeys()},
	} {
		b, err := Encode(c.printed)
		if err != nil {
			t.Fatal(err)
		}
		var tree any
		if err := json.Unmarshal(b, &tree); err != nil {
			t.Fatal(err)
		}
		var told []string
		for _, k := range c.told {
			told = append(told, k.Path)
			if !regexp.MustCompile(`^(true|null|note|[A-Z[]).+\.$`).MatchString(k.Says) {
				t.Errorf("%s: no sentence: %q", k.Path, k.Says)
			}
		}
		printed := paths(tree, "")
		slices.Sort(told)
		slices.Sort(printed)
		if printed = slices.Compact(printed); !slices.Equal(told, printed) {
			t.Errorf("told\n%v\nprinted\n%v", told, printed)
		}
	}
}

// paths are those of every key of a printed tree, as they are told.
func paths(v any, path string) (all []string) {
	switch v := v.(type) {
	case map[string]any:
		for name, child := range v {
			if path == "sides" || path == "slide_band" {
				name = "*"
			}
			if path != "" {
				name = path + "." + name
			}
			all = append(append(all, name), paths(child, name)...)
		}
	case []any:
		if path != "" {
			path += "[]"
		}
		for _, child := range v {
			all = append(all, paths(child, path)...)
		}
	}
	return all
}
