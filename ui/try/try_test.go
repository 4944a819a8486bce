package try

import (
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"capscye/ui/internal/props"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

func TestTryAsPrinted(t *testing.T) {
	for name, args := range map[string][]string{
		"two-changes": {"ease.bicep=2", "method.slide=even"},
		"range":       {"ease.bicep=1..5/1"},
		"kept":        {"method.armhole=keep"},
	} {
		t.Run(name, func(t *testing.T) {
			_, out, errs := run("", append([]string{"try", props.Example("choir-blouse")}, args...)...)
			if errs != "" {
				t.Error(errs)
			}
			golden.RequireEqual(t, out)
		})
	}
}

// The JSON of a trial holds both sheets, as show gives them, and a list of what
// changed.
func TestTryJSON(t *testing.T) {
	_, shown, _ := run("", "show", "--json", props.Example("choir-blouse"))
	_, out, _ := run("", "try", "--json", props.Example("choir-blouse"), "ease.bicep=2")
	var one struct {
		Before, After json.RawMessage
		Changed       []struct {
			What          string
			Before, After any
		}
	}
	if err := json.Unmarshal([]byte(out), &one); err != nil {
		t.Fatal(err)
	}
	var before, same any
	json.Unmarshal(one.Before, &before)
	json.Unmarshal([]byte(shown), &same)
	if a, b := marshalled(t, before), marshalled(t, same); a != b {
		t.Errorf("before is not what show gives:\n%s\n%s", a, b)
	}
	changed := map[string][2]any{}
	for _, c := range one.Changed {
		changed[c.What] = [2]any{c.Before, c.After}
	}
	// 1/4 in more is 1/8 a side, all slide: 1/4 becomes 3/8 in, 9.525 mm.
	for what, want := range map[string][2]any{
		"ease.bicep": {"1 3/4", "2"}, "need.sleeve_mm": {63.5, 69.85}, "sides.sleeve_front.slide_mm": {6.35, 9.525},
		"sides.bodice_back.pivot_mm": {9.525, 6.35},
	} {
		if changed[what] != want {
			t.Errorf("%s: %v, want %v", what, changed[what], want)
		}
	}
	if _, ok := changed["sides.sleeve_front.pivot_mm"]; ok {
		t.Error("the pivot does not change")
	}
	_, out, _ = run("", "try", "--json", props.Example("choir-blouse"), "ease.bicep=1..3/0.5")
	var list []map[string]any
	if err := json.Unmarshal([]byte(out), &list); err != nil || len(list) != 5 || list[4]["after"] == nil {
		t.Errorf("%d trials, %v", len(list), err)
	}
}

// What is listed as changed is all that differs between before and after, outlines too, and
// nothing that is the same in both; of findings it is the list of them, by what they are.
func TestAllThatDiffersIsListed(t *testing.T) {
	for _, args := range [][]string{
		{"ease.bicep=2"}, {"body.bicep="}, {"sleeve.cap_height="}, {"method.armhole=keep"}, {"about.title=Another"}, {"body.bust=50", "method.follow=hold"},
	} {
		for _, name := range []string{"choir-blouse", "archive-coat"} {
			_, out, errs := run("", append([]string{"try", "--json", props.Example(name)}, args...)...)
			var one struct {
				Before, After any
				Changed       []struct {
					What          string
					Before, After any
				}
			}
			if err := json.Unmarshal([]byte(out), &one); err != nil || errs != "" {
				t.Fatal(err, errs)
			}
			want, got := map[string]bool{}, map[string]bool{}
			differing("", one.Before, one.After, want)
			for _, c := range one.Changed {
				if _, answer := worksheets.KeyNamed(c.What); !answer {
					got[c.What] = true
				}
				if reflect.DeepEqual(c.Before, c.After) {
					t.Errorf("%s %v: %s is %v before and after", name, args, c.What, c.Before)
				}
			}
			if !reflect.DeepEqual(got, want) {
				t.Errorf("%s %v: listed are\n%v\nwhat differs is\n%v", name, args, got, want)
			}
		}
	}
}

// differing are the paths at which two JSON values differ.
func differing(path string, one, other any, paths map[string]bool) {
	a, ok := one.(map[string]any)
	b, both := other.(map[string]any)
	switch {
	case ok && both:
		for name := range a {
			differing(strings.TrimPrefix(path+"."+name, "."), a[name], b[name], paths)
		}
	case path == "findings": // whose words may differ, and their order
		if !reflect.DeepEqual(counted(one), counted(other)) {
			paths[path] = true
		}
	case !reflect.DeepEqual(one, other):
		paths[path] = true
	}
}

// counted is how often a finding is there, by what it is.
func counted(findings any) map[[3]any]int {
	count := map[[3]any]int{}
	for _, f := range findings.([]any) {
		m := f.(map[string]any)
		count[[3]any{m["level"], m["code"], m["about"]}]++
	}
	return count
}

func marshalled(t *testing.T, v any) string {
	t.Helper()
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestTryRangesAreReadInEveryWriting(t *testing.T) {
	for arg, want := range map[string]int{
		"ease.bicep=1..3/0.5": 5, "ease.bicep=1..3/1/2": 5, "ease.bicep=1 1/2..2 1/2/1/4": 5, "ease.bicep=-1..1/1": 3, "ease.bicep==-1..1/1/2": 5,
		"method.front_share_bust==40%..60%/5%": 5, "method.slide==least..even": 2,
		"ease.bicep=4 cm..6 cm/5 mm": 5, "ease.bicep=1..1/1": 1, "body.bicep=13..14/1/8 in": 9,
		"method.front_share_bust=40%..60%/5%": 5, "method.front_share_sleeve=1/4..3/4/1/8": 5, "method.slide=least..even": 2, "sleeve.style=set-in..gathered": 3,
		"method.slide=0..1/1/4": 5,
	} {
		_, out, errs := run("", "try", "--json", props.Example("choir-blouse"), arg)
		var list []any
		if err := json.Unmarshal([]byte(out), &list); err != nil || len(list) != want {
			t.Errorf("%s: %d trials, want %d: %v %s", arg, len(list), want, err, errs)
		}
	}
}

// A sign before a value changes the answer that is there, 1 3/4 in of ease and half of the
// need; another = takes the sign as part of the value.
func TestTryChangesWhatIsThere(t *testing.T) {
	for arg, want := range map[string]string{
		"ease.bicep=+1/4": "2", "ease.bicep=-1/4": "1 1/2", "ease.bicep==-1/4": "-1/4", "ease.bicep=+1 cm": "", "method.front_share_sleeve=+5 %": "55 %",
		"method.front_share_sleeve=-1/8": "3/8", "method.front_share_sleeve=-1/6": "1/3", "method.front_share_sleeve=+0.123457": "0.623457",
		"method.front_share_sleeve=+1/2": "1", "method.front_share_sleeve=-50%": "0 %", "about.notes=+1": "+1", "method.pivot_limit_sleeve=+1/8": "1 1/8",
	} {
		path, _, _ := strings.Cut(arg, "=")
		_, out, errs := run("", "try", "--json", props.Example("choir-blouse"), arg)
		var one trialJSON
		if err := json.Unmarshal([]byte(out), &one); err != nil || errs != "" {
			t.Fatal(arg, err, errs)
		}
		if i := slices.IndexFunc(one.Changed, func(c changedJSON) bool { return c.What == path }); i < 0 || want != "" && one.Changed[i].After != want {
			t.Errorf("%s: %v, want %q", arg, one.Changed[0], want)
		}
	}
}

// In a range every row says what is new against the row above, in words: by 3 in of ease
// the bust follows, 7/8 in a side for the 5/8 that it needs; from a slide of 1 1/4 in on
// nothing is left for the pivot, and a larger one is moved.
func TestARangeSaysWhatIsNewInEachRow(t *testing.T) {
	_, out, _ := run("", "try", props.Example("choir-blouse"), "ease.bicep=2..4/1")
	props.Says(t, out, "Ready to trace at 2; check from 3 to 4: the bust comes out 1 in larger than\nasked.\n", "ready\n",
		"check\n        new: bust larger than asked, bodice slides only\n        gone: bodice pivots and slides\n", "check\n")
	_, out, _ = run("", "try", props.Example("choir-blouse"), "method.slide=1..2/1/2")
	props.Says(t, out, "front slide moved", "\n")
	_, out, _ = run("", "try", props.Example("archive-coat"), "ease.waist=0..8/8")
	props.Says(t, out, "waist short")
}

// What stays wrong is said.
func TestTrySaysWhatStaysWrong(t *testing.T) {
	_, out, _ := run("", "try", props.Example("archive-coat"), "ease.bicep=+1")
	props.Says(t, out, "Check this first: at the waist", "still: check: At the waist the bodice")
}

// What is heard of changes is sentences.
func TestTrySentences(t *testing.T) {
	for _, args := range [][]string{{"ease.bicep=1..5/1"}, {"method.armhole=keep"}, {"ease.bicep=1 3/4"}, {"method.front_share_sleeve=40%..60%/5%", "about.title=a + [b] -> ~3"}} {
		_, out, errs := run("", append([]string{"try", "--sentences", props.Example("choir-blouse")}, args...)...)
		if props.Heard(t, out); errs != "" || out == "" {
			t.Errorf("%v: %s", args, errs)
		}
	}
	// 15 1/2 in of arm and ease on 13 in of pattern are 1 1/4 a side, 1 of it the limit.
	_, out, _ := run("", "try", "--sentences", props.Example("choir-blouse"), "ease.bicep=2")
	props.Says(t, out, "Finished bicep: 15 3/4 in instead of 15 1/2 in.\n", "Sleeve marks, each side: pivot 1 in and slide 3/8 in instead of pivot 1 in and slide 1/4 in.\n")
	_, out, _ = run("", "try", "--sentences", props.Example("choir-blouse"), "ease.bicep=2..3/1")
	props.Says(t, out, "Ease at the bicep: ready to trace at 2; check at 3: the bust comes out 1 in larger than asked.\n", "Ease at the bicep: 3 in.\nCheck this first: ", "Sleeve, each side, on the bicep line: pivot 1 in and slide 7/8 in.\n", "New, check: ")
}

// A range fits paper, whatever front and back differ by, and has no column of nothing.
func TestARangeFitsPaper(t *testing.T) {
	for _, name := range worksheets.Examples() {
		for _, arg := range []string{"ease.bicep=-1..40 cm/5 cm", "method.front_share_bust=10%..90%/20%", "body.bust=20..60 in/10"} {
			_, out, errs := run("", "try", props.Example(name), arg)
			for _, line := range strings.Split(out, "\n") {
				if len(line) > typeset.PrintWidth {
					t.Errorf("%s %s: %d wide: %q", name, arg, len(line), line)
				}
			}
			if errs == "" && out == "" {
				t.Errorf("%s %s prints nothing", name, arg)
			}
		}
	}
	_, out, _ := run("", "try", props.Example("archive-coat"), "ease.bicep=3..9/3")
	// An arm of 37 cm and 9 of ease on 37.4 of pattern; the front takes 2/5, so the sides differ.
	props.Says(t, out, "  value  bicep  bust  cap ease  cap height\n", "    9.0     46   114         3  ", "\n        sleeve 2.0 + 1.9 / 2.3 + 2.4; bodice 1.1 + 1.9 / 0.6 + 2.4\n")
}

// A range has a thousand values and not one more.
func TestTryBoundsARange(t *testing.T) {
	for by, want := range map[string]string{"999": "", "1000": "to at most 1000 values"} {
		_, out, errs := run("", "try", props.Example("choir-blouse"), "ease.bicep=0 mm.."+by+" mm/1 mm")
		if !strings.Contains(errs, want) || (out == "") != (want != "") {
			t.Errorf("up to %s mm: %s", by, errs)
		}
	}
}

// What becomes known, and what is known no more, has changed.
func TestTrySaysWhatBecomesKnown(t *testing.T) {
	// A bust of 39 1/2 with an ease of 3 on a pattern of 40 needs 2 1/2 in, 63.5 mm.
	folder := t.TempDir()
	source := strings.Replace(props.Read(t, props.Example("choir-blouse")), "bust        = \"39 1/2\"", "", 1)
	file := filepath.Join(folder, "sheet.toml")
	os.WriteFile(file, []byte(source), 0o644)
	for _, c := range []struct {
		file, arg   string
		before, now any
	}{
		{file, "body.bust=39 1/2", nil, 63.5}, {props.Example("choir-blouse"), "body.bust=", 63.5, nil},
	} {
		_, out, errs := run("", "try", "--json", c.file, c.arg)
		var one trialJSON
		if err := json.Unmarshal([]byte(out), &one); err != nil {
			t.Fatal(err, errs)
		}
		if i := slices.IndexFunc(one.Changed, func(c changedJSON) bool { return c.What == "need.bust_mm" }); i < 0 || one.Changed[i].Before != c.before || one.Changed[i].After != c.now {
			t.Errorf("%s: %v", c.arg, one.Changed)
		}
	}
}

// Trying touches no file, and what cannot be tried is said.
func TestTryTouchesNothingAndSaysWhatIsWrong(t *testing.T) {
	t.Chdir(t.TempDir())
	source, err := os.ReadFile(props.Example("choir-blouse"))
	if err != nil {
		t.Fatal(err)
	}
	os.WriteFile("sheet.toml", source, 0o644)
	for _, c := range []struct {
		args   []string
		status int
		errs   string
	}{
		{[]string{"ease.bicep=2"}, 0, ""},
		{[]string{"method.armhole=keep"}, 1, ""},
		{[]string{"sleeve.width="}, 1, ""},
		{[]string{}, 2, "try needs a file and a change"},
		{[]string{"ease.bicep"}, 2, `"ease.bicep" is not a change; write KEY=VALUE`},
		{[]string{"ease.arm=2"}, 2, `"ease.arm" is not a key`},
		{[]string{"ease.bicep=1/0"}, 2, `"1/0" is not a length`},
		{[]string{"ease.bicep=3..1/1"}, 2, "a range must rise"},
		{[]string{"ease.bicep=1..3/0"}, 2, "a range must rise"},
		{[]string{"ease.bicep=0..3/0.0001"}, 2, "a range must rise"},
		{[]string{"ease.bicep=1..3"}, 2, "start..end/step"},
		{[]string{"sleeve.style=a..b/c"}, 2, "is not a choice"},
		{[]string{"arm.bicep=2"}, 2, `"arm.bicep" is not a key; did you mean body.bicep or ease.bicep?`},
		{[]string{"ease.waist=+1/4"}, 2, "there is no answer yet"},
		{[]string{"method.slide=+1/8"}, 2, "method.slide: it is least, which is no length to change; write one, such as method.slide=1/2"},
		{[]string{"method.slide=some"}, 2, `method.slide: "some" is not a slide. Write it like least, even or 1 1/4`},
		{[]string{"method.follow=hold..let out"}, 2, "the words go the other way"},
		{[]string{"method.front_share_bust=60%..40%/5%"}, 2, "a range must rise"},
		{[]string{"method.front_share_bust=-60 %"}, 2, "1/2 less 60 % is below 0"},
		{[]string{"ease.bicep=2", "ease.bicep=+1/4"}, 2, "ease.bicep is given twice; give it once"},
		{[]string{"method.front_share_bust=40%..60%"}, 2, "start..end/step"},
		{[]string{"method.front_share_bust=+70%"}, 2, "1/2 and 70% together are more than 1"},
		{[]string{"ease.bicep=+1/4..+1/1/4"}, 2, "a range takes the values themselves, without +: ease.bicep=1..3/0.5"}, // and not 1/4 to 1 for the 1 3/4 there
		{[]string{"method.front_share_bust=40%..+60%/5%"}, 2, "a range takes the values themselves, without +"},
		{[]string{"ease.bicep=1..3/1", "ease.bust=1..3/1"}, 2, "only one range"},
	} {
		status, _, errs := run("", append([]string{"try", "sheet.toml"}, c.args...)...)
		if status != c.status || !strings.Contains(errs, c.errs) {
			t.Errorf("%v: status %d, want %d; %q", c.args, status, c.status, errs)
		}
	}
	if props.Read(t, "sheet.toml") != string(source) {
		t.Error("trying changed the file")
	}
}

// Another size in hand is all that was measured of it; one that was not measured is
// refused with those that were.
func TestTryAnotherSize(t *testing.T) {
	t.Chdir(t.TempDir())
	blouse := props.Read(t, props.Example("choir-blouse"))
	sizes := "\n[pattern]\nsize = \"14\"\n\n[[size]]\nname = \"16\"\n[size.sleeve]\nwidth = \"14 1/2\"\n[size.bodice]\nfront = \"10 3/4\"\nback = \"10 1/4\"\n"
	os.WriteFile("sized.toml", []byte(blouse+sizes), 0o644)
	alone := strings.NewReplacer(`width         = "13"`, `width = "14 1/2"`, `"10 1/4"`, `"10 3/4"`, `"9 3/4"`, `"10 1/4"`).Replace(blouse)
	for _, key := range []string{"cap_height", "cap_front", "cap_back", "underarm_seam", "hem_width", "armhole_front", "armhole_back",
		"corner_out_front", "corner_down_front", "corner_out_back", "corner_down_back", "side_seam"} {
		alone = strings.Replace(alone, "\n"+key+" ", "\n# "+key+" ", 1) // not measured of this size
	}
	os.WriteFile("alone.toml", []byte(alone), 0o644)
	_, want, _ := run("", "show", "--json", "alone.toml")
	status, out, errs := run("", "try", "--json", "sized.toml", "pattern.size=16")
	var got struct{ Before, After any }
	var shown any
	if json.Unmarshal([]byte(out), &got) != nil || json.Unmarshal([]byte(want), &shown) != nil || errs != "" || status != 0 {
		t.Fatalf("status %d, %s", status, errs)
	}
	for _, name := range []string{"need", "sides", "finished", "seams", "slide_band"} {
		one, other := got.After.(map[string]any)[name], shown.(map[string]any)[name]
		if !reflect.DeepEqual(one, other) {
			t.Errorf("%s is %v, and %v in a worksheet of this size alone", name, one, other)
		}
	}
	if _, out, _ := run("", "try", "sized.toml", "pattern.size=14"); !strings.Contains(out, "Nothing changes.") {
		t.Errorf("the size in hand:\n%s", out)
	}
	for _, file := range []string{"sized.toml", props.Example("choir-blouse")} {
		if status, _, errs := run("", "try", file, "pattern.size=18"); status != 2 || !strings.Contains(errs, `"18"`) || strings.Contains(errs, "choose 16") != (file == "sized.toml") {
			t.Errorf("%s: status %d, %s", file, status, errs)
		}
	}
	if props.Read(t, "sized.toml") != blouse+sizes {
		t.Error("the file was changed")
	}
}

// A share that comes to more digits than one can have is refused as it was typed.
func TestAShareWithTooManyDigits(t *testing.T) {
	d := worksheets.New(worksheets.Sheet{})
	if err := d.Sheet.Set(worksheets.FrontShareBust, "0.4567"); err != nil {
		t.Fatal(err)
	}
	_, err := trials(d, []string{"method.front_share_bust=+1/7919"})
	if want := "0.4567 and 1/7919 make a share with too many digits; write it out"; err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("%v, want %q", err, want)
	}
}

// A true minus sign takes off as a hyphen does.
func TestATrueMinusTakesOff(t *testing.T) {
	d, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	list, err := trials(d, []string{"ease.bicep=\u22121/4"})
	if err != nil || list[0].doc.Sheet.Text(worksheets.EaseBicep) != "1 1/2" {
		t.Errorf("%v, %v", list, err)
	}
}
