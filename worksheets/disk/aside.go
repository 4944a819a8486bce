package disk

import (
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
	f, err := createFree(0o600, func(n int) string {
		end := fmt.Sprintf(".%s-%d", word, n)
		return Beside(path, shortName(filepath.Base(path), len(end))+end)
	})
	if err != nil {
		return "", err
	}
	if err := fill(f, content, nil); err != nil {
		return "", errors.Join(err, os.Remove(f.Name()))
	}
	syncFolder(folderOf(path)) // else a loss of power could take the copy and not what comes after it
	return f.Name(), nil
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

// createFree makes an empty file under the first name, counted from 1, that
// nothing has yet.
func createFree(perm fs.FileMode, name func(n int) string) (*os.File, error) {
	for n := 1; ; n++ {
		f, err := os.OpenFile(name(n), os.O_WRONLY|os.O_CREATE|os.O_EXCL, perm)
		if errors.Is(err, fs.ErrExist) && n < 1000 {
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
