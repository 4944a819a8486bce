package roster

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"capscye/ui/internal/props"
	"capscye/ui/typeset"
	"capscye/units"
	"capscye/worksheets"
)

// The table is judged by eye once: 80 columns, no amount cut.
func TestRosterAsPrinted(t *testing.T) {
	out := ""
	t.Run("in the folder", func(t *testing.T) {
		t.Chdir(props.Classroom(t, props.Choir(t)))
		status, text, errs := run("", "roster")
		if out = text; status != 1 || errs != "" {
			t.Errorf("status %d, %s", status, errs)
		}
	})
	for _, l := range strings.Split(out, "\n") {
		if len([]rune(l)) > typeset.PrintWidth {
			t.Errorf("%d columns: %q", len([]rune(l)), l)
		}
	}
	golden.RequireEqual(t, out)
}

// A sign before an amount is explained below the table, whichever sheet has it.
func TestRosterExplainsTheSignOfAnySheet(t *testing.T) {
	sheets := map[string]string{}
	for name, bicep := range map[string]string{"a": "13.77", "b": "13 3/4"} {
		sheets[name+".toml"] = "[body]\nbicep = \"" + bicep + "\"\n[ease]\nbicep = \"2\"\n[sleeve]\nmeasured = \"seam\"\nwidth = \"13\"\n"
	}
	_, out, _ := run("", "roster", props.Classroom(t, sheets))
	if !strings.Contains(out, "~2 3/4") || !strings.Contains(out, "~ means rounded") {
		t.Errorf("the sign is not explained:\n%s", out)
	}
}

// rosterFiles are the files of a roster in its order, by its JSON.
func rosterFiles(t *testing.T, args ...string) (names []string) {
	t.Helper()
	_, out, _ := run("", append([]string{"roster", "--json"}, args...)...)
	var list []map[string]any
	if err := json.Unmarshal([]byte(out), &list); err != nil {
		t.Fatalf("%v in\n%s", err, out)
	}
	for _, one := range list {
		names = append(names, strings.TrimSuffix(filepath.Base(one["file"].(string)), ".toml"))
	}
	return names
}

// By hand: a is Odile's choir blouse and has notes, b Benedikt's work coat and a
// warning, c Yorick's alb and a stop, d adele's without a title and an answer
// missing, e cannot be read; saved one day after the other.
func TestRosterIsSortedAndFiltered(t *testing.T) {
	folder := props.Classroom(t, props.Choir(t))
	for _, c := range []struct{ args, want string }{
		{"", "a b c d e"}, {"--sort=file", "a b c d e"},
		{"--sort=wearer", "e d b a c"}, {"--sort=title", "d e c a b"},
		{"--sort=finding", "e c b d a"}, {"--sort=state", "e c d b a"}, {"--sort=saved", "d c b a e"},
		{"--level=note", "a b c d e"}, {"--level=warn", "b c d e"}, {"--level=stop", "c e"},
		{"--level=warn --sort=wearer", "e d b c"},
	} {
		got := strings.Join(rosterFiles(t, append(strings.Fields(c.args), folder)...), " ")
		if got != c.want {
			t.Errorf("%s: %s, want %s", c.args, got, c.want)
		}
	}
}

// Need, sides and findings are those of show, whatever the sheet.
func TestRosterSaysWhatShowSays(t *testing.T) {
	sheets := props.Choir(t)
	rnd := rand.New(rand.NewPCG(20261125, 3))
	for i := range 60 {
		source, _, err := props.RandomDocument(rnd).Encode()
		if err != nil {
			t.Fatal(err)
		}
		sheets[fmt.Sprintf("r%02d.toml", i)] = string(source)
	}
	folder := props.Classroom(t, sheets)
	_, out, _ := run("", "roster", "--json", folder)
	var list []map[string]any
	if err := json.Unmarshal([]byte(out), &list); err != nil {
		t.Fatal(err)
	}
	if len(list) != len(sheets)-2 {
		t.Errorf("%d sheets of %d", len(list), len(sheets)-2)
	}
	for _, one := range list {
		path := one["file"].(string)
		_, out, errs := run("", "show", "--json", path)
		if out == "" {
			if len(one) != 3 || !strings.HasPrefix(one["state"].(string), "unreadable") || "capscye: "+one["error"].(string)+"\n" != errs {
				t.Errorf("%v, and show says %s", one, errs)
			}
			continue
		}
		var shown map[string]any
		if err := json.Unmarshal([]byte(out), &shown); err != nil {
			t.Fatal(err)
		}
		for _, key := range []string{"title", "need", "sides", "findings"} {
			if !reflect.DeepEqual(one[key], shown[key]) {
				t.Errorf("%s: %s is %v, show says %v", path, key, one[key], shown[key])
			}
		}
		d, err := worksheets.Load(path)
		info, err2 := os.Stat(path)
		if err != nil || err2 != nil || one["wearer"] != d.Sheet.Text(worksheets.Wearer) || one["saved"] != info.ModTime().UTC().Format("2006-01-02T15:04:05Z") {
			t.Errorf("%s: wearer %q, saved %v; %v, %v", path, one["wearer"], one["saved"], err, err2)
		}
		if len(one) != 8 {
			t.Errorf("%d keys: %v", len(one), one)
		}
	}
}

