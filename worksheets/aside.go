package worksheets

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
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

// swept are the paths that this run of the program has swept.
var swept sync.Map

// sweepAside takes away, once for each path, the new versions that programs were
// killed over: nothing was lost with them, for nobody was told that they are saved.
// One of this program's own number is another's, who had it before.
//
// A program on another machine looks gone from here. At worst its save fails in the
// instant of this one, which is said there and tried again.
func sweepAside(path string) {
	if _, done := swept.LoadOrStore(path, true); done {
		return
	}
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		return
	}
	for _, e := range entries {
		rest, found := strings.CutPrefix(e.Name(), asideLead(path))
		number, ours := strings.CutSuffix(rest, asideEnd)
		number, _, _ = strings.Cut(number, "-")
		pid, err := strconv.Atoi(number)
		if found && ours && err == nil && pid > 0 && (pid == os.Getpid() || isGone(pid)) {
			_ = os.Remove(filepath.Join(filepath.Dir(path), e.Name()))
		}
	}
}
