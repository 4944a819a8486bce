package disk

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
)

// draftEnd is the end of the name of every draft.
const draftEnd = ".capscye-tmp"

// draftLead is how the name of a draft of a file begins; the number of the
// program that writes it follows.
func draftLead(path string) string {
	const more = len("..4294967295-1000") + len(draftEnd)
	return "." + strings.ToValidUTF8(shortName(filepath.Base(path), more), "") + "."
}

// createDraft makes an empty file beside a path, under a name that nothing else
// has, with the permissions that the person's umask leaves.
func createDraft(path string, perm fs.FileMode) (*os.File, error) {
	return createFree(perm, func(n int) string {
		return Beside(path, fmt.Sprintf("%s%d-%d%s", draftLead(path), os.Getpid(), n, draftEnd))
	})
}

// swept are the paths that this run of the program has swept.
var swept sync.Map

// sweep takes away, once for each path, the drafts that programs were killed over:
// nothing was lost with them, for nobody was told that they are saved. Journals it
// settles. A draft of this program's own number is another's, who had it before.
//
// A program on another machine looks gone from here. At worst its save fails in the
// instant of this one, which is said there and tried again.
func sweep(path string) {
	if _, done := swept.LoadOrStore(path, true); done {
		return
	}
	entries, err := os.ReadDir(folderOf(path))
	if err != nil {
		return
	}
	settleJournals(path, entries)
	letGo := lock(folderOf(path))
	defer letGo()
	for _, e := range entries {
		rest, found := strings.CutPrefix(e.Name(), draftLead(path))
		number, ours := strings.CutSuffix(rest, draftEnd)
		number, _, _ = strings.Cut(number, "-")
		pid, err := strconv.Atoi(number)
		if found && ours && err == nil && pid > 0 && (pid == os.Getpid() || isGone(pid)) {
			_ = os.Remove(Beside(path, e.Name()))
		}
	}
}
