package worksheets

import (
	"crypto/sha256"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"runtime"

	"github.com/gofrs/flock"

	"capscye/worksheets/disk"
)

// The slots in which a sheet's recovery lies: so many by the path of its file, for as many
// programs, and as many by the number of the file, for all of its names.

// mostSlots is how many programs on one sheet are kept apart.
const mostSlots = 4

// OpenRecovery opens the place for a sheet, by its file, or by any name where it
// has none. Without a state folder it keeps nothing, and says so when it should.
//
// One file is one sheet, whatever linked folders its path leads through, and by each of
// its names. A second name that it is given while it is open here is not known of
// until it is opened anew; saves by both names meet in [ErrChanged] all the same.
func OpenRecovery(sheet string) *Recovery {
	r := &Recovery{sheet: sheet, mine: -1, locks: map[int]*flock.Flock{}}
	folder, err := stateFolder()
	if err != nil || os.MkdirAll(folder, 0o700) != nil {
		return r
	}
	r.sheet = disk.Whole(sheet)
	places := []string{r.sheet}
	info, err := os.Stat(r.sheet)
	if err == nil {
		if number, ok := disk.Number(info); ok {
			places = append(places, fmt.Sprintf("file %d", number))
		}
	}
	for _, place := range places {
		name := fmt.Sprintf("%x", sha256.Sum256([]byte(place)))[:32]
		for n := range mostSlots {
			r.slots = append(r.slots, filepath.Join(folder, fmt.Sprintf("%s-%d", name, n+1)))
		}
	}
	r.hold(0)
	if len(places) > 1 && disk.HasOtherNames(info) {
		r.hold(mostSlots)
	}
	return r
}

// hold locks the first free slot of those from one on. What is kept goes into the last
// that is held, where the sheet is looked for by all of its names.
func (r *Recovery) hold(from int) {
	for n := from; n < from+mostSlots; n++ {
		ok, err := r.try(n)
		if ok {
			r.mine = n
			return
		}
		r.taken = r.taken || err == nil
	}
}

// try locks a slot. What is no file there, a pipe say, is nobody's lock, and nothing to
// wait for; what was kept of another sheet stays.
func (r *Recovery) try(n int) (ok bool, err error) {
	slot := r.slots[n]
	if !disk.RegularOrFree(slot+".lock") || !disk.RegularOrFree(slot+".json") {
		return false, fs.ErrInvalid
	}
	if _, of, err := readKept(slot + ".json"); err == nil && !r.isOf(of) {
		return false, fs.ErrInvalid
	}
	lock := flock.New(slot+".lock", flock.SetPermissions(0o600))
	if ok, err = lock.TryLock(); ok && err == nil {
		r.locks[n] = lock
	}
	return ok, err
}

// stateFolder is where programs keep what is to outlive them: the XDG base
// directory for state, or what the system has instead.
func stateFolder() (string, error) {
	if folder := os.Getenv("XDG_STATE_HOME"); filepath.IsAbs(folder) {
		return filepath.Join(folder, "capscye"), nil
	}
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		folder, err := os.UserConfigDir()
		return filepath.Join(folder, "capscye"), err
	}
	home, err := os.UserHomeDir()
	return filepath.Join(home, ".local", "state", "capscye"), err
}

// isOf tells that what was kept of a sheet is of this one. Disks number their files each
// for itself, and give a number again.
func (r *Recovery) isOf(sheet string) bool {
	if sheet == Printable(r.sheet) {
		return true
	}
	theirs, gone := os.Stat(sheet)
	mine, err := os.Stat(r.sheet)
	return gone != nil || err == nil && os.SameFile(theirs, mine)
}

// orphaned are the slots in which something lies that no other program is at: mine,
// and those that could be locked. letGo unlocks them.
func (r *Recovery) orphaned() (slots []string, letGo func()) {
	held := maps.Clone(r.locks)
	for n, slot := range r.slots {
		if _, err := os.Stat(slot + ".json"); err != nil {
			continue
		}
		if _, ok := r.locks[n]; !ok {
			if free, err := r.try(n); err != nil || !free {
				continue
			}
		}
		slots = append(slots, slot)
	}
	return slots, func() {
		for n, lock := range r.locks {
			if held[n] == nil {
				_ = lock.Unlock()
			}
		}
		r.locks = held
	}
}
