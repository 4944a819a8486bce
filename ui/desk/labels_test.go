package desk

import (
	"testing"

	"capscye/ui/forms"
)

func TestLabelsFitTheirColumn(t *testing.T) {
	for s := range forms.StepCount {
		for _, it := range forms.Items[s] {
			if it.Heading != "" {
				continue
			}
			f, ok := forms.Fields[it.Key]
			if !ok || f.Label == "" || f.Words == "" || f.Hint == "" || len([]rune(f.Label)) >= labelWidth {
				t.Errorf("%v: field %+v", it.Key, f)
			}
		}
	}
}
