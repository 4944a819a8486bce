package worksheets

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"sync"
	"time"

	"github.com/gofrs/flock"

	"capscye/worksheets/disk"
)

// Recovery is the place where what cannot be in a sheet's own file is kept against
// a crash: changes that could not be saved, a sheet that has no file yet, copies
// that something is tried with. It lies in the person's state folder and not
// beside the sheet, so it works where the sheet's folder cannot be written.
//
// Opening it also tells whether another program has the same sheet open. A nil
// Recovery keeps nothing.
type Recovery struct {
	mu    sync.Mutex // the screen may be closing it while something is being kept
	sheet string
	slots []string // one for each program that has the sheet open, without ending
	mine  int      // the slot that is locked, -1 for none
	typed Drafts   // what is half typed, which stays when the rest is dropped
	taken bool     // somebody else has one
	lock  *flock.Flock
}

// Leftover is what a run of the program did not save.
type Leftover struct {
	At         time.Time
	Versions   []Sheet
	Drafts     Drafts   // of the sheet itself; kept are those that [Recovery.Typed] was told
	Unreadable []string // files that were put aside, for they say nothing that can be read
}

// Empty tells that there is nothing to keep.
func (l Leftover) Empty() bool { return len(l.Versions) == 0 && l.Drafts.Empty() }

// Same tells whether two say the same, whenever that was.
func (l Leftover) Same(other Leftover) bool {
	return l.Drafts.Equal(other.Drafts) && slices.EqualFunc(l.Versions, other.Versions, Sheet.Same)
}

// mostSlots is how many programs on one sheet are kept apart.
const mostSlots = 4

