package disk

import (
	"io/fs"
	"os"
)

// atOnce has no meaning on Windows.
const atOnce = 0

// Number is not known on Windows.
func Number(fs.FileInfo) (number uint64, ok bool) { return 0, false }

// HasOtherNames is not known on Windows.
func HasOtherNames(fs.FileInfo) bool { return false }

// keepOwner has nothing to do on Windows: the folder decides.
func keepOwner(*os.File, fs.FileInfo) error { return nil }

// losesBits is never so on Windows, which has no such part of a mode.
func losesBits(fs.FileInfo) bool { return false }

// mayWrite is not asked on Windows.
func mayWrite(made, other fs.FileInfo) bool { return true }

// isMounted is never so on Windows, where nothing is mounted over a file.
func isMounted(error) bool { return false }

// lock has nothing to lock on Windows, where a folder cannot be.
func lock(string) (letGo func()) { return func() {} }

// lockFile is not needed on Windows, where no file is written in place.
func lockFile(*os.File) (letGo func()) { return func() {} }

// isGone tells that there is no program of that number any more.
func isGone(pid int) bool {
	_, err := os.FindProcess(pid)
	return err != nil
}
