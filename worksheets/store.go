package worksheets

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
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
	if d.ReadOnly == "" && writeProtected(info) {
		d.ReadOnly = "the file is write-protected"
	}
	return d, nil
}

// writeProtected tells that the owner has locked the file. Renaming a new
// version over it would work all the same, and would not be what was meant.
func writeProtected(info fs.FileInfo) bool { return info.Mode().Perm()&0o200 == 0 }

// Read reads a worksheet from a stream; name is for messages.
func Read(name string, from io.Reader) (*Document, error) {
	source, err := io.ReadAll(io.LimitReader(from, MaxBytes+1))
	if err != nil {
		return nil, &FileError{File: name, Reason: err.Error(), Want: "a worksheet"}
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
	return readRegular(path, MaxBytes+1)
}

// readRegular reads a regular file, and no more of it than so many bytes.
func readRegular(path string, most int64) ([]byte, fs.FileInfo, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, nil, named(path, err)
	}
	if !info.Mode().IsRegular() {
		return nil, nil, &FileError{File: path, Reason: "it is a " + kindOf(info), Want: "a file"}
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, named(path, err)
	}
	defer f.Close()
	room := min(info.Size(), most) + bytes.MinRead // with which it need not grow
	source := bytes.NewBuffer(make([]byte, 0, room))
	_, err = source.ReadFrom(io.LimitReader(f, most))
	return source.Bytes(), info, err
}

// named is an error about a file, its name made harmless.
func named(path string, err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		return &fs.PathError{Op: at.Op, Path: Printable(path), Err: at.Err}
	}
	return err
}

func kindOf(info fs.FileInfo) string {
	if info.IsDir() {
		return "folder"
	}
	return "device or pipe"
}

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
	on, _, err := readBounded(d.name)
	exists := err == nil
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return "", err
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
	if exists && (lost || changed) {
		if backup, err = keepBeside(d.name, "before", on); err != nil {
			return "", err
		}
	}
	if !exists || !bytes.Equal(on, out) {
		if err := WriteFile(d.name, out); err != nil {
			return backup, err
		}
	}
	return backup, d.reread(out)
}

// reread takes the bytes just written as what was read.
func (d *Document) reread(out []byte) error {
	var again Document
	if e := d.encoded; e != nil && bytes.Equal(e.read.source, out) { // it was read already
		again = *e.read
	} else {
		read, err := Decode(d.name, out)
		if err != nil {
			return err
		}
		again = *read
	}
	again.Origins = d.Origins
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
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return about(path, err)
	}
	if err := fill(f, out); err != nil {
		return about(path, errors.Join(err, os.Remove(path)))
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// KeepBeside writes what the sheet says to a file beside its own, and returns
// its name.
func (d *Document) KeepBeside() (string, error) {
	out, _, err := d.Encode()
	if err != nil {
		return "", err
	}
	return keepBeside(d.name, "mine", out)
}

// fill writes, syncs and closes.
func fill(f *os.File, content []byte) error {
	_, err := f.Write(content)
	return errors.Join(err, f.Sync(), f.Close())
}

// WriteFile replaces a file by a new version of it, or makes it: at any moment
// it is either the old or the new one. A new file gets the permissions that the
// person's umask leaves.
func WriteFile(path string, content []byte) error { return writeFile(path, content, 0o666) }

// writeFile is [WriteFile], with the permissions that a new file gets before the
// umask.
func writeFile(path string, content []byte, perm fs.FileMode) error {
	path = behindLinks(path)
	sweepAside(path)
	info, missing := os.Stat(path)
	if missing == nil && hasOtherNames(info) {
		return writeInPlace(path, content)
	}
	f, err := createAside(path, perm)
	if err != nil {
		return about(path, err)
	}
	aside := f.Name()
	if missing == nil {
		if keepOwner(f, info) != nil { // only somebody else could give it away
			if err := errors.Join(f.Close(), os.Remove(aside)); err != nil {
				return about(path, err)
			}
			return writeInPlace(path, content)
		}
		err = f.Chmod(info.Mode().Perm())
	}
	err = errors.Join(err, fill(f, content))
	if err == nil {
		err = os.Rename(aside, path)
	}
	if err != nil {
		return about(path, errors.Join(err, os.Remove(aside)))
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// writeInPlace writes a file that has other names, which must not be left
// behind, or another owner: what it held lies beside it until the new version is
// on disk, and goes back into it where that is impossible.
func writeInPlace(path string, content []byte) error {
	before, _, err := readRegular(path, math.MaxInt64)
	if err != nil {
		return err
	}
	beside, err := keepBeside(path, "before", before)
	if err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_TRUNC, 0)
	if err != nil {
		return about(path, errors.Join(err, os.Remove(beside)))
	}
	if err = fill(f, content); err != nil {
		if os.WriteFile(path, before, 0) != nil {
			return fmt.Errorf("%w; what it held is in %s", about(path, err), beside)
		}
		return about(path, errors.Join(err, os.Remove(beside)))
	}
	return os.Remove(beside)
}

// about makes an error speak of the worksheet instead of the file aside, which
// the person never heard of.
func about(path string, err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		return &fs.PathError{Op: "write", Path: Printable(path), Err: at.Err}
	}
	return err
}

// behindLinks is the file that a symbolic link stands for, there or not.
func behindLinks(path string) string {
	for range 40 { // as many as Linux follows
		target, err := os.Readlink(path)
		if err != nil {
			return path
		}
		if !filepath.IsAbs(target) {
			target = filepath.Join(filepath.Dir(path), target)
		}
		path = target
	}
	return path
}

// syncFolder makes the rename last. By then the file is written: a file system
// that cannot sync a folder, or a folder that may not be read, is no failure.
func syncFolder(folder string) {
	if f, err := os.Open(folder); err == nil {
		_ = f.Sync()
		_ = f.Close()
	}
}
