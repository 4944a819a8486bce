package worksheets_test

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
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

// What a killed save left is swept by the next one: of programs that are gone, and of
// an earlier one that had our number. Another's, and another sheet's, stays.
func TestTheNextSaveSweepsWhatAKilledOneLeft(t *testing.T) {
	gone := exec.Command(os.Args[0], "-test.run=^$")
	if err := gone.Run(); err != nil {
		t.Fatal(err)
	}
	dead, parent, own := gone.Process.Pid, os.Getppid(), os.Getpid()
	folder := t.TempDir()
	aside := func(name string, pid int) string {
		return write(t, filepath.Join(folder, fmt.Sprintf(".%s.%d-1.capscye-tmp", name, pid)), "half writ")
	}
	path := write(t, filepath.Join(folder, "blouse.toml"), stored)
	goes := []string{aside("blouse.toml", dead), aside("blouse.toml", own)}
	stays := []string{aside("blouse.toml", parent), aside("coat.toml", dead), aside("blouse.toml.toml", dead), aside("blouse", dead),
		write(t, filepath.Join(folder, ".blouse.toml.1x-1.capscye-tmp"), ""), write(t, filepath.Join(folder, ".blouse.toml.0-1.capscye-tmp"), "")}
	d := load(t, path)
	d.Sheet.Set(worksheets.Bicep, "14")
	if _, err := d.Save(); err != nil {
		t.Fatal(err)
	}
	for _, p := range goes {
		if _, err := os.Stat(p); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("%s is still there: %v", filepath.Base(p), err)
		}
	}
	for _, p := range stays {
		if _, err := os.Stat(p); err != nil {
			t.Error(err)
		}
	}
}