// The amounts of the CSV read back as the millimetres of the JSON.
func TestRosterCSVIsExact(t *testing.T) {
	folder := props.Classroom(t, props.Choir(t))
	_, out, _ := run("", "roster", "--csv", folder)
	records, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	_, out, _ = run("", "roster", "--json", folder)
	var list []map[string]any
	if err := json.Unmarshal([]byte(out), &list); err != nil {
		t.Fatal(err)
	}
	if len(records) != 1+len(list) || strings.Join(records[0][:6], " ") != "file wearer title state sleeve_need sleeve_need_mm" {
		t.Fatalf("%d records, head %q", len(records), records[0])
	}
	amounts := 0
	for i, record := range records[1:] {
		cells := map[string]string{}
		for j, name := range records[0] {
			cells[name] = record[j]
		}
		if cells["file"] != list[i]["file"] || (cells["error"] != "") != (list[i]["error"] != nil) || cells["error"] != "" && cells["saved"] != "" {
			t.Errorf("record %q, object %v", record, list[i])
		}
		if cells["state"] != list[i]["state"] {
			t.Errorf("state %q, and %v", cells["state"], list[i]["state"])
		}
		check := func(name string, of any, key string) {
			cell := cells[name]
			m, _ := of.(map[string]any)
			mm, known := m[key].(float64)
			if !known {
				if cell != "" {
					t.Errorf("%s: %q where nothing is known", key, cell)
				}
				return
			}
			amounts++
			l, err := units.Parse(strings.TrimPrefix(cell, "'"), 0)
			if err != nil || l.Millimetres() != mm {
				t.Errorf("%s: %q is %v mm, want %v: %v", key, cell, l.Millimetres(), mm, err)
			}
			if beside, err := strconv.ParseFloat(cells[name+"_mm"], 64); err != nil || beside != mm {
				t.Errorf("%s: beside it stands %q, want %v", key, cells[name+"_mm"], mm)
			}
		}
		check("sleeve_need", list[i]["need"], "sleeve_mm")
		check("bust_need", list[i]["need"], "bust_mm")
		sides, _ := list[i]["sides"].(map[string]any)
		for _, side := range []string{"sleeve_front", "sleeve_back", "bodice_front", "bodice_back"} {
			check(side+"_pivot", sides[side], "pivot_mm")
			check(side+"_slide", sides[side], "slide_mm")
		}
	}
	if amounts < 20 {
		t.Errorf("only %d amounts were compared", amounts)
	}
}

