package worksheets_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"capscye/worksheets"
)

func version(bicep string) worksheets.Sheet {
	var s worksheets.Sheet
	s.Set(worksheets.Bicep, bicep)
	s.Set(worksheets.Notes, "two\nlines, \x1b and \u202e")
	s = s.WithSize(0, worksheets.Size{}.With(worksheets.PatternSize, "16").With(worksheets.SleeveWidth, "14 1/2"))
	s.Done, s.Fittings = []string{"sleeve.lay"}, []worksheets.Fitting{{Date: "2026-11-20", Note: "drags"}}
	return s
}

// keepings is a state folder for one test.
func keepings(t *testing.T) string {
	folder := t.TempDir()
	t.Setenv("XDG_STATE_HOME", folder)
	return filepath.Join(folder, "capscye")
}

// What a run left is found by the next one, as it was, and by no other sheet.
func TestWhatWasLeftIsFound(t *testing.T) {
	folder := keepings(t)
	at := time.Date(2026, 11, 25, 10, 31, 0, 0, time.UTC)
	first := worksheets.OpenRecovery("blouse.toml")
	if _, ok := first.Left(); ok || !first.Alone() {
		t.Error("the first run found something")
	}
	want := []worksheets.Sheet{version("14"), version("13 1/2 1/2")}
	if err := first.Keep(worksheets.Leftover{At: at, Versions: want}); err != nil {
		t.Fatal(err)
	}
	first.Close() // what the system does when a program is killed

	next := worksheets.OpenRecovery("blouse.toml")
	left, ok := next.Left()
	if !ok || !left.At.Equal(at) || !slices.EqualFunc(left.Versions, want, worksheets.Sheet.Equal) {
		t.Errorf("found %+v, %v", left, ok)
	}
	if _, ok := worksheets.OpenRecovery("coat.toml").Left(); ok {
		t.Error("another sheet found it")
	}
	if info, err := os.Stat(next.Path()); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("the file: %v, %v", info.Mode(), err)
	}
	if info, err := os.Stat(folder); err != nil || info.Mode().Perm() != 0o700 {
		t.Errorf("the folder: %v, %v", info.Mode(), err)
	}
	if err := next.Drop(); err != nil {
		t.Fatal(err)
	}
	if _, ok := next.Left(); ok || next.Drop() != nil {
		t.Error("what was dropped is still there")
	}
}

// Two programs on one sheet are told, keep apart what they keep, and the next run
// finds what both left.
func TestTwoProgramsOnOneSheet(t *testing.T) {
	keepings(t)
	t.Chdir(t.TempDir())
	os.WriteFile("blouse.toml", nil, 0o644)
	os.Symlink("blouse.toml", "link.toml")
	one, two := worksheets.OpenRecovery("blouse.toml"), worksheets.OpenRecovery("link.toml")
	if !one.Alone() || two.Alone() {
		t.Fatalf("alone: %v and %v", one.Alone(), two.Alone())
	}
	later := time.Date(2026, 11, 25, 10, 31, 0, 0, time.UTC)
	one.Keep(worksheets.Leftover{At: later, Versions: []worksheets.Sheet{version("1")}})
	two.Keep(worksheets.Leftover{At: later.Add(-time.Hour), Versions: []worksheets.Sheet{version("2")}})
	if left, _ := two.Left(); len(left.Versions) != 1 {
		t.Errorf("what a living program keeps was taken: %d versions", len(left.Versions))
	}
	one.Close()
	two.Close()
	next := worksheets.OpenRecovery("blouse.toml")
	left, _ := next.Left()
	if !slices.EqualFunc(left.Versions, []worksheets.Sheet{version("1"), version("2")}, worksheets.Sheet.Equal) || !left.At.Equal(later) {
		t.Errorf("%d versions were found, the last of %v", len(left.Versions), left.At)
	}
	if again, _ := next.Left(); len(again.Versions) != 2 {
		t.Errorf("asked again, %d versions", len(again.Versions))
	}
	for n := range 3 { // what was taken over leaves its place to others
		if more := worksheets.OpenRecovery("blouse.toml"); more.Path() == "" {
			t.Errorf("of four places %d are left", n+1)
		} else {
			defer more.Close()
		}
	}
	next.Drop()
	next.Close()
	if _, ok := worksheets.OpenRecovery("blouse.toml").Left(); ok {
		t.Error("something was left behind")
	}
}

