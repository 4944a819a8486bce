package worksheets_test

import (
	"errors"
	"flag"
	"os"
	"runtime/debug"
	"strings"
	"testing"
	"unicode"

	"capscye/worksheets"
)

// The random sheets are the same in every run, and a failure leaves no file
// behind; -rapid.seed on the command line still draws others.
func init() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(400) // thousands of sheets are made, and none is kept
	}
	draws := "40"
	if os.Getenv("CAPSCYE_TEST_ALL") != "" {
		draws = "100"
	}
	for name, value := range map[string]string{"rapid.seed": "20261125", "rapid.nofailfile": "true", "rapid.checks": draws} {
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
}

// file joins the lines of a worksheet.
func file(lines ...string) string { return strings.Join(lines, "\n") + "\n" }

// decode opens a worksheet that must open.
func decode(t testing.TB, source string) *worksheets.Document {
	t.Helper()
	d, err := worksheets.Decode("blouse.toml", []byte(source))
	if err != nil {
		t.Fatalf("cannot open %q: %v", source, err)
	}
	return d
}

// refused opens a worksheet that must not open.
func refused(t testing.TB, source []byte) *worksheets.FileError {
	t.Helper()
	d, err := worksheets.Decode("blouse.toml", source)
	var fault *worksheets.FileError
	if !errors.As(err, &fault) {
		t.Fatalf("error %v of type %T, want a *FileError", err, err)
	}
	if d != nil {
		t.Errorf("a document came with the error %v", err)
	}
	return fault
}

// encode is the file that a document would be saved as.
func encode(t testing.TB, d *worksheets.Document) (out string, lost bool) {
	t.Helper()
	b, lost, err := d.Encode()
	if err != nil {
		t.Fatalf("cannot encode: %v", err)
	}
	return string(b), lost
}

// messages are the errors of some problems.
func messages(problems []worksheets.Problem) []string {
	var all []string
	for i := range problems {
		all = append(all, problems[i].Error())
	}
	return all
}

// acts tells whether a text would do something to a terminal besides standing
// in it: control characters, and those that turn the direction of writing.
func acts(s string) bool {
	return strings.ContainsFunc(s, func(r rune) bool {
		return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || r == '\u2028' || r == '\u2029'
	})
}

// exampleSource is a built-in worksheet as the text of its file.
func exampleSource(t testing.TB, name string) string {
	t.Helper()
	return string(readFile(t, "examples/"+name+".toml"))
}

func readFile(t testing.TB, path string) []byte {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return b
}
