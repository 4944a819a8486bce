package props

import (
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"capscye/ui/report"
	"capscye/worksheets"
)

// Bodies reads the girths of 6,068 people, in millimetres: 2012 Anthropometric
// Survey of U.S. Army Personnel, Gordon et al., technical report
// NATICK/TR-15/007 (2014), public release.
func Bodies(t *testing.T) (list []map[string]string) {
	t.Helper()
	f, err := os.Open(SourceFolder + "/testdata/ansur2-girths.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		body := map[string]string{}
		for i, name := range rows[0] {
			body[name] = row[i]
		}
		list = append(list, body)
	}
	if len(list) != 6068 {
		t.Fatalf("%d bodies, want 6068", len(list))
	}
	return list
}

// SomeBodies are they all, or every third where not everything is tried.
func SomeBodies(t *testing.T) (list []map[string]string) {
	t.Helper()
	for i, body := range Bodies(t) {
		if i%OfMany(3, 1) == 0 {
			list = append(list, body)
		}
	}
	return list
}

// RandomDocument is a sheet as somebody might have it, sensible or not.
func RandomDocument(rnd *rand.Rand) *worksheets.Document {
	odd := []string{"", "x", "1/0", "-1", "a\x1b[31m\u202e\u009b", "\"quoted\" \\ <&>", "½", "\u2028", "\U000e0001", "é", "\t\n"}
	d := worksheets.New(worksheets.Sheet{})
	for _, k := range worksheets.Keys() {
		text := odd[rnd.IntN(len(odd))]
		switch n := rnd.IntN(20); {
		case n == 0:
		case n < 4 && k.Kind() != worksheets.Choice:
			text = ""
		case k.IsLength():
			text = fmt.Sprintf("%d %d/16", 1+rnd.IntN(45), rnd.IntN(16))
		case k.Kind() == worksheets.Choice:
			text = k.Options()[rnd.IntN(len(k.Options()))]
		case k.Kind() == worksheets.Part:
			text = fmt.Sprintf("%d %%", rnd.IntN(101))
		case k.Kind() == worksheets.Count:
			text = strconv.Itoa(rnd.IntN(5))
		}
		d.Sheet.Set(k, text) // readable or not
	}
	return d
}

// ReportOf is the report of a built-in sheet.
func ReportOf(t *testing.T, name string) report.Report {
	t.Helper()
	d, err := worksheets.Example(name)
	if err != nil {
		t.Fatal(err)
	}
	return report.Reckon(d, SomeDay, 0)
}

// Plans are eight kinds of work at the table.
var Plans = []struct {
	Name, example string
	set           map[worksheets.Key]string
}{
	{"both-pieces", "choir-blouse", nil},
	{"long-and-front-unlike-back", "archive-coat", nil},
	{"bust-only", "allotment-shirt", nil},
	{"coming-in", "costume-tunic", nil},
	{"pivot-alone", "choir-blouse", map[worksheets.Key]string{worksheets.EaseBicep: "1", worksheets.Bust: ""}},
	{"slide-alone", "choir-blouse", map[worksheets.Key]string{worksheets.Slide: "1 1/4"}},
	{"bodice-kept", "choir-blouse", map[worksheets.Key]string{worksheets.Armhole: "keep", worksheets.Bust: ""}},
	{"held", "choir-blouse", map[worksheets.Key]string{worksheets.EaseBicep: "5", worksheets.Follow: "hold"}},
}

// Planned is the report of one of the [Plans].
func Planned(t *testing.T, i int) report.Report {
	t.Helper()
	d, err := worksheets.Example(Plans[i].example)
	if err != nil {
		t.Fatal(err)
	}
	for k, text := range Plans[i].set {
		if err := d.Sheet.Set(k, text); err != nil {
			t.Fatal(err)
		}
	}
	return report.Reckon(d, SomeDay, 0)
}
