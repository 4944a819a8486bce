package worksheets_test

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"capscye/worksheets"
)

func TestAFileThatAnotherProgramChangedIsNotOverwritten(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	d := load(t, path)
	d.Sheet.Set(worksheets.Bicep, "14")
	theirs := strings.Replace(stored, "13 3/4", "15", 1)
	write(t, path, theirs)
	for range 2 { // asking again is no yes
		if backup, err := d.Save(); backup != "" || !errors.Is(err, worksheets.ErrChanged) {
			t.Errorf("backup %q, error %v, want ErrChanged", backup, err)
		}
	}
	if d.Sheet.Text(worksheets.Bicep) != "14" || d.Saved() {
		t.Errorf("the sheet says %q, saved %v", d.Sheet.Text(worksheets.Bicep), d.Saved())
	}
	onDisk(t, path, theirs)
}

func TestTheSecondOfTwoSavesIsToldOfTheFirst(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	one, two := load(t, path), load(t, path)
	one.Sheet.Set(worksheets.Bicep, "14")
	two.Sheet.Set(worksheets.Bicep, "15")
	if _, err := one.Save(); err != nil {
		t.Error(err)
	}
	if _, err := two.Save(); !errors.Is(err, worksheets.ErrChanged) {
		t.Errorf("error %v, want ErrChanged", err)
	}
	onDisk(t, path, strings.Replace(stored, "13 3/4", "14", 1))
}

func TestSavingOverAnotherVersionKeepsThatBeside(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	d := load(t, path)
	var backups []string
	for _, theirs := range []string{"# theirs\n", "no TOML at all", "version = 7\n", ""} {
		d.Sheet.Set(worksheets.Bicep, "14 "+strings.Repeat("1", len(backups)+1)+"/64")
		write(t, path, theirs)
		want, _ := encode(t, d)
		backup, err := d.SaveOver()
		if err != nil || filepath.Dir(backup) != filepath.Dir(path) || slices.Contains(backups, backup) || !d.Saved() {
			t.Fatalf("backup %q, %v, saved %v", backup, err, d.Saved())
		}
		onDisk(t, backup, theirs)
		onDisk(t, path, want)
		backups = append(backups, backup)
	}
	d.Sheet.Set(worksheets.Bicep, "15")
	if backup, err := d.Save(); backup != "" || err != nil {
		t.Errorf("afterwards: backup %q, %v", backup, err)
	}
}

func TestNothingIsOverwrittenWhereItCannotBeKeptBeside(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	taken := write(t, filepath.Join(t.TempDir(), "taken"), "")
	for n := range 1000 { // every name that is tried
		if err := os.Link(taken, fmt.Sprintf("%s.before-%d", path, n+1)); err != nil {
			t.Fatal(err)
		}
	}
	d := load(t, path)
	d.Sheet.Set(worksheets.Bicep, "14")
	write(t, path, "# theirs\n")
	if backup, err := d.SaveOver(); backup != "" || err == nil || d.Saved() || d.Sheet.Text(worksheets.Bicep) != "14" {
		t.Errorf("backup %q, %v, saved %v", backup, err, d.Saved())
	}
	onDisk(t, path, "# theirs\n")
}

func TestAVeryLargeFileIsNotSavedOver(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	d := load(t, path)
	d.Sheet.Set(worksheets.Bicep, "14")
	theirs := strings.Repeat("x", worksheets.MaxBytes) + "and an end\n"
	write(t, path, theirs)
	backup, err := d.SaveOver()
	if want := "what is there now is too large to be kept beside it"; backup != "" || err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("backup %q, %v, want %s", backup, err, want)
	}
	onDisk(t, path, theirs)
	if got := names(t, filepath.Dir(path)); !slices.Equal(got, []string{"blouse.toml"}) {
		t.Errorf("the folder holds %q", got)
	}
}

