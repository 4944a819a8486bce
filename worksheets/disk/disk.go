// Package disk puts a new version of a file in the place of the old one so that, at
// any moment and whatever is killed or full, the file is one of the two whole.
//
// It writes the new version into a draft beside the file, syncs it, renames it over
// the file and syncs the folder. Kept are the permissions of the file, its owner and
// group, symbolic links, and other names. Not kept are extended attributes, access
// lists, and times. What is found under a path is what the system finds there, also
// where the path leads through linked folders; what is no file, or is write-protected,
// is left alone.
//
// A file that has other names, whose owner cannot be kept, or over which nothing can be
// renamed because something is mounted there, is written in place. Both versions are on
// disk beside it meanwhile; where a program is killed over it, the next [Read] of the
// file finishes what it began (see journal). A draft that a killed program left is
// swept away by the next save of its file.
//
// Programs that save by this package in one folder do it one after the other, and look
// at the file between sync and rename ([ReplaceKnown]). Two things cannot be closed.
// Another program that renames a version of its own to the name in the microseconds
// between that look and the rename is not seen, and its version is gone; and one that
// has the file open, and writes in place into the old version, writes into what has no
// name any more. The same holds among programs of this package where a folder cannot be
// locked: on Windows, on some shared disks, in a folder that may not be read, or when
// the lock is not free for three seconds.
//
// Errors name the file that the caller knows and never its draft, as a
// *[fs.PathError] of the operation "write", or a *[KindError] for what is no file.
// Names stand in them as they are: who shows them makes them harmless.
package disk

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// ErrChanged says that a file does not hold what the caller knew of it. It was not
// written.
var ErrChanged = errors.New("something else wrote the file")

// ErrProtected says that the owner of a file has locked it. Renaming a new version over
// it would work all the same, and would not be what was meant.
var ErrProtected = errors.New("it is write-protected")

// Protected tells that the owner of a file has locked it.
func Protected(info fs.FileInfo) bool { return info.Mode().Perm()&0o200 == 0 }

// Replace puts a new version in the place of a file, or makes it. perm is what a new
// file gets before the person's umask; one that is there keeps its own.
func Replace(path string, content []byte, perm fs.FileMode) error {
	return version{content: content, perm: perm}.takePlace(path)
}

// ReplaceKnown is [Replace] for a file that holds what the caller read of it, known,
// and still does when the new version is about to take its name; else it is
// [ErrChanged]. That there was no file is nil.
func ReplaceKnown(path string, known, content []byte, perm fs.FileMode) error {
	return version{content: content, perm: perm, after: func(now []byte) bool {
		return bytes.Equal(now, known) && (now == nil) == (known == nil)
	}}.takePlace(path)
}

// version is a new version of a file.
type version struct {
	content []byte
	perm    fs.FileMode           // of a file that is made
	beside  string                // the file beside which it is made, whose drafts its are; "" for itself
	after   func(now []byte) bool // what it may come after, nil for anything
}

// takePlace puts it in the place of what is there.
func (v version) takePlace(path string) error {
	path = BehindLinks(path)
	sweep(path)
	letGo := lock(folderOf(path))
	defer letGo()
	info, err := v.look(path)
	if err != nil {
		return err
	}
	done := false
	if info == nil || !HasOtherNames(info) {
		done, err = v.rename(path, info)
	}
	if err == nil && !done {
		return v.writeInto(path)
	}
	return err
}

// look is what is known of the file that is there, nil for none, or why nothing may
// take its place.
func (v version) look(path string) (fs.FileInfo, error) {
	now, info, linked, err := readAsItIs(path, wholeFile)
	if _, ok := begunOn(path, info, linked); ok && err == nil {
		now, info, err = finish(path)
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		now, info, err = nil, nil, nil
	case info == nil:
		return nil, err
	case Protected(info):
		return nil, &fs.PathError{Op: "write", Path: path, Err: ErrProtected}
	}
	if v.after == nil { // it need not even be readable
		return info, nil
	}
	if err == nil && !v.after(now) {
		err = ErrChanged
	}
	return info, err
}

