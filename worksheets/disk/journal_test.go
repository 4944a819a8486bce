//go:build unix

package disk_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"capscye/worksheets/disk"
)

// page is how much a system writes at once: common practice, no source.
const page = 4096

// cutShort lays a file as a killed program leaves it: what is in it, and beside it what it
// held and was to hold.
func cutShort(t testing.TB, folder string, now, older, newer []byte) (path, journal string) {
	t.Helper()
	path = write(t, filepath.Join(folder, "blouse.toml"), string(now))
	raw, err := json.Marshal(map[string][]byte{"Name": []byte("blouse.toml"), "Old": older, "New": newer})
	if err != nil {
		t.Fatal(err)
	}
	return path, write(t, journalOf(t, path), string(raw))
}

// leftOf is what a kill or a loss of power leaves of one version written into the other:
// any page of it is written or not, and the end is cut or not.
func leftOf(rnd *rand.Rand, older, newer []byte) []byte {
	now := slices.Clone(older)
	kind := rnd.IntN(3) // a kill: pages from the front; power: any pages; power: pages of nothing
	until := rnd.IntN(len(newer)/page + 2)
	for at := 0; at < len(newer); at += page {
		if kind == 0 && at/page >= until || kind > 0 && rnd.IntN(2) == 0 {
			if kind == 0 || at >= len(now) && kind == 1 {
				break
			}
			continue
		}
		part := newer[at:min(at+page, len(newer))]
		if kind == 2 && rnd.IntN(3) == 0 {
			part = make([]byte, max(len(part), min(page, len(now)-at)))
		}
		if at+len(part) > len(now) {
			now = append(now, make([]byte, at+len(part)-len(now))...)
		}
		copy(now[at:], part)
	}
	return now
}

func someBytes(rnd *rand.Rand) []byte {
	b := make([]byte, rnd.IntN(5*page))
	if rnd.IntN(3) == 0 {
		b = make([]byte, page*rnd.IntN(4)+rnd.IntN(3))
	}
	for i := range b {
		b[i] = byte('a' + rnd.IntN(26))
	}
	return b
}

// Whatever is left of a version written into another, what is read is one of the two,
// and so is the file then.
func TestATornFileIsMadeWhole(t *testing.T) {
	rnd := rand.New(rand.NewPCG(20261126, 1))
	made := 0
	for range 200 {
		older, newer := someBytes(rnd), someBytes(rnd)
		if rnd.IntN(3) == 0 { // mostly the same
			newer = slices.Clone(older)
			for i := range newer {
				if rnd.IntN(1+len(newer)/3) == 0 {
					newer[i] = 'A'
				}
			}
		}
		now := leftOf(rnd, older, newer)
		path, journal := cutShort(t, t.TempDir(), now, older, newer)
		got, _, err := disk.Read(path, 1<<30)
		if err != nil || !bytes.Equal(got, older) && !bytes.Equal(got, newer) {
			t.Fatalf("of %d bytes written into %d, left %d: %d are read, %v", len(newer), len(older), len(now), len(got), err)
		}
		if !bytes.Equal(got, now) {
			made++
		}
		onDisk(t, path, string(got))
		if _, err := os.Stat(journal); err == nil {
			t.Error("the journal is still there")
		}
	}
	t.Logf("%d of 200 were neither", made)
	if made < 25 {
		t.Error("hardly any was torn")
	}
}

// Of a file that is made whole no more is read than was asked for.
func TestNoMoreIsReadOfATornFile(t *testing.T) {
	path, _ := cutShort(t, t.TempDir(), []byte("bic"), []byte("bicep 13\n"), []byte("bicep 14\n"))
	if got, _, err := disk.Read(path, 5); string(got) != "bicep" || err != nil {
		t.Errorf("of 5 bytes %q is read, %v", got, err)
	}
	onDisk(t, path, "bicep 14\n")
}

// What somebody wrote after the kill is theirs: it is read and stays. With the next save,
// the version that was cut short goes to a file of its own.
func TestWhatIsWrittenAfterAKillStays(t *testing.T) {
	older, newer := []byte("bicep 13\nbust 39\n"), []byte("bicep 14\nbust 40\n")
	for _, theirs := range []string{"bicep 14\nbust 39\n", "bicep 13\nbust 40\n", "bicep 15\n", "bicep 13\nbust 39\nhip 40\n", "\x00x"} {
		folder := t.TempDir()
		path, journal := cutShort(t, folder, []byte(theirs), older, newer)
		for range 2 {
			if got, _, err := disk.Read(path, 100); string(got) != theirs || err != nil {
				t.Errorf("%q is read as %q, %v", theirs, got, err)
			}
		}
		onDisk(t, path, theirs)
		if err := disk.ReplaceKnown(path, []byte(theirs), []byte("later"), 0o666); err != nil {
			t.Error(err)
		}
		onDisk(t, path, "later")
		onDisk(t, path+".mine-1", string(newer))
		if _, err := os.Stat(journal); err == nil {
			t.Error("the journal is still there")
		}
	}
}

