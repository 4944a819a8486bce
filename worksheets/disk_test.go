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

// Root saves a file of somebody else: it stays theirs, with its group and mode.
func TestTheOwnerIsKept(t *testing.T) {
	if os.Getuid() != 0 {
		t.Skip("only root can give a file away")
	}
	path := write(t, filepath.Join(t.TempDir(), "blouse.toml"), stored)
	if err := errors.Join(os.Chown(path, 4242, 4343), os.Chmod(path, 0o640)); err != nil {
		t.Fatal(err)
	}
	d := load(t, path)
	d.Sheet.Set(worksheets.Bicep, "14")
	if _, err := d.Save(); err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	if is := info.Sys().(*syscall.Stat_t); is.Uid != 4242 || is.Gid != 4343 || info.Mode() != 0o640 {
		t.Errorf("it belongs to %d and %d now, mode %v", is.Uid, is.Gid, info.Mode())
	}
	onDisk(t, path, strings.Replace(stored, "13 3/4", "14", 1))
}

// A full disk leaves the file as it was, whole, and nothing half written beside it;
// with room again the same save works. A file with two names is written in place:
// where the new version does not fit, the old one is put back.
func TestAFullDiskLeavesTheFileWhole(t *testing.T) {
	for _, links := range []int{1, 2} {
		folder := mounted(t, "64k")
		path := write(t, filepath.Join(folder, "blouse.toml"), stored+"#"+strings.Repeat("x", 5000)+"\n")
		before := string(readFile(t, path))
		if links == 2 {
			if err := os.Link(path, filepath.Join(folder, "twin.toml")); err != nil {
				t.Fatal(err)
			}
		}
		filler, err := os.Create(filepath.Join(folder, "filler"))
		if err != nil {
			t.Fatal(err)
		}
		for room := int64(13 * 4096); room >= 0; room -= 4096 { // from nothing left to room enough
			if err := filler.Truncate(0); err != nil {
				t.Fatal(err)
			}
			for written := int64(0); written < room; written += 4096 {
				if _, err := filler.WriteAt(make([]byte, 4096), written); err != nil {
					break
				}
			}
			d := load(t, path)
			d.Sheet.Set(worksheets.Notes, strings.Repeat("a long note ", 1200))
			_, err := d.Save()
			switch {
			case err == nil && room == 13*4096:
				t.Fatal("it is not full")
			case err == nil:
				if again := load(t, path); !again.Sheet.Equal(d.Sheet) {
					t.Error("it is not what was saved")
				}
				room = -1
			case room == 0:
				t.Errorf("with all the room there is: %v", err)
			default:
				if !errors.Is(err, syscall.ENOSPC) || d.Saved() || strings.Contains(err.Error(), "capscye-tmp") {
					t.Errorf("error %v, saved %v", err, d.Saved())
				}
				onDisk(t, path, before)
				if left := len(names(t, folder, "")); left > 1+links {
					t.Errorf("%d files are there", left)
				}
			}
		}
		filler.Close()
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

// A card with two names may be larger than a worksheet: where its new version does not
// fit, all of the old one goes back.
func TestALargeFileWithTwoNamesIsPutBackWhole(t *testing.T) {
	folder := mounted(t, "5m")
	path := write(t, filepath.Join(folder, "card.pdf"), strings.Repeat("x", 2<<20)+"the end")
	if err := os.Link(path, filepath.Join(folder, "twin.pdf")); err != nil {
		t.Fatal(err)
	}
	if err := worksheets.WriteFile(path, make([]byte, 9<<19)); !errors.Is(err, syscall.ENOSPC) {
		t.Fatalf("error %v, want one of a full disk", err)
	}
	if got := string(readFile(t, path)); len(got) != 2<<20+len("the end") || !strings.HasSuffix(got, "the end") {
		t.Errorf("of the old version %d bytes are left", len(got))
	}
	if left := names(t, folder, ""); len(left) != 2 {
		t.Errorf("the folder holds %q", left)
	}
}
