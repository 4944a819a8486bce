// Package disk puts a new version of a file in the place of the old one so that, at
// any moment and whatever is killed or full, the file is one of the two whole.
//
// It writes the new version into a draft beside the file, syncs it, renames it over
// the file and syncs the folder. Kept are the permissions of the file, its owner and
// group, symbolic links, and other names: a file that has those, or whose owner cannot
// be kept, is written in place, with what it held beside it meanwhile. Not kept are
// extended attributes, access lists, and times.
//
// A draft that a killed program left is swept away by the next save of its file.
//
// Errors name the file that the caller knows and never its draft, as a
// *[fs.PathError] of the operation "write", or a *[KindError] for what is no file.
// Names stand in them as they are: who shows them makes them harmless.
package disk

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
)

// Replace puts a new version in the place of a file, or makes it. perm is what a new
// file gets before the person's umask; one that is there keeps its own.
func Replace(path string, content []byte, perm fs.FileMode) error {
	path = BehindLinks(path)
	sweepDrafts(path)
	info, missing := os.Stat(path)
	if missing == nil && hasOtherNames(info) {
		return writeInPlace(path, content)
	}
	f, err := createDraft(path, perm)
	if err != nil {
		return ofFile(path, err)
	}
	draft := f.Name()
	if missing == nil {
		if keepOwner(f, info) != nil { // only somebody else could give it away
			if err := errors.Join(f.Close(), os.Remove(draft)); err != nil {
				return ofFile(path, err)
			}
			return writeInPlace(path, content)
		}
		err = f.Chmod(info.Mode().Perm())
	}
	err = errors.Join(err, fill(f, content))
	if err == nil {
		err = os.Rename(draft, path)
	}
	if err != nil {
		return ofFile(path, errors.Join(err, os.Remove(draft)))
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// Create makes a file under a name that nothing has yet; that something has it is
// [fs.ErrExist]. Where it cannot be filled it is taken away again.
func Create(path string, content []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return ofFile(path, err)
	}
	if err := fill(f, content); err != nil {
		return ofFile(path, errors.Join(err, os.Remove(path)))
	}
	syncFolder(filepath.Dir(path))
	return nil
}

// writeInPlace writes a file that has other names, which must not be left
// behind, or another owner: what it held lies beside it until the new version is
// on disk, and goes back into it where that is impossible.
func writeInPlace(path string, content []byte) error {
	before, _, err := Read(path, math.MaxInt64)
	if err != nil {
		return err
	}
	beside, err := PutAside(path, "before", before)
	if err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_TRUNC, 0)
	if err != nil {
		return ofFile(path, errors.Join(err, os.Remove(beside)))
	}
	if err = fill(f, content); err != nil {
		if os.WriteFile(path, before, 0) != nil {
			return fmt.Errorf("%w; what it held is in %s", ofFile(path, err), beside)
		}
		return ofFile(path, errors.Join(err, os.Remove(beside)))
	}
	return os.Remove(beside)
}

// fill writes, syncs and closes.
func fill(f *os.File, content []byte) error {
	_, err := f.Write(content)
	return errors.Join(err, f.Sync(), f.Close())
}

// ofFile makes an error speak of the file instead of its draft, which the person
// never heard of.
func ofFile(path string, err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		return &fs.PathError{Op: "write", Path: path, Err: at.Err}
	}
	return err
}

// BehindLinks is the file that a symbolic link stands for, there or not. What is no
// link stands for itself.
func BehindLinks(path string) string {
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
