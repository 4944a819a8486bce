//go:build !windows

package disk

import (
	"errors"
	"io/fs"
	"os"
	"syscall"
)

// hasOtherNames tells that a file has more than one name: a new file renamed
// over one of them would leave the others behind.
func hasOtherNames(info fs.FileInfo) bool {
	stat, ok := info.Sys().(*syscall.Stat_t)
	return ok && stat.Nlink > 1
}

// keepOwner gives a new file the owner and the group of the one that it replaces.
func keepOwner(f *os.File, before fs.FileInfo) error {
	now, err := f.Stat()
	if err != nil {
		return err
	}
	is, ok := now.Sys().(*syscall.Stat_t)
	was, known := before.Sys().(*syscall.Stat_t)
	if !ok || !known || is.Uid == was.Uid && is.Gid == was.Gid {
		return nil
	}
	return f.Chown(int(was.Uid), int(was.Gid))
}

// isGone tells that there is no program of that number any more.
func isGone(pid int) bool { return errors.Is(syscall.Kill(pid, 0), syscall.ESRCH) }
