package worksheets

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"

	"capscye/worksheets/disk"
)

// ErrChanged says that the file on disk is no longer what was read: something
// else wrote it, and it was not overwritten.
var ErrChanged = errors.New("the file was changed by another program since it was read here")

// Load reads a worksheet from a file, and finds the sheets that sections of it were
// taken from.
func Load(path string) (*Document, error) {
	d, err := loadAlone(path)
	if err != nil {
		return nil, err
	}
	d.findOrigins()
	return d, nil
}

// loadAlone reads a worksheet without its origins: two sheets can be each other's.
func loadAlone(path string) (*Document, error) {
	source, info, err := readBounded(path)
	if err != nil {
		return nil, err
	}
	d, err := Decode(path, source)
	if err != nil {
		return nil, err
	}
	d.written = info.ModTime()
	if d.ReadOnly == "" && disk.Protected(info) {
		d.ReadOnly = disk.ErrProtected.Error()
	}
	return d, nil
}

// Read reads a worksheet from a stream; name is for messages.
func Read(name string, from io.Reader) (*Document, error) {
	source, err := io.ReadAll(io.LimitReader(from, MaxBytes+1))
	if err != nil {
		return nil, &FileError{File: name, Reason: err.Error()}
	}
	return Decode(name, source)
}

// ReadPipe is [Load] for what is no regular file, a pipe say: it is read once
// and cannot be saved to.
func ReadPipe(path string) (*Document, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return Read(path, f)
}

// readBounded reads a regular file and little more of it than a worksheet may have.
func readBounded(path string) ([]byte, fs.FileInfo, error) {
	source, info, err := disk.Read(path, MaxBytes+1)
	return source, info, inWords(err)
}

// inWords is an error about a file as this package has them, the file's name made
// harmless.
func inWords(err error) error {
	if errors.Is(err, disk.ErrChanged) {
		return ErrChanged
	}
	switch e := err.(type) {
	case *fs.PathError:
		return &fs.PathError{Op: e.Op, Path: Printable(e.Path), Err: e.Err}
	case *disk.KindError:
		return &FileError{File: e.Path, Reason: "it is a " + e.Kind}
	}
	return err
}

// Save writes the sheet to its file: aside, synced, renamed over the old one,
// folder synced, so that at any moment the file is either the old or the new
// version. Permissions and symbolic links are kept.
//
// A file that something else changed or made in the meantime is not
// overwritten; the error is [ErrChanged]. It is looked at until the new version is
// about to take its name. Where comments of the file, or what else a size says that is
// taken out, cannot be kept, the original stays beside it and its name is returned.
func (d *Document) Save() (backup string, err error) { return d.save(false) }

// SaveOver is [Document.Save], whatever is on disk; what was there is kept
// beside the file, and its name is returned. What comes there while that is done is
// [ErrChanged] again.
func (d *Document) SaveOver() (backup string, err error) { return d.save(true) }

func (d *Document) save(over bool) (backup string, err error) {
	if d.name == "" {
		return "", errors.New("the worksheet has no file name yet")
	}
	if d.ReadOnly != "" {
		return "", &FileError{File: d.name, Reason: "it is not overwritten: " + d.ReadOnly}
	}
	on, info, err := readBounded(d.name)
	exists := err == nil
	switch {
	case errors.Is(err, fs.ErrNotExist):
		on = nil
	case err != nil:
		return "", err
	case disk.Protected(info): // since it was read
		return "", &FileError{File: d.name, Reason: disk.ErrProtected.Error()}
	}
	changed := exists && !bytes.Equal(on, d.source)
	switch {
	case changed && !over:
		return "", ErrChanged
	case len(on) > MaxBytes:
		return "", &FileError{File: d.name, Reason: "what is there now is too large to be kept beside it"}
	}
	out, lost, err := d.Encode()
	if err != nil {
		return "", err
	}
	if exists && (lost || changed || d.cutsNotes()) {
		if backup, err = disk.PutAsideOnce(d.name, "before", on); err != nil {
			return "", inWords(err)
		}
	}
	if !exists || !bytes.Equal(on, out) {
		if err := disk.ReplaceKnown(d.name, on, out, 0o666); err != nil {
			return backup, inWords(err)
		}
	}
	return backup, d.reread(out)
}

// reread takes the bytes just written as what was read.
func (d *Document) reread(out []byte) error {
	var again Document
	if e := d.found.encoded; e != nil && bytes.Equal(e.read.source, out) { // it was read already
		again = *e.read
	} else {
		read, err := Decode(d.name, out)
		if err != nil {
			return err
		}
		again = *read
	}
	again.Origins, again.kept = d.Origins, d.keptSizes()
	*d = again
	return nil
}

// SaveCopy writes what the sheet says to a new file, written as this one is; what
// the document is saved to stays the same. A name that something has already is
// an error.
func (d *Document) SaveCopy(path string) error {
	out, _, err := d.Encode()
	if err != nil {
		return err
	}
	return inWords(disk.Create(path, out))
}

// KeepBeside writes what the sheet says to a file beside its own, and returns
// its name.
func (d *Document) KeepBeside() (string, error) {
	out, _, err := d.Encode()
	if err != nil {
		return "", err
	}
	beside, err := disk.PutAside(d.name, "mine", out)
	return beside, inWords(err)
}
