// Package props is what tests lay out before they begin: sheets, folders, a day, a
// person who talks.
package props

import (
	"os"
	"path/filepath"
	"time"
)

// SomeDay is when the tests take place.
var SomeDay = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

// SourceFolder is the top of the project, "" for a test binary that was started
// elsewhere; tests leave the folder they start in.
var SourceFolder = func() string {
	folder, err := os.Getwd()
	if err != nil {
		panic(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(folder, "go.mod")); err == nil {
			return folder
		}
		if filepath.Dir(folder) == folder {
			return ""
		}
		folder = filepath.Dir(folder)
	}
}()
