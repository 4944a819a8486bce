package disk

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"unicode/utf8"
)

// PutAside writes content beside a file, under the first free name of its own with
// the word and a number, blouse.toml.before-1 say, for the person's eyes alone. It
// returns the path.
func PutAside(path, word string, content []byte) (string, error) {
	return putAside(path, word, content, func([]byte) bool { return false })
}

// PutAsideOnce is [PutAside], unless the same lies there already: a killed program may
// have put it there.
func PutAsideOnce(path, word string, content []byte) (string, error) {
	return putAside(path, word, content, func(there []byte) bool { return bytes.Equal(there, content) })
}

func putAside(path, word string, content []byte, isThat func(there []byte) bool) (string, error) {
	sweep(path) // a killed program may have been at the same
	for n := 1; ; n++ {
		end := fmt.Sprintf(".%s-%d", word, n)
		name := Beside(path, shortName(filepath.Base(path), len(end))+end)
		err := version{content: content, perm: 0o600, beside: path}.create(name)
		if !errors.Is(err, fs.ErrExist) {
			if err != nil {
				name = ""
			}
			return name, err
		}
		if there, _, err := Read(name, wholeFile); err == nil && isThat(there) {
			return name, nil
		}
		if n == mostFree {
			return "", err
		}
	}
}

// MoveAside renames a file to the first free name that begins with lead and ends with
// a number, and returns that. Nothing that has such a name is written over.
func MoveAside(path, lead string) (string, error) {
	f, err := createFree(0o600, func(n int) string { return fmt.Sprintf("%s-%d", lead, n) })
	if err != nil {
		return "", err
	}
	if err := errors.Join(f.Close(), os.Rename(path, f.Name())); err != nil {
		return "", errors.Join(err, os.Remove(f.Name()))
	}
	return f.Name(), nil
}

// mostFree is how many names are tried.
const mostFree = 1000

// createFree makes an empty file under the first name, counted from 1, that
// nothing has yet.
func createFree(perm fs.FileMode, name func(n int) string) (*os.File, error) {
	for n := 1; ; n++ {
		f, err := os.OpenFile(name(n), os.O_WRONLY|os.O_CREATE|os.O_EXCL, perm)
		if errors.Is(err, fs.ErrExist) && n < mostFree {
			continue
		}
		return f, err
	}
}

// mostName is how many bytes a name may have on the usual file systems.
const mostName = 255

// shortName is a name that leaves room for so many bytes more.
func shortName(name string, more int) string {
	if len(name)+more <= mostName {
		return name
	}
	end := mostName - more
	for i := 0; i < utf8.UTFMax && !utf8.RuneStart(name[end]); i++ { // between two characters
		end--
	}
	return name[:end]
}
