package sizes

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/ui/show"
	"capscye/worksheets"
)

func TestSizesAsPrinted(t *testing.T) {
	for _, form := range []string{"text", "sentences"} {
		t.Run(form, func(t *testing.T) {
			args := []string{"sizes", props.Example("market-smock")}
			if form != "text" {
				args = append(args, "--"+form)
			}
			status, out, errs := run("", args...)
			if status != 0 || errs != "" {
				t.Errorf("status %d, %s", status, errs)
			}
			if form == "sentences" {
				props.Heard(t, out)
			}
			golden.RequireEqual(t, out)
		})
	}
}

// throughout are the keys of sleeve and bodice that are the pattern's, not a size's.
var throughout = []string{"sleeve.length", "sleeve.style", "sleeve.measured", "sleeve.allowance",
	"bodice.measured", "bodice.allowance", "bodice.crossings", "bodice.dart_front", "bodice.dart_back"}

// randomSizes are a sheet with up to four sizes besides the one in hand, and the sheets
// that have each of these alone, made without the code that is tested: key by key.
func randomSizes(rnd *rand.Rand) (d *worksheets.Document, alone []worksheets.Sheet) {
	d = props.RandomDocument(rnd)
	d.Sheet.Set(worksheets.PatternSize, "in hand")
	whole := d.Sheet
	for i := range rnd.IntN(5) {
		from := props.RandomDocument(rnd).Sheet
		one, z := whole, worksheets.Size{}
		for _, k := range worksheets.Keys() {
			table, _, _ := strings.Cut(k.Path(), ".")
			if !slices.Contains([]string{"pattern", "sleeve", "bodice"}, table) || slices.Contains(throughout, k.Path()) {
				continue
			}
			text := from.Text(k)
			if k == worksheets.PatternSize {
				text = fmt.Sprint(14 + 2*i)
			}
			z = z.With(k, text)
			one.Set(k, text)
		}
		d.Sheet = d.Sheet.WithSize(i, z)
		alone = append(alone, one)
	}
	return d, alone
}

// Every size is what a worksheet is that has this size alone, to the last key of the JSON.
func TestEverySizeIsThatOfItsOwnWorksheet(t *testing.T) {
	rnd := rand.New(rand.NewPCG(15, 1))
	compared := 0
	sheets := props.OfMany(130, 400)
	for range sheets {
		d, alone := randomSizes(rnd)
		all := Of(report.Reckon(d, props.SomeDay, 0))
		if len(all) != 1+len(alone) || !all[0].InHand || all[0].Name != "in hand" {
			t.Fatalf("%d sizes of %d", len(all), 1+len(alone))
		}
		for i, sheet := range alone {
			want := show.SheetOf(report.Reckon(&worksheets.Document{Sheet: sheet}, props.SomeDay, 0), false)
			got := show.SheetOf(all[i+1].Report, false)
			if !reflect.DeepEqual(got, want) || all[i+1].InHand || all[i+1].Name != sheet.Text(worksheets.PatternSize) {
				t.Fatalf("size %s of\n%+v\nis\n%+v\nwant\n%+v", all[i+1].Name, d.Sheet, got, want)
			}
			compared++
		}
	}
	if compared < sheets {
		t.Errorf("only %d sizes were compared", compared)
	}
}

// The JSON has the size in hand first, as show has it, and every key of show for each; the
// exit status is that of the size in hand.
func TestJSONOfSizes(t *testing.T) {
	t.Chdir(t.TempDir())
	smock := props.Read(t, props.Example("market-smock"))
	unplanned := strings.Replace(smock, "front             = \"12 1/2\"", "", 1)
	stopped := strings.Replace(smock, "width = \"15 1/2\"", "width = \"wide\"", 1)
	for name, c := range map[string]struct {
		source string
		status int
	}{"smock": {smock, 0}, "hand-lacks": {unplanned, 1}, "another-unreadable": {stopped, 0}} {
		os.WriteFile(name+".toml", []byte(c.source), 0o644)
		status, out, _ := run("", "sizes", "--json", name+".toml")
		wantStatus, shown, _ := run("", "show", "--json", name+".toml")
		var list []map[string]any
		var one map[string]any
		if err := json.Unmarshal([]byte(out), &list); err != nil || json.Unmarshal([]byte(shown), &one) != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if status != c.status || wantStatus != c.status || len(list) != 3 {
			t.Fatalf("%s: status %d and %d, %d sizes", name, status, wantStatus, len(list))
		}
		for i, want := range []string{"20", "18", "16"} {
			if list[i]["size"] != want || list[i]["in_hand"] != (i == 0) {
				t.Errorf("%s: %v, %v", name, list[i]["size"], list[i]["in_hand"])
			}
			delete(list[i], "size")
			delete(list[i], "in_hand")
			if told := JSONKeys(); len(told) != 2 || told[0].Path != "size" || told[1].Path != "in_hand" {
				t.Errorf("told are %v", told)
			}
			for key := range one {
				if _, ok := list[i][key]; !ok {
					t.Errorf("%s: size %s has no %s", name, want, key)
				}
			}
		}
		if !reflect.DeepEqual(list[0], one) {
			t.Errorf("%s: the size in hand is not what show prints", name)
		}
	}
}

