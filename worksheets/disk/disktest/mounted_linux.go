package disktest

import (
	"syscall"
	"testing"
)

// Mounted is a folder with a file system of its own, of so many bytes ("64k"). Where
// none can be made, the test is skipped.
func Mounted(t *testing.T, size string) string {
	t.Helper()
	folder := t.TempDir()
	if err := syscall.Mount("none", folder, "tmpfs", 0, "size="+size); err != nil {
		t.Skipf("no file system of our own to fill here: %v", err)
	}
	t.Cleanup(func() { syscall.Unmount(folder, syscall.MNT_DETACH) })
	return folder
}
