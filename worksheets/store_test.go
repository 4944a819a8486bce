package worksheets_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"capscye/worksheets"
	"capscye/worksheets/disk/disktest"
)

const stored = "# mine\n[body]\nbicep = \"13 3/4\" # left\n"

// Files that are laid, and looked at.
var write, onDisk, names = disktest.Write, disktest.OnDisk, disktest.Names

func load(t testing.TB, path string) *worksheets.Document {
	t.Helper()
	d, err := worksheets.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestWhatIsSavedIsLoadedAgain(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	d := load(t, path)
	if d.Path() != path || !d.Saved() || d.Changed() {
		t.Errorf("path %q, saved %v, changed %v", d.Path(), d.Saved(), d.Changed())
	}
	for _, text := range []string{"14", "14 1/4", "wide", ""} { // one save after another
		d.Sheet.Set(worksheets.Bicep, text)
		if d.Saved() || !d.Changed() {
			t.Errorf("with %q unsaved: saved %v, changed %v", text, d.Saved(), d.Changed())
		}
		if backup, err := d.Save(); backup != "" || err != nil || !d.Saved() || d.Changed() {
			t.Errorf("save: backup %q, %v, saved %v, changed %v", backup, err, d.Saved(), d.Changed())
		}
		onDisk(t, path, "# mine\n[body]\nbicep = \""+text+"\" # left\n")
		if again := load(t, path); !again.Sheet.Equal(d.Sheet) || d.Path() != path {
			t.Errorf("loaded %+v", again.Sheet)
		}
	}
	if got := names(t, filepath.Dir(path)); !slices.Equal(got, []string{"blouse.toml"}) {
		t.Errorf("the folder holds %q", got)
	}
}

// What is taken back to what was read is what the file says and what the document
// goes on with, also where the other answer was made ready to be saved.
func TestAnAnswerThatIsTakenBackIsNotSaved(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	d := load(t, path)
	d.Sheet.Set(worksheets.Bicep, "14")
	if d.LosesComments() { // as the screen asks before every save
		t.Error("the comments would be lost")
	}
	d.Sheet.Set(worksheets.Bicep, "13 3/4")
	if _, err := d.Save(); err != nil || d.Sheet.Text(worksheets.Bicep) != "13 3/4" || !d.Saved() {
		t.Errorf("%v, the sheet says %q, saved %v", err, d.Sheet.Text(worksheets.Bicep), d.Saved())
	}
	onDisk(t, path, stored)
	d.Sheet.Set(worksheets.Waist, "31")
	if _, err := d.Save(); err != nil {
		t.Errorf("the next save: %v", err)
	}
	onDisk(t, path, stored+"waist = \"31\"\n")
}

func TestADocumentGoesOnInAnotherFile(t *testing.T) {
	folder := t.TempDir()
	path, other := write(t, filepath.Join(folder, "blouse.toml"), stored), filepath.Join(folder, "other.toml")
	d := load(t, path)
	d.Sheet.Set(worksheets.Bicep, "14")
	if d.LosesComments() {
		t.Error("the comments would be lost")
	}
	d.GoOnIn(other)
	for _, text := range []string{"14", "15"} {
		d.Sheet.Set(worksheets.Bicep, text)
		if _, err := d.Save(); err != nil || d.Path() != other {
			t.Errorf("%v, it goes on in %s", err, d.Path())
		}
		onDisk(t, other, strings.Replace(stored, "13 3/4", text, 1))
		onDisk(t, path, stored)
	}
}

// A copy goes to a file of its own, and the document goes on in its old one.
func TestACopyTakesNoOthersPlace(t *testing.T) {
	folder := t.TempDir()
	path, copied := write(t, filepath.Join(folder, "blouse.toml"), stored), filepath.Join(folder, "copy.toml")
	d := load(t, path)
	d.Sheet.Set(worksheets.Bicep, "14")
	if err := d.SaveCopy(copied); err != nil || d.Path() != path || d.Saved() {
		t.Errorf("%v, it goes on in %s, saved %v", err, d.Path(), d.Saved())
	}
	d.Sheet.Set(worksheets.Bicep, "15")
	for _, taken := range []string{copied, path} {
		if err := d.SaveCopy(taken); !errors.Is(err, fs.ErrExist) {
			t.Errorf("to %s: %v", filepath.Base(taken), err)
		}
	}
	onDisk(t, copied, strings.Replace(stored, "13 3/4", "14", 1))
	onDisk(t, path, stored)
}

func TestItIsKnownWhenAFileWasWritten(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	when := time.Date(2026, 10, 3, 12, 0, 0, 0, time.UTC)
	if err := os.Chtimes(path, when, when); err != nil {
		t.Fatal(err)
	}
	if got := load(t, path).Written(); !got.Equal(when) {
		t.Errorf("written %v, want %v", got, when)
	}
	if got := worksheets.New(worksheets.Sheet{}).Written(); !got.IsZero() {
		t.Errorf("a new one was written %v", got)
	}
}

// What a new file says where nothing was chosen, the sheet says before and after.
func TestANewSheetSaysTheUsual(t *testing.T) {
	d := worksheets.New(worksheets.Sheet{})
	d.SetPath(filepath.Join(t.TempDir(), "new.toml"))
	for _, when := range []string{"before", "after"} {
		for k, want := range map[worksheets.Key]string{worksheets.Unit: "in", worksheets.Follow: "let out", worksheets.Slide: "least", worksheets.PivotLimitSleeve: "1 in", worksheets.Bicep: ""} {
			if got := d.Sheet.Text(k); got != want {
				t.Errorf("%s it is saved, %v says %q, want %q", when, k, got, want)
			}
		}
		if _, err := d.Save(); err != nil {
			t.Fatal(err)
		}
	}
	if source := string(readFile(t, d.Path())); strings.Contains(source, "measured_on") {
		t.Errorf("a day that nobody gave:\n%s", source)
	}
	d = worksheets.New(worksheets.Sheet{})
	d.Sheet.Set(worksheets.PivotLimitSleeve, "") // taken out again
	if source, _ := encode(t, d); !strings.Contains(source, "pivot_limit_sleeve = \"1 in\"") {
		t.Errorf("what stands for nothing is not said:\n%s", source)
	}
}

// What could not be read again is not written.
func TestASheetThatIsTooLargeIsNotSaved(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	d := load(t, path)
	d.Sheet.Set(worksheets.Notes, strings.Repeat("a long note ", worksheets.MaxBytes/12))
	var fault *worksheets.FileError
	for _, save := range []func() (string, error){d.Save, d.SaveOver} {
		if backup, err := save(); backup != "" || !errors.As(err, &fault) || d.Saved() {
			t.Errorf("backup %q, %v, saved %v", backup, err, d.Saved())
		}
	}
	onDisk(t, path, stored)
	fresh := worksheets.New(d.Sheet)
	fresh.SetPath(filepath.Join(t.TempDir(), "new.toml"))
	if _, err := fresh.Save(); !errors.As(err, &fault) || !strings.Contains(err.Error(), "too large. A worksheet has at most") {
		t.Errorf("a new one: %v", err)
	}
	if _, err := os.Stat(fresh.Path()); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("it was made: %v", err)
	}
}

func TestANewSheetMakesItsFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new.toml")
	d := worksheets.New(filledSheet(t))
	if _, err := d.Save(); err == nil || err.Error() != "the worksheet has no file name yet" || d.Saved() {
		t.Errorf("without a path: %v, saved %v", err, d.Saved())
	}
	d.SetPath(path)
	if backup, err := d.Save(); backup != "" || err != nil || !d.Saved() || d.Path() != path {
		t.Errorf("backup %q, %v, saved %v in %s", backup, err, d.Saved(), d.Path())
	}
	usual := filepath.Join(filepath.Dir(path), "usual")
	if err := os.WriteFile(usual, nil, 0o666); err != nil { // less what the umask takes
		t.Fatal(err)
	}
	is, err := os.Stat(path)
	if want, wrong := os.Stat(usual); err != nil || wrong != nil || is.Mode() != want.Mode() {
		t.Errorf("it has mode %v, not %v: %v, %v", is.Mode(), want.Mode(), err, wrong)
	}
	again := load(t, path)
	if !again.Sheet.Equal(filledSheet(t)) {
		t.Errorf("loaded %+v", again.Sheet)
	}
	onDisk(t, path, string(readFile(t, path)))
}

func TestANewSheetOverwritesNoFileThatIsThere(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "theirs.toml"), stored)
	d := worksheets.New(filledSheet(t))
	d.SetPath(path)
	if _, err := d.Save(); !errors.Is(err, worksheets.ErrChanged) {
		t.Errorf("error %v, want ErrChanged", err)
	}
	onDisk(t, path, stored)
}

func TestAnExampleHasNoFileUntilItIsGivenOne(t *testing.T) {
	for _, name := range worksheets.Examples() {
		d, err := worksheets.Example(name)
		if err != nil {
			t.Fatal(err)
		}
		if p, u := messages(d.Problems()), messages(d.Unknown()); p != nil || u != nil || d.Path() != "" || d.Saved() || d.Sheet.Text(worksheets.Title) == "" {
			t.Errorf("%s: problems %q, unknown %q, path %q, saved %v", name, p, u, d.Path(), d.Saved())
		}
		d.SetPath(filepath.Join(t.TempDir(), "mine.toml"))
		want := d.Sheet
		if _, err := d.Save(); err != nil {
			t.Error(err)
		}
		for _, k := range worksheets.Keys() {
			if got := load(t, d.Path()).Sheet; want.Text(k) != "" && got.Text(k) != want.Text(k) {
				t.Errorf("%s: %v says %q", name, k, got.Text(k))
			}
		}
	}
	if _, err := worksheets.Example("no-such"); err == nil {
		t.Error("an example that is none opens")
	}
}