// No cell is a formula, and nothing steers a terminal, in any of the three.
func TestRosterIsHarmless(t *testing.T) {
	sheets := map[string]string{"x\x1b[2J\u202e.toml": "[body\x1b\n", "=1+1.toml": "[about]\nwearer = \"=cmd()\"\ntitle = \"@x\"\n"}
	for i, text := range []string{"+1", "-1", "-1-2", "\\t=1", "a\\u001b]0;own\\u0007b\\u009bc", "\\n=1", "\\u202e", "=\\u0000"} {
		sheets[fmt.Sprintf("s%d.toml", i)] = fmt.Sprintf("[about]\ntitle = \"%s\"\nwearer = \"%s\"\n", text, text)
	}
	folder := props.Classroom(t, sheets)
	t.Chdir(folder)
	for _, args := range [][]string{{}, {"--csv"}, {"--json"}, {"--sentences"}, {"--sort", "wearer"}, {"\x1b[2J"}, {"--sort", "\x1b[2J"}} {
		_, out, errs := run("", append([]string{"roster"}, args...)...)
		for _, c := range out + errs {
			if c != '\n' && typeset.Unprintable(c) {
				t.Errorf("%v prints %U raw", args, c)
			}
		}
	}
	_, out, _ := run("", "roster", "--csv")
	records, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil || len(records) != 1+len(sheets) {
		t.Fatalf("%d records, %v", len(records), err)
	}
	for _, r := range records {
		for _, cell := range r {
			if _, err := strconv.ParseFloat(cell, 64); err == nil {
				continue // a number is what it is
			}
			if strings.HasPrefix(strings.TrimLeft(cell, " \t"), "=") || cell != "" && strings.Contains("+-@", cell[:1]) {
				t.Errorf("a spreadsheet would take %q for a formula", cell)
			}
		}
	}
	if records[1][0] != "'=1+1.toml" || records[1][1] != "'=cmd()" || records[1][2] != "'@x" {
		t.Errorf("%q", records[1])
	}
}

func TestRosterExitStatusAndMessages(t *testing.T) {
	whole := map[string]string{"a.toml": props.Read(t, props.Example("choir-blouse"))}
	all := props.Choir(t)
	folders := map[string]string{"whole": props.Classroom(t, whole), "empty": t.TempDir()}
	for _, one := range []string{"c", "d", "e"} {
		folders[one] = props.Classroom(t, map[string]string{"a.toml": whole["a.toml"], "b.toml": all[one+".toml"]})
	}
	for _, c := range []struct {
		folder, args string
		status       int
		out, errs    string
	}{
		{"whole", "", 0, "1 worksheet: 1 ready.", ""},
		{"whole", "--level=stop --json", 0, "[]\n", ""},
		{"empty", "", 0, "No worksheets.", ""},
		{"empty", "--json", 0, "[]\n", ""},
		{"empty", "--csv", 0, "file,wearer", ""},
		{"c", "", 1, "1 not to be cut", ""},
		{"d", "", 1, "adele: missing: sleeve width, ease at the bicep", ""},
		{"d", "--level=stop --csv", 1, "file,wearer", ""}, // not shown, and it counts
		{"e", "", 1, "unreadable\n    line 2", ""},
		{"whole", "--sort=age", 2, "", `--sort takes file, wearer, title, finding, state or saved, not "age"`},
		{"whole", "--level=bad", 2, "", `--level takes note, warn or stop, not "bad"`},
		{"whole", "--csv --json", 2, "", "choose --json or --csv, not both"},
		{"whole", ".", 2, "", "list one folder at a time"},
	} {
		status, out, errs := run("", append([]string{"roster", folders[c.folder]}, strings.Fields(c.args)...)...)
		if status != c.status || !strings.Contains(out, c.out) || !strings.Contains(errs, c.errs) || (c.errs == "") != (errs == "") || status == 2 && out != "" {
			t.Errorf("%s %s: status %d, want %d\n%s%s", c.folder, c.args, status, c.status, out, errs)
		}
	}
	t.Chdir(folders["whole"])
	for _, c := range []struct{ folder, errs string }{{"nowhere", "nowhere: there is no such folder"}, {"a.toml", "a.toml: it is not a folder"}} {
		if status, out, errs := run("", "roster", c.folder); status != 2 || out != "" || !strings.Contains(errs, c.errs) {
			t.Errorf("%s: status %d, %s%s", c.folder, status, out, errs)
		}
	}
}

// brokenPipe takes a few results and no more.
type brokenPipe struct{ left int }

func (p *brokenPipe) Write(b []byte) (int, error) {
	if p.left--; p.left < 0 {
		return 0, errors.New("closed")
	}
	return len(b), nil
}

func TestRosterEndsWhenNobodyReads(t *testing.T) {
	folder := props.Classroom(t, props.Choir(t))
	for _, args := range [][]string{{}, {"--json"}, {"--csv"}, {"--sentences"}} {
		for left := range 3 {
			var errs strings.Builder
			if status := runWith(nil, &brokenPipe{left}, &errs, append([]string{"roster", folder}, args...)...); status != 2 || !strings.Contains(errs.String(), "cannot write: closed") {
				t.Errorf("%v after %d: status %d, %s", args, left, status, errs.String())
			}
		}
	}
}

