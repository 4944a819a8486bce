package disk

import (
	"bytes"
	"io"
	"io/fs"
	"os"
)

// KindError says that something is no file that could be read and replaced.
type KindError struct {
	Path string
	Kind string // "folder", or "device or pipe"
}

// Error says what it is, and what is read.
func (e *KindError) Error() string { return e.Path + ": it is a " + e.Kind + "; read would be a file" }

// Read is what a regular file holds, no more than so many bytes of it, and what is
// known of it besides. Anything else, which might never end or never begin, is a
// *[KindError].
func Read(path string, most int64) ([]byte, fs.FileInfo, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, nil, &KindError{path, kindIn(info)}
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
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
