package props

import (
	"errors"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"
)

// Classroom is a folder of sheets, each saved on a day of its own.
func Classroom(t *testing.T, sheets map[string]string) string {
	t.Helper()
	folder := t.TempDir()
	for i, name := range slices.Sorted(maps.Keys(sheets)) {
		path := filepath.Join(folder, name)
		day := time.Date(2026, 11, 10+i, 12, 0, 0, 0, time.Local)
		if err := errors.Join(os.WriteFile(path, []byte(sheets[name]), 0o644), os.Chtimes(path, day, day)); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}

// Choir is a class: two examples, one who needs nothing, a stop, one that lacks
// answers, one that is no TOML, and a file that is somebody else's.
func Choir(t *testing.T) map[string]string {
	t.Helper()
	return map[string]string{
		"a.toml": Read(t, Example("choir-blouse")), "b.toml": Read(t, Example("archive-coat")),
		"c.toml": "[about]\ntitle = \"alb\"\nwearer = \"Yorick\"\n[body]\nbicep = \"20\"\n[ease]\nbicep = \"2\"\n[sleeve]\nmeasured = \"seam\"\nwidth = \"12\"\n[method]\narmhole = \"keep\"\n",
		"d.toml": "[about]\nwearer = \"adele\"\n[body]\nbicep = \"13\"\n",
		"e.toml": "[body]\nbicep = 13 3/4\n", "package.toml": "[package]\nname = \"x\"\n", "notes.txt": "bicep",
	}
}
