package worksheets

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
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
	slots []string             // the places for it, without ending: by its path, and by its number
	mine  int                  // the one where this run keeps something, -1 for none
	typed Drafts               // what is half typed, which stays when the rest is dropped
	taken bool                 // somebody else has one
	locks map[int]*flock.Flock // of the slots that this run holds
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
	for _, lock := range r.locks {
		_ = lock.Unlock()
	}
	r.locks, r.mine = map[int]*flock.Flock{}, -1
}

// kept is the form of the file.
type kept struct {
	Sheet    string         `json:"sheet"` // for a person who looks into it
	At       time.Time      `json:"at"`
	Versions []*keptVersion `json:"versions"`
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
		k.Drafts[one.path()] = one.Text
	}
	return k
}

// read is what was kept; what is of no key is left out.
func (k keptDrafts) read() Drafts {
	d := Drafts{Note: tidy(k.Note)}
	for path, text := range k.Drafts {
		if at, ok := draftAt(path); ok {
			d = d.WithSize(at.Size, at.Key, text)
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
		v := &keptVersion{Answers: map[string]string{}, Done: s.Done, Fittings: s.Fittings, keptDrafts: keeping(s.Drafts)}
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

// gather reads what lies in the slots as one, and puts aside what cannot be read.
// others are the files of other slots that it took something from.
func (r *Recovery) gather(slots []string) (l Leftover, others []string) {
	for _, slot := range slots {
		found, _, err := readKept(slot + ".json")
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
// what is no answer is left out. of is the sheet that it was kept of, as it is shown.
func readKept(path string) (l Leftover, of string, err error) {
	const most = 16 * MaxBytes // copies, and JSON is longer than TOML
	raw, _, err := disk.Read(path, most)
	if err != nil {
		return l, "", err
	}
	var k kept
	if err := json.NewDecoder(bytes.NewReader(raw)).Decode(&k); err != nil {
		return l, "", fmt.Errorf("%w: %w", errTorn, err)
	}
	l.At, l.Drafts = k.At, k.keptDrafts.read()
	for _, v := range k.Versions {
		if v == nil || v.Answers == nil { // every sheet that is kept has answers
			return l, "", errTorn
		}
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
	return l, k.Sheet, nil
}