// A sheet is the same one from a folder that is known by a linked name, by paths that
// lead up from there, and by another name of its file; another file is another sheet.
func TestOneSheetFromALinkedFolder(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("links need a right of their own")
	}
	keepings(t)
	root := t.TempDir()
	real, linked := filepath.Join(root, "real", "deep"), filepath.Join(root, "linked")
	if err := errors.Join(os.MkdirAll(real, 0o755), os.Symlink(real, linked), os.WriteFile(filepath.Join(real, "blouse.toml"), nil, 0o644),
		os.WriteFile(filepath.Join(root, "coat.toml"), nil, 0o644), os.WriteFile(filepath.Join(root, "real", "coat.toml"), nil, 0o644)); err != nil {
		t.Fatal(err)
	}
	first, coat := worksheets.OpenRecovery(filepath.Join(real, "blouse.toml")), worksheets.OpenRecovery(filepath.Join(root, "real", "coat.toml"))
	defer first.Close()
	defer coat.Close()
	t.Chdir(linked) // by that name, as a shell has it
	for path, alone := range map[string]bool{"blouse.toml": false, "../deep/blouse.toml": false, "../coat.toml": false, filepath.Join(root, "coat.toml"): true, "new.toml": true} {
		r := worksheets.OpenRecovery(path)
		if r.Alone() != alone {
			t.Errorf("%s: alone %v", path, r.Alone())
		}
		r.Close()
	}
	if err := os.Link("blouse.toml", "../twin.toml"); err != nil {
		t.Fatal(err)
	}
	one := worksheets.OpenRecovery("../twin.toml")
	one.Keep(worksheets.Leftover{At: time.Now(), Versions: []worksheets.Sheet{version("1")}})
	one.Close()
	os.Remove("../twin.toml") // the file has one name again
	first.Close()
	if left, ok := worksheets.OpenRecovery("blouse.toml").Left(); !ok || left.Versions[0].Text(worksheets.Bicep) != "1" {
		t.Errorf("what was left of the second name is not found: %v", left)
	}
}

// Where what others left cannot be kept here, it stays there.
func TestWhatCannotBeTakenOverStays(t *testing.T) {
	keepings(t)
	one, two, three := worksheets.OpenRecovery("blouse.toml"), worksheets.OpenRecovery("blouse.toml"), worksheets.OpenRecovery("blouse.toml")
	two.Keep(worksheets.Leftover{At: time.Now(), Versions: []worksheets.Sheet{version("2")}})
	three.Keep(worksheets.Leftover{At: time.Now(), Versions: []worksheets.Sheet{version("3")}})
	left := []string{two.Path(), three.Path()}
	one.Close()
	two.Close()
	three.Close()
	next := worksheets.OpenRecovery("blouse.toml")
	if err := os.Mkdir(next.Path(), 0o755); err != nil { // in the way
		t.Fatal(err)
	}
	if l, ok := next.Left(); !ok || len(l.Versions) != 2 {
		t.Errorf("found %d versions", len(l.Versions))
	}
	for _, path := range left {
		if _, err := os.Stat(path); err != nil {
			t.Error(err)
		}
	}
}

// lockOf is the lock that a sheet gets in a state folder.
func lockOf(t *testing.T, folder string) string {
	t.Helper()
	worksheets.OpenRecovery("blouse.toml").Close()
	locks, err := filepath.Glob(filepath.Join(folder, "*-1.lock"))
	if err != nil || len(locks) != 1 {
		t.Fatalf("%v, %v", locks, err)
	}
	os.Remove(locks[0])
	return locks[0]
}

// Nowhere to keep anything, a torn file, a closed place: said where it matters,
// and never a panic.
func TestRecoveryWithoutAPlace(t *testing.T) {
	var none *worksheets.Recovery
	none.Close()
	if _, ok := none.Left(); ok || none.Keep(worksheets.Leftover{}) != nil || none.Drop() != nil || none.Path() != "" || !none.Alone() {
		t.Error("nil does something")
	}
	t.Setenv("XDG_STATE_HOME", "/dev/null/nowhere")
	r := worksheets.OpenRecovery("blouse.toml")
	if r.Keep(worksheets.Leftover{}) == nil || !r.Alone() || r.Path() != "" {
		t.Error("something is kept nowhere")
	}

	folder := keepings(t)
	os.Mkdir(folder, 0o700)
	base := strings.TrimSuffix(lockOf(t, folder), "-1.lock")
	for n := 1; n <= 4; n++ { // no lock can be made, which is nobody else's doing
		os.Symlink("/nowhere/at/all", fmt.Sprintf("%s-%d.lock", base, n))
	}
	if r := worksheets.OpenRecovery("blouse.toml"); !r.Alone() || r.Keep(worksheets.Leftover{}) == nil {
		t.Error("a lock that cannot be made is taken for another program's")
	}

	folder = keepings(t)
	r = worksheets.OpenRecovery("blouse.toml")
	for _, torn := range []string{"", "{", "[]", `{"versions":[{"answers":{"body.bicep":3}}]}`, "\x00"} {
		os.WriteFile(r.Path(), []byte(torn), 0o600)
		if left, ok := r.Left(); ok || len(left.Unreadable) != 1 {
			t.Errorf("%q was read, or it was not said: %v", torn, left)
		}
		if _, err := os.Stat(r.Path()); err == nil {
			t.Errorf("%q lies in the way", torn)
		}
	}
	aside, _ := filepath.Glob(filepath.Join(folder, "*.unreadable-*"))
	if len(aside) != 5 {
		t.Errorf("put aside: %v", aside)
	}
	os.WriteFile(r.Path(), []byte(`{"versions":[{"answers":{"body.bicep":"14","no.key":"x"}}]}`), 0o600)
	if left, ok := r.Left(); !ok || left.Versions[0].Text(worksheets.Bicep) != "14" {
		t.Error("an unknown key does harm")
	}
	path := r.Path()
	r.Close()
	if r.Keep(worksheets.Leftover{}) == nil || r.Path() != "" {
		t.Error("a closed place keeps something")
	}
	if _, err := os.Stat(path); err != nil {
		t.Error("closing it took what was kept", err)
	}
}