// A file that is not what its saver knew is not replaced, nor is one that is there where
// none was; one that is gone meanwhile is no longer the same either.
func TestOnlyWhatIsKnownIsReplaced(t *testing.T) {
	for _, links := range []int{1, 2} {
		path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), "theirs")
		if links == 2 {
			if err := os.Link(path, path+".twin"); err != nil {
				t.Fatal(err)
			}
		}
		for _, known := range [][]byte{nil, {}, []byte("their"), []byte("theirs!"), []byte("mine")} {
			if err := disk.ReplaceKnown(path, known, []byte("mine"), 0o666); !errors.Is(err, disk.ErrChanged) {
				t.Errorf("known as %q: %v", known, err)
			}
			onDisk(t, path, "theirs")
		}
		if err := disk.ReplaceKnown(path, []byte("theirs"), []byte("mine"), 0o666); err != nil {
			t.Error(err)
		}
		onDisk(t, path, "mine")
	}
	gone := filepath.Join(t.TempDir(), "gone.toml")
	if err := disk.ReplaceKnown(gone, []byte("theirs"), []byte("mine"), 0o666); !errors.Is(err, disk.ErrChanged) {
		t.Errorf("gone: %v", err)
	}
	if err := disk.ReplaceKnown(gone, []byte{}, []byte("mine"), 0o666); !errors.Is(err, disk.ErrChanged) {
		t.Errorf("gone, and was empty: %v", err)
	}
	if err := disk.ReplaceKnown(gone, nil, []byte("mine"), 0o666); err != nil {
		t.Error(err)
	}
	onDisk(t, gone, "mine")
}

// A reader that waited in vain for a save finishes it and takes its journal away. The save
// that comes to its end then has done what it was to do, and says so.
func TestASaveWhoseJournalIsGoneIsNoFailure(t *testing.T) {
	folder := t.TempDir()
	path := write(t, filepath.Join(folder, "blouse.toml"), "0")
	if err := os.Link(path, filepath.Join(folder, "twin.toml")); err != nil {
		t.Skip(err)
	}
	journal := journalOf(t, path)
	stop, taken := make(chan bool), make(chan int)
	go func() {
		n := 0
		for {
			select {
			case <-stop:
				taken <- n
				return
			default:
				if os.Remove(journal) == nil {
					n++
				}
			}
		}
	}()
	for i := range 50 {
		if err := disk.ReplaceKnown(path, []byte(fmt.Sprint(i)), []byte(fmt.Sprint(i+1)), 0o666); err != nil {
			t.Errorf("save %d: %v", i+1, err)
			break
		}
	}
	stop <- true
	if n := <-taken; n == 0 {
		t.Error("no journal was taken away")
	}
	onDisk(t, path, "50")
}

// Many that save at once, each what it made of what it read: none takes away what another
// wrote, by whichever name of the file.
func TestSavesOfManyComeOneAfterTheOther(t *testing.T) {
	for _, links := range []int{1, 2} {
		folder := t.TempDir()
		path := write(t, filepath.Join(folder, "blouse.toml"), "")
		paths := []string{path}
		if links == 2 {
			twin := filepath.Join(folder, "deep", "twin.toml")
			if err := errors.Join(os.Mkdir(filepath.Dir(twin), 0o755), os.Link(path, twin)); err != nil {
				t.Fatal(err)
			}
			paths = append(paths, twin)
		}
		const savers, each = 4, 10
		ended := make(chan int)
		for n := range savers {
			go func() {
				done := 0
				for tries := 0; done < each && tries < 10_000; tries++ {
					p := paths[n%len(paths)]
					now, _, err := disk.Read(p, 1<<20)
					if err == nil && disk.ReplaceKnown(p, now, append(now, byte('a'+n)), 0o666) == nil {
						done++
					}
				}
				ended <- done
			}()
		}
		for range savers {
			if done := <-ended; done != each {
				t.Errorf("%d names: one saved %d times", links, done)
			}
		}
		got, _, _ := disk.Read(path, 1<<20)
		for n := range savers {
			if count := bytes.Count(got, []byte{byte('a' + n)}); count != each {
				t.Errorf("%d names: of %d saves %d are left in %q", links, each, count, got)
			}
		}
	}
}
