package disk

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"math"
	"os"
)

// KindError says that something is no file that could be read and replaced.
type KindError struct {
	Path string
	Kind string // "folder", or "device or pipe"
}

// Error says what it is, and what is read.
func (e *KindError) Error() string { return e.Path + ": it is a " + e.Kind }

// wholeFile is more than any file has.
const wholeFile = math.MaxInt64

// Read is what a regular file holds, no more than so many bytes of it, and what is
// known of it besides. Anything else, which might never end or never begin, is a
// *[KindError].
//
// Where a program was killed over writing into the file, it is whole afterwards.
func Read(path string, most int64) ([]byte, fs.FileInfo, error) {
	content, info, linked, err := readAsItIs(path, most)
	if err != nil {
		return content, info, err
	}
	if _, ok := begunOn(path, info, linked); ok {
		path = BehindLinks(path)
		letGo := lock(folderOf(path)) // who is writing now will have finished
		defer letGo()
		content, info, err = finish(path)
		content = content[:min(int64(len(content)), most)]
	}
	return content, info, err
}

// readAsItIs is [Read], whatever somebody was killed over; linked tells that the path is a
// link.
func readAsItIs(path string, most int64) (content []byte, info fs.FileInfo, linked bool, err error) {
	info, err = os.Lstat(path)
	if linked = err == nil && info.Mode()&fs.ModeSymlink != 0; linked {
		info, err = os.Stat(path)
	}
	if err != nil {
		return nil, nil, linked, err
	}
	if !info.Mode().IsRegular() { // some things are changed by being opened
		return nil, nil, linked, &KindError{path, kindIn(info)}
	}
	if content, ok := readQuickly(path, info, most); ok {
		return content, info, linked, nil
	}
	f, err := os.OpenFile(path, os.O_RDONLY|atOnce, 0)
	if err != nil {
		return nil, info, linked, err
	}
	defer f.Close()
	content, info, err = readOpen(f, path, most)
	return content, info, linked, err
}

// readOpen reads what was opened under a path.
func readOpen(f *os.File, path string, most int64) ([]byte, fs.FileInfo, error) {
	info, err := f.Stat()
	if err != nil {
		return nil, nil, err
	}
	if !info.Mode().IsRegular() { // it was one a moment ago
		return nil, nil, &KindError{path, kindIn(info)}
	}
	room := min(info.Size(), most) + bytes.MinRead // with which it need not grow
	content := bytes.NewBuffer(make([]byte, 0, room))
	_, err = content.ReadFrom(io.LimitReader(f, most))
	return content.Bytes(), info, err
}

func kindIn(info fs.FileInfo) string {
	if info.IsDir() {
		return "folder"
	}
	return "device or pipe"
}

// RegularOrFree tells that a name has a file, or nothing.
func RegularOrFree(path string) bool {
	info, err := os.Stat(path)
	return errors.Is(err, fs.ErrNotExist) || err == nil && info.Mode().IsRegular()
}