func TestCallsThatAreWrong(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, args := range [][]string{{"sizes"}, {"sizes", "a.toml", "b.toml"}, {"sizes", "gone.toml"}, {"sizes", "--json", "--sentences", "gone.toml"}} {
		if status, out, errs := run("", args...); status != 2 || out != "" || errs == "" {
			t.Errorf("%v: status %d, %q, %q", args, status, out, errs)
		}
	}
	if status, out, _ := run(props.Read(t, props.Example("market-smock")), "sizes", "-"); status != 0 || !strings.HasPrefix(out, "Market smock") {
		t.Errorf("standard input: status %d\n%s", status, out)
	}
}

// said is what is said under a smock that was changed.
func said(t *testing.T, pairs ...string) string {
	t.Helper()
	source := strings.NewReplacer(pairs...).Replace(props.Read(t, props.Example("market-smock")))
	d, err := worksheets.Decode("smock.toml", []byte(source))
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(Comparison(Of(report.Reckon(d, props.SomeDay, 0))), "\n")
}

// What is said under the sizes is at most three sentences and the practice, and chooses
// none.
func TestWhatIsSaidOfTheSizes(t *testing.T) {
	for _, c := range []struct{ change, want, not []string }{
		{nil, []string{"No size has a stop.", "Size 20 needs the least pivot: at most 3/4 in a side.", "The high bust says size 18: its chart gives a high bust of 42 in."}, []string{"so far", "Copy"}},
		{[]string{`armhole = "alter"`, `armhole = "keep"`, `bicep = "2"`, `bicep = "9"`}, []string{"Every size has a stop, or an answer is missing."}, []string{"pivot"}},
		{[]string{`width = "15 1/2"`, ""}, []string{"Sizes 20 and 18 have every answer and no stop."}, nil},
		{[]string{`width = "15 1/2"`, "", "width         = \"16\"\n", ""}, []string{"Only size 20 has every answer and no stop."}, []string{"least"}},
		{[]string{`high_bust   = "41 1/2"`, ""}, []string{"Measure the high bust too: it says which size fits the shoulders."}, nil},
		{[]string{`high_bust   = "41 1/2"`, `high_bust = "45"`}, []string{"The bust is less than 2 in (5 cm) larger than the high bust, so it says size 20: its chart gives a bust of 46 in."}, nil},
		{[]string{"chart_bust", "other_bust", "chart_high_bust", "other_high_bust"}, []string{"Copy the bust and high bust of each size from the pattern's chart: then the high bust says a size."}, nil},
		{[]string{"chart_high_bust", "other_high_bust"}, []string{"The high bust says size 16: its chart gives a bust of 42 in."}, []string{"so far", "Copy"}},
		{[]string{`chart_high_bust = "42"`, "", `chart_high_bust = "40 1/2"`, ""}, []string{"The high bust says size 16 so far: its chart gives a bust of 42 in. Copy the high bust of sizes 18 and 16 from the chart too."}, nil},
		{[]string{`chart_bust      = "44"`, "", `chart_high_bust = "42"`, ""}, []string{"The high bust says size 16 so far: its chart gives a high bust of 40 1/2 in. Copy the high bust of size 18 from the chart too."}, nil},
		{[]string{"chart_high_bust", "other_high_bust", `chart_bust      = "42"`, ""}, []string{"The high bust says size 18 so far: its chart gives a bust of 44 in. Copy the bust of size 16 from the chart too."}, nil},
		{[]string{"\nbust        = \"46\"", "", "bicep       = \"16\"", ""}, []string{"Measure the bust too: beside the high bust it says which size fits."}, []string{"pivot:", "0 in"}}, // nothing is asked
		{[]string{`width         = "16 1/2"`, `width = "15"`, `width         = "16"`, `width = "15 1/4"`}, []string{"Size 16 needs the least pivot, at most 1 in a side, and of those the least slide, at most 1/4 in."}, nil},
		{[]string{`width         = "16 1/2"`, `width = "15"`}, []string{"Size 18 needs the least pivot, at most 1 in a side, and no slide."}, nil},
	} {
		got := said(t, c.change...)
		if strings.Count(got, "\n") > 3 || !strings.HasSuffix(got, practice) || strings.Contains(strings.TrimSuffix(got, practice), "take") {
			t.Errorf("%q:\n%s", c.change, got)
		}
		for _, want := range c.want {
			if !strings.Contains(got, want) {
				t.Errorf("%q: %q is not said in\n%s", c.change, want, got)
			}
		}
		for _, not := range c.not {
			if strings.Contains(strings.TrimSuffix(got, practice), not) {
				t.Errorf("%q: %q is said in\n%s", c.change, not, got)
			}
		}
	}
	smock, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	if got := Comparison(Of(report.Reckon(smock, props.SomeDay, 0))); len(got) != 1 || got[0] != "No other size of this pattern is measured yet." {
		t.Errorf("%q", got)
	}
}