// OpenRecovery opens the place for a sheet, by its file, or by any name where it
// has none. Without a state folder it keeps nothing, and says so when it should.
func OpenRecovery(sheet string) *Recovery {
	r := &Recovery{sheet: sheet, mine: -1}
	folder, err := stateFolder()
	if err != nil || os.MkdirAll(folder, 0o700) != nil {
		return r
	}
	if whole, err := filepath.Abs(disk.BehindLinks(sheet)); err == nil {
		r.sheet = whole
	}
	name := fmt.Sprintf("%x", sha256.Sum256([]byte(r.sheet)))[:32]
	for n := range mostSlots {
		r.slots = append(r.slots, filepath.Join(folder, fmt.Sprintf("%s-%d", name, n+1)))
	}
	for n, slot := range r.slots {
		lock := flock.New(slot+".lock", flock.SetPermissions(0o600))
		ok, err := lock.TryLock()
		if err == nil && ok {
			r.mine, r.lock = n, lock
			break
		}
		r.taken = r.taken || err == nil
	}
	return r
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

// Alone tells that no other program has the sheet open, as far as can be known.
func (r *Recovery) Alone() bool { return r == nil || !r.taken }

// Path is the file that is kept, "" where none can be.
func (r *Recovery) Path() string {
	if r == nil {
		return ""
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.path()
}

func (r *Recovery) path() string {
	if r.mine < 0 {
		return ""
	}
	return r.slots[r.mine] + ".json"
}

// Close lets the sheet go. What is kept stays; nothing more is.
func (r *Recovery) Close() {
	if r == nil {
		return
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.lock != nil {
		_ = r.lock.Unlock()
		r.lock, r.mine = nil, -1
	}
}

// kept is the form of the file.
type kept struct {
	Sheet    string        `json:"sheet"` // for a person who looks into it
	At       time.Time     `json:"at"`
	Versions []keptVersion `json:"versions"`
	keptDrafts
}

type keptVersion struct {
	Answers  map[string]string   `json:"answers"` // by their keys
	Sizes    []map[string]string `json:"sizes,omitempty"`
	Done     []string            `json:"done,omitempty"`
	Fittings []Fitting           `json:"fittings,omitempty"`
	keptDrafts
}

// keptDrafts are what is half typed.
type keptDrafts struct {
	Drafts map[string]string `json:"drafts,omitempty"` // by their keys
	Note   string            `json:"note,omitempty"`
}

func keeping(d Drafts) keptDrafts {
	k := keptDrafts{Note: d.Note}
	for _, one := range d.Texts {
		if k.Drafts == nil {
			k.Drafts = map[string]string{}
		}
		k.Drafts[one.Key.Path()] = one.Text
	}
	return k
}

// read is what was kept; what is of no key is left out.
func (k keptDrafts) read() Drafts {
	d := Drafts{Note: tidy(k.Note)}
	for path, text := range k.Drafts {
		if key, ok := KeyNamed(path); ok {
			d = d.With(key, text)
		}
	}
	return d
}

// Keep puts what is not saved in the place of what was kept before.
func (r *Recovery) Keep(l Leftover) error {
	if r == nil {
		return nil
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.mine < 0 {
		return errors.New("there is no place to keep it in")
	}
	return r.keep(l)
}

func (r *Recovery) keep(l Leftover) error {
	k := kept{Sheet: Printable(r.sheet), At: l.At, keptDrafts: keeping(r.typed)}
	for _, s := range l.Versions {
		v := keptVersion{Answers: map[string]string{}, Done: s.Done, Fittings: s.Fittings, keptDrafts: keeping(s.Drafts)}
		for _, key := range Keys() {
			v.Answers[key.Path()] = s.answers[key]
		}
		for _, z := range s.Sizes {
			v.Sizes = append(v.Sizes, z.byPath())
		}
		k.Versions = append(k.Versions, v)
	}
	out, err := json.MarshalIndent(k, "", " ")
	if err != nil {
		return err
	}
	return inWords(disk.Replace(r.path(), out, 0o600))
}

// Typed says what is half typed in the sheet now, which goes with all that is kept.
// Nothing is written. Until it is said, that is what was found.
func (r *Recovery) Typed(d Drafts) {
	if r == nil {
		return
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	r.typed = d
}

// Drop forgets what was kept, but for what is half typed: nobody agreed to lose that.
func (r *Recovery) Drop() error {
	if r == nil {
		return nil
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	switch {
	case r.mine < 0:
		return nil
	case !r.typed.Empty():
		return r.keep(Leftover{At: time.Now()})
	}
	if err := os.Remove(r.path()); !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}

// Left is what earlier runs left that ended without saving it; ok is false for
// nothing. Those of programs that are still there are not touched. What was
// found stays kept until [Recovery.Keep] or [Recovery.Drop]; a file that cannot
// be read is put aside.
func (r *Recovery) Left() (l Leftover, ok bool) {
	if r == nil {
		return Leftover{}, false
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.mine < 0 {
		return Leftover{}, false
	}
	slots, letGo := r.orphaned()
	defer letGo()
	l, others := r.gather(slots)
	r.typed = l.Drafts
	r.takeOver(l, others)
	return l, !l.Empty()
}

// orphaned are the slots in which something lies that no other program is at: mine,
// and those that could be locked. letGo unlocks them.
func (r *Recovery) orphaned() (slots []string, letGo func()) {
	var locks []*flock.Flock
	for n, slot := range r.slots {
		if _, err := os.Stat(slot + ".json"); err != nil {
			continue
		}
		if n != r.mine {
			lock := flock.New(slot + ".lock")
			if free, err := lock.TryLock(); err != nil || !free {
				continue
			}
			locks = append(locks, lock)
		}
		slots = append(slots, slot)
	}
	return slots, func() {
		for _, lock := range locks {
			_ = lock.Unlock()
		}
	}
}

// gather reads what lies in the slots as one, and puts aside what cannot be read.
// others are the files of other slots that it took something from.
func (r *Recovery) gather(slots []string) (l Leftover, others []string) {
	for _, slot := range slots {
		found, err := readKept(slot + ".json")
		if err != nil {
			if aside, ok := putAside(slot, err); ok {
				l.Unreadable = append(l.Unreadable, aside)
			}
			continue
		}
		if found.At.After(l.At) {
			l.At = found.At
		}
		l.Versions = append(l.Versions, found.Versions...)
		l.Drafts = l.Drafts.since(Drafts{}, found.Drafts)
		if slot != r.slots[r.mine] {
			others = append(others, slot+".json")
		}
	}
	return l, others
}

// takeOver keeps here what lay in other slots, which are emptied once it is.
func (r *Recovery) takeOver(l Leftover, others []string) {
	if len(others) == 0 || r.keep(l) != nil {
		return
	}
	for _, path := range others {
		_ = os.Remove(path)
	}
}

// putAside makes room for what is to be kept where a file is torn. One that cannot
// be read at the moment stays.
func putAside(slot string, err error) (aside string, ok bool) {
	if !errors.Is(err, errTorn) {
		return "", false
	}
	aside, err = disk.MoveAside(slot+".json", slot+".unreadable")
	return aside, err == nil
}

// errTorn says that a file is not what [Recovery.Keep] wrote.
var errTorn = errors.New("not what was kept")

// readKept reads a file that [Recovery.Keep] wrote, or that something made of it:
// what is no answer is left out.
func readKept(path string) (Leftover, error) {
	f, err := os.Open(path)
	if err != nil {
		return Leftover{}, err
	}
	defer f.Close()
	const most = 16 * MaxBytes // copies, and JSON is longer than TOML
	raw, err := io.ReadAll(io.LimitReader(f, most))
	if err != nil {
		return Leftover{}, err
	}
	var k kept
	if err := json.NewDecoder(bytes.NewReader(raw)).Decode(&k); err != nil {
		return Leftover{}, fmt.Errorf("%w: %w", errTorn, err)
	}
	l := Leftover{At: k.At, Drafts: k.keptDrafts.read()}
	for _, v := range k.Versions {
		s := Sheet{Done: v.Done, Fittings: v.Fittings, Drafts: v.keptDrafts.read()}
		for path, text := range v.Answers {
			if key, ok := KeyNamed(path); ok {
				s.answers[key] = tidy(text)
			}
		}
		for _, answers := range v.Sizes {
			s.Sizes = append(s.Sizes, sizeByPath(answers))
		}
		l.Versions = append(l.Versions, s)
	}
	return l, nil
}