// rename writes a draft and renames it over the file. done is false where only writing
// into the file keeps it what it is: then nothing was done.
func (v version) rename(path string, before fs.FileInfo) (done bool, err error) {
	perm := v.perm
	if before != nil {
		perm = 0o600 // until it is written: others may have had no right to read it
	}
	of := path
	if v.beside != "" {
		of = Beside(path, filepath.Base(v.beside))
	}
	f, err := createDraft(of, perm)
	if err != nil {
		return false, ofFile(path, err)
	}
	draft := f.Name()
	if before != nil && keepOwner(f, before) != nil { // only somebody else could give it away
		return false, ofFile(path, errors.Join(f.Close(), os.Remove(draft)))
	}
	if err = fill(f, v.content, before); err == nil {
		done, err = v.name(draft, path)
	}
	if done && err == nil {
		syncFolder(folderOf(path))
		return true, nil
	}
	return false, ofFile(path, errors.Join(err, os.Remove(draft)))
}

// name gives a draft the name of the file. done is false where nothing can be renamed
// over that, or over one of its names only.
func (v version) name(draft, path string) (done bool, err error) {
	now, err := v.look(path)
	switch {
	case err != nil:
		return false, err
	case now != nil && HasOtherNames(now):
		return false, nil
	case now == nil && v.after != nil: // a name that somebody else gives at this moment stays theirs
		switch err := os.Link(draft, path); {
		case err == nil:
			_ = os.Remove(draft) // else the next save sweeps it
			return true, nil
		case errors.Is(err, fs.ErrExist):
			return false, ErrChanged
		}
	}
	if err = os.Rename(draft, path); now != nil && isMounted(err) {
		return false, nil
	}
	return err == nil, err
}

// Create makes a file under a name that nothing has yet, not even a link; that something
// has it is [fs.ErrExist].
func Create(path string, content []byte) error {
	return version{content: content, perm: 0o666}.create(path)
}

// create makes a file of it, under a name that nothing has yet.
func (v version) create(path string) error {
	v.after = func(now []byte) bool { return now == nil }
	err := ErrChanged
	if _, missing := os.Lstat(path); missing != nil {
		err = v.takePlace(path)
	}
	if errors.Is(err, ErrChanged) {
		return &fs.PathError{Op: "write", Path: path, Err: syscall.EEXIST}
	}
	return err
}

// fill writes, gives the mode of what was there before, if anything was, syncs and
// closes. Writing takes a part of some modes away, so they come after it.
func fill(f *os.File, content []byte, before fs.FileInfo) error {
	_, err := f.Write(content)
	if before != nil {
		err = errors.Join(err, giveMode(f, before.Mode()&permissions))
	}
	return errors.Join(err, f.Sync(), f.Close())
}

// permissions are the bits of a mode that a new version keeps.
const permissions = fs.ModePerm | fs.ModeSetuid | fs.ModeSetgid | fs.ModeSticky

// errMode says that a part of a mode cannot be kept by whom the file does not belong to.
var errMode = errors.New("only its owner can keep its mode")

// giveMode gives a file its mode. Some of it is taken away without a word from who
// is not of the group.
func giveMode(f *os.File, mode fs.FileMode) error {
	if err := f.Chmod(mode); err != nil {
		return err
	}
	if info, err := f.Stat(); err != nil || mode&^info.Mode()&(fs.ModeSetuid|fs.ModeSetgid) != 0 {
		return errors.Join(err, errMode)
	}
	return nil
}

// ofFile makes an error speak of the file instead of its draft, which the person
// never heard of.
func ofFile(path string, err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		return &fs.PathError{Op: "write", Path: path, Err: at.Err}
	}
	var renamed *os.LinkError
	if errors.As(err, &renamed) {
		return &fs.PathError{Op: "write", Path: path, Err: renamed.Err}
	}
	return err
}

// syncFolder makes the rename last. By then the file is written: a file system
// that cannot sync a folder, or a folder that may not be read, is no failure.
func syncFolder(folder string) {
	if f, err := os.Open(folder); err == nil {
		_ = f.Sync()
		_ = f.Close()
	}
}