func TestAFileThatItsOwnerLockedIsNotReplaced(t *testing.T) {
	for _, mode := range []fs.FileMode{0o440, 0o400, 0o466} { // whatever others may do
		path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
		if err := os.Chmod(path, mode); err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { os.Chmod(path, 0o600) })
		d := load(t, path)
		d.Sheet.Set(worksheets.Bicep, "14")
		for _, save := range []func() (string, error){d.Save, d.SaveOver} {
			if _, err := save(); err == nil || d.ReadOnly == "" {
				t.Errorf("mode %v: error %v, read-only %q", mode, err, d.ReadOnly)
			}
		}
		onDisk(t, path, stored)
	}
}

// One that is locked after it was read is no more replaced, nor is anything laid beside it.
func TestAFileThatIsLockedMeanwhileIsNotReplaced(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	d := load(t, path)
	d.Sheet.Set(worksheets.Bicep, "14")
	write(t, path, "# theirs\n")
	if err := os.Chmod(path, 0o400); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.Chmod(path, 0o600) })
	for _, save := range []func() (string, error){d.Save, d.SaveOver} {
		if backup, err := save(); backup != "" || err == nil || err.Error() != path+": it is write-protected" || d.Saved() {
			t.Errorf("backup %q, %v, saved %v", backup, err, d.Saved())
		}
	}
	onDisk(t, path, "# theirs\n")
	if got := names(t, filepath.Dir(path)); !slices.Equal(got, []string{"blouse.toml"}) {
		t.Errorf("the folder holds %q", got)
	}
}

// What a save does to links, permissions and owners is held in the package disk.
func TestADocumentBehindALinkKeepsTheNameOfTheLink(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("links need a right of their own")
	}
	target := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	link := filepath.Join(t.TempDir(), "link.toml")
	if err := os.Symlink(target, link); err != nil {
		t.Fatal(err)
	}
	d := load(t, link)
	for _, text := range []string{"14", "15"} {
		d.Sheet.Set(worksheets.Bicep, text)
		if _, err := d.Save(); err != nil || d.Path() != link || !d.Saved() {
			t.Errorf("save: %v, path %s, saved %v", err, d.Path(), d.Saved())
		}
		onDisk(t, target, strings.Replace(stored, "13 3/4", text, 1))
	}
	if info, err := os.Lstat(link); err != nil || info.Mode().Type() != fs.ModeSymlink {
		t.Errorf("the link is now %v, %v", info.Mode(), err)
	}
}

func TestSavingWithoutAChangeWritesNothing(t *testing.T) {
	for _, source := range []string{stored, hostile, wholeFile, ""} {
		path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), source)
		before, err := os.Stat(path)
		if err != nil {
			t.Fatal(err)
		}
		d := load(t, path)
		was := d.Sheet.Text(worksheets.Wrist)
		d.Sheet.Set(worksheets.Wrist, "6 and a bit")
		d.Sheet.Set(worksheets.Wrist, was)
		for _, save := range []func() (string, error){d.Save, d.SaveOver} {
			if backup, err := save(); backup != "" || err != nil {
				t.Errorf("backup %q, %v", backup, err)
			}
		}
		after, err := os.Stat(path)
		if err != nil || !os.SameFile(before, after) || !before.ModTime().Equal(after.ModTime()) {
			t.Errorf("%.10q: the file was written: %v, %v", source, before.ModTime(), after.ModTime())
		}
		onDisk(t, path, source)
	}
}

func TestAFileThatOpensReadOnlyIsNeverWritten(t *testing.T) {
	for version, why := range map[string]string{
		"2": "it has version 2, and this program writes version 1", `"one"`: "its version cannot be read",
	} {
		source := "version = " + version + "\n[body]\nbicep = \"13\"\n"
		path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), source)
		d := load(t, path)
		d.Sheet.Set(worksheets.Bicep, "14")
		for _, save := range []func() (string, error){d.Save, d.SaveOver} {
			backup, err := save()
			if want := path + ": it is not overwritten: " + why; backup != "" || err == nil || err.Error() != want {
				t.Errorf("backup %q, error %v, want %s", backup, err, want)
			}
		}
		if d.Sheet.Text(worksheets.Bicep) != "14" {
			t.Error("what was typed is gone")
		}
		onDisk(t, path, source)
		if err := os.Chmod(path, 0o400); err != nil { // which is the lesser reason
			t.Fatal(err)
		}
		if got := load(t, path).ReadOnly; got != why {
			t.Errorf("write-protected besides: %q, want %q", got, why)
		}
	}
}
