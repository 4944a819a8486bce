package props

import (
	"os"
	"strings"
	"testing"

	"capscye/worksheets"
)

// Lay copies a built-in sheet into an empty folder, as sheet.toml.
func Lay(t *testing.T, name string) {
	t.Helper()
	t.Chdir(t.TempDir())
	LayAt(t, "sheet.toml", name)
}

// Says fails unless the texts stand in what was said, in this order.
func Says(t *testing.T, out string, texts ...string) {
	t.Helper()
	rest := out
	for _, text := range texts {
		_, behind, found := strings.Cut(rest, text)
		if !found {
			t.Errorf("%q is not said, or not there, in\n%s", text, out)
			return
		}
		rest = behind
	}
}

// AnswerIn is an answer as a file has it.
func AnswerIn(t *testing.T, file string, k worksheets.Key) string {
	t.Helper()
	d, err := worksheets.Load(file)
	if err != nil {
		t.Fatal(err)
	}
	return d.Sheet.Text(k)
}

// Read is the text of a file.
func Read(t *testing.T, name string) string {
	t.Helper()
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// InlineSheet is a file in which no single value can be changed.
const InlineSheet = "# keep me\nbody = { bicep = \"13\" } # arm\n"

// Example is the file of a built-in sheet.
func Example(name string) string { return SourceFolder + "/worksheets/examples/" + name + ".toml" }

// LayAt copies an example to a file.
func LayAt(t *testing.T, path, name string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(Read(t, Example(name))), 0o644); err != nil {
		t.Fatal(err)
	}
}
