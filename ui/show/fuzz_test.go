package show

import (
	"encoding/json"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"capscye/ui/console"
	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// FuzzShow prints any file: what can be read is JSON with the keys that every
// sheet has, and nothing that is printed steers a terminal.
func FuzzShow(f *testing.F) {
	for _, name := range worksheets.Examples() {
		source, err := os.ReadFile(props.Example(name))
		if err != nil {
			f.Fatal(err)
		}
		f.Add(source)
	}
	for _, source := range []string{
		"", "[body]\nbicep = \"99999999\"\n[ease]\nbicep = \"-1/2\"\n[sleeve]\nmeasured = \"seam\"\nwidth = \"1/64\"\n",
		"[about]\ntitle = \"\\u001b]0;x\\u0007\\u202e\\u0085\"\nwearer = \"\\U000e0001\"\nunit = \"\\u009b31m\"\n",
		"[body]\nbicep = \"\\u001b[2J\"\n\"\\u001bc\" = 1\n['\\u2028']\n", "[[fitting]]\ndate = \"\\u001b\"\nnote = \"upper arm 1/2 in too tight\\u202e\"\n",
		"[progress]\ndone = [\"\\u001b[31m\", \"sleeve-mark\"]\n", "version = 9\n", "[body\n\x1b[31m\xff", "[about]\ntitle = \"\xed\xa0\x80\"\n",
		"[method]\nslide = \"1000\"\nfront_share_bust = \"100 %\"\npivot_limit_sleeve = \"0\"\n[body]\nbust = \"40\"\n[ease]\nbust = \"3\"\n[bodice]\nmeasured = \"seam\"\nfront = \"0.0001\"\nback = \"1\"\n",
	} {
		f.Add([]byte(source))
	}
	_, out, _ := run("", "show", "--json", props.Example("choir-blouse"))
	var usual any
	if err := json.Unmarshal([]byte(out), &usual); err != nil {
		f.Fatal(err)
	}
	every := props.KeysOf(usual)
	f.Fuzz(func(t *testing.T, source []byte) {
		_, decoding := worksheets.Decode("", source)
		status, out, errs := run(string(source), "show", "--json", "-")
		if props.Acts(out + errs) {
			t.Fatalf("%q is printed, and\n%q", errs, out)
		}
		if decoding != nil {
			if status != console.ExitUnread || out != "" || errs == "" {
				t.Fatalf("status %d, %q, %s", status, errs, out)
			}
			return
		}
		var tree any
		if err := json.Unmarshal([]byte(out), &tree); err != nil || status == console.ExitUnread {
			t.Fatalf("status %d, %v:\n%s", status, err, out)
		}
		keys := props.KeysOf(tree)
		sometimes := func(path string, _ bool) bool { return strings.HasPrefix(path, ".findings[]") }
		maps.DeleteFunc(keys, sometimes)
		maps.DeleteFunc(every, sometimes)
		if !maps.Equal(keys, every) {
			t.Fatalf("the keys are %v", slices.Sorted(maps.Keys(keys)))
		}
		for _, args := range [][]string{{"show", "--working", "-"}, {"trace", "-"}} {
			if again, out, errs := run(string(source), args...); again != status || props.Acts(out+errs) {
				t.Fatalf("%v: status %d and %d, %q, and\n%q", args, again, status, errs, out)
			}
		}
	})
}
