package disk

import (
	"io/fs"
	"os"
)

// hasOtherNames is not known on Windows.
func hasOtherNames(fs.FileInfo) bool { return false }

// keepOwner has nothing to do on Windows: the folder decides.
func keepOwner(*os.File, fs.FileInfo) error { return nil }

// isGone tells that there is no program of that number any more.
func isGone(pid int) bool {
	_, err := os.FindProcess(pid)
	return err != nil
}
