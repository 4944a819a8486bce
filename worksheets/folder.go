package worksheets

import (
	"os"
	"path/filepath"
	"strings"
)

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
		if e.IsDir() || !strings.EqualFold(filepath.Ext(e.Name()), ".toml") || strings.HasPrefix(e.Name(), ".") {
			continue
		}
		paths = append(paths, filepath.Join(folder, e.Name()))
	}
	return paths, nil
}
