//go:build linux

package worksheets_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"capscye/worksheets"
	"capscye/worksheets/disk/disktest"
)

// A full disk is said, and the sheet stays unsaved; with room again the same save
// works.
func TestAFullDiskLeavesTheSheetUnsaved(t *testing.T) {
	for _, links := range []int{1, 2} {
		folder := disktest.Mounted(t, "64k")
		path, filler := write(t, filepath.Join(folder, "blouse.toml"), stored), filepath.Join(folder, "filler")
		if links == 2 {
			if err := os.Link(path, filepath.Join(folder, "twin.toml")); err != nil {
				t.Fatal(err)
			}
		}
		d := load(t, path)
		d.Sheet.Set(worksheets.Notes, strings.Repeat("a long note ", 1200))
		if err := os.WriteFile(filler, make([]byte, 1<<20), 0o600); err == nil {
			t.Fatal("it is not full")
		}
		for range 2 {
			if _, err := d.Save(); !errors.Is(err, syscall.ENOSPC) || strings.Contains(err.Error(), "capscye-tmp") || d.Saved() || !d.Changed() {
				t.Errorf("error %v, saved %v", err, d.Saved())
			}
			onDisk(t, path, stored)
		}
		if err := os.Remove(filler); err != nil {
			t.Fatal(err)
		}
		if _, err := d.Save(); err != nil || !d.Saved() || !load(t, path).Sheet.Equal(d.Sheet) {
			t.Errorf("with room again: %v, saved %v", err, d.Saved())
		}
	}
}

// What the file held before is on disk and named, also where the new version does not
// fit any more.
func TestABackupIsNamedWhereTheSaveFails(t *testing.T) {
	folder := disktest.Mounted(t, "64k")
	source, filler := "# mine\nbody = {bust = \"39\"} # in one line\n", filepath.Join(folder, "filler")
	path := write(t, filepath.Join(folder, "blouse.toml"), source)
	d := load(t, path)
	d.Sheet.Set(worksheets.Waist, "31")
	if err := os.WriteFile(filler, make([]byte, 1<<20), 0o600); err == nil {
		t.Fatal("it is not full")
	}
	if info, err := os.Stat(filler); err != nil || os.Truncate(filler, info.Size()-4096) != nil { // room for one
		t.Fatal(err)
	}
	backup, err := d.Save()
	if !errors.Is(err, syscall.ENOSPC) || backup != path+".before-1" || d.Saved() {
		t.Fatalf("backup %q, %v, saved %v", backup, err, d.Saved())
	}
	onDisk(t, backup, source)
	onDisk(t, path, source)
}

// A disk that turns read-only is said; the sheet stays in memory and can be saved
// when the disk takes it again.
func TestAReadOnlyDisk(t *testing.T) {
	folder := disktest.Mounted(t, "64k")
	path := write(t, filepath.Join(folder, "blouse.toml"), stored)
	d := load(t, path)
	d.Sheet.Set(worksheets.Bicep, "14")
	if err := syscall.Mount("none", folder, "tmpfs", syscall.MS_REMOUNT|syscall.MS_RDONLY, ""); err != nil {
		t.Fatal(err)
	}
	if _, err := d.Save(); !errors.Is(err, syscall.EROFS) || d.Saved() || d.Sheet.Text(worksheets.Bicep) != "14" {
		t.Errorf("error %v, saved %v", err, d.Saved())
	}
	onDisk(t, path, stored)
	if err := syscall.Mount("none", folder, "tmpfs", syscall.MS_REMOUNT, ""); err != nil {
		t.Fatal(err)
	}
	if _, err := d.Save(); err != nil {
		t.Error(err)
	}
	onDisk(t, path, strings.Replace(stored, "13 3/4", "14", 1))
}

// What was kept on a disk that cannot be read at the moment stays where it is, and is
// found once it can: only what is torn makes room.
func TestWhatCannotBeReadAtTheMomentStays(t *testing.T) {
	keepings(t)
	r := worksheets.OpenRecovery("blouse.toml")
	if err := r.Keep(worksheets.Leftover{Versions: []worksheets.Sheet{version("14")}}); err != nil {
		t.Fatal(err)
	}
	away := r.Path() + ".away"
	if err := errors.Join(os.Rename(r.Path(), away), os.Symlink("/proc/self/mem", r.Path())); err != nil {
		t.Fatal(err)
	}
	if _, err := os.ReadFile(r.Path()); !errors.Is(err, syscall.EIO) { // nothing of a program is at its address 0
		t.Skipf("no file that cannot be read here: %v", err)
	}
	if left, ok := r.Left(); ok || left.Unreadable != nil {
		t.Errorf("found %d versions, and put %q aside", len(left.Versions), left.Unreadable)
	}
	if target, err := os.Readlink(r.Path()); target != "/proc/self/mem" {
		t.Errorf("it is %q now, %v", target, err)
	}
	if err := os.Rename(away, r.Path()); err != nil { // the disk is back
		t.Fatal(err)
	}
	if left, ok := r.Left(); !ok || len(left.Versions) != 1 || left.Versions[0].Text(worksheets.Bicep) != "14" {
		t.Errorf("found %+v, %v", left, ok)
	}
}
