package worksheets_test

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"unicode/utf8"

	"capscye/worksheets"
)

// A name may have 255 bytes on the usual file systems, and need be no text. Saving,
// keeping theirs beside and keeping mine beside work with the longest too.
func TestEveryNameThatAFileSystemTakes(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("other systems take other names")
	}
	for _, name := range []string{
		strings.Repeat("n", 250) + ".toml", strings.Repeat("é", 125) + ".toml", "x" + strings.Repeat("💩", 62) + ".TOML", strings.Repeat("\xff", 250) + ".toml",
		" ", "-x.toml", "--", "a\nb.toml", "\x1b[31m.toml", "\x7f\xc2\x9b.toml", "*?[a].toml", "two words.toml", "\u202e.toml", ".toml", "~", "$HOME.toml", "a\\b.toml",
	} {
		path := write(t, filepath.Join(t.TempDir(), name), stored)
		d := load(t, path)
		for _, links := range []int{1, 2} {
			d.Sheet.Set(worksheets.Bicep, fmt.Sprint(14+links))
			if _, err := d.Save(); err != nil {
				t.Errorf("%q, %d names: %v", name, links, err)
			}
			onDisk(t, path, strings.Replace(stored, "13 3/4", fmt.Sprint(14+links), 1))
			if err := os.Link(path, filepath.Join(filepath.Dir(path), "twin")); links == 1 && err != nil {
				t.Fatal(err)
			}
		}
		write(t, path, "# theirs\n")
		d.Sheet.Set(worksheets.Bicep, "14")
		mine, err := d.KeepBeside()
		if err != nil {
			t.Errorf("%q, mine beside: %v", name, err)
		}
		theirs, err := d.SaveOver()
		if err != nil {
			t.Fatalf("%q, theirs beside: %v", name, err)
		}
		onDisk(t, theirs, "# theirs\n")
		onDisk(t, mine, strings.Replace(stored, "13 3/4", "14", 1))
		onDisk(t, path, strings.Replace(stored, "13 3/4", "14", 1))
		if utf8.ValidString(name) && !utf8.ValidString(theirs+mine) {
			t.Errorf("%q: a character is cut in %q or %q", name, theirs, mine)
		}
	}
}
