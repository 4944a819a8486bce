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
)

// mounted is a folder with a file system of its own, of so many bytes.
func mounted(t *testing.T, size string) string {
	t.Helper()
	folder := t.TempDir()
	if err := syscall.Mount("none", folder, "tmpfs", 0, "size="+size); err != nil {
		t.Skipf("no file system of our own to fill here: %v", err)
	}
	t.Cleanup(func() { syscall.Unmount(folder, syscall.MNT_DETACH) })
	return folder
}

// A full disk is said, and the sheet stays unsaved; with room again the same save
// works.
func TestAFullDiskLeavesTheSheetUnsaved(t *testing.T) {
	for _, links := range []int{1, 2} {
		folder := mounted(t, "64k")
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

// A disk that turns read-only is said; the sheet stays in memory and can be saved
// when the disk takes it again.
func TestAReadOnlyDisk(t *testing.T) {
	folder := mounted(t, "64k")
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
