package console

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

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
		given += worksheets.Ending
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
const OpenElsewhere = "This worksheet is open in another capscye; change it in one place only."
