package worksheets

import (
	"os"
	"path/filepath"
	"strings"
)

// Ending is what the names of worksheets end with, in letters of either size.
const Ending = ".toml"

// HasEnding tells that a file is named like a worksheet.
func HasEnding(name string) bool { return strings.EqualFold(filepath.Ext(name), Ending) }

// Files lists what may be worksheets in a folder, by file name: the .toml files
// that are not hidden. Once loaded, [Document.Ours] tells which ones are.
func Files(folder string) ([]string, error) {
	if info, err := os.Stat(folder); err == nil && !info.IsDir() {
		return nil, &FileError{File: folder, Reason: "it is not a folder"}
	}
	entries, err := os.ReadDir(folder) // in the order of their names
	if err != nil {
		return nil, inWords(err)
	}
	var paths []string
	for _, e := range entries {
		if e.IsDir() || !HasEnding(e.Name()) || strings.HasPrefix(e.Name(), ".") {
			continue
		}
		paths = append(paths, filepath.Join(folder, e.Name()))
	}
	return paths, nil
}
