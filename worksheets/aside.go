package worksheets

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"
)

// The files beside a file: the new version while it is written, and what is kept.

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

// keepBeside writes content to the first free name beside a file.
func keepBeside(path, word string, content []byte) (string, error) {
	f, err := createFree(0o600, func(n int) string {
		end := fmt.Sprintf(".%s-%d", word, n)
		return filepath.Join(filepath.Dir(path), shortName(filepath.Base(path), len(end))+end)
	})
	if err != nil {
		return "", err
	}
	if err := fill(f, content); err != nil {
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

// asideEnd is the end of the name of every new version that is being written.
const asideEnd = ".capscye-tmp"

// asideLead is how the name of a new version of a file begins; the number of the
// program that writes it follows.
func asideLead(path string) string {
	const more = len("..4294967295-1000") + len(asideEnd)
	return "." + strings.ToValidUTF8(shortName(filepath.Base(path), more), "") + "."
}

// createAside makes an empty file beside a path, under a name that nothing else
// has, with the permissions that the person's umask leaves.
func createAside(path string, perm fs.FileMode) (*os.File, error) {
	return createFree(perm, func(n int) string {
		return filepath.Join(filepath.Dir(path), fmt.Sprintf("%s%d-%d%s", asideLead(path), os.Getpid(), n, asideEnd))
	})
}
