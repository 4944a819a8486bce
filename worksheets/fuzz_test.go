package worksheets_test

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"capscye/worksheets"
)

// FuzzDecode opens anything: it must not panic, must give the same bytes back
// until something changes, and must keep the rest when one answer changes.
func FuzzDecode(f *testing.F) {
	from := starts(f)
	for _, name := range slices.Sorted(maps.Keys(from)) {
		f.Add([]byte(from[name]))
	}
	for _, source := range []string{
		"version = 2\n", "[body]\nbicep = 13 3/4\n", "[body]\nbicep = \"13 3/4\nbust = \"", "[body]\nBicep = \"13\"\nbicep = 13.75\n",
		"body = {bust = \"39\", neck = 15} # x\n", "body.bust = '39'\nbody.neck = 15\n", "\"body.bicep\" = 1\n[body]\nbust = \"\"\"\n39\\\n  \"\"\"\n",
		"[[size]]\nname = 16\nsleeve.width = 13\n[size.bodice]\nfront = \"x\"\n[size.bodice.lining]\n[[size]]\n", "size = [{name = \"16\", sleeve = {width = \"13\"}}, {}]\n", "size = 3\n", "[[size.sleeve]]\n", "[[size]]\nsleeve = 1\n[[size.trim]]\n[[size.trim]]\n",
		"[[body]]\nbicep = \"13\"\n", "[body.bicep]\nx = 1\n", "[body]\r\nbicep = \"13\"\r\n", "\ufeff[body]\n", "fitting = [{date = 2026-11-20, note = \"x\"}]\n",
		"[[fitting]]\ndate = 07:32:00\nnote = 5\n", "[progress]\ndone = [\"a\", 1, [2]]\n", "x = [1.5, nan, inf, 0x1f, 1979-05-27T07:32:00Z, {a.b = []}]\n",
		"'' = 1\n['']\n'' = 2\n", "x = " + strings.Repeat("[", 40), "x = " + strings.Repeat("{a=", 40), strings.Repeat("a.", 40) + "a = 1\n",
		"x = [ # ]\n\"]\", ']', \"\"\"]\"\"\"]\n", "[about]\ntitle = \"\\u001b[31m\\u202e\"\n", "\xff\xfe[\x00", "\x00", "=", "[", "\"\"\"", "a\rb = 1",
	} {
		f.Add([]byte(source))
	}
	f.Fuzz(func(t *testing.T, source []byte) {
		d, err := worksheets.Decode("blouse.toml", source)
		if err != nil {
			var fault *worksheets.FileError
			if !errors.As(err, &fault) || fault.Error() == "" || fault.Line < 0 || fault.Line > 1+bytes.Count(source, []byte("\n")) {
				t.Errorf("error %v of type %T", err, err)
			}
			return
		}
		for _, p := range append(d.Problems(), d.Unknown()...) {
			if p.Line < 0 || p.Line > 1+bytes.Count(source, []byte("\n")) || p.Path == "" && p.Error() == "" {
				t.Errorf("line %d of %q: %v", p.Line, source, p.Error())
			}
		}
		if out, lost, err := d.Encode(); err != nil || lost || !bytes.Equal(out, source) && len(source) > 0 {
			t.Fatalf("without a change %q is written as %q, lost %v, %v", source, out, lost, err)
		}
		d.Sheet.Set(worksheets.Bicep, "13 3/4")
		if len(d.Sheet.Sizes) > 0 {
			d.Sheet = d.Sheet.WithSize(0, d.Sheet.Sizes[0].With(worksheets.CapFront, "9"))
		}
		out, lost, err := d.Encode()
		if err != nil {
			t.Fatalf("%q cannot be written with another bicep: %v", source, err)
		}
		again, err := worksheets.Decode("blouse.toml", out)
		if err != nil || !again.Sheet.Equal(d.Sheet) {
			t.Fatalf("%q with another bicep is %q, lost %v, which says %+v, %v", source, out, lost, again, err)
		}
		if got, want := withoutBicep(t, out), withoutBicep(t, source); got != want {
			t.Fatalf("%q with another bicep is %q, lost %v\n got %s\nwant %s", source, out, lost, got, want)
		}
	})
}

// withoutBicep is everything else that a file says.
func withoutBicep(t *testing.T, source []byte) string {
	t.Helper()
	all := tree(t, string(source))
	switch body := all["body"].(type) {
	case map[string]any:
		delete(body, "bicep")
		if len(body) == 0 {
			delete(all, "body")
		}
	default: // which gives way to the table that the answer needs
		delete(all, "body")
	}
	if sizes, ok := all["size"].([]any); ok { // a list on one line
		var list []map[string]any
		for _, size := range sizes {
			table, ok := size.(map[string]any)
			if !ok {
				return fmt.Sprint(all)
			}
			list = append(list, table)
		}
		all["size"] = list
	}
	if list, ok := all["size"].([]map[string]any); ok && len(list) > 0 {
		if sleeve, ok := list[0]["sleeve"].(map[string]any); ok {
			delete(sleeve, "cap_front")
			if len(sleeve) == 0 {
				delete(list[0], "sleeve")
			}
		} else { // which gives way
			delete(list[0], "sleeve")
		}
	}
	return fmt.Sprint(all)
}