// What most of the folder say comes last, whatever its urgency: it tells nothing of one.
func TestWhatMostShareComesLast(t *testing.T) {
	sheets, arms := map[string]string{}, props.Read(t, props.Example("choir-blouse"))
	for i := range 5 {
		source := arms // the arms differ
		if i == 0 {
			source = strings.Replace(arms, `"1 3/4"`, `"4"`, 1) // and the bust follows
		}
		sheets[fmt.Sprintf("s%d.toml", i)] = source
	}
	folder := props.Classroom(t, sheets)
	_, out, _ := run("", "roster", "--csv", folder)
	records, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	at := slices.Index(records[0], "findings")
	if got := records[1][at]; !strings.HasPrefix(got, "bust larger than asked; bodice slides only; ") || !strings.Contains(got, "arms differ") {
		t.Errorf("of the one that is not like the others: %q", got)
	}
}

// Of a folder that is too large to be looked at beforehand a sample is, and its count comes
// at the end; each file has its row all the same.
func TestALargeFolderIsCountedAtTheEnd(t *testing.T) {
	sheets := map[string]string{}
	for i := range mostSurveyed + 1 {
		sheets[fmt.Sprintf("s%03d.toml", i)] = "[body]\nbicep = \"13\"\n"
	}
	folder := props.Classroom(t, sheets)
	_, out, _ := run("", "roster", folder)
	props.Says(t, out, "Worksheets of ", "s000.toml", "s256.toml", "257 worksheets: 257 with answers missing.")
	_, out, _ = run("", "roster", "--sentences", folder)
	if props.Heard(t, out); strings.Count(out, "Answers missing: ") != mostSurveyed+1 {
		t.Errorf("%d of them are said", strings.Count(out, "Answers missing: "))
	}
}