// Notes may be long, and copies many: what was kept is found, however large it is.
func TestMuchIsLeftAndFound(t *testing.T) {
	keepings(t)
	var much worksheets.Sheet
	much.Set(worksheets.Notes, strings.Repeat("a long note ", worksheets.MaxBytes/24))
	want := []worksheets.Sheet{much, much, much, much}
	first := worksheets.OpenRecovery("blouse.toml")
	if err := first.Keep(worksheets.Leftover{Versions: want}); err != nil {
		t.Fatal(err)
	}
	first.Close()
	if left, ok := worksheets.OpenRecovery("blouse.toml").Left(); !ok || !slices.EqualFunc(left.Versions, want, worksheets.Sheet.Equal) {
		t.Errorf("%d versions were found, and %q was put aside", len(left.Versions), left.Unreadable)
	}
}

// A folder for state that is not named from the root on is ignored: XDG Base Directory
// Specification 0.8. Who looks into the file sees the name of the sheet, and nothing
// that steers a terminal.
func TestWhereThingsAreKept(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("other systems have other folders")
	}
	home := t.TempDir()
	t.Chdir(t.TempDir())
	t.Setenv("HOME", home)
	for state, want := range map[string]string{
		"": filepath.Join(home, ".local", "state", "capscye"), "state": filepath.Join(home, ".local", "state", "capscye"), filepath.Join(home, "x"): filepath.Join(home, "x", "capscye"),
	} {
		t.Setenv("XDG_STATE_HOME", state)
		r := worksheets.OpenRecovery("bl\u202eouse.toml")
		if got := filepath.Dir(r.Path()); got != want {
			t.Errorf("with %q it is in %s, want %s", state, got, want)
		}
		if err := r.Keep(worksheets.Leftover{Versions: []worksheets.Sheet{{}}}); err != nil {
			t.Fatal(err)
		}
		if kept := string(readFile(t, r.Path())); acts(strings.ReplaceAll(kept, "\n", "")) || !strings.Contains(kept, `bl\\u202eouse.toml`) {
			t.Errorf("kept as %q", kept)
		}
		r.Close()
	}
}

// What is half typed goes with all that is kept, outlives what is dropped, and is gone
// once it is typed to its end.
func TestWhatIsHalfTypedIsKept(t *testing.T) {
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	name := filepath.Join(t.TempDir(), "sheet.toml")
	drafts := worksheets.Drafts{Note: "upper arm 1/2 in"}.With(worksheets.Bust, "391/2").With(worksheets.Bicep, "13 3/").With(worksheets.Bust, "39 1/")
	reopened := func(r *worksheets.Recovery) (*worksheets.Recovery, worksheets.Leftover) {
		r.Close()
		r = worksheets.OpenRecovery(name)
		l, _ := r.Left()
		return r, l
	}
	r, l := reopened(worksheets.OpenRecovery(name))
	r.Typed(drafts)
	var copied worksheets.Sheet
	copied.Drafts = copied.Drafts.With(worksheets.Waist, "28 x").WithSize("16: W", worksheets.SleeveWidth, "14 x")
	if err := r.Keep(worksheets.Leftover{Versions: []worksheets.Sheet{copied}}); err != nil {
		t.Fatal(err)
	}
	if r, l = reopened(r); !l.Drafts.Equal(drafts) || len(l.Versions) != 1 || !l.Versions[0].Drafts.Equal(copied.Drafts) {
		t.Errorf("kept %+v", l)
	}
	if err := r.Drop(); err != nil {
		t.Fatal(err)
	}
	if r, l = reopened(r); !l.Drafts.Equal(drafts) || len(l.Versions) != 0 {
		t.Errorf("dropped, there is %+v", l)
	}
	r.Typed(drafts.With(worksheets.Bicep, "").With(worksheets.Bust, ""))
	if err := r.Drop(); err != nil {
		t.Fatal(err)
	}
	if r, l = reopened(r); l.Drafts.Note != drafts.Note || len(l.Drafts.Texts) != 0 {
		t.Errorf("typed on, there is %+v", l)
	}
	r.Typed(worksheets.Drafts{})
	if err := r.Drop(); err != nil {
		t.Fatal(err)
	}
	if _, l = reopened(r); !l.Empty() {
		t.Errorf("at the end there is %+v", l)
	}
}