func TestWhereCommentsAreLostTheOriginalIsKeptBeside(t *testing.T) {
	source := "# mine\nbody = {bust = \"39\", neck = 15} # in one line\n"
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), source)
	d := load(t, path)
	d.Sheet.Set(worksheets.Waist, "31")
	backup, err := d.Save()
	if err != nil || backup == "" {
		t.Fatalf("backup %q, %v", backup, err)
	}
	onDisk(t, backup, source)
	again := load(t, path)
	if again.Sheet.Text(worksheets.Waist) != "31" || len(again.Unknown()) != 1 {
		t.Errorf("loaded %+v, unknown %q", again.Sheet, messages(again.Unknown()))
	}
	d.Sheet.Set(worksheets.Waist, "32")
	if backup, err := d.Save(); backup != "" || err != nil {
		t.Errorf("the second save: backup %q, %v", backup, err)
	}
}

func TestMineCanBeKeptBesideWhileTheirsStays(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	d := load(t, path)
	d.Sheet.Set(worksheets.Bicep, "14")
	theirs := write(t, path, "# theirs\n")
	first, err := d.KeepBeside()
	second, again := d.KeepBeside()
	if err != nil || again != nil || first == second || filepath.Dir(first) != filepath.Dir(path) {
		t.Fatalf("kept in %q and %q: %v, %v", first, second, err, again)
	}
	mine := strings.Replace(stored, "13 3/4", "14", 1)
	onDisk(t, first, mine)
	onDisk(t, second, mine)
	onDisk(t, theirs, "# theirs\n")
}

func TestWhatWasTypedHereIsLaidOverWhatWasWrittenThere(t *testing.T) {
	earlier := decode(t, wholeFile).Sheet
	mine, theirs := earlier, earlier
	mine.Set(worksheets.Bicep, "14")
	mine.Set(worksheets.Hip, "")
	mine.Done = []string{"mine"}
	theirs.Set(worksheets.Bicep, "15")
	theirs.Set(worksheets.Bust, "40")
	theirs.Fittings = nil
	want := theirs
	want.Set(worksheets.Bicep, "14")
	want.Set(worksheets.Hip, "")
	want.Done = []string{"mine"}
	if got := theirs.Since(earlier, mine); !got.Equal(want) {
		t.Errorf("got %+v, want %+v", got, want)
	}
	if got := theirs.Since(earlier, earlier); !got.Equal(theirs) {
		t.Errorf("nothing was typed, and %+v became %+v", theirs, got)
	}
}

func TestAFileThatVanishedIsWrittenAgain(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	d := load(t, path)
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if backup, err := d.Save(); backup != "" || err != nil {
		t.Errorf("backup %q, %v", backup, err)
	}
	onDisk(t, path, stored)
}

func TestAFolderThatVanishedIsAnErrorAndTheSheetStays(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "sewing")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	path := write(t, filepath.Join(folder, "blouse.toml"), stored)
	d := load(t, path)
	d.Sheet.Set(worksheets.Bicep, "14")
	if err := os.RemoveAll(folder); err != nil {
		t.Fatal(err)
	}
	for _, save := range []func() (string, error){d.Save, d.SaveOver} {
		if _, err := save(); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("error %v, want one that says it is not there", err)
		}
		if d.Sheet.Text(worksheets.Bicep) != "14" || d.Saved() || d.Path() != path {
			t.Errorf("the sheet says %q, saved %v", d.Sheet.Text(worksheets.Bicep), d.Saved())
		}
	}
	if err := os.Mkdir(folder, 0o755); err != nil { // the disk is back
		t.Fatal(err)
	}
	if _, err := d.Save(); err != nil {
		t.Error(err)
	}
	onDisk(t, path, strings.Replace(stored, "13 3/4", "14", 1))
}

