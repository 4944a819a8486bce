package worksheets

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"sort"
	"strings"
)

// ErrChanged says that the file on disk is no longer what was read: something
// else wrote it, and it was not overwritten.
var ErrChanged = errors.New("the file was changed by another program since it was read here")

// Load reads a worksheet from a file.
func Load(path string) (*Document, error) {
	source, err := readBounded(path)
	if err != nil {
		return nil, err
	}
	d, err := Decode(path, source)
	if err != nil {
		return nil, err
	}
	return d, nil
}

// Read reads a worksheet from a stream; name is for messages.
func Read(name string, from io.Reader) (*Document, error) {
	source, err := io.ReadAll(io.LimitReader(from, MaxBytes+1))
	if err != nil {
		return nil, &FileError{File: name, Reason: err.Error(), Want: "a worksheet"}
	}
	return Decode(name, source)
}

// readBounded reads a regular file and no more of it than a worksheet may have.
func readBounded(path string) ([]byte, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, &FileError{File: path, Reason: "it is a " + kindOf(info), Want: "a file"}
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, MaxBytes+1))
}

func kindOf(info fs.FileInfo) string {
	if info.IsDir() {
		return "folder"
	}
	return "device or pipe"
}

// New is a document for a sheet that has no file yet.
func New(s Sheet) *Document { return &Document{Sheet: s} }

// Path is the file that the document is saved to, "" for none yet.
func (d *Document) Path() string { return d.name }

// SetPath makes a document that has no file save to a new one.
func (d *Document) SetPath(path string) { d.name, d.source, d.places = path, nil, nil }

// Saved tells whether the file says what the sheet says, as far as is known.
func (d *Document) Saved() bool { return d.source != nil && d.Sheet.Equal(d.read) }

// Save writes the sheet to its file: aside, synced, renamed over the old one,
// folder synced, so that at any moment the file is either the old or the new
// version. Permissions and symbolic links are kept.
//
// A file that something else changed or made in the meantime is not
// overwritten; the error is [ErrChanged]. Where the file's comments cannot be
// kept, the original stays beside it and its name is returned.
func (d *Document) Save() (backup string, err error) { return d.save(false) }

// SaveOver is [Document.Save], whatever is on disk; what was there is kept
// beside the file, and its name is returned.
func (d *Document) SaveOver() (backup string, err error) { return d.save(true) }

func (d *Document) save(over bool) (backup string, err error) {
	if d.name == "" {
		return "", errors.New("the worksheet has no file name yet")
	}
	if d.ReadOnly != "" {
		return "", &FileError{File: d.name, Reason: "it is not overwritten: " + d.ReadOnly}
	}
	on, err := readBounded(d.name)
	exists := err == nil
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return "", err
	}
	if changed := exists && !bytes.Equal(on, d.source); changed && !over {
		return "", ErrChanged
	}
	out, lost, err := d.Encode()
	if err != nil {
		return "", err
	}
	if exists && (lost || !bytes.Equal(on, d.source)) {
		if backup, err = keepBeside(d.name, on); err != nil {
			return "", err
		}
	}
	if !exists || !bytes.Equal(on, out) {
		if err := writeWhole(d.name, out); err != nil {
			return backup, err
		}
	}
	return backup, d.reread(out)
}

// reread takes the bytes just written as what was read.
func (d *Document) reread(out []byte) error {
	again, err := Decode(d.name, out)
	if err != nil {
		return err
	}
	*d = *again
	return nil
}

// keepBeside writes what a file held to the first free name beside it.
func keepBeside(path string, content []byte) (string, error) {
	for n := 1; ; n++ {
		beside := fmt.Sprintf("%s.before-%d", path, n)
		f, err := os.OpenFile(beside, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
		if errors.Is(err, fs.ErrExist) && n < 1000 {
			continue
		}
		if err != nil {
			return "", err
		}
		return beside, fill(f, content)
	}
}

// fill writes, syncs and closes.
func fill(f *os.File, content []byte) error {
	_, err := f.Write(content)
	return errors.Join(err, f.Sync(), f.Close())
}

// writeWhole replaces a file by a new version of it, or makes it.
func writeWhole(path string, content []byte) error {
	if target, err := filepath.EvalSymlinks(path); err == nil {
		path = target
	}
	mode := fs.FileMode(0o644)
	if info, err := os.Stat(path); err == nil {
		mode = info.Mode().Perm()
	}
	folder := filepath.Dir(path)
	f, err := os.CreateTemp(folder, ".*.capscye-tmp")
	if err != nil {
		return err
	}
	err = errors.Join(f.Chmod(mode), fill(f, content))
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		return errors.Join(err, os.Remove(f.Name()))
	}
	return syncFolder(folder)
}

// syncFolder makes the rename last. Windows has no such thing.
func syncFolder(folder string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	f, err := os.Open(folder)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// Listed is one worksheet of a folder.
type Listed struct {
	Path string
	Name string // title or wearer
	Err  error  // why it cannot be read
}

// List finds the worksheets of a folder, by file name: the .toml files that
// have a table or a version of a worksheet, and those that cannot be read.
func List(folder string) ([]Listed, error) {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil, err
	}
	var found []Listed
	for _, e := range entries {
		if e.IsDir() || !strings.EqualFold(filepath.Ext(e.Name()), ".toml") || strings.HasPrefix(e.Name(), ".") {
			continue
		}
		path := filepath.Join(folder, e.Name())
		d, err := Load(path)
		switch {
		case err != nil:
			found = append(found, Listed{Path: path, Err: err})
		case d.isWorksheet():
			found = append(found, Listed{Path: path, Name: d.Sheet.Name()})
		}
	}
	sort.Slice(found, func(i, j int) bool { return found[i].Path < found[j].Path })
	return found, nil
}

// isWorksheet tells a worksheet from other people's TOML.
func (d *Document) isWorksheet() bool {
	for _, t := range tables() {
		if d.line(t) > 0 {
			return true
		}
	}
	return false
}

// Changed tells whether the sheet was changed since it was read.
func (d *Document) Changed() bool { return !d.Sheet.Equal(d.read) }
