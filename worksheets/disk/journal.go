package disk

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// journal is what lies beside a file while a new version is written into it: both
// versions, so that what a killed program leaves of them can be told from what anybody
// else wrote, and made whole. It is named after the file's number on its disk, for the
// file may have several names in the folder.
//
// A name in another folder shows what was written until the file is read by a name in
// this one.
type journal struct {
	Name     []byte // of the file; it need be no text
	Old, New []byte
}

// journalEnd is the end of the name of every journal.
const journalEnd = ".capscye-save"

// journalOf is the name of a file's journal, "" where files have no numbers.
func journalOf(path string, info fs.FileInfo) string {
	if number, ok := Number(info); ok {
		return Beside(path, fmt.Sprintf(".%d%s", number, journalEnd))
	}
	return ""
}

// begunOn is the journal that lies beside a file.
func begunOn(path string, info fs.FileInfo, linked bool) (j journal, ok bool) {
	if info == nil {
		return journal{}, false
	}
	name := journalOf(path, info)
	if _, err := os.Lstat(name); err != nil {
		if !linked { // a link's lies where the file is
			return journal{}, false
		}
		name = journalOf(BehindLinks(path), info)
	}
	return readJournal(name, info)
}

// mostOfAJournal bounds what is read of one, in bytes.
const mostOfAJournal = 256 << 20

// readJournal reads a journal of a file. In a folder where everybody may make files, it
// could be laid there by who may not write this one: that is none.
func readJournal(name string, of fs.FileInfo) (j journal, ok bool) {
	info, err := os.Lstat(name)
	if err != nil || !info.Mode().IsRegular() || !mayWrite(info, of) {
		return journal{}, false
	}
	raw, _, _, err := readAsItIs(name, mostOfAJournal)
	return j, err == nil && json.Unmarshal(raw, &j) == nil && len(j.Name) > 0
}

// put lays a journal beside a file, whole from the moment that it has its name.
func (j journal) put(path string, info fs.FileInfo) (name string, err error) {
	raw, err := json.Marshal(j)
	if err != nil {
		return "", err
	}
	f, err := createDraft(path, 0o600)
	if err != nil {
		return "", err
	}
	name = journalOf(path, info)
	if err = errors.Join(f.Chmod(info.Mode().Perm()), fill(f, raw, nil)); err == nil { // for whoever reads the file next
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		return "", errors.Join(err, os.Remove(f.Name()))
	}
	syncFolder(filepath.Dir(path))
	return name, nil
}

// writeInto writes the new version into the file that is there.
func (v version) writeInto(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR|atOnce, 0)
	if err != nil {
		return ofFile(path, err)
	}
	defer f.Close()
	defer lockFile(f)() // another name of it may lie in a folder of its own
	before, info, err := readOpen(f, path, wholeFile)
	switch {
	case err != nil:
		return err
	case v.after != nil && !v.after(before):
		return ErrChanged
	case losesBits(info):
		return &fs.PathError{Op: "write", Path: path, Err: errMode}
	}
	name, err := journal{[]byte(filepath.Base(path)), before, v.content}.put(path, info)
	if err != nil {
		return ofFile(path, err)
	}
	if !isStill(f, path, before) { // somebody wrote while that was synced
		return errors.Join(ErrChanged, putAway(name))
	}
	if err := overwrite(f, v.content, info); err != nil {
		if overwrite(f, before, info) != nil {
			return fmt.Errorf("%w; the old file is in %s", ofFile(path, err), name)
		}
		return ofFile(path, errors.Join(err, putAway(name)))
	}
	return putAway(name)
}

// putAway removes a journal that has done its work. Whoever reads the file and has waited
// for the lock as long as it waits may have done so already, and then nothing is amiss.
func putAway(journal string) error {
	if err := os.Remove(journal); !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}

// isStill tells that an open file has its name, and holds what it held.
func isStill(f *os.File, path string, held []byte) bool {
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return false
	}
	now, info, err := readOpen(f, path, wholeFile)
	if err != nil || !bytes.Equal(now, held) {
		return false
	}
	named, err := os.Stat(path)
	return err == nil && os.SameFile(info, named)
}

// overwrite writes into an open file. What it held is not taken away first: a short
// file is at no moment neither of the two.
func overwrite(f *os.File, content []byte, info fs.FileInfo) error {
	_, err := f.WriteAt(content, 0)
	if err == nil {
		err = f.Truncate(int64(len(content)))
	}
	if mode := info.Mode() & permissions; mode != mode.Perm() { // writing took it away
		err = errors.Join(err, giveMode(f, mode))
	}
	return errors.Join(err, f.Sync())
}

// finish makes a file whole that a program was killed over, under the lock of its
// folder, and reads it. Where it may not be written here, the version that was to be
// written is read all the same. What somebody else wrote since stays.
func finish(path string) (now []byte, info fs.FileInfo, err error) {
	var linked bool
	if now, info, linked, err = readAsItIs(path, wholeFile); err != nil {
		return now, info, err
	}
	j, still := begunOn(path, info, linked)
	switch {
	case !still:
	case bytes.Equal(now, j.Old), bytes.Equal(now, j.New):
		_ = os.Remove(journalOf(path, info)) // at worst it is looked at again
	case j.torn(now):
		now = j.New
		f, err := os.OpenFile(path, os.O_RDWR|atOnce, 0)
		if err != nil {
			break
		}
		defer f.Close()
		defer lockFile(f)()
		err = overwrite(f, j.New, info)
		if err != nil { // no room, say: it had the other before
			if err = overwrite(f, j.Old, info); err == nil {
				now = j.Old
			}
		}
		if err == nil {
			_ = os.Remove(journalOf(path, info))
		}
	}
	return now, info, nil
}

// page is how much of a file a system writes at once, or not at all.
const page = 4096

// torn tells that a file is what is left of one version written into the other: every
// page of it is one of theirs, or was never written. What somebody wrote since is not so.
func (j journal) torn(now []byte) bool {
	onto := func(one, other []byte) []byte { return slices.Concat(one, other[min(len(one), len(other)):]) }
	forth, back := onto(j.New, j.Old), onto(j.Old, j.New) // written in, or put back
	if len(now) > len(forth) {
		return false
	}
	for at := 0; at < len(now); at += page {
		part := bytes.TrimRight(now[at:min(at+page, len(now))], "\x00") // of a page that was never written
		from := func(whole []byte) bool { return at <= len(whole) && bytes.HasPrefix(whole[at:], part) }
		if !from(forth) && !from(back) {
			return false
		}
	}
	return true
}

// settleJournals looks at what killed programs left beside a file: what nobody wrote since
// is made whole; else the version that was to be written goes to a file of its own, for the
// person's eyes.
func settleJournals(path string, entries []os.DirEntry) {
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), journalEnd) {
			continue
		}
		now, info, err := Read(path, wholeFile) // which settles it, unless it is of a file that had the name before
		if err != nil {
			return
		}
		name := Beside(path, e.Name())
		j, ok := readJournal(name, info)
		if !ok || string(j.Name) != filepath.Base(path) {
			continue
		}
		if bytes.Equal(now, j.Old) || bytes.Equal(now, j.New) {
			_ = os.Remove(name)
		} else if _, err := PutAsideOnce(path, "mine", j.New); err == nil {
			_ = os.Remove(name)
		}
	}
}