func TestWhatIsNoFileIsNeitherReadNorWritten(t *testing.T) {
	folder := t.TempDir()
	unlike := map[string]string{folder: folder + ": it is a folder"}
	if runtime.GOOS != "windows" {
		pipe := filepath.Join(folder, "pipe.toml")
		if err := exec.Command("mkfifo", pipe).Run(); err == nil {
			unlike[pipe] = pipe + ": it is a device or pipe"
		}
	}
	for path, want := range unlike {
		if d, err := worksheets.Load(path); d != nil || err == nil || err.Error() != want {
			t.Errorf("%s is loaded: %v; want %s", path, err, want)
		}
		d := worksheets.New(worksheets.Sheet{})
		d.SetPath(path)
		for _, save := range []func() (string, error){d.Save, d.SaveOver} {
			if _, err := save(); err == nil || err.Error() != want {
				t.Errorf("%s is saved to: %v; want %s", path, err, want)
			}
		}
	}
	if d, err := worksheets.Load(filepath.Join(folder, "missing.toml")); d != nil || !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a missing file: %v", err)
	}
	if d, err := worksheets.Load(filepath.Join(folder, "missing", "blouse.toml")); d != nil || !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a missing folder: %v", err)
	}
}

func TestAMissingFilesNameIsShownInTheMessage(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a\x1b[31m.toml")
	if _, err := worksheets.Load(path); acts(err.Error()) {
		t.Errorf("%q", err.Error())
	}
	if err := os.Mkdir(path, 0o755); err != nil {
		t.Skip(err)
	}
	if _, err := worksheets.Load(path); err == nil || acts(err.Error()) {
		t.Errorf("a folder: %v", err)
	}
}

func TestAFolderIsSearchedForWorksheets(t *testing.T) {
	folder := t.TempDir()
	for name, content := range map[string]string{
		"blouse.toml":     "[about]\ntitle = \"Blouse\"\nwearer = \"Tamsel\"\n",
		"coat.TOML":       "[about]\nwearer = \"Orin\"\n",
		"bare.toml":       "[sleeve]\n",
		"fitted.toml":     "[[fitting]]\nnote = \"tight\"\n",
		"newer.toml":      "version = 2\n[body]\n",
		"broken.toml":     "[body]\nbicep = 13 3/4\n",
		"nested.toml":     "x = " + strings.Repeat("[", 100),
		"manifest.toml":   "[package]\nname = \"quilt\"\nversion = \"0.1.0\"\n\n[dependencies]\nthread = \"1\"\n",
		"lint.toml":       "line-length = 100\n[tool.lint]\nselect = [\"A\"]\n",
		"empty.toml":      "",
		".hidden.toml":    stored,
		"blouse.txt":      stored,
		"x.capscye-tmp":   stored,
		"b.toml.before-1": stored,
	} {
		write(t, filepath.Join(folder, name), content)
	}
	if err := os.Mkdir(filepath.Join(folder, "folder.toml"), 0o755); err != nil {
		t.Fatal(err)
	}
	paths, err := worksheets.Files(folder)
	if err != nil {
		t.Fatal(err)
	}
	type listed struct {
		name, called string
		unreadable   bool
	}
	var got []listed
	for _, path := range paths {
		if filepath.Dir(path) != folder {
			t.Errorf("path %q", path)
		}
		if d, err := worksheets.Load(path); err != nil {
			got = append(got, listed{filepath.Base(path), "", true})
		} else if d.Ours() {
			got = append(got, listed{filepath.Base(path), d.Sheet.Text(worksheets.Title), false})
		}
	}
	want := []listed{
		{"bare.toml", "", false}, {"blouse.toml", "Blouse", false}, {"broken.toml", "", true}, {"coat.TOML", "", false},
		{"fitted.toml", "", false}, {"nested.toml", "", true}, {"newer.toml", "", false},
	}
	if !slices.Equal(got, want) {
		t.Errorf("found %v, want %v", got, want)
	}
	if _, err := worksheets.Files(filepath.Join(folder, "missing")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a missing folder: %v", err)
	}
	if _, err := worksheets.Files(filepath.Join(folder, "blouse.toml")); err == nil || !strings.Contains(err.Error(), "it is not a folder") {
		t.Errorf("a file for a folder: %v", err)
	}
}

func TestAWorksheetIsFoundHoweverItIsWritten(t *testing.T) {
	for _, content := range []string{"body.bicep = \"13\"\n", "version = 1\n", "version = 2\n", "[body.left]\nknee = 15\n"} {
		if d := load(t, write(t, filepath.Join(t.TempDir(), "blouse.toml"), content)); !d.Ours() {
			t.Errorf("%q is not taken for a worksheet", content)
		}
	}
}
