package console

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"capscye/ui/typeset"
	"capscye/worksheets"
)

// Begun is a sheet with a file that was made for it.
func Begun(path string, sheet worksheets.Sheet) (*worksheets.Document, error) {
	d := worksheets.New(sheet)
	d.SetPath(path)
	_, err := d.Save()
	return d, err
}

// LoadNamed reads the worksheet that a person names on the command line, with or
// without the ending by which the list of a folder knows them. name is the file
// that it has or would have.
func LoadNamed(given string) (d *worksheets.Document, name string, err error) {
	d, err = worksheets.Load(given)
	if errors.Is(err, fs.ErrNotExist) && filepath.Ext(given) == "" {
		given += ".toml"
		d, err = worksheets.Load(given)
	}
	return d, given, err
}

// Exists tells whether there is anything at the path.
func Exists(path string) bool {
	_, err := os.Lstat(path)
	return err == nil // any other error will be said when something is written there
}

// DayAndTime is a moment as a person here would write it.
func DayAndTime(t time.Time) string { return t.Local().Format("2006-01-02 15:04") }

// OpenElsewhere is said to the second program on a sheet.
const OpenElsewhere = "Another capscye has this sheet open: let only one of them change it."

// FreeName is the file that a new worksheet with that name goes to, or says why
// it cannot.
func FreeName(text string) (path, refusal string) {
	path = strings.TrimSpace(text)
	if path == "" {
		return "", "A name is wanted, such as blouse.toml."
	}
	if !strings.HasSuffix(strings.ToLower(path), ".toml") {
		path += ".toml"
	}
	if Exists(path) {
		return "", typeset.Plain(path) + " exists already; choose another name."
	}
	return path, ""
}

// FileNameFor suggests a file name for a title.
func FileNameFor(title string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(title) {
		switch {
		case 'a' <= r && r <= 'z' || '0' <= r && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	const longest = 60 // of a name that is still read
	name := strings.Trim(b.String(), "-")
	if name == "" {
		name = "worksheet"
	}
	return strings.TrimRight(name[:min(len(name), longest)], "-") + ".toml"
}
