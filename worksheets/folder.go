package worksheets

import (
	"os"
	"path/filepath"
	"strings"
	"time"
)

// Files lists what may be worksheets in a folder, by file name: the .toml files
// that are not hidden. Once loaded, [Document.Ours] tells which ones are.
func Files(folder string) ([]string, error) {
	if info, err := os.Stat(folder); err == nil && !info.IsDir() {
		return nil, &FileError{File: folder, Reason: "it is no folder", Want: "a folder"}
	}
	entries, err := os.ReadDir(folder) // in the order of their names
	if err != nil {
		return nil, named(folder, err)
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

// Ours tells that the file has a table or the version of a worksheet, and is not
// other people's TOML.
func (d *Document) Ours() bool { return d.ours }

// Written is when the file was last written, as [Load] found it; the zero time
// for a document that was not loaded.
func (d *Document) Written() time.Time { return d.written }