// A size that cannot be planned says what is missing; up to twenty are shown, four abreast.
func TestManySizes(t *testing.T) {
	d, err := worksheets.Example("market-smock")
	if err != nil {
		t.Fatal(err)
	}
	for i := range 23 {
		d.Sheet = d.Sheet.WithSize(i, worksheets.Size{}.With(worksheets.PatternSize, fmt.Sprintf("number %d", i)))
	}
	all := Of(report.Reckon(d, props.SomeDay, 0))
	if len(all) != 1+worksheets.MostSizes {
		t.Errorf("%d sizes", len(all))
	}
	out := text(all)
	if !strings.Contains(strings.Join(strings.Fields(out), " "), "number 7 Answers missing: sleeve width, bodice front width, bodice back width.") || strings.Count(out, "Sleeve needs") != 6 {
		t.Errorf("%s", out)
	}
	if strings.Contains(out, "nothing") {
		t.Errorf("what is not known is said to be nothing:\n%s", out)
	}
	for _, line := range strings.Split(out, "\n") {
		if len([]rune(line)) > 80 {
			t.Errorf("%d wide: %q", len([]rune(line)), line)
		}
	}
}

// A size that has not changed is not reckoned again.
func TestASizeIsReckonedOnce(t *testing.T) {
	d, err := worksheets.Example("market-smock")
	if err != nil {
		t.Fatal(err)
	}
	plans := 0
	k := report.Reckoner{Today: props.SomeDay, Did: func(w report.Work) {
		if w == report.ReckonedPlan {
			plans++
		}
	}}
	all := Of(k.Reckon(d, 0))
	if plans != 3 {
		t.Errorf("%d plans for three sizes", plans)
	}
	d.Sheet = d.Sheet.WithSize(1, d.Sheet.Sizes[1].With(worksheets.SleeveWidth, "15 5/8"))
	r := k.Reckon(d, 0)
	plans = 0
	if again := Of(r, all...); plans != 1 || again[2].Report.Sheet.Text(worksheets.SleeveWidth) != "15 5/8" {
		t.Errorf("%d plans for one that has changed", plans)
	}
}

// However fine the ruler, and whatever size is in hand, no amount of the table is cut.
func TestNoAmountOfASizeIsCut(t *testing.T) {
	for _, ruler := range []string{"1/16 in", "1/32 in", "1/64 in"} {
		d, err := worksheets.Example("market-smock")
		if err != nil {
			t.Fatal(err)
		}
		for k, text := range map[worksheets.Key]string{worksheets.Ruler: ruler, worksheets.EaseBicep: "5 13/64", worksheets.EaseBust: "7 61/64", worksheets.PivotLimitSleeve: "63/64"} {
			if err := d.Sheet.Set(k, text); err != nil {
				t.Fatal(err)
			}
		}
		table, _, _ := strings.Cut(text(Of(report.Reckon(d, props.SomeDay, 0))), "\n\n  ")
		if strings.Contains(table, "...") || !strings.Contains(table, "63/64 + ") && ruler == "1/64 in" {
			t.Errorf("with a ruler of %s:\n%s", ruler, table)
		}
	}
}
