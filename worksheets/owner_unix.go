//go:build !windows

package worksheets

import (
	"errors"
	"io/fs"
	"syscall"
)

// hasOtherNames tells that a file has more than one name: a new file renamed
// over one of them would leave the others behind.
func hasOtherNames(info fs.FileInfo) bool {
	stat, ok := info.Sys().(*syscall.Stat_t)
	return ok && stat.Nlink > 1
}

// isGone tells that there is no program of that number any more.
func isGone(pid int) bool { return errors.Is(syscall.Kill(pid, 0), syscall.ESRCH) }