// What is shared is what more than half say, of three at least; of a folder that is too
// large a sample says it, which lies evenly in the folder and not at its beginning. By
// urgency a bust that is larger comes first, a sleeve that pivots and slides next, and a
// bust that only slides behind that.
func TestWhatIsSharedIsSaidByMost(t *testing.T) {
	blouse := props.Read(t, props.Example("choir-blouse"))
	larger := strings.Replace(blouse, `"1 3/4"`, `"4"`, 1) // and the bust follows
	for _, c := range []struct {
		sheets, larger int
		want           string
	}{
		{2, 1, "bust larger than asked; sleeve pivots and slides; "}, {3, 1, "bust larger than asked; bodice slides only; "},
		{3, 2, "bust larger than asked; sleeve pivots and slides; "}, {4, 2, "bust larger than asked; bodice slides only; "},
		{2 * mostSurveyed, mostSurveyed - 20, "bust larger than asked; bodice slides only; "},
	} {
		sheets := map[string]string{}
		for i := range c.sheets {
			sheets[fmt.Sprintf("s%03d.toml", i)] = blouse
			if i < c.larger {
				sheets[fmt.Sprintf("s%03d.toml", i)] = larger
			}
		}
		_, out, _ := run("", "roster", "--csv", props.Classroom(t, sheets))
		records, err := csv.NewReader(strings.NewReader(out)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if got := records[1][slices.Index(records[0], "findings")]; !strings.HasPrefix(got, c.want) {
			t.Errorf("%d of %d: %q, want %q", c.larger, c.sheets, got, c.want)
		}
	}
}

// The folder is heard as sentences, the count of it first, and any sheet that it may have.
func TestRosterSentences(t *testing.T) {
	sheets := props.Choir(t)
	rnd := rand.New(rand.NewPCG(20261126, 3))
	for i := range 60 {
		source, _, err := props.RandomDocument(rnd).Encode()
		if err != nil {
			t.Fatal(err)
		}
		sheets[fmt.Sprintf("r%02d [x] + ~y.toml", i)] = string(source)
	}
	_, out, errs := run("", "roster", "--sentences", props.Classroom(t, sheets))
	if props.Heard(t, out); errs != "" || !strings.HasPrefix(out, "65 worksheets: ") {
		t.Errorf("%s\n%.200s", errs, out)
	}
	_, out, _ = run("", "roster", "--sentences", props.Classroom(t, map[string]string{"eve.toml": "version = 1\n[about\n"}))
	props.Says(t, out, "eve: it cannot be read.\n", "open bracket about")
	// What most of a class share is said once, but for what has to be checked.
	blouse := props.Read(t, props.Example("choir-blouse"))
	larger := strings.Replace(blouse, `"1 3/4"`, `"4"`, 1) // of ease: more than the bust can follow
	_, out, _ = run("", "roster", "--sentences", props.Classroom(t, map[string]string{"a.toml": larger, "b.toml": larger, "c.toml": larger, "d.toml": blouse}))
	if strings.Count(out, "arms differ") != 1 || strings.Count(out, "bust larger than asked") != 4 {
		t.Errorf("it says\n%s", out)
	}
	props.Says(t, out, "Found in most of them: arms differ,", "Found: bust larger than asked.\n")
}

// How far a sheet is, in every state.
func TestRosterTellsStates(t *testing.T) {
	all, blouse := props.Choir(t), props.Read(t, props.Example("choir-blouse"))
	steps := props.ReportOf(t, "choir-blouse").TraceSteps()
	done := func(n int) string {
		var ids []string
		for _, s := range steps[:n] {
			ids = append(ids, strconv.Quote(s.ID()))
		}
		return blouse[:strings.Index(blouse, "[progress]")] + "[progress]\ndone = [" + strings.Join(ids, ", ") + "]\n"
	}
	folder := props.Classroom(t, map[string]string{
		"a": "", "a.toml": "version = 1\n", "b.toml": all["e.toml"], "c.toml": all["d.toml"], "d.toml": all["c.toml"], "e.toml": all["b.toml"], "f.toml": blouse,
		"g.toml": done(3), "h.toml": done(len(steps)), "i.toml": strings.Replace(blouse, `"39 1/2"`, `"39 x"`, 1),
		// 13 3/4 and 1 3/4 in for the arm, 39 1/2 and 3 in for the bust: there is nothing to alter.
		"j.toml": "version = 1\n[body]\nbicep = \"13 3/4\"\nbust = \"39 1/2\"\n[ease]\nbicep = \"1 3/4\"\nbust = \"3\"\n[sleeve]\nmeasured = \"seam\"\nwidth = \"15 1/2\"\n[bodice]\nfront = \"11\"\nback = \"10 1/4\"\n",
	})
	_, out, _ := run("", "roster", "--json", folder)
	var list []struct{ State string }
	if err := json.Unmarshal([]byte(out), &list); err != nil {
		t.Fatal(err)
	}
	want := []string{"not begun", "unreadable: line 2", "2 answers missing: sleeve width, ease at the bicep", "stop", "check", "ready", "tracing 3 of 24", "done", "unreadable: body.bust in line 16 cannot be read", "fits as it is"}
	for i, one := range list {
		if one.State != want[i] {
			t.Errorf("%d: %q, want %q", i, one.State, want[i])
		}
	}
	if len(list) != len(want) {
		t.Errorf("%d sheets", len(list))
	}
	// A sheet with no girth asks for nothing, which is not an amount of nothing.
	if _, out, _ = run("", "roster", "--csv", folder); !strings.Contains(out, "a.toml,,,not begun"+strings.Repeat(",", 21)+"note,") {
		t.Errorf("the CSV is\n%s", out)
	}
	if _, out, _ = run("", "roster", folder); !strings.Contains(out, "\n    measure the upper arm, the bust, or both\n") || !strings.Contains(strings.Join(strings.Fields(out), " "), "1 with nothing to alter.") {
		t.Errorf("the table is\n%s", out)
	}
}

// A slide that stops is no job in a folder either.
func TestASlideThatStopsIsNoJobInAFolder(t *testing.T) {
	props.Lay(t, "choir-blouse")
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	d.Sheet.Set(worksheets.EaseBicep, "17 3/4")
	if _, err := d.Save(); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"roster"}, {"roster", "--sentences"}} {
		_, out, _ := run("", args...)
		if flat := strings.Join(strings.Fields(out), " "); !strings.Contains(flat, "nobody alters a pattern so far") || strings.Contains(flat, "8 1/4") {
			t.Errorf("%v says\n%s", args, out)
		}
	}
}
